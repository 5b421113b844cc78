package logbook

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"striderule/calc"
	"striderule/calc/measure"
	"striderule/calc/report"
)

// A Trend is how one result of an axis changes with time.
type Trend struct {
	Output, Label, Unit string
	Results             int
	Says                []string // what it shows, in plain words, and what to doubt
	Chart               report.Chart
}

// mostShown is how many results a chart shows. The sentences take all of them.
const mostShown = 200

// shownDigits is how precisely a chart says its values.
const shownDigits = 5

// daysAMonth is the mean length of a month, in days.
const daysAMonth = 365.25 / 12

// Trends returns what the entries of one axis of one machine, newest first,
// show with time: one trend for each result that was kept, by output and unit.
// Results in different conventions are never mixed. The one with the newest
// result comes first.
func Trends(entries []Entry) []Trend {
	type kind struct{ output, unit string }
	var order []kind
	of := map[kind][]Entry{}
	for _, e := range entries {
		if !e.Answered() {
			continue
		}
		k := kind{e.Output, e.Unit}
		if of[k] == nil {
			order = append(order, k)
		}
		of[k] = append(of[k], e)
	}
	var trends []Trend
	for i, k := range order {
		trends = append(trends, trendOf(of[k], strconv.Itoa(i+1)))
	}
	return trends
}

// trendOf makes the trend of entries with the same result, newest first.
func trendOf(entries []Entry, id string) Trend {
	newest := entries[0]
	oldestFirst := slices.Clone(entries)
	slices.Reverse(oldestFirst)
	first, _ := days(oldestFirst[0].Date)
	t := Trend{Output: newest.Output, Label: labelOfOutput(newest), Unit: newest.Unit, Results: len(entries)}
	var points []measure.Point
	var shown []report.Point
	for _, e := range oldestFirst {
		day, _ := days(e.Date)
		day -= first
		points = append(points, measure.Point{X: day, Y: e.Value})
		shown = append(shown, report.Point{X: day, Y: e.Value, Lo: e.Value - e.U, Hi: e.Value + e.U,
			Label: strings.Replace(e.Date, "T", " ", 1)})
	}
	if len(shown) > mostShown {
		shown = shown[len(shown)-mostShown:]
	}
	drift, err := measure.Drift(points)
	t.Says = says(drift, err, newest, points)
	if len(entries) > mostShown {
		t.Says = append(t.Says, "The picture shows the newest "+strconv.Itoa(mostShown)+" results; the words take all "+strconv.Itoa(len(entries))+".")
	}
	t.Chart = report.Chart{
		ID: "trend-" + id, Title: t.Label + ", over time", Says: t.Says[0],
		X:      report.Scale{Label: "Days since " + dayOf(oldestFirst[0].Date), Digits: shownDigits},
		Y:      report.Scale{Label: t.Label, Unit: newest.Unit, Digits: shownDigits},
		Points: shown,
	}
	t.Chart.Keys[report.Counted] = "result with its interval"
	if err == nil {
		from, to := shown[0].X, shown[len(shown)-1].X
		at := func(x float64) float64 { return drift.Line.MeanY + drift.Line.Slope*(x-drift.Line.MeanX) }
		t.Chart.Curves = []report.Curve{{Label: "line through the results", At: []report.Place{{X: from, Y: at(from)}, {X: to, Y: at(to)}}}}
	}
	return t
}

// labelOfOutput is what the page calls a result in general; a headline may say
// what it means there and then.
func labelOfOutput(e Entry) string {
	page, _ := calc.PageOf(e.Page)
	for _, o := range page.Outputs {
		if o.ID == e.Output {
			return o.Label
		}
	}
	return e.Label
}

func dayOf(date string) string { return date[:len("2026-11-25")] }

// says puts a trend into words.
func says(t measure.Trend, err error, newest Entry, points []measure.Point) []string {
	switch {
	case errors.Is(err, measure.ErrTooFew):
		return []string{"Too few to show a trend: three results on different days are the least."}
	case errors.Is(err, measure.ErrOneLength):
		return []string{"All of these are of one moment: a trend needs results of different days."}
	case err != nil:
		return []string{"These results are too far apart in size to show a trend."}
	}
	month := report.Figure{Value: t.PerDay.Value * daysAMonth, U: t.PerDay.Expanded() * daysAMonth, Unit: newest.Unit, Digits: 3}
	size := month
	size.Value = max(month.Value, -month.Value)
	var all []string
	switch {
	case month.Value == 0 && month.U == 0:
		all = []string{"No trend: it is the same each time."}
	case t.Significant && month.Value > 0:
		all = []string{"It rises by " + size.String() + " a month. That this is more than chance is at least 95 % sure."}
	case t.Significant:
		all = []string{"It falls by " + size.String() + " a month. That this is more than chance is at least 95 % sure."}
	default:
		low, high := month, month
		low.Value, high.Value = month.Value-month.U, month.Value+month.U
		low.Like, high.Like, low.U, high.U = month.U, month.U, 0, 0
		all = []string{"No trend that shows: anything from " + low.String() + " to " + high.String() + " a month would fit, standing still included."}
	}
	span := points[len(points)-1].X - points[0].X
	if whole := t.PerDay.Value * span; t.Significant && newest.U > max(whole, -whole) {
		all = append(all, "All of it together is less than the ± of the newest result: it may be the measuring rather than the machine.")
	}
	for _, w := range t.Warnings {
		all = append(all, string(w))
	}
	return all
}
