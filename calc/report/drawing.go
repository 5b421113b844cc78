package report

import (
	"math"
	"slices"
	"strings"
)

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

// GuideHigh is how high a guide is on paper: a drawing beside the fields that it shows.
const GuideHigh = 100

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
		Of     string // the key of the field that it shows; empty if none
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
		Tag
	}
	// Words stand at a point, which is on their base line.
	Words struct {
		At     XY
		Anchor Anchor
		Text   string
		Tag
	}
	// A Tag is the field that a shape shows: its key, and the letter that both have; of several
	// fields, their keys with blanks between them. It is empty where the drawing is no guide.
	Tag struct{ Of, Letter string }
)

// tags are those of a drawing's letters.
func (d *Drawing) tags() []Tag {
	var all []Tag
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case Dim:
			all = append(all, s.Tag)
		case Words:
			all = append(all, s.Tag)
		}
	}
	return all
}

// keys are those of the fields that a drawing shows.
func (d *Drawing) keys() []string {
	var all []string
	for _, tag := range d.tags() {
		all = append(all, strings.Fields(tag.Of)...)
	}
	return all
}

// LetterOf returns the letter of a field in a drawing, empty if it has none.
func (d *Drawing) LetterOf(key string) string {
	for _, tag := range d.tags() {
		if slices.Contains(strings.Fields(tag.Of), key) {
			return tag.Letter
		}
	}
	return ""
}

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
	if s.Show != nil {
		word += " " + s.Show(math.Abs(x2-x1))
	}
	s.Add(Dim{r, XY{x1, y}, XY{x2, y}, base, word, Tag{}})
}

// Words stand at a point.
func (s *Sketch) Words(x, y float64, at Anchor, text string) {
	s.Add(Words{XY{x, y}, at, text, Tag{}})
}

// DimFor is a dimension line with the letter of a field, and its length as soon as that is given.
func (s *Sketch) DimFor(tag *Tag, r Role, x1, x2, y, base float64, text string) {
	s.Add(Dim{r, XY{x1, y}, XY{x2, y}, base, text, *tag})
}

// WordsFor stand at the middle of a point, with the letter of a field.
func (s *Sketch) WordsFor(tag *Tag, x, y float64, text string) {
	s.Add(Words{XY{x, y}, Middle, text, *tag})
}

// ArrowFor is an arrow that shows what stands in a field.
func (s *Sketch) ArrowFor(of string, r Role, xy ...float64) {
	s.stroke(r, true, xy)
	arrow := s.Shapes[len(s.Shapes)-1].(Stroke)
	arrow.Of = of
	s.Shapes[len(s.Shapes)-1] = arrow
}

// A Piece is a simple part of a drawing that is always the same: a line through points, a plate
// between two corners, or a disc by its middle, radius and teeth.
type Piece struct {
	Kind PieceKind
	Role Role
	At   []float64
}

// A PieceKind is what a Piece is.
type PieceKind int

// The kinds of pieces.
const (
	LinePiece PieceKind = iota
	PlatePiece
	DiscPiece
)

// points are how many of a piece's numbers are those of points.
func (k PieceKind) points() int {
	if k == DiscPiece {
		return 2
	}
	return math.MaxInt
}

// Draw adds pieces, moved by x and y.
func (s *Sketch) Draw(x, y float64, pieces []Piece) {
	for i := range pieces {
		p := &pieces[i]
		at := append([]float64(nil), p.At...)
		for j := range at[:min(len(at), p.Kind.points())] {
			at[j] += [...]float64{x, y}[j%2]
		}
		switch p.Kind {
		case LinePiece:
			s.stroke(p.Role, false, at)
		case PlatePiece:
			s.Plate(p.Role, at[0], at[1], at[2], at[3])
		case DiscPiece:
			s.Disc(at[0], at[1], at[2], int(at[3]))
		}
	}
}

// Done closes the sheet below; alt says what it shows, where Alt does not yet.
func (s *Sketch) Done(high float64, alt string) Drawing {
	s.High = high
	s.Alt += alt
	return s.Drawing
}
