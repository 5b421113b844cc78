package measure

import "math"

// A Scale is how far an axis moves of what it is commanded, and what follows
// for its setting. ScaleOf makes one of a test, ScaleAndOffset of several
// lengths, SlipTest of several speeds.
type Scale struct {
	Ratio Estimate // measured / commanded
	Floor float64  // half-width of the 95 % interval that endless runs would leave
	Runs  int      // readings behind it
	Plan  int      // readings that were planned; 0: none were
	Test  Test     // how it was measured; Test.Runs is 0 if not by runs of one length
}

// ScaleOf returns the scale that a length moved shows. The commanded length is
// taken as exact. Source: JCGM 100, 5.1.2.
func ScaleOf(commanded float64, m Measured) (Scale, error) {
	if !finite(commanded) {
		return Scale{}, ErrNotFinite
	}
	if commanded <= 0 {
		return Scale{}, ErrLength
	}
	s := Scale{
		Ratio: m.Estimate().Scaled(1 / commanded), // u(L/Lcmd) = u(L)/Lcmd, JCGM 100, 5.1.2 (10)
		Floor: m.Test.floor(m.Budget) / commanded,
		Runs:  m.Repeats,
		Test:  m.Test,
	}
	s.Ratio.Value = m.Length / commanded
	s.Test.Commanded = commanded
	return s, s.Check()
}

// Check returns an error unless the scale is one that can be worked with.
func (s Scale) Check() error {
	if err := s.Ratio.Check(); err != nil {
		return err
	}
	switch {
	case s.Ratio.Value <= 0:
		return ErrNothingMoved
	case !finite(s.Floor), !finite(1 / s.Ratio.Value):
		return ErrNotFinite
	}
	return nil
}

// Vague reports whether the interval reaches over half of the value and more: then nothing can
// be said of the setting.
func (s Scale) Vague() bool { return s.Ratio.HalfWidth() > s.Ratio.Value/2 }

// TooCoarse reports whether the tool alone makes it vague, however many runs there were.
func (s Scale) TooCoarse() bool { return s.Floor > s.Ratio.Value/2 }

// Error returns the relative error, measured/commanded − 1: negative where too
// little moved.
func (s Scale) Error() Estimate {
	e := s.Ratio
	e.Value--
	return e
}

// Factor returns the correction c = commanded/measured, u(c) = c·u(L)/L.
func (s Scale) Factor() Estimate { return s.Steps(1) }

// Steps returns the new setting of a controller that stores steps per mm, or
// per degree: S' = S·c, with S exact. 0 of a scale that Check refuses.
func (s Scale) Steps(old float64) Estimate {
	r := s.Ratio
	value := ratio(old, r.Value)
	e := r.Scaled(ratio(value, r.Value)) // JCGM 100, 5.1.6 (12), power −1
	e.Value = value
	return e
}

// Travel returns the new setting of a controller that stores the travel per
// revolution: R' = R/c, with R exact.
func (s Scale) Travel(old float64) Estimate { return s.Ratio.Scaled(old) }

// Significant reports whether the correction differs from 1 by more than its
// expanded uncertainty.
func (s Scale) Significant() bool {
	c := s.Factor()
	return math.Abs(c.Value-1) > c.Expanded()
}
