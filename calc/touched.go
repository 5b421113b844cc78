package calc

import (
	"striderule/calc/drive"
	"striderule/calc/unit"
)

// secTouched is where a person's own numbers stand that a change of scale
// touches.
var secTouched = &Section{Title: "For what else this touches, your own numbers", Folded: true}

// A touchedEntry asks for them. What is not given is told as a factor.
type touchedEntry struct {
	Retract unit.Input[unit.Length]
	Load    unit.Input[unit.Length]
	Place   unit.Input[unit.Length]
	Flow    unit.Input[unit.Ratio]
	Fastest unit.Input[unit.Speed]
	Limit   unit.Input[unit.PulseRate]
}

func newTouchedEntry() touchedEntry {
	return touchedEntry{
		Retract: unit.Lengths.Input("mm", 0.01, 100),
		Load:    unit.Lengths.Input("mm", 0.1, 3000),
		Place:   positionInput(),
		Flow:    unit.FlowFactors.Input("", 0.2, 5),
		Fastest: unit.Speeds.Input("mm/s", 0.001, 2000),
		Limit:   unit.PulseRates.Input("pulses/s", 100, 100*unit.Million),
	}
}

// tunedFields ask for what was found by trial at the old scale.
func (e *touchedEntry) tunedFields(feed, travel []When) []Field {
	return []Field{
		{Key: "retract", Label: "Retraction", Hint: "As it is set now.", Section: secTouched, When: feed, Cells: input(&e.Retract)},
		{Key: "load", Label: "Load or unload length", Hint: "As a macro has it now.", Section: secTouched, When: feed, Cells: input(&e.Load)},
		{Key: "flow", Label: "Flow factor", Hint: "As it is set now.", Section: secTouched, When: feed, Cells: input(&e.Flow)},
		{Key: "place", Label: "A position found by moving the axis", Hint: "An end stop's offset, a parking place, a length of the axis.", Section: secTouched, When: travel, Cells: input(&e.Place)},
	}
}

// speedFields ask for what pulse rates follow from.
func (e *touchedEntry) speedFields(on []When) []Field {
	return []Field{
		{Key: "fastest", Label: "Fastest speed of this axis", Hint: "A number alone is in mm/s; or write 3000 mm/min. For a feeder that is its retraction.", Section: secTouched, When: on, Cells: input(&e.Fastest)},
		{Key: "limit", Label: "Most pulses per second", Hint: "That the controller can send: 40000, or 40 kHz.", Section: secTouched, When: on, Cells: input(&e.Limit)},
	}
}

var (
	tunedKeys = []string{"retract", "load", "flow", "place"}
	speedKeys = []string{"fastest", "limit"}
)

// touchedOutputs are the figures of both kinds.
var (
	tunedOutputs = []Output{
		{"retract", "Retraction that really moves what the old one did", "mm"},
		{"load", "Load or unload length that really moves what the old one did", "mm"},
		{"flow", "Flow factor that gives as much plastic as the old one did", "1"},
		{"place", "Position that is where the old one was", "mm"},
	}
	pulseOutputs = []Output{
		{"was-rate", "Pulse rate at the fastest speed, before", "pulses/s"},
		{"rate", "Pulse rate at the fastest speed, after", "pulses/s"},
		{"was-top", "Speed at the pulse limit, before", "mm/s"},
		{"top", "Speed at the pulse limit, after", "mm/s"},
		{"was-step", "Travel per microstep, before", "mm or °"},
		{"step", "Travel per microstep, after", "mm or °"},
	}
)

// A touched is a change of scale on its way into what else it touches.
type touched struct {
	*touchedEntry
	was, is fact
}

// by is c: what steps per mm are multiplied with.
func (t touched) by() float64 {
	if t.was.setting.Convention == drive.StepsPerUnit {
		return t.is.setting.Value / t.was.setting.Value
	}
	return t.was.setting.Value / t.is.setting.Value
}

// item is one thing with its number before and after, or with its factor.
func item(name, id, in string, given *unit.Entry, factor float64, why string) Line {
	if !given.Given {
		return say(name+": multiply by ", &Figure{Value: factor, Digits: 4}, "."+why)
	}
	return say(name+": ", &Figure{Value: given.Number, Unit: in, Digits: 6}, " so far, ", &Figure{ID: id, Value: given.Number * factor, Unit: in, Digits: 3}, " from now on."+why)
}

