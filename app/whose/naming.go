package whose

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/logbook"
	"striderule/calc/machine"
	"striderule/calc/word"
)

// A naming is the small form that saves a sheet as a machine.
type naming struct{ name, axis, problem string }

// isNewMachine reports whether the sheet tells enough of an axis that this device does not have.
func (s *Sheet) isNewMachine() bool {
	_, text := s.host.Form().Setting()
	return text != "" && s.own() == nil
}

// Whose says which machine a sheet is about that this device does not have.
func (s *Sheet) Whose() app.UI {
	if s.host.Form().MachineText("machine") == "" || s.own() != nil {
		return app.Text("")
	}
	of := machine.Axis(s.host.Form().Machine())
	return app.Div().Class("whose").ID("whose").Body(
		app.Span().Text(sheetOf.Fill("machine", of.Title())),
		app.If(s.machines.Alike(of) != nil, func() app.UI { return frame.Button("it-is-mine", itIsMine, s.takeAsOwn) }),
	)
}

// takeAsOwn makes a sheet of the same name one of this device's axis.
func (s *Sheet) takeAsOwn() {
	s.machines = kept.ReadMachines()
	if own := s.machines.Alike(s.host.Form().Machine()); own != nil {
		s.host.Edit(func(f *form.Form) {
			f.SetMachine(own.Axis)
			s.tell()
		})
	}
}

// keepFacts keeps what the sheet says of its axis beside the setting.
func (s *Sheet) keepFacts() {
	s.machines = kept.ReadMachines()
	a := s.own()
	if a == nil {
		return
	}
	a.Axis = s.withFacts(a)
	says := machineSaved.Fill("machine", a.Title())
	if refused := a.Keep(); refused != "" {
		says = word.Together(notSaved, refused.Says())
	}
	s.host.Edit(func(*form.Form) { s.Meet() })
	browser.Announce(says)
}

// hasFacts reports whether the sheet says something of its axis that this does not have.
func (s *Sheet) hasFacts() bool {
	a := s.own()
	return a != nil && s.withFacts(a).Fragment() != a.Fragment()
}

// withFacts is an axis with what the sheet says of it, and its own setting.
func (s *Sheet) withFacts(a *kept.Axis) machine.Axis {
	key, text := a.Setting()
	return a.Updated(s.host.Form()).WithSetting(key, text, a.Text("set"))
}

// openNaming asks for the names of a new machine.
func (s *Sheet) openNaming() {
	axis := s.host.Form().MachineText("axisname")
	if axis == "" {
		axis = logbook.AxisFor(s.host.Form(), logbook.Entry{})
	}
	s.naming = &naming{name: s.host.Form().MachineText("machine"), axis: axis}
	s.host.Focus("machine-name")
}

func (s *Sheet) closeNaming() {
	s.naming = nil
	s.host.Focus("name-machine")
}

// saveMachine keeps the sheet's axis as one of a machine.
func (s *Sheet) saveMachine(_ app.Context, e app.Event) {
	e.PreventDefault()
	s.machines = kept.ReadMachines()
	facts, _ := machine.Of(s.host.Form())
	facts = facts.With("machine", strings.TrimSpace(s.naming.name), "axisname", strings.TrimSpace(s.naming.axis))
	if facts.Text("set") == "" {
		facts = facts.With("set", browser.Today())
	}
	a, problem := s.machines.New(facts), ""
	switch alike := s.machines.Alike(facts); {
	case facts.Text("machine") == "":
		problem = nameMachine
	case alike != nil:
		problem = thereAlready.Fill("machine", alike.Title())
	default:
		if refused := a.Keep(); refused != "" {
			problem = word.Together(notSaved, refused.Says())
		}
	}
	if s.naming.problem = problem; problem != "" {
		s.host.Focus("machine-name")
		return
	}
	s.naming = nil
	s.host.Edit(func(f *form.Form) {
		f.SetMachine(a.Axis)
		s.Meet()
	})
	browser.Announce(machineSaved.Fill("machine", a.Title()))
	s.host.Focus("machine-" + a.ID())
}

// NamingView is that form.
func (s *Sheet) NamingView() app.UI {
	n := s.naming
	if n == nil {
		return app.Text("")
	}
	return app.Form().Class("keep").ID("naming").NoValidate(true).DataSet("sheet", "naming").AutoComplete(false).Aria("label", saveAsMachine).OnSubmit(s.saveMachine).Body(
		app.P().Class("hint").Text(machineAbout.Fill("setting", machine.Axis(nil).With(s.host.Form().Setting()).Shown())),
		view.TextField("machine-name", machineLabel, "text", &n.name),
		view.TextField("machine-axis", axisLabel, "text", &n.axis),
		app.If(n.problem != "", func() app.UI { return app.P().Class("problem").Attr("role", "alert").Text(n.problem) }),
		app.Div().Class("share").Body(
			app.Button().Type("submit").ID("machine-save").Text(saveIt),
			frame.Button("machine-cancel", cancelIt, s.closeNaming),
		),
	)
}
