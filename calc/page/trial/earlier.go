package trial

import (
	"striderule/calc/measure"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// An EarlierEntry asks what is known before the test: how many runs were planned, and how the
// machine's runs scattered in tests before.
type EarlierEntry struct {
	Planned   unit.Input[unit.Count]
	Spread    unit.Input[unit.Length]
	SpreadDeg unit.Input[unit.Angle] // of a rotary axis
	Dof       unit.Input[unit.Count]
}

// RunCounts reads numbers of runs.
var RunCounts = unit.Kind[unit.Count]{
	Words: &runCountWords, Whole: true,
	Units: []unit.Unit{{Also: []string{"run", "runs"}}},
}

var freedoms = unit.Kind[unit.Count]{Words: &freedomWords, Whole: true, Units: []unit.Unit{{}}}

// usualDof is how many degrees of freedom a scatter has of which none are given: those of five runs.
const usualDof = 4

// NewEarlierEntry is one with nothing given.
func NewEarlierEntry() EarlierEntry {
	return EarlierEntry{
		Planned:   RunCounts.Input("", 2, sheet.MostRows),
		Spread:    unit.Lengths.Input("mm", leastScatter, mostScatter),
		SpreadDeg: unit.Angles.Input("°", leastScatter, 360),
		Dof:       freedoms.Input("", 1, 1000),
	}
}

// Fields declares the entry. The scatter of before counts in a test of one length.
func (e *EarlierEntry) Fields(section *sheet.Section) []sheet.Field {
	one := sheet.And(sheet.If("trial", "one"), "trip", "one")
	return []sheet.Field{
		{Key: "planned", Label: plannedLabel, Hint: plannedHint, Section: section, Cells: sheet.Input(&e.Planned)},
		{Key: "spread", Label: spreadLabel, Hint: spreadHint, Section: section, When: sheet.And(one, "axis", "feed", "travel"), Cells: sheet.Input(&e.Spread)},
		{Key: "spreaddeg", Label: spreadLabel, Hint: spreadHint, Section: section, When: sheet.And(one, "axis", "rotary"), Cells: sheet.Input(&e.SpreadDeg)},
		{Key: "spreaddof", Label: dofEntryLabel, Hint: dofEntryHint, Section: section, When: one, Cells: sheet.Input(&e.Dof)},
	}
}

// EarlierKeys are all that the entry is made of.
var EarlierKeys = []string{"planned", "spread", "spreaddeg", "spreaddof"}

// Earlier is the scatter of before: none where none is given.
func (e *EarlierEntry) Earlier() measure.Spread {
	sd := e.Spread.Number + e.SpreadDeg.Number // one of both is hidden
	if sd == 0 {
		return measure.Spread{}
	}
	if e.Dof.Given {
		return measure.Spread{SD: sd, Dof: e.Dof.Number}
	}
	return measure.Spread{SD: sd, Dof: usualDof}
}

// What a scatter can be, in mm; of one in degrees as well.
const leastScatter, mostScatter = 0.0001, 100

// fewRuns is up to how many runs the scatter of before tells more than their own.
const fewRuns = 4

// Scatter is how the runs of a test of one length scattered, for tests to come.
func (e *EarlierEntry) Scatter(of measure.Test, rotary bool) report.Scatter {
	s := report.Scatter{Key: "spread", Wanted: of.Runs > 0 && of.Runs <= fewRuns && e.Earlier().Dof == 0}
	if rotary {
		s.Key = "spreaddeg"
	}
	if of.Runs > 1 && of.Scatter >= leastScatter && of.Scatter <= mostScatter { // none at all is the tool's step
		s.SD, s.Dof = of.Scatter, float64(of.Runs-1)
	}
	return s
}
