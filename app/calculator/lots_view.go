package calculator

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/report"
	"striderule/calc/simulation"
)

// A lotRun is a check by simulation (random draws: lots) that is under way or done.
type lotRun struct {
	of      *simulation.MonteCarlo
	stopped bool
	done    bool
	drawn   simulation.Drawn
}

// A slice of draws takes some milliseconds on a slow phone; between slices the
// browser answers to touch and keys.
const (
	lotSlice = 2000
	lotPause = 4 // ms
)

func (c *calculator) startLots(l report.Lots) {
	m, err := l.Start()
	if err != nil {
		return
	}
	c.lots = &lotRun{of: m}
	c.stepLots(c.lots)
}

// stepLots makes a slice and comes back for the next one, unless the draws were
// stopped or the entries have changed, which drops them.
func (c *calculator) stepLots(run *lotRun) {
	if run.stopped || c.lots != run {
		return
	}
	if run.of.Step(lotSlice) {
		run.done = true
		run.drawn, _ = run.of.Result()
		return
	}
	browser.After(lotPause, func() { c.ctx.Dispatch(func(app.Context) { c.stepLots(run) }) })
}

// muchWider is from where on it is said why the interval shown is wider than the drawn one.
const muchWider = 1.05

// lotsView offers the check, shows how far it is, and both intervals side by
// side.
func (c *calculator) lotsView(l report.Lots) app.UI {
	body := []app.UI{
		app.H3().Text(lotsTitle),
		app.P().Text(lotsAbout),
	}
	run := c.lots
	switch {
	case run == nil || run.stopped:
		body = append(body, frame.Button("draw-lots", runLots, func() { c.startLots(l) }))
	case !run.done:
		percent := strconv.Itoa(int(100 * run.of.Progress()))
		body = append(body,
			app.Progress().Max("100").Attr("value", percent).Aria("label", lotsSoFar),
			frame.Button("stop-lots", stopLots, func() { run.stopped = true }))
	default:
		like := (l.High - l.Low) / 2
		row := func(name, id string, low, high float64) app.UI {
			cell := func(end string, v float64) app.UI {
				return app.Td().Body(view.Figure(report.Figure{ID: id + end, Value: v, Like: like, Unit: "%"}))
			}
			return app.Tr().Body(app.Th().Scope("row").Text(name), cell("-from", low), cell("-to", high))
		}
		body = append(body, app.Table().ID("lots").Body(
			app.Caption().Class("unseen").Text(lotsCaption),
			app.THead().Body(app.Tr().Body(app.Th().Scope("col").Text(lotsError), app.Th().Scope("col").Text(lotsFrom), app.Th().Scope("col").Text(lotsTo))),
			app.TBody().Body(
				row(lotsAsCombined, "guide", l.Low, l.High),
				row(lotsAsDrawn, "drawn", run.drawn.Low, run.drawn.High),
			)))
		if l.High-l.Low > muchWider*(run.drawn.High-run.drawn.Low) {
			body = append(body, app.P().Text(lotsWider))
		}
	}
	return app.Div().Class("lots").Body(body...)
}
