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
	s.drive(feedBefore, "before")
	s.drive(feedAfter, "after")
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
	s.rollers(feedBefore)
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

// drive is filament on its way through a drive, which stands left of x = 0.
func (s *sketch) drive(y float64, when string) {
	s.plate(Body, s.From+4*s.per, y-3, s.To-4*s.per, y+3)
	s.rollers(y)
	s.words(-25*s.per, y+38, Middle, when)
}

// rollers take filament in between them.
func (s *sketch) rollers(y float64) {
	x := -16 * s.per
	s.disc(x, y-14, 11, 24)
	s.disc(x, y+14, 11, 0)
	s.disc(x, y-14, 2.5, 0)
	s.disc(x, y+14, 2.5, 0)
}

// picture draws the test as it was read, or as far as it is set.
func (a *measured) picture() *Part {
	s := a.sheet
	t := feedTest{id: "test", title: "The test, to scale", left: "left", way: "fed", asked: a.asked,
		show: func(v float64) string { return a.length("", "", v).String() }}
	runs := counted(a.runs)
	n := float64(len(runs))
	for _, r := range runs {
		t.mark, t.rest, t.fed = t.mark+r.mark/n, t.rest+r.rest/n, t.fed+r.moved/n
	}
	if n > 1 {
		t.title += ", mean of " + itoa(len(runs)) + " runs"
	}
	if mark := s.Mark.Number; n == 0 && s.Read.Word != "fed" && s.Marks.Word != "each" && mark > a.asked {
		t.mark, t.rest, t.fed, t.asked = mark, mark-a.asked, a.asked, 0
		t.title, t.left, t.way = "The test to come, to scale", "to be left", "to feed"
	}
	if !s.isFeed() || t.fed <= 0 {
		return nil
	}
	return &Part{ID: "picture", Title: "The test as a drawing", Needs: a.readKeys, Blocks: []Block{t.draw()}}
}
