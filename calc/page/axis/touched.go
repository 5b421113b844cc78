package axis

import (
	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// secTouched is where a person's own numbers stand that a change of scale
// touches.
var secTouched = &sheet.Section{Title: "For what else this touches, your own numbers", Folded: true}

// A TouchedEntry asks for them. For what is not given the report says the factor.
type TouchedEntry struct {
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
		Retract: unit.Lengths.Input("mm", 0.01, 100),
		Load:    unit.Lengths.Input("mm", 0.1, 3000),
		Place:   PositionInput(),
		Flow:    unit.FlowFactors.Input("", 0.2, 5),
		Fastest: unit.Speeds.Input("mm/s", 0.001, 2000),
		Limit:   unit.PulseRates.Input("pulses/s", 100, 100*unit.Million),
	}
}

// TunedFields ask for what was found by trial at the old scale.
func (e *TouchedEntry) TunedFields(feed, travel []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "retract", Label: "Retraction", Hint: "As it is set now.", Section: secTouched, When: feed, Cells: sheet.Input(&e.Retract)},
		{Key: "load", Label: "Load or unload length", Hint: "As a macro has it now.", Section: secTouched, When: feed, Cells: sheet.Input(&e.Load)},
		{Key: "flow", Label: "Flow factor", Hint: "As it is set now.", Section: secTouched, When: feed, Cells: sheet.Input(&e.Flow)},
		{Key: "place", Label: "A position found by moving the axis", Hint: "An end stop's offset, a parking place, a length of the axis.", Section: secTouched, When: travel, Cells: sheet.Input(&e.Place)},
	}
}

// SpeedFields ask for what pulse rates follow from.
func (e *TouchedEntry) SpeedFields(on []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "fastest", Label: "Fastest speed of this axis", Hint: "A number alone is in mm/s; or write 3000 mm/min. For a feeder that is its retraction.", Section: secTouched, When: on, Cells: sheet.Input(&e.Fastest)},
		{Key: "limit", Label: "Most pulses per second", Hint: "That the controller can send: 40000, or 40 kHz.", Section: secTouched, When: on, Cells: sheet.Input(&e.Limit)},
	}
}

var (
	TunedKeys = []string{"retract", "load", "flow", "place"}
	SpeedKeys = []string{"fastest", "limit"}
)

// touchedOutputs are the figures of both kinds.
var (
	TunedOutputs = []sheet.Output{
		{ID: "retract", Label: "Retraction that really moves what the old one did", Unit: "mm"},
		{ID: "load", Label: "Load or unload length that really moves what the old one did", Unit: "mm"},
		{ID: "flow", Label: "Flow factor that gives as much plastic as the old one did", Unit: "1"},
		{ID: "place", Label: "Position that is where the old one was", Unit: "mm"},
	}
	PulseOutputs = []sheet.Output{
		{ID: "was-rate", Label: "Pulse rate at the fastest speed, before", Unit: "pulses/s"},
		{ID: "rate", Label: "Pulse rate at the fastest speed, after", Unit: "pulses/s"},
		{ID: "was-top", Label: "Speed at the pulse limit, before", Unit: "mm/s"},
		{ID: "top", Label: "Speed at the pulse limit, after", Unit: "mm/s"},
		{ID: "was-step", Label: "Travel per microstep, before", Unit: "mm or °"},
		{ID: "step", Label: "Travel per microstep, after", Unit: "mm or °"},
	}
)

// A Change is a change of scale on its way into what else it touches.
type Change struct {
	*TouchedEntry
	Was, Is Fact
}

// by is c: what steps per mm are multiplied with.
func (t Change) by() float64 {
	if t.Was.Setting.Convention == drive.StepsPerUnit {
		return t.Is.Setting.Value / t.Was.Setting.Value
	}
	return t.Was.Setting.Value / t.Is.Setting.Value
}

