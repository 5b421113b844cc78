package measure

import (
	"math"

	"striderule/calc/distribution"
)

// Evidence is readings from which follows how far an axis moved.
type Evidence interface {
	// Measure returns the length, or an error if there is none.
	Measure() (Measured, error)
}

var (
	_ Evidence = Repeated{}
	_ Evidence = MarkTest{}
	_ Evidence = TwoMeans{}
)

// Measured is a length and why it is doubtful.
type Measured struct {
	Length   float64 // mm, the mean of the runs
	Runs     Series  // mm, the length of each run; none of TwoMeans
	Repeats  int     // how many runs; of TwoMeans, of its shorter series
	Scatter  float64 // mm, standard deviation of Runs (n−1); 0 of one run
	Budget   Budget  // of Length, mm
	Test     Test    // how it was measured; Test.Runs is 0 of TwoMeans
	Warnings []Warning
}

// Estimate returns the length with its uncertainty, mm.
func (m Measured) Estimate() Estimate { return m.Budget.Estimate(m.Length) }

// A Test is how lengths are measured: all that their uncertainty depends on.
// Changed a little, it says what another test would give.
type Test struct {
	Commanded     float64 // mm; 0 if not known yet
	Length        float64 // mm, moved
	Mark          float64 // mm, the longest reading from the drive to the mark; 0 where the length itself is read
	Runs          int
	Scatter       float64 // mm, standard deviation of the runs; of one run, what to expect
	With          Instrument
	RemainingWith *Instrument  // nil: With reads what remains as well
	Earlier       Spread       // of the same machine, from tests before or a plan
	Tools         []Instrument // to choose a finer one from; nil: Instruments
}

// A Spread is a standard deviation that is known from elsewhere, with its degrees of freedom;
// none where these are 0.
type Spread struct{ SD, Dof float64 }

// enoughDof is from how many degrees of freedom on a spread may stand in for that of a single
// run, which shows none.
const enoughDof = 4

// Shown is the standard deviation of single runs with its degrees of freedom, which the next
// test may take for known: that of the runs and the one from before, pooled, unless the runs
// scatter more than chance explains: then theirs alone. None of a single run that few runs from
// before stand by. Source: JCGM 100, H.3.6, H.5.2.5, pooled variances.
func (t Test) Shown() Spread {
	own := Spread{t.Scatter, float64(t.Runs - 1)}
	if t.Runs == 1 && t.Earlier.Dof < enoughDof {
		return Spread{}
	}
	if t.Earlier.Dof > 0 && !t.Wilder() {
		all := own.Dof + t.Earlier.Dof
		own.SD, own.Dof = math.Sqrt((own.Dof*own.SD*own.SD+t.Earlier.Dof*t.Earlier.SD*t.Earlier.SD)/all), all
	}
	return own
}

// Wilder reports whether the runs scatter more than those before by more than chance explains,
// at 1 %. Source: the F test of two variances.
func (t Test) Wilder() bool {
	if t.Runs < 2 || t.Earlier.Dof <= 0 || t.Earlier.SD <= 0 {
		return false
	}
	f := t.Scatter / t.Earlier.SD
	p, err := distribution.FisherUpper(f*f, float64(t.Runs-1), t.Earlier.Dof)
	return err != nil || p < 0.01
}

// Known reports whether the runs' scatter is known, their own or that from before.
func (t Test) Known() bool { return t.Shown().Dof > 0 }

// single is the scatter as a component of a single run's length.
func (t Test) single() Component {
	s := t.Shown()
	c := Component{ID: Scatter, U: s.SD, Dof: s.Dof, TypeA: true, Shape: ScaledT}
	if s.Dof <= 1 {
		c.Least = t.steps().Combined()
	}
	return c
}

// Budget returns the components of the mean length, mm. Several runs have
// their scatter, in which the placing of the mark is contained, as each is
// marked anew; one run has the placing alone. The step of the instrument
// stays, however many runs: both are kept (JCGM 100, F.2.2.1). Two runs that
// fall on the same line of it by chance must not look better known than the
// lines lie apart.
func (t Test) Budget() Budget {
	var b Budget
	if t.Known() {
		c, root := t.single(), math.Sqrt(float64(t.Runs))
		c.U, c.Least = c.U/root, c.Least/root // JCGM 100, 4.2.3 (5)
		b = append(b, c)
	} else if t.With.Eye > 0 {
		b = append(b, t.With.eye())
	}
	b = append(b, t.steps()...)
	return append(b, t.common()...)
}

// common is what all runs share: the limits of what they are read with.
func (t Test) common() Budget {
	switch {
	case t.Mark == 0:
		return t.With.limits(Accuracy, Certificate)
	case t.RemainingWith != nil: // independent of each other
		return append(t.With.limits(MarkPart+Accuracy, MarkPart+Certificate),
			t.RemainingWith.limits(RemainingPart+Accuracy, RemainingPart+Certificate)...)
	}
	// One instrument for both: a zero error is in both readings and cancels. An
	// error of its scale, taken as reaching the limits at the longest reading,
	// acts on the difference. JCGM 100, 5.2.2 and F.1.2.3.
	return t.With.limits(Accuracy, Certificate).Scaled(t.Length / t.Mark)
}

