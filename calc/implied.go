package calc

import (
	"math"

	"striderule/calc/drive"
)

// An implied is the size of a part that a setting asks for.
type implied struct {
	id, label, unit string
	value           float64
	nearest         float64 // that is made; 0 where every size can be
	part            string  // "a pulley of 18 teeth"
	look            string  // at what, where no part that is made is near
	whole           bool    // it is a count
}

// impliedElement returns the size of an output element that a travel per
// output turn asks for; ok is false for what has no size.
func (o *outputEntry) impliedElement(perTurn float64) (i implied, ok bool) {
	teeth := func(value float64, of string) implied {
		n := max(1, math.Round(value))
		return implied{id: "teeth", label: "Teeth of the " + of, value: value, nearest: n, part: "a " + of + " of " + plural(int(n), "tooth", "teeth"), whole: true}
	}
	switch o.Kind.Word {
	case "belt":
		i = teeth(drive.PulleyTeeth(perTurn, o.Pitch.Value), "pulley")
		i.look = "the belt's pitch"
	case "rack":
		i = teeth(drive.PinionTeeth(perTurn, o.Module.Value), "pinion")
		i.look = "the rack's module"
	case "screw":
		i = implied{id: "lead", label: "Lead of the screw", unit: "mm", value: perTurn, nearest: nearestLead(perTurn), look: "an inch thread"}
		i.part = "a screw of " + number(i.nearest) + " mm lead"
	case "roller":
		i = implied{id: "diameter", label: "Effective diameter of the roller", unit: "mm", value: float64(drive.EffectiveDiameter(perTurn))}
	default:
		return i, false
	}
	return i, true
}

// impliedGear returns the driven teeth that a gear ratio asks for beside the
// teeth on the motor side.
func impliedGear(ratio float64, driving int) implied {
	n := max(1, math.Round(ratio*float64(driving)))
	return implied{id: "driven", label: "Teeth on the driven side", value: ratio * float64(driving), nearest: n,
		part: "a pair of " + itoa(driving) + " and " + number(n) + " teeth", look: "several stages", whole: true}
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
