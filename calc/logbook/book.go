package logbook

import (
	"slices"
	"strconv"

	"striderule/calc/lists"
)

// A Book holds entries, newest first.
type Book struct {
	entries  []Entry
	index    map[string]Entry // by ID
	reserved map[string]bool
}

// NewBook returns a book with entries, which have IDs of their own.
func NewBook(entries ...Entry) *Book {
	b := &Book{index: map[string]Entry{}, reserved: map[string]bool{}}
	b.Merge(entries)
	return b
}

// Reserve keeps an ID free of entries: something else stands under it.
func (b *Book) Reserve(id string) { b.reserved[id] = true }

// Len returns how many entries there are.
func (b *Book) Len() int { return len(b.entries) }

// All returns the entries, newest first.
func (b *Book) All() []Entry { return b.entries }

// Entry returns the one with an ID.
func (b *Book) Entry(id string) (Entry, bool) {
	e, ok := b.index[id]
	return e, ok
}

// Of returns the entries of a machine and an axis, by its key or its name, newest first;
// empty names stand for all of them.
func (b *Book) Of(machine, axis string) []Entry {
	if machine == "" && axis == "" {
		return b.entries
	}
	axis = AxisKey(axis)
	var of []Entry
	for _, e := range b.entries {
		if (machine == "" || e.Machine == machine) && (axis == "" || AxisKey(e.Axis) == axis) {
			of = append(of, e)
		}
	}
	return of
}

// Machines returns the machines' names in alphabetical order.
func (b *Book) Machines() []string {
	machines := b.names(func(e Entry) string { return e.Machine })
	lists.Sort(machines, func(a, b string) bool { return a < b })
	return machines
}

// Axes returns the keys of a machine's axes in the alphabetical order of their names; an
// empty name stands for all machines.
func (b *Book) Axes(machine string) []string {
	axes := b.names(func(e Entry) string {
		if machine == "" || e.Machine == machine {
			return AxisKey(e.Axis)
		}
		return ""
	})
	lists.Sort(axes, func(a, b string) bool { return AxisName(a) < AxisName(b) })
	return axes
}

// names are what entries have, each once.
func (b *Book) names(of func(Entry) string) []string {
	seen := map[string]bool{}
	var names []string
	for _, e := range b.entries {
		if name := of(e); name != "" && !seen[name] {
			seen[name] = true
			names = append(names, name)
		}
	}
	return names
}

// Last returns the newest entry of a page, or of any page if it has none.
func (b *Book) Last(page string) (Entry, bool) {
	for _, e := range b.entries {
		if e.Page == page {
			return e, true
		}
	}
	if len(b.entries) == 0 {
		return Entry{}, false
	}
	return b.entries[0], true
}

// A Merged is what came of adding entries.
type Merged struct {
	Added  []Entry // with the IDs that they have in the book
	There  int     // those that were in the book already
	Beside int     // those of Added whose ID was taken by another entry
}

// Merge adds entries. One that is there already, ID and all, is left out; one
// whose ID is taken gets another; one without gets one.
func (b *Book) Merge(entries []Entry) Merged {
	var m Merged
	for _, e := range entries {
		e = e.tidy()
		if e.ID == "" {
			e.ID = idOf(e)
		}
		id, there := b.place(e)
		if there {
			m.There++
			continue
		}
		if id != e.ID {
			m.Beside++
		}
		e.ID = id
		b.index[id] = e
		m.Added = append(m.Added, e)
	}
	if len(m.Added) > 0 {
		b.entries = sorted(append(slices.Clip(b.entries), m.Added...))
	}
	return m
}

// sorted are the entries with the newest first.
func sorted(entries []Entry) []Entry {
	places := make([]int, len(entries)) // a log is long, and its entries are large
	for i := range places {
		places[i] = i
	}
	lists.Sort(places, func(i, j int) bool { return entries[i].isBefore(entries[j]) })
	all := make([]Entry, len(entries))
	for i, place := range places {
		all[i] = entries[place]
	}
	return all
}

// isBefore reports whether an entry stands before another: it is newer.
func (e Entry) isBefore(other Entry) bool {
	if e.Date != other.Date {
		return e.Date > other.Date
	}
	return e.ID < other.ID
}

// mostNumbers is the highest number that tells IDs apart.
const mostNumbers = 50

// place returns an ID that is free for an entry: its own, or that with a number. It
// reports whether the entry is there already under one of them, so that adding it twice
// comes to the same as once. A file may have one ID for all of its thousands of entries:
// then it is one made of what the entry holds.
func (b *Book) place(e Entry) (id string, there bool) {
	stem := e.ID
	for n := 2; ; n++ {
		old, taken := b.index[e.ID]
		if (!taken || old == e) && !b.reserved[e.ID] {
			return e.ID, taken
		}
		if n == mostNumbers {
			e.ID = stem
			stem = idOf(e)
		}
		number := "-" + strconv.Itoa(n)
		e.ID = stem[:min(len(stem), mostID-len(number))] + number
	}
}

// idOf makes an ID of what an entry holds.
func idOf(e Entry) string {
	hash := uint64(0xcbf29ce484222325) // FNV-1a
	for _, c := range []byte(e.Text()) {
		hash = (hash ^ uint64(c)) * 0x100000001b3
	}
	return strconv.FormatUint(hash, 36)
}

// Remove takes entries out and returns them: Merge puts them back.
func (b *Book) Remove(ids ...string) []Entry {
	var gone []Entry
	for _, id := range ids {
		if e, ok := b.index[id]; ok {
			delete(b.index, id)
			gone = append(gone, e)
		}
	}
	b.entries = lists.Keep(b.entries, func(e Entry) bool {
		_, there := b.index[e.ID]
		return there
	})
	return gone
}
