package whose

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/calc/form"
	"striderule/calc/machine"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A looked is what the log has of the axis' tests, read once.
type looked struct {
	id    string // of the axis
	tests []machine.Test
}

// LookBack looks in the log for how the axis' runs scattered before, where that would help the sheet.
func (s *Sheet) LookBack() {
	s.before, s.beforeIn = report.Scatter{}, 0
	a := s.own()
	if a == nil || !s.host.Form().Report().Scatter.Wanted {
		return
	}
	if s.looked.id != a.ID() {
		s.looked = looked{a.ID(), machine.TestsIn(a.Entries())}
	}
	s.before, s.beforeIn = machine.Before(s.looked.tests, s.host.Form())
}

// scatterDigits is how precisely a scatter is taken over.
const scatterDigits = 3

// Scattered offers that scatter to the sheet.
func (s *Sheet) Scattered() app.UI {
	a, f := s.own(), s.host.Form()
	if a == nil || s.before.Dof == 0 || !f.Report().Scatter.Wanted {
		return app.Text("")
	}
	text := unit.PlainDigits(s.before.SD, scatterDigits)
	figure := report.Figure{Value: s.before.SD, Digits: scatterDigits, Keep: true, Unit: "mm"}
	if s.before.Key != "spread" {
		figure.Unit = "°"
	}
	return app.Div().Class("before").ID("before").Body(
		app.P().Text(scatteredBefore.Fill(s.beforeIn, "machine", a.Title(), "scatter", figure.String())),
		frame.Button("count-before", countBefore, func() {
			texts := form.Texts{Machine: f.Machine()}
			texts.Fill(s.before.Key, text)
			texts.Fill("spreaddof", strconv.Itoa(int(s.before.Dof)))
			var was form.Texts
			s.host.Edit(func(f *form.Form) { was = f.Put(texts) })
			s.unfill, s.filled = &was, a.ID()
			s.host.Refill()
			browser.Announce(countedBefore.Fill("scatter", figure.String()))
		}),
	)
}
