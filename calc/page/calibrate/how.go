package calibrate

import (
	"striderule/calc/lists"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// howTo is the test itself, step by step, with its cautions.
func (a *solution) howTo() *report.Part {
	p := &report.Part{ID: "how", Title: howTitle, Guide: true, Needs: []string{"axis", "drive", "path", "trial", "trip", "read", "speed"}}
	p.Caution("maker", "stay")
	if a.sheet.Axis.Word == "feed" {
		p.Add(a.sheet.feedTest()...)
	} else {
		p.Add(a.sheet.travelTest()...)
	}
	return p
}

func (s *entries) feedTest() []report.Block {
	blocks := []report.Block{report.CautionOf("rollers")}
	steps := report.Sentences{report.Say(checklistStep, "section", secBefore.Title)}
	open := s.Path.Word == "open"
	switch {
	case !open:
		blocks = append(blocks, report.CautionOf("hot"))
		steps.Say(heatStep)
	case s.Drive.Word == "tube":
		blocks = append(blocks, report.CautionOf("cold"), report.CautionOf("guard"))
		steps.Say(tubeOffStep)
	default:
		blocks = append(blocks, report.CautionOf("cold"), report.CautionOf("guard"))
		steps.Say(hotEndOffStep)
	}
	marked := s.Read.Word != "fed"
	length, speed, repeat := markStep, slowStep, markAgainStep
	if !marked {
		length, repeat = wentInStep, repeatStep
		if open {
			length = cutStep
		}
	}
	if s.Method() == trial.SeveralSpeeds {
		speed = speedsStep
	}
	for _, step := range []string{slackStep, length, speed, repeat} {
		steps.Say(word.Template(step))
	}
	blocks = append(blocks, report.Steps{Items: steps})
	if marked {
		blocks = append(blocks, trial.NominalTest())
	}
	return append(blocks, s.speedBlocks()...)
}

// speedBlocks say the speed in both of the units that get mixed up.
func (s *entries) speedBlocks() []report.Block {
	if !s.Speed.Given {
		return nil
	}
	v := s.Speed.Number
	blocks := []report.Block{report.Figures{All: []report.Figure{
		{ID: "feed", Label: speedLabel, Value: v, Unit: "mm/s", Digits: 5},
		{ID: "word", Label: fValueLabel, Value: v * unit.Minute, Unit: "mm/min", Digits: 6},
	}}}
	if s.Speed.Value() > s.TooFast() {
		blocks = append(blocks, report.DoubtNote(fastDoubt))
	}
	return blocks
}

func (s *entries) travelTest() []report.Block {
	read := []string{rulerStep}
	if s.rotary() {
		read = []string{discStep, dialStep}
	}
	steps := report.StepsOf(lists.Concat([]string{approachStep}, read, []string{longStep, goBackStep})...)
	if s.Method() == trial.BothSides {
		steps = report.StepsOf(append(read, targetsStep)...)
	}
	return []report.Block{report.CautionOf("range"), report.CautionOf("rollers"), steps}
}
