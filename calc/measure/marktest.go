package measure

// A MarkTest is a feed test: a mark is made at a distance from the drive, a
// length is commanded, and what remains to the mark is read. Each run is
// marked anew.
type MarkTest struct {
	Marks         Series // mm, one set distance for all runs, or one for each
	Remaining     Series // mm, one for each run
	With          Instrument
	RemainingWith *Instrument // nil: the same one instrument reads both
	Earlier       Spread      // mm, of the same machine
}

// Measure returns the mean of the runs' differences, mark less remaining.
func (t MarkTest) Measure() (Measured, error) {
	if err := t.check(); err != nil {
		return Measured{}, err
	}
	runs := make(Series, len(t.Remaining))
	for i, remaining := range t.Remaining {
		mark := t.Marks[0]
		if len(t.Marks) > 1 {
			mark = t.Marks[i]
		}
		switch {
		case mark <= 0 || remaining < 0:
			return Measured{}, ErrLength
		case remaining >= mark:
			return Measured{}, ErrNothingMoved
		}
		runs[i] = mark - remaining
	}
	return Test{Mark: t.Marks.longest(), With: t.With, RemainingWith: t.RemainingWith, Earlier: t.Earlier}.measured(runs), nil
}

func (t MarkTest) check() error {
	for _, s := range []Series{t.Marks, t.Remaining} {
		if err := s.Check(); err != nil {
			return err
		}
	}
	if len(t.Marks) != 1 && len(t.Marks) != len(t.Remaining) {
		return ErrUnpaired
	}
	if t.RemainingWith != nil {
		if err := t.RemainingWith.Check(); err != nil {
			return err
		}
	}
	return t.With.Check()
}
