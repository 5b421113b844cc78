package axis

import (
	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// A TouchedEntry asks for them. For what is not given the report says the factor.
type TouchedEntry struct {
	Tuned   sheet.Choice // when the numbers were found by trial
	Retract unit.Input[unit.Length]
	Load    unit.Input[unit.Length]
	Place   unit.Input[unit.Length]
	Flow    unit.Input[unit.Ratio]
	Fastest unit.Input[unit.Speed]
	Limit   unit.Input[unit.PulseRate]
}

// NewTouchedEntry is one with nothing given.
func NewTouchedEntry() TouchedEntry {
	return TouchedEntry{
		Tuned:   sheet.Choose(tunedUnsaid, tunedBefore, tunedAfter),
		Retract: unit.Lengths.Input("mm", 0.01, 100),
		Load:    unit.Lengths.Input("mm", 0.1, 3000),
		Place:   PositionInput(),
		Flow:    unit.FlowFactors.Input("", 0.2, 5),
		Fastest: unit.Speeds.Input("mm/s", 0.001, 2000),
		Limit:   unit.PulseRates.Input("pulses/s", 100, 100*unit.Million),
	}
}

// TunedFields ask for what was found by trial with the old setting; moves is when the axis is
// one of both.
func (e *TouchedEntry) TunedFields(moves, feed, travel []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "tuned", Label: tunedLabel, Hint: tunedHint, Section: secTouched, When: moves, Cells: sheet.One(&e.Tuned)},
		{Key: "retract", Label: retractLabel, Hint: retractHint, Section: secTouched, When: feed, Cells: sheet.Input(&e.Retract)},
		{Key: "load", Label: loadLabel, Hint: loadHint, Section: secTouched, When: feed, Cells: sheet.Input(&e.Load)},
		{Key: "flow", Label: flowLabel, Hint: flowHint, Section: secTouched, When: feed, Cells: sheet.Input(&e.Flow)},
		{Key: "place", Label: placeLabel, Hint: placeHint, Section: secTouched, When: travel, Cells: sheet.Input(&e.Place)},
	}
}

// SpeedFields ask for what pulse rates follow from.
func (e *TouchedEntry) SpeedFields(on []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "fastest", Label: fastestLabel, Hint: fastestHint, Section: secTouched, When: on, Cells: sheet.Input(&e.Fastest)},
		{Key: "limit", Label: limitLabel, Hint: limitHint, Section: secTouched, When: on, Cells: sheet.Input(&e.Limit)},
	}
}

var (
	TunedKeys = []string{"tuned", "retract", "load", "flow", "place"}
	SpeedKeys = []string{"fastest", "limit"}
)

// A Change is a change of setting on its way into what else it affects.
type Change struct {
	*TouchedEntry
	Was, Is Fact
}

// by is c: what steps per mm are multiplied by.
func (t Change) by() float64 {
	if t.Was.Setting.Convention == drive.StepsPerUnit {
		return t.Is.Setting.Value / t.Was.Setting.Value
	}
	return t.Was.Setting.Value / t.Is.Setting.Value
}

// tuned is one number before and after, or its factor; why is a sentence behind it.
func tuned(words tunedWords, id, in string, given *unit.Entry, factor float64, why string) report.Line {
	l := report.Say(words.by, "factor", &report.Figure{Value: factor, Digits: 4})
	if given.Given {
		l = report.Say(words.to, "was", &report.Figure{Value: given.Number, Unit: in, Digits: 6},
			"new", &report.Figure{ID: id, Value: given.Number * factor, Unit: in, Digits: 3})
	}
	if why == "" {
		return l
	}
	return report.Together(l, report.Text(why))
}

// mostByDefault is the change up to which numbers that were tuned are taken for tuned with the
// setting that is changed. Beyond it a part was changed, most likely, and they may be older.
const mostByDefault = 1.2

// Asks reports whether it must be known when the numbers were tuned, before anything is said of
// what they become.
func (t Change) Asks() bool {
	return t.Tuned.IsDefault() && max(t.by(), 1/t.by()) > mostByDefault
}

