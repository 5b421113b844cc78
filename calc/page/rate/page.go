package rate

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Page tells what step rate speeds need. It takes from others: for each axis name, moves (linear, feed,
// rotary), the setting as convert has it (as, steps, stepsdeg, turn, turndeg,
// output, outputdeg, angle, micro, ratio), speeds (work, workdeg, fast,
// fastdeg, back: mm/s or °/s), accel, and with compare=swap what is there after
// the swap (stepsnew, stepsdegnew, anglenew, micronew); then limit and share.
var Page = sheet.Page{
	Slug:     "rate",
	Menu:     menu,
	Title:    title,
	Question: question,
	New:      func() sheet.Sheet { return newEntries() },
	Example: "v=1&name=Heron%20extruder,Plover%20X,Plover%20Z&moves=feed&steps=564.3,88.8889,800&angle=1.8,1.8,1.8&micro=16,16,16" +
		"&work=3,50,5&fast=,200,12&back=45&accel=,1500,100&limit=40kHz",
	Outputs: outputs,
	Tasks:   tasks,
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
	Resistance unit.Input[unit.Resistance]
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
		Compare:   sheet.Choose(asItIs, beforeSwap),
		axis:      &sheet.Group{Words: axis.AxisRows, Least: 1, Most: sheet.MostRows},
		Name:      axis.NameList(),
		Moves:     sheet.ListOf(sheet.Choose(linear, extruder, rotary)),
		ScaleRows: axis.NewScaleRows(), MotorRows: axis.NewMotorRows(), Ratio: axis.RatioRows(),
		Work: speeds(), WorkDeg: turning(), Fast: speeds(), FastDeg: turning(), Back: speeds(),
		Accel:      sheet.ColumnOf(unit.Accelerations.Input("mm/s²", 0.1, unit.Million)),
		StepsNew:   sheet.ColumnOf(axis.StepsInput()),
		DegNew:     sheet.ColumnOf(axis.StepsDegInput()),
		newMotor:   axis.NewMotorRows(),
		Limit:      unit.PulseRates.Input("pulses/s", 100, 100*unit.Million),
		Share:      sheet.Choose(eachAxis, inTotal),
		Hold:       unit.Torques.Input("N·m", 0.0001, 100),
		Supply:     unit.Voltages.Input("V", 1, 1000),
		Inductance: unit.Inductances.Input("mH", 0.001, 1000),
		Resistance: unit.Resistances.Input("Ω", 0.001, 1000),
		Current:    unit.Currents.Input("A", 0.001, 100),
	}
}

func (s *entries) Fields() []sheet.Field {
	what, axes := &sheet.Section{Title: whatSection}, &sheet.Section{Title: axesSection}
	limit := &sheet.Section{Title: limitSection}
	motor := &sheet.Section{Title: motorSection, Folded: true}
	mm, deg := sheet.If("moves", "linear", "feed"), sheet.If("moves", "rotary")
	swap := sheet.If("compare", "swap")
	col := func(key, label, hint string, on []sheet.When, cells sheet.Cells, suggest ...string) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: axes, When: on, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	after := s.newMotor.Fields(axes, s.axis, swap)
	for i, label := range [...]string{newAngleLabel, newMicroLabel} {
		after[i].Key += axis.SuffixNew
		after[i].Label = label
		after[i].Hint = ""
		after[i].Carry = false
	}
	return sheet.Need(lists.Concat(
		[]sheet.Field{
			{Key: "compare", Label: compareLabel, Section: what, Cells: sheet.One(&s.Compare)},
			col("name", nameLabel, "", nil, &s.Name), col("moves", movesLabel, "", nil, &s.Moves),
		},
		s.ScaleRows.Fields(axes, s.axis, asLabel, nil, mm, deg),
		s.MotorRows.Fields(axes, s.axis, nil),
		[]sheet.Field{
			col("ratio", ratioLabel, ratioHint, sheet.If("as", axis.AsOutput), s.Ratio.Cells(), "1"),
			col("work", working.label, workHint, mm, s.Work.Cells()),
			col("workdeg", working.label, "", deg, s.WorkDeg.Cells()),
			col("fast", travel.label, fastHint, sheet.If("moves", "linear"), s.Fast.Cells()),
			col("fastdeg", travel.label, "", deg, s.FastDeg.Cells()),
			col("back", retraction.label, backHint, sheet.If("moves", "feed"), s.Back.Cells()),
			col("accel", accelFieldLabel, accelHint, mm, s.Accel.Cells()),
			col("stepsnew", newStepsLabel, newStepsHint, lists.Concat(swap, mm), s.StepsNew.Cells()),
			col("stepsdegnew", newDegLabel, "", lists.Concat(swap, deg), s.DegNew.Cells()),
		},
		after,
		[]sheet.Field{
			{Key: "limit", Label: limitLabel, Hint: limitHint, Section: limit, Cells: sheet.Input(&s.Limit)},
			{Key: "share", Label: shareLabel, Section: limit, Cells: sheet.One(&s.Share)},
			{Key: "hold", Label: holdLabel, Hint: dataSheetHint, Section: motor, Cells: sheet.Input(&s.Hold)},
			{Key: "supply", Label: supplyLabel, Hint: supplyHint, Section: motor, Cells: sheet.Input(&s.Supply)},
			{Key: "inductance", Label: inductanceLabel, Hint: inductanceHint, Section: motor, Cells: sheet.Input(&s.Inductance)},
			{Key: "resistance", Label: resistanceLabel, Hint: resistanceHint, Section: motor, Cells: sheet.Input(&s.Resistance)},
			{Key: "current", Label: currentLabel, Hint: currentHint, Section: motor, Cells: sheet.Input(&s.Current)},
		},
	), "steps", "limit")
}
