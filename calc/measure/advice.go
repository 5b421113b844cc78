package measure

import (
	"math"
	"slices"

	"striderule/calc/lists"
)

// A Means is a way to know better.
type Means uint8

// The means.
const (
	MoreRuns Means = iota
	LongerMove
	BetterInstrument
)

// A Remedy is one of the means: what a step of it would bring, and how much of
// it would settle the matter. Both suppose that error and scatter stay as they
// were found.
type Remedy struct {
	Means   Means
	Next    Test    // one step: one run more, twice the length (or as far as the instrument reaches), the next finer instrument
	U       float64 // expanded uncertainty of the relative error after that step
	Enough  Test    // the least of it that leads to a verdict, if Verdict is one
	Verdict Verdict // LeaveIt or ChangeIt; MeasureMore if no amount of it settles it
	About   bool    // it settles it only if error and scatter come out as they were found
}

// Settles reports whether enough of it leads to a verdict.
func (r Remedy) Settles() bool { return r.Verdict == LeaveIt || r.Verdict == ChangeIt }

// farthest is how many times longer than now a move is ever proposed.
const farthest = 10

// fewRuns is up to where one more run comes first.
const fewRuns = 3

// worthIt is the share of U that a means leaves at most to be worth its while.
const worthIt = 0.9

// Advise returns the means to know the error better, the best first: what
// brings U down most. With up to three runs that is one more run, as t falls
// fastest there and it costs least, unless it would bring less than a tenth.
// More runs are left out where they cannot help (NotWithThis), all but them of
// a scale that was not found by runs of one length, whatever would make U wider
// without settling anything, and a finer instrument that would bring less than a
// tenth without settling it, where something else does more.
func (s Scale) Advise(tolerance float64) ([]Remedy, error) {
	if err := s.checkAt(tolerance); err != nil {
		return nil, err
	}
	var list []Remedy
	if s.Verdict(tolerance) != NotWithThis && s.Runs < maxRuns {
		list = append(list, s.moreRuns(tolerance))
	}
	if s.Test.Runs > 0 {
		for _, find := range []func(float64) (Remedy, bool){s.longerMove, s.betterInstrument} {
			if r, ok := find(tolerance); ok {
				list = append(list, r)
			}
		}
	}
	now, wide := s.verdictOf(tolerance), s.Ratio.HalfWidth()
	for i := range list {
		list[i].About = s.about() && list[i].Settles()
		if now != MeasureMore { // nothing more is needed
			list[i].Enough, list[i].Verdict = s.Test, now
		}
	}
	better := func(r Remedy) bool {
		return r.Means == MoreRuns && r.Verdict != MeasureMore || r.Means == LongerMove && r.U < worthIt*wide
	}
	var useful []Remedy
	for _, r := range list {
		settles := now == MeasureMore && r.Verdict != MeasureMore
		little := r.Means == BetterInstrument && r.U > worthIt*wide && slices.ContainsFunc(list, better)
		if r.Means == MoreRuns || r.U < wide && !little || settles {
			useful = append(useful, r)
		}
	}
	rank := func(r Remedy) float64 {
		if r.Means == MoreRuns && s.Runs <= fewRuns && (s.Runs == 1 || r.U < worthIt*wide) {
			return -1
		}
		return r.U
	}
	lists.Sort(useful, func(x, y Remedy) bool { return rank(x) < rank(y) })
	return useful, nil
}

func (s Scale) moreRuns(tolerance float64) Remedy {
	next := s.withRuns(s.Runs + 1)
	r := Remedy{Means: MoreRuns, U: next.Ratio.HalfWidth(), Next: s.Test, Enough: s.Test}
	r.Next.Runs = next.Runs
	settled := func(n int) Verdict {
		return s.promised(s.withRuns(n), math.Sqrt(float64(n)/float64(s.Runs)-1), tolerance)
	}
	low, high := s.Runs, maxRuns // low does not settle it
	r.Verdict = settled(high)
	for r.Verdict != MeasureMore && high-low > 1 {
		if mid := (low + high) / 2; settled(mid) != MeasureMore {
			high = mid
		} else {
			low = mid
		}
	}
	r.Enough.Runs = high
	return r
}

