package calc

import (
	"slices"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/lists"
)

// A partsRow is one axis: as it is read, and what follows from it.
type partsRow struct {
	axisRow
	out     *outputEntry
	find    string
	beside  int
	missing []string // keys, before anything can be found
	needs   []string
	drawn   bool

	found   *Figure // what is wanted, nil while it is not
	says    string
	figures figureList
	blocks  []Block // asks and notes
	doubts  []Note
}

func (s *partsSheet) row(i int) *partsRow {
	r := &partsRow{out: s.outputRows.at(i), find: s.Find.Rows[i].Word, beside: int(s.Beside.rows[i].Number)}
	r.n, r.name, r.rotary = strconv.Itoa(i+1), axisName(s.Name.Rows[i], i), r.out.Kind.Word == "rotary"
	r.drawn = i < mostTrains
	motor := s.motorRows.at(i)
	r.motor = motor.motor()
	r.noMotor = motor.missing()
	r.needs = lists.Concat([]string{"name", "find", "angle", "micro"}, r.out.keys(""))
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
		r.gears = plainRatio(s.Ratio.rows[i].Number)
		if !s.Ratio.rows[i].Given {
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
			r.Problems = append(r.Problems, Problem{"driven", i, "there are counts for " + plural(b, "stage", "stages") + " here, and for " + strconv.Itoa(a) +
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
		r.add(row.part())
	}
	if len(rows) > 1 {
		r.insert(2, glance(rows, above))
	}
	if slices.ContainsFunc(rows, func(r *partsRow) bool { return r.find == findSetting }) {
		r.add(&firstMove)
	}
	return r
}

// solve finds what is wanted of an axis.
func (r *partsRow) solve() {
	switch {
	case r.find == findSetting:
		r.findSetting()
	case r.find == findGears && r.setting.Convention == drive.TravelPerOutputTurn:
		r.blocks = []Block{doubtNote("Travel per output turn is the same with any gears. Give steps per mm or travel per motor turn instead.")}
	case r.find == findGears:
		r.findGears()
	case r.rotary:
		r.blocks = []Block{doubtNote("What turns the work itself has no size to be found: one output turn is 360°. Ask for the gear ratio instead.")}
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
func (r *partsRow) finds(f *Figure, says string) { r.found, r.says = f, says }

// tell adds the numbers of the axis.
func (r *partsRow) tell() {
	figures, asks := r.numbers()
	r.figures, r.blocks = append(r.figures, figures...), append(r.blocks, asks...)
}

func (r *partsRow) findSetting() {
	if len(r.missing) > 0 {
		r.lacks(lower(settingName(drive.StepsPerUnit, r.rotary)), lists.Concat(r.missing, r.noGears, r.noMotor))
		return
	}
	r.tell()
	if len(r.noGears) == 0 {
		r.figures.add(r.figure("ratio", "Gear ratio", r.gears.reduction(), ""))
	}
	if steps, missing := r.in(drive.StepsPerUnit); len(missing) == 0 {
		r.finds(settingFigure(asSteps, steps, r.rotary, 7, false), trust.of(r.out.Kind.Word))
	}
}

const trustThePart = "Trust this value over a measurement: the part is made to it. Measure only to find a mistake, such as another part or other microsteps."

// trust says what a value from the parts is worth.
var trust = worded{
	{"belt", trustThePart}, {"screw", trustThePart}, {"rack", trustThePart},
	{"roller", "A start only: measure it. The effective diameter of a roller is known only from a test."},
	{"rotary", "Exact: steps and teeth are counted. Measure only to find a mistake."},
}

func (r *partsRow) findElement() {
	travel, missing := r.in(drive.TravelPerOutputTurn)
	if r.lacks("the size of the part", lists.Concat(r.missing, r.out.missingPitch(), missing)) {
		return
	}
	i := r.out.implied(travel.Value)
	f := r.figure(i.id, i.label, i.value, i.unit)
	r.figures = figureList{*f}
	r.finds(f, "Where the roller really grips; its outer diameter is larger.")
	if i.nearest > 0 {
		r.says = r.compare(i)
	}
	r.tell()
}

func (r *partsRow) findGears() {
	element, missingElement := r.out.element("")
	turn, missing := r.in(drive.TravelPerTurn)
	if r.lacks("the gear ratio", lists.Concat(r.missing, missingElement, missing)) {
		return
	}
	ratio := drive.PerTurn(element) / turn.Value
	r.gears = plainRatio(ratio)
	f := r.figure("ratio", "Gear ratio", ratio, "")
	r.figures = figureList{*f}
	r.finds(f, "Motor turns for one output turn.")
	if r.beside > 0 {
		i := impliedGear(ratio, r.beside)
		r.figures.add(r.figure(i.id, i.label, i.value, i.unit))
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
	off := &Figure{ID: "off-" + r.n, Label: "Implied, against the nearest", Value: 100 * i.off(), Unit: "%", Digits: 3}
	r.figures.add(r.figure("nearest", "The nearest that is made", i.nearest, i.unit), off, f)
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
		r.doubts = append(r.doubts, doubtNote(settingFigure("", s, r.rotary, 4, false), " is outside what we take small machines to have, "+
			number(least)+" to "+number(most)+". Look at the microsteps, at a gear ratio that is turned round, and at inches taken for millimetres."))
	}
	diameter := r.out.Diameter.Number
	if r.find == findElement {
		diameter = r.found.Value
	}
	if r.out.Kind.Word == "roller" && (diameter < leastRoller || diameter > mostRoller) {
		r.doubts = append(r.doubts, doubtNote("An effective diameter of "+number(diameter)+" mm is outside what we take feed rollers to have, "+
			strconv.Itoa(leastRoller)+" to "+strconv.Itoa(mostRoller)+" mm. Look at a radius taken for a diameter, at inches, and at gears left out or turned round."))
	}
	if len(r.noGears) == 0 && r.gears.reduction() < 1 {
		r.doubts = append(r.doubts, turnsFaster)
	}
}
