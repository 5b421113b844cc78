package measure

import "math"

// Limits are a tolerance interval. An end at ±Inf is no limit.
type Limits struct{ Lower, Upper float64 }

// Within returns the limits nominal ± tolerance.
func Within(nominal, tolerance float64) Limits {
	return Limits{nominal - tolerance, nominal + tolerance}
}

// Check returns ErrLimits unless Upper is above Lower and one is a limit.
func (l Limits) Check() error {
	if !(l.Lower < l.Upper) || math.IsInf(l.Lower, -1) && math.IsInf(l.Upper, 1) {
		return ErrLimits
	}
	return nil
}

// A Decision is the outcome of a rule.
type Decision uint8

// The decisions.
const (
	CannotTell Decision = iota
	Inside
	Outside
)

// String returns the decision's word: inside, outside or cannot_tell.
func (d Decision) String() string {
	switch d {
	case Inside:
		return "inside"
	case Outside:
		return "outside"
	}
	return "cannot_tell"
}

// Sure is the probability from which on something is taken as shown.
const Sure = 0.95

// Factors of u for guard bands.
const (
	Guard95 = 1.6448536269514722 // one-sided 95 % of the normal distribution
	Guard2U = 2.0
)

// Chances are the probabilities that a value lies within limits, and beyond
// either of them. They add to 1.
type Chances struct{ Within, Above, Below float64 }

// Chances returns the probabilities of a value that is known as e: it is beyond a limit with
// half of the probability with which an interval of e that just reaches there misses. Of an
// estimate that is all scatter that is Student's t. Sources: JCGM 106, 7.2, 7.4.
func (l Limits) Chances(e Estimate) (Chances, error) {
	if err := l.Check(); err != nil {
		return Chances{}, err
	}
	if err := e.Check(); err != nil {
		return Chances{}, err
	}
	return l.chances(e), nil
}

func (l Limits) chances(e Estimate) Chances {
	if e.U == 0 { // it is there or it is not
		switch {
		case e.Value > l.Upper:
			return Chances{Above: 1}
		case e.Value < l.Lower:
			return Chances{Below: 1}
		}
		return Chances{Within: 1}
	}
	// Half of what is missed lies beyond on one side.
	above, below := e.missed(math.Abs(l.Upper-e.Value))/2, e.missed(math.Abs(e.Value-l.Lower))/2
	switch { // from the tails, so that small ones keep their digits
	case e.Value > l.Upper:
		return Chances{Above: 1 - above, Below: below, Within: max(0, above-below)}
	case e.Value < l.Lower:
		return Chances{Below: 1 - below, Above: above, Within: max(0, below-above)}
	}
	return Chances{Above: above, Below: below, Within: 1 - above - below} // JCGM 106, 7.4
}

// ByProbability decides at 95 %: inside if the probability of being within is
// that large, outside if that of being beyond is. Source: JCGM 106, 7, 8.
func (l Limits) ByProbability(e Estimate) (Decision, error) {
	c, err := l.Chances(e)
	switch {
	case err != nil:
		return CannotTell, err
	case c.Within >= Sure:
		return Inside, nil
	case c.Within <= 1-Sure:
		return Outside, nil
	}
	return CannotTell, nil
}

// ByGuard decides with a guard band g on both sides of each limit, which is
// some factor (Guard95, Guard2U) of u. Source: JCGM 106, 8.3.
func (l Limits) ByGuard(value, g float64) (Decision, error) {
	if err := l.Check(); err != nil {
		return CannotTell, err
	}
	if !finite(value, g) || g < 0 {
		return CannotTell, ErrNotFinite
	}
	switch {
	case l.Lower+g <= value && value <= l.Upper-g: // JCGM 106, 8.3.2
		return Inside, nil
	case value < l.Lower-g || value > l.Upper+g: // JCGM 106, 8.3.3
		return Outside, nil
	}
	return CannotTell, nil
}

// Acceptable reports whether a guard band g leaves any value to accept.
func (l Limits) Acceptable(g float64) bool { return l.Lower+g <= l.Upper-g }

// ByInterval decides by a whole interval: inside if it lies within the limits,
// outside if it lies wholly beyond one. Source: JCGM 106, 8.3, with g = U.
func (l Limits) ByInterval(low, high float64) Decision {
	switch {
	case l.Lower <= low && high <= l.Upper:
		return Inside
	case high < l.Lower || low > l.Upper:
		return Outside
	}
	return CannotTell
}
