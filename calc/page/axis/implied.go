package axis

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// An Implied is the size of a part that a setting asks for.
type Implied struct {
	ID, Label, Unit string
	Value           float64
	Nearest         float64 // that is made; 0 where every size can be
	part            string  // "a pulley of 18 teeth"
	look            string  // at what beside the motor, where no part that is made is near
	whole           bool    // it is a count
}

const gearsOr = "gears left out or turned round, "

// Implied returns the size of an output element that a travel per output turn
// asks for. The element has one: it is no rotary table.
func (o *OutputEntry) Implied(perTurn float64) Implied {
	teeth := func(value float64, of, look string) Implied {
		n := max(1, math.Round(value))
		return Implied{"teeth", "Teeth of the " + of, "", value, n, "a " + of + " of " + word.Plural(int(n), "tooth", "teeth"), look, true}
	}
	switch o.Kind.Word {
	case "belt":
		return teeth(drive.PulleyTeeth(perTurn, o.Pitch.Value()), "pulley", gearsOr+"the belt's pitch")
	case "rack":
		return teeth(drive.PinionTeeth(perTurn, o.Module.Value()), "pinion", gearsOr+"the rack's module")
	case "screw":
		n := nearestLead(perTurn)
		return Implied{"lead", "Lead of the screw", "mm", perTurn, n, "a screw of " + word.Number(n) + " mm lead", gearsOr + "an inch thread", false}
	}
	return Implied{ID: "diameter", Label: "Effective diameter of the roller", Unit: "mm", Value: float64(drive.EffectiveDiameter(perTurn))}
}

// MissingPitch is what it takes besides the travel per turn.
func (o *OutputEntry) MissingPitch() []string {
	switch {
	case o.Kind.Word == "belt" && !o.Pitch.Given:
		return []string{"pitch"}
	case o.Kind.Word == "rack" && !o.Module.Given:
		return []string{"module"}
	}
	return nil
}

// ImpliedGear returns the driven teeth that a gear ratio asks for beside the
// teeth on the motor side.
func ImpliedGear(ratio float64, driving int) Implied {
	n := max(1, math.Round(ratio*float64(driving)))
	return Implied{"driven", "Teeth on the driven side", "", ratio * float64(driving), n, "a pair of " + strconv.Itoa(driving) + " and " + word.Number(n) + " teeth", "another output element, several stages", true}
}

// Coarse threads have these pitches up to M24 (ISO 261); above them a lead is
// taken to be whole.
var coarsePitches = []float64{0.5, 0.7, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3}

// nearestLead is the lead, of those that are usual, from which a lead differs
// by the smallest factor.
func nearestLead(lead float64) float64 {
	best := max(1, math.Round(lead))
	for _, p := range coarsePitches {
		if math.Abs(math.Log(lead/p)) < math.Abs(math.Log(lead/best)) {
			best = p
		}
	}
	return best
}

// Off is how far the implied size lies from the nearest part, as a share of it.
func (i Implied) Off() float64 { return i.Value/i.Nearest - 1 }

// near reports whether the nearest part can be meant: a setting that was
// corrected by a measurement is rarely off by more than a hundredth, and of
// large counts some whole one is always that near.
func (i Implied) near() bool {
	return math.Abs(i.Off()) <= 0.01 && (!i.whole || math.Abs(i.Value-i.Nearest) <= 0.25)
}

// Says is what the nearest part means for the setting.
func (i Implied) Says() string {
	off := math.Abs(i.Off())
	if off < 1e-6 {
		return word.Capital(i.part) + " gives exactly this setting."
	}
	than := "more"
	if i.Off() < 0 {
		than = "less"
	}
	s := "The nearest that is made is " + i.part + "; the setting implies " + unit.Trim(100*off, 2) + " % " + than + ". "
	if i.near() {
		return s + "That is near: such a part fits, and the rest is rounding, or what a measurement corrected."
	}
	return s + "That is not near, so look for something else: other microsteps or another motor, " + i.look + ", or a setting that was never right."
}
