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

// normal95 is the two-sided 95 % quantile of the normal distribution.
const normal95 = 1.959963984540054

// maxRuns is the largest number of runs that anybody is asked for.
const maxRuns = 50

// Judge returns what to do, at a tolerance ±T on the relative error.
// Sources: JCGM 106, 7 and 8; the words are ours:
//
//   - NotWithThis, before all else, if the part of u that no number of runs
//     makes smaller (Floor: steps and limits of the instrument, over this
//     length) is above T/1.96. Then even endless runs could not show an axis
//     without any error to be within ±T, and a correction made with such means
//     would not be good to T. A large scatter alone is not that: it shrinks.
//   - LeaveIt if P(|e| ≤ T) ≥ 0.95, ChangeIt if P(e > T) or P(e < −T) is.
//     Both with all of u and Student's t. A scatter so large that LeaveIt is
//     out of reach still leads to ChangeIt where the error is far beyond T.
//   - EitherIsFine if the 95 % interval of |e| lies between T/2 and 3T/2, and
//     with the same error and scatter not even 50 runs would lead to one of
//     the two before.
//   - MeasureMore otherwise, and where nothing is known of the readings' worth.
func (s Scale) Judge(tolerance float64) (Judgement, error) {
	if err := s.Check(); err != nil {
		return Judgement{}, err
	}
	if !finite(tolerance) {
		return Judgement{}, ErrNotFinite
	}
	if tolerance <= 0 {
		return Judgement{}, ErrTolerance
	}
	j := Judgement{Tolerance: tolerance, Chances: s.chances(tolerance)}
	switch {
	case s.Ratio.U == 0:
		j.Warnings = append(j.Warnings, WarnNothingKnown)
	case s.Floor > tolerance/normal95:
		j.Verdict = NotWithThis
	case s.settled(tolerance) != MeasureMore:
		j.Verdict = s.settled(tolerance)
	case s.near(tolerance) && s.withRuns(max(maxRuns, s.Runs)).settled(tolerance) == MeasureMore:
		j.Verdict = EitherIsFine
	}
	return j, nil
}

func (s Scale) chances(tolerance float64) Chances {
	return Within(0, tolerance).chances(s.Error())
}

// settled is LeaveIt or ChangeIt, or MeasureMore if it is neither.
func (s Scale) settled(tolerance float64) Verdict {
	c := s.chances(tolerance)
	switch {
	case c.Within >= Sure:
		return LeaveIt
	case c.Above >= Sure || c.Below >= Sure:
		return ChangeIt
	}
	return MeasureMore
}

// near reports whether the error is known to be within half a tolerance of it.
func (s Scale) near(tolerance float64) bool {
	e := s.Error()
	return math.Abs(math.Abs(e.Value)-tolerance)+e.Expanded() <= tolerance/2
}

// withRuns is the scale with more runs, of the same error and the same
// scatter. One run has none; then the placing of the mark stands for it.
func (s Scale) withRuns(n int) Scale {
	u, floor := s.Ratio.U, min(s.Floor, s.Ratio.U)
	scatter := math.Sqrt((u - floor) * (u + floor))
	if scatter == 0 {
		s.Runs = n
		return s
	}
	dof := s.Ratio.Dof * math.Pow(scatter/u, 4) // that of the scatter alone, from G.4.1 (G.2b)
	added := float64(n - s.Runs)
	if s.Runs == 1 {
		dof = 0
	}
	scatter *= math.Sqrt(float64(s.Runs) / float64(n)) // JCGM 100, 4.2.3 (5)
	s.Ratio.U = math.Hypot(floor, scatter)
	s.Ratio.Dof = (dof + added) / math.Pow(scatter/s.Ratio.U, 4)
	s.Runs = n
	return s
}
