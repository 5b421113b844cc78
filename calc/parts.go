package calc

import (
	"slices"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

var partsPage = Page{
	Slug:     "parts",
	Menu:     "Parts",
	Title:    "Work it out from the parts",
	Question: "Which value do I start with, and what does a setting say about the parts?",
	About:    "Steps per mm and travel per motor turn of a whole machine from its motors, gears, pulleys, screws and rollers; and the way back, from a setting to the part.",
	New:      func() Sheet { return newParts() },
	Example: "v=1&name=Heron%20feed,Plover%20X,Plover%20Y,Plover%20Z&out=roller,,,screw&angle=1.8,1.8,1.8,1.8&micro=16,16,16,16" +
		"&gears=pairs&driving=12&driven=54&pitch=,2,2&teeth=,18,18&screw=,,,Tr10x4%28P2%29&roller=8.5",
	Outputs: concat(
		settingOutputs("", ""),
		[]Output{
			{"stepsin", "Steps per inch", "steps/in"},
			{"turnin", "Travel per motor turn in inches", "in/rev"},
			{"stepsrev", "Steps per turn of a rotary axis", "steps/rev"},
			{"ratio", "Gear ratio: motor turns for one output turn", "1"},
			{"fullsteps", "Full steps per motor turn", "steps/rev"},
			{"fullstep", "Travel per full step", "mm or °"},
			{"microstep", "Travel per microstep", "mm or °"},
			{"teeth", "Teeth of the pulley or pinion that a setting implies", "1"},
			{"lead", "Lead of the screw that a setting implies", "mm"},
			{"diameter", "Effective diameter of the roller that a setting implies", "mm"},
			{"driven", "Teeth on the driven side that a setting implies", "1"},
			{"nearest", "Nearest part that is made: teeth or lead", "1 or mm"},
			{"off", "What the setting implies over the nearest part, less one", "%"},
			{"fitting", "Setting that the nearest part gives", "as the setting"},
		},
	),
	Tasks: []Task{
		{"I am setting up a machine from its parts", "Motors, gears, pulleys, screws and rollers in; the first value of every axis out.", ""},
		{"I know the setting, not the part", "Which pulley, lead, roller or gear ratio a setting implies, and whether such a part is made.", "v=1&find=element"},
	},
}

// What can be found.
const (
	findSetting = "setting"
	findElement = "element"
	findGears   = "gears"
)

// A partsSheet is a machine: a row for each axis.
type partsSheet struct {
	axis *Group
	Name textList
	outputRows
	Find choiceList
	scaleRows
	motorRows
	Gears   choiceList
	Driving List[Teeth, *Teeth]
	Driven  List[Teeth, *Teeth]
	Ratio   ratioList
	Beside  countList // the teeth on the motor side, where the ratio is found
}

func newParts() *partsSheet {
	return &partsSheet{
		axis:       &Group{Noun: "axis", Least: 1, Most: MostRows},
		Name:       nameList(),
		outputRows: newOutputRows(),
		Find: listOf[Choice, *Choice](choose(
			Option{findSetting, "The setting", "from the parts"},
			Option{findElement, "The part's size", "of pulley, screw, roller or pinion, from the setting"},
			Option{findGears, "The gear ratio", "from the setting"},
		)),
		scaleRows: newScaleRows(),
		motorRows: newMotorRows(),
		Gears:     listOf[Choice, *Choice](choose(gearsNone, gearsPairs, gearsRatio)),
		Driving:   listOf[Teeth, *Teeth](Teeth{}), Driven: listOf[Teeth, *Teeth](Teeth{}),
		Ratio:  ratioRows(),
		Beside: listOf[unit.Input[unit.Count], *unit.Input[unit.Count]](teethInput()),
	}
}

func (s *partsSheet) Fields() []Field {
	section := &Section{Title: "Axes"}
	col := func(key, label, hint string, on []When, cells Cells) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: section, When: on, Group: s.axis, Cells: cells}
	}
	known := when("find", findSetting, findGears) // the output element is
	unless := func(key string, words ...string) []When { return []When{{Key: key, Words: words, Not: true}} }
	element := outputFields(section, s.axis, "", nil, known, s.outputRows.cells())
	geared := func(kind string) []When { return and(unless("find", findGears), "gears", kind) }
	return concat(
		[]Field{col("name", "Name", "", nil, &s.Name), element[0], col("find", "Wanted is", "", nil, &s.Find)},
		s.scaleRows.fields(section, s.axis, "Known is", when("find", findElement, findGears), unless("out", "rotary"), when("out", "rotary")),
		s.motorRows.fields(section, s.axis, nil),
		[]Field{
			col("gears", "Gears between motor and output", "", unless("find", findGears), &s.Gears),
			col("driving", "Teeth on the motor side", "Several stages in order from the motor, with an x between them: 12 x 20. For a worm: its number of starts.", geared("pairs"), &s.Driving),
			col("driven", "Teeth on the driven side", "As many stages, in the same order: 54 x 40. For a worm: the teeth of its wheel.", geared("pairs"), &s.Driven),
			col("ratio", "Gear ratio", "Motor turns for one output turn, above 1 where the output turns slower: 4.5, or 54:12.", geared("ratio"), &s.Ratio),
			col("beside", "Teeth on the motor side, if known", "Then the driven side is found too. For a worm: its number of starts.", when("find", findGears), &s.Beside),
		},
		element[1:],
	)
}

