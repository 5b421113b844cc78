package calc

import (
	"math"

	"striderule/calc/measure"
	"striderule/calc/unit"
)

var planPage = Page{
	Slug:     "plan",
	Menu:     "Plan",
	Title:    "Plan a test",
	Question: "How long, how slow and how many runs, so that the answer is good enough?",
	About:    "Length, runs, speed and mark of a test for the uncertainty you want, with the moves as G-code lines and a check-list with its cautions.",
	New:      func() Sheet { return newPlan() },
	Example:  "v=1&wanted=0.3&tool=caliper-0.05&scatter=0.15&speed=90&filament=1.75&melt=10&steps=538.0",
	Tasks:    []Task{{"I am about to test an axis", "How long, how often, where to put the mark; the moves ready to send, and a check-list.", ""}},
	Outputs: []Output{
		{"length", "Length of a run", "mm"},
		{"runs", "Runs in all", "1"},
		{"expanded", "Expanded uncertainty of the error to expect", "%"},
		{"mark", "Distance of the mark from the drive", "mm"},
		{"speed", "Speed of the moves", "mm/s"},
		{"word", "The same as the F word of a move", "mm/min"},
		{"melt", "What the hot end must melt", "mm³/s"},
		{"filament", "Filament used", "mm"},
		{"time", "Time that the test takes", "min"},
		{"needs", "Length that so many runs would need", "mm"},
		{"slip", "Smallest slip between the slowest and the fastest run that would show", "%"},
		{"lost", "Uncertainty of what is lost on reversal", "mm"},
		{"target", "Target position", "mm"},
	},
}

// What a plan assumes where nothing is said. The scatter of a feed test is that
// of a mark made with a pen and found again by eye, that of a carriage what a
// rule or caliper held against it shows.
const (
	feedScatter   = 0.15 // mm
	travelScatter = 0.05
	usualRuns     = 5
	usualRepeats  = 3   // at each of several places
	feedReach     = 300 // mm, of an instrument without an end
	longStep      = 10  // mm, planned lengths are multiples of it
	slack         = 5   // mm, fed or travelled before a run to take up slack
	leastRange    = 40  // mm of travel
)

var (
	slipSpeeds   = []unit.Speed{1, 3, 6}         // mm/s
	lengthShares = []float64{0.2, 0.6, 1}        // of the longest one
	targetShares = []float64{0, .25, .5, .75, 1} // of the range between the slack at its ends
)

type planSheet struct {
	Axis   Choice
	Path   Choice
	Trial  Choice
	Trip   Choice
	Wanted unit.Input[unit.Percent]
	tool   toolEntry
	// Scatter is the standard deviation of the runs, as an earlier sheet shows it.
	Scatter  unit.Input[unit.Length]
	Letter   Choice
	From, To unit.Input[unit.Length]
	Longest  unit.Input[unit.Length]
	Runs     unit.Input[unit.Count]
	Asked    unit.Input[unit.Length]
	Margin   unit.Input[unit.Length]
	Speed    unit.Input[unit.Speed]
	speeds   *Group
	At       List[unit.Input[unit.Speed], *unit.Input[unit.Speed]]
	Filament unit.Input[unit.Length]
	Melt     unit.Input[unit.VolumeRate]
	Each     unit.Input[unit.Duration]
	movesEntry
	scaleEntry
}

func newPlan() *planSheet {
	whole := newMeasure() // its choices are these
	speed := whole.Speed
	return &planSheet{
		Axis: choose(whole.Axis.options[0], whole.Axis.options[1]),
		Path: whole.Path, Trial: whole.Trial, Trip: whole.Trip,
		Wanted:  unit.Percents.Input("%", 0.001, 50),
		tool:    newToolEntry(Option{"none", "Not told yet", ""}),
		Scatter: unit.Lengths.Input("mm", 0.0001, 100),
		Letter:  choose(Option{"x", "X", ""}, Option{"y", "Y", ""}, Option{"z", "Z", "mind the bed"}),
		From:    positionInput(), To: positionInput(),
		Longest: unit.Lengths.Input("mm", longStep, 3000), Asked: unit.Lengths.Input("mm", longStep, 3000),
		Runs:       unit.Kind[unit.Count]{Noun: "a number of runs", Example: "5", Whole: true, Units: []unit.Unit{{Also: []string{"run", "runs"}}}}.Input("", 2, MostRows),
		Margin:     unit.Lengths.Input("mm", 1, 500),
		Speed:      speed,
		speeds:     &Group{Noun: "speed", Least: 2, Start: 3, Most: 10},
		At:         listOf[unit.Input[unit.Speed], *unit.Input[unit.Speed]](speed),
		Filament:   unit.Lengths.Input("mm", 0.5, 10),
		Melt:       unit.VolumeRates.Input("mm³/s", 0.1, 1000),
		Each:       unit.Durations.Input("s", 0, 3600),
		movesEntry: newMovesEntry(), scaleEntry: newScaleEntry(),
	}
}

