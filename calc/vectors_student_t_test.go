package calc_test

import (
	"striderule/calc/distribution"
)

// studentCase answers what is asked of Student's t: a quantile where a
// probability is given, else the distribution function; one or a list of them.
func studentCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	dofs, err := in.floats("nu", "dof")
	if err != nil {
		return nil, err
	}
	got := map[string]any{}
	if p, ok := in.float("p_two_sided"); ok {
		var list []float64
		for _, dof := range dofs {
			t, err := distribution.StudentQuantile(p, dof)
			if err != nil {
				return nil, err
			}
			list = append(list, t)
		}
		got["t_rounded"] = list
		if len(list) == 1 {
			got["t"] = list[0]
		}
		return got, in.leftOver()
	}
	t, ok := in.float("t")
	if !ok || len(dofs) != 1 {
		return nil, notOffered("neither a probability nor one t is given")
	}
	for key, f := range map[string]func(t, dof float64) (float64, error){
		"cdf": distribution.StudentCDF, "upper_tail": distribution.StudentUpper, "two_sided_tail": distribution.StudentTails,
	} {
		p, err := f(t, dofs[0])
		if err != nil {
			return nil, err
		}
		got[key] = p
	}
	return got, in.leftOver()
}
