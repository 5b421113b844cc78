package calc_test

import "striderule/calc/measure"

// lackFigures adds the test for lack of fit, where there is one.
func lackFigures(got map[string]any, t measure.LackOfFit, ok bool) {
	if ok {
		got["pure_error_sd"], got["lack_of_fit_F"], got["lack_of_fit_p"] = t.PureSD, t.F, t.P
		got["lack_of_fit_dof"], got["line_is_adequate"] = []float64{t.DofLack, t.DofPure}, t.Adequate
	}
}

func scaleOffsetCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	commanded, err := in.floats("commanded")
	if err != nil {
		return nil, err
	}
	measured, err := in.lists("measured")
	if err != nil || len(measured) != len(commanded) {
		return nil, notOffered("not one list of readings for each length")
	}
	var points []measure.Point
	for i, x := range commanded {
		for _, y := range measured[i] {
			points = append(points, measure.Point{X: x, Y: y})
		}
	}
	a, err := measure.ScaleAndOffset(points, measure.Instrument{})
	if err != nil {
		return nil, err
	}
	got := lineFigures(a.Line)
	got["intercept_p_value"] = a.Line.InterceptEstimate().P(0)
	got["offset_detected"] = a.OffsetFound
	lackFigures(got, a.Lack, a.HasLack)
	got["naive_ratio_shortest"], got["naive_ratio_longest"] = a.Ratios()
	if tolerance, ok := in.float("slope_tolerance"); ok {
		got["slope_verdict"] = a.Decide(tolerance).String()
	}
	if old, ok := in.float("old_steps_per_mm"); ok {
		steps := a.Scale.Steps(old)
		got["new_steps_per_mm"], got["u_new_steps"], got["U95_new_steps"] = steps.Value, steps.U, steps.Expanded()
	}
	return got, in.leftOver()
}

func bidirectionalCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	positions, err := in.floats("targets")
	if err != nil {
		return nil, err
	}
	forward, err := in.lists("actual_forward")
	if err != nil {
		return nil, err
	}
	backward, err := in.lists("actual_backward")
	if err != nil {
		return nil, err
	}
	if len(forward) != len(positions) || len(backward) != len(positions) {
		return nil, notOffered("not one list of readings for each target and direction")
	}
	var targets []measure.Target
	for i, x := range positions {
		targets = append(targets, measure.Target{Position: x, Forward: forward[i], Backward: backward[i]})
	}
	r, err := measure.Bidirectional(targets, measure.Instrument{})
	if err != nil {
		return nil, err
	}
	got := map[string]any{
		"mean_forward": r.Forward, "mean_backward": r.Backward, "mean_bidirectional": r.Mean,
		"reversal_per_target": r.PerTarget, "reversal_value_B": r.B, "mean_reversal": r.MeanReversal.Value,
		"mean_bidirectional_deviation_range_M": r.M, "systematic_E": r.E,
		"systematic_E_forward": r.EForward, "systematic_E_backward": r.EBackward,
		"uncertainty_available": r.HasSpread,
	}
	if r.HasSpread {
		got["s_forward"], got["s_backward"], got["accuracy_A"] = r.SForward, r.SBackward, r.A
		got["repeatability_R"], got["repeatability_R_forward"], got["repeatability_R_backward"] = r.R, r.RForward, r.RBackward
	}
	if r.HasSlope {
		got["scale_slope_from_bidirectional_means"] = r.Slope
	}
	return got, in.leftOver()
}
