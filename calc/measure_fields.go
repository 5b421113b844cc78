package calc

import "striderule/calc/lists"

// The sections of the form.
var (
	secAxis   = &Section{Title: "The axis and its setting in this test"}
	secTest   = &Section{Title: "The test"}
	secBefore = &Section{Title: "Before a reading is worth anything", Folded: true}
	secRuns   = &Section{Title: "The readings"}
	secTool   = &Section{Title: "What you read with"}
	secAgain  = &Section{Title: "After the change: the same test again", Folded: true}
	secParts  = &Section{Title: "The drivetrain, for the other conventions", Folded: true}
	secLine   = &Section{Title: "Your own line to send", Folded: true}
)

const lineHint = "With {value} where the number goes."

func (s *measureSheet) Fields() []Field {
	feed, travel := when("axis", "feed"), when("axis", "travel")
	rest := and(feed, "read", "rest")
	return lists.Concat(
		[]Field{{Key: "axis", Label: "Axis", Section: secAxis, Cells: one(&s.Axis)}},
		relabel(s.scaleEntry.fields(secAxis, "As it stood during the first runs, with all its digits. Leave it so when you enter readings after the change.", "axis", "feed", "travel"), " in this test"),
		[]Field{
			{Key: "drive", Label: "The drive sits", Section: secTest, When: feed, Cells: one(&s.Drive)},
			{Key: "path", Label: "Test", Section: secTest, When: feed, Cells: one(&s.Path)},
			{Key: "trial", Label: "Runs at", Section: secTest, When: feed, Cells: one(&s.Trial)},
			{Key: "trip", Label: "Moves", Section: secTest, When: travel, Cells: one(&s.Trip)},
			{Key: "asked", Label: "Commanded length", Hint: "What the controller was asked to move in one run.",
				Section: secTest, When: and(when("axis", "feed", "travel"), "trip", "one"), Cells: input(&s.Asked), Suggest: []string{"80", "100"}},
			{Key: "askeddeg", Label: "Commanded angle", Hint: "What the controller was asked to turn in one run.",
				Section: secTest, When: when("axis", "rotary"), Cells: input(&s.AskedDeg)},
			{Key: "speed", Label: "Feed speed", Hint: "If you know it. A number alone is in mm/min, as behind the F of a move; or write 1.5 mm/s.",
				Section: secTest, When: and(feed, "trial", "one"), Cells: input(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min"}},

			{Key: "done", Label: "Checks done", Section: secBefore, When: feed, Cells: &s.Done},

			{Key: "read", Label: "What you read", Section: secRuns, When: feed, Cells: one(&s.Read)},
			{Key: "marks", Label: "The mark's distance", Section: secRuns, When: rest, Cells: one(&s.Marks)},
			{Key: "mark", Label: "Mark at", Hint: "From the drive's inlet to the mark before the run: more than the commanded length, so that the mark stays outside.",
				Section: secRuns, When: and(rest, "marks", "set"), Cells: input(&s.Mark)},
		},
		s.first.fields(secRuns, "", nil,
			Field{Key: "at", Label: "Feed speed", Hint: "A number alone is in mm/min; or write 1.5 mm/s.", Section: secRuns,
				When: and(feed, "trial", "speeds"), Group: s.first.group, Cells: s.At.cells()},
			Field{Key: "want", Label: "Commanded", Section: secRuns,
				When: and(travel, "trip", "lengths"), Group: s.first.group, Cells: s.Want.cells()},
		),
		[]Field{
			{Key: "target", Label: "Target position", Hint: "Approach each target at least twice from either side; write a row for each time.", Section: secRuns,
				When: and(travel, "trip", "sides"), Group: s.target, Cells: s.Targets.cells()},
			{Key: "up", Label: "Reached going up", Section: secRuns, When: and(travel, "trip", "sides"), Group: s.target, Cells: s.Up.cells()},
			{Key: "down", Label: "Reached coming down", Section: secRuns, When: and(travel, "trip", "sides"), Group: s.target, Cells: s.Down.cells()},
		},
		s.tool.fields(secTool, "", "Read with", when("axis", "feed", "travel")),
		s.markTool.fields(secTool, "mark", "The mark was set with", rest),
		[]Field{
			{Key: "tol", Label: "Tolerance on the error, ±", Hint: "Empty: 0.5 % for a feed axis, 0.2 % for others.", Section: secTool, Cells: input(&s.Tol)},
		},
		s.second.fields(secAgain, again, and(when("trial", "one"), "trip", "one")),
		s.motorEntry.fields(secParts),
		s.gearEntry.fields(secParts, "", nil),
		[]Field{
			{Key: "counted", Label: "Feed is counted", Section: secParts, When: feed, Cells: one(&s.Counted)},
		},
		s.tunedFields(feed, travel), s.speedFields(when("axis", "feed", "travel")),
		[]Field{
			// A line names its axis: one for feeding must not be there for another.
			{Key: "line", Label: "Your controller's line", Hint: lineHint,
				Section: secLine, When: and(feed, "as", asSteps), Cells: one(&s.Line), Suggest: []string{"M92 E{value}"}},
			{Key: "linetravel", Label: "Your controller's line", Hint: lineHint,
				Section: secLine, When: and(travel, "as", asSteps), Cells: one(&s.TravelLine), Suggest: []string{"M92 X{value}", "M92 Y{value}", "M92 Z{value}"}},
			{Key: "linerotary", Label: "Your controller's line", Hint: lineHint,
				Section: secLine, When: and(when("axis", "rotary"), "as", asSteps), Cells: one(&s.RotaryLine), Suggest: []string{"M92 A{value}"}},
			{Key: "entry", Label: "Entry in the configuration", Hint: "Your own line, with {value} where the number goes.",
				Section: secLine, When: when("as", asTurn, asOutput), Cells: one(&s.Entry)},
		},
	)
}
