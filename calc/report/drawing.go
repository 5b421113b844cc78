package report

import "math"

// A Drawing is a picture of things as data: what is where, how long it is and
// what is written beside it. X counts in the unit of what is drawn, from From
// to To; y, downwards from 0 to High, and radii count paper, which is
// PaperWidth across. A view makes lines of it; the alternative text says the
// same.
type Drawing struct {
	ID       string
	Title    string
	Alt      string // what the drawing shows, with every figure in it
	From, To float64
	High     float64
	Shapes   []Shape
}

// PaperWidth is how wide a drawing is in the unit of its heights. A line of text
// takes 14 of them.
const PaperWidth = 300

// A Shape is a piece of a drawing; the types below are all there are.
type Shape interface{ shape() }

// A Role is what a shape stands for; a view tells roles apart by line and colour.
type Role int

const (
	// Body is a thing as it is.
	Body Role = iota
	// Motion is what moves, and how far.
	Motion
	// Measure is a length that is read or set.
	Measure
	// Mark is where to look.
	Mark
	// Ghost is where something should be, or would go.
	Ghost
)

// An Anchor is which end of a text stands at its point.
type Anchor int

// The ends of a text.
const (
	Start Anchor = iota
	Middle
	End
)

type (
	// An XY is a point: x in the drawing's unit, y on paper.
	XY struct{ X, Y float64 }
	// A Stroke is a line through points, with an arrow's head at its end if
	// Head is set.
	Stroke struct {
		Role   Role
		Points []XY
		Head   bool
	}
	// A Disc is a circle, or a wheel where it has teeth.
	Disc struct {
		Role  Role
		At    XY
		R     float64 // on paper
		Teeth int
	}
	// A Plate is a rectangle between two corners, with round flanks if Round is
	// set.
	Plate struct {
		Role  Role
		A, B  XY
		Round bool
	}
	// A Dim is a dimension line from A to B with its figure; one of Motion or
	// Ghost goes from A to B. Base is the height from which its ends are taken.
	Dim struct {
		Role Role
		A, B XY
		Base float64
		Text string
	}
	// Words stand at a point, which is on their base line.
	Words struct {
		At     XY
		Anchor Anchor
		Text   string
	}
)

func (Stroke) shape() {}
func (Disc) shape()   {}
func (Plate) shape()  {}
func (Dim) shape()    {}
func (Words) shape()  {}

func (Drawing) block() {}

// A Sketch is a drawing in the making.
type Sketch struct {
	Drawing
	Per  float64                // the drawing's unit for one of paper
	Show func(v float64) string // nil for words alone, where nothing is known yet
}

// SketchOf lays out what lies between two values, with margins on paper.
func SketchOf(id, title string, from, to, left, right float64, show func(v float64) string) *Sketch {
	per := (to - from) / (PaperWidth - left - right)
	return &Sketch{Drawing{ID: id, Title: title, From: from - left*per, To: to + right*per}, per, show}
}

// Schematic is a sketch whose x counts paper.
func Schematic(id, title string) *Sketch { return SketchOf(id, title, 0, PaperWidth, 0, 0, nil) }

// Add adds a shape.
func (s *Sketch) Add(shape Shape) { s.Shapes = append(s.Shapes, shape) }

func (s *Sketch) stroke(r Role, head bool, xy []float64) {
	stroke := Stroke{Role: r, Head: head}
	for i := 0; i+1 < len(xy); i += 2 {
		stroke.Points = append(stroke.Points, XY{xy[i], xy[i+1]})
	}
	s.Add(stroke)
}

// Line is a stroke through points, x and y in turn.
func (s *Sketch) Line(r Role, xy ...float64) { s.stroke(r, false, xy) }

// Arrow is a stroke with a head at its end.
func (s *Sketch) Arrow(r Role, xy ...float64) { s.stroke(r, true, xy) }

// Upright is a line at x.
func (s *Sketch) Upright(r Role, x, y1, y2 float64) { s.Line(r, x, y1, x, y2) }

// Plate is a rectangle between two corners.
func (s *Sketch) Plate(r Role, x1, y1, x2, y2 float64) {
	s.Add(Plate{r, XY{x1, y1}, XY{x2, y2}, false})
}

// Disc is a circle; with teeth a wheel.
func (s *Sketch) Disc(x, y, radius float64, teeth int) { s.Add(Disc{Body, XY{x, y}, radius, teeth}) }

// Dim is a dimension line at a height, taken from base, with its length.
func (s *Sketch) Dim(r Role, x1, x2, y, base float64, word string) {
	s.DimOf(r, x1, x2, y, base, word, math.Abs(x2-x1))
}

// DimOf is dim with the value that the ends were worked out from: their difference
// may round to another figure.
func (s *Sketch) DimOf(r Role, x1, x2, y, base float64, word string, value float64) {
	if s.Show != nil {
		word += " " + s.Show(value)
	}
	s.Add(Dim{r, XY{x1, y}, XY{x2, y}, base, word})
}

// Words stand at a point.
func (s *Sketch) Words(x, y float64, at Anchor, text string) { s.Add(Words{XY{x, y}, at, text}) }

// Done closes the sheet below; alt says what it shows, where Alt does not yet.
func (s *Sketch) Done(high float64, alt string) Drawing {
	s.High = high
	s.Alt += alt
	return s.Drawing
}
