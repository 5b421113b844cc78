package calibrate

import (
	"errors"
	"math"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// errMissing says that the readings are not complete; what is missing is asked
// for, so it needs no words.
var errMissing = errors.New("missing")

// errVague says that the readings scatter too much to say anything.
var errVague = errors.New("vague")

// moving returns why runs show no move that a setting could come from.
func (a *solution) moving(runs []trial.Run) error {
	if a.sheet.Method() == trial.BothSides {
		return nil
	}
	return trial.Moving(trial.Counted(runs), a.asked)
}

// stuck says what to look at then.
func (a *solution) stuck(cause error) (title string, blocks []report.Block) {
	choice := ""
	if a.sheet.isFeed() && a.sheet.Read.Word != "fed" {
		choice = readFed.Label
	}
	return trial.Stuck(cause, a.sheet.isFeed(), choice)
}

// solve takes the ratio of measured to commanded from the readings.
func (a *solution) solve() error {
	if err := a.moving(a.runs); err != nil {
		return err
	}
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
	if a.test, err = a.sheet.evidence(runs, a.sheet.Earlier()).Measure(); err == nil {
		a.scale, err = measure.ScaleOf(a.asked, a.test)
	}
	if a.sheet.rotary() {
		a.scale.Test.Tools = measure.AngleInstruments
	}
	return err
}

func (a *solution) solveSpeeds() error {
	runs := a.withSpeed()
	if len(runs) == 0 || !a.hasAsked {
		return errMissing
	}
	var err error
	if a.test, err = a.sheet.evidence(runs, measure.Spread{}).Measure(); err != nil {
		return err
	}
	test := measure.SlipTest{Commanded: a.asked, Common: a.test.Budget.Fixed(), Grid: a.sheet.rounding(runs) / math.Sqrt(3)}
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
	with, _ := a.sheet.measuredWith()
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

// solveSides takes backlash from positions, and the ratio from the line through
// the means of both directions.
func (a *solution) solveSides() error {
	targets, means := a.sheet.approached()
	if len(targets) == 0 {
		return errMissing
	}
	var err error
	with, _ := a.sheet.measuredWith()
	if a.reversal, err = measure.Bidirectional(targets, with); err != nil {
		return err
	}
	if a.fit, err = measure.ScaleOfPositions(means, with); err == nil {
		a.scale = a.fit.Scale
	}
	return err
}

// solveAgain takes the error after the change from the second round. The runs of the first
// one scatter alike: that is known from before.
func (a *solution) solveAgain() {
	runs := trial.Counted(a.later)
	if len(runs) == 0 || !a.hasAsked {
		return
	}
	if a.stillThen = a.moving(a.later); a.stillThen != nil {
		return
	}
	earlier := a.sheet.Earlier()
	if a.found && a.sheet.Method() == trial.OneLength {
		earlier = a.test.Test.Shown()
	}
	test, err := a.sheet.evidence(runs, earlier).Measure()
	if err != nil {
		return
	}
	if a.then, err = measure.ScaleOf(a.asked, test); err == nil {
		a.judgedThen, err = a.then.Judge(a.sheet.acceptable())
		a.hasThen = err == nil
		a.aloneThen = !test.Test.Known()
	}
}
