package calibrate

import (
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// howTo is the test itself, step by step, with its cautions.
func (a *solution) howTo() *report.Part {
	p := &report.Part{ID: "how", Title: "How to make the test", Guide: true, Needs: []string{"axis", "drive", "path", "read", "speed"}}
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
	steps := []report.Line{report.Say("Go through the list “" + secBefore.Title + "”.")}
	step := func(text string) { steps = append(steps, report.Say(text)) }
	open := s.Path.Word == "open"
	switch {
	case !open:
		blocks = append(blocks, report.CautionOf("hot"))
		step("Heat the hot end to the filament's printing temperature and wait until it is steady.")
	case s.Drive.Word == "tube":
		blocks = append(blocks, report.CautionOf("cold"), report.CautionOf("guard"))
		step("Take the filament back out of the hot end while that is hot, let it cool, and take the guide (Bowden) tube off at the drive.")
		step("Feed until some filament stands out, and cut it off flush with the drive's outlet: that is zero.")
	default:
		blocks = append(blocks, report.CautionOf("cold"), report.CautionOf("guard"))
		step("Take the filament back out while the hot end is hot, let it cool, and open the way below the drive, as the maker allows: with the drive at the hot end, an open path means taking one off the other.")
	}
	step("Feed a few millimetres forwards, to take up the slack in the direction of the test.")
	if s.Read.Word == "fed" {
		if open {
			step("Cut the filament flush, feed the commanded length in one go, cut it flush again, and measure the piece.")
		} else {
			step("Feed the commanded length in one go and measure how much filament went in.")
		}
	} else {
		step("Mark the filament at a distance from the drive's inlet that is longer than the commanded length, so that the mark never enters the drive. Feed the commanded length, and measure from the same place to the mark.")
	}
	step("Feed slowly: 60 to 90 mm/min (1 to 1.5 mm/s). Faster, the roller may slip or the hot end may not melt in time, and you would dial that into the scale.")
	step("Mark anew and repeat: three runs at least, five are better.")
	blocks = append(blocks, report.Steps{Items: steps})
	if s.Read.Word != "fed" {
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
		{ID: "feed", Label: "Feed speed", Value: v, Unit: "mm/s", Digits: 5},
		{ID: "word", Label: "Feed speed as an F word, which counts in mm/min", Value: v * unit.Minute, Unit: "mm/min", Digits: 6},
	}}}
	if s.Speed.Value() > s.TooFast() {
		blocks = append(blocks, report.DoubtNote("That is fast for a test: slip may be measured along. Is it mm/min? Test again at 60 to 90 mm/min."))
	}
	return blocks
}

func (s *entries) travelTest() []report.Block {
	what := "Move to the start from the side from which you will go on, so that slack is taken up."
	how := "Fix a rule or caliper along the axis, or a dial gauge at its end, and read the carriage's position before and after. A printed part would bring its shrinkage and line width along."
	if s.rotary() {
		how = "Fix a pointer against a graduated disc, or count full turns against a mark, and read before and after."
	}
	return []report.Block{
		report.CautionOf("range"), report.CautionOf("rollers"),
		report.Steps{Items: []report.Line{
			report.Say(what), report.Say(how),
			report.Say("Move as long a length as the axis and your instrument allow: the reading error counts less."),
			report.Say("Go back beyond the start, come in from the same side, and repeat: three runs at least."),
		}},
	}
}
