package measure

import "math"

// More doubts, of lines.
const (
	WarnTwoLengths   Warning = "two-lengths"
	WarnNoRepeats    Warning = "no-repeats"
	WarnRepeatsEqual Warning = "repeats-equal"
	WarnNotStraight  Warning = "not-straight"
)

// An AxisFit is a travel axis measured at several lengths: its scale and a
// fixed offset (edges, backlash, a thick mark) apart from each other. Only the
// scale goes into the setting.
type AxisFit struct {
	Line        Line   // measured against commanded, mm
	Budget      Budget // of the slope
	Scale       Scale  // the slope, with the instrument's gain
	Offset      Estimate
	OffsetFound bool // the interval of Offset excludes 0
	Lack        LackOfFit
	HasLack     bool // Lack could be tested
	Warnings    []Warning
}

// ScaleAndOffset fits measured (Y) against commanded (X) lengths, mm, all
// above 0, all read with one instrument; one that is all 0 adds nothing. Where
// each is a mark less what remained, take the instrument's ForDifferences.
//
// The instrument's gain is common to all readings and adds to the slope's
// uncertainty (JCGM 100, F.1.2.3); an error of its zero goes into the offset. Its step
// is counted once for each length, however often that was read.
func ScaleAndOffset(points []Point, with Instrument) (AxisFit, error) {
	longest := 0.0
	for _, p := range points {
		if p.X <= 0 || p.Y <= 0 {
			return AxisFit{}, ErrLength
		}
		longest = max(longest, p.Y)
	}
	return fitAxis(points, with, longest)
}

// ScaleOfPositions is ScaleAndOffset of positions, mm, that may lie on both sides of 0. The
// instrument's limits count as reached between the outermost two.
func ScaleOfPositions(points []Point, with Instrument) (AxisFit, error) {
	var ys []float64
	for _, p := range points {
		ys = append(ys, p.Y)
	}
	return fitAxis(points, with, spanOf(ys))
}

// fitAxis fits lengths of which longest reaches the instrument's limits.
func fitAxis(points []Point, with Instrument, longest float64) (AxisFit, error) {
	if err := with.Check(); err != nil {
		return AxisFit{}, err
	}
	l, err := Fit(points)
	if err != nil {
		return AxisFit{}, err
	}
	a := AxisFit{Line: l}
	list := groups(points)
	step := stepLine(list, with)
	inf := math.Inf(1)
	fit := Component{ID: LineFit, U: l.SESlope(), Dof: l.Dof, TypeA: true, Shape: ScaledT}
	start := Component{U: l.SEIntercept(), Dof: l.Dof, TypeA: true, Shape: ScaledT}
	if len(points) <= fewPoints { // three or four can lie on one line of the tool by chance
		fit.Least = step.ResidualSD / math.Sqrt(l.Sxx)
		start.Least = step.ResidualSD * l.leverage(0)
	}
	gain := math.Abs(l.Slope) * with.Gain(longest)
	a.Budget = Budget{fit,
		{ID: Resolution, U: step.SESlope(), Dof: inf, Fixed: true, Step: true},
		{ID: Accuracy, U: gain, Dof: inf, Fixed: true, Shape: Rectangular},
	}
	a.Scale = Scale{Ratio: a.Budget.Estimate(l.Slope), Floor: Test{Runs: len(points), Scatter: l.ResidualSD, With: with}.floor(a.Budget), Runs: len(points)}
	zero := with.limits(Accuracy, Certificate).Combined()
	if with.zeroCancels {
		zero = 0
	}
	// Lengths that are whole steps apart are all rounded alike: then all of a step is in the offset.
	rounding := max(step.SEIntercept(), step.ResidualSD)
	a.Offset = Budget{start, {U: rounding, Dof: inf}, {U: zero, Dof: inf, Shape: Rectangular}}.Estimate(l.Intercept)
	a.OffsetFound = math.Abs(l.Intercept) > max(a.Offset.HalfWidth(), 1e-12*longest)
	a.Lack, err = l.LackOfFit()
	a.HasLack = err == nil
	switch {
	case len(list) == 2:
		a.Warnings = append(a.Warnings, WarnTwoLengths)
	case err == ErrNoSpread:
		a.Warnings = append(a.Warnings, WarnRepeatsEqual)
	case err != nil:
		a.Warnings = append(a.Warnings, WarnNoRepeats)
	case !a.Lack.Adequate:
		a.Warnings = append(a.Warnings, WarnNotStraight)
	}
	return a, a.Scale.Check()
}

// fewPoints is up to how many the scatter about a line is not taken below that of a step.
const fewPoints = 4

// stepLine is a line whose residuals are the instrument's step as a standard
// uncertainty, with one reading for each x.
func stepLine(list []group, with Instrument) Line {
	var xs Series
	for _, g := range list {
		xs = append(xs, g.x)
	}
	step := with.resolution(Resolution)
	return Line{Points: make([]Point, len(xs)), MeanX: xs.Mean(), Sxx: xs.squares(), ResidualSD: step.U}
}

// Decide says by the whole interval of the slope whether it is within
// 1 ± tolerance.
func (a AxisFit) Decide(tolerance float64) Decision {
	low, high := a.Scale.Ratio.Interval()
	return Within(1, tolerance).ByInterval(low, high)
}

// Ratios returns mean measured over commanded at the shortest and the longest
// length: what one length alone would have said.
func (a AxisFit) Ratios() (shortest, longest float64) {
	list := groups(a.Line.Points)
	if len(list) == 0 {
		return 0, 0
	}
	at := func(g group) float64 { return ratio(g.ys.Mean(), g.x) }
	return at(list[0]), at(list[len(list)-1])
}
