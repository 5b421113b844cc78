package measure

import "math"

// A SpeedRun is one run of a feed test, at a speed.
type SpeedRun struct {
	Speed  float64 // mm/s
	Length float64 // mm, moved
}

// A SlipTest is runs of one commanded length at several speeds.
type SlipTest struct {
	Commanded float64 // mm
	Runs      []SpeedRun
	Alpha     float64 // significance; 0 is taken as 0.05
	Common    Budget  // mm: what the instrument does to all runs alike, as Budget.Fixed of one of them
}

// Trouble is what the error does with speed.
type Trouble uint8

// The troubles.
const (
	NoSlipFound Trouble = iota
	SlipFound           // the error falls with speed: the drive loses grip
	ErrorRises          // it rises: not slip; look at the test
)

// String returns the word: no_slip_found, slip or error_rises_with_speed.
func (t Trouble) String() string {
	switch t {
	case SlipFound:
		return "slip"
	case ErrorRises:
		return "error_rises_with_speed"
	}
	return "no_slip_found"
}

// A Basis is which runs a scale was taken from.
type Basis uint8

// The bases.
const (
	FromAllRuns   Basis = iota // speed makes no difference that shows
	FromZeroSpeed              // the line's error at no speed at all
	FromPlateau                // the slow runs that agree, as the line does not fit
)

// A SlipResult is what runs at several speeds show. Errors are relative.
type SlipResult struct {
	Line        Line // error against speed: Intercept at zero speed, Slope per mm/s
	Speeds      []float64
	MeanErrors  []float64 // of the runs at each of Speeds
	P           float64   // chance of so steep a slope without any slip
	Significant bool
	Trouble     Trouble
	Lack        LackOfFit
	HasLack     bool
	Basis       Basis
	Plateau     int // how many of Speeds, from the slowest, make the plateau
	Scale       Scale
	Warnings    []Warning
}

// The doubts of a slip test.
const (
	WarnErrorRises Warning = "The error grows with speed, which slip cannot do. Look for a reading taken before the move had ended, or make the runs in another order: the drive may have warmed up."
	WarnThreshold  Warning = "The error does not follow a straight line: it holds up to some speed and then gives way. The setting is taken from the slow runs that agree."
	WarnBent       Warning = "The error does not follow a straight line. The setting is taken from the slow runs that agree."
	WarnOneSlow    Warning = "Only the slowest speed is left to take the setting from. Add runs at a speed below it."
	WarnMayHide    Warning = "The runs scatter so much that slip beyond the tolerance could hide in them. More runs, or longer ones, would show it."
)

// Solve fits the error against speed, tests the slope, and takes the scale from
// the runs that deserve it:
//
//   - from the plateau, if repeats show that the line does not fit: a drive that
//     holds and then slips gives a significant line with a false intercept;
//   - from the line at zero speed, if its slope is significant;
//   - from all runs together otherwise.
//
// It needs three runs (ErrTooFew) at two speeds or more (ErrOneLength).
// Sources: JCGM 100, H.3 and G.3.
func (t SlipTest) Solve() (SlipResult, error) {
	if t.Alpha == 0 {
		t.Alpha = significance
	}
	points, err := t.points()
	if err != nil {
		return SlipResult{}, err
	}
	l, err := Fit(points)
	if err != nil {
		return SlipResult{}, err
	}
	l.settle(noise) // errors are differences of lengths, relative to one
	r := SlipResult{Line: l, P: l.SlopeEstimate().P(0)}
	list := groups(points)
	for _, g := range list {
		r.Speeds, r.MeanErrors = append(r.Speeds, g.x), append(r.MeanErrors, g.ys.Mean())
	}
	r.Significant = r.P < t.Alpha
	switch {
	case r.Significant && l.Slope < 0:
		r.Trouble = SlipFound
	case r.Significant:
		r.Trouble = ErrorRises
		r.Warnings = append(r.Warnings, WarnErrorRises)
	}
	r.Lack, err = l.LackOfFit()
	r.HasLack = err == nil
	if !r.HasLack {
		r.Warnings = append(r.Warnings, lackWarning(err, len(list)))
	}
	r.basis(t, list)
	return r, r.Scale.Check()
}

func lackWarning(err error, places int) Warning {
	switch {
	case err == ErrNoSpread:
		return WarnRepeatsEqual
	case places == 2:
		return WarnTwoSpeeds
	}
	return WarnNoRepeats
}

// WarnTwoSpeeds is the doubt of a line through two speeds.
const WarnTwoSpeeds Warning = "Two speeds always lie on a line. A third one would show whether the error follows speed, or gives way at some point."

