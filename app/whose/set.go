package whose

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/calc/form"
	"striderule/calc/logbook"
	"striderule/calc/machine"
	"striderule/calc/report"
	"striderule/calc/word"
)

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
	if a == nil || r.Set == "" || s.host.Form().IsCurrent(r.SetKey, r.Set) {
		return nil
	}
	return a
}

// CanSet reports whether the answer is another setting than the sheet's axis has.
func (s *Sheet) CanSet() bool { return s.toSet() != nil }

// SetIt makes the answer the machine's setting, and saves the sheet to the log under its name. It
// reports whether it did: of what another tab has changed meanwhile, the page asks anew.
func (s *Sheet) SetIt() bool {
	was := s.own()
	s.machines = kept.ReadMachines()
	a := s.toSet()
	if a == nil || was == nil || a.Current() != was.Current() {
		s.host.Edit(func(*form.Form) { s.tell() })
		browser.Announce(kept.Overtaken.Says())
		return false
	}
	s.host.Form().SetMachine(a.Axis) // as it is called here
	r, logged := s.host.Form().Report(), inTheLog
	if e, ok := logbook.Of(s.host.Form(), browser.Now(), a.Text("machine"), a.Text("axisname"), ""); ok {
		if refused := KeepOnce(e); refused != "" {
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

// SetItView is the button for that, where the report has no main act of its own.
func (s *Sheet) SetItView() app.UI {
	a := s.toSet()
	if a == nil || s.hasMainAct() {
		return app.Text("")
	}
	return app.P().Class("main-act").Body(frame.Button("set-it", iHaveSet.Fill("machine", a.Title()), func() { s.SetIt() }))
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
		if s.SetIt() {
			s.host.GoTo(g.Key)
		}
	}))
}

// KeepOnce saves an entry to the log. Where the person has saved the same sheet already, under
// whatever name or before its check runs, it takes that one's place: a test counts once.
func KeepOnce(e logbook.Entry) (refused kept.Refusal) {
	book := kept.Read().Book
	for _, old := range book.All() {
		if old.Page == e.Page && (machine.IsSameSheet(old.Sheet, e.Sheet) || machine.IsChecked(e.Sheet, old.Sheet)) {
			e.ID, e.Note = old.ID, old.Note
			_, refused = kept.Replace(kept.Items([]logbook.Entry{old}), kept.Items([]logbook.Entry{e}))
			return refused
		}
	}
	_, refused = kept.Put(kept.Items(book.Merge([]logbook.Entry{e}).Added))
	return refused
}

// isSet is the axis of the sheet if its setting is what this sheet found; nil otherwise.
func (s *Sheet) isSet() *kept.Axis {
	a, f := s.own(), s.host.Form()
	r := f.Report()
	if a == nil || r.Set == "" || !f.IsCurrent(r.SetKey, r.Set) || f.IsCurrent(f.Setting()) {
		return nil
	}
	return a
}

// SetNow says that what this sheet found is the machine's setting; BarLabel does so in few words.
func (s *Sheet) SetNow() app.UI {
	a := s.isSet()
	return app.If(a != nil, func() app.UI {
		return app.P().Class("set-now").ID("set-now").Text(hasItSince.Fill("machine", a.Title(), "setting", a.Since()))
	})
}

func (s *Sheet) BarLabel() string {
	if s.isSet() == nil {
		return ""
	}
	return setInBar
}
