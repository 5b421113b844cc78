package drive

import (
	"math"

	"striderule/calc/unit"
)

// A Mistake is a common way to get a setting wrong, with what it does to the
// ratio of measured to commanded travel.
type Mistake struct {
	Kind  string  // what was mixed up: mistakes of one kind do not combine
	Ratio float64 // measured / commanded
	What  string  // "A 0.9° motor is configured as 1.8°."
	Look  string  // what to check, a sentence too
	Rank  int     // the lower, the more common
}

// Known is what is given of an axis when its mistakes are looked up. What is
// not given is left at its zero value.
type Known struct {
	Stages     Stages // a pair may have been left out, counted twice, turned round
	Volumetric bool   // feed is counted in mm³: the filament's area matters
	Output     Output // whose element may have been taken for another
	Feed       bool   // an axis that feeds filament: no belts, no screws

	StepAngle  unit.Angle // of the motor that is fitted: its mistake is only that of another one
	Microsteps unit.Count // that the driver is set to
}

// Kinds of mistakes.
const (
	mixMotor     = "motor"
	mixMicro     = "microsteps"
	mixGears     = "gears"
	mixPitch     = "pitch"
	mixTeeth     = "teeth"
	mixLead      = "lead"
	mixUnit      = "unit"
	mixArea      = "filament"
	mixDriveSide = "turn"
)

// Mistakes lists the common mistakes that an axis can have. Those of one kind
// come in both directions.
func Mistakes(k Known) []Mistake {
	list := k.motorMistakes()
	list = append(list, k.microstepMistakes(2, 2)...)
	list = append(list, bothWays(mixUnit, 1/unit.Inch, 5, millimetresForInches, inchesForMillimetres)...)
	for _, f := range []float64{4, 8, 16} {
		list = append(list, k.microstepMistakes(f, 6)...)
	}
	list = append(list, gearMistakes(k.Stages)...)
	if k.Volumetric {
		list = append(list, bothWays(mixArea, math.Pow(1.75/2.85, 2), 3, thinFilament, thickFilament)...)
	}
	if !k.Feed {
		list = append(list, pulleyMistakes(k.Output)...)
		list = append(list, pitchMistakes(k.Output)...)
		list = append(list, leadMistakes(k.Output)...)
	}
	return list
}

// mistake is one in its words, with the parts of its sentence.
func mistake(kind string, ratio float64, rank int, words mistakeWords, parts ...string) Mistake {
	return Mistake{kind, ratio, words.what.Fill(parts...), words.look, rank}
}

// bothWays is a mistake with its opposite: down for ratio, up for 1/ratio.
func bothWays(kind string, ratio float64, rank int, down, up mistakeWords, parts ...string) []Mistake {
	return []Mistake{mistake(kind, ratio, rank, down, parts...), mistake(kind, 1/ratio, rank, up, parts...)}
}

// motorMistakes are those between the two usual motors; of one that is given, that of a setting
// for the other.
func (k Known) motorMistakes() []Mistake {
	switch k.StepAngle {
	case 0:
		return bothWays(mixMotor, 0.5, 1, fineMotor, coarseMotor)
	case FineAngle:
		return []Mistake{mistake(mixMotor, 0.5, 1, forCoarseMotor)}
	case CoarseAngle:
		return []Mistake{mistake(mixMotor, 2, 1, forFineMotor)}
	}
	return nil
}

// mostMicrosteps is what drivers go up to.
const mostMicrosteps = 256

// microstepMistakes are f times too many microsteps, and too few; of a driver that is given, those
// of a setting for another number that there is.
func (k Known) microstepMistakes(f float64, rank int) []Mistake {
	if k.Microsteps == 0 {
		return bothWays(mixMicro, 1/f, rank, moreMicrosteps, fewerMicrosteps, "n", unit.Whole(f))
	}
	var list []Mistake
	for _, ratio := range []float64{1 / f, f} {
		if was := float64(k.Microsteps) * ratio; was == math.Trunc(was) && was <= mostMicrosteps {
			list = append(list, mistake(mixMicro, ratio, rank, otherMicrosteps, "was", unit.Whole(was), "now", unit.Whole(float64(k.Microsteps))))
		}
	}
	return list
}

// Step angles of the usual motors.
const (
	FineAngle   unit.Angle = 0.9
	CoarseAngle unit.Angle = 1.8
)

// IsMotor reports whether the motor was mixed up, IsMicrosteps whether the microsteps were.
func (m Mistake) IsMotor() bool      { return m.Kind == mixMotor }
func (m Mistake) IsMicrosteps() bool { return m.Kind == mixMicro }

// IsGears reports whether the gears were.
func (m Mistake) IsGears() bool { return m.Kind == mixGears }

// Moves reports whether a setting of a convention is what the mistake made wrong: others belong
// to another entry, or to what is sent.
func (m Mistake) Moves(c Convention) bool {
	switch m.Kind {
	case mixMotor, mixMicro:
		return c == StepsPerUnit
	case mixGears, mixDriveSide:
		return c != TravelPerOutputTurn
	case mixPitch, mixTeeth, mixLead:
		return true
	}
	return false
}

// gearMistakes are those of the stages that are given.
func gearMistakes(stages Stages) []Mistake {
	var list []Mistake
	for _, s := range stages {
		g := Stages{s}.Reduction()
		if g == 1 {
			continue
		}
		pair := []string{"driving", unit.Whole(float64(s.Driving)), "driven", unit.Whole(float64(s.Driven))}
		list = append(list, bothWays(mixGears, 1/g, 2, pairLeftOut, pairTwice, pair...)...)
		list = append(list, mistake(mixGears, 1/(g*g), 4, pairReversed, pair...))
	}
	if g := stages.Reduction(); len(stages) > 1 && g != 1 {
		list = append(list, bothWays(mixDriveSide, 1/g, 3, outputForMotorTurn, motorForOutputTurn)...)
	}
	return list
}

// swapped is a part of size set where one of size fitted sits: the axis moves
// fitted/set of what was commanded.
func swapped(kind string, fitted, set float64, rank int, words mistakeWords) Mistake {
	return mistake(kind, fitted/set, rank, words, "fitted", unit.Whole(fitted), "set", unit.Whole(set))
}

var (
	usualTeeth   = []float64{15, 16, 18, 20, 24, 30, 32, 36, 40}
	usualPitches = []float64{2, 2.032, 2.5, 3, 5, 5.08}
)

// UsualLeads are those of the screws of small machines, mm.
var UsualLeads = []float64{1, 1.25, 2, 4, 5, 8, 10}

// pulleyMistakes are other pulleys than the one that is set up; without a belt
// that is given, those between the most usual ones.
func pulleyMistakes(o Output) []Mistake {
	pair := func(fitted, set float64, rank int) Mistake { return swapped(mixTeeth, fitted, set, rank, otherPulley) }
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
	pair := func(fitted, set float64, rank int) Mistake { return swapped(mixPitch, fitted, set, rank, otherBelt) }
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
	if o == nil {
		return bothWays(mixLead, 4, 4, fourStartPitch, fourStartLead)
	}
	screw, ok := o.(Screw)
	if !ok {
		return nil
	}
	var list []Mistake
	lead := float64(screw.Lead())
	if screw.Starts > 1 {
		list = append(list, mistake(mixLead, float64(screw.Starts), 2, pitchForLead))
	}
	for _, l := range UsualLeads {
		if l != lead && lead/l != float64(screw.Starts) {
			list = append(list, swapped(mixLead, l, lead, 4, otherScrew))
		}
	}
	return list
}
