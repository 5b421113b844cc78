package machine

import (
	"slices"
	"strings"
	"unicode/utf8"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/lists"
	"striderule/calc/logbook"
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
		if named(e, axes) != nil && (e.Page != corrects || AxisOf(e, axes) != nil) {
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

// corrects is the page whose sheets correct a setting.
const corrects = "measure"

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
	if e.Page == corrects {
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
	typed := func(fragment string) string {
		return link.Join(lists.Keep(link.Split(fragment), func(p link.Piece) bool {
			return p.Key != link.ClaimKey && !slices.Contains(form.MachineKeys[:], p.Key)
		}))
	}
	return typed(a) == typed(b)
}

// isSimilar reports whether two names may be meant for the same: they differ in blanks, marks and
// capitals, or in one letter. With other digits it is another machine.
func isSimilar(a, b string) bool {
	a, b = bare(a), bare(b)
	if a == "" || b == "" || digitsOf(a) != digitsOf(b) {
		return false
	}
	return strings.EqualFold(a, b) || len(a) >= shortest && len(b) >= shortest && isOneEdit(a, b)
}

// shortest is how long a name must be for a letter in it to be a slip, in bytes.
const shortest = 4

// bare is a name without blanks, marks, and capitals of English.
func bare(name string) string {
	return without(name, func(c byte) bool { return !isLetter(c) && !isDigit(c) })
}

func digitsOf(name string) string { return without(name, func(c byte) bool { return !isDigit(c) }) }

func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
func isLetter(c byte) bool { return c >= 'a' && c <= 'z' || c >= utf8.RuneSelf }

func without(name string, drop func(byte) bool) string {
	var left []byte
	for _, c := range []byte(name) {
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		if !drop(c) {
			left = append(left, c)
		}
	}
	return string(left)
}

// isOneEdit reports whether one byte is another, too many, missing, or changed places with the next.
func isOneEdit(a, b string) bool {
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	return len(a) <= 1 && len(b) <= 1 || len(a) == 2 && len(b) == 2 && a[0] == b[1] && a[1] == b[0]
}
