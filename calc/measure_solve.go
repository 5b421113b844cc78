package calc

import (
	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/unit"
)

// rotary reports whether the axis turns by degrees.
func (s *measureSheet) rotary() bool { return s.Axis.Word == "rotary" }

// asked is the commanded length, or angle, with its field's key.
func (s *measureSheet) asked() (v float64, key string, ok bool) {
	if s.rotary() {
		return float64(s.AskedDeg.Value), "askeddeg", s.AskedDeg.Given
	}
	return float64(s.Asked.Value), "asked", s.Asked.Given
}

// A run is one row of readings that is complete.
type run struct {
	row        int
	mark, rest float64 // of a mark test
	moved      float64
}

// runs returns the complete rows, the keys they are read from, and what is
// wrong with those that cannot be.
func (s *measureSheet) runs() (runs []run, keys []string, problems []Problem) {
	switch {
	case s.rotary():
		return plainRuns(&s.Turned), []string{"turned"}, nil
	case s.Axis.Word == "travel":
		return plainRuns(&s.Moved), []string{"moved"}, nil
	case s.Read.Word == "fed":
		return plainRuns(&s.Fed), []string{"fed"}, nil
	}
	keys = []string{"mark", "rest"}
	if s.Marks.Word == "each" {
		keys = []string{"eachmark", "rest"}
	}
	for i, rest := range s.Rest.Rows {
		mark := s.Mark
		if s.Marks.Word == "each" {
			mark = s.Each.Rows[i]
		}
		if !mark.Given || !rest.Given {
			continue
		}
		if rest.Value >= mark.Value {
			problems = append(problems, Problem{"rest", i, quote(rest.String()) + " is not less than the mark, " + mark.String() +
				": nothing would have been fed. Write what is left between the drive and the mark; if you measured what went in, choose Fed length above."})
			continue
		}
		runs = append(runs, run{i, float64(mark.Value), float64(rest.Value), float64(mark.Value - rest.Value)})
	}
	return runs, keys, problems
}

func plainRuns[T unit.Quantity](list *List[unit.Input[T], *unit.Input[T]]) []run {
	var runs []run
	for i, in := range list.Rows {
		if in.Given {
			runs = append(runs, run{row: i, moved: float64(in.Value)})
		}
	}
	return runs
}

func (s *measureSheet) Solve() Report {
	a := measured{sheet: s, unit: "mm"}
	if s.rotary() {
		a.unit = "°"
	}
	var problems []Problem
	a.runs, a.runKeys, problems = s.runs()
	var askedKey, nowKey string
	a.asked, askedKey, a.hasAsked = s.asked()
	a.now, nowKey, a.hasNow = s.setting(s.rotary())
	a.readKeys = append([]string{"axis", askedKey, "read", "marks"}, a.runKeys...)
	a.allKeys = append([]string{"as", nowKey}, a.readKeys...)
	if len(a.runs) > 0 {
		series := make(measure.Series, len(a.runs))
		for i, r := range a.runs {
			series[i] = r.moved
		}
		a.mean = series.Mean()
		a.spread, a.hasSpread = series.Spread()
		if a.hasAsked {
			a.c = measure.Correction(a.asked, a.mean)
			a.err = measure.Error(a.asked, a.mean)
		}
	}
	problems = append(problems, s.templateProblems()...)
	return a.report(problems)
}

// measured is a measure sheet as it was solved, on its way into words.
type measured struct {
	sheet     *measureSheet
	unit      string // of lengths
	runs      []run
	asked     float64
	hasAsked  bool
	now       drive.Setting
	hasNow    bool
	mean      float64
	spread    float64
	hasSpread bool
	c, err    float64 // correction and error, once asked and runs are there

	runKeys, readKeys, allKeys []string
}

func (a *measured) hasError() bool  { return a.hasAsked && len(a.runs) > 0 }
func (a *measured) hasAnswer() bool { return a.hasError() && a.hasNow }

// report orders the parts: with an answer that comes first, without one what
// to do.
func (a *measured) report(problems []Problem) Report {
	r := Report{Problems: problems}
	if !a.hasAnswer() {
		r.Parts = a.parts(a.howTo, a.missing, a.readings)
		return r
	}
	r.Answer = a.answer()
	r.Parts = a.parts(a.howTo, a.readings, a.apply, a.next, a.conventions)
	return r
}

func (a *measured) parts(makers ...func() (Part, bool)) []Part {
	var parts []Part
	for _, m := range makers {
		if p, ok := m(); ok {
			parts = append(parts, p)
		}
	}
	return parts
}
