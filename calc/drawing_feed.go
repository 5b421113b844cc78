package calc

// A feedTest is what a drawing of a feed test shows; what is 0 is not known.
type feedTest struct {
	id, title  string
	mark, rest float64 // mm from the drive's inlet; without a mark the length is read itself
	fed        float64 // that length
	asked      float64
	left, way  string                 // words for what is left, and for what is fed
	show       func(v float64) string // nil for words alone, before anything is known
}

// nominalTest shows how a mark test goes before anything is entered.
func nominalTest() Drawing {
	return feedTest{id: "how", title: "How the mark moves", mark: 105, rest: 25,
		left: "what is left", way: "what was fed"}.draw()
}

// Heights on the paper of a mark test.
const (
	feedColumn = 50 // of the drive, at the left
	feedBefore = 46 // the filament before
	feedAfter  = 126
)

func (t feedTest) draw() Drawing {
	if t.mark == 0 {
		return t.piece()
	}
	s := sketchOf(t.id, t.title, 0, t.mark, feedColumn, 12, t.show)
	feeder(s, feedBefore, "before")
	feeder(s, feedAfter, "after")
	s.upright(Measure, t.mark, feedBefore, 78)
	s.upright(Measure, t.rest, 73, feedAfter)
	s.upright(Mark, t.mark, feedBefore-9, feedBefore+9)
	s.dim(Measure, 0, t.mark, 20, feedBefore, "mark")
	s.dim(Motion, t.mark, t.rest, 74, 74, t.way)
	if should := t.mark - t.asked; t.asked > 0 && should >= 0 {
		s.upright(Measure, t.mark, 78, 102)
		s.upright(Measure, should, 97, feedAfter)
		s.upright(Ghost, should, feedAfter-12, feedAfter+12)
		s.dim(Ghost, t.mark, should, 98, 98, "commanded")
	}
	s.upright(Mark, t.rest, feedAfter-9, feedAfter+9)
	s.dim(Measure, 0, t.rest, 158, feedAfter, t.left)
	if t.show == nil {
		return s.done(178, "A mark is made on the filament, farther from the drive's inlet than the length to be fed. After the feed it stands nearer. "+
			"What was fed is the distance of the mark before, less what is left between inlet and mark.")
	}
	s.tell("The mark stands ", t.mark)
	s.tell(" from the drive's inlet before, and ", t.rest)
	// What the line says, not the mean of what was fed: they may part in the last digit.
	s.tell(" from it after: "+t.way+" ", t.mark-t.rest)
	if t.asked > 0 {
		s.tell(", commanded ", t.asked)
	}
	return s.done(178, ".")
}

// piece is a test whose length is read itself.
func (t feedTest) piece() Drawing {
	s := sketchOf(t.id, t.title, 0, max(t.fed, t.asked), feedColumn, 12, t.show)
	s.plate(Body, s.From+4*s.per, feedBefore-3, t.fed, feedBefore+3)
	rollers(s, feedBefore)
	s.upright(Mark, t.fed, feedBefore-9, feedBefore+9)
	s.dim(Motion, 0, t.fed, 86, feedBefore, t.way)
	s.tell("The drive "+t.way+" ", t.fed)
	high := 98.0
	if t.asked > 0 {
		high = 122
		s.upright(Ghost, t.asked, feedBefore-12, feedBefore+12)
		s.dim(Ghost, 0, t.asked, 110, feedBefore, "commanded")
		s.tell(", commanded ", t.asked)
	}
	return s.done(high, ".")
}

// feeder is filament on its way through a drive, which stands left of x = 0.
func feeder(s *sketch, y float64, when string) {
	s.plate(Body, s.From+4*s.per, y-3, s.To-4*s.per, y+3)
	rollers(s, y)
	s.words(-25*s.per, y+38, Middle, when)
}

// rollers take filament in between them.
func rollers(s *sketch, y float64) {
	x := -16 * s.per
	s.disc(x, y-14, 11, 24)
	s.disc(x, y+14, 11, 0)
	s.disc(x, y-14, 2.5, 0)
	s.disc(x, y+14, 2.5, 0)
}
