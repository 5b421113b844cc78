package flow

import (
	"math"

	"striderule/calc/report"
)

// picture is a section through the wall: its lines as they should be, and the
// thickness that the caliper reads.
func (a *solution) picture() *report.Part {
	p := &report.Part{ID: "wall", Title: sectionTitle, Needs: flowKeys}
	if a.sheet.By.Word != byWalls || !a.hasGauge || !a.sheet.Layer.Given {
		return nil
	}
	p.Add(a.section())
	return p
}

func (a *solution) section() report.Drawing {
	layer, pitch := a.sheet.Layer.Number, a.sheet.spacing()
	wanted, mean, n := a.gauge.at(1), a.raw.Length, int(a.sheet.walls())
	width := pitch + a.sheet.rounding()
	const most, top = 196, 40 // the wall's share of the paper
	per := max(max(wanted, mean)/most, layer/44)
	middle := wanted / 2
	set := func(v float64) string { return report.Figure{Value: v, Unit: "mm", Digits: 4}.String() }
	read := func(v float64) string { return a.reading("", "", v).String() }
	s := report.SketchOf("wall", sectionToScale, middle-per*130, middle+per*170, 0, 0, set)
	high := layer / per
	layers := int(min(3, 96/high)) // two at least: no layer is higher than 44
	foot := top + high*float64(layers)
	for l := range layers {
		for i := range n {
			x, y := float64(i)*pitch, top+high*float64(l)
			s.Add(report.Plate{Role: report.Body, A: report.XY{X: x, Y: y}, B: report.XY{X: x + width, Y: y + high}, Round: true})
		}
	}
	side := middle + 110*per
	s.Add(report.Dim{Role: report.Measure, A: report.XY{X: side, Y: foot - high}, B: report.XY{X: side, Y: foot}, Base: side, Text: set(layer)})
	s.Line(report.Measure, wanted, foot-high, side+4*per, foot-high)
	s.Line(report.Measure, wanted, foot, side+4*per, foot)
	y := foot + 26
	if n > 1 { // above, so that none of its lines goes through the other's words
		s.DimOf(report.Measure, width/2, width/2+pitch, y, foot, dimSpacing, pitch)
		y += 22
	}
	s.Dim(report.Measure, 0, width, y, foot, dimLine)
	s.Show = read
	s.Dim(report.Measure, 0, wanted, 22, top, dimTarget)
	shows := &sectionPicture
	if mean > 0 {
		shows = &sectionRead
		y += 24
		jaw(s, middle-mean/2, -7*per, foot+8)
		jaw(s, middle+mean/2, 7*per, foot+8)
		s.DimOf(report.Mark, middle-mean/2, middle+mean/2, y, y-10, dimRead, mean)
	}
	s.Alt = shows.Fill(n, "width", set(width), "layer", set(layer), "spacing", set(pitch), "target", read(wanted), "read", read(mean))
	return s.Done(y+12, "")
}

// jaw is one of a caliper's, down to its beam.
func jaw(s *report.Sketch, x, out, foot float64) { s.Line(report.Mark, x, 34, x, foot, x+out, foot) }

// caliperPlaces shows a printed box from above, and where to measure it.
func caliperPlaces() report.Drawing {
	s := report.Schematic("places", placesTitle)
	const left, top, size, wall = 14, 22, 120, 8
	s.Plate(report.Body, left, top, left+size, top+size)
	s.Plate(report.Body, left+wall, top+wall, left+size-wall, top+size-wall)
	right, half := float64(left+size), float64(top+size/2)
	for _, side := range []struct{ x, out float64 }{{right - wall, -16}, {right, 16}} {
		s.Line(report.Mark, side.x, half-9, side.x, half+9)
		s.Line(report.Mark, side.x, half, side.x+side.out, half)
	}
	s.Words(right+22, half-3, report.Start, placesHere)
	s.Words(right+22, half+13, report.Start, placesMiddle)
	for _, at := range []report.XY{{X: left, Y: top}, {X: right, Y: top}, {X: right, Y: top + size}, {X: left, Y: top + size}} {
		at.X, at.Y = at.X-math.Copysign(wall/2, at.X-80), at.Y-math.Copysign(wall/2, at.Y-80)
		s.Line(report.Measure, at.X-7, at.Y-7, at.X+7, at.Y+7)
		s.Line(report.Measure, at.X-7, at.Y+7, at.X+7, at.Y-7)
	}
	s.Words(right+22, top+6, report.Start, placesCorner)
	s.Disc(left+size/3, top+size-wall/2, 5, 0)
	s.Words(left, top+size+24, report.Start, placesSeam)
	return s.Done(top+size+34, placesPicture)
}
