package swap

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
)

// Page tells which numbers a change of parts moves.
var Page = sheet.Page{
	Slug:     "swap",
	Menu:     "Swap",
	Title:    "Swap a part",
	Question: "I fitted another motor, driver, gear, pulley, belt, screw or roller. Which numbers move?",
	About:    "Old and new part side by side: which of steps per mm and travel per turn moves, which stays, the new value, and every entry that must change.",
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&changed=gears&moves=feed&steps=415&gears=pairs&driving=16&driven=55&gearsnew=pairs&drivingnew=12&drivennew=54&anglekept=1.8&microkept=16",
	Outputs: lists.Concat(
		axis.SettingOutputs("", ", new"),
		axis.SettingOutputs("was-", ", before"),
		[]sheet.Output{
			{ID: "x-steps", Label: "Factor of steps per mm", Unit: "1"},
			{ID: "x-turn", Label: "Factor of travel per motor turn", Unit: "1"},
			{ID: "x-output", Label: "Factor of travel per output turn", Unit: "1"},
		},
		axis.PulseOutputs,
	),
	Tasks: []sheet.Task{
		{Situation: "I fitted another motor", Help: "A 0.9° motor for a 1.8° one: which numbers move, which stay.", Fragment: "v=1&changed=angle"},
		{Situation: "I changed the driver or its microsteps", Help: "What doubles, what stays, and the entry beside it.", Fragment: "v=1&changed=micro"},
		{Situation: "I changed gears", Help: "Old and new teeth in, the new setting out.", Fragment: "v=1&changed=gears"},
		{Situation: "I changed a pulley, belt, screw or roller", Help: "Old and new part side by side.", Fragment: "v=1&changed=out"},
	},
}

// entries are what was and what is now, of the parts that changed, and what
// stayed as far as it is given.
type entries struct {
	Changed sheet.Checks
	Moves   sheet.Choice
	axis.ScaleEntry
	was, now, kept trainEntry
	axis.TouchedEntry
}

// A trainEntry is one state of the drivetrain.
type trainEntry struct {
	axis.MotorEntry
	gears  axis.GearEntry
	output axis.OutputEntry
}

func newTrainEntry() trainEntry {
	return trainEntry{axis.NewMotorEntry(), axis.NewGearEntry(axis.GearsUnknown, axis.GearsNone, axis.GearsPairs, axis.GearsRatio), axis.NewOutputEntry()}
}

func newEntries() *entries {
	return &entries{
		Changed: sheet.NewChecks([]sheet.Option{
			{Word: "angle", Label: "Motor", Hint: "another step angle"},
			{Word: "micro", Label: "Driver", Hint: "other microsteps"},
			{Word: "gears", Label: "Gears", Hint: "other teeth, or a whole feeder's gearing"},
			{Word: "out", Label: "Pulley, belt, screw or roller", Hint: "what moves the work"},
		}),
		Moves:      sheet.Choose(sheet.Option{Word: "linear", Label: "In mm", Hint: "carriage, nut"}, sheet.Option{Word: "feed", Label: "Filament", Hint: "in mm"}, sheet.Option{Word: "rotary", Label: "In degrees", Hint: "table, spindle"}),
		ScaleEntry: axis.NewScaleEntry(),
		was:        newTrainEntry(), now: newTrainEntry(), kept: newTrainEntry(),
		TouchedEntry: axis.NewTouchedEntry(),
	}
}

func (s *entries) Fields() []sheet.Field {
	what := &sheet.Section{Title: "What changed"}
	setting := &sheet.Section{Title: "The setting before the swap"}
	parts := &sheet.Section{Title: "The parts"}
	rest := &sheet.Section{Title: "What stayed, for the other conventions", Folded: true}
	ticked := func(part string) []sheet.When { return sheet.If("changed", part) }
	stayed := func(part string) []sheet.When {
		return []sheet.When{{Key: "changed", Words: []string{part}, Not: true}}
	}
	angle := func(suffix, label string, on []sheet.When, section *sheet.Section, t *trainEntry) sheet.Field {
		return sheet.Field{Key: "angle" + suffix, Label: "Step angle" + label, Hint: axis.AngleHint, Section: section, When: on, Cells: sheet.Input(&t.Angle), Suggest: axis.UsualAngles}
	}
	micro := func(suffix, label string, on []sheet.When, section *sheet.Section, t *trainEntry) sheet.Field {
		return sheet.Field{Key: "micro" + suffix, Label: "Microsteps" + label, Hint: axis.MicroHint, Section: section, When: on, Cells: sheet.Input(&t.Micro), Suggest: axis.UsualMicro}
	}
	const before, after, same = " before", " after the swap", ", unchanged"
	return lists.Concat(
		[]sheet.Field{
			{Key: "changed", Label: "What is different now", Section: what, Cells: &s.Changed},
			{Key: "moves", Label: "It moves", Section: setting, Cells: sheet.One(&s.Moves)},
		},
		axis.Relabel(s.ScaleEntry.Fields(setting, "With all its digits.", "moves", "linear", "feed"), before),
		[]sheet.Field{
			angle("", before, ticked("angle"), parts, &s.was), angle(axis.SuffixNew, after, ticked("angle"), parts, &s.now),
			micro("", before, ticked("micro"), parts, &s.was), micro(axis.SuffixNew, after, ticked("micro"), parts, &s.now),
		},
		axis.Relabel(s.was.gears.Fields(parts, "", ticked("gears")), before),
		axis.Relabel(s.now.gears.Fields(parts, axis.SuffixNew, ticked("gears")), after),
		axis.Relabel(s.was.output.Fields(parts, "", ticked("out")), before),
		axis.Relabel(s.now.output.Fields(parts, axis.SuffixNew, ticked("out")), after),
		[]sheet.Field{
			angle(axis.SuffixKept, same, stayed("angle"), rest, &s.kept),
			micro(axis.SuffixKept, same, stayed("micro"), rest, &s.kept),
		},
		axis.Relabel(s.kept.gears.Fields(rest, axis.SuffixKept, stayed("gears")), same),
		s.SpeedFields(sheet.If("moves", "linear", "feed")),
	)
}
