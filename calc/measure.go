package calc

import (
	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/unit"
)

var measurePage = Page{
	Slug:     "measure",
	Title:    "Correct from a measurement",
	Question: "I asked for a length and measured another. What should the setting be?",
	About:    "Type the length you asked for and what you measured; get the corrected steps per mm or travel per motor turn, with the line to send and what to do next.",
	New:      func() Sheet { return newMeasure() },
	Example:  "v=1&steps=538.0&asked=80&speed=90&mark=105&rest=28.7,28.9,28.6&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D",
	Outputs: concat(
		settingOutputs("", ", new"),
		settingOutputs("was-", ", before"),
		[]Output{
			{"error", "Error: measured over commanded, less one", "%"},
			{"mean", "Mean of the measured lengths", "mm or °"},
			{"spread", "Spread of the runs (standard deviation)", "mm or °"},
			{"correction", "Correction: commanded over measured", "1"},
			{"moved", "Length that a run moved", "mm or °"},
			{"off", "Error of a run", "%"},
			{"diameter", "Effective diameter of the roller that the new setting implies", "mm"},
			{"expect", "Expected reading after the change", "mm or °"},
			{"feed", "Feed speed", "mm/s"},
			{"word", "Feed speed as the F word of a move", "mm/min"},
		},
	),
}

// A measureSheet is a test move and what it really moved.
type measureSheet struct {
	Axis Choice
	scaleEntry
	Asked    unit.Input[unit.Length]
	AskedDeg unit.Input[unit.Angle]
	Speed    unit.Input[unit.Speed]

	Drive Choice // where the feeder sits
	Path  Choice // what the filament passes in the test
	Read  Choice
	Marks Choice
	Mark  unit.Input[unit.Length]

	run    *Group
	Each   lengthList // mark of each run
	Rest   lengthList
	Fed    lengthList
	Moved  lengthList
	Turned angleList

	motorEntry
	gearEntry
	Line  Text
	Entry Text
	Done  Checks
}

func newMeasure() *measureSheet {
	length := unit.Lengths.Input("mm", 0.01, 3000)
	rest := unit.Lengths.Input("mm", 0, 3000) // all of it may have gone in
	run := &Group{Noun: "run", Least: 1, Start: 3, Most: MostRows}
	lengths := func(model unit.Input[unit.Length]) lengthList {
		return listOf[unit.Input[unit.Length], *unit.Input[unit.Length]](model)
	}
	angle := unit.Angles.Input("°", 0.001, 360_000)
	return &measureSheet{
		Axis: choose(
			Option{"feed", "Feed", "filament through an extruder"},
			Option{"travel", "Travel", "an axis that moves in mm"},
			Option{"rotary", "Rotary", "an axis that turns by degrees"},
		),
		scaleEntry: newScaleEntry(),
		Asked:      length, AskedDeg: angle,
		Speed: unit.Speeds.Input("mm/min", 0.001, 2000),
		Drive: choose(
			Option{"near", "At the hot end", "the filament goes straight from the drive into it"},
			Option{"tube", "Away from it", "a guide (Bowden) tube leads from the drive to the hot end"},
		),
		Path: choose(
			Option{"hot", "Hot", "through the heated hot end"},
			Option{"open", "Open path", "the filament comes out freely, the hot end is out of the way"},
		),
		Read: choose(
			Option{"rest", "Mark and remaining", "a mark on the filament, and what is left up to it"},
			Option{"fed", "Fed length", "what came out, or went in, in one reading"},
		),
		Marks: choose(
			Option{"set", "Always the same", "each run is marked anew at this distance"},
			Option{"each", "Read for each run", "the mark's distance is a reading too"},
		),
		Mark: length,
		run:  run, Each: lengths(length), Rest: lengths(rest), Fed: lengths(length), Moved: lengths(length),
		Turned:     listOf[unit.Input[unit.Angle], *unit.Input[unit.Angle]](angle),
		motorEntry: newMotorEntry(),
		gearEntry:  newGearEntry(gearsUnknown, gearsNone, gearsPairs, gearsRatio),
		Line:       Text{most: 200, about: "text to send, with {value} where the number goes"},
		Entry:      Text{most: 200, about: "an entry of a configuration, with {value} where the number goes"},
		Done:       Checks{options: readiness},
	}
}

// The sections of the form.
var (
	secAxis   = &Section{Title: "The axis and its setting now"}
	secTest   = &Section{Title: "The test"}
	secBefore = &Section{Title: "Before a reading is worth anything", Folded: true}
	secRuns   = &Section{Title: "The readings"}
	secParts  = &Section{Title: "The drivetrain, for the other conventions", Folded: true}
	secLine   = &Section{Title: "Your own line to send", Folded: true}
)

