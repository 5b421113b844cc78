package calc

import (
	"striderule/calc/lists"
	"striderule/calc/unit"
)

// The rate page takes from others: for each axis name, moves (linear, feed,
// rotary), the setting as convert has it (as, steps, stepsdeg, turn, turndeg,
// output, outputdeg, angle, micro, ratio), speeds (work, workdeg, fast,
// fastdeg, back: mm/s or °/s), accel, and with compare=swap what is there after
// the swap (stepsnew, stepsdegnew, anglenew, micronew); then limit and share.
var ratePage = Page{
	Slug:     "rate",
	Menu:     "Rate",
	Title:    "Speed and step rate",
	Question: "How many pulses per second does that take, and where is the limit?",
	About:    "Pulses per second at your speeds, the highest speed that a controller's limit allows, the smallest move, and what a swap changes about them.",
	New:      func() Sheet { return newRate() },
	Example: "v=1&name=Heron%20feed,Plover%20X,Plover%20Z&moves=feed&steps=564.3,88.8889,800&angle=1.8,1.8,1.8&micro=16,16,16" +
		"&work=3,50,5&fast=,200,12&back=45&accel=,1500,100&limit=40kHz",
	Outputs: []Output{
		{"most", "Highest pulse rate that the speeds take", "pulses/s"},
		{"work", "Pulse rate at the working speed", "pulses/s"},
		{"fast", "Pulse rate at the travel speed", "pulses/s"},
		{"back", "Pulse rate at the retraction speed", "pulses/s"},
		{"accel", "Pulse rate gained in a second", "pulses/s²"},
		{"microstep", "Travel per microstep", "mm or °"},
		{"fullstep", "Travel per full step", "mm or °"},
		{"allwork", "Pulse rate of all axes together, at their working speeds", "pulses/s"},
		{"allfast", "Pulse rate of all axes together, at their travel speeds", "pulses/s"},
		{"top", "Highest speed that the limit allows an axis alone", "mm/s or °/s"},
		{"slower", "Part of the speeds that the limit allows, all axes together", "%"},
		{"new-work", "Pulse rate at the working speed, after the swap", "pulses/s"},
		{"new-fast", "Pulse rate at the travel speed, after the swap", "pulses/s"},
		{"new-back", "Pulse rate at the retraction speed, after the swap", "pulses/s"},
		{"new-top", "Highest speed that the limit allows, after the swap", "mm/s or °/s"},
		{"new-microstep", "Travel per microstep, after the swap", "mm or °"},
		{"torque", "Torque behind one microstep, of the holding torque", "%"},
		{"holds", "Torque behind one microstep", "N·m"},
		{"new-torque", "Torque behind one microstep, of the holding torque, after the swap", "%"},
		{"new-holds", "Torque behind one microstep, after the swap", "N·m"},
		{"swing", "Time in which the current swings over", "ms"},
		{"fullrate", "Full steps per second at which it just does", "steps/s"},
		{"corner", "Ideal corner speed of the motor", "rev/s"},
		{"rpm", "Ideal corner speed of the motor", "rev/min"},
		{"follow", "Speed of the axis at it", "mm/s or °/s"},
	},
	Tasks: []Task{
		{"Is my controller fast enough?", "Pulses per second at your speeds, and the highest speed at its limit.", ""},
	},
}

// A rateSheet is a table of axes with their speeds, and what limits them.
type rateSheet struct {
	Compare Choice
	axis    *Group
	Name    textList
	Moves   choiceList
	scaleRows
	motorRows
	Ratio    ratioList
	Work     speedList
	WorkDeg  turningList
	Fast     speedList
	FastDeg  turningList
	Back     speedList
	Accel    rateUpList
	StepsNew perLength // after the swap
	DegNew   perAngle
	newMotor motorRows

	Limit      unit.Input[unit.PulseRate]
	Share      Choice
	Hold       unit.Input[unit.Torque]
	Supply     unit.Input[unit.Voltage]
	Inductance unit.Input[unit.Inductance]
	Current    unit.Input[unit.Current]
}

