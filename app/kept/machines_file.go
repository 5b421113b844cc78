package kept

import (
	"strings"

	"striderule/app/browser"
	"striderule/calc/logbook"
	"striderule/calc/machine"
	"striderule/calc/report"
)

// machinesPage marks an item of the log's file that is the axis of a machine: it stands where an
// entry has the page of its sheet.
const machinesPage = "machines"

// WithMachines are the entries of a log with the axes of this device, for one file.
func WithMachines(entries []logbook.Entry) []logbook.Entry {
	all := append([]logbook.Entry(nil), entries...)
	for _, a := range ReadMachines().All() {
		date := a.Text("set")
		if !logbook.IsDate(date) {
			date = browser.Today()
		}
		all = append(all, logbook.Entry{ID: a.ID(), Date: date, Machine: a.Text("machine"), Axis: a.Text("axisname"), Page: machinesPage, Sheet: a.Fragment()})
	}
	return all
}

// Entries reads those of an axis alone, newest first.
func (a *Axis) Entries() []logbook.Entry {
	texts, _ := browser.Kept(Prefix()) // refused, there are none
	var entries []logbook.Entry
	for i := 0; i+1 < len(texts); i += 2 {
		if !strings.Contains(texts[i+1], a.ID()) { // most are of others
			continue
		}
		if e, err := logbook.Read(texts[i+1]); err == nil && machine.AxisOf(e, []machine.Axis{a.Axis}) != nil {
			entries = append(entries, e)
		}
	}
	return logbook.NewBook(entries...).All()
}

// TakeMachines keeps the axes of a file, and returns its other entries. One that this device has
// stays, unless the file has a later setting of it.
func TakeMachines(entries []logbook.Entry) (rest []logbook.Entry, taken, there int, refused Refusal) {
	for _, e := range entries {
		axis, ok := machine.Read(e.Sheet)
		if e.Page != machinesPage || !ok {
			rest = append(rest, e)
			continue
		}
		m := ReadMachines()
		axis = Accepted(axis)
		a := m.Of(axis.ID())
		switch {
		case a == nil:
			a = m.New(axis)
		case a.Text("set") < axis.Text("set"):
			a.Axis = axis
		default:
			there++
			continue
		}
		if r := a.Keep(); r != "" {
			refused = r
			continue
		}
		taken++
	}
	return rest, taken, there, refused
}

// Accepted is an axis with only those lines for a machine that somebody here has typed or accepted.
func Accepted(a machine.Axis) machine.Axis {
	for _, key := range machine.LineKeys {
		if text := a.Text(key); text != "" && !IsAccepted(report.TemplateText{Key: key, Text: text}) {
			a = a.Without(key)
		}
	}
	return a
}
