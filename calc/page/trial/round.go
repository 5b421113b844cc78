package trial

import (
	"math"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Again marks the keys of the second round, after the change.
const Again = "again"

// A RoundEntry is the readings of one round of runs.
type RoundEntry struct {
	Group  *sheet.Group
	Each   sheet.LengthList // mark of each run
	Rest   sheet.LengthList
	Fed    sheet.LengthList
	Moved  sheet.LengthList
	Turned sheet.AngleList
	Aside  sheet.FlagList
}

// ReadingInput reads a length that was measured.
func ReadingInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", 0.01, 3000) }
func restInput() unit.Input[unit.Length]    { return unit.Lengths.Input("mm", 0, 3000) } // all may have gone in

// NewRoundEntry is a round with so many rows to start with.
func NewRoundEntry(noun string, start int) RoundEntry {
	return RoundEntry{
		Group: &sheet.Group{Noun: noun, Least: 1, Start: start, Most: sheet.MostRows},
		Each:  sheet.LengthsOf(ReadingInput()), Rest: sheet.LengthsOf(restInput()), Fed: sheet.LengthsOf(ReadingInput()), Moved: sheet.LengthsOf(ReadingInput()),
		Turned: sheet.ColumnOf(unit.Angles.Input("°", 0.001, 360_000)),
		Aside:  sheet.ListOf(sheet.NewFlag("the reading is set aside: it stays on view, and does not count")),
	}
}

// Fields declares the columns; more stand before them in the same rows.
func (r *RoundEntry) Fields(section *sheet.Section, suffix string, on []sheet.When, more ...sheet.Field) []sheet.Field {
	rest := sheet.And(sheet.And(on, "axis", "feed"), "read", "rest")
	column := func(key, label, hint string, on []sheet.When, cells sheet.Cells) sheet.Field {
		return sheet.Field{Key: key + suffix, Label: label, Hint: hint, Section: section, When: on, Group: r.Group, Cells: cells}
	}
	return lists.Concat(more, []sheet.Field{
		column("eachmark", "Mark at", "", sheet.And(rest, "marks", "each"), r.Each.Cells()),
		column("rest", "Remaining", "From the drive's inlet to the mark after the run.", rest, r.Rest.Cells()),
		column("fed", "Fed", "", sheet.And(sheet.And(on, "axis", "feed"), "read", "fed"), r.Fed.Cells()),
		column("moved", "Measured", "How far the carriage moved, not the size of a printed part.", sheet.And(sheet.And(on, "axis", "travel"), "trip", "one", "lengths"), r.Moved.Cells()),
		column("turned", "Measured", "", sheet.And(on, "axis", "rotary"), r.Turned.Cells()),
		column("aside", "Set aside", "", append(append([]sheet.When(nil), on...), sheet.When{Key: "trip", Words: []string{"sides"}, Not: true}), &r.Aside),
	})
}

// A Run is one row of readings that is complete.
type Run struct {
	Row        int
	Mark, Rest float64 // of a mark test
	Moved      float64
	Aside      bool
	Speed      float64 // mm/s, in a test at several speeds; 0 if not given
	Want       float64 // commanded, in a test of several lengths; 0 if not given
}

// PlainRuns are the runs of a column in which the reading is the length itself.
func PlainRuns(r *RoundEntry, list *sheet.Entries) []Run {
	var runs []Run
	for i, in := range list.Rows {
		if in.Given {
			runs = append(runs, Run{Row: i, Moved: in.Number, Aside: r.Aside.Rows[i].On})
		}
	}
	return runs
}

// Counted are the runs that were not set aside.
func Counted(runs []Run) []Run { return lists.Keep(runs, func(r Run) bool { return !r.Aside }) }

// StandsOut finds the reading that stands out from the others, read with an
// instrument of some step: a step or two is no slip of the hand.
func StandsOut(s measure.Series, step float64) (index int, found bool) {
	g, err := measure.Grubbs(s, 0.05)
	return g.Index, err == nil && g.Found && math.Abs(g.Value-g.Mean) > 2*step
}
