package axis

import (
	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// An Row is one row of the table, read.
type Row struct {
	Fact
	N     string // "1"
	Name  string
	Key   string // that the setting is typed in
	Given bool   // the setting is
}

// Digits is what conversions are shown with: they are exact, so it is
// for reading only.
const Digits = 8

// Figure is one of the axis: its ID ends in the number of the row.
func (r Row) Figure(id, label string, v float64, u string) *report.Figure {
	return &report.Figure{ID: id + "-" + r.N, Label: label, Value: v, Unit: u, Digits: Digits}
}

// Outputs are the figures of an axis beside its settings.
var Outputs = []sheet.Output{
	{ID: "stepsin", Label: "Steps per inch", Unit: "steps/in"},
	{ID: "turnin", Label: "Travel per motor turn in inches", Unit: "in/rev"},
	{ID: "stepsrev", Label: "Steps per turn of a rotary axis", Unit: "steps/rev"},
	{ID: "fullsteps", Label: "Full steps per motor turn", Unit: "steps/rev"},
	{ID: "fullstep", Label: "Travel per full step", Unit: "mm or °"},
	{ID: "microstep", Label: "Travel per microstep", Unit: "mm or °"},
}

// Numbers are all that is known of an axis, and what the rest needs.
func (r Row) Numbers() (figures report.FigureList, asks []report.Block) {
	perUnit := "mm"
	if r.Rotary {
		perUnit = "°"
	}
	for _, to := range drive.Conventions {
		s, missing := r.In(to)
		if len(missing) > 0 {
			asks = append(asks, r.ask(to, missing))
			continue
		}
		figures.Add(SettingFigure(ConventionWords[to]+"-"+r.N, s, r.Rotary, Digits, false))
		switch {
		case to == drive.StepsPerUnit && !r.Rotary:
			figures.Add(r.Figure("stepsin", "Steps per inch", s.Value*unit.Inch, "steps/in"))
		case to == drive.StepsPerUnit:
			figures.Add(r.Figure("stepsrev", "Steps per turn of the axis", s.Value*unit.Turn, "steps/rev"))
		case to == drive.TravelPerTurn && !r.Rotary:
			figures.Add(r.Figure("turnin", "Travel per motor turn in inches", s.Value/unit.Inch, "in/rev"))
		}
	}
	if s, missing := r.In(drive.TravelPerTurn); len(r.NoMotor) > 0 {
		asks = append(asks, report.Ask{Keys: r.NoMotor, For: "travel per full step and per microstep"})
	} else if len(missing) == 0 {
		figures.Add(
			r.Figure("fullsteps", "Full steps per motor turn", r.Motor.FullSteps(), "steps/rev"),
			r.Figure("fullstep", "Travel per full step", s.Value/r.Motor.FullSteps(), perUnit),
			r.Figure("microstep", "Travel per microstep", s.Value/r.Motor.Pulses(), perUnit))
	}
	return figures, asks
}

// TurnsFaster is said of gear ratios below one, which are rarely meant.
var TurnsFaster = report.DoubtNote("With a gear ratio below 1 the output turns faster than the motor. Is that so? If not, turn it round: 54:12, not 12:54.")

// Meaning explains the conventions.
var Meaning = report.Part{ID: "meaning", Title: "What these numbers mean", Guide: true, Blocks: []report.Block{
	report.PointsOf(
		"Steps per mm: the microsteps that the controller sends for one millimetre. It holds motor, microsteps, gears and output in one number.",
		"Travel per motor turn: how far the axis moves when the motor turns once. A controller that stores it stores full steps per turn and microsteps beside it.",
		"Travel per output turn: the same behind the gears, whose ratio is then an entry of its own.",
	),
}}