// steps are the resolutions of all readings that make one length.
func (t Test) steps() Budget {
	if t.Mark == 0 {
		return Budget{t.With.resolution(Resolution)}
	}
	second := t.With
	if t.RemainingWith != nil {
		second = *t.RemainingWith
	}
	return Budget{t.With.resolution(MarkPart + Resolution), second.resolution(RemainingPart + Resolution)}
}

// floor is the half-width of the 95 % interval that endless runs would leave. Steps are not in
// it where the runs scatter by half of one or more: the readings then fall on several lines,
// and their mean between these.
func (t Test) floor(b Budget) float64 {
	fixed := b.Fixed()
	half := t.step() / 2 * (1 - 1e-9) // 20, 20, 20, 21 scatter by just that, but for what rounding leaves
	if t.Runs > 1 && t.Scatter >= half {
		fixed = fixed.withoutSteps()
	}
	d := fixed.doubts()
	return d.Fixed(1 - Sure)
}

// step is the coarser of those that a length is read with.
func (t Test) step() float64 {
	if t.Mark > 0 && t.RemainingWith != nil {
		return max(t.With.Resolution, t.RemainingWith.Resolution)
	}
	return t.With.Resolution
}

// measured puts the evidence of a test together.
func (t Test) measured(runs Series) Measured {
	runs = runs.onGrid(max(t.Mark, runs.longest()) * noise)
	m := Measured{Length: runs.Mean(), Runs: runs, Repeats: len(runs)}
	m.Scatter, _ = runs.Spread()
	t.Length, t.Runs, t.Scatter = m.Length, len(runs), m.Scatter
	if t.Runs == 1 {
		t.Scatter = t.With.Eye
	}
	m.Test, m.Budget = t, t.Budget()
	m.Warnings = warnings(m.Budget, runs)
	if t.Wilder() {
		m.Warnings = append(m.Warnings, WarnWilder)
	}
	if !t.With.reaches(max(t.Mark, runs.longest())) {
		m.Warnings = append(m.Warnings, WarnOverRange)
	}
	return m
}

// warnings are the doubts about lengths that were read several times, or once.
func warnings(b Budget, series ...Series) []Warning {
	var list []Warning
	for _, s := range series {
		switch {
		case len(s) == 1:
			list = append(list, WarnOneRun)
		case s.Equal():
			list = append(list, WarnAllEqual)
		case len(s) == 2:
			list = append(list, WarnTwoRuns)
		default:
			continue
		}
		break // the same doubt once
	}
	if b.Combined() == 0 {
		list = append(list, WarnNothingKnown)
	}
	return list
}

// Repeated is one length read several times, each after a move of its own.
type Repeated struct {
	Readings Series // mm
	With     Instrument
	Earlier  Spread // mm, of the same machine
}

// Check returns what makes it no evidence, if anything does.
func (r Repeated) Check() error {
	if err := r.Readings.Check(); err != nil {
		return err
	}
	return r.With.Check()
}

// Measure returns the mean length. Every reading must be above 0.
func (r Repeated) Measure() (Measured, error) {
	if err := r.Check(); err != nil {
		return Measured{}, err
	}
	for _, x := range r.Readings {
		if x <= 0 {
			return Measured{}, ErrLength
		}
	}
	return Test{With: r.With, Earlier: r.Earlier}.measured(r.Readings), nil
}

// TwoMeans is a mark and a remaining length that were read apart from each
// other, each several times, so that their means are independent.
type TwoMeans struct{ Mark, Remaining Repeated }

// Measure returns mean mark less mean remaining length.
func (t TwoMeans) Measure() (Measured, error) {
	var b Budget
	for _, part := range []struct {
		Repeated
		name string
	}{{t.Mark, MarkPart}, {t.Remaining, RemainingPart}} {
		if err := part.Check(); err != nil {
			return Measured{}, err
		}
		if part.Readings.Mean() < 0 {
			return Measured{}, ErrLength
		}
		alone := Test{With: part.With}.measured(part.Readings)
		for _, c := range alone.Budget {
			c.ID = part.name + c.ID
			b = append(b, c)
		}
	}
	m := Measured{
		Length:  t.Mark.Readings.Mean() - t.Remaining.Readings.Mean(),
		Repeats: min(len(t.Mark.Readings), len(t.Remaining.Readings)),
		Budget:  b,
	}
	if m.Length <= 0 {
		return Measured{}, ErrNothingMoved
	}
	m.Warnings = warnings(b, t.Mark.Readings, t.Remaining.Readings)
	return m, nil
}