// TunedNumbers are what becomes of numbers that were found by trial while the axis did not move what it
// said. later is while the new setting is not known yet.
func (t Change) TunedNumbers(feed, later bool) []report.Block {
	stays, says := tunedFeedStays, t.tunedFeed
	if !feed {
		stays, says = tunedTravelStays, t.tunedTravel
	}
	switch {
	case t.Tuned.Word == tunedBefore.Word:
		return []report.Block{report.PointsOf(stays)}
	case later:
		return []report.Block{report.PointsOf(tunedLater)}
	case t.Asks():
		return []report.Block{report.PointsOf(tunedAsks), report.Ask{Keys: []string{"tuned"}, For: tunedFor}}
	}
	return []report.Block{report.Points{Items: says()}}
}

// tunedFeed are lengths and amounts: with 1/c they do what they did. A constant in seconds
// is a length over a speed, in which c cancels.
func (t Change) tunedFeed() []report.Line {
	c := 1 / t.by()
	moved := movedLess
	if c > 1 {
		moved = movedMore
	}
	return []report.Line{
		tuned(retractWords, "retract", "mm", t.Retract.Entry(), c, moved),
		tuned(loadWords, "load", "mm", t.Load.Entry(), c, ""),
		tuned(flowWords, "flow", "", t.Flow.Entry(), c, flowAgain),
		report.Say(guidesStay),
		report.Say(secondsStay),
	}
}

// tunedTravel are positions that were found by moving the axis with the old setting.
func (t Change) tunedTravel() []report.Line {
	return []report.Line{
		tuned(placeWords, "place", "mm", t.Place.Entry(), 1/t.by(), samePlace),
		report.Say(measuredStay),
		report.Say(compensation),
	}
}

// Pulses are what the controller and the motor see of the change.
func (t Change) Pulses() []report.Block {
	was, missing := t.Was.In(drive.StepsPerUnit)
	is, _ := t.Is.In(drive.StepsPerUnit)
	if len(missing) > 0 {
		return []report.Block{report.Ask{Keys: missing, For: changedRates}}
	}
	factor := is.Value / was.Value
	rate := func(id string, s float64) *report.Figure {
		return &report.Figure{ID: id, Value: float64(drive.PulseRate(t.Fastest.Number, s)), Unit: "pulses/s", Digits: 5}
	}
	top := func(id string, s float64) *report.Figure {
		return &report.Figure{ID: id, Value: drive.TopSpeed(t.Limit.Value(), s), Unit: "mm/s", Digits: 4}
	}
	in := "mm"
	if t.Was.Rotary {
		in = "°"
	}
	step := func(id string, s float64) *report.Figure {
		return &report.Figure{ID: id, Value: 1 / s, Unit: in, Digits: 3}
	}
	items := report.Sentences{report.Say(rateBy, "factor", &report.Figure{Value: factor, Digits: 4})}
	if t.Fastest.Given {
		items = report.Sentences{report.Say(rateTo, "speed", &report.Figure{Value: t.Fastest.Number, Unit: "mm/s", Digits: 6}, "was", rate("was-rate", was.Value), "new", rate("rate", is.Value))}
	}
	if t.Limit.Given {
		items.Say(topTo, "was", top("was-top", was.Value), "new", top("top", is.Value))
	}
	items.Say(microstep, "was", step("was-step", was.Value), "new", step("step", is.Value))
	blocks := []report.Block{report.Points{Items: items}}
	if t.Fastest.Given && t.Limit.Given && t.Fastest.Number > drive.TopSpeed(t.Limit.Value(), is.Value) {
		blocks = append(blocks, report.DoubtNote(beyondLimit))
	}
	return blocks
}

// Elsewhere says where the old value may come back from, and who else needs the
// new one.
func Elsewhere(before, after string, travel bool) []report.Line {
	items := report.Sentences{
		report.Say(scriptSets, "old", before, "new", after),
		report.Say(savedWins),
	}
	if travel {
		items.Say(secondMotor)
	}
	return items
}

// PositionInput reads a position of a linear axis.
func PositionInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", -3000, 3000) }

// PositionDegInput reads a position of a rotary axis: up to a thousand turns either way.
func PositionDegInput() unit.Input[unit.Angle] { return unit.Angles.Input("°", -360_000, 360_000) }
