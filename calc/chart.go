package calc

// A Chart is a picture as data: points with intervals, bands and lines over
// two axes. A view makes scales and ticks of it; the text says the same.
type Chart struct {
	ID     string
	Title  string
	Alt    string // what the picture shows, in words
	X, Y   Scale
	Points []Point
	Bands  []Band
	Lines  []Segment
}

// A Scale is an axis of a chart.
type Scale struct {
	Label string
	Unit  string
	Names []string // of whole numbers from 1, where x counts things
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
	// Aside readings were set aside.
	Aside
	// Suspect readings stand out.
	Suspect
	// Result points are worked out from the others.
	Result
	// Later readings were made after the change.
	Later
)

// A Band is a range of y: a tolerance, an interval.
type Band struct {
	Lo, Hi float64
	Label  string
}

// A Segment is a straight line.
type Segment struct {
	X1, Y1, X2, Y2 float64
	Label          string
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
