package calc

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
)

// rotary reports whether the axis turns by degrees.
func (s *measureSheet) rotary() bool { return s.Axis.Word == "rotary" }

func (s *measureSheet) isFeed() bool { return s.Axis.Word == "feed" }

// asked is the commanded length, or angle, with its field's key.
func (s *measureSheet) asked() (v float64, key string, ok bool) {
	if s.rotary() {
		return s.AskedDeg.Number, "askeddeg", s.AskedDeg.Given
	}
	return s.Asked.Number, "asked", s.Asked.Given
}

func (s *measureSheet) tolerance() float64 {
	switch {
	case s.Tol.Given:
		return s.Tol.Number / 100
	case s.isFeed():
		return feedTolerance
	}
	return travelTolerance
}

// instrument is what lengths are read with; for angles there is none to tell.
func (s *measureSheet) instrument() (measure.Instrument, bool) {
	if s.rotary() {
		return measure.Instrument{}, false
	}
	return s.tool.instrument()
}

// evidence is a round's runs as measure takes them.
func (s *measureSheet) evidence(runs []run) measure.Evidence {
	with, _ := s.instrument()
	if runs[0].mark == 0 {
		lengths := make(measure.Series, len(runs))
		for i, r := range runs {
			lengths[i] = r.moved
		}
		return measure.Repeated{Readings: lengths, With: with}
	}
	test := measure.MarkTest{With: with}
	for _, r := range runs {
		test.Remaining = append(test.Remaining, r.rest)
		if s.Marks.Word == "each" || len(test.Marks) == 0 {
			test.Marks = append(test.Marks, r.mark)
		}
	}
	if other, ok := s.markTool.instrument(); ok {
		test.With, test.RemainingWith = other, &with
	}
	return test
}

// measured is a measure sheet as it was solved, on its way into words.
type measured struct {
	sheet    *measureSheet
	unit     string // of lengths
	runs     []run
	asked    float64
	hasAsked bool
	now      drive.Setting
	hasNow   bool

	found    bool              // the readings show a scale
	alone    bool              // it is a single run
	k        float64           // the scale's coverage factor, which costs more than all the rest
	fits     [][]drive.Mistake // usual mistakes that make the ratio that was found
	failed   error
	test     measure.Measured // of one length, and of several speeds for what they share
	scale    measure.Scale
	judged   measure.Judgement
	slip     measure.SlipResult
	fit      measure.AxisFit
	reversal measure.Reversal

	later      []run // the second round
	laterKeys  []string
	then       measure.Scale
	judgedThen measure.Judgement
	hasThen    bool
	runKeys    []string // of the readings
	readKeys   []string // of all that the scale depends on
	allKeys    []string // and of the setting
	nowKey     string
	askedKey   string
}

func (s *measureSheet) Solve() Report {
	a := measured{sheet: s, unit: "mm"}
	if s.rotary() {
		a.unit = "°"
	}
	var problems, later []Problem
	a.runs, a.runKeys, problems = s.runs(&s.first, "")
	for i, r := range a.runs {
		a.runs[i].speed, a.runs[i].want = s.At.rows[r.row].Number, s.Want.rows[r.row].Number
	}
	a.later, a.laterKeys, later = s.runs(&s.second, again)
	a.asked, a.askedKey, a.hasAsked = s.asked()
	a.now, a.nowKey, a.hasNow = s.setting(s.rotary())
	a.readKeys = lists.Concat([]string{"axis", a.askedKey, "read", "marks", "trial", "trip", "at", "want", "target", "up", "down", "tol"},
		a.runKeys, s.tool.keys(""), s.markTool.keys("mark"))
	a.allKeys = append([]string{"as", a.nowKey}, a.readKeys...)
	a.failed = a.solve()
	if a.failed == nil {
		a.judged, a.failed = a.scale.Judge(s.tolerance())
		a.found = a.failed == nil
	}
	if a.found {
		a.k = a.scale.Ratio.K()
		a.fits = a.readRatio()
	}
	if s.method() == oneLength {
		a.alone = settlesNothing(&a.judged, counted(a.runs))
	}
	a.solveAgain()
	return a.report(lists.Concat(problems, later, s.templateProblems()))
}

func (a *measured) hasAnswer() bool { return a.found && a.hasNow }

// corrected is the new setting.
func (a *measured) corrected() drive.Setting { return a.now.Corrected(a.scale.Factor().Value) }

// report orders the parts: guides first, then with an answer the answer, without
// one what to do.
func (a *measured) report(problems []Problem) Report {
	r := Report{Problems: problems}
	if !a.hasAnswer() {
		r.add(a.howTo(), a.missing(), a.impossible(), a.picture(), a.readings())
		return r
	}
	r.Answer = a.answer()
	r.add(a.howTo(), a.again())
	switch a.judged.Verdict {
	case measure.ChangeIt, measure.EitherIsFine:
		r.add(a.ratio(), a.apply(), a.next(), a.touches())
	default:
		r.add(a.next(), a.ratio(), a.apply())
	}
	r.add(a.picture(), a.readings(), a.speeds(), a.lengths(), a.sides(), a.conventions(), a.why())
	return r
}
