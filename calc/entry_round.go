package calc

import (
	"math"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/unit"
)

// again marks the keys of the second round, after the change.
const again = "again"

// A roundEntry is the readings of one round of runs.
type roundEntry struct {
	group  *Group
	Each   lengthList // mark of each run
	Rest   lengthList
	Fed    lengthList
	Moved  lengthList
	Turned angleList
	Aside  flagList
}

func readingInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", 0.01, 3000) }
func restInput() unit.Input[unit.Length]    { return unit.Lengths.Input("mm", 0, 3000) } // all may have gone in

func newRoundEntry(noun string, start int) roundEntry {
	return roundEntry{
		group: &Group{Noun: noun, Least: 1, Start: start, Most: MostRows},
		Each:  lengthsOf(readingInput()), Rest: lengthsOf(restInput()), Fed: lengthsOf(readingInput()), Moved: lengthsOf(readingInput()),
		Turned: columnOf(unit.Angles.Input("°", 0.001, 360_000)),
		Aside:  listOf(newFlag("the reading is set aside: it stays on view, and does not count")),
	}
}

// fields declares the columns; more stand before them in the same rows.
func (r *roundEntry) fields(section *Section, suffix string, on []When, more ...Field) []Field {
	rest := and(and(on, "axis", "feed"), "read", "rest")
	column := func(key, label, hint string, on []When, cells Cells) Field {
		return Field{Key: key + suffix, Label: label, Hint: hint, Section: section, When: on, Group: r.group, Cells: cells}
	}
	return lists.Concat(more, []Field{
		column("eachmark", "Mark at", "", and(rest, "marks", "each"), r.Each.cells()),
		column("rest", "Remaining", "From the drive's inlet to the mark after the run.", rest, r.Rest.cells()),
		column("fed", "Fed", "", and(and(on, "axis", "feed"), "read", "fed"), r.Fed.cells()),
		column("moved", "Measured", "How far the carriage moved, not the size of a printed part.", and(and(on, "axis", "travel"), "trip", "one", "lengths"), r.Moved.cells()),
		column("turned", "Measured", "", and(on, "axis", "rotary"), r.Turned.cells()),
		column("aside", "Set aside", "", append(append([]When(nil), on...), When{Key: "trip", Words: []string{"sides"}, Not: true}), &r.Aside),
	})
}

// A run is one row of readings that is complete.
type run struct {
	row        int
	mark, rest float64 // of a mark test
	moved      float64
	aside      bool
	speed      float64 // mm/s, in a test at several speeds; 0 if not told
	want       float64 // commanded, in a test of several lengths; 0 if not told
}

func plainRuns(r *roundEntry, list *column) []run {
	var runs []run
	for i, in := range list.rows {
		if in.Given {
			runs = append(runs, run{row: i, moved: in.Number, aside: r.Aside.Rows[i].On})
		}
	}
	return runs
}

// counted are the runs that were not set aside.
func counted(runs []run) []run { return lists.Keep(runs, func(r run) bool { return !r.aside }) }

// standsOut finds the reading that stands out from the others, read with an
// instrument of some step: a step or two is no slip of the hand.
func standsOut(s measure.Series, step float64) (index int, found bool) {
	g, err := measure.Grubbs(s, 0.05)
	return g.Index, err == nil && g.Found && math.Abs(g.Value-g.Mean) > 2*step
}
