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
	length, runs := markStep, []string{slowStep, markAgainStep}
	if !marked {
		length, runs[1] = wentInStep, repeatStep
		if open {
			length = cutStep
		}
	}
	if s.Method() == trial.SeveralSpeeds {
		runs = []string{speedsStep}
		if marked {
			runs = append(runs, markEachStep)
		}
	}
	for _, step := range append([]string{slackStep, length}, runs...) {
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
	care, read, moves := "range", []string{rulerStep}, []string{longStep, goBackStep}
	if s.rotary() {
		care, read = "turn", []string{discStep, dialStep}
	}
	if s.Method() == trial.SeveralLengths {
		moves = []string{movesStep}
	}
	steps := report.StepsOf(lists.Concat([]string{approachStep}, read, moves)...)
	if s.Method() == trial.BothSides {
		steps = report.StepsOf(append(read, targetsStep)...)
	}
	return []report.Block{report.CautionOf(care), report.CautionOf("rollers"), steps}
}
