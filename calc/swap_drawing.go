package calc

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/lists"
)

// A combing is one full step of a motor with its microsteps, as travel.
type combing struct {
	when        string
	micro, full float64 // travel; full is 0 where the microsteps are not told
}

// finest is how close together, on paper, ticks are still told apart.
const finest = 2.5

// stepPicture sets one full step before and after side by side, with its
// microsteps. It is false while a microstep of either is not known.
func (a *swapped) stepPicture() *Part {
	var all []combing
	for _, of := range []struct {
		when string
		fact
	}{{"before", a.before()}, {"after", a.after()}} {
		steps, missing := of.in(drive.StepsPerUnit)
		if len(missing) > 0 {
			return nil
		}
		all = append(all, combing{of.when, 1 / steps.Value, float64(of.motor.Microsteps) / steps.Value})
	}
	unit := "mm"
	if a.sheet.rotary() {
		unit = "°"
	}
	return &Part{ID: "step", Title: "One step, before and after",
		Needs:  lists.Concat(a.allKeys, []string{"angle" + suffixKept, "micro" + suffixKept}, a.sheet.kept.gears.keys(suffixKept)),
		Blocks: []Block{combs(all, unit)}}
}

func combs(all []combing, unit string) Drawing {
	longest := 0.0
	for _, c := range all {
		longest = max(longest, c.full, c.micro)
	}
	s := sketchOf("step", "Travel of one step, both to the same scale", 0, longest, 14, 14,
		func(v float64) string { return Figure{Value: v, Unit: unit, Digits: 4}.String() })
	y := 0.0
	for i, c := range all {
		s.words(s.From+2*s.per, y+14, Start, c.when)
		foot := y + 62
		s.Alt += [...]string{"", ". "}[min(i, 1)] + capital(c.when) + ": "
		long := max(c.micro, c.full)
		if c.full > 0 {
			n := int(math.Round(c.full / c.micro))
			s.dim(Measure, 0, c.full, y+34, foot, "full step")
			s.tell("one full step moves ", c.full)
			s.Alt += " in " + plural(n, "microstep", "microsteps") + "; "
			if c.micro/s.per >= finest {
				for i := 1; i < n; i++ {
					s.upright(Measure, float64(i)*c.micro, foot-9, foot)
				}
			} else {
				s.plate(Measure, 0, foot-9, c.full, foot)
			}
		}
		s.line(Body, 0, foot-16, 0, foot, long, foot, long, foot-16)
		s.dim(Motion, 0, c.micro, foot+26, foot, "microstep")
		s.tell("one microstep moves ", c.micro)
		y = foot + 40
	}
	return s.done(y, ".")
}