func (s *measureSheet) Fields() []Field {
	feed, travel, rotary := when("axis", "feed"), when("axis", "travel"), when("axis", "rotary")
	rest := and(feed, "read", "rest")
	return concat(
		[]Field{{Key: "axis", Label: "Axis", Section: secAxis, Cells: one(&s.Axis)}},
		s.scaleEntry.fields(secAxis, "axis", "feed", "travel"),
		[]Field{
			{Key: "drive", Label: "The drive sits", Section: secTest, When: feed, Cells: one(&s.Drive)},
			{Key: "path", Label: "Test", Section: secTest, When: feed, Cells: one(&s.Path)},
			{Key: "asked", Label: "Commanded length", Hint: "What the controller was asked to move in one run.",
				Section: secTest, When: when("axis", "feed", "travel"), Cells: one(&s.Asked), Suggest: []string{"80", "100"}},
			{Key: "askeddeg", Label: "Commanded angle", Hint: "What the controller was asked to turn in one run.",
				Section: secTest, When: rotary, Cells: one(&s.AskedDeg)},
			{Key: "speed", Label: "Feed speed", Hint: "A number alone is in mm/min, as in the F word of a move; write 1.5 mm/s otherwise.",
				Section: secTest, When: feed, Cells: one(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min"}},

			{Key: "done", Label: "Checked off", Section: secBefore, When: feed, Cells: &s.Done},

			{Key: "read", Label: "What you read", Section: secRuns, When: feed, Cells: one(&s.Read)},
			{Key: "marks", Label: "The mark's distance", Section: secRuns, When: rest, Cells: one(&s.Marks)},
			{Key: "mark", Label: "Mark at", Hint: "From the drive's inlet to the mark before the run: more than the commanded length, so that the mark stays outside.",
				Section: secRuns, When: and(rest, "marks", "set"), Cells: one(&s.Mark)},
			{Key: "eachmark", Label: "Mark at", Section: secRuns, When: and(rest, "marks", "each"), Group: s.run, Cells: &s.Each},
			{Key: "rest", Label: "Remaining", Hint: "From the same place to the mark after the run.",
				Section: secRuns, When: rest, Group: s.run, Cells: &s.Rest},
			{Key: "fed", Label: "Fed", Section: secRuns, When: and(feed, "read", "fed"), Group: s.run, Cells: &s.Fed},
			{Key: "moved", Label: "Measured", Hint: "How far the carriage moved, not the size of a printed part.",
				Section: secRuns, When: travel, Group: s.run, Cells: &s.Moved},
			{Key: "turned", Label: "Measured", Section: secRuns, When: rotary, Group: s.run, Cells: &s.Turned},

			{Key: "angle", Label: "Step angle of the motor", Hint: angleHint, Section: secParts, Cells: one(&s.Angle), Suggest: usualAngles},
			{Key: "micro", Label: "Microsteps", Hint: microHint, Section: secParts, Cells: one(&s.Micro), Suggest: usualMicro},
		},
		s.gearEntry.fields(secParts, "", nil),
		[]Field{
			{Key: "line", Label: "Line to send", Hint: "Your controller's line, with {value} where the number goes.",
				Section: secLine, When: when("as", asSteps), Cells: one(&s.Line), Suggest: []string{"M92 E{value}"}},
			{Key: "entry", Label: "Entry in the configuration", Hint: "Your own line, with {value} where the number goes.",
				Section: secLine, When: when("as", asTurn, asOutput), Cells: one(&s.Entry)},
		},
	)
}

// readiness is what to see to before a reading is worth anything.
var readiness = []Option{
	{"filament", "Same filament", "the one in use, and the roller's tension as in use"},
	{"path", "Straight path", "no drag: spool free, no tight bend on the way in"},
	{"clean", "Roller clean", "its teeth are free of ground plastic"},
	{"slack", "Slack taken up", "a short feed in the same direction before the mark is made"},
	{"flow", "Flow at 100 %", "an override would scale the test moves too"},
	{"volume", "Feed counted in mm", "not in mm³: that would scale the test moves by the filament's area"},
	{"relative", "Moves relative", "or the counter set to zero before each run; else the second run does not move"},
	{"long", "Long feeds let through", "a controller that refuses long single feeds gets several short ones"},
	{"mark", "Mark fine", "thin, and read at right angles, with the filament straight along the rule"},
	{"driver", "Microsteps as the driver is set", "by jumpers or by software, whatever it smooths by itself"},
	{"feeder", "Right feeder selected", "where there are several"},
	{"guard", "Cold-feed guard", "lifted only for an open-path test, and noted down to be put back"},
}

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
