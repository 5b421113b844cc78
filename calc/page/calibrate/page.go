package calibrate

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Page works a setting out from a measurement.
var Page = sheet.Page{
	Slug:     "measure",
	Menu:     pageMenu,
	Title:    pageTitle,
	Question: pageQuestion,
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&steps=538.0&asked=80&speed=90&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D",
	Outputs:  lists.Concat(outputs, trial.WhyOutputs, axis.TunedOutputs, axis.PulseOutputs),
	Tasks:    tasks,
}

// entries are a test move and what it really moved.
type entries struct {
	Axis sheet.Choice
	axis.ScaleEntry
	Drive sheet.Choice // where the extruder sits
	trial.TrialEntry
	Asked    unit.Input[unit.Length]
	AskedDeg unit.Input[unit.Angle]
	Speed    unit.Input[unit.Speed]
	Done     sheet.Checks

	Read       sheet.Choice
	Marks      sheet.Choice
	Mark       unit.Input[unit.Length]
	At         sheet.Column[unit.Speed]
	Want       sheet.LengthList
	WantDeg    sheet.AngleList
	first      trial.RoundEntry
	target     *sheet.Group
	Targets    sheet.LengthList
	Up         sheet.LengthList
	Down       sheet.LengthList
	TargetsDeg sheet.AngleList
	UpDeg      sheet.AngleList
	DownDeg    sheet.AngleList

	tool      axis.ToolEntry
	angleTool axis.ToolEntry // of a rotary axis
	markTool  axis.ToolEntry
	Tol       unit.Input[unit.Percent]
	trial.EarlierEntry

	second trial.RoundEntry // after the change

	axis.MotorEntry
	axis.GearEntry
	axis.TouchedEntry
	Counted    sheet.Choice
	Line       sheet.Template // for an extruder
	TravelLine sheet.Template
	RotaryLine sheet.Template
	Entry      sheet.Template
}

func newEntries() *entries {
	first := trial.NewRoundEntry(trial.RunRows, 4)
	first.Group.Shared = []string{"at", "want", "wantdeg"}
	return &entries{
		Axis: sheet.Choose(
			trial.Feed, trial.Travel, rotaryOption,
		),
		ScaleEntry: axis.NewScaleEntry(),
		Drive:      sheet.Choose(driveNear, driveTube),
		TrialEntry: trial.NewTrialEntry(trial.MoveTests),
		Asked:      trial.ReadingInput(), AskedDeg: trial.TurnInput(),
		Speed: trial.TestSpeedInput(),
		Done:  sheet.NewChecks(trial.Readiness),
		Read:  sheet.Choose(readRest, readFed),
		Marks: sheet.Choose(marksSet, marksEach),
		Mark:  trial.ReadingInput(),
		At:    sheet.ColumnOf(trial.TestSpeedInput()),
		Want:  sheet.LengthsOf(trial.ReadingInput()), WantDeg: sheet.ColumnOf(trial.TurnInput()), first: first,
		target:  &sheet.Group{Words: trial.TargetRows, Least: 1, Start: 3, Most: sheet.MostRows},
		Targets: sheet.LengthsOf(axis.PositionInput()), Up: sheet.LengthsOf(axis.PositionInput()), Down: sheet.LengthsOf(axis.PositionInput()),
		TargetsDeg: sheet.ColumnOf(axis.PositionDegInput()), UpDeg: sheet.ColumnOf(axis.PositionDegInput()), DownDeg: sheet.ColumnOf(axis.PositionDegInput()),
		tool:         axis.NewToolEntry(toolUnknown),
		angleTool:    axis.NewAngleToolEntry(toolUnknown),
		markTool:     axis.NewToolEntry(toolSame),
		Tol:          unit.Percents.Input("%", 0.001, 50),
		EarlierEntry: trial.NewEarlierEntry(),
		second:       trial.NewRoundEntry(trial.CheckRows, 3),
		MotorEntry:   axis.NewMotorEntry(),
		GearEntry:    axis.NewGearEntry(axis.GearsUnknown, axis.GearsNone, axis.GearsPairs, axis.GearsRatio),
		TouchedEntry: axis.NewTouchedEntry(),
		Counted:      sheet.Choose(countedMM, countedVolume),
		Line:         lineToSend(), TravelLine: lineToSend(), RotaryLine: lineToSend(),
		Entry: sheet.NewTemplate(entryTakes, valuePlace),
	}
}

func lineToSend() sheet.Template {
	return sheet.NewTemplate(lineTakes, valuePlace)
}
