package trial

import "striderule/calc/report"

// A FeedTest is what a drawing of a feed test shows; what is 0 is not known.
type FeedTest struct {
	ID, Title  string
	Mark, Rest float64 // mm from the drive's inlet; without a mark the length is read itself
	Fed        float64 // that length
	Asked      float64
	Left, Way  string                 // words for what is left, and for what is fed
	Show       func(v float64) string // nil for words alone, before anything is known
}

// NominalTest shows how a mark test goes before anything is entered.
func NominalTest() report.Drawing {
	return FeedTest{ID: "how", Title: "How the mark moves", Mark: 105, Rest: 25,
		Left: "what is left", Way: "what was fed"}.Draw()
}

// Heights on the paper of a mark test.
const (
	feedColumn = 50 // of the drive, at the left
	feedBefore = 46 // the filament before
	feedAfter  = 126
)

// Draw draws the test to scale.
func (t FeedTest) Draw() report.Drawing {
	if t.Mark == 0 {
		return t.piece()
	}
	s := report.SketchOf(t.ID, t.Title, 0, t.Mark, feedColumn, 12, t.Show)
	feeder(s, feedBefore, "before")
	feeder(s, feedAfter, "after")
	s.Upright(report.Measure, t.Mark, feedBefore, 78)
	s.Upright(report.Measure, t.Rest, 73, feedAfter)
	s.Upright(report.Mark, t.Mark, feedBefore-9, feedBefore+9)
	s.Dim(report.Measure, 0, t.Mark, 20, feedBefore, "mark")
	s.Dim(report.Motion, t.Mark, t.Rest, 74, 74, t.Way)
	if should := t.Mark - t.Asked; t.Asked > 0 && should >= 0 {
		s.Upright(report.Measure, t.Mark, 78, 102)
		s.Upright(report.Measure, should, 97, feedAfter)
		s.Upright(report.Ghost, should, feedAfter-12, feedAfter+12)
		s.Dim(report.Ghost, t.Mark, should, 98, 98, "commanded")
	}
	s.Upright(report.Mark, t.Rest, feedAfter-9, feedAfter+9)
	s.Dim(report.Measure, 0, t.Rest, 158, feedAfter, t.Left)
	if t.Show == nil {
		return s.Done(178, "A mark is made on the filament, farther from the drive's inlet than the length to be fed. After the feed it stands nearer. "+
			"What was fed is the distance of the mark before, less what is left between inlet and mark.")
	}
	s.Tell("The mark stands ", t.Mark)
	s.Tell(" from the drive's inlet before, and ", t.Rest)
	// What the line says, not the mean of what was fed: they may part in the last digit.
	s.Tell(" from it after: "+t.Way+" ", t.Mark-t.Rest)
	if t.Asked > 0 {
		s.Tell(", commanded ", t.Asked)
	}
	return s.Done(178, ".")
}

// piece is a test whose length is read itself.
func (t FeedTest) piece() report.Drawing {
	s := report.SketchOf(t.ID, t.Title, 0, max(t.Fed, t.Asked), feedColumn, 12, t.Show)
	s.Plate(report.Body, s.From+4*s.Per, feedBefore-3, t.Fed, feedBefore+3)
	rollers(s, feedBefore)
	s.Upright(report.Mark, t.Fed, feedBefore-9, feedBefore+9)
	s.Dim(report.Motion, 0, t.Fed, 86, feedBefore, t.Way)
	s.Tell("The drive "+t.Way+" ", t.Fed)
	high := 98.0
	if t.Asked > 0 {
		high = 122
		s.Upright(report.Ghost, t.Asked, feedBefore-12, feedBefore+12)
		s.Dim(report.Ghost, 0, t.Asked, 110, feedBefore, "commanded")
		s.Tell(", commanded ", t.Asked)
	}
	return s.Done(high, ".")
}

// feeder is filament on its way through a drive, which stands left of x = 0.
func feeder(s *report.Sketch, y float64, when string) {
	s.Plate(report.Body, s.From+4*s.Per, y-3, s.To-4*s.Per, y+3)
	rollers(s, y)
	s.Words(-25*s.Per, y+38, report.Middle, when)
}

// rollers take filament in between them.
func rollers(s *report.Sketch, y float64) {
	x := -16 * s.Per
	s.Disc(x, y-14, 11, 24)
	s.Disc(x, y+14, 11, 0)
	s.Disc(x, y-14, 2.5, 0)
	s.Disc(x, y+14, 2.5, 0)
}
