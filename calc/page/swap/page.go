package swap

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
)

// Page tells which settings a change of parts moves.
var Page = sheet.Page{
	Slug:     "swap",
	Menu:     pageMenu,
	Title:    pageTitle,
	Question: pageQuestion,
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&changed=angle&moves=feed&steps=564.3&angle=1.8&anglenew=0.9&microkept=16&gearskept=pairs&drivingkept=12&drivenkept=54",
	Outputs:  lists.Concat(pageOutputs, axis.PulseOutputs),
	Tasks:    pageTasks,
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
		Changed:    sheet.NewChecks(changedOptions),
		Moves:      sheet.Choose(movesOptions...),
		ScaleEntry: axis.NewScaleEntry(),
		was:        newTrainEntry(), now: newTrainEntry(), kept: newTrainEntry(),
		TouchedEntry: axis.NewTouchedEntry(),
	}
}

func (s *entries) Fields() []sheet.Field {
	ticked := func(part string) []sheet.When { return sheet.If("changed", part) }
	stayed := func(part string) []sheet.When {
		return []sheet.When{{Key: "changed", Words: []string{part}, Not: true}}
	}
	angle := func(suffix string, on []sheet.When, section *sheet.Section, t *trainEntry) sheet.Field {
		return sheet.Field{Key: "angle" + suffix, Hint: axis.AngleHint, Section: section, When: on, Cells: sheet.Input(&t.Angle), Suggest: axis.UsualAngles}
	}
	micro := func(suffix string, on []sheet.When, section *sheet.Section, t *trainEntry) sheet.Field {
		return sheet.Field{Key: "micro" + suffix, Hint: axis.MicroHint, Section: section, When: on, Cells: sheet.Input(&t.Micro), Suggest: axis.UsualMicro}
	}
	return sheet.Need(labelled(lists.Concat(
		[]sheet.Field{
			{Key: "changed", Label: changedLabel, Section: &secChanged, Cells: &s.Changed},
			{Key: "moves", Label: movesLabel, Section: &secSetting, Cells: sheet.One(&s.Moves)},
		},
		s.ScaleEntry.Fields(&secSetting, settingHint, "moves", "linear", "feed"),
		[]sheet.Field{
			angle("", ticked("angle"), &secParts, &s.was), angle(axis.SuffixNew, ticked("angle"), &secParts, &s.now),
			micro("", ticked("micro"), &secParts, &s.was), micro(axis.SuffixNew, ticked("micro"), &secParts, &s.now),
		},
		s.was.gears.Fields(&secParts, "", ticked("gears")),
		s.now.gears.Fields(&secParts, axis.SuffixNew, ticked("gears")),
		s.was.output.Fields(&secParts, "", ticked("out")),
		s.now.output.Fields(&secParts, axis.SuffixNew, ticked("out")),
		[]sheet.Field{
			angle(axis.SuffixKept, stayed("angle"), &secKept, &s.kept),
			micro(axis.SuffixKept, stayed("micro"), &secKept, &s.kept),
		},
		s.kept.gears.Fields(&secKept, axis.SuffixKept, stayed("gears")),
		s.kept.output.Fields(&secKept, axis.SuffixKept, stayed("out")),
		s.SpeedFields(sheet.If("moves", "linear", "feed")),
	)), s.needed()...)
}

// needed are the keys of what there is no answer without: the setting, and each part that was
// swapped, before and after.
func (s *entries) needed() []string {
	keys := []string{"changed", "moves", "steps", "turn", "output", "stepsdeg", "turndeg", "outputdeg", "angle", "micro"}
	keys = lists.Concat(keys, s.was.gears.Keys(""), s.was.output.Keys(""))
	for _, key := range keys[8:] {
		keys = append(keys, key+axis.SuffixNew)
	}
	return keys
}

// labelled gives the fields this page's own labels.
func labelled(fields []sheet.Field) []sheet.Field {
	for i := range fields {
		if label := labels.Of(fields[i].Key); label != "" {
			fields[i].Label = label
		}
	}
	return fields
}