// points are the relative errors against speed.
func (t SlipTest) points() ([]Point, error) {
	switch {
	case !finite(t.Commanded) || !finite(t.Common.Combined()):
		return nil, ErrNotFinite
	case t.Commanded <= 0:
		return nil, ErrLength
	case !(t.Alpha > 0 && t.Alpha < 1):
		return nil, ErrProbability
	}
	points := make([]Point, len(t.Runs))
	for i, run := range t.Runs {
		if run.Length <= 0 || run.Speed <= 0 {
			return nil, ErrLength
		}
		points[i] = Point{run.Speed, (run.Length - t.Commanded) / t.Commanded}
	}
	return points, nil
}

// basis chooses the runs that the scale is taken from. What is common to all
// runs is in its uncertainty once. Source: JCGM 100, 5.1.2, F.1.2.3.
func (r *SlipResult) basis(t SlipTest, list []group) {
	var own Estimate // of the error
	runs := len(t.Runs)
	switch {
	case r.HasLack && !r.Lack.Adequate:
		r.Basis = FromPlateau
		own, r.Plateau, runs = plateau(list, t.Alpha)
		if r.Trouble == ErrorRises {
			r.Warnings = append(r.Warnings, WarnBent)
		} else {
			r.Warnings = append(r.Warnings, WarnThreshold)
		}
		if r.Plateau == 1 {
			r.Warnings = append(r.Warnings, WarnOneSlow)
		}
	case r.Significant:
		r.Basis = FromZeroSpeed
		own = r.Line.InterceptEstimate()
	default:
		own = together(list)
	}
	common := t.Common.Scaled(1 / t.Commanded)
	b := append(Budget{{ID: LineFit, U: own.U, Dof: own.Dof, TypeA: true, Shape: ScaledT}}, common...)
	r.Scale = Scale{Ratio: b.Estimate(1 + own.Value), Floor: common.Combined(), Runs: runs}
}

// together is the mean of all readings of some groups.
func together(list []group) Estimate {
	var all Series
	for _, g := range list {
		all = append(all, g.ys...)
	}
	spread, _ := all.Spread()
	n := float64(len(all))
	return Estimate{Value: all.Mean(), U: spread / math.Sqrt(n), Dof: n - 1} // JCGM 100, 4.2.3 (5)
}

// plateau is the mean of the slow groups that agree: the next faster one joins
// as long as its mean does not differ from that of those before, judged by the
// scatter of all repeats together.
func plateau(list []group, alpha float64) (e Estimate, speeds, runs int) {
	squares, dof := pure(list)
	variance := squares / dof
	for speeds = 1; speeds < len(list); speeds++ {
		slow, next := together(list[:speeds]), list[speeds].ys
		n := float64(count(list[:speeds]))
		u := math.Sqrt(variance * (1/n + 1/float64(len(next)))) // JCGM 100, 5.1.2 (10)
		if (Estimate{Value: next.Mean(), U: u, Dof: dof}).P(slow.Value) < alpha {
			break
		}
	}
	e = together(list[:speeds])
	runs = count(list[:speeds])
	e.U, e.Dof = math.Sqrt(variance/float64(runs)), dof
	return e, speeds, runs
}

func count(list []group) int {
	n := 0
	for _, g := range list {
		n += len(g.ys)
	}
	return n
}

// HoldsUpTo returns the fastest speed, mm/s, at which the line's error is still
// within ± tolerance: with the setting as it was in the test, or, corrected,
// with the one from zero speed. It is 0 if no speed is slow enough. False where
// the line says nothing about it: no slip, or not a line.
func (r SlipResult) HoldsUpTo(tolerance float64, corrected bool) (float64, bool) {
	if r.Trouble != SlipFound || r.HasLack && !r.Lack.Adequate || !(tolerance > 0) {
		return 0, false
	}
	at, slope := r.Line.Intercept, r.Line.Slope
	if corrected {
		at, slope = 0, ratio(slope, 1+at) // (1 + a + b·v)/(1 + a) − 1
	}
	v := (-tolerance - at) / slope // where a + b·v = −T
	return max(0, v), finite(v)
}

// MayHide reports whether a test that found no slip could have missed one that
// takes the error beyond − tolerance at its fastest speed.
func (r SlipResult) MayHide(tolerance float64) (Warning, bool) {
	low, _ := r.Line.SlopeEstimate().Interval()
	fastest := 0.0
	for _, v := range r.Speeds {
		fastest = max(fastest, v)
	}
	return WarnMayHide, r.Trouble == NoSlipFound && low*fastest < -tolerance
}