// promised is the verdict that eight of ten tests as then come to, of this error and scatter,
// which are not known better than these readings show them. The error found then may be off by
// so many of its standard uncertainties for each of normal80. Both at once is less likely than
// either, so that it holds for more than eight; the simulation in scripts/gauge/cover says how
// many. With up to four runs that cannot be promised: of their sheets, those would be promised
// most whose scatter is small by chance. Then it is the verdict if all stays as it was found.
func (s Scale) promised(then Scale, off, tolerance float64) Verdict {
	now, d := s.Ratio.parts(), then.Ratio.parts()
	switch {
	case then.Floor > tolerance, s.Runs == 1 && math.IsInf(now.Dof, 1):
		return MeasureMore
	case s.about():
		return then.settled(tolerance)
	case now.Scatter > 0:
		d.Scatter *= trueIn8of10(now.Dof)
	}
	then.Ratio = d.estimate(then.Ratio.Value)
	return then.settledWithin(tolerance, normal80*off*d.Scatter)
}

// about reports whether too little is known of the scatter to promise anything.
func (s Scale) about() bool {
	d := s.Ratio.parts()
	return d.Dof < enoughDof
}

// promisedBy is promised of another test, with readings of its own.
func (s Scale) promisedBy(t Test, tolerance float64) Verdict {
	then := s.as(t)
	off, now := 1.0, s.Ratio.parts()
	if d := then.Ratio.parts(); d.Scatter > 0 {
		off = math.Hypot(1, now.Scatter/d.Scatter)
	}
	return s.promised(then, off, tolerance)
}

// as is the scale that another test would show, of the same error.
func (s Scale) as(t Test) Scale {
	b := t.Budget()
	s.Ratio = b.Scaled(1 / t.Commanded).Estimate(s.Ratio.Value)
	s.Floor, s.Runs, s.Test = t.floor(b)/t.Commanded, t.Runs, t
	return s
}

// verdictOf is settled, but for a test that is hopeless.
func (s Scale) verdictOf(tolerance float64) Verdict {
	if s.Floor > tolerance {
		return MeasureMore
	}
	return s.settled(tolerance)
}

// longer is the test with a longer move. The mark moves away by as much.
func (t Test) longer(commanded float64) Test {
	length := t.Length * commanded / t.Commanded
	if t.Mark > 0 {
		t.Mark += length - t.Length
	}
	t.Commanded, t.Length = commanded, length
	return t
}

// reach is the longest commanded length that the instrument can read.
func (t Test) reach() float64 {
	most := farthest * t.Commanded
	if t.With.Reach > 0 {
		reading := max(t.Mark, t.Length)
		most = min(most, t.Commanded*(1+(t.With.Reach-reading)/t.Length))
	}
	return math.Floor(most/5) * 5 // a round figure
}

func (s Scale) longerMove(tolerance float64) (Remedy, bool) {
	t := s.Test
	most := t.reach()
	if most < 1.1*t.Commanded {
		return Remedy{}, false
	}
	r := Remedy{Means: LongerMove, Next: t.longer(min(2*t.Commanded, most))}
	r.U = s.as(r.Next).Ratio.HalfWidth()
	low, high := t.Commanded, most
	r.Verdict = s.promisedBy(t.longer(high), tolerance)
	for r.Verdict != MeasureMore && high-low > 5 {
		if mid := (low + high) / 2; s.promisedBy(t.longer(mid), tolerance) != MeasureMore {
			high = mid
		} else {
			low = mid
		}
	}
	r.Enough = t.longer(min(math.Ceil(high/5)*5, most))
	return r, true
}

// finer is the test read with another instrument, instead of the coarser one
// of two. Its limits are the usual ones of its kind, or those of the present
// one where they are less: it is looked after no worse.
func (t Test) finer(i Instrument) Test {
	was := &t.With
	if t.RemainingWith != nil {
		second := *t.RemainingWith
		t.RemainingWith = &second
		if second.Resolution > t.With.Resolution {
			was = t.RemainingWith
		}
	}
	i.Accuracy = i.Usual
	if stated := was.limits(Accuracy, Certificate).Combined() * math.Sqrt(3); stated > 0 {
		i.Accuracy = min(i.Usual, stated)
	}
	*was = i
	return t
}

func (s Scale) betterInstrument(tolerance float64) (Remedy, bool) {
	t := s.Test
	coarsest := t.With.Resolution
	if t.RemainingWith != nil {
		coarsest = max(coarsest, t.RemainingWith.Resolution)
	}
	r, found := Remedy{Means: BetterInstrument}, false
	tools := t.Tools
	if tools == nil {
		tools = Instruments
	}
	for _, i := range tools {
		if i.Resolution >= coarsest || !i.reaches(max(t.Mark, t.Length)) {
			continue
		}
		with := t.finer(i)
		then := s.as(with)
		if !found {
			r.Next, r.U, found = with, then.Ratio.HalfWidth(), true
		}
		r.Enough = with
		if r.Verdict = s.promisedBy(with, tolerance); r.Verdict != MeasureMore {
			break
		}
	}
	return r, found
}
