package trial

import "striderule/calc/report"

// A FeedTest is what a drawing of a mark test shows.
type FeedTest struct {
	ID, Title  string
	Words      *TestWords
	Mark, Rest float64                // mm from the extruder's inlet
	Show       func(v float64) string // nil for words alone, before anything is known
}

// NominalTest shows how a mark test goes before anything is entered.
func NominalTest() report.Drawing {
	return FeedTest{ID: "how", Title: nominalTitle, Words: &nominalTest, Mark: 105, Rest: 25}.Draw()
}

// Heights on the paper of a mark test.
const (
	feedColumn = 50 // of the extruder, at the left
	feedBefore = 46 // the filament before
	feedAfter  = 126
)

// Draw draws the test to scale.
func (t FeedTest) Draw() report.Drawing {
	s := report.SketchOf(t.ID, t.Title, 0, t.Mark, feedColumn, 12, t.Show)
	extruder(s, feedBefore, beforeWord)
	extruder(s, feedAfter, afterWord)
	s.Upright(report.Measure, t.Mark, feedBefore, 78)
	s.Upright(report.Measure, t.Rest, 73, feedAfter)
	s.Upright(report.Mark, t.Mark, feedBefore-9, feedBefore+9)
	s.Dim(report.Measure, 0, t.Mark, 20, feedBefore, markWord)
	s.Dim(report.Motion, t.Mark, t.Rest, 74, 74, t.Words.Way)
	s.Upright(report.Mark, t.Rest, feedAfter-9, feedAfter+9)
	s.Dim(report.Measure, 0, t.Rest, 158, feedAfter, t.Words.Left)
	alt := string(t.Words.Says)
	if t.Show != nil {
		alt = t.Words.Says.Fill("mark", t.Show(t.Mark), "rest", t.Show(t.Rest), "fed", t.Show(t.Mark-t.Rest))
	}
	return s.Done(178, alt)
}

// extruder is filament on its way through one, which stands left of x = 0.
func extruder(s *report.Sketch, y float64, when string) {
	s.Plate(report.Body, s.From+4*s.Per, y-3, s.To-4*s.Per, y+3)
	driveGears(s, y)
	s.Words(-25*s.Per, y+38, report.Middle, when)
}

// driveGears take filament in between them.
func driveGears(s *report.Sketch, y float64) {
	x := -16 * s.Per
	s.Disc(x, y-14, 11, 24)
	s.Disc(x, y+14, 11, 0)
	s.Disc(x, y-14, 2.5, 0)
	s.Disc(x, y+14, 2.5, 0)
}