// A partsRow is one axis: as it is read, and what follows from it.
type partsRow struct {
	axisRow
	out     *outputEntry
	find    string
	beside  int
	missing []string // keys, before anything can be found
	needs   []string

	found   *Figure // what is wanted, nil while it is not
	says    string
	figures []Figure
	blocks  []Block // asks and notes
	doubts  []Note
}

func (s *partsSheet) row(i int) *partsRow {
	r := &partsRow{out: s.outputRows.at(i), find: s.Find.Rows[i].Word, beside: int(s.Beside.Rows[i].Value)}
	r.n, r.name, r.rotary = itoa(i+1), axisName(s.Name.Rows[i], i), r.out.Kind.Word == "rotary"
	motor := s.motorRows.at(i)
	r.motor, _ = motor.motor()
	r.noMotor = motor.missing()
	r.needs = concat([]string{"name", "find", "angle", "micro"}, r.out.keys(""))
	s.readGears(r, i)
	if r.find == findSetting {
		var element drive.Output
		if element, r.missing = r.out.element(""); element != nil {
			r.setting = drive.Setting{Convention: drive.TravelPerOutputTurn, Value: drive.PerTurn(element)}
		}
		return r
	}
	r.setting, r.key, r.given = s.scaleRows.at(i).setting(r.rotary)
	r.needs = append(r.needs, "as", r.key)
	if !r.given {
		r.missing = []string{r.key}
	}
	return r
}

// readGears reads an axis' gearing and the keys that it rests on.
func (s *partsSheet) readGears(r *partsRow, i int) {
	r.needs = append(r.needs, "gears")
	r.gears = toothPairs{}
	switch {
	case r.find == findGears:
		r.needs = append(r.needs, "beside")
	case s.Gears.Rows[i].Word == "pairs":
		r.needs = append(r.needs, "driving", "driven")
		if stages, ok := stagesOf(s.Driving.Rows[i], s.Driven.Rows[i]); ok {
			r.gears = toothPairs(stages)
		} else {
			r.noGears = []string{"driving", "driven"}
		}
	case s.Gears.Rows[i].Word == "ratio":
		r.needs = append(r.needs, "ratio")
		r.gears = plainRatio(s.Ratio.Rows[i].Value)
		if !s.Ratio.Rows[i].Given {
			r.noGears = []string{"ratio"}
		}
	}
}

func (s *partsSheet) Solve() Report {
	r := Report{Parts: []Part{whereToRead, meaning}}
	var rows []*partsRow
	var above []string // what the rows before depend on: the headline is of the first that answers
	fields := s.Fields()
	for i := range s.Name.Rows {
		if i > 0 && blank(fields, i) {
			continue
		}
		if a, b := len(s.Driving.Rows[i].Value), len(s.Driven.Rows[i].Value); a > 0 && b > 0 && a != b {
			r.Problems = append(r.Problems, Problem{"driven", i, "there are counts for " + plural(b, "stage", "stages") + " here, and for " + itoa(a) +
				" on the motor side. Write as many on either side, in the same order, such as 12 x 20 and 54 x 40."})
		}
		row := s.row(i)
		row.solve()
		above = append(above, row.needs...)
		if row.found != nil {
			rows = append(rows, row)
		}
		if row.found != nil && r.Answer == nil {
			r.Answer = row.answer(above)
			row.doubts = nil // the headline has them
		}
		r.Parts = append(r.Parts, row.part())
	}
	if len(rows) > 1 {
		r.Parts = slices.Insert(r.Parts, 2, glance(rows, above))
	}
	if slices.ContainsFunc(rows, func(r *partsRow) bool { return r.find == findSetting }) {
		r.Parts = append(r.Parts, firstMove)
	}
	return r
}

