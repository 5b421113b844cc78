package calc_test

import "striderule/calc/measure"

// outlierCase gives the critical value of a number of readings, or tests them.
func outlierCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	alpha, ok := in.float("alpha_two_sided", "alpha")
	if !ok {
		return nil, notOffered("no alpha")
	}
	if n, ok := in.float("n"); ok {
		g, err := measure.GrubbsCritical(int(n), alpha)
		if err != nil {
			return nil, err
		}
		return map[string]any{"g_critical": g}, in.leftOver()
	}
	readings, err := in.floats("readings")
	if err != nil {
		return nil, err
	}
	p, err := measure.Grubbs(readings, alpha)
	if err != nil {
		return nil, err
	}
	got := map[string]any{
		"test_possible": true, "mean": p.Mean, "s": p.Spread,
		"suspect_index_0based": p.Index, "suspect_value": p.Value,
		"g": p.G, "g_critical": p.Critical, "outlier_found": p.Found,
	}
	if p.Found {
		got["mean_without"], got["s_without"] = p.MeanWithout, p.SpreadWithout
	}
	return got, in.leftOver()
}
