package distribution

import (
	"errors"
	"math"
	"sync/atomic"

	"gonum.org/v1/gonum/mathext"
)

// Student's t distribution for real degrees of freedom, which are above 0;
// +Inf is the normal distribution. Sources: JCGM 100, G.3; Abramowitz and
// Stegun, Handbook of Mathematical Functions, 26.7.

// What is refused.
var (
	ErrNotFinite   = errors.New("not a number that can be worked with")
	ErrDof         = errors.New("degrees of freedom must be above 0")
	ErrProbability = errors.New("a probability lies between 0 and 1")
	ErrRange       = errors.New("the result is beyond what a number can hold")
)

// biggest bounds what is worked with, so that squares of sums stay finite.
const biggest = 1e100

// Finite reports whether all values can be worked with.
func Finite(values ...float64) bool {
	for _, v := range values {
		if !(math.Abs(v) <= biggest) {
			return false
		}
	}
	return true
}

// manyDof is from where on Hill's approximation takes over: the incomplete beta
// function loses digits with its arguments, the approximation gains them.
const manyDof = 500

// StudentCDF returns P(T ≤ t), to a relative 1e-11 down to tails of 1e-20.
func StudentCDF(t, dof float64) (float64, error) {
	if err := checkStudent(t, dof); err != nil {
		return 0, err
	}
	return upper(-t, dof), nil
}

// StudentUpper returns P(T > t), as good as StudentCDF.
func StudentUpper(t, dof float64) (float64, error) {
	if err := checkStudent(t, dof); err != nil {
		return 0, err
	}
	return upper(t, dof), nil
}

// StudentTails returns P(|T| > |t|), as good as StudentCDF.
func StudentTails(t, dof float64) (float64, error) {
	if err := checkStudent(t, dof); err != nil {
		return 0, err
	}
	return tails(math.Abs(t), dof), nil
}

// StudentQuantile returns the t that covers p on both sides, P(−t ≤ T ≤ t) = p,
// to a relative 1e-11. p lies between 0 and 1, neither of them. What no number
// can hold (nearly all, of very few degrees of freedom) is an ErrRange.
func StudentQuantile(p, dof float64) (float64, error) {
	if !(p > 0 && p < 1) {
		return 0, ErrProbability
	}
	if err := checkStudent(0, dof); err != nil {
		return 0, err
	}
	if t := quantile(p, 1-p, dof, 1e-15); t < math.MaxFloat64 {
		return t, nil
	}
	return 0, ErrRange
}

// FisherUpper returns P(F > f) of the F distribution with d1 and d2 degrees of
// freedom. Source: Abramowitz and Stegun, 26.6.2.
func FisherUpper(f, d1, d2 float64) (float64, error) {
	switch {
	case !(d1 > 0 && d2 > 0) || math.IsInf(d1, 1) || math.IsInf(d2, 1):
		return 0, ErrDof
	case !Finite(f):
		return 0, ErrNotFinite
	case f <= 0:
		return 1, nil
	}
	return mathext.RegIncBeta(d2/2, d1/2, d2/(d2+d1*f)), nil // A&S 26.6.2
}

func checkStudent(t, dof float64) error {
	switch {
	case !(dof > 0):
		return ErrDof
	case !Finite(t):
		return ErrNotFinite
	}
	return nil
}

// Missed returns P(|T| > t), of a t that is not negative, and 0 where that is beyond all
// numbers: StudentTails, for who knows that dof is above 0.
func Missed(t, dof float64) float64 {
	if !(t < biggest) {
		return 0
	}
	return tails(t, dof)
}

// Least is the smallest probability of which Span finds its way.
const Least = 1e-18

// Span returns the t that is missed with probability q on both sides together: Missed turned
// round, and StudentQuantile of 1 − q, for who knows that q lies between Least and 1 and dof is
// above 0. It is +Inf where no number can hold it.
func Span(q, dof float64) float64 {
	if q == 0.05 {
		return k95(dof)
	}
	return quantile(1-q, q, dof, 1e-8)
}

