package measure

import "math"

// A Verdict is what to do with a setting.
type Verdict uint8

// The verdicts.
const (
	MeasureMore  Verdict = iota // not shown either way yet; Advise says what would
	LeaveIt                     // the error is within the tolerance
	ChangeIt                    // the error is beyond it
	NotWithThis                 // no number of runs can tell, with this instrument and length
	EitherIsFine                // the error is so near to the tolerance that it does not matter
)

// A Judgement is a verdict with the probabilities that lead to it.
type Judgement struct {
	Verdict   Verdict
	Tolerance float64 // on the relative error, ±
	Chances           // of the error: within the tolerance, above, below
	Warnings  []Warning
}

// Beyond reports whether the error is shown to be beyond the tolerance on one
// side. With NotWithThis that says: it is off, but these means cannot say by
// how much well enough to set it right.
func (j Judgement) Beyond() bool { return j.Above >= Sure || j.Below >= Sure }

// maxRuns is the largest number of runs that anybody is asked for.
const maxRuns = 50

// looks is by how much the level of a verdict falls with the number of runs. The page invites
// one more run until it can tell, so that a sheet is looked at many times, each time with a
// chance to err. With a level of looks/n at n runs, a sheet that is looked at from 3 to 50 runs
// errs in at most 5 %, at the tolerance, either way; found by simulation, which
// scripts/gauge/cover repeats. Two runs may err in 0.5 %: enough for what is far off, and too
// little to count beside the looks from three on.
const (
	looks    = 0.055
	firstTwo = 0.005
)

// level is the probability with which a verdict may err: 5 % at the number of runs that was
// planned, and less at each look of which the number was not fixed before. Before a plan is
// through there is none.
func (s Scale) level() float64 {
	switch {
	case s.Plan > s.Runs:
		return 0
	case s.Plan == s.Runs:
		return 1 - Sure
	case s.Runs == 2:
		return firstTwo
	}
	return min(1-Sure, looks/float64(s.Runs))
}

// Judge returns what to do, at a tolerance ±T on the relative error.
// Sources: JCGM 106, 7 and 8; the words are ours:
//
//   - NotWithThis, before all else, if the part of the interval that no number
//     of runs makes smaller (Floor: steps and limits of the instrument, over
//     this length) is above T. Then even endless runs could not show an axis
//     without any error to be within ±T, and a correction made with such means
//     would not be good to T. A large scatter alone is not that: it shrinks.
//   - LeaveIt if P(e > T) and P(e < −T) are each at most the level, ChangeIt if
//     P(e ≤ T) or P(e ≥ −T) is. A scatter so large that LeaveIt is out of reach still leads
//     to ChangeIt where the error is far beyond T. Not from one run, nor from
//     two equal ones: those show no scatter.
//   - EitherIsFine if the 95 % interval of |e| lies between T/2 and 3T/2, and
//     with the same error and scatter not even 50 runs would lead to one of
//     the two before.
//   - MeasureMore otherwise, and where nothing is known of the readings' worth.
func (s Scale) Judge(tolerance float64) (Judgement, error) {
	if err := s.checkAt(tolerance); err != nil {
		return Judgement{}, err
	}
	j := Judgement{Verdict: s.Verdict(tolerance), Tolerance: tolerance, Chances: s.chances(tolerance)}
	if s.Ratio.U == 0 {
		j.Warnings = append(j.Warnings, WarnNothingKnown)
	}
	return j, nil
}

// checkAt returns what keeps a scale or a tolerance from being judged, if anything does.
func (s Scale) checkAt(tolerance float64) error {
	if err := s.Check(); err != nil {
		return err
	}
	if !finite(tolerance) {
		return ErrNotFinite
	}
	if tolerance <= 0 {
		return ErrTolerance
	}
	return nil
}

// Verdict is that of Judge, without the probabilities, which cost more than all the rest, of a
// scale and a tolerance that Judge takes.
func (s Scale) Verdict(tolerance float64) Verdict {
	settled := s.settled(tolerance)
	switch {
	case s.Ratio.U == 0:
		return MeasureMore
	case s.Floor > tolerance:
		return NotWithThis
	case s.level() == 0:
		return MeasureMore
	case settled == MeasureMore && s.near(tolerance) && s.withRuns(max(maxRuns, s.Runs)).settled(tolerance) == MeasureMore:
		return EitherIsFine
	}
	return settled
}

func (s Scale) chances(tolerance float64) Chances {
	return Within(0, tolerance).chances(s.Error())
}

// settled is LeaveIt or ChangeIt, or MeasureMore if it is neither.
func (s Scale) settled(tolerance float64) Verdict { return s.settledWithin(tolerance, 0) }

// settledWithin is settled, of an error that may be off by shift either way. It asks for the
// interval at the level, which costs less than the probabilities.
func (s Scale) settledWithin(tolerance, shift float64) Verdict {
	level := s.level()
	if !s.shows() || level == 0 {
		return MeasureMore
	}
	e := s.Error()
	inside := tolerance - math.Abs(e.Value)
	switch {
	case math.Abs(inside)-shift < e.halfWidth(2*level):
		return MeasureMore
	case inside < 0:
		return ChangeIt
	}
	return LeaveIt
}

// shows reports whether the readings show how they scatter, well enough for a verdict.
func (s Scale) shows() bool {
	switch earlier := s.Test.Earlier.Dof; s.Runs {
	case 1:
		return earlier >= enoughDof
	case 2: // equal ones, as far as the tool can tell, show none
		return earlier > 0 || s.Test.Scatter > 0 && s.Test.Scatter*math.Sqrt2 >= s.Test.step()*(1-1e-9)
	}
	return true
}

// near reports whether the error is known to be within half a tolerance of it.
func (s Scale) near(tolerance float64) bool {
	e := s.Error()
	return s.shows() && math.Abs(math.Abs(e.Value)-tolerance)+e.HalfWidth() <= tolerance/2
}

// withRuns is the scale with more runs, of the same error and the same
// scatter. One run has none; then the placing of the mark stands for it.
func (s Scale) withRuns(n int) Scale {
	d := s.Ratio.parts()
	if s.Runs == 1 && math.IsInf(d.Dof, 1) {
		d.Scatter, d.Normal, d.Dof = d.Normal, 0, 0
	}
	d.Scatter *= math.Sqrt(float64(s.Runs) / float64(n)) // JCGM 100, 4.2.3 (5)
	d.Dof += float64(n - s.Runs)
	s.Ratio = d.estimate(s.Ratio.Value)
	s.Runs = n
	return s
}
