package calibrate

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/report"
)

// mostOfReading is the error of a belt or screw up to which the reading is the likelier cause:
// beyond it some part is another one than is set.
const mostOfReading = 0.015

// What a setting was worked out for most likely, where nothing of it is given.
var usualMotor = drive.Motor{StepAngle: drive.CoarseAngle, Microsteps: 16}

const usualGears axis.PlainRatio = 1

// byParts returns the travel per turn from which the setting of a linear axis comes, where that is
// one that belts and screws have; supposed says that motor and gears are taken for the usual
// ones. ok is false for another travel. Of such an axis the parts say more than a ruler, unless
// the error is larger than a reading's.
func (a *solution) byParts() (travel drive.Setting, supposed, ok bool) {
	s := a.sheet
	if s.Axis.Word != "travel" || !a.hasNow || a.hasThen || a.judged.Verdict != measure.ChangeIt ||
		a.suspectsMistake() || math.Abs(a.scale.Error().Value) > mostOfReading {
		return travel, false, false
	}
	was, _ := a.facts()
	_, missing := was.In(drive.TravelPerOutputTurn)
	if supposed = len(missing) > 0; supposed {
		if s.Angle.Given || s.Micro.Given || s.GearEntry.Known() {
			return travel, false, false
		}
		was.Motor, was.Gears, was.NoMotor, was.NoGears = usualMotor, usualGears, nil, nil
	}
	travel, _ = was.In(drive.TravelPerOutputTurn)
	return travel, supposed, axis.IsMade(travel.Value)
}

// keepsParts reports whether what the parts give is to be kept.
func (a *solution) keepsParts() bool {
	_, _, ok := a.byParts()
	return ok
}

// keepParts makes the answer one that does.
func (a *solution) keepParts(answer *report.Answer) {
	travel, supposed, ok := a.byParts()
	if !ok {
		return
	}
	says := partsSay
	if supposed {
		says = partsSuppose
	}
	v := answer.Verdict
	v.Kind, v.Parts, v.Title = report.Leave, true, partsTitle
	v.Says = report.Together(v.Says, report.Say(says, "setting", a.old("", a.now),
		"travel", &report.Figure{Value: travel.Value, Unit: "mm", Digits: 5}, "section", secParts.Title))
	keep := a.old("", a.now)
	keep.Label = a.label(keepLabel)
	answer.Label, answer.Keep, answer.Says = readLabel, keep, report.Say(partsUnless)
}