// solve finds what is wanted of an axis.
func (r *partsRow) solve() {
	switch {
	case r.find == findSetting:
		r.findSetting()
	case r.find == findGears && r.setting.Convention == drive.TravelPerOutputTurn:
		r.blocks = []Block{Note{Doubt, say("Travel per output turn is the same with any gears. Give steps per mm or travel per motor turn instead.")}}
	case r.find == findGears:
		r.findGears()
	case r.rotary:
		r.blocks = []Block{Note{Doubt, say("What turns the work itself has no size to be found: one output turn is 360°. Ask for the gear ratio instead.")}}
	default:
		r.findElement()
	}
	if r.found != nil {
		r.doubt()
	}
}

// lacks asks for what is missing; it reports whether anything is.
func (r *partsRow) lacks(what string, keys []string) bool {
	if len(keys) > 0 {
		r.blocks = append(r.blocks, Ask{keys, what})
	}
	return len(keys) > 0
}

// finds makes a figure the one that was wanted.
func (r *partsRow) finds(f Figure, says string) { r.found, r.says = &f, says }

// tell adds the numbers of the axis.
func (r *partsRow) tell() {
	figures, asks := r.numbers()
	r.figures, r.blocks = append(r.figures, figures...), append(r.blocks, asks...)
}

func (r *partsRow) findSetting() {
	if len(r.missing) > 0 {
		r.lacks(lower(settingName(drive.StepsPerUnit, r.rotary)), concat(r.missing, r.noGears, r.noMotor))
		return
	}
	r.tell()
	if len(r.noGears) == 0 {
		r.figures = append(r.figures, r.figure("ratio", "Gear ratio", r.gears.reduction(), ""))
	}
	if steps, missing := r.in(drive.StepsPerUnit); len(missing) == 0 {
		r.finds(settingFigure(asSteps, steps, r.rotary, 7, false), trust[r.out.Kind.Word])
	}
}

const trustThePart = "Trust this value over a measurement: the part is made to it. Measure only to find a mistake, such as another part or other microsteps."

// trust says what a value from the parts is worth.
var trust = map[string]string{
	"belt": trustThePart, "screw": trustThePart, "rack": trustThePart,
	"roller": "A start only: measure it. The effective diameter of a roller is known only from a test.",
	"rotary": "Exact: steps and teeth are counted. Measure only to find a mistake.",
}

func (r *partsRow) findElement() {
	travel, missing := r.in(drive.TravelPerOutputTurn)
	if r.lacks("the size of the part", concat(r.missing, r.out.missingPitch(), missing)) {
		return
	}
	i := r.out.implied(travel.Value)
	f := r.figure(i.id, i.label, i.value, i.unit)
	r.figures = []Figure{f}
	r.finds(f, "Where the roller really grips; its outer diameter is larger.")
	if i.nearest > 0 {
		r.says = r.compare(i)
	}
	r.tell()
}

func (r *partsRow) findGears() {
	element, missingElement := r.out.element("")
	turn, missing := r.in(drive.TravelPerTurn)
	if r.lacks("the gear ratio", concat(r.missing, missingElement, missing)) {
		return
	}
	ratio := drive.PerTurn(element) / turn.Value
	r.gears = plainRatio(ratio)
	f := r.figure("ratio", "Gear ratio", ratio, "")
	r.figures = []Figure{f}
	r.finds(f, "Motor turns for one output turn.")
	if r.beside > 0 {
		i := impliedGear(ratio, r.beside)
		r.figures = append(r.figures, r.figure(i.id, i.label, i.value, i.unit))
		r.says = r.compare(i)
	} else {
		r.lacks("the nearest teeth on the driven side", []string{"beside"})
	}
	r.tell()
}

