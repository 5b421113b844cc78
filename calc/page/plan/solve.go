package plan

import (
	"math"
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

func (s *entries) isFeed() bool { return s.Axis.Word == "feed" }

// wanted is the expanded uncertainty to reach, as a share.
func (s *entries) wanted() float64 {
	switch {
	case s.Wanted.Given:
		return s.Wanted.Number / 100
	case s.isFeed():
		return trial.FeedTolerance / 2
	}
	return trial.TravelTolerance / 2
}

func (s *entries) scatter() float64 {
	switch {
	case s.Scatter.Given:
		return s.Scatter.Number
	case s.isFeed():
		return feedScatter
	}
	return travelScatter
}

// atSpeeds are the speeds of the runs, mm/s, slow ones first where nothing is
// said.
func (s *entries) atSpeeds() []unit.Speed {
	switch {
	case s.Method() == trial.SeveralSpeeds:
		var at []unit.Speed
		for _, in := range s.At.Rows {
			if in.Given {
				at = append(at, unit.Speed(in.Number))
			}
		}
		if len(at) == 0 {
			return slipSpeeds
		}
		return at
	case s.Speed.Given:
		return []unit.Speed{s.Speed.Value()}
	case s.isFeed():
		return []unit.Speed{1}
	case s.Letter.Word == "z":
		return []unit.Speed{2}
	}
	return []unit.Speed{10}
}

// mark is how far from the drive the mark is made; travel has none.
func (s *entries) mark(length float64) float64 {
	switch {
	case !s.isFeed():
		return 0
	case s.Margin.Given:
		return length + s.Margin.Number
	}
	return length + max(25, math.Ceil(length/4/slack)*slack)
}

// testOf is a test of a length, with what it is read with.
func (s *entries) testOf(length float64) measure.Test {
	with, _ := s.tool.Instrument()
	return measure.Test{Commanded: length, Length: length, Mark: s.mark(length), Scatter: s.scatter(), With: with}
}

// usualDesign is where the runs lie.
func (s *entries) usualDesign() measure.Design {
	d := measure.Design{Repeats: usualRepeats}
	switch s.Method() {
	case trial.SeveralSpeeds:
		d.Zero = true
		for _, v := range s.atSpeeds() {
			d.Places = append(d.Places, float64(v))
		}
	case trial.SeveralLengths:
		d.Places = lengthShares
	case trial.OneLength:
		d.Repeats = usualRuns
		if !s.isFeed() {
			d.Repeats = usualRepeats // travel is planned as long as it can be
		}
	}
	if s.Runs.Given {
		d.Repeats = int(s.Runs.Value())
	}
	return d
}

// mostRepeats is how many the page for the readings has rows for.
func mostRepeats(d measure.Design) int { return sheet.MostRows / max(1, len(d.Places)) }

// most is the longest length that there is room for, mm, a multiple of
// longStep; below that if there is none.
func (s *entries) most() float64 {
	with, _ := s.tool.Instrument()
	reach := with.Reach
	if reach == 0 {
		reach = math.Inf(1)
	}
	most := float64(s.To.Value()-s.From.Value()) - slack
	if s.isFeed() {
		most = feedReach
		if s.Longest.Given {
			most = s.Longest.Number
		}
	}
	most = math.Floor(most/longStep) * longStep
	for most >= longStep && max(most, s.mark(most)) > reach {
		most -= longStep
	}
	return most
}

// A solution is a plan as it was solved, on its way into words.
type solution struct {
	*entries
	test     measure.Test // of the longest length
	design   measure.Design
	expected measure.Estimate // of the error; of the backlash
	enough   bool             // expected is as good as wanted
	keys     []string
}

func (s *entries) Solve() report.Report {
	a := solution{entries: s, keys: lists.Concat([]string{"axis", "path", "trial", "trip", "wanted", "scatter", "letter", "from", "to", "longest", "runs", "asked", "margin", "speed", "at"}, s.tool.Keys(""))}
	wrong := s.problems()
	r := report.Report{Problems: lists.Concat(wrong, s.MovesEntry.Problems()), Care: s.Care(s.Axis.Word)}
	if missing := s.missing(); len(missing) > 0 {
		r.Add(&report.Part{ID: report.Missing, Title: missingTitle, Needs: []string{"axis"}, Blocks: missing})
		return r
	}
	if len(wrong) > 0 {
		return r
	}
	if !a.solve() {
		r.Add(a.cannot())
		return r
	}
	r.Answer = a.answer()
	r.Add(a.improve(), a.before().Fold(beforeBrief), a.moves(), a.during().Fold(duringBrief), a.after().Fold(afterBrief))
	r.Add(a.figures().Fold(figuresBrief), a.picture().Fold(pictureBrief), a.speedTable().Fold(speedsBrief), a.targetTable().Fold(targetsBrief), a.trade().Fold(tradeBrief))
	return r
}

// missing asks for what a plan cannot do without.
func (s *entries) missing() []report.Block {
	var asks []report.Block
	if _, told := s.tool.Instrument(); !told {
		key := "tool"
		if s.tool.Kind.Word == axis.OwnTool {
			key = "step"
		}
		asks = append(asks, report.Ask{Keys: []string{key}, For: forPlan})
	}
	var ends []string
	if !s.isFeed() && !s.From.Given {
		ends = append(ends, "from")
	}
	if !s.isFeed() && !s.To.Given {
		ends = append(ends, "to")
	}
	if len(ends) > 0 {
		asks = append(asks, report.Ask{Keys: ends, For: forRange})
	}
	return asks
}

func (s *entries) problems() []report.Problem {
	var all []report.Problem
	add := func(key, says string) { all = append(all, report.Problem{Key: key, Says: says}) }
	free := float64(s.To.Value() - s.From.Value())
	switch {
	case s.isFeed() || !s.From.Given || !s.To.Given:
	case free <= 0:
		add("to", rangeReversed.Fill("to", s.To.Text(), "from", s.From.Text()))
	case free < leastRange:
		add("to", rangeTooShort.Fill("free", trial.Decimal(free), "least", trial.Decimal(leastRange)))
	case s.Asked.Given && s.Asked.Number > free-slack:
		add("asked", tooLong.Fill("length", s.Asked.Text(), "free", trial.Decimal(free), "slack", trial.Decimal(slack), "most", trial.Decimal(free-slack)))
	}
	if d := s.usualDesign(); s.Runs.Given && d.Runs() > sheet.MostRows {
		add("runs", tooManyRuns.Fill("all", strconv.Itoa(d.Runs()), "most", strconv.Itoa(sheet.MostRows), "n", strconv.Itoa(mostRepeats(d))))
	}
	if at := s.atSpeeds(); s.Method() == trial.SeveralSpeeds && allEqual(at) {
		add("at", oneSpeedOnly.Fill("choice", s.Trial.Options()[0].Label))
	}
	return all
}

func allEqual(at []unit.Speed) bool {
	for _, v := range at {
		if v != at[0] {
			return false
		}
	}
	return true
}

// solve finds length and runs: what is set stays, the rest is as little as it
// takes. It is false where nothing is good enough and nothing was set.
func (a *solution) solve() bool {
	a.design = a.usualDesign()
	if a.Method() == trial.BothSides {
		a.test, a.enough = a.testOf(a.span()), true
		a.expected, _ = a.test.ExpectLost(a.design.Repeats) // two at least are asked for
		return true
	}
	length := a.length()
	if length == 0 {
		return false
	}
	a.test = a.testOf(length)
	if more, ok := a.test.RunsFor(a.wanted(), a.design, mostRepeats(a.design)); ok && !a.Runs.Given {
		a.design = more
	}
	a.expected, _ = a.test.Expect(a.design) // two runs at two places at least
	a.enough = a.expected.HalfWidth() <= a.wanted()
	return true
}

// span is what the targets of a test from both sides lie in: the range but for
// the slack at its ends, as far as the instrument reaches.
func (a *solution) span() float64 {
	span := float64(a.To.Value()-a.From.Value()) - 2*slack
	if with, _ := a.tool.Instrument(); with.Reach > 0 {
		span = min(span, with.Reach)
	}
	return span
}

// length is how long a run is: as set; for travel, which costs nothing, as long
// as it can be; for feed the shortest that is good enough, with more runs where
// the usual number is not. It is 0 if there is none.
func (a *solution) length() float64 {
	most := a.most()
	switch {
	case a.Asked.Given:
		return a.Asked.Number
	case most < longStep:
		return 0
	case !a.isFeed():
		return most
	}
	for d := a.design; d.Repeats <= mostRepeats(d); d.Repeats++ {
		if t, ok := measure.LengthFor(a.wanted(), d, longStep, most, a.testOf); ok {
			return t.Commanded
		}
		if a.Runs.Given {
			return most // as good as it gets with so many
		}
	}
	return 0
}
