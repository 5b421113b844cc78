package calc_test

import (
	"math"

	"striderule/calc/measure"
)

// conformityCase decides whether a value is within limits, by the rules that
// the set knows.
func conformityCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	e := measure.Estimate{Dof: math.Inf(1)}
	l := measure.Limits{Lower: math.Inf(-1), Upper: math.Inf(1)}
	y, ok := in.float("y")
	if !ok {
		return nil, notOffered("no value")
	}
	e.Value = y
	expanded, hasExpanded := in.float("U")
	k, hasK := in.float("k")
	switch u, ok := in.float("u"); {
	case ok:
		e.U = u
	case hasExpanded && hasK:
		e.U = expanded / k
	default:
		return nil, notOffered("no uncertainty")
	}
	if dof, ok := in.float("dof", "nu", "veff"); ok {
		e.Dof = dof
	}
	if lower, ok := in.float("lower_limit"); ok {
		l.Lower = lower
	}
	if upper, ok := in.float("upper_limit"); ok {
		l.Upper = upper
	}
	chances, err := l.Chances(e)
	if err != nil {
		return nil, err
	}
	decision, err := l.ByProbability(e)
	if err != nil {
		return nil, err
	}
	got := map[string]any{
		"u": e.U, "p_conformity": chances.Within, "p_nonconformity": chances.Above + chances.Below,
		"decision_probability_95": decision.String(),
	}
	for name, factor := range map[string]float64{"1.645u": measure.Guard95, "2u": measure.Guard2U} {
		g := factor * e.U
		decision, err := l.ByGuard(y, g)
		if err != nil {
			return nil, err
		}
		got["decision_guard_"+name] = decision.String()
		got["guard_band_"+name] = g
		got["acceptance_exists_guard_"+name] = l.Acceptable(g)
	}
	return got, in.leftOver()
}
