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
	Grid      float64 // mm, the standard uncertainty of the rounding of a length, where Common has no step as large
}

// Trouble is what the error does with speed.
type Trouble uint8

// The troubles.
const (
	NoSlipFound Trouble = iota
	SlipFound           // the error falls with speed: the drive loses grip
	ErrorRises          // it rises: not slip; look at the test
	ErrorUneven         // it differs, but neither falls nor rises all the way
)

// String returns the word: no_slip_found, slip, error_rises_with_speed or uneven.
func (t Trouble) String() string {
	switch t {
	case SlipFound:
		return "slip"
	case ErrorRises:
		return "error_rises_with_speed"
	case ErrorUneven:
		return "uneven"
	}
	return "no_slip_found"
}

// A Basis is what a scale was taken from.
type Basis uint8

// The bases.
const (
	FromZeroSpeed Basis = iota // the error at no speed at all, of the line through all runs
	FromSlowest                // the same, of the line through the two slowest speeds
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
	HasLack     bool // Lack could be tested
	Basis       Basis
	Scale       Scale
	Warnings    []Warning
}

// Misfit reports whether repeats show that the error does not follow a straight line.
func (r SlipResult) Misfit() bool { return r.HasLack && !r.Lack.Adequate }

// The doubts of a slip test.
const (
	WarnErrorRises  Warning = "error-rises"
	WarnErrorUneven Warning = "error-uneven"
	WarnBent        Warning = "bent"
	WarnMayHide     Warning = "may-hide"
)

// Solve fits the error against speed, says what it does, and takes the scale at no speed.
//
// No test on the runs themselves decides from which of them the scale comes: one that tests
// for slip first, and takes the mean of all runs where it finds none, covers 63 % instead of
// 95 at the worst slip, and misfit first 41 to 50 %. The interval reaches over two: the mean
// of the slowest speed, and the line at zero speed. Where repeats show that the line bends
// down (a drive that holds and then slips), it is that of the two slowest speeds, from the
// scatter of the repeats alone. The value is the line's.
//
// It needs three runs (ErrTooFew) at two speeds or more (ErrOneLength).
// Sources: JCGM 100, H.3 and G.3; the union of both is ours, by simulation.
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
	r.Lack, err = l.lackOfFit(t.rounding())
	r.HasLack = err == nil
	if !r.HasLack {
		r.Warnings = append(r.Warnings, lackWarning(err, len(list)))
	}
	r.Trouble = r.trouble(t, list)
	switch {
	case r.Trouble == ErrorRises:
		r.Warnings = append(r.Warnings, WarnErrorRises)
	case r.Trouble == ErrorUneven:
		r.Warnings = append(r.Warnings, WarnErrorUneven)
	case r.Misfit():
		r.Warnings = append(r.Warnings, WarnBent)
	}
	r.scale(t, list)
	return r, r.Scale.Check()
}

// trouble says what the error does with speed: by the slope of a line that fits, else by the
// mean errors one after the other, judged by the scatter of the repeats.
func (r *SlipResult) trouble(t SlipTest, list []group) Trouble {
	if !r.Misfit() {
		switch {
		case r.Significant && r.Line.Slope < 0:
			return SlipFound
		case r.Significant:
			return ErrorRises
		}
		return NoSlipFound
	}
	differs := func(from, to group) (falls, rises bool) {
		u := r.Lack.noise * math.Sqrt(1/float64(len(from.ys))+1/float64(len(to.ys))) // JCGM 100, 5.1.2 (10)
		e := Estimate{Value: to.ys.Mean(), U: u, Dof: r.Lack.dofNoise}
		far := e.P(from.ys.Mean()) < t.Alpha
		return far && e.Value < from.ys.Mean(), far && e.Value > from.ys.Mean()
	}
	anyFalls, anyRises := false, false
	for i := 1; i < len(list); i++ {
		falls, rises := differs(list[i-1], list[i])
		anyFalls, anyRises = anyFalls || falls, anyRises || rises
	}
	falls, rises := differs(list[0], list[len(list)-1])
	switch {
	case falls && !anyRises:
		return SlipFound
	case rises && !anyFalls:
		return ErrorRises
	}
	return ErrorUneven
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
const WarnTwoSpeeds Warning = "two-speeds"

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

// HoldsUpTo returns the fastest speed, mm/s, at which the line's error is still
// within ± tolerance: with the setting as it was in the test, or, corrected,
// with the one from zero speed. It is 0 if no speed is slow enough. False where
// the line says nothing about it: no slip, or not a line.
func (r SlipResult) HoldsUpTo(tolerance float64, corrected bool) (float64, bool) {
	if r.Trouble != SlipFound || r.Misfit() || !(tolerance > 0) {
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
