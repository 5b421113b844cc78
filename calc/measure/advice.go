package measure

import (
	"math"

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
}

// farthest is how many times longer than now a move is ever proposed.
const farthest = 10

// fewRuns is up to where one more run comes first.
const fewRuns = 3

// Advise returns the means to know the error better, the best first: what
// brings U down most. With up to three runs that is one more run, as t falls
// fastest there and it costs least, unless it would bring less than a tenth.
// More runs are left out where they cannot help (NotWithThis), all but them of
// a scale that was not found by runs of one length, and whatever would make U
// wider without settling anything (a finer instrument can: it leaves more to
// the scatter, with its few degrees of freedom). The instruments are for
// lengths, not for the angles of a rotary axis.
func (s Scale) Advise(tolerance float64) ([]Remedy, error) {
	j, err := s.Judge(tolerance)
	if err != nil {
		return nil, err
	}
	var list []Remedy
	if j.Verdict != NotWithThis && s.Runs < maxRuns {
		list = append(list, s.moreRuns(tolerance))
	}
	if s.Test.Runs > 0 {
		for _, find := range []func(float64) (Remedy, bool){s.longerMove, s.betterInstrument} {
			if r, ok := find(tolerance); ok {
				list = append(list, r)
			}
		}
	}
	now, wide := s.verdictOf(tolerance), s.Ratio.Expanded()
	for i := range list {
		if now != MeasureMore { // nothing more is needed
			list[i].Enough, list[i].Verdict = s.Test, now
		}
	}
	var useful []Remedy
	for _, r := range list {
		settles := now == MeasureMore && r.Verdict != MeasureMore
		if r.Means == MoreRuns || r.U < wide || settles {
			useful = append(useful, r)
		}
	}
	rank := func(r Remedy) float64 {
		if r.Means == MoreRuns && s.Runs <= fewRuns && (s.Runs == 1 || r.U < 0.9*wide) {
			return -1
		}
		return r.U
	}
	lists.Sort(useful, func(x, y Remedy) bool { return rank(x) < rank(y) })
	return useful, nil
}

func (s Scale) moreRuns(tolerance float64) Remedy {
	next := s.withRuns(s.Runs + 1)
	r := Remedy{Means: MoreRuns, U: next.Ratio.Expanded(), Next: s.Test, Enough: s.Test}
	r.Next.Runs = next.Runs
	low, high := s.Runs, maxRuns // low does not settle it
	r.Verdict = s.withRuns(high).settled(tolerance)
	for r.Verdict != MeasureMore && high-low > 1 {
		if mid := (low + high) / 2; s.withRuns(mid).settled(tolerance) != MeasureMore {
			high = mid
		} else {
			low = mid
		}
	}
	r.Enough.Runs = high
	return r
}

// as is the scale that another test would show, of the same error.
func (s Scale) as(t Test) Scale {
	b := t.Budget()
	s.Ratio.U, s.Ratio.Dof = b.Combined()/t.Commanded, b.Dof()
	s.Floor, s.Runs, s.Test = b.Floor()/t.Commanded, t.Runs, t
	return s
}

// verdictOf is settled, but for a test that is hopeless.
func (s Scale) verdictOf(tolerance float64) Verdict {
	if s.Floor > tolerance/normal95 {
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
	r.U = s.as(r.Next).Ratio.Expanded()
	low, high := t.Commanded, most
	r.Verdict = s.as(t.longer(high)).verdictOf(tolerance)
	for r.Verdict != MeasureMore && high-low > 0.01*low {
		if mid := (low + high) / 2; s.as(t.longer(mid)).verdictOf(tolerance) != MeasureMore {
			high = mid
		} else {
			low = mid
		}
	}
	r.Enough = t.longer(min(math.Ceil(high/5)*5, most))
	return r, true
}

// finer is the test read with another instrument, instead of the coarser one
// of two. Its limits are known no better than those of the present one: if
// these are stated, the usual ones of its kind are taken.
func (t Test) finer(i Instrument) Test {
	was := &t.With
	if t.RemainingWith != nil {
		second := *t.RemainingWith
		t.RemainingWith = &second
		if second.Resolution > t.With.Resolution {
			was = t.RemainingWith
		}
	}
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
	for _, i := range Instruments {
		if i.Resolution >= coarsest || !i.reaches(max(t.Mark, t.Length)) {
			continue
		}
		with := t.finer(i)
		then := s.as(with)
		if !found {
			r.Next, r.U, found = with, then.Ratio.Expanded(), true
		}
		r.Enough = with
		if r.Verdict = then.verdictOf(tolerance); r.Verdict != MeasureMore {
			break
		}
	}
	return r, found
}
