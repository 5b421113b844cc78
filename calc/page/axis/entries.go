package axis

import (
	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// Unsaid is the word of a convention that was not told.
const Unsaid = "unknown"

// WantsChoice asks for the convention of a controller that has no setting yet.
func WantsChoice() sheet.Choice { return sheet.Choose(wantsUnsaid, asSteps, asTurn, asOutput) }

// Wanted is the convention that was chosen; ok is false while none is.
func Wanted(c *sheet.Choice) (to drive.Convention, ok bool) {
	if c.IsDefault() {
		return 0, false
	}
	return conventionOf(*c), true
}

// Geared reports whether a ratio is given that travel per output turn needs beside it.
func (f Fact) Geared() bool { return len(f.NoGears) == 0 && f.Gears.Reduction() != 1 }

// Together is all that a controller of a convention stores of the axis: one of its numbers
// alone would be right only by luck. ratio is what the gear ratio is called. It returns what
// is missing for the setting itself, and asks for the rest.
func (r Row) Together(to drive.Convention, ratio string) (blocks []report.Block, missing []string) {
	s, missing := r.In(to)
	if len(missing) > 0 {
		return nil, missing
	}
	figures := report.FigureList{*SettingFigure(ConventionWords[to], s, r.Rotary, Digits, false)}
	if to == drive.TravelPerOutputTurn && len(r.NoGears) == 0 {
		figures.Add(&report.Figure{Label: ratio, Value: r.Gears.Reduction(), Digits: Digits})
	}
	if to == drive.StepsPerUnit || len(r.NoMotor) > 0 {
		blocks = []report.Block{report.Figures{All: figures}}
		if to != drive.StepsPerUnit {
			blocks = append(blocks, report.Ask{Keys: r.NoMotor, For: stepsBeside})
		}
		return blocks, nil
	}
	figures.Add(
		&report.Figure{Label: fullSteps, Value: r.Motor.FullSteps(), Digits: Digits},
		&report.Figure{Label: microstepsLabel, Value: float64(r.Motor.Microsteps), Digits: Digits})
	blocks = []report.Block{report.Figures{All: figures}}
	if to == drive.TravelPerTurn && r.Geared() {
		blocks = append(blocks, report.ParaOf(gearsInIt))
	}
	return blocks, nil
}
