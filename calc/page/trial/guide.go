package trial

import (
	"math"

	"striderule/calc/report"
	"striderule/calc/word"
)

// Guides are small pictures of a test beside its fields: each length has the letter of its field.

// A Length is one of a test as it stands in a field: until it is given, as the picture has it.
type Length struct {
	Key   string // of the field
	Value float64
	Given bool
}

// or is the length, or another one while it is not given.
func (l *Length) or(v float64) float64 {
	if l.Given {
		return l.Value
	}
	return v
}

// A Guide is what the guides of a test have in common.
type Guide struct {
	Show func(v float64) string
	Fed  float64 // what moved, on average; 0 while that is not known
}

// Heights on the paper of a guide, and where its test begins.
const (
	guideAbove  = 18
	guideMiddle = 42
	guideBelow  = 68
	guideFoot   = 90
	guideLeft   = 50
)

// Mark is the guide of a mark test.
func (g *Guide) Mark(asked, mark, rest *Length) *report.Drawing {
	const usualMark, usualRest = 105, 25
	at := mark.or(max(usualMark, asked.Value+usualRest))
	if !(at > 0) {
		return nil
	}
	left := rest.or(at - asked.or(at-usualRest))
	left = min(at, max(0, left))
	s := report.SketchOf("guide", "", 0, at, guideLeft, 12, nil)
	s.Plate(report.Body, s.From+4*s.Per, guideMiddle-3, s.To-4*s.Per, guideMiddle+3)
	driveGears(s, guideMiddle)
	s.Upright(report.Mark, at, guideMiddle-9, guideMiddle+9)
	s.Upright(report.Ghost, left, guideMiddle-9, guideMiddle+9)
	g.dim(s, report.Measure, at, guideAbove, guideMiddle, "B", mark)
	const wide = 150 // of paper, that both lengths take
	text := g.text(asked)
	switch long := at - left; {
	case g.Fed > 0 && asked.Given && long/s.Per > wide:
		text = fedOf.Fill("fed", g.Show(g.Fed), "asked", text)
	case math.Abs(long-asked.Value) > 0.001*long:
		text = "" // another length than the line's: the letter alone
	}
	s.DimFor(&report.Tag{Of: asked.Key, Letter: "A"}, report.Motion, at, left, guideBelow, guideBelow, text)
	g.dim(s, report.Measure, left, guideFoot, guideMiddle, "C", rest)
	return g.done(s, markGuide, asked, mark, rest)
}

// Move is the guide of a test whose way is read itself: of filament that is fed, or of a carriage.
func (g *Guide) Move(asked, read *Length, feed bool) *report.Drawing {
	const usual = 100
	a := math.Abs(asked.or(usual))
	m := math.Abs(read.or(a))
	far := max(a, m)
	if !(far > 0) {
		return nil
	}
	left, alt := 30.0, carriageGuide
	if feed {
		left, alt = guideLeft, pieceGuide
	}
	s := report.SketchOf("guide", "", 0, far, left, 30, nil)
	if feed {
		s.Plate(report.Body, s.From+4*s.Per, guideMiddle-3, max(m, 2*s.Per), guideMiddle+3)
		driveGears(s, guideMiddle)
		s.Upright(report.Mark, m, guideMiddle-9, guideMiddle+9)
	} else {
		rail(s)
		carriage(s, report.Ghost, 0)
		carriage(s, report.Body, m)
	}
	s.Upright(report.Ghost, a, guideMiddle-14, guideMiddle+10)
	g.dim(s, report.Ghost, a, guideAbove, guideMiddle-14, "A", asked)
	g.dim(s, report.Motion, m, guideBelow+10, guideMiddle+12, "B", read)
	return g.done(s, alt, asked, nil, read)
}

// Sides is the guide of a test that reaches positions from both sides.
func (g *Guide) Sides(target, up, down string) *report.Drawing {
	s := report.Schematic("guide", "")
	rail(s)
	s.Upright(report.Ghost, 150, guideMiddle-22, guideMiddle+10)
	carriage(s, report.Body, 150)
	for _, side := range []struct {
		from, to, at float64
		letter, key  string
	}{{40, 124, 64, "B", up}, {260, 176, 236, "C", down}} {
		s.ArrowFor(side.key, report.Motion, side.from, guideBelow+6, side.to, guideBelow+6)
		s.WordsFor(&report.Tag{Of: side.key, Letter: side.letter}, side.at, guideBelow-2, "")
	}
	s.WordsFor(&report.Tag{Of: target, Letter: "A"}, 150, 16, "")
	d := s.Done(report.GuideHigh, sidesGuide)
	return &d
}

// Disc is the guide of a test of a rotary axis.
func (g *Guide) Disc(asked, turned *Length) *report.Drawing {
	const usual, x, y = 90, 80, 50
	s := report.Schematic("guide", "")
	s.Disc(x, y, 30, 0)
	s.Disc(x, y, 3, 0)
	for _, turn := range []struct {
		of     *Length
		role   report.Role
		r      float64
		letter string
		high   float64
	}{{asked, report.Ghost, 36, "A", 36}, {turned, report.Motion, 42, "B", 74}} {
		a := math.Mod(math.Abs(turn.of.or(asked.or(usual))), 360)
		if a == 0 || a > 330 {
			a = 330
		}
		var points []float64
		for i := range 25 {
			sin, cos := math.Sincos((a*float64(i)/24 - 90) * math.Pi / 180)
			points = append(points, x+turn.r*cos, y+turn.r*sin)
		}
		s.ArrowFor(turn.of.Key, turn.role, points...)
		s.WordsFor(&report.Tag{Of: turn.of.Key, Letter: turn.letter}, 200, turn.high, g.text(turn.of))
	}
	return g.done(s, discGuide, asked, nil, turned)
}

// rail is what a carriage runs on.
func rail(s *report.Sketch) {
	s.Line(report.Body, s.From+2*s.Per, guideMiddle+10, s.To-2*s.Per, guideMiddle+10)
	s.Line(report.Body, s.From+2*s.Per, guideMiddle+13, s.To-2*s.Per, guideMiddle+13)
}

func carriage(s *report.Sketch, r report.Role, x float64) {
	s.Plate(r, x-16*s.Per, guideMiddle-6, x+16*s.Per, guideMiddle+9)
	s.Upright(report.Mark, x, guideMiddle-6, guideMiddle+9)
}

func (g *Guide) text(l *Length) string {
	if !l.Given {
		return ""
	}
	return g.Show(l.Value)
}

// dim is a dimension line with the letter of its field, and the length as soon as that is given.
func (g *Guide) dim(s *report.Sketch, r report.Role, to, y, base float64, letter string, l *Length) {
	s.DimFor(&report.Tag{Of: l.Key, Letter: letter}, r, 0, to, y, base, g.text(l))
}

// done closes a guide. Its alternative text names the letters, and each length that is given.
func (g *Guide) done(s *report.Sketch, alt word.Template, a, b, c *Length) *report.Drawing {
	var says [3]string
	for i, l := range [...]*Length{a, b, c} {
		says[i] = notGiven
		if l != nil && l.Given {
			says[i] = g.Show(l.Value)
		}
	}
	if g.Fed > 0 && b != nil { // of a mark test the reading is not what was fed
		says[0] = fedOf.Fill("fed", g.Show(g.Fed), "asked", says[0])
	}
	d := s.Done(report.GuideHigh, alt.Fill("asked", says[0], "mark", says[1], "read", says[2]))
	return &d
}