func (s *planSheet) Fields() []Field {
	what := &Section{Title: "The test"}
	good := &Section{Title: "How well you want to know it"}
	room := &Section{Title: "What there is room for"}
	fixed := &Section{Title: "What you want to set yourself", Folded: true}
	lines := &Section{Title: "Your own lines for the moves", Folded: true}
	setting := &Section{Title: "The setting now, to hand it on", Folded: true}
	feed, travel := when("axis", "feed"), when("axis", "travel")
	hot := and(feed, "path", "hot")
	scale := when("trip", "one", "lengths")
	return concat(
		[]Field{
			{Key: "axis", Label: "Axis", Section: what, Cells: one(&s.Axis)},
			{Key: "path", Label: "Test", Section: what, When: feed, Cells: one(&s.Path)},
			{Key: "trial", Label: "Runs at", Section: what, When: feed, Cells: one(&s.Trial)},
			{Key: "trip", Label: "Moves of", Section: what, When: travel, Cells: one(&s.Trip)},
			{Key: "wanted", Label: "Uncertainty wanted, ±", Hint: "Of the error. Empty: 0.25 % for a feed axis and 0.1 % for a travel axis, half of the usual tolerance.", Section: good, When: scale, Cells: one(&s.Wanted), Suggest: []string{"0.5 %"}},
		},
		s.tool.fields(good, "", "You will read it with", nil),
		[]Field{
			{Key: "scatter", Label: "Scatter of the runs", Hint: "The spread that an earlier test showed. Empty: 0.15 mm for a mark on filament, 0.05 mm for a carriage.", Section: good, Cells: one(&s.Scatter)},
			{Key: "letter", Label: "Its letter", Section: room, When: travel, Cells: one(&s.Letter)},
			{Key: "from", Label: "Free from", Hint: "The lowest position that the axis can be moved to without touching anything.", Section: room, When: travel, Cells: one(&s.From)},
			{Key: "to", Label: "Free to", Hint: "The highest one.", Section: room, When: travel, Cells: one(&s.To)},
			{Key: "longest", Label: "Longest feed", Hint: "Empty: as far as the instrument reaches to the mark.", Section: room, When: feed, Cells: one(&s.Longest)},
			{Key: "runs", Label: "Runs", Hint: "Of each length, at each speed, or to each target from either side. Empty: as many as it takes, five as a rule and three at each of several places.", Section: fixed, Cells: one(&s.Runs)},
			{Key: "asked", Label: "Commanded length", Hint: "Empty: as long as it takes.", Section: fixed, When: scale, Cells: one(&s.Asked)},
			{Key: "margin", Label: "Mark beyond the length", Hint: "So that the mark stays outside even if too much is fed. Empty: a quarter of the length, 25 mm at least.", Section: fixed, When: feed, Cells: one(&s.Margin)},
			{Key: "speed", Label: "Speed", Hint: "A number alone is in mm/min. Empty: 60 mm/min for feeding, 600 mm/min for travel, 120 mm/min for Z.", Section: fixed, When: when("trial", "one"), Cells: one(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min"}},
			{Key: "at", Label: "Feed speed", Hint: "In mm/min. All empty: 60, 180 and 360 mm/min.", Section: fixed, When: and(feed, "trial", "speeds"), Group: s.speeds, Cells: &s.At},
			{Key: "filament", Label: "Diameter of the filament", Hint: "For what the hot end must melt.", Section: fixed, When: hot, Cells: one(&s.Filament), Suggest: []string{"1.75", "2.85"}},
			{Key: "melt", Label: "Most that it melts", Hint: "What your hot end is known to melt, in mm³/s.", Section: fixed, When: hot, Cells: one(&s.Melt)},
			{Key: "each", Label: "Time to read a run and mark anew", Hint: "Empty: one minute.", Section: fixed, Cells: one(&s.Each)},
		},
		s.movesEntry.fields(lines, nil),
		s.scaleEntry.linearFields(setting, "It travels on to the page for the readings.", nil),
	)
}

func (s *planSheet) isFeed() bool { return s.Axis.Word == "feed" }

// kind is what sort of test it is.
func (s *planSheet) kind() method { return methodOf(s.Trial, s.Trip) }

// wanted is the expanded uncertainty to reach, as a share.
func (s *planSheet) wanted() float64 {
	switch {
	case s.Wanted.Given:
		return float64(s.Wanted.Value) / 100
	case s.isFeed():
		return feedTolerance / 2
	}
	return travelTolerance / 2
}

func (s *planSheet) scatter() float64 {
	switch {
	case s.Scatter.Given:
		return float64(s.Scatter.Value)
	case s.isFeed():
		return feedScatter
	}
	return travelScatter
}

// atSpeeds are the speeds of the runs, mm/s, slow ones first where nothing is
// said.
func (s *planSheet) atSpeeds() []unit.Speed {
	switch {
	case s.kind() == severalSpeeds:
		var at []unit.Speed
		for _, in := range s.At.Rows {
			if in.Given {
				at = append(at, in.Value)
			}
		}
		if len(at) == 0 {
			return slipSpeeds
		}
		return at
	case s.Speed.Given:
		return []unit.Speed{s.Speed.Value}
	case s.isFeed():
		return []unit.Speed{1}
	case s.Letter.Word == "z":
		return []unit.Speed{2}
	}
	return []unit.Speed{10}
}

// mark is how far from the drive the mark is made; travel has none.
func (s *planSheet) mark(length float64) float64 {
	switch {
	case !s.isFeed():
		return 0
	case s.Margin.Given:
		return length + float64(s.Margin.Value)
	}
	return length + max(25, math.Ceil(length/4/slack)*slack)
}

// test is a test of a length, with what it is read with.
func (s *planSheet) test(length float64) measure.Test {
	with, _ := s.tool.instrument()
	return measure.Test{Commanded: length, Length: length, Mark: s.mark(length), Scatter: s.scatter(), With: with}
}

// design is where the runs lie.
func (s *planSheet) design() measure.Design {
	d := measure.Design{Repeats: usualRepeats}
	switch s.kind() {
	case severalSpeeds:
		d.Zero = true
		for _, v := range s.atSpeeds() {
			d.Places = append(d.Places, float64(v))
		}
	case severalLengths:
		d.Places = lengthShares
	case oneLength:
		d.Repeats = usualRuns
		if !s.isFeed() {
			d.Repeats = usualRepeats // travel is planned as long as it can be
		}
	}
	if s.Runs.Given {
		d.Repeats = int(s.Runs.Value)
	}
	return d
}

// mostRepeats is how many the page for the readings has rows for.
func mostRepeats(d measure.Design) int { return MostRows / max(1, len(d.Places)) }

// most is the longest length that there is room for, mm, a multiple of
// longStep; below that if there is none.
func (s *planSheet) most() float64 {
	with, _ := s.tool.instrument()
	reach := with.Reach
	if reach == 0 {
		reach = math.Inf(1)
	}
	most := float64(s.To.Value-s.From.Value) - slack
	if s.isFeed() {
		most = feedReach
		if s.Longest.Given {
			most = float64(s.Longest.Value)
		}
	}
	most = math.Floor(most/longStep) * longStep
	for most >= longStep && max(most, s.mark(most)) > reach {
		most -= longStep
	}
	return most
}

// A planned is a plan as it was solved, on its way into words.
type planned struct {
	*planSheet
	test     measure.Test // of the longest length
	design   measure.Design
	expected measure.Estimate // of the error; of what is lost on reversal
	enough   bool             // expected is as good as wanted
	keys     []string
}

func (s *planSheet) Solve() Report {
	a := planned{planSheet: s, keys: concat([]string{"axis", "path", "trial", "trip", "wanted", "scatter", "letter", "from", "to", "longest", "runs", "asked", "margin", "speed", "at"}, s.tool.keys(""))}
	r := Report{Problems: concat(s.problems(), s.movesEntry.problems())}
	if missing := s.missing(); len(missing) > 0 {
		r.Parts = []Part{{ID: "missing", Title: "Still needed", Needs: []string{"axis"}, Blocks: missing}}
		return r
	}
	if len(r.Problems) > 0 {
		return r
	}
	if !a.solve() {
		r.Parts = []Part{a.notToBeHad()}
		return r
	}
	r.Answer = a.answer()
	r.Parts = []Part{a.figures()}
	for _, make := range []func() (Part, bool){a.improve, a.trade, a.speedTable, a.targetTable} {
		if p, ok := make(); ok {
			r.Parts = append(r.Parts, p)
		}
	}
	r.Parts = append(r.Parts, a.before(), a.during(), a.moves(), a.after())
	return r
}

// missing asks for what a plan cannot do without.
func (s *planSheet) missing() []Block {
	var asks []Block
	if _, told := s.tool.instrument(); !told {
		key := "tool"
		if s.tool.Kind.Word == ownTool {
			key = "step"
		}
		asks = append(asks, Ask{[]string{key}, "a test that is good enough"})
	}
	var ends []string
	if !s.isFeed() && !s.From.Given {
		ends = append(ends, "from")
	}
	if !s.isFeed() && !s.To.Given {
		ends = append(ends, "to")
	}
	if len(ends) > 0 {
		asks = append(asks, Ask{ends, "a test that stays inside the machine"})
	}
	return asks
}

func (s *planSheet) problems() []Problem {
	var all []Problem
	add := func(key, says string) { all = append(all, Problem{Key: key, Says: says}) }
	free := float64(s.To.Value - s.From.Value)
	switch {
	case s.isFeed() || !s.From.Given || !s.To.Given:
	case free <= 0:
		add("to", quote(s.To.String())+" is not above the other end, "+s.From.String()+". Write the higher position here.")
	case free < leastRange:
		add("to", "only "+decimal(free)+" mm are free. Give the axis "+decimal(leastRange)+" mm at least, or measure it by hand.")
	case s.Asked.Given && float64(s.Asked.Value) > free-slack:
		add("asked", s.Asked.String()+" do not fit: "+decimal(free)+" mm are free, of which "+decimal(slack)+" mm take up slack. Write "+decimal(free-slack)+" mm at most.")
	}
	if d := s.design(); s.Runs.Given && d.Runs() > MostRows {
		add("runs", "that makes "+itoa(d.Runs())+" runs in all; there is room for "+itoa(MostRows)+". Write "+itoa(mostRepeats(d))+" at most.")
	}
	if at := s.atSpeeds(); s.kind() == severalSpeeds && allEqual(at) {
		add("at", "all runs are at one speed. Write at least two that differ, or choose One speed.")
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
func (a *planned) solve() bool {
	a.design = a.planSheet.design()
	if a.kind() == bothSides {
		a.test, a.enough = a.planSheet.test(float64(a.To.Value-a.From.Value)-2*slack), true
		a.expected, _ = a.test.ExpectLost(a.design.Repeats) // two at least are asked for
		return true
	}
	length := a.length()
	if length == 0 {
		return false
	}
	a.test = a.planSheet.test(length)
	if more, ok := a.test.RunsFor(a.wanted(), a.design, mostRepeats(a.design)); ok && !a.Runs.Given {
		a.design = more
	}
	a.expected, _ = a.test.Expect(a.design) // two runs at two places at least
	a.enough = a.expected.Expanded() <= a.wanted()
	return true
}

// length is how long a run is: as set; for travel, which costs nothing, as long
// as it can be; for feed the shortest that is good enough, with more runs where
// the usual number is not. It is 0 if there is none.
func (a *planned) length() float64 {
	most := a.most()
	switch {
	case a.Asked.Given:
		return float64(a.Asked.Value)
	case most < longStep:
		return 0
	case !a.isFeed():
		return most
	}
	for d := a.design; d.Repeats <= mostRepeats(d); d.Repeats++ {
		if t, ok := measure.LengthFor(a.wanted(), d, longStep, most, a.planSheet.test); ok {
			return t.Commanded
		}
		if a.Runs.Given {
			return most // as good as it gets with so many
		}
	}
	return 0
}

// notToBeHad says that nothing there is room for is good enough, and what would
// be.
func (a *planned) notToBeHad() Part {
	p := Part{ID: "cannot", Title: "Not to be had like this", Needs: a.keys}
	most := a.most()
	if most < longStep {
		p.Blocks = []Block{Note{Doubt, say("There is no room for a test: the instrument does not reach to the mark. Take one that reaches farther, or set the mark nearer.")}}
		return p
	}
	d := a.design
	d.Repeats = mostRepeats(d)
	best, _ := a.planSheet.test(most).Expect(d)
	p.Blocks = []Block{Note{Doubt, say("Even ", millimetres("", "", most), " and "+itoa(d.Runs())+" runs leave the error uncertain by ", share("", best.Expanded()), "; you want ", share("", a.wanted()), ".")}, Points{a.remedies()}}
	return p
}

// remedies are what would make the test good enough.
func (a *planned) remedies() []Line {
	var items []Line
	if other, with, ok := a.finer(); ok {
		items = append(items, say(capital(toolName(with))+" would do: "+other.runsText()+" of ", millimetres("", "", other.test.Commanded), "."))
	}
	return append(items, say("A finer mark, measured for each run and read from the same edge, lowers the scatter."), say("A longer feed or travel makes every error count less."), say("Or be content with less: what matters is whether the error is within your tolerance."))
}

// finer is the plan with the coarsest of the usual instruments that is good
// enough. Limits, if they are stated, are taken as usual for it.
func (a *planned) finer() (planned, measure.Instrument, bool) {
	now, _ := a.tool.instrument()
	for _, with := range measure.Instruments {
		if with.Resolution >= now.Resolution {
			continue
		}
		s := *a.planSheet
		s.tool.Kind.Word = with.ID
		if now.Accuracy > 0 {
			s.tool.Limits.Value = unit.Length(min(with.Usual, now.Accuracy))
		}
		if other := (planned{planSheet: &s}); other.solve() && other.enough {
			return other, with, true
		}
	}
	return planned{}, now, false
}

// improve says what to do about a test that was set and is not good enough.
func (a *planned) improve() (Part, bool) {
	return Part{ID: "improve", Title: "What would make it good enough", Needs: a.keys, Blocks: []Block{Points{a.remedies()}}}, !a.enough
}

func millimetres(id, label string, v float64) Figure {
	return Figure{ID: id, Label: label, Value: v, Unit: "mm", Digits: 6}
}

// share is a relative uncertainty as a figure.
func share(id string, u float64) Figure {
	return Figure{ID: id, Label: "Uncertainty of the error to expect, ±", Value: 100 * u, Unit: "%", Digits: 2, Keep: true}
}

// runsText is how many runs there are, in words.
func (a *planned) runsText() string {
	n := itoa(a.design.Repeats)
	switch a.kind() {
	case severalSpeeds:
		return n + " at each of " + itoa(len(a.design.Places)) + " speeds"
	case severalLengths:
		return n + " of each of " + itoa(len(a.design.Places)) + " lengths"
	case bothSides:
		return n + " to each of " + itoa(len(targetShares)) + " targets from either side"
	}
	return n + " runs"
}

func (a *planned) answer() *Answer {
	f := millimetres("length", capital(a.runsText())+" of", a.test.Commanded)
	says := say("At ", a.perMinute("", a.atSpeeds()[0]))
	switch a.kind() {
	case severalSpeeds:
		says = say(itoa(a.design.Runs()) + " runs in all")
	case severalLengths:
		f.Label = capital(a.runsText()) + ", the longest of"
	case bothSides:
		f.Label = "Five targets over"
	}
	if mark := a.test.Mark; mark > 0 {
		says = append(says, say(", the mark at ", millimetres("", "", mark))...)
	}
	if a.kind() == bothSides {
		return &Answer{Figure: f, Needs: a.keys, Says: append(says, say(": what is lost on reversal is then known to ± ", a.lost(""), ".")...)}
	}
	answer := &Answer{Figure: f, Needs: a.keys, Says: append(says, say(": the error is then known to ± ", share("", a.expected.Expanded()), ".")...)}
	if !a.enough {
		answer.Notes = []Note{{Doubt, say("That is not as good as you want it, ± ", share("", a.wanted()), ".")}}
	}
	return answer
}

func (a *planned) lost(id string) Figure {
	return Figure{ID: id, Label: "Uncertainty of what is lost on reversal, ±", Value: a.expected.Expanded(), Unit: "mm", Digits: 2, Keep: true}
}

func (a *planned) perMinute(id string, v unit.Speed) Figure {
	return Figure{ID: id, Label: "The same as the F word of a move", Value: float64(v) * unit.Minute, Unit: "mm/min", Digits: 6}
}

// meltRate is what a feed speed asks of the hot end, mm³/s.
func (a *planned) meltRate(v unit.Speed) float64 {
	d := float64(a.Filament.Value)
	return math.Pi / 4 * d * d * float64(v)
}

func (a *planned) figures() Part {
	p := Part{ID: "plan", Title: "The test in figures", Needs: concat(a.keys, []string{"filament", "melt", "each", "single"})}
	all := []Figure{{ID: "runs", Label: "Runs in all", Value: float64(a.allRuns()), Digits: 3}}
	if a.kind() == bothSides {
		all = append(all, a.lost("lost"))
	} else {
		all = append(all, share("expanded", a.expected.Expanded()))
	}
	if a.test.Mark > 0 {
		all = append(all, millimetres("mark", "Mark at", a.test.Mark))
	}
	at := a.atSpeeds()
	if len(at) == 1 {
		all = append(all, Figure{ID: "speed", Label: "Speed", Value: float64(at[0]), Unit: "mm/s", Digits: 4}, a.perMinute("word", at[0]))
		if a.Filament.Given {
			all = append(all, Figure{ID: "melt", Label: "The hot end must melt", Value: a.meltRate(at[0]), Unit: "mm³/s", Digits: 3})
		}
	}
	m := a.program()
	if a.isFeed() {
		all = append(all, millimetres("filament", "Filament used", m.path))
	}
	minutes := (m.seconds + a.reading()*float64(a.allRuns())) / unit.Minute
	all = append(all, Figure{ID: "time", Label: "Time, with reading and marking", Value: minutes, Unit: "min", Digits: 2})
	p.Blocks = append([]Block{Figures{all}}, a.doubts()...)
	return p
}

// allRuns is how often something is read.
func (a *planned) allRuns() int {
	if a.kind() == bothSides {
		return 2 * len(targetShares) * a.design.Repeats
	}
	return a.design.Runs()
}

// reading is how long it takes to read a run and to mark anew, in s.
func (a *planned) reading() float64 {
	if a.Each.Given {
		return float64(a.Each.Value)
	}
	return unit.Minute
}

func (a *planned) doubts() []Block {
	var all []Block
	doubt := func(parts ...any) { all = append(all, Note{Doubt, say(parts...)}) }
	with, _ := a.tool.instrument()
	if longest := max(a.test.Mark, a.test.Commanded); with.Reach > 0 && longest > with.Reach {
		doubt(capital(toolName(with))+" reaches ", millimetres("", "", with.Reach), " as a rule, and you would have to read ", millimetres("", "", longest), ".")
	}
	if a.test.Mark > 0 && float64(a.test.Mark-a.test.Commanded) < a.test.Commanded/10 {
		doubt("The mark is less than a tenth beyond the length: if the drive feeds too much, it runs in.")
	}
	if a.isFeed() && a.kind() == oneLength {
		limit := fastOpen
		if a.Path.Word == "hot" {
			limit = fastHot
		}
		if v := a.atSpeeds()[0]; v > limit {
			doubt("That is fast for a test: slip may be measured along. Is it mm/min?")
		}
	}
	if !a.isFeed() || a.Path.Word != "hot" {
		return all
	}
	if !a.Filament.Given {
		return append(all, Ask{[]string{"filament"}, "what the hot end must melt"})
	}
	for _, v := range a.atSpeeds() {
		if rate := a.meltRate(v); a.Melt.Given && rate > float64(a.Melt.Value) {
			most := a.perMinute("", v*unit.Speed(float64(a.Melt.Value)/rate))
			most.Digits = 3
			doubt("At ", a.perMinute("", v), " the hot end must melt ", Figure{Value: rate, Unit: "mm³/s", Digits: 3}, ", more than the "+a.Melt.String()+" that it can: the drive would slip. Feed no faster than ", most, ".")
			break
		}
	}
	return all
}

// tradeRuns are the numbers of runs that are set against lengths.
var tradeRuns = []int{3, 4, 5, 6, 8, 10, 15, 20}

// trade sets length against runs for the same uncertainty.
func (a *planned) trade() (Part, bool) {
	p := Part{ID: "trade", Title: "Longer, or more often", Needs: concat(a.keys, []string{"each"})}
	t := Table{Caption: "Tests that are equally good", Head: []string{"Runs", "Length, mm", "All moves, mm"}}
	for _, n := range tradeRuns {
		d := a.design
		d.Repeats = n
		test, ok := measure.LengthFor(a.wanted(), d, longStep, max(a.most(), a.test.Commanded), a.planSheet.test)
		if !ok || d.Repeats > mostRepeats(d) {
			continue
		}
		t.Rows = append(t.Rows, []Line{say(itoa(d.Runs())), say(Figure{ID: "needs-" + itoa(n), Value: test.Commanded, Digits: 6}),
			say(Figure{Value: float64(d.Runs()) * test.Commanded, Digits: 6})})
	}
	p.Blocks = []Block{Para{say("Each of these tests gives ± ", share("", a.wanted()), ". Few long runs or many short ones: take what suits you, and write it under “What you want to set yourself”.")}, t}
	return p, a.kind() == oneLength && len(t.Rows) > 0
}

// speedTable shows the speeds of a slip test, and what it can tell.
func (a *planned) speedTable() (Part, bool) {
	if a.kind() != severalSpeeds {
		return Part{}, false
	}
	p := Part{ID: "speeds", Title: "What the speeds can show", Needs: concat(a.keys, []string{"filament", "melt"})}
	t := Table{Caption: "Speeds", Head: []string{"Speed, mm/min", "mm/s"}}
	if a.Filament.Given {
		t.Head = append(t.Head, "To melt, mm³/s")
	}
	slow, fast := a.atSpeeds()[0], a.atSpeeds()[0]
	for i, v := range a.atSpeeds() {
		n := "-" + itoa(i+1)
		row := []Line{say(Figure{ID: "word" + n, Value: float64(v) * unit.Minute, Digits: 6}), say(Figure{ID: "speed" + n, Value: float64(v), Digits: 4})}
		if a.Filament.Given {
			row = append(row, say(Figure{ID: "melt" + n, Value: a.meltRate(v), Digits: 3}))
		}
		t.Rows = append(t.Rows, row)
		slow, fast = min(slow, v), max(fast, v)
	}
	p.Blocks = []Block{t}
	slope := a.design
	slope.Zero = false
	// What the instrument does is the same at each speed.
	if e, err := (measure.Test{Commanded: a.test.Commanded, Scatter: a.test.Scatter}).Expect(slope); err == nil {
		p.Blocks = append(p.Blocks, Figures{[]Figure{{ID: "slip", Label: "Smallest slip between the slowest and the fastest run that would show", Value: 100 * e.Expanded() * float64(fast-slow), Unit: "%", Digits: 2}}})
	}
	return p, true
}

// targetTable lists the positions of a test from both sides.
func (a *planned) targetTable() (Part, bool) {
	if a.kind() != bothSides {
		return Part{}, false
	}
	t := Table{Caption: "Targets", Head: []string{"Target", "Position, mm"}}
	for i, x := range a.targets() {
		t.Rows = append(t.Rows, []Line{say(itoa(i + 1)), say(Figure{ID: "target-" + itoa(i+1), Value: x, Digits: 6})})
	}
	return Part{ID: "targets", Title: "Where to go", Needs: a.keys, Blocks: []Block{
		Para{say("Going up, each target is approached from below; coming down, from above. The ends of the range are kept for turning round.")}, t}}, true
}

// targets are positions inside the range, with room to turn round.
func (a *planned) targets() []float64 {
	from, span := float64(a.From.Value)+slack, a.test.Commanded
	var all []float64
	for _, share := range targetShares {
		all = append(all, nearest(from+share*span))
	}
	return all
}

// program are the moves, ready to send.
func (a *planned) program() *program {
	if a.isFeed() {
		return a.feedMoves()
	}
	if a.kind() == bothSides {
		return a.bothWays()
	}
	return a.travelMoves()
}

// rounds visits all runs, place after place and round after round, so that what
// changes with time does not look like what changes with place.
func (a *planned) rounds(visit func(place, n int)) {
	places := max(1, len(a.design.Places))
	for n := range a.design.Runs() {
		visit(n%places, n+1)
	}
}

func (a *planned) feedMoves() *program {
	p := a.movesEntry.program("E", true)
	length, at := a.test.Commanded, a.atSpeeds()
	mark := "make a mark at " + decimal(a.test.Mark) + " mm from the drive's inlet"
	p.say("Feed test: " + a.runsText() + ", each of " + decimal(length) + " mm")
	p.say("Stay with the machine, a hand near the stop; fingers away from rollers and gears")
	if a.Path.Word == "hot" {
		p.say("Before: the hot end at printing temperature and steady; it burns, and melted plastic gives off fumes")
	} else {
		p.say("Before: open path, no filament in a cold hot end; put the guard against cold feeding back afterwards")
	}
	p.begin()
	p.move(slack, at[0], "takes up the slack")
	p.wait(mark)
	a.rounds(func(place, n int) {
		p.move(length, at[place], "run "+itoa(n)+" of "+itoa(a.design.Runs()))
		then := ", then " + mark
		if n == a.design.Runs() {
			then = ""
		}
		p.wait("read what remains up to the mark and write it down" + then)
	})
	p.finish()
	return p
}

// heading begins the moves of a travel axis, which stands at the lower end.
func (a *planned) heading(what string) *program {
	letter := capital(a.Letter.Word)
	p := a.movesEntry.program(letter, false)
	p.say(what)
	p.say("Before: stand at " + letter + " = " + decimal(float64(a.From.Value)) + "; all moves stay below " + letter + " = " + decimal(float64(a.To.Value)))
	p.say("Stay with the machine, a hand near the stop; fingers away from belts, screws and gears")
	if a.Letter.Word == "z" {
		p.say("Nothing may stand in the way: keep well away from the bed")
	}
	p.begin()
	return p
}

func (a *planned) travelMoves() *program {
	p := a.heading("Travel test: " + a.runsText() + " up to " + decimal(a.test.Commanded) + " mm")
	v := a.atSpeeds()[0]
	a.rounds(func(place, n int) {
		length := a.test.Commanded
		if len(a.design.Places) > 0 {
			length = nearest(length * a.design.Places[place])
		}
		p.move(slack, v, "takes up the slack in the direction of the run")
		p.wait("read where it stands")
		p.move(length, v, "run "+itoa(n)+" of "+itoa(a.design.Runs()))
		p.wait("read where it stands, and write down how far it moved")
		p.move(-length-slack, v, "back beyond the start")
	})
	p.finish()
	return p
}

func (a *planned) bothWays() *program {
	p := a.heading("Positions from both sides: " + a.runsText())
	v, targets := a.atSpeeds()[0], a.targets()
	here := float64(a.From.Value)
	to := func(x float64, why string) {
		p.move(nearest(x-here), v, why)
		here = x
	}
	for n := range a.design.Repeats {
		for i, x := range targets {
			to(x, "up to target "+itoa(i+1)+", round "+itoa(n+1))
			p.wait("read the position reached")
		}
		to(float64(a.To.Value), "turn round")
		for i := len(targets) - 1; i >= 0; i-- {
			to(targets[i], "down to target "+itoa(i+1)+", round "+itoa(n+1))
			p.wait("read the position reached")
		}
		to(float64(a.From.Value), "turn round")
	}
	p.finish()
	return p
}

func (a *planned) moves() Part {
	name := "travel-test.gcode"
	if a.isFeed() {
		name = "feed-test.gcode"
	}
	return Part{ID: "moves", Title: "The moves, line by line", Needs: concat(a.keys, a.movesEntry.keys()), Blocks: []Block{
		caution("maker"),
		Para{say("Relative moves, lengths in mm, speeds in mm/min. Read them before you send them; send them one by one if you have no way to wait in between. Your own wording goes into “Your own lines for the moves”.")},
		Code{Label: "Moves", Text: a.program().String(), File: name},
	}}
}

// before, during and after are the check-list.
func (a *planned) before() Part {
	p := Part{ID: "before", Title: "Check-list: before", Needs: a.keys, Blocks: []Block{caution("maker"), caution("stay")}}
	if !a.isFeed() {
		p.Blocks = append(p.Blocks, caution("range"), Points{[]Line{
			say("Nothing lies within the range of the axis, and it moves freely by hand."),
			say("Belts and screws are as tight as in use."),
			say("The rule, caliper or dial gauge stands along the axis and does not move."),
			say("The carriage stands at the lower end of the range."),
		}})
		return p
	}
	open := a.Path.Word == "open"
	if open {
		p.Blocks = append(p.Blocks, caution("cold"), caution("guard"))
	} else {
		p.Blocks = append(p.Blocks, caution("hot"))
	}
	var items []Line
	for _, o := range readiness {
		if o.Word != "guard" || open {
			items = append(items, say(o.Label+": "+o.Hint+"."))
		}
	}
	p.Blocks = append(p.Blocks, Points{items})
	return p
}

func (a *planned) during() Part {
	p := Part{ID: "during", Title: "Check-list: each run", Needs: a.keys, Blocks: []Block{caution("rollers")}}
	switch {
	case a.isFeed():
		p.Blocks = append(p.Blocks, Steps{[]Line{
			say("Mark the filament at ", millimetres("", "", a.test.Mark), " from the drive's inlet: a fine line, measured straight along the filament."),
			say("Feed ", millimetres("", "", a.test.Commanded), " in one go. If the mark nears the drive, stop."),
			say("Wait until nothing moves. Measure from the same place to the mark, about ", millimetres("", "", a.test.Mark-a.test.Commanded), ", and write it down as it is read."),
			say("Mark anew, and repeat: " + a.runsText() + "."),
		}})
	case a.kind() == bothSides:
		p.Blocks = append(p.Blocks, Steps{[]Line{
			say("Go to each target going up, then to each coming down, always far enough beyond the end to turn round."),
			say("Wait until nothing moves, and write down the position as it is read: " + a.runsText() + "."),
		}})
	default:
		p.Blocks = append(p.Blocks, Steps{[]Line{
			say("Come in from below, so that slack is taken up, and read where the carriage stands."),
			say("Move the length, wait until nothing moves, read again, and write down the difference."),
			say("Go back beyond the start, and repeat: " + a.runsText() + "."),
		}})
	}
	return p
}

func (a *planned) after() Part {
	p := Part{ID: "after", Title: "Check-list: afterwards", Needs: concat(a.keys, []string{"as", "steps", "turn", "output"})}
	items := []Line{say("Set the controller back to absolute moves if yours are: the last line above does it.")}
	if a.isFeed() {
		items = append(items, say("Set back what you changed for the test: an override of flow or speed, a filament sensor switched off."))
	}
	p.Blocks = []Block{Points{append(items, say("Type the readings in, all of them, also those that look odd."))}}
	if a.isFeed() && a.Path.Word == "open" {
		p.Blocks = append(p.Blocks, Note{Caution, say("Put back the guard against cold feeding if you lifted it for this test.")})
	}
	p.Blocks = append(p.Blocks, Links{[]Link{a.toMeasure()}})
	return p
}

// toMeasure hands the test over to the page for its readings.
func (a *planned) toMeasure() Link {
	word := func(key string, c Choice) entry {
		if c.isDefault() {
			return fill(key)
		}
		return fill(key, c.Word)
	}
	var asked, speed, mark, at, want, targets []string
	perMinute := func(v unit.Speed) string { return decimal(float64(v) * unit.Minute) }
	switch a.kind() {
	case bothSides:
		for range a.design.Repeats {
			for _, x := range a.targets() {
				targets = append(targets, decimal(x))
			}
		}
	case severalLengths:
		a.rounds(func(place, _ int) { want = append(want, decimal(a.test.Commanded*a.design.Places[place])) })
	default:
		asked = []string{decimal(a.test.Commanded)}
	}
	if a.isFeed() {
		mark = []string{decimal(a.test.Mark)}
		if a.kind() == severalSpeeds {
			a.rounds(func(place, _ int) { at = append(at, perMinute(a.atSpeeds()[place])) })
		} else {
			speed = []string{perMinute(a.atSpeeds()[0])}
		}
	}
	return hand("Enter the readings", "measure", concat(
		[]entry{word("axis", a.Axis)}, a.scaleEntry.handed(false),
		[]entry{word("path", a.Path), word("trial", a.Trial), word("trip", a.Trip), fill("asked", asked...), fill("speed", speed...),
			fill("mark", mark...), fill("at", at...), fill("want", want...), fill("target", targets...)},
		a.tool.handed(""))...)
}
