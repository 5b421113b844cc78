package measure

import (
	"math"
	"slices"

	"striderule/calc/distribution"
	"striderule/calc/lists"
	"striderule/calc/unit"
)

// A Shape is the distribution of a component, from which calc/simulation draws it.
type Shape uint8

// The shapes, with their clauses in JCGM 101.
const (
	Normal      Shape = iota // 6.4.7
	Rectangular              // 6.4.2
	ScaledT                  // 6.4.9, with the component's degrees of freedom
)

// Names of the components that evidence is made of.
const (
	Scatter       = "scatter"
	Placement     = "placement"
	Resolution    = "resolution"
	Accuracy      = "accuracy"
	Certificate   = "certificate"
	LineFit       = "fit"
	MarkPart      = "mark-"      // before a name: of the mark's readings
	RemainingPart = "remaining-" // before a name: of the remaining length's readings
)

// A Component is one cause of doubt about a result.
type Component struct {
	_     unit.Uncompared
	ID    string
	U     float64 // standard uncertainty, in the unit of the result
	Dof   float64 // degrees of freedom of U; +Inf where it was not estimated from readings
	TypeA bool    // from the scatter of readings (JCGM 100, 4.2); else from other knowledge (4.3)
	Fixed bool    // more runs do not make it smaller
	Step  bool    // from the resolution of a tool
	Least float64 // in the interval a scatter is not taken to be smaller; 0 for the Guide's figures
	Shape Shape
}

// A Budget is the components of one result, independent of each other.
type Budget []Component

// Combined returns the combined standard uncertainty. Source: JCGM 100,
// 5.1.2 (10), with sensitivities of 1.
func (b Budget) Combined() float64 {
	u := 0.0
	for _, c := range b {
		u = math.Hypot(u, c.U) // JCGM 100, 5.1.2 (10)
	}
	return u
}

// Fixed returns the components that more runs do not make smaller.
func (b Budget) Fixed() Budget {
	var fixed Budget
	for _, c := range b {
		if c.Fixed {
			fixed = append(fixed, c)
		}
	}
	return fixed
}

// Dof returns the effective degrees of freedom, not rounded, +Inf if no
// component has any. Source: JCGM 100, G.4.1 (G.2b), Welch-Satterthwaite.
func (b Budget) Dof() float64 {
	u, sum := b.Combined(), 0.0
	for _, c := range b {
		if c.U > 0 && c.Dof > 0 {
			sum += math.Pow(c.U/u, 4) / c.Dof
		}
	}
	if sum == 0 {
		return math.Inf(1)
	}
	return 1 / sum // JCGM 100, G.4.1 (G.2b)
}

// steps returns the components that are the resolution of a tool.
func (b Budget) steps() Budget {
	return lists.Keep(b, func(c Component) bool { return c.Step })
}

func (b Budget) withoutSteps() Budget {
	return lists.Keep(b, func(c Component) bool { return !c.Step })
}

// Estimate returns value with the budget's uncertainty.
func (b Budget) Estimate(value float64) Estimate {
	return Estimate{Value: value, U: b.Combined(), Dof: b.Dof(), doubts: b.doubts()}
}

// Scaled returns the budget of the result multiplied by factor, or of any
// function of it with that sensitivity. Source: JCGM 100, 5.1.3.
func (b Budget) Scaled(factor float64) Budget {
	scaled := slices.Clone(b)
	for i := range scaled {
		scaled[i].U *= math.Abs(factor)
		scaled[i].Least *= math.Abs(factor)
	}
	return scaled
}

// BySize returns the components, the largest first.
func (b Budget) BySize() Budget {
	sorted := slices.Clone(b)
	lists.Sort(sorted, func(x, y Component) bool { return x.U > y.U })
	return sorted
}

// An Estimate is a value and how well it is known: by the Guide's figures (U, Dof, K,
// Expanded), and by its interval (HalfWidth, Interval).
type Estimate struct {
	Value  float64
	U      float64 // standard uncertainty
	Dof    float64 // its degrees of freedom, may be +Inf
	doubts doubts  // of the interval; none: all of U is scatter
}

// Check returns an error unless value and uncertainty can be worked with.
func (e Estimate) Check() error {
	if !finite(e.Value, e.U) {
		return ErrNotFinite
	}
	if e.U < 0 || !(e.Dof > 0) {
		return ErrUncertainty
	}
	return nil
}

// K returns the coverage factor of 95 % on both sides. Source: JCGM 100,
// G.6.4, with the t of the real degrees of freedom.
func (e Estimate) K() float64 { return distribution.Span(1-Sure, e.Dof) }

// KTruncated is K with degrees of freedom cut to a whole number, at least 1, as
// JCGM 100, G.4.1, note 1, allows.
func (e Estimate) KTruncated() float64 { return distribution.Span(1-Sure, max(1, math.Floor(e.Dof))) }

// Expanded returns the Guide's expanded uncertainty of 95 %. Source: JCGM 100, 6.2.1 (18).
func (e Estimate) Expanded() float64 {
	if e.U == 0 {
		return 0
	}
	return e.K() * e.U // JCGM 100, 6.2.1 (18)
}

// Scaled returns the estimate multiplied by an exact factor.
func (e Estimate) Scaled(factor float64) Estimate {
	return Estimate{Value: e.Value * factor, U: e.U * math.Abs(factor), Dof: e.Dof, doubts: doubts{e.doubts.Scaled(factor)}}
}
