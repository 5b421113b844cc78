package calc

import (
	"math"

	"striderule/calc/drive"
)

// picture is a section through the wall: its lines as they should be, and the
// thickness that the caliper reads.
func (a *flowed) picture() (Part, bool) {
	p := Part{ID: "wall", Title: "The wall, cut through", Needs: flowKeys}
	if a.sheet.By.Word != byWalls || !a.hasGauge {
		return p, false
	}
	p.Blocks = []Block{a.section()}
	return p, true
}

func (a *flowed) section() Drawing {
	layer, pitch := float64(a.sheet.Layer.Value), a.sheet.spacing()
	wanted, mean, n := a.gauge.at(1), a.raw.Length, int(a.sheet.walls())
	width := pitch + float64(drive.Rounding(a.sheet.Layer.Value))
	const most, top = 196, 40 // the wall's share of the paper
	per := max(max(wanted, mean)/most, layer/44)
	middle := wanted / 2
	s := sketchOf("wall", "Section through the wall, to scale", middle-per*130, middle+per*170, 0, 0,
		func(v float64) string { return Figure{Value: v, Unit: "mm", Digits: 4}.String() }) // as set
	high := layer / per
	layers := int(min(3, max(1, 96/high)))
	foot := top + high*float64(layers)
	for l := range layers {
		for i := range n {
			x, y := float64(i)*pitch, top+high*float64(l)
			s.add(Plate{Body, XY{x, y}, XY{x + width, y + high}, true})
		}
	}
	side := middle + 110*per
	s.add(Dim{Measure, XY{side, foot - high}, XY{side, foot}, side, s.show(layer)})
	s.line(Measure, wanted, foot-high, side+4*per, foot-high)
	s.line(Measure, wanted, foot, side+4*per, foot)
	s.tell("Section through a wall of "+plural(n, "line", "lines")+", ", width)
	s.tell(" wide and ", layer)
	s.Alt += " high"
	y := foot + 26
	s.dim(Measure, 0, width, y, foot, "one line")
	if n > 1 {
		y += 22
		s.dim(Measure, width/2, width/2+pitch, y, foot, "spacing")
		s.tell(", side by side every ", pitch)
	}
	s.show = func(v float64) string { return a.reading("", "", v).String() }
	s.dim(Measure, 0, wanted, 22, top, "should be")
	s.tell(". It should be ", wanted)
	s.Alt += " thick"
	if mean > 0 {
		y += 24
		s.jaw(middle-mean/2, -7*per, foot+8)
		s.jaw(middle+mean/2, 7*per, foot+8)
		s.dim(Mark, middle-mean/2, middle+mean/2, y, foot+8, "caliper reads")
		s.tell("; the caliper reads ", mean)
	}
	return s.done(y+12, ".")
}

// jaw is one of a caliper's, down to its beam.
func (s *sketch) jaw(x, out, foot float64) { s.line(Mark, x, 34, x, foot, x+out, foot) }

// caliperPlaces shows a printed box from above, and where to measure it.
func caliperPlaces() Drawing {
	s := schematic("places", "Where to put the caliper")
	const left, top, size, wall = 14, 22, 120, 8
	s.plate(Body, left, top, left+size, top+size)
	s.plate(Body, left+wall, top+wall, left+size-wall, top+size-wall)
	right, half := float64(left+size), float64(top+size/2)
	for _, jaw := range []struct{ x, out float64 }{{right - wall, -16}, {right, 16}} {
		s.line(Mark, jaw.x, half-9, jaw.x, half+9)
		s.line(Mark, jaw.x, half, jaw.x+jaw.out, half)
	}
	s.words(right+22, half-3, Start, "here: in the")
	s.words(right+22, half+13, Start, "middle of a flat side")
	for _, at := range []XY{{left, top}, {right, top}, {right, top + size}, {left, top + size}} {
		at.X, at.Y = at.X-math.Copysign(wall/2, at.X-80), at.Y-math.Copysign(wall/2, at.Y-80)
		s.line(Measure, at.X-7, at.Y-7, at.X+7, at.Y+7)
		s.line(Measure, at.X-7, at.Y+7, at.X+7, at.Y-7)
	}
	s.words(right+22, top+6, Start, "not at a corner")
	s.disc(left+size/3, top+size-wall/2, 5, 0)
	s.words(left, top+size+24, Start, "not at the seam, where each layer begins")
	return s.done(top+size+34, "A printed box seen from above. The caliper takes one wall between its jaws, in the middle of a flat side: not at a corner, and not at the seam.")
}

// A combing is one full step of a motor with its microsteps, as travel.
type combing struct {
	when        string
	micro, full float64 // travel; full is 0 where the microsteps are not told
}

// finest is how close together, on paper, ticks are still told apart.
const finest = 2.5

// stepPicture sets one full step before and after side by side, with its
// microsteps. It is false while a microstep of either is not known.
func (a *swapped) stepPicture() (Part, bool) {
	var all []combing
	for _, of := range []struct {
		when string
		fact
	}{{"before", a.before()}, {"after", a.after()}} {
		steps, missing := of.in(drive.StepsPerUnit)
		if len(missing) > 0 {
			return Part{}, false
		}
		all = append(all, combing{of.when, 1 / steps.Value, float64(of.motor.Microsteps) / steps.Value})
	}
	unit := "mm"
	if a.sheet.rotary() {
		unit = "°"
	}
	return Part{ID: "step", Title: "One step, before and after",
		Needs:  concat(a.allKeys, []string{"angle" + kept, "micro" + kept}, a.sheet.kept.gears.keys(kept)),
		Blocks: []Block{combs(all, unit)}}, true
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
		y = foot + 36
	}
	return s.done(y, ".")
}
