package calc

import (
	"striderule/calc/drive"
	"striderule/calc/unit"
)

// An axisRow is one row of the table, read.
type axisRow struct {
	fact
	n     string // "1"
	name  string
	key   string // that the setting is typed in
	given bool   // the setting is
}

// convertDigits is what conversions are shown with: they are exact, so it is
// for reading only.
const convertDigits = 8

func (r axisRow) figure(id, label string, v float64, u string) *Figure {
	return &Figure{ID: id + "-" + r.n, Label: label, Value: v, Unit: u, Digits: convertDigits}
}

// axisOutputs are the figures of an axis beside its settings.
var axisOutputs = []Output{
	{"stepsin", "Steps per inch", "steps/in"},
	{"turnin", "Travel per motor turn in inches", "in/rev"},
	{"stepsrev", "Steps per turn of a rotary axis", "steps/rev"},
	{"fullsteps", "Full steps per motor turn", "steps/rev"},
	{"fullstep", "Travel per full step", "mm or °"},
	{"microstep", "Travel per microstep", "mm or °"},
}

// numbers are all that can be told of an axis, and what the rest needs.
func (r axisRow) numbers() (figures figureList, asks []Block) {
	perUnit := "mm"
	if r.rotary {
		perUnit = "°"
	}
	for _, to := range drive.Conventions {
		s, missing := r.in(to)
		if len(missing) > 0 {
			asks = append(asks, r.ask(to, missing))
			continue
		}
		figures.add(settingFigure(conventionWords[to]+"-"+r.n, s, r.rotary, convertDigits, false))
		switch {
		case to == drive.StepsPerUnit && !r.rotary:
			figures.add(r.figure("stepsin", "Steps per inch", s.Value*unit.Inch, "steps/in"))
		case to == drive.StepsPerUnit:
			figures.add(r.figure("stepsrev", "Steps per turn of the axis", s.Value*unit.Turn, "steps/rev"))
		case to == drive.TravelPerTurn && !r.rotary:
			figures.add(r.figure("turnin", "Travel per motor turn in inches", s.Value/unit.Inch, "in/rev"))
		}
	}
	if s, missing := r.in(drive.TravelPerTurn); len(r.noMotor) > 0 {
		asks = append(asks, Ask{r.noMotor, "travel per full step and per microstep"})
	} else if len(missing) == 0 {
		figures.add(
			r.figure("fullsteps", "Full steps per motor turn", r.motor.FullSteps(), "steps/rev"),
			r.figure("fullstep", "Travel per full step", s.Value/r.motor.FullSteps(), perUnit),
			r.figure("microstep", "Travel per microstep", s.Value/r.motor.Pulses(), perUnit))
	}
	return figures, asks
}

// turnsFaster is said of gear ratios below one, which are rarely meant.
var turnsFaster = doubtNote("With a gear ratio below 1 the output turns faster than the motor. Is that so? If not, turn it round: 54:12, not 12:54.")

// meaning explains the conventions.
var meaning = Part{ID: "meaning", Title: "What these numbers mean", Guide: true, Blocks: []Block{
	points(
		"Steps per mm: the microsteps that the controller sends for one millimetre. It holds motor, microsteps, gears and output in one number.",
		"Travel per motor turn: how far the axis moves when the motor turns once. A controller that stores it stores full steps per turn and microsteps beside it.",
		"Travel per output turn: the same behind the gears, whose ratio is then an entry of its own.",
	),
}}
