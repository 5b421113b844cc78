package calc

import "striderule/calc/lists"

var swapPage = Page{
	Slug:     "swap",
	Menu:     "Swap",
	Title:    "Swap a part",
	Question: "I fitted another motor, driver, gear, pulley, belt, screw or roller. Which numbers move?",
	About:    "Old and new part side by side: which of steps per mm and travel per turn moves, which stays, the new value, and every entry that must change.",
	New:      func() Sheet { return newSwap() },
	Example:  "v=1&changed=gears&moves=feed&steps=415&gears=pairs&driving=16&driven=55&gearsnew=pairs&drivingnew=12&drivennew=54&anglekept=1.8&microkept=16",
	Outputs: lists.Concat(
		settingOutputs("", ", new"),
		settingOutputs("was-", ", before"),
		[]Output{
			{"x-steps", "Factor of steps per mm", "1"},
			{"x-turn", "Factor of travel per motor turn", "1"},
			{"x-output", "Factor of travel per output turn", "1"},
		},
		pulseOutputs,
	),
	Tasks: []Task{
		{"I fitted another motor", "A 0.9° motor for a 1.8° one: which numbers move, which stay.", "v=1&changed=angle"},
		{"I changed the driver or its microsteps", "What doubles, what stays, and the entry beside it.", "v=1&changed=micro"},
		{"I changed gears", "Old and new teeth in, the new setting out.", "v=1&changed=gears"},
		{"I changed a pulley, belt, screw or roller", "Old and new part side by side.", "v=1&changed=out"},
	},
}

// A swapSheet is what was and what is now, of the parts that changed, and what
// stayed as far as it is told.
type swapSheet struct {
	Changed Checks
	Moves   Choice
	scaleEntry
	was, now, kept trainEntry
	touchedEntry
}

// A trainEntry is one state of the drivetrain.
type trainEntry struct {
	motorEntry
	gears  gearEntry
	output outputEntry
}

func newTrainEntry() trainEntry {
	return trainEntry{newMotorEntry(), newGearEntry(gearsUnknown, gearsNone, gearsPairs, gearsRatio), newOutputEntry()}
}

func newSwap() *swapSheet {
	return &swapSheet{
		Changed: newChecks([]Option{
			{"angle", "Motor", "another step angle"},
			{"micro", "Driver", "other microsteps"},
			{"gears", "Gears", "other teeth, or a whole feeder's gearing"},
			{"out", "Pulley, belt, screw or roller", "what moves the work"},
		}),
		Moves:      choose(Option{"linear", "In mm", "carriage, nut"}, Option{"feed", "Filament", "in mm"}, Option{"rotary", "In degrees", "table, spindle"}),
		scaleEntry: newScaleEntry(),
		was:        newTrainEntry(), now: newTrainEntry(), kept: newTrainEntry(),
		touchedEntry: newTouchedEntry(),
	}
}

func (s *swapSheet) Fields() []Field {
	what := &Section{Title: "What changed"}
	setting := &Section{Title: "The setting before the swap"}
	parts := &Section{Title: "The parts"}
	rest := &Section{Title: "What stayed, for the other conventions", Folded: true}
	ticked := func(part string) []When { return when("changed", part) }
	stayed := func(part string) []When { return []When{{Key: "changed", Words: []string{part}, Not: true}} }
	angle := func(suffix, label string, on []When, section *Section, t *trainEntry) Field {
		return Field{Key: "angle" + suffix, Label: "Step angle" + label, Hint: angleHint, Section: section, When: on, Cells: input(&t.Angle), Suggest: usualAngles}
	}
	micro := func(suffix, label string, on []When, section *Section, t *trainEntry) Field {
		return Field{Key: "micro" + suffix, Label: "Microsteps" + label, Hint: microHint, Section: section, When: on, Cells: input(&t.Micro), Suggest: usualMicro}
	}
	const before, after, same = " before", " after the swap", ", unchanged"
	return lists.Concat(
		[]Field{
			{Key: "changed", Label: "What is different now", Section: what, Cells: &s.Changed},
			{Key: "moves", Label: "It moves", Section: setting, Cells: one(&s.Moves)},
		},
		relabel(s.scaleEntry.fields(setting, "With all its digits.", "moves", "linear", "feed"), before),
		[]Field{
			angle("", before, ticked("angle"), parts, &s.was), angle(suffixNew, after, ticked("angle"), parts, &s.now),
			micro("", before, ticked("micro"), parts, &s.was), micro(suffixNew, after, ticked("micro"), parts, &s.now),
		},
		relabel(s.was.gears.fields(parts, "", ticked("gears")), before),
		relabel(s.now.gears.fields(parts, suffixNew, ticked("gears")), after),
		relabel(s.was.output.fields(parts, "", ticked("out")), before),
		relabel(s.now.output.fields(parts, suffixNew, ticked("out")), after),
		[]Field{
			angle(suffixKept, same, stayed("angle"), rest, &s.kept),
			micro(suffixKept, same, stayed("micro"), rest, &s.kept),
		},
		relabel(s.kept.gears.fields(rest, suffixKept, stayed("gears")), same),
		s.speedFields(when("moves", "linear", "feed")),
	)
}