// tunedFeed are lengths and amounts that were set by trial while the axis did
// not move what it said: with 1/c they do what they did. A constant in seconds
// is a length over a speed, in which c cancels.
func (t touched) tunedFeed() []Line {
	c := 1 / t.by()
	less := " It really moved less than it said; the new scale moves all of it."
	more := " Less plastic than it said came out, and the factor made up for it. Start from there, and trim it anew."
	if c > 1 {
		less = " It really moved more than it said."
		more = " More plastic than it said came out, and the factor made up for it. Start from there, and trim it anew."
	}
	return []Line{
		item("Retraction, if you tuned it by trial", "retract", "mm", t.Retract.Entry(), c, less),
		item("Load and unload lengths in macros", "load", "mm", t.Load.Entry(), c, ""),
		item("Flow factor, if you tuned it by trial", "flow", "", t.Flow.Entry(), c, more),
		say("Values that come from a rule or from somebody else, not from trial, stay: they are right from now on."),
		say("Constants in seconds, such as for the pressure in the hot end, stay as they are."),
	}
}

func (t touched) tunedTravel() []Line {
	return []Line{
		item("Positions and lengths that were found by moving the axis (end stop offsets, parking places)", "place", "mm", t.Place.Entry(), 1/t.by(), " The place is the same, its number is not."),
		say("What was measured with a rule, or is in the maker's drawing, stays: it is right from now on."),
		say("A size compensation in the slicing step that made up for the old scale: set it back, or parts come out wrong the other way."),
	}
}

// pulses are what the controller and the motor see of the change.
func (t touched) pulses() []Block {
	was, missing := t.was.in(drive.StepsPerUnit)
	is, _ := t.is.in(drive.StepsPerUnit)
	if len(missing) > 0 {
		return []Block{Ask{missing, "what changes in pulses per second"}}
	}
	factor := is.Value / was.Value
	rate := func(id string, s float64) *Figure {
		return &Figure{ID: id, Value: float64(drive.PulseRate(t.Fastest.Number, s)), Unit: "pulses/s", Digits: 5}
	}
	top := func(id string, s float64) *Figure {
		return &Figure{ID: id, Value: drive.TopSpeed(t.Limit.Value(), s), Unit: "mm/s", Digits: 4}
	}
	in := "mm"
	if t.was.rotary {
		in = "°"
	}
	step := func(id string, s float64) *Figure { return &Figure{ID: id, Value: 1 / s, Unit: in, Digits: 3} }
	items := sentences{say("Pulses per second at any speed: multiplied by ", &Figure{Value: factor, Digits: 4}, ".")}
	if t.Fastest.Given {
		items = sentences{say("Pulses per second at ", &Figure{Value: t.Fastest.Number, Unit: "mm/s", Digits: 6}, ": ", rate("was-rate", was.Value), " before, ", rate("rate", is.Value), " now.")}
	}
	if t.Limit.Given {
		items.say("Speed at which the pulses run out: ", top("was-top", was.Value), " before, ", top("top", is.Value), " now.")
	}
	items.say("One microstep: ", step("was-step", was.Value), " before, ", step("step", is.Value), " now.")
	blocks := []Block{Points{items}}
	if t.Fastest.Given && t.Limit.Given && t.Fastest.Number > drive.TopSpeed(t.Limit.Value(), is.Value) {
		blocks = append(blocks, doubtNote("The fastest speed is now beyond what the controller can send: go slower, or set fewer microsteps."))
	}
	return blocks
}

// elsewhere says where the old value may come back from, and who else needs the
// new one.
func elsewhere(before, after string, travel bool) []Line {
	items := sentences{
		say("A start-up script, a macro or a profile that still sets " + before + ": change it to " + after + "."),
		say("The controller's memory: a value stored there may win over the configuration. Store the new one, or clear it."),
	}
	if travel {
		items.say("A second motor on the same belt path (crossed belts, towers), or on the same axis: it gets the same number.")
	}
	return items
}

const touchesTitle = "What else this touches"

func positionInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", -3000, 3000) }
