package drive

import (
	"math"
	"slices"

	"striderule/calc/unit"
)

// A Mistake is a usual way to get a scale wrong, with what it does to the
// ratio of measured to commanded travel.
type Mistake struct {
	Kind  string  // what was mixed up: mistakes of one kind do not combine
	Ratio float64 // measured / commanded
	What  string  // "a 0.9° motor is set up as one of 1.8°"
	Look  string  // what to look at
	Rank  int     // the lower, the more usual
}

// Known is what is given of an axis when its mistakes are looked up. What is
// not given is left at its zero value.
type Known struct {
	Stages     Stages // a pair may have been left out, counted twice, turned round
	Volumetric bool   // feed is counted in mm³: the filament's area matters
	Output     Output // whose element may have been taken for another
	Feed       bool   // an axis that feeds filament: no belts, no screws
}

// Kinds of mistakes.
const (
	mixMotor     = "motor"
	mixMicro     = "microsteps"
	mixGears     = "gears"
	mixPitch     = "belt pitch"
	mixTeeth     = "pulley teeth"
	mixLead      = "screw lead"
	mixUnit      = "unit"
	mixArea      = "filament"
	mixDriveSide = "turn"
)

// Mistakes lists the usual mistakes that an axis can have. Those of one kind
// come in both directions.
func Mistakes(k Known) []Mistake {
	list := slices.Clone(everywhere)
	for _, f := range []float64{4, 8, 16} {
		list = append(list, microstepMistakes(f, 6)...)
	}
	list = append(list, gearMistakes(k.Stages)...)
	if k.Volumetric {
		list = append(list, bothWays(mixArea, math.Pow(1.75/2.85, 2), 3,
			"the filament's diameter is set to 2.85 mm, but 1.75 mm is in use", "the filament's diameter is set to 1.75 mm, but 2.85 mm is in use",
			"the filament diameter that the feed is counted with")...)
	}
	if !k.Feed {
		list = append(list, pulleyMistakes(k.Output)...)
		list = append(list, pitchMistakes(k.Output)...)
		list = append(list, leadMistakes(k.Output)...)
	}
	return list
}

// bothWays is a mistake with its opposite: down for ratio, up for 1/ratio.
func bothWays(kind string, ratio float64, rank int, down, up, look string) []Mistake {
	return []Mistake{{kind, ratio, down, look, rank}, {kind, 1 / ratio, up, look, rank}}
}

func microstepMistakes(f float64, rank int) []Mistake {
	n := unit.Full(f)
	return bothWays(mixMicro, 1/f, rank,
		"the driver makes "+n+" times the microsteps that are set up", "the driver makes a part of the microsteps that are set up: one in "+n,
		"the driver's jumpers, or its microsteps entry")
}

// everywhere are the mistakes that need nothing to be known.
var everywhere = slices.Concat(
	bothWays(mixMotor, 0.5, 1, "a 0.9° motor is set up as one of 1.8°", "a 1.8° motor is set up as one of 0.9°",
		"the step angle on the motor's label, and full steps per turn"),
	microstepMistakes(2, 2),
	bothWays(mixUnit, 1/unit.Inch, 5, "millimetres were sent where inches were meant", "inches were sent where millimetres were meant",
		"the unit that the controller is set to"),
)

// gearMistakes are those of the stages that are given.
func gearMistakes(stages Stages) []Mistake {
	var list []Mistake
	for _, s := range stages {
		g := Stages{s}.Reduction()
		if g == 1 {
			continue
		}
		pair := unit.Full(float64(s.Driving)) + ":" + unit.Full(float64(s.Driven))
		list = append(list, bothWays(mixGears, 1/g, 2,
			"the gear pair "+pair+" is left out of the setting", "the gear pair "+pair+" is counted twice, or is not there",
			"which gears the setting was worked out with")...)
		list = append(list, Mistake{mixGears, 1 / (g * g), "the gear pair " + pair + " is turned round in the setting",
			"which of the two gears sits on the motor", 4})
	}
	if g := stages.Reduction(); len(stages) > 1 && g != 1 {
		list = append(list, bothWays(mixDriveSide, 1/g, 3,
			"travel per output turn was entered as travel per motor turn", "travel per motor turn was entered as travel per output turn",
			"which turn the controller's entry is about")...)
	}
	return list
}

// swapped is a part of size set where one of size fitted sits: the axis moves
// fitted/set of what was commanded.
func swapped(kind string, fitted, set float64, rank int, what, look string) Mistake {
	return Mistake{kind, fitted / set, what, look, rank}
}

var (
	usualTeeth   = []float64{15, 16, 18, 20, 24, 30, 32, 36, 40}
	usualPitches = []float64{2, 2.032, 2.5, 3, 5, 5.08}
	usualLeads   = []float64{1, 1.25, 2, 4, 5, 8, 10}
)

// pulleyMistakes are other pulleys than the one that is set up; without a belt
// that is given, those between the most usual ones.
func pulleyMistakes(o Output) []Mistake {
	const look = "the teeth of the pulley: count them"
	pair := func(fitted, set float64, rank int) Mistake {
		return swapped(mixTeeth, fitted, set, rank, "a pulley of "+unit.Full(fitted)+" teeth is set up as one of "+unit.Full(set), look)
	}
	var list []Mistake
	if b, ok := o.(Belt); ok {
		for _, t := range usualTeeth {
			if t != float64(b.Teeth) {
				list = append(list, pair(t, float64(b.Teeth), 3))
			}
		}
	} else if o == nil {
		list = append(list, pair(16, 20, 4), pair(20, 16, 4), pair(18, 20, 5), pair(20, 18, 5))
	}
	return list
}

func pitchMistakes(o Output) []Mistake {
	pair := func(fitted, set float64, rank int) Mistake {
		return swapped(mixPitch, fitted, set, rank, "a belt of "+unit.Full(fitted)+" mm pitch is set up as one of "+unit.Full(set)+" mm",
			"the belt's pitch: measure over ten teeth")
	}
	var list []Mistake
	if b, ok := o.(Belt); ok {
		for _, p := range usualPitches {
			if p != float64(b.Pitch) {
				list = append(list, pair(p, float64(b.Pitch), 4))
			}
		}
	} else if o == nil {
		list = append(list, pair(3, 2, 5), pair(2, 3, 5), pair(2.032, 2, 6), pair(2, 2.032, 6))
	}
	return list
}

func leadMistakes(o Output) []Mistake {
	const look = "the screw's lead: how far the nut moves in one turn"
	var list []Mistake
	screw, ok := o.(Screw)
	if !ok {
		if o == nil {
			list = append(list, bothWays(mixLead, 4, 4, "the setting has the pitch of a four-start screw where its lead belongs",
				"a single-start screw is set up with four times its lead", look)...)
		}
		return list
	}
	lead := float64(screw.Lead())
	if screw.Starts > 1 {
		list = append(list, swapped(mixLead, float64(screw.Starts), 1, 2, "the setting has the screw's pitch where its lead belongs", look))
	}
	for _, l := range usualLeads {
		if l != lead && lead/l != float64(screw.Starts) {
			list = append(list, swapped(mixLead, l, lead, 4, "a screw of "+unit.Full(l)+" mm lead is set up as one of "+unit.Full(lead)+" mm", look))
		}
	}
	return list
}
