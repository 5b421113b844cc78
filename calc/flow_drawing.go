package calc

import (
	"math"

	"striderule/calc/drive"
)

// picture is a section through the wall: its lines as they should be, and the
// thickness that the caliper reads.
func (a *flowed) picture() *Part {
	p := &Part{ID: "wall", Title: "The wall, cut through", Needs: flowKeys}
	if a.sheet.By.Word != byWalls || !a.hasGauge {
		return nil
	}
	p.add(a.section())
	return p
}

func (a *flowed) section() Drawing {
	layer, pitch := a.sheet.Layer.Number, a.sheet.spacing()
	wanted, mean, n := a.gauge.at(1), a.raw.Length, int(a.sheet.walls())
	width := pitch + float64(drive.Rounding(a.sheet.Layer.Value()))
	const most, top = 196, 40 // the wall's share of the paper
	per := max(max(wanted, mean)/most, layer/44)
	middle := wanted / 2
	s := sketchOf("wall", "Section through the wall, to scale", middle-per*130, middle+per*170, 0, 0,
		func(v float64) string { return Figure{Value: v, Unit: "mm", Digits: 4}.String() }) // as set
	high := layer / per
	layers := int(min(3, 96/high)) // two at least: no layer is higher than 44
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
	if n > 1 { // above, so that none of its lines goes through the other's words
		s.dimOf(Measure, width/2, width/2+pitch, y, foot, "spacing", pitch)
		s.tell(", side by side every ", pitch)
		y += 22
	}
	s.dim(Measure, 0, width, y, foot, "one line")
	s.show = func(v float64) string { return a.reading("", "", v).String() }
	s.dim(Measure, 0, wanted, 22, top, "should be")
	s.tell(". It should be ", wanted)
	s.Alt += " thick"
	if mean > 0 {
		y += 24
		jaw(s, middle-mean/2, -7*per, foot+8)
		jaw(s, middle+mean/2, 7*per, foot+8)
		s.dimOf(Mark, middle-mean/2, middle+mean/2, y, y-10, "caliper reads", mean)
		s.tell("; the caliper reads ", mean)
	}
	return s.done(y+12, ".")
}

// jaw is one of a caliper's, down to its beam.
func jaw(s *sketch, x, out, foot float64) { s.line(Mark, x, 34, x, foot, x+out, foot) }

// caliperPlaces shows a printed box from above, and where to measure it.
func caliperPlaces() Drawing {
	s := schematic("places", "Where to put the caliper")
	const left, top, size, wall = 14, 22, 120, 8
	s.plate(Body, left, top, left+size, top+size)
	s.plate(Body, left+wall, top+wall, left+size-wall, top+size-wall)
	right, half := float64(left+size), float64(top+size/2)
	for _, side := range []struct{ x, out float64 }{{right - wall, -16}, {right, 16}} {
		s.line(Mark, side.x, half-9, side.x, half+9)
		s.line(Mark, side.x, half, side.x+side.out, half)
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
