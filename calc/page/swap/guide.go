package swap

import (
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/word"
)

// guide is the drivetrain, with a letter for each part that was swapped; its fields for the old
// and the new one share it.
func (s *entries) guide() *report.Drawing {
	var t axis.Train
	was, now := &s.was, &s.now
	given := [...]bool{axis.AtMotor: was.Angle.Given && now.Angle.Given, axis.AtDriver: was.Micro.Given && now.Micro.Given,
		axis.AtGears: was.gears.Known() && now.gears.Known(), axis.AtOutput: false}
	letters, says := "ABCD", ""
	for _, part := range [...]struct {
		station       int
		word, old, is string
	}{
		{axis.AtMotor, "angle", was.Angle.Text(), now.Angle.Text()}, {axis.AtDriver, "micro", was.Micro.Text(), now.Micro.Text()},
		{axis.AtGears, "gears", was.ratioText(), now.ratioText()}, {axis.AtOutput, "out", "", ""},
	} {
		if !s.Changed.Has(part.word) {
			continue
		}
		t.Letters[part.station], letters = letters[:1], letters[1:]
		if given[part.station] {
			t.Texts[part.station] = guideChange.Fill("old", part.old, "new", part.is)
		}
		says = word.Together(says, guidePart.Fill("letter", t.Letters[part.station], "part", partNames.Of(part.word)))
	}
	return t.Guide(guideAlt.Fill("parts", says), "", axis.SuffixNew)
}