// item is one thing with its number before and after, or with its factor.
func item(name, id, in string, given *unit.Entry, factor float64, why string) report.Line {
	if !given.Given {
		return report.Say(name+": multiply by ", &report.Figure{Value: factor, Digits: 4}, "."+why)
	}
	return report.Say(name+": ", &report.Figure{Value: given.Number, Unit: in, Digits: 6}, " so far, ", &report.Figure{ID: id, Value: given.Number * factor, Unit: in, Digits: 3}, " from now on."+why)
}

// TunedFeed are lengths and amounts that were set by trial while the axis did
// not move what it said: with 1/c they do what they did. A constant in seconds
// is a length over a speed, in which c cancels.
func (t Change) TunedFeed() []report.Line {
	c := 1 / t.by()
	less := " It really moved less than it said; the new scale moves all of it."
	more := " Less plastic than it said came out, and the factor made up for it. Start from there, and trim it anew."
	if c > 1 {
		less = " It really moved more than it said."
		more = " More plastic than it said came out, and the factor made up for it. Start from there, and trim it anew."
	}
	return []report.Line{
		item("Retraction, if you tuned it by trial", "retract", "mm", t.Retract.Entry(), c, less),
		item("Load and unload lengths in macros", "load", "mm", t.Load.Entry(), c, ""),
		item("Flow factor, if you tuned it by trial", "flow", "", t.Flow.Entry(), c, more),
		report.Say("Values that come from a rule or from somebody else, not from trial, stay: they are right from now on."),
		report.Say("Constants in seconds, such as for the pressure in the hot end, stay as they are."),
	}
}

// TunedTravel are positions that were found by moving the axis at the old scale.
func (t Change) TunedTravel() []report.Line {
	return []report.Line{
		item("Positions and lengths that were found by moving the axis (end stop offsets, parking places)", "place", "mm", t.Place.Entry(), 1/t.by(), " The place is the same, its number is not."),
		report.Say("What was measured with a rule, or is in the maker's drawing, stays: it is right from now on."),
		report.Say("A size compensation in the slicing step that made up for the old scale: set it back, or parts come out wrong the other way."),
	}
}

// Pulses are what the controller and the motor see of the change.
func (t Change) Pulses() []report.Block {
	was, missing := t.Was.In(drive.StepsPerUnit)
	is, _ := t.Is.In(drive.StepsPerUnit)
	if len(missing) > 0 {
		return []report.Block{report.Ask{Keys: missing, For: "what changes in pulses per second"}}
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
	items := report.Sentences{report.Say("Pulses per second at any speed: multiplied by ", &report.Figure{Value: factor, Digits: 4}, ".")}
	if t.Fastest.Given {
		items = report.Sentences{report.Say("Pulses per second at ", &report.Figure{Value: t.Fastest.Number, Unit: "mm/s", Digits: 6}, ": ", rate("was-rate", was.Value), " before, ", rate("rate", is.Value), " now.")}
	}
	if t.Limit.Given {
		items.Say("Speed at which the pulses run out: ", top("was-top", was.Value), " before, ", top("top", is.Value), " now.")
	}
	items.Say("One microstep: ", step("was-step", was.Value), " before, ", step("step", is.Value), " now.")
	blocks := []report.Block{report.Points{Items: items}}
	if t.Fastest.Given && t.Limit.Given && t.Fastest.Number > drive.TopSpeed(t.Limit.Value(), is.Value) {
		blocks = append(blocks, report.DoubtNote("The fastest speed is now beyond what the controller can send: go slower, or set fewer microsteps."))
	}
	return blocks
}

// Elsewhere says where the old value may come back from, and who else needs the
// new one.
func Elsewhere(before, after string, travel bool) []report.Line {
	items := report.Sentences{
		report.Say("A start-up script, a macro or a profile that still sets " + before + ": change it to " + after + "."),
		report.Say("The controller's memory: a value stored there may win over the configuration. Store the new one, or clear it."),
	}
	if travel {
		items.Say("A second motor on the same belt path (crossed belts, towers), or on the same axis: it gets the same number.")
	}
	return items
}

// TouchesTitle heads what a change of scale brings with it.
const TouchesTitle = "What else this touches"

// PositionInput reads a position of a travel axis.
func PositionInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", -3000, 3000) }
