package flow

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// flowTolerance is the acceptable relative error of the plastic if none is given. 2 % of a
// line of 0.45 mm is 9 µm: walls differ by as much from place to place, and a
// good caliper on several lines can just tell it.
const flowTolerance = 0.02

// densityTolerance is how far, relatively, a density is taken to be off at most
// if nothing is said.
const densityTolerance = 0.01

// How much single readings are assumed to scatter until there are several.
const (
	wallScatter     = 0.03  // mm, from place to place and by the squeeze of the jaws
	diameterScatter = 0.02  // mm, along a filament and by its ovality
	massScatter     = 0.005 // relative, from print to print
)

// densityPart names the component of a density in a budget.
const densityPart = "density"

// A gauge turns a reading x into how much plastic is there of what should be:
// ((x − offset) / per)^power.
type gauge struct{ offset, per, power float64 }

func (g gauge) ratio(x float64) float64 { return math.Pow((x-g.offset)/g.per, g.power) }

// at is the reading of a ratio; at(1) is the one that is wanted.
func (g gauge) at(ratio float64) float64 { return g.offset + g.per*math.Pow(ratio, 1/g.power) }

// slope is the change of the ratio with the reading.
func (g gauge) slope(x float64) float64 {
	return g.power / g.per * math.Pow((x-g.offset)/g.per, g.power-1)
}

// A reading is one row that is given.
type reading struct {
	row   int
	value float64
	aside bool
	grid  float64 // of the last decimal typed
}

// solution is a flow sheet as it was solved, on its way into words.
type solution struct {
	sheet    *entries
	unit     string // of the readings
	readings []reading
	gauge    gauge
	hasGauge bool

	found  bool
	vague  bool             // the readings scatter too much to say anything
	alone  bool             // by a single reading, which shows no scatter
	raw    measure.Measured // of the readings as they were read
	budget measure.Budget   // of the ratio
	scale  measure.Scale    // plastic that is there over what should be
	judged measure.Judgement
}

// flowKeys are what the answer depends on; a hidden one cannot be wrong.
var flowKeys = []string{"scale", "by", "flow", "width", "layer", "walls", "lines", "spacing", "fused", "stated", "used", "planned", "included", "set",
	"density", "densitylimits", "printed", "thick", "weighed", "across", "aside", "tool", "step", "limits", "balance", "balancelimits", "tol"}

func (s *entries) flow() float64 {
	if s.Flow.Given {
		return s.Flow.Number
	}
	return 1
}

func (s *entries) walls() float64 {
	if s.Walls.Given {
		return s.Walls.Number
	}
	return 1
}

func (s *entries) tolerance() float64 {
	if s.Tol.Given {
		return s.Tol.Number / 100
	}
	return flowTolerance
}

// spacing is from the middle of one line to that of the next, mm: as much as a
// line's section is wide without its rounding.
func (s *entries) spacing() float64 {
	if s.Spacing.Given {
		return s.Spacing.Number
	}
	return s.Width.Number - s.rounding()
}

// gaugeOf is how the readings tell plastic; ok is false while something that
// it is made of is not given or cannot be.
func (s *entries) gaugeOf() (g gauge, ok bool) {
	switch s.By.Word {
	case byMass:
		return gauge{0, s.plannedMass(), 1}, s.Stated.Word == "mass" && s.Planned.Given || s.Used.Given && s.Set.Given && s.Density.Given
	case byDiameter:
		return gauge{0, s.Set.Number, 2}, s.Set.Given
	}
	if s.sideBySide() && !s.Width.Given || !s.sideBySide() && !s.Layer.Given || !s.Spacing.Given && s.tooNarrow() {
		return gauge{}, false
	}
	// Lines that fuse fill the whole wall, so all of them show in its thickness.
	// Between lines with gaps nothing shows: their places are those of the
	// moves, and only the two outer flanks come nearer.
	lines, spacing := s.walls(), s.spacing()
	telling := lines
	if s.Fused.Word == "gaps" {
		telling = 1
	}
	return gauge{(lines-telling)*spacing + s.rounding(), telling * spacing, 1}, true
}

// tooNarrow reports whether a line would be higher than wide; one of no width is.
func (s *entries) tooNarrow() bool { return s.Width.Value() < s.Layer.Value() }

// plannedMass is what should be weighed with a flow of 1, g.
func (s *entries) plannedMass() float64 {
	m := s.Planned.Value()
	if s.Stated.Word == "length" {
		m = drive.FilamentMass(s.Used.Value(), s.Set.Value(), s.Density.Value())
	}
	if s.Included.Word == "with" {
		return float64(m) / s.flow()
	}
	return float64(m)
}

