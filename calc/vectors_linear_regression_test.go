package calc_test

import "striderule/calc/measure"

// pointsOf reads x and y; "t" less "t0" and "b" are the names of one published
// example.
func pointsOf(in facts) (points []measure.Point, origin float64, err error) {
	xs, err := in.floats("x", "t")
	if err != nil {
		return nil, 0, err
	}
	ys, err := in.floats("y", "b")
	if err != nil || len(xs) != len(ys) {
		return nil, 0, notOffered("not as many y as x")
	}
	origin, _ = in.float("t0")
	for i, x := range xs {
		points = append(points, measure.Point{X: x - origin, Y: ys[i]})
	}
	return points, origin, nil
}

// interval95 is an interval as a list.
func interval95(e measure.Estimate) []float64 {
	low, high := e.Interval()
	return []float64{low, high}
}

// lineFigures are what every set calls the parts of a line.
func lineFigures(l measure.Line) map[string]any {
	got := map[string]any{
		"fit_possible": true, "n": len(l.Points), "dof": int(l.Dof), "slope": l.Slope, "intercept": l.Intercept,
		"se_slope": l.SESlope(), "se_intercept": l.SEIntercept(), "residual_sd": l.ResidualSD,
		"r_squared": l.RSquared(), "r_squared_uncentred": l.RSquared(),
		"cov_intercept_slope": l.Covariance(), "corr_intercept_slope": l.Correlation(),
		"sse": l.SSE, "ssr": l.SSR, "ssr_uncentred": l.SSR, "t95": l.SlopeEstimate().K(),
		"slope_ci95": interval95(l.SlopeEstimate()), "intercept_ci95": interval95(l.InterceptEstimate()),
	}
	if f, ok := l.F(); ok {
		got["f_statistic"] = f
	}
	return got
}

func lineCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	points, origin, err := pointsOf(in)
	if err != nil {
		return nil, err
	}
	l, err := measure.Fit(points)
	if err != nil {
		return nil, err
	}
	got := lineFigures(l)
	if x, ok := in.float("predict_at_x", "predict_at_t"); ok {
		line, err := l.At(x - origin)
		if err != nil {
			return nil, err
		}
		next, err := l.NextAt(x - origin)
		if err != nil {
			return nil, err
		}
		got["prediction"], got["u_prediction"], got["U95_prediction"] = line.Value, line.U, line.Expanded()
		got["u_new_observation"] = next.U
	}
	if y, ok := in.float("target_y"); ok {
		x, err := l.Inverse(y)
		if err != nil {
			return nil, err
		}
		got["x0"], got["u_x0"], got["U95_x0"] = x.Value, x.U, x.Expanded()
	}
	return got, in.leftOver()
}

func originLineCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	points, _, err := pointsOf(in)
	if err != nil {
		return nil, err
	}
	l, err := measure.FitThroughOrigin(points)
	if err != nil {
		return nil, err
	}
	return lineFigures(l), in.leftOver()
}
