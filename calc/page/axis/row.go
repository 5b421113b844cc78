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
	{ID: "stepsin", Label: stepsPerInch, Unit: "steps/in"},
	{ID: "turnin", Label: travelPerInch, Unit: "in/rev"},
	{ID: "stepsrev", Label: stepsOfRotary, Unit: "steps/rev"},
	{ID: "fullsteps", Label: fullSteps, Unit: "steps/rev"},
	{ID: "fullstep", Label: travelFullStep, Unit: linearTravel},
	{ID: "microstep", Label: travelMicrostep, Unit: linearTravel},
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
			figures.Add(r.Figure("stepsin", stepsPerInch, s.Value*unit.Inch, "steps/in"))
		case to == drive.StepsPerUnit:
			figures.Add(r.Figure("stepsrev", stepsPerTurn, s.Value*unit.Turn, "steps/rev"))
		case to == drive.TravelPerTurn && !r.Rotary:
			figures.Add(r.Figure("turnin", travelPerInch, s.Value/unit.Inch, "in/rev"))
		}
	}
	if s, missing := r.In(drive.TravelPerTurn); len(r.NoMotor) > 0 {
		asks = append(asks, report.Ask{Keys: r.NoMotor, For: travelPerStep})
	} else if len(missing) == 0 {
		figures.Add(
			r.Figure("fullsteps", fullSteps, r.Motor.FullSteps(), "steps/rev"),
			r.Figure("fullstep", travelFullStep, s.Value/r.Motor.FullSteps(), perUnit),
			r.Figure("microstep", travelMicrostep, s.Value/r.Motor.Pulses(), perUnit))
	}
	return figures, asks
}

// TurnsFaster is said of gear ratios below one, which are rarely meant.
var TurnsFaster = report.DoubtNote(turnsFaster)

// Meaning explains the conventions.
var Meaning = report.Part{ID: "meaning", Title: meaningTitle, Brief: meaningBrief, Guide: true, Blocks: []report.Block{
	report.PointsOf(meaningSteps, meaningTurn, meaningOutput),
}}
