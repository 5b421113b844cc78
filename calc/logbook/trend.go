package logbook

import (
	"errors"
	"slices"
	"strconv"

	"striderule/calc/measure"
	"striderule/calc/report"
	"striderule/calc/word"
)

// A Trend is how one result of an axis changes with time.
type Trend struct {
	Output, Label, Unit string
	Results             int
	Says                []string // what it shows, in plain words, and what to doubt
	Chart               report.Chart
}

// mostShown is how many results a chart shows. The sentences use all of them.
const mostShown = 200

// shownDigits is how precisely a chart says its values.
const shownDigits = 5

// daysAMonth is the mean length of a month, in days.
const daysAMonth = 365.25 / 12

// Trends returns what the entries of one axis of one machine, newest first,
// show with time: one trend for each result that was saved, by output and unit.
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
	t := Trend{Output: newest.Output, Label: newest.quantityName(), Unit: newest.Unit, Results: len(entries)}
	var points []measure.Point
	var shown []report.Point
	for _, e := range oldestFirst {
		day, _ := days(e.Date)
		day -= first
		points = append(points, measure.Point{X: day, Y: e.Value})
		shown = append(shown, report.Point{X: day, Y: e.Value, Lo: e.Value - e.U, Hi: e.Value + e.U,
			Label: word.Day(e.Date)})
	}
	if len(shown) > mostShown {
		shown = shown[len(shown)-mostShown:]
	}
	drift, err := measure.Drift(points)
	t.Says = says(drift, err, newest, points)
	if len(entries) > mostShown {
		t.Says = append(t.Says, latest.Fill("shown", strconv.Itoa(mostShown), "all", strconv.Itoa(len(entries))))
	}
	t.Chart = report.Chart{
		ID: "trend-" + id, Title: trendTitle.Fill("result", t.Label), Says: t.Says[0],
		X:      report.Scale{Label: daysSince.Fill("date", word.Day(dayOf(oldestFirst[0].Date))), Digits: shownDigits},
		Y:      report.Scale{Label: t.Label, Unit: newest.Unit, Digits: shownDigits},
		Points: shown,
	}
	t.Chart.Keys[report.Counted] = withRange
	if err == nil {
		from, to := shown[0].X, shown[len(shown)-1].X
		at := func(x float64) float64 { return drift.Line.MeanY + drift.Line.Slope*(x-drift.Line.MeanX) }
		t.Chart.Curves = []report.Curve{{Label: throughAll, At: []report.Place{{X: from, Y: at(from)}, {X: to, Y: at(to)}}}}
	}
	return t
}

func dayOf(date string) string { return date[:len("2026-11-25")] }

// says puts a trend into words.
func says(t measure.Trend, err error, newest Entry, points []measure.Point) []string {
	switch {
	case errors.Is(err, measure.ErrTooFew):
		return []string{tooFew}
	case errors.Is(err, measure.ErrOneLength):
		return []string{oneMoment}
	case err != nil:
		return []string{tooFar}
	}
	month := report.Figure{Value: t.PerDay.Value * daysAMonth, U: t.PerDay.HalfWidth() * daysAMonth, Unit: newest.Unit, Digits: 3}
	size := month
	size.Value = max(month.Value, -month.Value)
	var all []string
	switch {
	case month.Value == 0 && month.U == 0:
		all = []string{noChange}
	case t.Significant && month.Value > 0:
		all = []string{rising.Fill("change", size.String())}
	case t.Significant:
		all = []string{falling.Fill("change", size.String())}
	default:
		low, high := month, month
		low.Value, high.Value = month.Value-month.U, month.Value+month.U
		low.Like, high.Like, low.U, high.U = month.U, month.U, 0, 0
		all = []string{unclear.Fill("low", low.String(), "high", high.String())}
	}
	span := points[len(points)-1].X - points[0].X
	if whole := t.PerDay.Value * span; t.Significant && newest.U > max(whole, -whole) {
		all = append(all, smallDrift)
	}
	if slices.Contains(t.Warnings, measure.WarnFewDates) {
		all = append(all, fewDates)
	}
	return all
}
