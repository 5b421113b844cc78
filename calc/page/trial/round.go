package trial

import (
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

// What was moved may be nothing, or the wrong way: the page says what to look at then.
func movedInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", -3000, 3000) }
func turnedInput() unit.Input[unit.Angle] { return unit.Angles.Input("°", -360_000, 360_000) }

// TurnInput reads an angle that was commanded.
func TurnInput() unit.Input[unit.Angle] { return unit.Angles.Input("°", 0.001, 360_000) }

// NewRoundEntry is a round with so many rows to start with.
func NewRoundEntry(rows sheet.RowWords, start int) RoundEntry {
	return RoundEntry{
		Group: &sheet.Group{Words: rows, Least: 1, Start: start, Most: sheet.MostRows},
		Each:  sheet.LengthsOf(ReadingInput()), Rest: sheet.LengthsOf(restInput()), Fed: sheet.LengthsOf(movedInput()), Moved: sheet.LengthsOf(movedInput()),
		Turned: sheet.ColumnOf(turnedInput()),
		Aside:  sheet.ListOf(sheet.NewFlag(asideAbout)),
	}
}

// Fields declares the columns; more stand before them in the same rows.
func (r *RoundEntry) Fields(section *sheet.Section, suffix string, on []sheet.When, more ...sheet.Field) []sheet.Field {
	rest := sheet.And(sheet.And(on, "axis", "feed"), "read", "rest")
	column := func(key, label, hint string, on []sheet.When, cells sheet.Cells) sheet.Field {
		return sheet.Field{Key: key + suffix, Label: label, Hint: hint, Section: section, When: on, Group: r.Group, Cells: cells}
	}
	return lists.Concat(more, []sheet.Field{
		column("eachmark", markLabel, "", sheet.And(rest, "marks", "each"), r.Each.Cells()),
		column("rest", restLabel, restHint, rest, r.Rest.Cells()),
		column("fed", fedLabel, "", sheet.And(sheet.And(on, "axis", "feed"), "read", "fed"), r.Fed.Cells()),
		column("moved", measuredLabel, movedHint, sheet.And(sheet.And(on, "axis", "travel"), "trip", "one", "lengths"), r.Moved.Cells()),
		column("turned", measuredLabel, "", sheet.And(sheet.And(on, "axis", "rotary"), "trip", "one", "lengths"), r.Turned.Cells()),
		column("aside", asideLabel, "", append(append([]sheet.When(nil), on...), sheet.When{Key: "trip", Words: []string{"sides"}, Not: true}), &r.Aside),
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

	Reading  *unit.Entry // as it was typed: what remains, or the length itself
	MarkedAt *unit.Entry // the mark of a mark test
}

// PlainRuns are the runs of a column in which the reading is the length itself.
func PlainRuns(r *RoundEntry, list *sheet.Entries) []Run {
	var runs []Run
	for i, in := range list.Rows {
		if in.Given {
			runs = append(runs, Run{Row: i, Moved: in.Number, Aside: r.Aside.Rows[i].On, Reading: &list.Rows[i]})
		}
	}
	return runs
}

// Counted are the runs that were not left out.
func Counted(runs []Run) []Run { return lists.Keep(runs, func(r Run) bool { return !r.Aside }) }

// Series returns what moved in each run.
func Series(runs []Run) measure.Series {
	series := make(measure.Series, len(runs))
	for i, r := range runs {
		series[i] = r.Moved
	}
	return series
}