// compare shows what is implied beside the nearest part that is made.
func (r *partsRow) compare(i implied) string {
	fitting := r.setting.Corrected(i.value / i.nearest) // steps go with 1/size, travel with size
	if r.find == findGears {
		fitting = r.setting.Corrected(i.nearest / i.value)
	}
	f := settingFigure("fitting-"+r.n, fitting, r.rotary, convertDigits, false)
	f.Label = "The setting that the nearest part gives"
	off := Figure{ID: "off-" + r.n, Label: "Implied, against the nearest", Value: 100 * i.off(), Unit: "%", Digits: 3}
	r.figures = append(r.figures, r.figure("nearest", "The nearest that is made", i.nearest, i.unit), off, f)
	return i.says()
}

// What small machines have. The bounds are round and our own judgement: wide
// enough for a coarse belt and for a fine worm, narrow enough to catch a ratio
// that is turned round and inches taken for millimetres.
const (
	fewestSteps, mostSteps       = 10, 100_000 // per mm: a microstep of 0.1 mm to 10 nm
	fewestStepsDeg, mostStepsDeg = 0.5, 100_000
	leastRoller, mostRoller      = 3, 40 // mm, of a roller that feeds
)

// doubt says what is outside of that, and what to look at.
func (r *partsRow) doubt() {
	least, most := float64(fewestSteps), float64(mostSteps)
	if r.rotary {
		least, most = fewestStepsDeg, mostStepsDeg
	}
	if s, missing := r.in(drive.StepsPerUnit); len(missing) == 0 && (s.Value < least || s.Value > most) {
		r.doubts = append(r.doubts, Note{Doubt, say(settingFigure("", s, r.rotary, 4, false), " is outside what we take small machines to have, "+
			number(least)+" to "+number(most)+". Look at the microsteps, at a gear ratio that is turned round, and at inches taken for millimetres.")})
	}
	diameter := float64(r.out.Diameter.Value)
	if r.find == findElement {
		diameter = r.found.Value
	}
	if r.out.Kind.Word == "roller" && (diameter < leastRoller || diameter > mostRoller) {
		r.doubts = append(r.doubts, Note{Doubt, say("An effective diameter of " + number(diameter) + " mm is outside what we take feed rollers to have, " +
			itoa(leastRoller) + " to " + itoa(mostRoller) + " mm. Look at a radius taken for a diameter, at inches, and at gears left out or turned round.")})
	}
	if len(r.noGears) == 0 && r.gears.reduction() < 1 {
		r.doubts = append(r.doubts, turnsFaster)
	}
}

func (r *partsRow) answer(needs []string) *Answer {
	f := *r.found
	f.ID, f.Label = strings.TrimSuffix(f.ID, "-"+r.n), r.name+", "+lower(f.Label)
	return &Answer{Figure: f, Says: say(r.says), Notes: r.doubts, Needs: needs}
}

func (r *partsRow) part() Part {
	p := Part{ID: "axis-" + r.n, Title: r.name, Needs: r.needs, Blocks: []Block{Figures{r.figures}}}
	if r.found != nil {
		p.Blocks = []Block{Para{say("With " + r.describe() + ":")}, Figures{r.figures}, Para{say(r.says)}}
	}
	p.Blocks = append(p.Blocks, r.blocks...)
	for _, n := range r.doubts {
		p.Blocks = append(p.Blocks, n)
	}
	if r.found != nil && r.find == findSetting {
		p.Blocks = append(p.Blocks, Links{r.links()})
	}
	return p
}

// describe names what is known of the drivetrain.
func (r *partsRow) describe() string {
	var known []string
	if len(r.noMotor) == 0 {
		known = []string{number(r.motor.FullSteps()) + " full steps per motor turn", plural(int(r.motor.Microsteps), "microstep", "microsteps")}
	}
	if r.find != findGears && len(r.noGears) == 0 {
		known = append(known, "a gear ratio of "+number(r.gears.reduction()))
	}
	if r.find != findElement && !r.rotary {
		known = append(known, r.out.describe())
	}
	if r.find != findSetting {
		known = append(known, settingFigure("", r.setting, r.rotary, convertDigits, false).String())
	}
	return strings.Join(known[:len(known)-1], ", ") + " and " + known[len(known)-1]
}