func newRate() *rateSheet {
	speeds := func() speedList {
		return columnOf(unit.Speeds.Input("mm/s", 0.0001, 10_000))
	}
	turning := func() turningList {
		return columnOf(unit.AngularSpeeds.Input("°/s", 0.0001, 360_000))
	}
	return &rateSheet{
		Compare:   choose(Option{"none", "As it is", ""}, Option{"swap", "Before and after a swap", "another setting or other microsteps"}),
		axis:      &Group{Noun: "axis", Least: 1, Most: MostRows},
		Name:      nameList(),
		Moves:     listOf(choose(Option{"linear", "In mm", "carriage, nut"}, Option{"feed", "Filament", "in mm, with a retraction speed"}, Option{"rotary", "In degrees", "table, spindle"})),
		scaleRows: newScaleRows(), motorRows: newMotorRows(), Ratio: ratioRows(),
		Work: speeds(), WorkDeg: turning(), Fast: speeds(), FastDeg: turning(), Back: speeds(),
		Accel:    columnOf(unit.Accelerations.Input("mm/s²", 0.1, unit.Million)),
		StepsNew: columnOf(stepsInput()),
		DegNew:   columnOf(stepsDegInput()),
		newMotor: newMotorRows(),
		Limit:    unit.PulseRates.Input("pulses/s", 100, 100*unit.Million),
		Share: choose(Option{"axis", "For each axis", "every axis can have that many"},
			Option{"all", "For all together", "the axes that move at once share it"}),
		Hold:       unit.Torques.Input("N·m", 0.0001, 100),
		Supply:     unit.Voltages.Input("V", 1, 1000),
		Inductance: unit.Inductances.Input("mH", 0.001, 1000),
		Current:    unit.Currents.Input("A", 0.001, 100),
	}
}

func (s *rateSheet) Fields() []Field {
	what, axes := &Section{Title: "What to look at"}, &Section{Title: "Axes"}
	limit := &Section{Title: "The controller's limit"}
	motor := &Section{Title: "The motor's data sheet", Folded: true}
	mm, deg := when("moves", "linear", "feed"), when("moves", "rotary")
	swap := when("compare", "swap")
	col := func(key, label, hint string, on []When, cells Cells, suggest ...string) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: axes, When: on, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	const inSeconds = "A number alone is in mm/s; or write 3000 mm/min."
	const turns = "In degrees per second; or write 15 rev/min."
	after := s.newMotor.fields(axes, s.axis, swap)
	for i := range after {
		after[i].Key += suffixNew
		after[i].Label += " after the swap"
		after[i].Hint = ""
		after[i].Carry = false
	}
	return lists.Concat(
		[]Field{
			{Key: "compare", Label: "Look at it", Section: what, Cells: one(&s.Compare)},
			col("name", "Name", "", nil, &s.Name), col("moves", "It moves", "", nil, &s.Moves),
		},
		s.scaleRows.fields(axes, s.axis, "Given is", nil, mm, deg),
		s.motorRows.fields(axes, s.axis, nil),
		[]Field{
			col("ratio", "Gear ratio", "Motor turns for one output turn: 54:12, or 4.5.", when("as", asOutput), s.Ratio.cells(), "1"),
			col("work", "Working speed", inSeconds, mm, s.Work.cells()),
			col("workdeg", "Working speed", turns, deg, s.WorkDeg.cells()),
			col("fast", "Travel speed", "Where it moves without working. "+inSeconds, when("moves", "linear"), s.Fast.cells()),
			col("fastdeg", "Travel speed", turns, deg, s.FastDeg.cells()),
			col("back", "Retraction speed", "The fastest that a feeder moves. "+inSeconds, when("moves", "feed"), s.Back.cells()),
			col("accel", "Acceleration", "In mm/s², if you know it; not for axes in degrees.", mm, s.Accel.cells()),
			col("stepsnew", "Steps per mm after the swap", "Empty: only motor or microsteps change.", lists.Concat(swap, mm), s.StepsNew.cells()),
			col("stepsdegnew", "Steps per degree after the swap", "", lists.Concat(swap, deg), s.DegNew.cells()),
		},
		after,
		[]Field{
			{Key: "limit", Label: "Most pulses per second", Hint: "That the controller can send: 40000, or 40 kHz.", Section: limit, Cells: input(&s.Limit)},
			{Key: "share", Label: "The limit holds", Section: limit, Cells: one(&s.Share)},
			{Key: "hold", Label: "Holding torque", Hint: "From the motor's data sheet.", Section: motor, Cells: input(&s.Hold)},
			{Key: "supply", Label: "Supply voltage of the driver", Hint: "From its label: no need to touch any wiring.", Section: motor, Cells: input(&s.Supply)},
			{Key: "inductance", Label: "Inductance of a phase", Hint: "From the motor's data sheet, as it is wired. A number alone is in mH.", Section: motor, Cells: input(&s.Inductance)},
			{Key: "current", Label: "Peak current of a phase", Hint: "As the driver is set. Where an effective (RMS) value is stated, the peak is 1.41 times that.", Section: motor, Cells: input(&s.Current)},
		},
	)
}
