package trial

import (
	"striderule/calc/report"
	"striderule/calc/word"
)

// A FeedTest is what a drawing of a feed test shows; what is 0 is not known.
type FeedTest struct {
	ID, Title  string
	Words      *TestWords
	Mark, Rest float64 // mm from the extruder's inlet; without a mark the length is read itself
	Fed        float64 // that length
	Asked      float64
	Show       func(v float64) string // nil for words alone, before anything is known
}

// NominalTest shows how a mark test goes before anything is entered.
func NominalTest() report.Drawing {
	return FeedTest{ID: "how", Title: nominalTitle, Words: &TestWords{Left: nominalLeft, Way: nominalWay}, Mark: 105, Rest: 25}.Draw()
}

// Heights on the paper of a mark test.
const (
	feedColumn = 50 // of the extruder, at the left
	feedBefore = 46 // the filament before
	feedAfter  = 126
)

// Draw draws the test to scale.
func (t FeedTest) Draw() report.Drawing {
	if t.Mark == 0 {
		return t.piece()
	}
	s := report.SketchOf(t.ID, t.Title, 0, t.Mark, feedColumn, 12, t.Show)
	extruder(s, feedBefore, beforeWord)
	extruder(s, feedAfter, afterWord)
	s.Upright(report.Measure, t.Mark, feedBefore, 78)
	s.Upright(report.Measure, t.Rest, 73, feedAfter)
	s.Upright(report.Mark, t.Mark, feedBefore-9, feedBefore+9)
	s.Dim(report.Measure, 0, t.Mark, 20, feedBefore, markWord)
	s.Dim(report.Motion, t.Mark, t.Rest, 74, 74, t.Words.Way)
	if should := t.Mark - t.Asked; t.Asked > 0 && should >= 0 {
		s.Upright(report.Measure, t.Mark, 78, 102)
		s.Upright(report.Measure, should, 97, feedAfter)
		s.Upright(report.Ghost, should, feedAfter-12, feedAfter+12)
		s.Dim(report.Ghost, t.Mark, should, 98, 98, commandedWord)
	}
	s.Upright(report.Mark, t.Rest, feedAfter-9, feedAfter+9)
	s.Dim(report.Measure, 0, t.Rest, 158, feedAfter, t.Words.Left)
	if t.Show == nil {
		return s.Done(178, nominalAlt)
	}
	alt := t.Words.Mark
	if t.Asked > 0 {
		alt = t.Words.MarkAsked
	}
	return s.Done(178, t.inWords(alt))
}

// inWords says the test by one of its sentences.
func (t FeedTest) inWords(sentence word.Template) string {
	fed := t.Fed
	if t.Mark > 0 {
		fed = t.Mark - t.Rest // what the line says, not the mean of what was fed: they may part in the last digit
	}
	return sentence.Fill("mark", t.Show(t.Mark), "rest", t.Show(t.Rest), "fed", t.Show(fed), "asked", t.Show(t.Asked))
}

// piece is a test whose length is read itself.
func (t FeedTest) piece() report.Drawing {
	s := report.SketchOf(t.ID, t.Title, 0, max(t.Fed, t.Asked), feedColumn, 12, t.Show)
	s.Plate(report.Body, s.From+4*s.Per, feedBefore-3, t.Fed, feedBefore+3)
	driveGears(s, feedBefore)
	s.Upright(report.Mark, t.Fed, feedBefore-9, feedBefore+9)
	s.Dim(report.Motion, 0, t.Fed, 86, feedBefore, t.Words.Way)
	alt := t.Words.Length
	high := 98.0
	if t.Asked > 0 {
		high = 122
		s.Upright(report.Ghost, t.Asked, feedBefore-12, feedBefore+12)
		s.Dim(report.Ghost, 0, t.Asked, 110, feedBefore, commandedWord)
		alt = t.Words.LengthAsked
	}
	return s.Done(high, t.inWords(alt))
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
