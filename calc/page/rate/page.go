package rate

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Page tells how many pulses a second speeds take. It takes from others: for each axis name, moves (linear, feed,
// rotary), the setting as convert has it (as, steps, stepsdeg, turn, turndeg,
// output, outputdeg, angle, micro, ratio), speeds (work, workdeg, fast,
// fastdeg, back: mm/s or °/s), accel, and with compare=swap what is there after
// the swap (stepsnew, stepsdegnew, anglenew, micronew); then limit and share.
var Page = sheet.Page{
	Slug:     "rate",
	Menu:     "Rate",
	Title:    "Speed and step rate",
	Question: "How many pulses per second does that take, and where is the limit?",
	About:    "Pulses per second at your speeds, the highest speed that a controller's limit allows, the smallest move, and what a swap changes about them.",
	New:      func() sheet.Sheet { return newEntries() },
	Example: "v=1&name=Heron%20feed,Plover%20X,Plover%20Z&moves=feed&steps=564.3,88.8889,800&angle=1.8,1.8,1.8&micro=16,16,16" +
		"&work=3,50,5&fast=,200,12&back=45&accel=,1500,100&limit=40kHz",
	Outputs: []sheet.Output{
		{ID: "most", Label: "Highest pulse rate that the speeds take", Unit: "pulses/s"},
		{ID: "work", Label: "Pulse rate at the working speed", Unit: "pulses/s"},
		{ID: "fast", Label: "Pulse rate at the travel speed", Unit: "pulses/s"},
		{ID: "back", Label: "Pulse rate at the retraction speed", Unit: "pulses/s"},
		{ID: "accel", Label: "Pulse rate gained in a second", Unit: "pulses/s²"},
		{ID: "microstep", Label: "Travel per microstep", Unit: "mm or °"},
		{ID: "fullstep", Label: "Travel per full step", Unit: "mm or °"},
		{ID: "allwork", Label: "Pulse rate of all axes together, at their working speeds", Unit: "pulses/s"},
		{ID: "allfast", Label: "Pulse rate of all axes together, at their travel speeds", Unit: "pulses/s"},
		{ID: "top", Label: "Highest speed that the limit allows an axis alone", Unit: "mm/s or °/s"},
		{ID: "slower", Label: "Part of the speeds that the limit allows, all axes together", Unit: "%"},
		{ID: "new-work", Label: "Pulse rate at the working speed, after the swap", Unit: "pulses/s"},
		{ID: "new-fast", Label: "Pulse rate at the travel speed, after the swap", Unit: "pulses/s"},
		{ID: "new-back", Label: "Pulse rate at the retraction speed, after the swap", Unit: "pulses/s"},
		{ID: "new-top", Label: "Highest speed that the limit allows, after the swap", Unit: "mm/s or °/s"},
		{ID: "new-microstep", Label: "Travel per microstep, after the swap", Unit: "mm or °"},
		{ID: "torque", Label: "Torque behind one microstep, of the holding torque", Unit: "%"},
		{ID: "holds", Label: "Torque behind one microstep", Unit: "N·m"},
		{ID: "new-torque", Label: "Torque behind one microstep, of the holding torque, after the swap", Unit: "%"},
		{ID: "new-holds", Label: "Torque behind one microstep, after the swap", Unit: "N·m"},
		{ID: "swing", Label: "Time in which the current swings over", Unit: "ms"},
		{ID: "fullrate", Label: "Full steps per second at which it just does", Unit: "steps/s"},
		{ID: "corner", Label: "Ideal corner speed of the motor", Unit: "rev/s"},
		{ID: "rpm", Label: "Ideal corner speed of the motor", Unit: "rev/min"},
		{ID: "follow", Label: "Speed of the axis at it", Unit: "mm/s or °/s"},
	},
	Tasks: []sheet.Task{
		{Situation: "Is my controller fast enough?", Help: "Pulses per second at your speeds, and the highest speed at its limit.", Fragment: ""},
	},
}

// entries are a table of axes with their speeds, and what limits them.
type entries struct {
	Compare sheet.Choice
	axis    *sheet.Group
	Name    sheet.TextList
	Moves   sheet.ChoiceList
	axis.ScaleRows
	axis.MotorRows
	Ratio    sheet.RatioList
	Work     sheet.SpeedList
	WorkDeg  sheet.TurningList
	Fast     sheet.SpeedList
	FastDeg  sheet.TurningList
	Back     sheet.SpeedList
	Accel    sheet.RateUpList
	StepsNew sheet.PerLength // after the swap
	DegNew   sheet.PerAngle
	newMotor axis.MotorRows

	Limit      unit.Input[unit.PulseRate]
	Share      sheet.Choice
	Hold       unit.Input[unit.Torque]
	Supply     unit.Input[unit.Voltage]
	Inductance unit.Input[unit.Inductance]
	Current    unit.Input[unit.Current]
}

func newEntries() *entries {
	speeds := func() sheet.SpeedList {
		return sheet.ColumnOf(unit.Speeds.Input("mm/s", 0.0001, 10_000))
	}
	turning := func() sheet.TurningList {
		return sheet.ColumnOf(unit.AngularSpeeds.Input("°/s", 0.0001, 360_000))
	}
	return &entries{
		Compare:   sheet.Choose(sheet.Option{Word: "none", Label: "As it is", Hint: ""}, sheet.Option{Word: "swap", Label: "Before and after a swap", Hint: "another setting or other microsteps"}),
		axis:      &sheet.Group{Noun: "axis", Least: 1, Most: sheet.MostRows},
		Name:      axis.NameList(),
		Moves:     sheet.ListOf(sheet.Choose(sheet.Option{Word: "linear", Label: "In mm", Hint: "carriage, nut"}, sheet.Option{Word: "feed", Label: "Filament", Hint: "in mm, with a retraction speed"}, sheet.Option{Word: "rotary", Label: "In degrees", Hint: "table, spindle"})),
		ScaleRows: axis.NewScaleRows(), MotorRows: axis.NewMotorRows(), Ratio: axis.RatioRows(),
		Work: speeds(), WorkDeg: turning(), Fast: speeds(), FastDeg: turning(), Back: speeds(),
		Accel:    sheet.ColumnOf(unit.Accelerations.Input("mm/s²", 0.1, unit.Million)),
		StepsNew: sheet.ColumnOf(axis.StepsInput()),
		DegNew:   sheet.ColumnOf(axis.StepsDegInput()),
		newMotor: axis.NewMotorRows(),
		Limit:    unit.PulseRates.Input("pulses/s", 100, 100*unit.Million),
		Share: sheet.Choose(sheet.Option{Word: "axis", Label: "For each axis", Hint: "every axis can have that many"},
			sheet.Option{Word: "all", Label: "For all together", Hint: "the axes that move at once share it"}),
		Hold:       unit.Torques.Input("N·m", 0.0001, 100),
		Supply:     unit.Voltages.Input("V", 1, 1000),
		Inductance: unit.Inductances.Input("mH", 0.001, 1000),
		Current:    unit.Currents.Input("A", 0.001, 100),
	}
}

func (s *entries) Fields() []sheet.Field {
	what, axes := &sheet.Section{Title: "What to look at"}, &sheet.Section{Title: "Axes"}
	limit := &sheet.Section{Title: "The controller's limit"}
	motor := &sheet.Section{Title: "The motor's data sheet", Folded: true}
	mm, deg := sheet.If("moves", "linear", "feed"), sheet.If("moves", "rotary")
	swap := sheet.If("compare", "swap")
	col := func(key, label, hint string, on []sheet.When, cells sheet.Cells, suggest ...string) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: axes, When: on, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	const inSeconds = "A number alone is in mm/s; or write 3000 mm/min."
	const turns = "In degrees per second; or write 15 rev/min."
	after := s.newMotor.Fields(axes, s.axis, swap)
	for i := range after {
		after[i].Key += axis.SuffixNew
		after[i].Label += " after the swap"
		after[i].Hint = ""
		after[i].Carry = false
	}
	return lists.Concat(
		[]sheet.Field{
			{Key: "compare", Label: "Look at it", Section: what, Cells: sheet.One(&s.Compare)},
			col("name", "Name", "", nil, &s.Name), col("moves", "It moves", "", nil, &s.Moves),
		},
		s.ScaleRows.Fields(axes, s.axis, "Given is", nil, mm, deg),
		s.MotorRows.Fields(axes, s.axis, nil),
		[]sheet.Field{
			col("ratio", "Gear ratio", "Motor turns for one output turn: 54:12, or 4.5.", sheet.If("as", axis.AsOutput), s.Ratio.Cells(), "1"),
			col("work", "Working speed", inSeconds, mm, s.Work.Cells()),
			col("workdeg", "Working speed", turns, deg, s.WorkDeg.Cells()),
			col("fast", "Travel speed", "Where it moves without working. "+inSeconds, sheet.If("moves", "linear"), s.Fast.Cells()),
			col("fastdeg", "Travel speed", turns, deg, s.FastDeg.Cells()),
			col("back", "Retraction speed", "The fastest that a feeder moves. "+inSeconds, sheet.If("moves", "feed"), s.Back.Cells()),
			col("accel", "Acceleration", "In mm/s², if you know it; not for axes in degrees.", mm, s.Accel.Cells()),
			col("stepsnew", "Steps per mm after the swap", "Empty: only motor or microsteps change.", lists.Concat(swap, mm), s.StepsNew.Cells()),
			col("stepsdegnew", "Steps per degree after the swap", "", lists.Concat(swap, deg), s.DegNew.Cells()),
		},
		after,
		[]sheet.Field{
			{Key: "limit", Label: "Most pulses per second", Hint: "That the controller can send: 40000, or 40 kHz.", Section: limit, Cells: sheet.Input(&s.Limit)},
			{Key: "share", Label: "The limit holds", Section: limit, Cells: sheet.One(&s.Share)},
			{Key: "hold", Label: "Holding torque", Hint: "From the motor's data sheet.", Section: motor, Cells: sheet.Input(&s.Hold)},
			{Key: "supply", Label: "Supply voltage of the driver", Hint: "From its label: no need to touch any wiring.", Section: motor, Cells: sheet.Input(&s.Supply)},
			{Key: "inductance", Label: "Inductance of a phase", Hint: "From the motor's data sheet, as it is wired. A number alone is in mH.", Section: motor, Cells: sheet.Input(&s.Inductance)},
			{Key: "current", Label: "Peak current of a phase", Hint: "As the driver is set. Where an effective (RMS) value is stated, the peak is 1.41 times that.", Section: motor, Cells: sheet.Input(&s.Current)},
		},
	)
}
