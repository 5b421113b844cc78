package calibrate

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
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

// acceptable is the error that is good enough.
func (s *entries) acceptable() float64 {
	switch {
	case s.Tol.Given:
		return s.Tol.Number / 100
	case s.isFeed():
		return trial.FeedTolerance
	}
	return trial.TravelTolerance
}

// measuringTool asks what lengths, or angles, are read with.
func (s *entries) measuringTool() *axis.ToolEntry {
	if s.rotary() {
		return &s.angleTool
	}
	return &s.tool
}

// measuredWith is what was chosen there.
func (s *entries) measuredWith() (measure.Instrument, bool) { return s.measuringTool().Instrument() }

// toolKeys are those of what lengths, or angles, are read with.
func (s *entries) toolKeys() []string {
	if s.rotary() {
		return s.angleTool.Keys("")
	}
	return append(s.tool.Keys(""), s.markTool.Keys("mark")...)
}

// evidence is a round's runs as measure takes them, with the scatter known from before.
func (s *entries) evidence(runs []trial.Run, earlier measure.Spread) measure.Evidence {
	with, _ := s.measuredWith()
	if runs[0].Mark == 0 {
		return measure.Repeated{Readings: trial.Series(runs), With: with, Earlier: earlier}
	}
	test := measure.MarkTest{With: with, Earlier: earlier}
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

	found    bool               // the readings show a ratio
	interim  bool               // the setting in use is worse by far than the new one is uncertain
	alone    bool               // by a single run, which shows no scatter
	wide     float64            // half-width of the ratio's interval, which costs more than all the rest
	read     drive.RatioReading // common mistakes that make the ratio that was found
	misread  []trial.Misreading // other ways to take readings that are far off
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
	stillThen  error    // why the second round shows no move
	aloneThen  bool     // as alone, of the second round
	runKeys    []string // of the readings
	readKeys   []string // of all that the ratio depends on
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
		a.runs[i].Speed, a.runs[i].Want = s.At.Rows[r.Row].Number, s.want().Rows[r.Row].Number
	}
	a.later, a.laterKeys, later = s.runs(&s.second, trial.Again)
	a.asked, a.askedKey, a.hasAsked = s.asked()
	a.now, a.nowKey, a.hasNow = s.Setting(s.rotary())
	a.readKeys = lists.Concat([]string{"axis", a.askedKey, "read", "marks", "trial", "trip", "at", s.wantKey()}, s.sideKeys(), []string{"tol"},
		a.runKeys, s.toolKeys(), trial.EarlierKeys)
	a.allKeys = append([]string{"as", a.nowKey, "counted"}, a.readKeys...)
	a.failed = a.solve()
	if a.failed == nil && a.scale.Vague() {
		a.failed = errVague
	}
	if a.failed == nil {
		a.scale.Plan = int(s.Planned.Value())
		a.judged, a.failed = a.scale.Judge(s.acceptable())
		a.found = a.failed == nil
	}
	if a.found {
		a.wide = a.scale.Ratio.HalfWidth()
		a.read = a.readRatio()
		if s.Method() == trial.OneLength && math.Abs(a.scale.Error().Value) > trial.OddFrom {
			a.misread = a.misreadings()
		}
	}
	a.alone = a.found && s.Method() == trial.OneLength && !a.test.Test.Known()
	a.interim = a.found && a.farWorse()
	if a.found && (a.judged.Verdict == measure.ChangeIt || a.interim) && (s.Axis.Word == "travel" || math.Abs(a.scale.Error().Value) > leastMended) {
		a.allKeys = append(a.allKeys, a.trainKeys()...) // what is to be set depends on the parts too
	}
	a.solveAgain()
	return a.report(lists.Concat(problems, later, s.templateProblems()))
}

func (a *solution) hasAnswer() bool { return a.found && a.hasNow }

// corrected is the new setting.
func (a *solution) corrected() drive.Setting { return a.now.Corrected(a.scale.Factor().Value) }

// farTimes is how many times as large as its ± an error must be, and as what is acceptable, for
// a setting that is not settled yet to be better than the one in use: a third is left at most.
const farTimes = 3

// farWorse reports whether the setting in use is worse by far than the new one is uncertain,
// while the verdict is not to change it. A plan under way is not broken: all its runs are made
// with one setting.
func (a *solution) farWorse() bool {
	v, off := a.judged.Verdict, math.Abs(a.scale.Error().Value)
	return (v == measure.NotWithThis || v == measure.MeasureMore) && !a.alone && a.wide > 0 && a.scale.Plan <= a.scale.Runs &&
		off >= farTimes*max(a.wide, a.sheet.acceptable())
}

// unread is the picture of the test without its readings, while one of them is wrong: of what is
// left of them it must not show a mean.
func (a *solution) unread() *report.Drawing {
	set := *a
	set.runs = nil
	return set.guide()
}

// report orders the parts as they are done: with an answer what to set, how to go back and the
// check, without one how to make the test. What explains is folded.
func (a *solution) report(problems []report.Problem) report.Report {
	r := report.Report{Problems: problems, Picture: a.guide(), Unread: a.unread(), Care: a.sheet.Care(a.sheet.Axis.Word), Assumed: a.sheet.assumed()}
	a.sheet.GearEntry.Read(&r.Remarks, "")
	how, runs := a.howTo().Fold(howBrief), a.readings().Fold(runsBrief.Fill(len(a.runs)))
	if !a.hasAnswer() {
		r.Add(how, a.missing(), a.impossible(), runs)
		return r
	}
	r.Answer = a.answer()
	if out := a.suspect(); out != nil {
		r.Remarks.Doubt(a.runKeys[len(a.runKeys)-1], out.Row, outlierBeside.Fill("n", strconv.Itoa(out.Row+1)))
	}
	if a.sheet.Method() == trial.OneLength {
		r.Scatter = a.sheet.Scatter(a.test.Test, a.sheet.rotary())
	}
	settles := a.interim || a.judged.Verdict == measure.ChangeIt || a.judged.Verdict == measure.EitherIsFine
	next := a.next()
	if settles && !a.keepsParts() && !a.suspectsMistake() || a.judged.Verdict == measure.LeaveIt {
		next = next.Fold(a.nextBrief())
	}
	r.Add(how, a.again())
	if settles && !a.keepsParts() {
		if _, mends := a.mended(); mends || !a.suspectsMistake() {
			r.Set, r.SetKey = a.toSet(), axis.SettingKey(a.now.Convention, a.sheet.rotary())
		}
		r.Add(a.ratio(), a.apply(), next, a.persist(), a.touches().Fold(a.touchesBrief()))
	} else {
		r.Add(next, a.ratio(), a.apply(), a.persist())
	}
	r.Add(runs, a.speeds().Fold(slipBrief), a.lengths().Fold(lengthsBrief), a.sides().Fold(sidesBrief), a.accuracy(), a.conventions().Fold(conventionsBrief), a.why())
	return r
}
