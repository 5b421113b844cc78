package machine

import (
	"slices"
	"strings"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/lists"
	"striderule/calc/logbook"
	"striderule/calc/page/trial"
)

// An Unsorted is a name in the log whose entries belong to none of the axes here, as far as they tell.
type Unsorted struct {
	Machine, Axis string // the axis by its key
	Entries       []logbook.Entry
	Likely        Axis // the one that is meant, by its name or one that is nearly the same; nil if there is none
}

// UnsortedIn returns the names in the log whose entries belong to none of these axes, in the order of
// the entries. A sheet that corrects a setting belongs to the axis whose ID it has: the same name may be
// another machine's, so it is asked about; and so is the name that a machine once had.
func UnsortedIn(entries []logbook.Entry, axes []Axis) []Unsorted {
	type name struct{ machine, axis string }
	var names []name
	of := map[name][]logbook.Entry{}
	for _, e := range entries {
		if named(e, axes) != nil && (e.Page != Page || AxisOf(e, axes) != nil) {
			continue
		}
		n := name{e.Machine, logbook.AxisKey(e.Axis)}
		if of[n] == nil {
			names = append(names, n)
		}
		of[n] = append(of[n], e)
	}
	var all []Unsorted
	for _, n := range names {
		all = append(all, Unsorted{n.machine, n.axis, of[n], likely(of[n][0], axes)})
	}
	return all
}

// AxisOf returns the one of these axes that an entry belongs to, by the ID of its sheet; nil if none.
func AxisOf(e logbook.Entry, axes []Axis) Axis {
	if !strings.Contains(e.Sheet, "id=") {
		return nil
	}
	id := link.TextOf(link.Split(e.Sheet), "id")
	return anyAxis(axes, func(a Axis) bool { return id != "" && a.ID() == id })
}

// named is the axis whose names an entry has.
func named(e logbook.Entry, axes []Axis) Axis {
	return anyAxis(axes, func(a Axis) bool {
		return e.Machine == a.Text("machine") && logbook.AxisKey(e.Axis) == logbook.AxisKey(a.Text("axisname"))
	})
}

// likely is the axis that an entry is probably about.
func likely(e logbook.Entry, axes []Axis) Axis {
	if a := AxisOf(e, axes); a != nil {
		return a
	}
	if a := named(e, axes); a != nil {
		return a
	}
	return anyAxis(axes, func(a Axis) bool {
		axis := logbook.AxisKey(a.Text("axisname"))
		return isSimilar(e.Machine, a.Text("machine")) && (e.Axis == "" || axis == "" || isSimilar(logbook.AxisKey(e.Axis), axis))
	})
}

func anyAxis(axes []Axis, is func(Axis) bool) Axis {
	for _, a := range axes {
		if is(a) {
			return a
		}
	}
	return nil
}

// SortIn makes an entry one of the axis: it has the axis' names, and its sheet tells whose it is. What was
// typed and what came out stay. It is false for one that has no room for that.
func (a Axis) SortIn(e logbook.Entry) (sorted logbook.Entry, ok bool) {
	e.Machine, e.Axis = a.Text("machine"), logbook.AxisKey(a.Text("axisname"))
	if e.Page == Page {
		e.Sheet = a.inSheet(e.Sheet)
	}
	return e, len(e.Sheet) <= link.MostLink && len(e.Text()) <= logbook.MostEntry
}

// inSheet is a sheet that tells that it is about the axis.
func (a Axis) inSheet(fragment string) string {
	was := link.Split(fragment)
	pieces := lists.Keep(was, func(p link.Piece) bool { return !slices.Contains(form.MachineKeys[:], p.Key) })
	for _, key := range form.MachineKeys {
		if text := a.Text(key); text != "" && key != "set" { // when it was set, the sheet did not know
			pieces = append(pieces, link.Piece{Key: key, Cells: []string{text}})
		}
	}
	return link.Join(link.Resummed(was, pieces))
}

// IsSameSheet reports whether two sheets of a page say the same, whatever their machine is called; of
// two IDs they are two.
func IsSameSheet(a, b string) bool {
	if one, other := link.TextOf(link.Split(a), "id"), link.TextOf(link.Split(b), "id"); one != other && one != "" && other != "" {
		return false
	}
	return typed(a, "-") == typed(b, "-")
}

// IsChecked reports whether a sheet is another one and check runs that this has none of.
func IsChecked(sheet, of string) bool { return typed(sheet, trial.Again) == typed(of, "-") }

// typed is what a sheet says but for its machine, and for what stands under keys of an ending.
func typed(fragment, but string) string {
	return link.Join(lists.Keep(link.Split(fragment), func(p link.Piece) bool {
		return p.Key != link.ClaimKey && !strings.HasSuffix(p.Key, but) && !slices.Contains(form.MachineKeys[:], p.Key)
	}))
}
