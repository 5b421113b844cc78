package report

import (
	"strings"

	"striderule/calc/lists"
)

// A Chart is a picture as data: points with intervals, bands and curves over
// two axes. A view makes scales and ticks of it; Alt and Values say the same.
type Chart struct {
	ID     string
	Title  string
	Says   string // what it shows, in a sentence
	X, Y   Scale
	Keys   [PointKinds]string // what the points of a kind are
	Points []Point
	Bands  []Band
	Curves []Curve
	Flat   bool // little height is enough
}

// A Scale is an axis of a chart.
type Scale struct {
	Label  string
	Unit   string
	Digits int      // significant ones of its values
	Names  []string // of whole numbers from 1, where x counts things
}

// Title is the label with its unit.
func (s Scale) Title() string {
	if s.Unit == "" {
		return s.Label
	}
	return axisTitle.Fill("label", s.Label, "unit", s.Unit)
}

// Figure is a value of the axis.
func (s Scale) Figure(v float64) *Figure { return &Figure{Value: v, Unit: s.Unit, Digits: s.Digits} }

// FromTo is a range of values, without their unit.
func (s Scale) FromTo(lo, hi float64) string {
	return fromTo.Fill("from", s.Figure(lo).Number(), "to", s.Figure(hi).Number())
}

// A Point is a reading, with its interval if Lo and Hi differ.
type Point struct {
	X, Y   float64
	Lo, Hi float64
	Label  string
	Kind   PointKind
}

// A PointKind tells readings apart by shape.
type PointKind int

const (
	// Counted readings are part of the answer.
	Counted PointKind = iota
	// Aside readings were left out.
	Aside
	// Suspect readings are outliers.
	Suspect
	// Result points are worked out from the others.
	Result
	// Later readings are another lot: check runs, or from the other side.
	Later

	PointKinds
)

// PointAt is a point without an interval.
func PointAt(x, y float64, label string, kind PointKind) Point {
	return Point{x, y, y, y, label, kind}
}

// A Band is a range of y: what is acceptable, an interval.
type Band struct {
	Lo, Hi float64
	Label  string
}

// A Curve is a line through places, straight from one to the next.
type Curve struct {
	Label string
	Kind  CurveKind
	At    []Place
}

// A Place is where a curve goes through.
type Place struct{ X, Y float64 }

// A CurveKind tells curves apart by stroke; those above Limit are of a family.
type CurveKind int

const (
	// Fitted curves are what the points are held against.
	Fitted CurveKind = iota
	// Limit curves are not to be crossed.
	Limit
)

// Level is a curve that keeps to one value.
func Level(label string, kind CurveKind, from, to, y float64) Curve {
	return Curve{label, kind, []Place{{from, y}, {to, y}}}
}

// Level reports whether the curve keeps to one value.
func (c *Curve) Level() bool { return len(c.At) == 2 && c.At[0].Y == c.At[1].Y }

// Reading is what a point says, in words.
func (c *Chart) Reading(p Point) string {
	value := c.Value(p, c.Y.Unit)
	if c.X.Names != nil { // the label says where
		return pointAt.Fill("label", p.Label, "value", value)
	}
	return pointAtPlace.Fill("label", p.Label, "at", c.X.Figure(p.X).String(), "value", value)
}

// Value is a point's value, in a unit, with its interval.
func (c *Chart) Value(p Point, unit string) string {
	f := c.Y.Figure(p.Y)
	f.Unit = unit
	if p.Lo < p.Hi {
		return withInterval.Fill("value", f.String(), "from", c.Y.Figure(p.Lo).Number(), "to", c.Y.Figure(p.Hi).Number())
	}
	return f.String()
}

// Alt says in words what the picture shows, figures included.
func (c *Chart) Alt() string {
	items := lists.Concat(c.pointsAlt(), c.linesAlt())
	if len(items) == 0 {
		return c.Says
	}
	return c.Says + " " + strings.Join(items, "; ") + "."
}

// pointsAlt says where the points lie, and each that was worked out.
func (c *Chart) pointsAlt() []string {
	var results []string
	n, lo, hi := 0, 0.0, 0.0
	for _, p := range c.Points {
		if p.Kind == Result {
			results = append(results, c.Reading(p))
			continue
		}
		if n == 0 {
			lo, hi = p.Y, p.Y
		}
		n, lo, hi = n+1, min(lo, p.Y), max(hi, p.Y)
	}
	if n == 0 {
		return results
	}
	from := c.Y.Figure(lo).Number()
	if n == 1 {
		from = c.Y.Figure(lo).String()
	}
	return append([]string{pointsWithin.Fill(n, "from", from, "to", c.Y.Figure(hi).String())}, results...)
}

// linesAlt says where bands and curves lie.
func (c *Chart) linesAlt() []string {
	var items []string
	add := func(label, value string) { items = append(items, pointAt.Fill("label", label, "value", value)) }
	for _, b := range c.Bands {
		add(b.Label, c.Y.FromTo(b.Lo, b.Hi))
	}
	for _, l := range c.Curves {
		if l.Level() {
			add(l.Label, c.Y.Figure(l.At[0].Y).Number())
			continue
		}
		add(l.Label, c.Y.FromTo(l.At[0].Y, l.At[len(l.At)-1].Y))
	}
	return items
}

// Values are the same in figures.
func (c *Chart) Values() Table {
	t := Table{Caption: valuesOf.Fill("chart", c.Title), Head: []string{"", c.X.Title(), c.Y.Title()}}
	row := func(label, x, y string) { t.Row(label, x, y) }
	if c.X.Names != nil { // labels say it already
		t.Head = []string{"", c.Y.Title()}
		row = func(label, _, y string) { t.Row(label, y) }
	}
	x := func(v float64) string { return c.X.Figure(v).Number() }
	for _, p := range c.Points {
		row(p.Label, x(p.X), c.Value(p, ""))
	}
	for _, b := range c.Bands {
		row(b.Label, "", c.Y.FromTo(b.Lo, b.Hi))
	}
	for _, l := range c.Curves {
		if l.Level() {
			row(l.Label, "", c.Y.Figure(l.At[0].Y).Number())
			continue
		}
		for _, at := range l.At {
			row(l.Label, x(at.X), c.Y.Figure(at.Y).Number())
		}
	}
	return t
}

// Bars are parts of a whole by size.
type Bars struct {
	Title string
	Unit  string
	All   []Bar
}

// A Bar is one of them.
type Bar struct {
	Label string
	Value Figure
}

func (Chart) block() {}
func (Bars) block()  {}
