package calc_test

import (
	"maps"
	"math"
	"testing"

	"striderule/calc/measure"
	"striderule/calc/simulation"
)

// monteCarloDraws is what the tolerances of the set suppose.
const monteCarloDraws = 1_000_000

// feedCase is a feed test with separate series of mark and remaining length,
// its correction, and both intervals.
func feedCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	var test measure.TwoMeans
	got := map[string]any{"valid": true}
	for prefix, part := range map[string]*measure.Repeated{"mark_": &test.Mark, "remaining_": &test.Remaining} {
		r, err := repeatedOf(in, prefix)
		if err != nil {
			return nil, err
		}
		*part = r
		spread, ok := r.Readings.Spread()
		got[prefix+"mean"] = r.Readings.Mean()
		if ok {
			got[prefix+"s"] = spread
		}
	}
	m, err := test.Measure()
	if err != nil {
		return nil, err
	}
	for prefix, name := range map[string]string{"mark_": measure.MarkPart, "remaining_": measure.RemainingPart} {
		var own measure.Budget
		for _, part := range m.Budget {
			for id, key := range componentKeys {
				if part.ID == name+id {
					got[prefix+key] = part.U
					own = append(own, part)
				}
			}
		}
		got[prefix+"u"] = own.Combined()
	}
	return got, scaleFigures(got, in, m)
}

// pairedCase is a feed test whose mark is read for each run, before the run's own remaining
// length: the runs are the differences.
func pairedCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	marks, err := repeatedOf(in, "mark_")
	if err != nil {
		return nil, err
	}
	rests, err := repeatedOf(in, "remaining_")
	if err != nil {
		return nil, err
	}
	m, err := measure.MarkTest{Marks: marks.Readings, Remaining: rests.Readings, With: marks.With, RemainingWith: &rests.With}.Measure()
	if err != nil {
		return nil, err
	}
	got := map[string]any{"valid": true, "n": len(m.Runs)}
	if len(m.Runs) > 1 {
		got["s"], got["u_typeA"] = m.Scatter, m.Scatter/math.Sqrt(float64(len(m.Runs)))
	}
	return got, scaleFigures(got, in, m)
}

// scaleFigures adds what a feed test says of the setting.
func scaleFigures(got map[string]any, in facts, m measure.Measured) error {
	commanded, ok := in.float("commanded")
	if !ok {
		return notOffered("no commanded length")
	}
	s, err := measure.ScaleOf(commanded, m)
	if err != nil {
		return err
	}
	l, factor := m.Estimate(), s.Factor()
	got["L_act"], got["u_L"], got["U95_L"] = l.Value, l.U, l.Expanded()
	got["relative_error_percent"] = 100 * s.Error().Value
	got["factor_c"], got["u_c"], got["U95_c"] = factor.Value, factor.U, factor.Expanded()
	expandedOf(got, l)
	got["U95_c_truncated"] = factor.KTruncated() * factor.U
	got["change_is_significant"] = s.Significant()
	if old, ok := in.float("old_steps_per_mm"); ok {
		e := s.Steps(old)
		got["new_steps_per_mm"], got["u_new_steps"], got["U95_new_steps"] = e.Value, e.U, e.Expanded()
	}
	if old, ok := in.float("old_travel_per_rev"); ok {
		e := s.Travel(old)
		got["new_travel_per_rev"], got["u_new_travel"], got["U95_new_travel"] = e.Value, e.U, e.Expanded()
	}
	if u, ok := simulation.Spread(m.Budget); ok {
		got["u_L_jcgm101"] = u
	}
	if testing.Short() {
		return in.leftOver() // two million lots for each case
	}
	drawn, err := drawnFigures(commanded, m, factor)
	maps.Copy(got, drawn)
	if err == nil {
		err = in.leftOver()
	}
	return err
}

// drawnFigures are those of the Monte Carlo calculation.
func drawnFigures(commanded float64, m measure.Measured, factor measure.Estimate) (map[string]any, error) {
	draw := func(of func(float64) float64) (simulation.Drawn, error) {
		lots, err := simulation.New(m.Length, m.Budget, of, monteCarloDraws, 1)
		if err != nil {
			return simulation.Drawn{}, err
		}
		for !lots.Step(50_000) {
		}
		return lots.Result()
	}
	c, err := draw(func(length float64) float64 { return commanded / length })
	if err != nil {
		return nil, err
	}
	l, err := draw(nil)
	if err != nil {
		return nil, err
	}
	low, high := factor.Value-factor.Expanded(), factor.Value+factor.Expanded() // the Guide's, as JCGM 101, 8.1 compares
	one, two := c.Validate(factor, low, high, 1), c.Validate(factor, low, high, 2)
	return map[string]any{
		"mcm_c_low95": c.Low, "mcm_c_high95": c.High, "mcm_L_halfwidth95": (l.High - l.Low) / 2,
		"delta_ndig1": one.Tolerance, "delta_ndig2": two.Tolerance,
		"gum_validated_ndig1": one.Validated, "gum_validated_ndig2": two.Validated,
		"d_low": one.LowDiff, "d_high": one.HighDiff,
	}, nil
}
