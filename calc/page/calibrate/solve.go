package calibrate

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// rotary reports whether the axis turns by degrees.
func (s *entries) rotary() bool { return s.Axis.Word == "rotary" }

func (s *entries) isFeed() bool { return s.Axis.Word == "feed" }

// asked is the commanded length, or angle, with its field's key.
func (s *entries) asked() (v float64, key string, ok bool) {
	if s.rotary() {
		return s.AskedDeg.Number, "askeddeg", s.AskedDeg.Given
	}
	return s.Asked.Number, "asked", s.Asked.Given
}

func (s *entries) tolerance() float64 {
	switch {
	case s.Tol.Given:
		return s.Tol.Number / 100
	case s.isFeed():
		return trial.FeedTolerance
	}
	return trial.TravelTolerance
}

// instrument is what lengths are read with; angles are read without one.
func (s *entries) instrument() (measure.Instrument, bool) {
	if s.rotary() {
		return measure.Instrument{}, false
	}
	return s.tool.Instrument()
}

// evidence is a round's runs as measure takes them.
func (s *entries) evidence(runs []trial.Run) measure.Evidence {
	with, _ := s.instrument()
	if runs[0].Mark == 0 {
		lengths := make(measure.Series, len(runs))
		for i, r := range runs {
			lengths[i] = r.Moved
		}
		return measure.Repeated{Readings: lengths, With: with}
	}
	test := measure.MarkTest{With: with}
	for _, r := range runs {
		test.Remaining = append(test.Remaining, r.Rest)
		if s.Marks.Word == "each" || len(test.Marks) == 0 {
			test.Marks = append(test.Marks, r.Mark)
		}
	}
	if other, ok := s.markTool.Instrument(); ok {
		test.With, test.RemainingWith = other, &with
	}
	return test
}

// solution is a measure sheet as it was solved, on its way into words.
type solution struct {
	sheet    *entries
	unit     string // of lengths
	runs     []trial.Run
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

	later      []trial.Run // the second round
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

func (s *entries) Solve() report.Report {
	a := solution{sheet: s, unit: "mm"}
	if s.rotary() {
		a.unit = "°"
	}
	var problems, later []report.Problem
	a.runs, a.runKeys, problems = s.runs(&s.first, "")
	for i, r := range a.runs {
		a.runs[i].Speed, a.runs[i].Want = s.At.Rows[r.Row].Number, s.Want.Rows[r.Row].Number
	}
	a.later, a.laterKeys, later = s.runs(&s.second, trial.Again)
	a.asked, a.askedKey, a.hasAsked = s.asked()
	a.now, a.nowKey, a.hasNow = s.Setting(s.rotary())
	a.readKeys = lists.Concat([]string{"axis", a.askedKey, "read", "marks", "trial", "trip", "at", "want", "target", "up", "down", "tol"},
		a.runKeys, s.tool.Keys(""), s.markTool.Keys("mark"))
	a.allKeys = append([]string{"as", a.nowKey, "counted"}, a.readKeys...)
	a.failed = a.solve()
	if a.failed == nil {
		a.judged, a.failed = a.scale.Judge(s.tolerance())
		a.found = a.failed == nil
	}
	if a.found {
		a.k = a.scale.Ratio.K()
		a.fits = a.readRatio()
	}
	if s.Method() == trial.OneLength {
		a.alone = settlesNothing(&a.judged, trial.Counted(a.runs))
	}
	a.solveAgain()
	return a.report(lists.Concat(problems, later, s.templateProblems()))
}

func (a *solution) hasAnswer() bool { return a.found && a.hasNow }

// corrected is the new setting.
func (a *solution) corrected() drive.Setting { return a.now.Corrected(a.scale.Factor().Value) }

// report orders the parts: guides first, then with an answer the answer, without
// one what to do.
func (a *solution) report(problems []report.Problem) report.Report {
	r := report.Report{Problems: problems}
	if !a.hasAnswer() {
		r.Add(a.howTo(), a.missing(), a.impossible(), a.picture(), a.readings())
		return r
	}
	r.Answer = a.answer()
	r.Add(a.howTo(), a.again())
	switch a.judged.Verdict {
	case measure.ChangeIt, measure.EitherIsFine:
		r.Add(a.ratio(), a.apply(), a.next(), a.touches())
	default:
		r.Add(a.next(), a.ratio(), a.apply())
	}
	r.Add(a.picture(), a.readings(), a.speeds(), a.lengths(), a.sides(), a.conventions(), a.why())
	return r
}