// glance is what was found of every axis, side by side.
func glance(rows []*partsRow, needs []string) Part {
	t := Table{Caption: "All axes", Head: []string{"Axis", "Found", "Beside it"}}
	for _, r := range rows {
		found := *r.found
		found.ID = ""
		beside := say("")
		if turn, missing := r.in(drive.TravelPerTurn); len(missing) == 0 && r.find == findSetting {
			beside = say(settingFigure("", turn, r.rotary, convertDigits, false))
		} else if r.find != findSetting {
			beside = say(found.Label)
		}
		t.Rows = append(t.Rows, []Line{say(r.name), say(found), beside})
	}
	return Part{ID: "all", Title: "All axes at a glance", Needs: needs, Blocks: []Block{t}}
}

// axisWord is the kind of axis, as the other pages ask for it.
func (r *partsRow) axisWord(roller, linear string) string {
	switch r.out.Kind.Word {
	case "roller":
		return roller
	case "rotary":
		return "rotary"
	}
	return linear
}

// handed is the setting that was found, for another page.
func (r *partsRow) handed() entry {
	return fill(settingKey(drive.StepsPerUnit, r.rotary), unit.Trim(r.found.Value, convertDigits))
}

func (r *partsRow) handedMotor(suffix string) []entry {
	return []entry{fill("angle"+suffix, unit.Full(float64(r.motor.StepAngle))), fill("micro"+suffix, itoa(int(r.motor.Microsteps)))}
}

func (r *partsRow) handedGears(suffix string) []entry {
	if ratio, ok := r.gears.(plainRatio); ok {
		return []entry{fill("gears"+suffix, "ratio"), fill("ratio"+suffix, unit.Full(float64(ratio)))}
	}
	var driving, driven []string
	for _, s := range r.gears.(toothPairs) {
		driving, driven = append(driving, itoa(int(s.Driving))), append(driven, itoa(int(s.Driven)))
	}
	if driving == nil {
		return []entry{fill("gears"+suffix, "none")}
	}
	return []entry{fill("gears"+suffix, "pairs"), fill("driving"+suffix, driving...), fill("driven"+suffix, driven...)}
}

// links lead on with what was found.
func (r *partsRow) links() []Link {
	links := []Link{r.toMeasure(), r.toSwap(), r.toRate()}
	if !r.rotary {
		links = append(links, hand("Plan a test of it", "plan", fill("axis", r.axisWord("", "travel")), r.handed()))
	}
	return links
}

func (r *partsRow) toMeasure() Link {
	entries := concat([]entry{fill("axis", r.axisWord("", "travel")), r.handed()}, r.handedMotor(""), r.handedGears(""))
	return hand("Measure with this setting", "measure", entries...)
}

func (r *partsRow) toRate() Link {
	entries := append([]entry{fill("moves", r.axisWord("feed", "")), r.handed()}, r.handedMotor("")...)
	return hand("Speed and step rate", "rate", entries...)
}

// toSwap opens the swap of the output element, or of a rotary axis' gears, with
// what is there now.
func (r *partsRow) toSwap() Link {
	to := func(changed string, entries ...[]entry) Link {
		all := concat([]entry{fill("changed", changed), fill("moves", r.axisWord("feed", "")), r.handed()}, concat(entries...))
		return hand("Swap a part of it", "swap", all...)
	}
	if r.rotary {
		return to("gears", r.handedGears(""), r.handedMotor(kept))
	}
	same := r.out.handed("")[:1] // the same sort of element takes its place
	same[0].key += fresh
	return to("out", r.out.handed(""), same, r.handedMotor(kept), r.handedGears(kept))
}

// whereToRead tells where the parts say what they are.
var whereToRead = Part{ID: "reading", Title: "Where to read the parts", Guide: true, Blocks: []Block{
	caution("wiring"),
	Points{[]Line{
		say("Motor: the step angle is on its label. Driver: the microsteps are set by jumpers or by software."),
		say("Gears and pulleys: mark a tooth and count. The motor side is the wheel that sits on the motor's shaft."),
		say("Belt: measure over ten teeth and divide by ten."),
		say("Screw: turn it once and measure how far the nut goes. That is the lead; with several starts it is more than the pitch."),
		say("Roller: take the diameter where it grips, a little less than over its teeth. It is a start; a test finds the true one."),
		say("Worm: count the threads that begin at its end; they stand for the teeth on the motor side."),
	}},
}}

// firstMove goes before a value that nobody has tried.
var firstMove = Part{ID: "first", Title: "Before the first move", Blocks: []Block{
	caution("maker"), caution("stay"), caution("range"), caution("rollers"),
	Para{say("Begin with a short, slow move. See that the direction is right and the length about right, before you ask for more.")},
}}
