package flow

import (
	"math"

	"striderule/calc/report"
)

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
