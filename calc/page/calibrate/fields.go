package calibrate

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
)

func (s *entries) Fields() []sheet.Field {
	feed, travel, rotary := sheet.If("axis", "feed"), sheet.If("axis", "travel"), sheet.If("axis", "rotary")
	rest, moves := sheet.And(feed, "read", "rest"), sheet.If("axis", "feed", "travel")
	return sheet.Need(lists.Concat(
		[]sheet.Field{{Key: "axis", Label: axisLabel, Section: secAxis, Cells: sheet.One(&s.Axis)}},
		s.ScaleEntry.Fields(secAxis, settingHint, "axis", "feed", "travel"),
		[]sheet.Field{
			{Key: "drive", Label: driveLabel, Section: secTest, When: feed, Cells: sheet.One(&s.Drive)},
			{Key: "path", Label: pathLabel, Section: secTest, When: feed, Cells: sheet.One(&s.Path)},
			{Key: "trial", Label: trialLabel, Section: secTest, When: feed, Cells: sheet.One(&s.Trial)},
			{Key: "trip", Label: tripLabel, Section: secTest, When: sheet.If("axis", "travel", "rotary"), Cells: sheet.One(&s.Trip)},
			{Key: "asked", Label: askedLabel, Hint: askedHint,
				Section: secTest, When: sheet.And(sheet.If("axis", "feed", "travel"), "trip", "one"), Cells: sheet.Input(&s.Asked), Suggest: []string{"80", "100"}},
			{Key: "askeddeg", Label: askedDegLabel, Hint: askedDegHint,
				Section: secTest, When: sheet.And(rotary, "trip", "one"), Cells: sheet.Input(&s.AskedDeg)},
			{Key: "speed", Label: testSpeedLabel, Hint: speedHint,
				Section: secTest, When: sheet.And(moves, "trial", "one"), Cells: sheet.Input(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min", "600 mm/min"}},

			{Key: "done", Label: doneLabel, Section: secBefore, When: feed, Cells: &s.Done},

			{Key: "read", Label: readingLabel, Section: secRuns, When: feed, Cells: sheet.One(&s.Read)},
			{Key: "marks", Label: marksLabel, Section: secRuns, When: rest, Cells: sheet.One(&s.Marks)},
			{Key: "mark", Label: markLabel, Hint: markHint,
				Section: secRuns, When: sheet.And(rest, "marks", "set"), Cells: sheet.Input(&s.Mark)},
		},
		s.first.Fields(secRuns, "", nil,
			sheet.Field{Key: "at", Label: speedLabel, Hint: atHint, Section: secRuns,
				When: sheet.And(feed, "trial", "speeds"), Group: s.first.Group, Cells: s.At.Cells()},
			sheet.Field{Key: "want", Label: wantLabel, Section: secRuns,
				When: sheet.And(travel, "trip", "lengths"), Group: s.first.Group, Cells: s.Want.Cells()},
			sheet.Field{Key: "wantdeg", Label: wantLabel, Section: secRuns,
				When: sheet.And(rotary, "trip", "lengths"), Group: s.first.Group, Cells: s.WantDeg.Cells()},
		),
		s.sideFields(travel, "", s.Targets.Cells(), s.Up.Cells(), s.Down.Cells()),
		s.sideFields(rotary, axis.SuffixAngle, s.TargetsDeg.Cells(), s.UpDeg.Cells(), s.DownDeg.Cells()),
		s.tool.Fields(secTool, "", toolLabel, sheet.If("axis", "feed", "travel")),
		s.angleTool.Fields(secTool, "", toolLabel, rotary),
		s.markTool.Fields(secTool, "mark", markToolLabel, rest),
		[]sheet.Field{
			{Key: "tol", Label: tolLabel, Hint: tolHint, Section: secTool, Cells: sheet.Input(&s.Tol)},
		},
		s.EarlierEntry.Fields(secEarlier),
		s.second.Fields(secAgain, trial.Again, sheet.And(sheet.If("trial", "one"), "trip", "one")),
		s.MotorEntry.Fields(secParts),
		s.GearEntry.Fields(secParts, "", nil),
		[]sheet.Field{
			{Key: "counted", Label: countedLabel, Section: secParts, When: feed, Cells: sheet.One(&s.Counted)},
		},
		s.TunedFields(moves, feed, travel), s.SpeedFields(moves),
		[]sheet.Field{
			// A line names its axis: that of an extruder must not be there for another.
			{Key: "line", Label: lineLabel, Hint: lineHint,
				Section: secLine, When: sheet.And(feed, "as", axis.AsSteps), Cells: sheet.One(&s.Line), Suggest: []string{extruderLine}},
			{Key: "linetravel", Label: lineLabel, Hint: lineHint,
				Section: secLine, When: sheet.And(travel, "as", axis.AsSteps), Cells: sheet.One(&s.TravelLine), Suggest: []string{linearLine, linearLineY, linearLineZ}},
			{Key: "linerotary", Label: lineLabel, Hint: lineHint,
				Section: secLine, When: sheet.And(rotary, "as", axis.AsSteps), Cells: sheet.One(&s.RotaryLine), Suggest: []string{rotaryLine}},
			{Key: "entry", Label: entryLabel, Hint: entryHint,
				Section: secLine, When: sheet.If("as", axis.AsTurn, axis.AsOutput), Cells: sheet.One(&s.Entry)},
		},
	), needed...)
}

// needed are the keys of what there is no answer without.
var needed = []string{"steps", "turn", "output", "stepsdeg", "turndeg", "outputdeg", "asked", "askeddeg", "mark", "rest", "target", "targetdeg",
	"tool", "step", "tooldeg", "stepdeg"}

// sideFields are the columns of positions that are approached from both sides.
func (s *entries) sideFields(on []sheet.When, suffix string, targets, up, down *sheet.Entries) []sheet.Field {
	on = sheet.And(on, "trip", "sides")
	return []sheet.Field{
		{Key: "target" + suffix, Label: targetLabel, Hint: targetHint, Section: secRuns, When: on, Group: s.target, Cells: targets},
		{Key: "up" + suffix, Label: upLabel, Section: secRuns, When: on, Group: s.target, Cells: up},
		{Key: "down" + suffix, Label: downLabel, Section: secRuns, When: on, Group: s.target, Cells: down},
	}
}
