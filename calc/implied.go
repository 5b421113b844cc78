package calc

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

// An implied is the size of a part that a setting asks for.
type implied struct {
	id, label, unit string
	value           float64
	nearest         float64 // that is made; 0 where every size can be
	part            string  // "a pulley of 18 teeth"
	look            string  // at what beside the motor, where no part that is made is near
	whole           bool    // it is a count
}

const gearsOr = "gears left out or turned round, "

// implied returns the size of an output element that a travel per output turn
// asks for. The element has one: it is no rotary table.
func (o *outputEntry) implied(perTurn float64) implied {
	teeth := func(value float64, of, look string) implied {
		n := max(1, math.Round(value))
		return implied{"teeth", "Teeth of the " + of, "", value, n, "a " + of + " of " + plural(int(n), "tooth", "teeth"), look, true}
	}
	switch o.Kind.Word {
	case "belt":
		return teeth(drive.PulleyTeeth(perTurn, o.Pitch.Value()), "pulley", gearsOr+"the belt's pitch")
	case "rack":
		return teeth(drive.PinionTeeth(perTurn, o.Module.Value()), "pinion", gearsOr+"the rack's module")
	case "screw":
		n := nearestLead(perTurn)
		return implied{"lead", "Lead of the screw", "mm", perTurn, n, "a screw of " + number(n) + " mm lead", gearsOr + "an inch thread", false}
	}
	return implied{id: "diameter", label: "Effective diameter of the roller", unit: "mm", value: float64(drive.EffectiveDiameter(perTurn))}
}

// missingPitch is what it takes besides the travel per turn.
func (o *outputEntry) missingPitch() []string {
	switch {
	case o.Kind.Word == "belt" && !o.Pitch.Given:
		return []string{"pitch"}
	case o.Kind.Word == "rack" && !o.Module.Given:
		return []string{"module"}
	}
	return nil
}

// impliedGear returns the driven teeth that a gear ratio asks for beside the
// teeth on the motor side.
func impliedGear(ratio float64, driving int) implied {
	n := max(1, math.Round(ratio*float64(driving)))
	return implied{"driven", "Teeth on the driven side", "", ratio * float64(driving), n, "a pair of " + strconv.Itoa(driving) + " and " + number(n) + " teeth", "another output element, several stages", true}
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

// off is how far the implied size lies from the nearest part, as a share of it.
func (i implied) off() float64 { return i.value/i.nearest - 1 }

// near reports whether the nearest part can be meant: a setting that was
// corrected by a measurement is rarely off by more than a hundredth, and of
// large counts some whole one is always that near.
func (i implied) near() bool {
	return math.Abs(i.off()) <= 0.01 && (!i.whole || math.Abs(i.value-i.nearest) <= 0.25)
}

// says is what the nearest part means for the setting.
func (i implied) says() string {
	off := math.Abs(i.off())
	if off < 1e-6 {
		return capital(i.part) + " gives exactly this setting."
	}
	than := "more"
	if i.off() < 0 {
		than = "less"
	}
	s := "The nearest that is made is " + i.part + "; the setting implies " + unit.Trim(100*off, 2) + " % " + than + ". "
	if i.near() {
		return s + "That is near: such a part fits, and the rest is rounding, or what a measurement corrected."
	}
	return s + "That is not near, so look for something else: other microsteps or another motor, " + i.look + ", or a setting that was never right."
}