// k95 is the coverage factor of 95 % on both sides. Source: JCGM 100, G.3.2. A sheet
// asks for that of the same few degrees of freedom dozens of times, and finding one
// takes longer than the rest of the sheet: the last ones are kept.
func k95(dof float64) float64 {
	place := &factors[math.Float64bits(dof)*0x9E3779B97F4A7C15>>(64-3)]
	if kept := place.Load(); kept != nil && kept.dof == dof {
		return kept.k
	}
	k := quantile(0.95, 0.05, dof, 1e-15)
	place.Store(&factor{dof, k})
	return k
}

type factor struct{ dof, k float64 }

var factors [8]atomic.Pointer[factor]

// upper is P(T > t).
func upper(t, dof float64) float64 {
	if t < 0 {
		return 1 - tails(-t, dof)/2
	}
	return tails(t, dof) / 2
}

// tails is P(|T| > t) of a t that is not negative.
func tails(t, dof float64) float64 {
	switch {
	case dof > manyDof:
		return math.Erfc(asNormal(t, dof) / math.Sqrt2)
	case t < 1: // x so near to 1 has lost its digits
		return 1 - centre(t, dof)
	}
	s := dof / t / t
	return mathext.RegIncBeta(dof/2, 0.5, s/(1+s)) // A&S 26.7.1, x = ν/(ν+t²)
}

// centre is P(|T| ≤ t), to all digits for a small t too.
func centre(t, dof float64) float64 {
	switch {
	case dof > manyDof:
		return math.Erf(asNormal(t, dof) / math.Sqrt2)
	case t >= 1:
		return 1 - tails(t, dof)
	}
	s := t * t / dof
	return mathext.RegIncBeta(0.5, dof/2, s/(1+s)) // A&S 26.7.1, 1−x
}

// asNormal turns a t of many degrees of freedom into the normal deviate of the
// same probability. Source: G. W. Hill, Algorithm 395, Communications of the
// ACM 13 (1970), 617.
func asNormal(t, dof float64) float64 {
	if dof > 1e16 {
		return t
	}
	a := dof - 0.5
	b := 48 * a * a
	y := a * math.Log1p(t*t/dof)
	series := (((-0.4*y-3.3)*y-24)*y - 85.5) / (0.8*y*y + 100 + b)
	return ((series+y+3)/b + 1) * math.Sqrt(y)
}

// quantile is the t with P(|T| ≤ t) = p = 1 − q. Both are given, so that
// neither a small p nor a small q loses digits. It is +Inf where t is beyond
// what a number can hold. After a step below enough it is good to the square of that where the
// slope is exact.
func quantile(p, q, dof, enough float64) float64 {
	// Against the logarithm of t, that of the tails bends one way only, from
	// level to −ν: after its first step Newton's method comes down on t without
	// missing it, and fast. The centre bends one way too.
	part, want, sign := centre, p, 1.0
	if q < p {
		part, want, sign = tails, q, -1
	}
	t := math.Sqrt2 * math.Erfinv(min(p, 0.9999)) // the normal quantile
	if dof >= exactSlope && !math.IsInf(dof, 1) {
		enough = 1e-15
	}
	for range 200 {
		have := part(t, dof)
		step := math.Log(want/have) / (sign * 2 * t * density(t, dof) / have)
		if math.IsNaN(step) {
			return math.Inf(1)
		}
		t *= math.Exp(min(max(step, -20), 20))
		if math.Abs(step) < enough {
			break
		}
	}
	return t
}

// exactSlope is up to where Γ is known; a slope for Newton's steps need not be exact.
const exactSlope = 300

// density is Student's probability density. Source: A&S 26.7.1, its derivative;
// with many degrees of freedom that of asNormal.
func density(t, dof float64) float64 {
	if dof > manyDof {
		z := asNormal(t, dof)
		return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) * t / z / (1 + t*t/dof)
	}
	scale := 1 / math.Sqrt(dof)
	if dof < exactSlope {
		scale *= math.Gamma((dof+1)/2) / math.Gamma(dof/2)
	} else {
		scale *= math.Sqrt(dof / 2)
	}
	return scale / math.Sqrt(math.Pi) * math.Pow(1+t*t/dof, -(dof+1)/2)
}
