package flow

import (
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// guide is what is measured, with the letters of its fields: a wall in section, to scale once its
// lines are given, or the filament. A weight is not drawn.
func (s *entries) guide() *report.Drawing {
	g := report.Schematic("guide", "")
	tag := func(letter, key string) *report.Tag { return &report.Tag{Of: key, Letter: letter} }
	text := func(e *unit.Entry) string {
		if e.Given {
			return e.String()
		}
		return ""
	}
	var d report.Drawing
	switch s.By.Word {
	case byMass:
		return nil
	case byDiameter:
		g.Disc(150, 50, 26, 0)
		g.DimFor(tag("A", "set"), report.Ghost, 124, 176, 16, 50, text(s.Set.Entry()))
		g.DimFor(tag("B", "across"), report.Mark, 124, 176, 92, 50, "")
		d = g.Done(report.GuideHigh, guideDiameter.Fill("set", orNot(text(s.Set.Entry()))))
	default:
		s.drawWall(g, text, tag)
		d = g.Done(report.GuideHigh, guideWall.Fill("width", orNot(text(s.Width.Entry())), "layer", orNot(text(s.Layer.Entry())), "walls", orNot(text(s.Walls.Entry())), "read", orNot(s.firstRead())))
	}
	return &d
}

// drawWall draws two layers of a wall, and the caliper's jaws around them.
func (s *entries) drawWall(g *report.Sketch, text func(*unit.Entry) string, tag func(letter, key string) *report.Tag) {
	const left, top, most = 96, 30, 120
	lines, wide, high := 2.0, 52.0, 20.0
	if s.Walls.Given {
		lines = s.Walls.Number
	}
	if s.Width.Given && s.Layer.Given {
		wide = high * s.Width.Number / s.Layer.Number
	}
	if shrink := most / (wide * lines); shrink < 1 {
		wide, high = wide*shrink, high*shrink
	}
	const drawn = 8 // lines side by side: more are too narrow to be seen
	n := min(drawn, int(lines))
	line := wide
	wide *= lines / float64(n)
	for i := range 2 * n {
		x, y := left+float64(i/2)*wide, top+float64(i%2)*high
		g.Add(report.Plate{Role: report.Body, A: report.XY{X: x, Y: y}, B: report.XY{X: x + wide, Y: y + high}, Round: true})
	}
	right, foot := left+wide*float64(n), top+2*high
	g.Line(report.Mark, left, top-2, left, foot+6, left-14, foot+6)
	g.Line(report.Mark, right, top-2, right, foot+6, right+14, foot+6)
	g.DimFor(tag("A", "width"), report.Measure, left, left+line, 18, top, text(s.Width.Entry()))
	b := tag("B", "layer")
	g.Add(report.Dim{Role: report.Measure, A: report.XY{X: right + 24, Y: top + high}, B: report.XY{X: right + 24, Y: foot}, Base: right + 24, Text: text(s.Layer.Entry()), Tag: *b})
	g.WordsFor(tag("C", "walls"), 46, top+high+4, text(s.Walls.Entry()))
	g.DimFor(tag("D", "thick"), report.Mark, left, right, foot+22, foot+6, s.firstRead())
}

// firstRead is the first thickness that was read, empty if there is none.
func (s *entries) firstRead() string {
	if rows := s.Thick.Rows; len(rows) > 0 && rows[0].Given {
		return rows[0].String()
	}
	return ""
}

// orNot is a text, or that there is none.
func orNot(text string) string {
	if text == "" {
		return notGiven
	}
	return text
}

// care is the caution of whoever reads no other.
func (s *entries) care() string {
	if s.By.Word == byDiameter {
		return ""
	}
	return trial.CareHot
}

// assumed is what blank entries count as.
func (s *entries) assumed() []report.Assumed {
	percent := report.Figure{Value: 100 * s.tolerance(), Unit: "%", Digits: 3}
	return []report.Assumed{{Key: "tol", Says: axis.GoodEnough.Fill("error", percent.String())}}
}