// read returns what was read, and what is wrong with that.
func (a *solution) read() []report.Problem {
	s := a.sheet
	var problems []report.Problem
	add := func(i int, in *unit.Entry) {
		r := reading{i, in.Number, s.Aside.Rows[i].On, in.Grid()}
		if in.Given && !r.aside && a.hasGauge && r.value <= a.gauge.offset {
			problems = append(problems, report.Problem{Key: "thick", Row: i,
				Says: tooThin.Fill("read", unit.Trim(r.value, 6), "least", unit.Trim(a.gauge.offset, 3))})
			return
		}
		if in.Given {
			a.readings = append(a.readings, r)
		}
	}
	for i := range s.Aside.Rows {
		switch s.By.Word {
		case byMass:
			add(i, &s.Weighed.Rows[i])
		case byDiameter:
			add(i, &s.Across.Rows[i])
		default:
			add(i, &s.Thick.Rows[i])
		}
	}
	if s.By.Word == byWalls && s.Width.Given && s.Layer.Given && s.tooNarrow() {
		problems = append(problems, report.Problem{Key: "width", Row: 0, Says: tooHigh.Fill("width", s.Width.Text(), "layer", s.Layer.Text())})
	}
	return problems
}

// counted are the readings that are not left out.
func (a *solution) counted() []reading {
	var all []reading
	for _, r := range a.readings {
		if !r.aside {
			all = append(all, r)
		}
	}
	return all
}

func (a *solution) series() measure.Series {
	var all measure.Series
	for _, r := range a.counted() {
		all = append(all, r.value)
	}
	return all
}

// instrument is what was read with, in the unit of the readings. Its eye is
// what single readings scatter by.
func (s *entries) instrument(mean float64) (with measure.Instrument, told bool) {
	if s.By.Word == byMass {
		return measure.Instrument{Resolution: s.Balance.Number, Accuracy: s.BalanceLimits.Number, Eye: massScatter * mean}, s.Balance.Given
	}
	with, told = s.tool.Instrument()
	with.Eye = wallScatter
	if s.By.Word == byDiameter {
		with.Eye = diameterScatter
	}
	return with, told
}

// densityLimits is how far, relatively, the density may be off.
func (s *entries) densityLimits() float64 {
	if s.DensityLimits.Given {
		return s.DensityLimits.Number / 100
	}
	return densityTolerance
}

// solve takes the ratio of plastic from the readings. Source of the
// uncertainty: JCGM 100, 5.1.2, with the gauge's slope as sensitivity.
func (a *solution) solve() bool {
	series := a.series()
	if len(series) == 0 || !a.hasGauge {
		return false
	}
	with, _ := a.sheet.instrument(series.Mean())
	var err error
	if a.raw, err = (measure.Repeated{Readings: series, With: with}).Measure(); err != nil {
		return false
	}
	m := a.raw
	slope := a.gauge.slope(m.Length)
	m.Length, m.Budget = a.gauge.ratio(m.Length), m.Budget.Scaled(slope)
	if a.sheet.By.Word == byMass {
		u := m.Length * a.sheet.densityLimits() / math.Sqrt(3) // JCGM 100, 4.3.7 (7)
		m.Budget = append(m.Budget, measure.Component{ID: densityPart, U: u, Dof: math.Inf(1), Fixed: true, Shape: measure.Rectangular})
	}
	if a.scale, err = measure.ScaleOf(1, m); err != nil {
		return false
	}
	a.budget = m.Budget
	a.scale.Test.Commanded = 1 / slope // so that advice on another instrument scales alike
	if a.sheet.By.Word == byMass {
		a.scale.Test = measure.Test{Scatter: a.scale.Test.Scatter} // of lengths only
	}
	a.judged, err = a.scale.Judge(a.sheet.tolerance())
	a.alone, a.vague = !a.raw.Test.Known(), a.scale.Vague()
	return err == nil && !a.vague
}

// enoughWalls is with how many lines side by side, of the same error and
// scatter, the matter would be settled.
func (a *solution) enoughWalls() (int, bool) {
	if a.sheet.By.Word != byWalls || a.sheet.Fused.Word == "gaps" {
		return 0, false
	}
	now := a.sheet.walls()
	for n := now + 1; n <= 12; n++ {
		s := a.scale
		at := s.Ratio.Value
		s.Ratio = s.Ratio.Scaled(now / n)
		s.Ratio.Value = at
		s.Floor *= now / n
		j, err := s.Judge(a.sheet.tolerance())
		if err == nil && (j.Verdict == measure.LeaveIt || j.Verdict == measure.ChangeIt) {
			return int(n), true
		}
	}
	return 0, false
}

func (s *entries) Solve() report.Report {
	a := solution{sheet: s, unit: "mm"}
	if s.By.Word == byMass {
		a.unit = "g"
	}
	a.gauge, a.hasGauge = s.gaugeOf()
	problems := a.read()
	a.found = a.solve()
	return a.report(problems)
}

// report withholds everything about the flow until the extruder is calibrated.
func (a *solution) report(problems []report.Problem) report.Report {
	r := report.Report{Problems: problems, Picture: a.sheet.guide(), Care: a.sheet.care(), Assumed: a.sheet.assumed()}
	r.Add(a.howTo().Fold(howBrief))
	readings := a.readingsPart().Fold(readingsBrief.Fill(len(a.readings)))
	switch {
	case a.sheet.Scale.Word != axis.ScaleVerified:
		r.Add(a.calibrateFirst())
	case a.sheet.Printed.Word == printedBefore:
		r.Add(&oldPiece, readings)
	case a.found:
		r.Answer = a.answer()
		r.Add(a.next(), readings, a.why().Fold(whyBrief))
	default:
		r.Add(a.missing(), a.tooVague(), readings)
	}
	r.Add(&whatBelongsWhere)
	return r
}
