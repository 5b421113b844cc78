package calibrate

import (
	"errors"
	"slices"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/trial"
)

// errMissing says that the readings are not complete; what is missing is asked
// for, so it needs no words.
var errMissing = errors.New("not complete")

// solve takes the scale from the readings.
func (a *solution) solve() error {
	switch a.sheet.Method() {
	case trial.SeveralSpeeds:
		return a.solveSpeeds()
	case trial.SeveralLengths:
		return a.solveLengths()
	case trial.BothSides:
		return a.solveSides()
	}
	runs := trial.Counted(a.runs)
	if len(runs) == 0 || !a.hasAsked {
		return errMissing
	}
	var err error
	if a.test, err = a.sheet.evidence(runs).Measure(); err == nil {
		a.scale, err = measure.ScaleOf(a.asked, a.test)
	}
	return err
}

func (a *solution) solveSpeeds() error {
	runs := a.withSpeed()
	if len(runs) == 0 || !a.hasAsked {
		return errMissing
	}
	var err error
	if a.test, err = a.sheet.evidence(runs).Measure(); err != nil {
		return err
	}
	test := measure.SlipTest{Commanded: a.asked, Common: a.test.Budget.Fixed()}
	for _, r := range runs {
		test.Runs = append(test.Runs, measure.SpeedRun{Speed: r.Speed, Length: r.Moved})
	}
	if a.slip, err = test.Solve(); err == nil {
		a.scale = a.slip.Scale
	}
	return err
}

// withSpeed are the runs that count and tell their speed.
func (a *solution) withSpeed() []trial.Run {
	return lists.Keep(a.runs, func(r trial.Run) bool { return !r.Aside && r.Speed > 0 })
}

func (a *solution) solveLengths() error {
	runs := a.withLength()
	if len(runs) == 0 {
		return errMissing
	}
	points := make([]measure.Point, len(runs))
	for i, r := range runs {
		points[i] = measure.Point{X: r.Want, Y: r.Moved}
	}
	with, _ := a.sheet.instrument()
	var err error
	if a.fit, err = measure.ScaleAndOffset(points, with); err == nil {
		a.scale = a.fit.Scale
	}
	return err
}

// withLength are the runs that count and tell their commanded length.
func (a *solution) withLength() []trial.Run {
	return lists.Keep(a.runs, func(r trial.Run) bool { return !r.Aside && r.Want > 0 })
}

// solveSides takes reversal from positions, and the scale from the line through
// the means of both directions.
func (a *solution) solveSides() error {
	s := a.sheet
	var targets []measure.Target
	var means []measure.Point
	for i, in := range s.Targets.Rows {
		up, down := &s.Up.Rows[i], &s.Down.Rows[i]
		if !in.Given || !up.Given && !down.Given {
			continue
		}
		at := in.Number
		place := slices.IndexFunc(targets, func(t measure.Target) bool { return t.Position == at })
		if place < 0 {
			place = len(targets)
			targets = append(targets, measure.Target{Position: at})
		}
		t := &targets[place]
		if up.Given {
			t.Forward = append(t.Forward, up.Number)
		}
		if down.Given {
			t.Backward = append(t.Backward, down.Number)
		}
		if up.Given && down.Given {
			means = append(means, measure.Point{X: at, Y: (up.Number + down.Number) / 2})
		}
	}
	if len(targets) == 0 {
		return errMissing
	}
	var err error
	if a.reversal, err = measure.Bidirectional(targets); err != nil {
		return err
	}
	line, err := measure.Fit(means)
	if err == nil {
		a.scale = measure.Scale{Ratio: line.SlopeEstimate(), Runs: len(means)}
		err = a.scale.Check()
	}
	return err
}

// settlesNothing takes a verdict back that rests on a single run: that shows no
// scatter, so it looks better known than three of them.
func settlesNothing(j *measure.Judgement, runs []trial.Run) bool {
	if len(runs) != 1 {
		return false
	}
	if j.Verdict != measure.NotWithThis {
		j.Verdict = measure.MeasureMore
	}
	return true
}

// solveAgain takes the error after the change from the second round.
func (a *solution) solveAgain() {
	runs := trial.Counted(a.later)
	if len(runs) == 0 || !a.hasAsked {
		return
	}
	test, err := a.sheet.evidence(runs).Measure()
	if err != nil {
		return
	}
	if a.then, err = measure.ScaleOf(a.asked, test); err == nil {
		a.judgedThen, err = a.then.Judge(a.sheet.tolerance())
		a.hasThen = err == nil
		settlesNothing(&a.judgedThen, runs)
	}
}
