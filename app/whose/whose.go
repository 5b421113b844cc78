package whose

import (
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/logbook"
	"striderule/calc/machine"
	"striderule/calc/report"
	"striderule/calc/word"
)

// A naming is the small form that saves a sheet as a machine.
type naming struct{ name, axis, problem string }

// A Host is the calculator that shows the sheet.
type Host interface {
	Form() *form.Form
	Edit(change func(*form.Form)) // the page follows
	Refill()                      // the fields show what the form has
	Focus(id string)              // once that is on the page
	GoTo(key string)              // opens the fold of a field and moves the focus there
	Jump(key, text string) app.UI // a link that does so
}

// A Sheet is whose axis a calculator's sheet is about.
type Sheet struct {
	host     Host
	machines *kept.Machines // of this device
	unfill   *form.Texts    // what a machine took the place of, to put back
	filled   string         // the ID of that machine
	naming   *naming        // nil while it does not show
}

// Of begins anew with a calculator's sheet.
func Of(host Host) *Sheet {
	s := &Sheet{host: host}
	s.Meet()
	return s
}

// Edited ends what an undo would put back.
func (s *Sheet) Edited() { s.unfill = nil }

// Meet reads the machines of this device, and hands the sheet the setting that its own has.
func (s *Sheet) Meet() {
	s.machines = kept.ReadMachines()
	var now form.Current
	if a := s.own(); a != nil {
		now = a.Current()
	}
	s.host.Form().SetCurrent(now)
}

// own is the axis that the sheet is about; nil if this device has none.
func (s *Sheet) own() *kept.Axis { return s.machines.Of(s.host.Form().MachineText("id")) }

// mostChips is how many machines are offered beside the sheet; the rest is on their own page.
const mostChips = 12

// Chips are the machines that fill the sheet in.
func (s *Sheet) Chips() []app.UI {
	var chips []app.UI
	for _, a := range s.machines.Axes[:min(len(s.machines.Axes), mostChips)] {
		id := a.ID()
		chips = append(chips, frame.Button("machine-"+id, a.Title(), func() { s.useMachine(id) }).Aria("pressed", strconv.FormatBool(a == s.own())))
		if s.unfill != nil && id == s.filled { // behind it: a second tap must not meet another machine
			chips = append(chips, frame.Button("unfill", undoFill, s.undoFill))
		}
	}
	if s.unfill == nil && s.host.Form().Page.Slug == site.SheetOfMachines && s.naming == nil && s.isNewMachine() {
		chips = append(chips, frame.Button("name-machine", saveAsMachine, s.openNaming))
	}
	if s.unfill == nil && s.host.Form().Page.Slug == site.SheetOfMachines && s.hasFacts() {
		chips = append(chips, frame.Button("keep-facts", keepTheFacts, s.keepFacts))
	}
	if len(s.machines.Axes) > 0 {
		chips = append(chips, app.A().Class("to-machines").Href(site.LinkTo(site.MachinesPath, "")).Text(toMachines))
	}
	return chips
}

// isNewMachine reports whether the sheet tells enough of an axis that this device does not have.
func (s *Sheet) isNewMachine() bool {
	_, text := s.host.Form().Setting()
	return text != "" && s.own() == nil
}

// useMachine fills in what the page can use of a machine; readings stay.
func (s *Sheet) useMachine(id string) {
	s.machines = kept.ReadMachines()
	a := s.machines.Of(id)
	if a == nil {
		return
	}
	var before form.Texts
	s.host.Edit(func(f *form.Form) {
		before = a.Into(f)
		s.Meet()
	})
	s.unfill, s.filled = &before, id
	s.host.Refill()
	browser.Announce(filledFrom.Fill("machine", a.Title()))
}

func (s *Sheet) undoFill() {
	before := *s.unfill
	s.host.Edit(func(f *form.Form) {
		f.Put(before)
		s.Meet()
	})
	s.host.Refill()
	s.host.Focus("machine-" + s.filled)
	browser.Announce(filledNot)
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
			s.Meet()
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
	key, text := a.Setting()
	a.Axis = a.Updated(s.host.Form()).WithSetting(key, text, a.Text("set"))
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
	if a == nil {
		return false
	}
	key, text := a.Setting()
	return a.Updated(s.host.Form()).WithSetting(key, text, a.Text("set")).Fragment() != a.Fragment()
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
	return app.Form().Class("keep").ID("naming").DataSet("sheet", "naming").AutoComplete(false).Aria("label", saveAsMachine).OnSubmit(s.saveMachine).Body(
		app.P().Class("hint").Text(machineAbout),
		view.TextField("machine-name", machineLabel, "text", &n.name),
		view.TextField("machine-axis", axisLabel, "text", &n.axis),
		app.If(n.problem != "", func() app.UI { return app.P().Class("problem").Attr("role", "alert").Text(n.problem) }),
		app.Div().Class("share").Body(
			app.Button().Type("submit").ID("machine-save").Text(saveIt),
			frame.Button("machine-cancel", cancelIt, s.closeNaming),
		),
	)
}

