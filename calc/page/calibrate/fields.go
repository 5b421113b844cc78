package calibrate

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
)

// The sections of the form.
var (
	secAxis   = &sheet.Section{Title: "The axis and its setting in this test"}
	secTest   = &sheet.Section{Title: "The test"}
	secBefore = &sheet.Section{Title: "Before a reading is worth anything", Folded: true}
	secRuns   = &sheet.Section{Title: "The readings"}
	secTool   = &sheet.Section{Title: "What you read with"}
	secAgain  = &sheet.Section{Title: "After the change: the same test again", Folded: true}
	secParts  = &sheet.Section{Title: "The drivetrain, for the other conventions", Folded: true}
	secLine   = &sheet.Section{Title: "Your own line to send", Folded: true}
)

const lineHint = "With {value} where the number goes."

func (s *entries) Fields() []sheet.Field {
	feed, travel := sheet.If("axis", "feed"), sheet.If("axis", "travel")
	rest := sheet.And(feed, "read", "rest")
	return lists.Concat(
		[]sheet.Field{{Key: "axis", Label: "Axis", Section: secAxis, Cells: sheet.One(&s.Axis)}},
		axis.Relabel(s.ScaleEntry.Fields(secAxis, "As it stood during the first runs, with all its digits. Leave it so when you enter readings after the change.", "axis", "feed", "travel"), " in this test"),
		[]sheet.Field{
			{Key: "drive", Label: "The drive sits", Section: secTest, When: feed, Cells: sheet.One(&s.Drive)},
			{Key: "path", Label: "Test", Section: secTest, When: feed, Cells: sheet.One(&s.Path)},
			{Key: "trial", Label: "Runs at", Section: secTest, When: feed, Cells: sheet.One(&s.Trial)},
			{Key: "trip", Label: "Moves", Section: secTest, When: travel, Cells: sheet.One(&s.Trip)},
			{Key: "asked", Label: "Commanded length", Hint: "What the controller was asked to move in one run.",
				Section: secTest, When: sheet.And(sheet.If("axis", "feed", "travel"), "trip", "one"), Cells: sheet.Input(&s.Asked), Suggest: []string{"80", "100"}},
			{Key: "askeddeg", Label: "Commanded angle", Hint: "What the controller was asked to turn in one run.",
				Section: secTest, When: sheet.If("axis", "rotary"), Cells: sheet.Input(&s.AskedDeg)},
			{Key: "speed", Label: "Feed speed", Hint: "If you know it. A number alone is in mm/min, as behind the F of a move; or write 1.5 mm/s.",
				Section: secTest, When: sheet.And(feed, "trial", "one"), Cells: sheet.Input(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min"}},

			{Key: "done", Label: "Checks done", Section: secBefore, When: feed, Cells: &s.Done},

			{Key: "read", Label: "What you read", Section: secRuns, When: feed, Cells: sheet.One(&s.Read)},
			{Key: "marks", Label: "The mark's distance", Section: secRuns, When: rest, Cells: sheet.One(&s.Marks)},
			{Key: "mark", Label: "Mark at", Hint: "From the drive's inlet to the mark before the run: more than the commanded length, so that the mark stays outside.",
				Section: secRuns, When: sheet.And(rest, "marks", "set"), Cells: sheet.Input(&s.Mark)},
		},
		s.first.Fields(secRuns, "", nil,
			sheet.Field{Key: "at", Label: "Feed speed", Hint: "A number alone is in mm/min; or write 1.5 mm/s.", Section: secRuns,
				When: sheet.And(feed, "trial", "speeds"), Group: s.first.Group, Cells: s.At.Cells()},
			sheet.Field{Key: "want", Label: "Commanded", Section: secRuns,
				When: sheet.And(travel, "trip", "lengths"), Group: s.first.Group, Cells: s.Want.Cells()},
		),
		[]sheet.Field{
			{Key: "target", Label: "Target position", Hint: "Approach each target at least twice from either side; write a row for each time.", Section: secRuns,
				When: sheet.And(travel, "trip", "sides"), Group: s.target, Cells: s.Targets.Cells()},
			{Key: "up", Label: "Reached going up", Section: secRuns, When: sheet.And(travel, "trip", "sides"), Group: s.target, Cells: s.Up.Cells()},
			{Key: "down", Label: "Reached coming down", Section: secRuns, When: sheet.And(travel, "trip", "sides"), Group: s.target, Cells: s.Down.Cells()},
		},
		s.tool.Fields(secTool, "", "Read with", sheet.If("axis", "feed", "travel")),
		s.markTool.Fields(secTool, "mark", "The mark was set with", rest),
		[]sheet.Field{
			{Key: "tol", Label: "Tolerance on the error, ±", Hint: "Empty: 0.5 % for a feed axis, 0.2 % for others.", Section: secTool, Cells: sheet.Input(&s.Tol)},
		},
		s.second.Fields(secAgain, trial.Again, sheet.And(sheet.If("trial", "one"), "trip", "one")),
		s.MotorEntry.Fields(secParts),
		s.GearEntry.Fields(secParts, "", nil),
		[]sheet.Field{
			{Key: "counted", Label: "Feed is counted", Section: secParts, When: feed, Cells: sheet.One(&s.Counted)},
		},
		s.TunedFields(feed, travel), s.SpeedFields(sheet.If("axis", "feed", "travel")),
		[]sheet.Field{
			// A line names its axis: one for feeding must not be there for another.
			{Key: "line", Label: "Your controller's line", Hint: lineHint,
				Section: secLine, When: sheet.And(feed, "as", axis.AsSteps), Cells: sheet.One(&s.Line), Suggest: []string{"M92 E{value}"}},
			{Key: "linetravel", Label: "Your controller's line", Hint: lineHint,
				Section: secLine, When: sheet.And(travel, "as", axis.AsSteps), Cells: sheet.One(&s.TravelLine), Suggest: []string{"M92 X{value}", "M92 Y{value}", "M92 Z{value}"}},
			{Key: "linerotary", Label: "Your controller's line", Hint: lineHint,
				Section: secLine, When: sheet.And(sheet.If("axis", "rotary"), "as", axis.AsSteps), Cells: sheet.One(&s.RotaryLine), Suggest: []string{"M92 A{value}"}},
			{Key: "entry", Label: "Entry in the configuration", Hint: "Your own line, with {value} where the number goes.",
				Section: secLine, When: sheet.If("as", axis.AsTurn, axis.AsOutput), Cells: sheet.One(&s.Entry)},
		},
	)
}
