package measure

// A Trend is how dated results change with time.
type Trend struct {
	Line        Line     // the result against the day
	PerDay      Estimate // its slope
	Significant bool     // the interval of PerDay excludes 0
	Warnings    []Warning
}

// WarnFewDates is the doubt of a trend through three or four results.
const WarnFewDates Warning = "few-dates"

// Drift returns the trend through results (Y) on days (X, counted from any
// day). It needs three results (ErrTooFew) that are not all of one day
// (ErrOneLength). Source: JCGM 100, H.3.
func Drift(results []Point) (Trend, error) {
	l, err := Fit(results)
	if err != nil {
		return Trend{}, err
	}
	t := Trend{Line: l, PerDay: l.SlopeEstimate()}
	t.Significant = t.PerDay.P(0) < significance
	if len(results) < 5 {
		t.Warnings = append(t.Warnings, WarnFewDates)
	}
	return t, nil
}