// WhichSetting are the two answers to which setting the readings were made with.
func (s *Sheet) WhichSetting() app.UI {
	a := s.own()
	if a == nil { // deleted meanwhile
		return app.Text("")
	}
	_, text := s.host.Form().Setting()
	return app.Div().Class("suggestions which").Body(
		frame.Button("setting-machine", machinesSetting.Fill("setting", a.Shown()), func() {
			key, current := a.Setting()
			s.host.Edit(func(f *form.Form) {
				texts := form.Texts{Machine: f.Machine()}
				texts.Fill("as", strings.TrimSuffix(key, "deg"))
				texts.Fill(key, current)
				f.Put(texts)
			})
			s.host.Refill()
		}).Class("suggest"),
		frame.Button("setting-sheet", sheetsSetting.Fill("setting", text), func() {
			s.host.Edit(func(f *form.Form) { f.Agree() })
		}).Class("suggest"),
	)
}

// toSet is the axis of the sheet, where its answer is another setting than it has; nil otherwise.
func (s *Sheet) toSet() *kept.Axis {
	a, r := s.own(), s.host.Form().Report()
	if a == nil || r.Set == "" || a.Text(r.SetKey) == r.Set {
		return nil
	}
	return a
}

// setIt makes the answer the machine's setting, and saves the sheet to the log under its name. It
// reports whether it did: of what another tab has changed meanwhile, the page asks anew.
func (s *Sheet) setIt() bool {
	was := s.own()
	s.machines = kept.ReadMachines()
	a := s.toSet()
	if a == nil || was == nil || a.Current() != was.Current() {
		s.host.Edit(func(*form.Form) { s.Meet() })
		browser.Announce(kept.Overtaken.Says())
		return false
	}
	r, logged := s.host.Form().Report(), inTheLog
	if e, ok := logbook.Of(s.host.Form(), browser.Now(), a.Text("machine"), a.Text("axisname"), ""); ok {
		if _, refused := kept.Put(kept.Items(kept.Read().Book.Merge([]logbook.Entry{e}).Added)); refused != "" {
			logged = word.Together(notInTheLog, refused.Says())
		}
	}
	a.Axis = a.Updated(s.host.Form()).WithSetting(r.SetKey, r.Set, browser.Today())
	says := word.Together(machineSet.Fill("machine", a.Title(), "setting", a.Shown()), logged)
	refused := a.Keep()
	if refused != "" {
		says = word.Together(notSaved, refused.Says())
	}
	s.host.Edit(func(*form.Form) { s.Meet() })
	browser.Announce(says)
	return refused == ""
}

// SetIt is the button for that, where the report has no main act of its own.
func (s *Sheet) SetIt() app.UI {
	a := s.toSet()
	if a == nil || s.hasMainAct() {
		return app.Text("")
	}
	return app.P().Class("main-act").Body(frame.Button("set-it", iHaveSet.Fill("machine", a.Title()), func() { s.setIt() }))
}

// hasMainAct reports whether the report says what to do next in a place of its own.
func (s *Sheet) hasMainAct() bool {
	return slices.ContainsFunc(s.host.Form().Report().Parts, func(p report.Part) bool {
		return slices.ContainsFunc(p.Blocks, func(b report.Block) bool { _, is := b.(report.Go); return is })
	})
}

// MainAct says that the answer was set, and leads to what comes next.
func (s *Sheet) MainAct(g report.Go) app.UI {
	if s.toSet() == nil {
		text := g.Text
		if a := s.own(); a != nil {
			text = nowCheck.Fill("machine", a.Title())
		}
		return app.P().Class("main-act").Body(s.host.Jump(g.Key, text))
	}
	return app.P().Class("main-act").Body(frame.Button("set-it", g.Text, func() {
		if s.setIt() {
			s.host.GoTo(g.Key)
		}
	}))
}
