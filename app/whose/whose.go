package whose

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/calc/form"
	"striderule/calc/machine"
	"striderule/calc/report"
)

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
	looked   looked
	before   report.Scatter // of the machine's earlier tests, for this sheet
	beforeIn int            // so many tests
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
	s.tell()
}

// tell hands the sheet the setting that its axis has, as far as that is read.
func (s *Sheet) tell() {
	var now form.Current
	if a := s.own(); a != nil {
		now = a.Current()
	}
	s.host.Form().SetCurrent(now)
	s.looked = looked{} // the log may have changed as well
	s.LookBack()
}

// own is the axis that the sheet is about; nil if this device has none.
func (s *Sheet) own() *kept.Axis { return s.machines.Of(s.host.Form().MachineText("id")) }

// mostChips is how many machines are offered beside the sheet; the rest is on their own page.
const mostChips = 12

// Chips are the machines that fill the sheet in.
func (s *Sheet) Chips() []app.UI {
	var chips []app.UI
	own, undone := s.own(), s.unfill == nil
	for _, a := range s.machines.First(mostChips) {
		id := a.ID()
		chips = append(chips, frame.Button("machine-"+id, a.Title(), func() { s.useMachine(id) }).Aria("pressed", strconv.FormatBool(a == own)))
		if s.unfill != nil && id == s.filled { // behind it: a second tap must not meet another machine
			chips, undone = append(chips, frame.Button("unfill", undoFill, s.undoFill)), true
		}
	}
	if !undone { // its machine is none of these
		chips = append(chips, frame.Button("unfill", undoFill, s.undoFill))
	}
	if s.unfill == nil && s.host.Form().Page.Slug == machine.Page && s.naming == nil && s.isNewMachine() {
		chips = append(chips, frame.Button("name-machine", saveAsMachine, s.openNaming))
	}
	if s.unfill == nil && s.host.Form().Page.Slug == machine.Page && s.hasFacts() {
		chips = append(chips, frame.Button("keep-facts", keepTheFacts, s.keepFacts))
	}
	if s.machines.Len() > 0 {
		chips = append(chips, app.A().Class("to-machines").Href(site.LinkTo(site.MachinesPath, "")).Text(toMachines))
	}
	return chips
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
		s.tell()
	})
	s.unfill, s.filled = &before, id
	s.host.Refill()
	browser.Announce(filledFrom.Fill("machine", a.Title()))
}

func (s *Sheet) undoFill() {
	before := *s.unfill
	s.host.Edit(func(f *form.Form) {
		f.Put(before)
		s.tell()
	})
	s.host.Refill()
	s.host.Focus("machine-" + s.filled)
	browser.Announce(filledNot)
}
