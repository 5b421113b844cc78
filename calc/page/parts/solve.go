package parts

import (
	"slices"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A row is one axis: as it is read, and what follows from it.
type row struct {
	axis.Row
	out     *axis.OutputEntry
	find    string
	beside  int
	missing []string // keys, before anything can be found
	needs   []string
	drawn   bool
	unsure  bool // a part may be another than was typed

	found   *report.Figure // what is wanted, nil while it is not
	says    string
	figures report.FigureList
	blocks  []report.Block // asks and notes
	doubts  []report.Note
}

func (s *entries) row(i int) *row {
	r := &row{out: s.OutputRows.At(i), find: s.Find.Rows[i].Word, beside: int(s.Beside.Rows[i].Number)}
	r.N, r.Name, r.Rotary = strconv.Itoa(i+1), axis.NameOf(s.Name.Rows[i], i), r.out.Kind.Word == "rotary"
	r.drawn = i < mostTrains
	motor := s.MotorRows.At(i)
	r.Motor = motor.Motor()
	r.NoMotor = motor.Missing()
	r.needs = lists.Concat([]string{"name", "find", "angle", "micro"}, r.out.Keys(""))
	s.readGears(r, i)
	if r.find == findSetting {
		var element drive.Output
		if element, r.missing = r.out.Element(""); element != nil {
			r.Setting = drive.Setting{Convention: drive.TravelPerOutputTurn, Value: drive.PerTurn(element)}
		}
		return r
	}
	r.Setting, r.Key, r.Given = s.ScaleRows.At(i).Setting(r.Rotary)
	r.needs = append(r.needs, "as", r.Key)
	if !r.Given {
		r.missing = []string{r.Key}
	}
	return r
}

// readGears reads an axis' gearing and the keys that it rests on.
func (s *entries) readGears(r *row, i int) {
	r.needs = append(r.needs, "gears")
	r.Gears = axis.ToothPairs{}
	switch {
	case r.find == findGears:
		r.needs = append(r.needs, "beside")
	case s.Gears.Rows[i].Word == "pairs":
		r.needs = append(r.needs, "driving", "driven")
		if stages, ok := axis.StagesOf(s.Driving.Rows[i], s.Driven.Rows[i]); ok {
			r.Gears = axis.ToothPairs(stages)
		} else {
			r.NoGears = []string{"driving", "driven"}
		}
	case s.Gears.Rows[i].Word == "ratio":
		r.needs = append(r.needs, "ratio")
		r.Gears = axis.PlainRatio(s.Ratio.Rows[i].Number)
		if !s.Ratio.Rows[i].Given {
			r.NoGears = []string{"ratio"}
		}
	}
}

func (s *entries) Solve() report.Report {
	r := report.Report{Parts: []report.Part{whereToRead, axis.Meaning}, Care: careFirst, Picture: guide()}
	var rows []*row
	var above []string // what the rows before depend on: the headline is of the first that answers
	fields := s.Fields()
	for i := range s.Name.Rows {
		if i > 0 && axis.Blank(fields, i) {
			continue
		}
		if a, b := len(s.Driving.Rows[i].Value), len(s.Driven.Rows[i].Value); a > 0 && b > 0 && a != b {
			r.Problems = append(r.Problems, report.Problem{Key: "driven", Row: i,
				Says: unpairedStages.Fill("motor", strconv.Itoa(a), "here", strconv.Itoa(b))})
		}
		axis.ReadTeeth(&r.Remarks, i, s.Driving.Rows[i], s.Driven.Rows[i])
		axis.ReadRatio(&r.Remarks, "ratio", i, &s.Ratio.Rows[i])
		row := s.row(i)
		row.out.Read(&r.Remarks, "", i)
		row.unsure = row.out.DoubtPitch(&r.Remarks, "", i)
		if row.find != findElement {
			r.Problems = append(r.Problems, row.out.Problems("", i)...)
		}
		row.solve()
		above = append(above, row.needs...)
		if row.found != nil {
			rows = append(rows, row)
		}
		if row.found != nil && r.Answer == nil {
			r.Answer = row.answer(above)
			row.doubts = nil // the headline has them
		}
		part := row.part()
		if row.found != nil {
			part.Fold(row.found.String())
		}
		r.Add(part)
	}
	if len(rows) > 1 {
		r.AddFirst(glance(rows, above))
	}
	if slices.ContainsFunc(rows, func(r *row) bool { return r.find == findSetting }) {
		r.Add(&firstMove)
	}
	return r
}

// solve finds what is wanted of an axis.
func (r *row) solve() {
	switch {
	case r.find == findSetting:
		r.findSetting()
	case r.find == findGears && r.Setting.Convention == drive.TravelPerOutputTurn:
		r.blocks = []report.Block{report.DoubtNote(sameWithAnyGears)}
	case r.find == findGears:
		r.findGears()
	case r.Rotary:
		r.blocks = []report.Block{report.DoubtNote(noSize)}
	case r.out.Kind.Word == "differential":
		r.blocks = []report.Block{report.DoubtNote(twoLeads)}
	default:
		r.findElement()
	}
	if r.found != nil {
		r.doubt()
	}
}

// lacks asks for what is missing; it reports whether anything is.
func (r *row) lacks(what string, keys []string) bool {
	if len(keys) > 0 {
		r.blocks = append(r.blocks, report.Ask{Keys: keys, For: what})
	}
	return len(keys) > 0
}

// finds makes a figure the one that was wanted.
func (r *row) finds(f *report.Figure, says string) { r.found, r.says = f, says }

// tell adds the numbers of the axis.
func (r *row) tell() {
	figures, asks := r.Numbers()
	r.figures, r.blocks = append(r.figures, figures...), append(r.blocks, asks...)
}

// stepsName is what the setting that is found is called where it is asked for.
func (r *row) stepsName() string {
	if r.Rotary {
		return askStepsDeg
	}
	return askSteps
}

func (r *row) findSetting() {
	if len(r.missing) > 0 {
		r.lacks(r.stepsName(), lists.Concat(r.missing, r.NoGears, r.NoMotor))
		return
	}
	r.tell()
	if len(r.NoGears) == 0 {
		r.figures.Add(r.Figure("ratio", ratioLabel, r.Gears.Reduction(), ""))
	}
	if steps, missing := r.In(drive.StepsPerUnit); len(missing) == 0 {
		says := trust.Of(r.out.Sort())
		if _, pitch := r.out.DoubtLead(); pitch || r.unsure {
			says = checkThePart
		}
		r.finds(axis.SettingFigure(axis.AsSteps, steps, r.Rotary, 7, false), says)
	}
}

func (r *row) findElement() {
	travel, missing := r.In(drive.TravelPerOutputTurn)
	if r.lacks(askSize, lists.Concat(r.missing, r.out.MissingPitch(), missing)) {
		return
	}
	i := r.out.Implied(travel.Value)
	f := r.Figure(i.ID, i.Label, i.Value, i.Unit)
	r.figures = report.FigureList{*f}
	r.finds(f, whereItGrips)
	if r.out.Sort() == "drum" {
		r.says = lessTheCable
	}
	if i.Nearest > 0 {
		r.says = r.compare(i)
	}
	r.tell()
}

func (r *row) findGears() {
	element, missingElement := r.out.Element("")
	turn, missing := r.In(drive.TravelPerTurn)
	if r.lacks(askRatio, lists.Concat(r.missing, missingElement, missing)) {
		return
	}
	ratio := drive.PerTurn(element) / turn.Value
	r.Gears = axis.PlainRatio(ratio)
	f := r.Figure("ratio", ratioLabel, ratio, "")
	r.figures = report.FigureList{*f}
	r.finds(f, ratioMeans)
	if r.beside > 0 {
		i := axis.ImpliedGear(ratio, r.beside)
		r.figures.Add(r.Figure(i.ID, i.Label, i.Value, i.Unit))
		r.says = r.compare(i)
	} else {
		r.lacks(askDriven, []string{"beside"})
	}
	r.tell()
}

// compare shows what is implied beside the nearest part that is made.
func (r *row) compare(i axis.Implied) string {
	fitting := r.Setting.Corrected(i.Value / i.Nearest) // steps go with 1/size, travel with size
	if r.find == findGears {
		fitting = r.Setting.Corrected(i.Nearest / i.Value)
	}
	f := axis.SettingFigure("fitting-"+r.N, fitting, r.Rotary, axis.Digits, false)
	f.Label = fittingLabel
	off := &report.Figure{ID: "off-" + r.N, Label: offLabel, Value: 100 * i.Off(), Unit: "%", Digits: 3}
	r.figures.Add(r.Figure("nearest", nearestLabel, i.Nearest, i.Unit), off, f)
	return i.Says()
}

// What small machines have. The bounds are round and our own judgement: wide
// enough for a coarse belt and for a fine worm, narrow enough to catch a ratio
// that is turned round and inches taken for millimetres.
const (
	fewestSteps, mostSteps       = 10, 100_000 // per mm: a microstep of 0.1 mm to 10 nm
	fewestStepsDeg, mostStepsDeg = 0.5, 100_000
	leastDiameter, mostDiameter  = 3, 40 // mm, of a drive gear
)

// doubt says what is outside of that, and what to look at.
func (r *row) doubt() {
	least, most := float64(fewestSteps), float64(mostSteps)
	if r.Rotary {
		least, most = fewestStepsDeg, mostStepsDeg
	}
	if s, missing := r.In(drive.StepsPerUnit); len(missing) == 0 && (s.Value < least || s.Value > most) {
		r.doubts = append(r.doubts, report.DoubtNote(oddSetting, "setting", axis.SettingFigure("", s, r.Rotary, 4, false),
			"least", unit.Trim(least, 7), "most", unit.Trim(most, 7)))
	}
	diameter := r.out.Diameter.Number
	if r.find == findElement {
		diameter = r.found.Value
	}
	if r.out.Kind.Word == "roller" && (diameter < leastDiameter || diameter > mostDiameter) {
		r.doubts = append(r.doubts, report.DoubtNote(oddDiameter, "diameter", unit.Trim(diameter, 7),
			"least", strconv.Itoa(leastDiameter), "most", strconv.Itoa(mostDiameter)))
	}
	if teeth := r.found.Value; r.find == findElement && r.out.Sort() == "belt" && teeth < axis.FewestUsual &&
		r.Setting.Convention == drive.StepsPerUnit {
		micro := 2 * int(r.Motor.Microsteps)
		r.doubts = append(r.doubts, report.DoubtNote(fewTeeth, "fewest", strconv.Itoa(axis.FewestUsual),
			"setting", axis.SettingFigure("", r.Setting, r.Rotary, axis.Digits, false), "micro", strconv.Itoa(micro), "teeth", unit.Trim(2*teeth, 3)))
	}
	if note, ok := r.out.DoubtLead(); ok {
		r.doubts = append(r.doubts, note)
	}
	if r.find == findElement && r.Setting.Convention == drive.StepsPerUnit {
		r.doubtMicrosteps()
	}
	if len(r.NoGears) == 0 && r.Gears.Reduction() < 1 {
		r.doubts = append(r.doubts, axis.TurnsFaster)
	}
}

// doubtMicrosteps says which part a setting asks for that was made at fewer microsteps, where that
// is a usual one: the driver may have been changed since. Half the microsteps are the likeliest.
// Of screws, whose usual leads are halves of each other, settings at 8 are not thought of.
func (r *row) doubtMicrosteps() {
	least, says := 8, pulleyAtFewer
	switch r.out.Sort() {
	case "screw":
		least, says = 16, screwAtFewer
	case "belt":
	default:
		return
	}
	travel, _ := r.In(drive.TravelPerOutputTurn)
	micro := int(r.Motor.Microsteps)
	for by := 2; micro%by == 0 && micro/by >= least; by *= 2 {
		if i := r.out.Implied(travel.Value / float64(by)); i.Usual() {
			r.doubts = append(r.doubts, report.DoubtNote(says, "micro", strconv.Itoa(micro), "fewer", strconv.Itoa(micro/by), "size", unit.Trim(i.Nearest, 7)))
			return
		}
	}
}
