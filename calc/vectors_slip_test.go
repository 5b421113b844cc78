package calc_test

import (
	"slices"

	"striderule/calc/measure"
)

// slipCase works in relative errors; the set has them in percent.
func slipCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	var test measure.SlipTest
	commanded, ok := in.float("commanded")
	if !ok {
		return nil, notOffered("no commanded length")
	}
	test.Commanded = commanded
	test.Alpha, _ = in.float("alpha")
	speeds, err := in.floats("speeds")
	if err != nil {
		return nil, err
	}
	lengths, err := in.lists("actual_lengths")
	if err != nil || len(lengths) != len(speeds) {
		return nil, notOffered("not one list of lengths for each speed")
	}
	for i, speed := range speeds {
		for _, length := range lengths[i] {
			test.Runs = append(test.Runs, measure.SpeedRun{Speed: speed, Length: length})
		}
	}
	r, err := test.Solve()
	if err != nil {
		return nil, err
	}
	percent := func(e measure.Estimate) measure.Estimate { return e.Scaled(100) }
	zero, slope := percent(r.Line.InterceptEstimate()), percent(r.Line.SlopeEstimate())
	got := map[string]any{
		"test_possible": true, "n": len(r.Line.Points), "dof": int(r.Line.Dof),
		"slope": slope.Value, "se_slope": slope.U, "slope_ci95": interval95(slope),
		"zero_speed_error": zero.Value, "se_zero_speed_error": zero.U, "zero_speed_error_ci95": interval95(zero),
		"residual_sd": 100 * r.Line.ResidualSD, "p_value": r.P,
		"slope_significant": r.Significant, "verdict": r.Trouble.String(),
		"factor_c_zero_speed": measure.Correction(1, 1+r.Line.Intercept),
	}
	if t, ok := r.Line.SlopeEstimate().T(0); ok {
		got["t_statistic"] = t
	}
	means := make([]float64, len(speeds)) // in the order of the case
	for i, speed := range speeds {
		means[i] = 100 * r.MeanErrors[slices.Index(r.Speeds, speed)]
	}
	got["mean_error_per_speed"] = means
	lackFigures(got, r.Lack, r.HasLack)
	if r.Basis == measure.FromZeroSpeed {
		got["factor_c_zero_speed"] = r.Scale.Factor().Value
	}
	return got, in.leftOver()
}
