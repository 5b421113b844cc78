package calc

import (
	"slices"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

// The rate page takes from others: for each axis name, moves (linear, feed,
// rotary), the setting as convert has it (as, steps, stepsdeg, turn, turndeg,
// output, outputdeg, angle, micro, ratio), speeds (work, workdeg, fast,
// fastdeg, back: mm/s or °/s), accel, and with compare=swap what is there after
// the swap (stepsnew, stepsdegnew, anglenew, micronew); then limit and share.
var ratePage = Page{
	Slug:     "rate",
	Menu:     "Rate",
	Title:    "Speed and step rate",
	Question: "How many pulses per second does that take, and where is the limit?",
	About:    "Pulses per second at your speeds, the highest speed that a controller's limit allows, the smallest move, and what a swap changes about them.",
	New:      func() Sheet { return newRate() },
	Example: "v=1&name=Heron%20feed,Plover%20X,Plover%20Z&moves=feed&steps=564.3,88.8889,800&angle=1.8,1.8,1.8&micro=16,16,16" +
		"&work=3,50,5&fast=,200,12&back=45&accel=,1500,100&limit=40kHz",
	Outputs: []Output{
		{"most", "Highest pulse rate that the speeds take", "pulses/s"},
		{"work", "Pulse rate at the working speed", "pulses/s"},
		{"fast", "Pulse rate at the travel speed", "pulses/s"},
		{"back", "Pulse rate at the retraction speed", "pulses/s"},
		{"accel", "Pulse rate gained in a second", "pulses/s²"},
		{"microstep", "Travel per microstep", "mm or °"},
		{"fullstep", "Travel per full step", "mm or °"},
		{"allwork", "Pulse rate of all axes together, at their working speeds", "pulses/s"},
		{"allfast", "Pulse rate of all axes together, at their travel speeds", "pulses/s"},
		{"top", "Highest speed that the limit allows an axis alone", "mm/s or °/s"},
		{"slower", "Part of the speeds that the limit allows, all axes together", "%"},
		{"new-work", "Pulse rate at the working speed, after the swap", "pulses/s"},
		{"new-fast", "Pulse rate at the travel speed, after the swap", "pulses/s"},
		{"new-back", "Pulse rate at the retraction speed, after the swap", "pulses/s"},
		{"new-top", "Highest speed that the limit allows, after the swap", "mm/s or °/s"},
		{"new-microstep", "Travel per microstep, after the swap", "mm or °"},
		{"torque", "Torque behind one microstep, of the holding torque", "%"},
		{"holds", "Torque behind one microstep", "N·m"},
		{"new-torque", "Torque behind one microstep, of the holding torque, after the swap", "%"},
		{"new-holds", "Torque behind one microstep, after the swap", "N·m"},
		{"swing", "Time in which the current swings over", "ms"},
		{"fullrate", "Full steps per second at which it just does", "steps/s"},
		{"corner", "Ideal corner speed of the motor", "rev/s"},
		{"rpm", "Ideal corner speed of the motor", "rev/min"},
		{"follow", "Speed of the axis at it", "mm/s or °/s"},
	},
	Tasks: []Task{
		{"Is my controller fast enough?", "Pulses per second at your speeds, and the highest speed at its limit.", ""},
	},
}

// A rateSheet is a table of axes with their speeds, and what limits them.
type rateSheet struct {
	Compare Choice
	axis    *Group
	Name    textList
	Moves   choiceList
	scaleRows
	motorRows
	Ratio    ratioList
	Work     speedList
	WorkDeg  turningList
	Fast     speedList
	FastDeg  turningList
	Back     speedList
	Accel    rateUpList
	StepsNew perLength // after the swap
	DegNew   perAngle
	newMotor motorRows

	Limit      unit.Input[unit.PulseRate]
	Share      Choice
	Hold       unit.Input[unit.Torque]
	Supply     unit.Input[unit.Voltage]
	Inductance unit.Input[unit.Inductance]
	Current    unit.Input[unit.Current]
}

func newRate() *rateSheet {
	speeds := func() speedList {
		return listOf[unit.Input[unit.Speed], *unit.Input[unit.Speed]](unit.Speeds.Input("mm/s", 0.0001, 10_000))
	}
	turning := func() turningList {
		return listOf[unit.Input[unit.AngularSpeed], *unit.Input[unit.AngularSpeed]](unit.AngularSpeeds.Input("°/s", 0.0001, 360_000))
	}
	return &rateSheet{
		Compare:   choose(Option{"none", "As it is", ""}, Option{"swap", "Before and after a swap", "another setting or other microsteps"}),
		axis:      &Group{Noun: "axis", Least: 1, Most: MostRows},
		Name:      nameList(),
		Moves:     listOf[Choice, *Choice](choose(Option{"linear", "In mm", "carriage, nut"}, Option{"feed", "Filament", "with a retraction speed"}, Option{"rotary", "In degrees", "table, spindle"})),
		scaleRows: newScaleRows(), motorRows: newMotorRows(), Ratio: ratioRows(),
		Work: speeds(), WorkDeg: turning(), Fast: speeds(), FastDeg: turning(), Back: speeds(),
		Accel:    listOf[unit.Input[unit.Acceleration], *unit.Input[unit.Acceleration]](unit.Accelerations.Input("mm/s²", 0.1, unit.Million)),
		StepsNew: listOf[unit.Input[unit.StepsPerLength], *unit.Input[unit.StepsPerLength]](stepsInput()),
		DegNew:   listOf[unit.Input[unit.StepsPerAngle], *unit.Input[unit.StepsPerAngle]](stepsDegInput()),
		newMotor: newMotorRows(),
		Limit:    unit.PulseRates.Input("pulses/s", 100, 100*unit.Million),
		Share: choose(Option{"axis", "For each axis", "every axis can have that many"},
			Option{"all", "For all together", "the axes that move at once share it"}),
		Hold:       unit.Torques.Input("N·m", 0.0001, 100),
		Supply:     unit.Voltages.Input("V", 1, 1000),
		Inductance: unit.Inductances.Input("mH", 0.001, 1000),
		Current:    unit.Currents.Input("A", 0.001, 100),
	}
}

func (s *rateSheet) Fields() []Field {
	what, axes := &Section{Title: "What to look at"}, &Section{Title: "Axes"}
	limit := &Section{Title: "The controller's limit"}
	motor := &Section{Title: "The motor's data sheet", Folded: true}
	mm, deg := when("moves", "linear", "feed"), when("moves", "rotary")
	swap := when("compare", "swap")
	col := func(key, label, hint string, on []When, cells Cells, suggest ...string) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: axes, When: on, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	const inSeconds = "A number alone is in mm per second; or write 3000 mm/min."
	const turns = "In degrees per second; or write 15 rev/min."
	after := s.newMotor.fields(axes, s.axis, swap)
	for i := range after {
		after[i].Key += fresh
		after[i].Label += " after the swap"
		after[i].Hint = ""
		after[i].Carry = false
	}
	return concat(
		[]Field{
			{Key: "compare", Label: "Look at it", Section: what, Cells: one(&s.Compare)},
			col("name", "Name", "", nil, &s.Name), col("moves", "It moves", "", nil, &s.Moves),
		},
		s.scaleRows.fields(axes, s.axis, "Given is", nil, mm, deg),
		s.motorRows.fields(axes, s.axis, nil),
		[]Field{
			col("ratio", "Gear ratio", "Motor turns for one output turn: 54:12, or 4.5.", when("as", asOutput), &s.Ratio, "1"),
			col("work", "Working speed", inSeconds, mm, &s.Work),
			col("workdeg", "Working speed", turns, deg, &s.WorkDeg),
			col("fast", "Travel speed", "Where it moves without working. "+inSeconds, when("moves", "linear"), &s.Fast),
			col("fastdeg", "Travel speed", turns, deg, &s.FastDeg),
			col("back", "Retraction speed", "The fastest that a feeder moves. "+inSeconds, when("moves", "feed"), &s.Back),
			col("accel", "Acceleration", "In mm/s², if you know it; not for axes in degrees.", mm, &s.Accel),
			col("stepsnew", "Steps per mm after the swap", "Leave it empty if only motor or microsteps change.", concat(swap, mm), &s.StepsNew),
			col("stepsdegnew", "Steps per degree after the swap", "", concat(swap, deg), &s.DegNew),
		},
		after,
		[]Field{
			{Key: "limit", Label: "The most pulses per second", Hint: "That the controller makes: 40000, or 40 kHz.", Section: limit, Cells: one(&s.Limit)},
			{Key: "share", Label: "It is meant", Section: limit, Cells: one(&s.Share)},
			{Key: "hold", Label: "Holding torque", Hint: "From the motor's data sheet.", Section: motor, Cells: one(&s.Hold)},
			{Key: "supply", Label: "Supply voltage of the driver", Hint: "From its label: no need to touch any wiring.", Section: motor, Cells: one(&s.Supply)},
			{Key: "inductance", Label: "Inductance of a phase", Hint: "From the motor's data sheet, as it is wired. A number alone is in mH.", Section: motor, Cells: one(&s.Inductance)},
			{Key: "current", Label: "Peak current of a phase", Hint: "As the driver is set. Where an effective value is stated, the peak is 1.41 times that.", Section: motor, Cells: one(&s.Current)},
		},
	)
}

// A rated is a setting with what is told of the motor; what is not is 0.
type rated struct {
	steps float64 // per mm or degree
	motor drive.Motor
}

// A speed is one at which an axis is asked to move.
type speed struct {
	id, word string
	value    float64 // mm/s or °/s
}

// A rateRow is one axis, read.
type rateRow struct {
	n, name string
	rotary  bool
	was, is rated // is: after the swap, if it can be told; else as it was
	swapped bool
	speeds  []speed
	accel   float64
	blocks  []Block // asks
	needs   []string
}

func (s *rateSheet) row(i int) *rateRow {
	moves := s.Moves.Rows[i].Word
	r := &rateRow{n: itoa(i + 1), name: axisName(s.Name.Rows[i], i), rotary: moves == "rotary", accel: float64(s.Accel.Rows[i].Value)}
	f := fact{rotary: r.rotary, gears: plainRatio(s.Ratio.Rows[i].Value)}
	motor := s.motorRows.at(i)
	f.motor, _ = motor.motor()
	f.noMotor = motor.missing()
	if !s.Ratio.Rows[i].Given {
		f.noGears = []string{"ratio"}
	}
	var key string
	var given bool
	f.setting, key, given = s.scaleRows.at(i).setting(r.rotary)
	r.needs = []string{"compare", "name", "moves", "as", key, "angle", "micro"}
	if f.setting.Convention == drive.TravelPerOutputTurn {
		r.needs = append(r.needs, "ratio")
	}
	steps, missing := f.in(drive.StepsPerUnit)
	if !given {
		missing = append([]string{key}, missing...)
	}
	if len(missing) > 0 {
		r.blocks = append(r.blocks, Ask{missing, "pulses per second"})
		return r
	}
	r.was = rated{steps.Value, f.motor}
	s.readSpeeds(r, i, moves)
	s.readSwap(r, i)
	return r
}

func (s *rateSheet) readSpeeds(r *rateRow, i int, moves string) {
	read := func(id, key, word string, in reading) {
		r.needs = append(r.needs, key)
		if in.given {
			r.speeds = append(r.speeds, speed{id, word, in.value})
		}
	}
	ask := []string{"work"}
	if moves == "rotary" {
		ask = []string{"workdeg"}
		read("work", "workdeg", "working speed", given(s.WorkDeg.Rows[i]))
		read("fast", "fastdeg", "travel speed", given(s.FastDeg.Rows[i]))
	} else {
		r.needs = append(r.needs, "accel")
		read("work", "work", "working speed", given(s.Work.Rows[i]))
	}
	switch moves {
	case "linear":
		read("fast", "fast", "travel speed", given(s.Fast.Rows[i]))
	case "feed":
		read("back", "back", "retraction speed", given(s.Back.Rows[i]))
	}
	if len(r.speeds) == 0 {
		r.blocks = append(r.blocks, Ask{ask, "pulses per second"})
	}
}

// readSwap reads what is there after the swap: a new setting, or the old one
// with another motor or other microsteps.
func (s *rateSheet) readSwap(r *rateRow, i int) {
	r.is = r.was
	if s.Compare.Word != "swap" {
		return
	}
	steps, key := given(s.StepsNew.Rows[i]), "stepsnew"
	if r.rotary {
		steps, key = given(s.DegNew.Rows[i]), "stepsdegnew"
	}
	now := s.newMotor.at(i)
	r.needs = append(r.needs, key, "anglenew", "micronew")
	var was, is drive.Parts
	if now.Angle.Given {
		was.StepAngle, is.StepAngle = r.was.motor.StepAngle, now.Angle.Value
		r.is.motor.StepAngle = now.Angle.Value
	}
	if now.Micro.Given {
		was.Microsteps, is.Microsteps = r.was.motor.Microsteps, now.Micro.Value
		r.is.motor.Microsteps = now.Micro.Value
	}
	var missing []string
	factors, err := drive.Rescale(was, is)
	switch {
	case steps.given:
		r.is.steps = steps.value
	case !now.Angle.Given && !now.Micro.Given:
		missing = []string{key}
	case err != nil: // a part is told on one side only
		if now.Angle.Given && was.StepAngle == 0 {
			missing = append(missing, "angle")
		}
		if now.Micro.Given && was.Microsteps == 0 {
			missing = append(missing, "micro")
		}
	default:
		r.is.steps = r.was.steps * factors.Steps
	}
	if r.swapped = len(missing) == 0; !r.swapped {
		r.is = r.was
		r.blocks = append(r.blocks, Ask{missing, "what the swap changes"})
	}
}

func (s *rateSheet) Solve() Report {
	a := rates{sheet: s}
	fields := s.Fields()
	r := Report{Parts: []Part{aboutPulses}}
	for i := range s.Name.Rows {
		if i > 0 && blank(fields, i) {
			continue
		}
		row := s.row(i)
		a.needs = append(a.needs, row.needs...)
		r.Parts = append(r.Parts, row.part())
		if row.was.steps > 0 {
			a.rows = append(a.rows, row)
		}
	}
	if len(a.rows) == 0 {
		return r
	}
	a.sum()
	r.Answer = a.answer()
	if len(a.rows) > 1 {
		r.Parts = slices.Insert(r.Parts, 1, a.glance())
	}
	for _, p := range []func() (Part, bool){a.together, a.limits, a.after, a.torque, a.corner} {
		if part, ok := p(); ok {
			r.Parts = append(r.Parts, part)
		}
	}
	return r
}

func (r *rateRow) figure(id, label string, v float64, u string) Figure {
	if id != "" {
		id += "-" + r.n
	}
	return Figure{ID: id, Label: label, Value: v, Unit: u, Digits: rateDigits}
}

const rateDigits = 6

// mm is the unit of the axis' travel, with what comes after it.
func (r *rateRow) mm(per string) string {
	if r.rotary {
		return "°" + per
	}
	return "mm" + per
}

func (r *rateRow) rate(id string, s speed, at rated) Figure {
	return r.figure(id, "Pulses per second at "+s.word, float64(drive.PulseRate(s.value, at.steps)), "pulses/s")
}

// part is what an axis takes and how finely it moves, as it is before a swap.
func (r *rateRow) part() Part {
	p := Part{ID: "axis-" + r.n, Title: r.name, Needs: r.needs, Blocks: r.blocks}
	if r.was.steps == 0 {
		return p
	}
	var figures []Figure
	for _, s := range r.speeds {
		figures = append(figures, r.rate(s.id, s, r.was))
	}
	if r.accel > 0 {
		figures = append(figures, r.figure("accel", "Pulse rate gained in a second", r.accel*r.was.steps, "pulses/s²"))
	}
	figures = append(figures, r.figure("microstep", "Smallest move, a microstep", 1/r.was.steps, r.mm("")))
	if m := r.was.motor.Microsteps; m > 0 {
		figures = append(figures, r.figure("fullstep", "A full step", float64(m)/r.was.steps, r.mm("")))
	} else {
		p.Blocks = append(p.Blocks, Ask{[]string{"micro"}, "travel per full step and torque"})
	}
	p.Blocks = append([]Block{Figures{figures}}, p.Blocks...)
	return p
}

// rates are the axes that can be told, on their way into words.
type rates struct {
	sheet *rateSheet
	rows  []*rateRow
	sums  []speed // of pulses per second, at one sort of speed
	needs []string
}

// sum adds up the axes that have a speed of the same sort.
func (a *rates) sum() {
	for _, at := range []speed{{"allwork", "working speed", 0}, {"allfast", "travel speed", 0}} {
		n := 0
		for _, r := range a.rows {
			for _, s := range r.speeds {
				if s.word == at.word {
					at.value += float64(drive.PulseRate(s.value, r.is.steps))
					n++
				}
			}
		}
		if n > 1 {
			a.sums = append(a.sums, at)
		}
	}
}

// shared reports whether all axes together have the limit.
func (a *rates) shared() bool { return a.sheet.Share.Word == "all" }

func (a *rates) swap() bool { return a.sheet.Compare.Word == "swap" }

func afterwards(yes bool) string {
	if yes {
		return ", after the swap"
	}
	return ""
}

// A demand is a pulse rate with who asks for it.
type demand struct {
	who, at string
	rate    float64
	cure    string // besides fewer microsteps
}

// demands are all that the limit is held against, the greatest first.
func (a *rates) demands() []demand {
	var all []demand
	limit := float64(a.sheet.Limit.Value)
	if a.shared() {
		for _, s := range a.sums {
			all = append(all, demand{"All axes together", s.word, s.value, "or " + unit.Trim(100*limit/s.value, 3) + " % of these speeds"})
		}
	}
	for _, r := range a.rows {
		top := r.figure("", "", drive.TopSpeed(a.sheet.Limit.Value, r.is.steps), r.mm("/s"))
		top.Digits = 4
		for _, s := range r.speeds {
			all = append(all, demand{r.name, s.word, float64(drive.PulseRate(s.value, r.is.steps)), "or at most " + top.String()})
		}
	}
	slices.SortStableFunc(all, func(x, y demand) int {
		switch {
		case x.rate > y.rate:
			return -1
		case x.rate < y.rate:
			return 1
		}
		return 0
	})
	return all
}

func (d demand) over(limit unit.PulseRate) Note {
	return Note{Doubt, say(d.who + " at " + d.at + " needs " + unit.Trim(d.rate, rateDigits) + " pulses/s, more than the limit of " +
		unit.Trim(float64(limit), rateDigits) + ": not possible. Fewer microsteps would cure it, " + d.cure + ".")}
}

func (a *rates) answer() *Answer {
	all := a.demands()
	if len(all) == 0 {
		return nil
	}
	most, limit := all[0], a.sheet.Limit
	ans := &Answer{
		Figure: Figure{ID: "most", Label: most.who + " at " + most.at + afterwards(a.swap()), Value: most.rate, Unit: "pulses/s", Digits: rateDigits},
		Says:   say("The highest rate of all. Give the most pulses per second that your controller makes to see what speeds it allows."),
		Needs:  concat(a.needs, []string{"limit", "share"}),
	}
	switch {
	case limit.Given && most.rate > float64(limit.Value):
		ans.Says = say("The highest rate of all. Your controller does not reach it.")
		ans.Notes = []Note{most.over(limit.Value)}
	case limit.Given:
		ans.Says = say("The highest rate of all. It is " + unit.Trim(100*most.rate/float64(limit.Value), 3) + " % of your controller's limit: possible.")
	}
	return ans
}

// glance is every axis at every speed, side by side.
func (a *rates) glance() Part {
	t := Table{Caption: "All axes", Head: []string{"Axis", "At", "Pulses per second"}}
	for _, r := range a.rows {
		for _, s := range r.speeds {
			t.Rows = append(t.Rows, []Line{say(r.name), say(s.word+", ", r.figure("", "", s.value, r.mm("/s"))), say(r.rate("", s, r.was))})
		}
	}
	return Part{ID: "all", Title: "All axes at a glance", Needs: a.needs, Blocks: []Block{t}}
}

func (a *rates) together() (Part, bool) {
	p := Part{ID: "together", Title: "All axes at once", Needs: a.needs}
	var figures []Figure
	for _, s := range a.sums {
		figures = append(figures, Figure{ID: s.id, Label: "Together, each at its " + s.word + afterwards(a.swap()), Value: s.value, Unit: "pulses/s", Digits: rateDigits})
	}
	p.Blocks = []Block{Figures{figures}, Para{say("As if every axis of the table that has such a speed moved at that speed at the same moment: the most there can be. Leave axes out that never move together.")}}
	return p, len(figures) > 0
}

// limits is what the controller's limit allows.
func (a *rates) limits() (Part, bool) {
	p := Part{ID: "limit", Title: "What the limit allows" + afterwards(a.swap()), Needs: concat(a.needs, []string{"limit", "share"})}
	limit := a.sheet.Limit
	if !limit.Given {
		p.Blocks = []Block{Ask{[]string{"limit"}, "the highest speeds"}}
		return p, true
	}
	var figures []Figure
	for _, r := range a.rows {
		id := "top"
		if a.swap() {
			id = "" // the table of before and after has both
		}
		figures = append(figures, r.figure(id, r.name+", highest speed alone", drive.TopSpeed(limit.Value, r.is.steps), r.mm("/s")))
	}
	all := a.demands()
	if a.shared() && len(a.sums) > 0 {
		most := max(a.sums[0].value, a.sums[len(a.sums)-1].value)
		figures = append(figures, Figure{ID: "slower", Label: "All together: part of these speeds that it allows", Value: 100 * float64(limit.Value) / most, Unit: "%", Digits: 4})
	}
	p.Blocks = []Block{Figures{figures}}
	over := keepDemands(all, float64(limit.Value))
	for _, d := range over {
		p.Blocks = append(p.Blocks, d.over(limit.Value))
	}
	if len(over) == 0 && len(all) > 0 {
		p.Blocks = append(p.Blocks, Para{say("All speeds that you gave are possible.")})
	}
	return p, true
}

func keepDemands(all []demand, above float64) []demand {
	i := slices.IndexFunc(all, func(d demand) bool { return d.rate <= above })
	if i < 0 {
		return all
	}
	return all[:i] // the greatest come first
}

// after is what a swap changes.
func (a *rates) after() (Part, bool) {
	t := Table{Caption: "Before and after", Head: []string{"", "Before", "After"}}
	for _, r := range a.rows {
		if !r.swapped {
			continue
		}
		add := func(label string, before, after Figure) {
			t.Rows = append(t.Rows, []Line{say(r.name + ", " + label), say(before), say(after)})
		}
		for _, s := range r.speeds {
			add("pulses per second at "+s.word, r.rate("", s, r.was), r.rate("new-"+s.id, s, r.is))
		}
		if limit := a.sheet.Limit; limit.Given {
			add("highest speed", r.figure("top", "Highest speed", drive.TopSpeed(limit.Value, r.was.steps), r.mm("/s")),
				r.figure("new-top", "Highest speed", drive.TopSpeed(limit.Value, r.is.steps), r.mm("/s")))
		}
		add("smallest move", r.figure("", "Microstep", 1/r.was.steps, r.mm("")), r.figure("new-microstep", "Microstep", 1/r.is.steps, r.mm("")))
	}
	return Part{ID: "after", Title: "Before and after the swap", Needs: concat(a.needs, []string{"limit"}), Blocks: []Block{t}}, len(t.Rows) > 0
}

// torque is what is behind one microstep.
func (a *rates) torque() (Part, bool) {
	p := Part{ID: "torque", Title: "What microsteps do to torque", Folded: true, Needs: concat(a.needs, []string{"hold"})}
	var figures []Figure
	add := func(r *rateRow, prefix, when string, m unit.Count) {
		if m == 0 {
			return
		}
		share := drive.IncrementalTorque(m)
		f := r.figure(prefix+"torque", r.name+", "+plural(int(m), "microstep", "microsteps")+when, 100*share, "%")
		f.Digits = 3
		figures = append(figures, f)
		if hold := a.sheet.Hold; hold.Given {
			f := r.figure(prefix+"holds", r.name+", that is", share*float64(hold.Value), "N·m")
			f.Digits = 3
			figures = append(figures, f)
		}
	}
	for _, r := range a.rows {
		add(r, "", "", r.was.motor.Microsteps)
		if r.swapped {
			add(r, "new-", " after the swap", r.is.motor.Microsteps)
		}
	}
	p.Blocks = []Block{
		Para{say("Torque behind one microstep, of the holding torque; a full step has all of it.")}, Figures{figures},
		Para{say("That is less torque for one small step, not holding torque lost: the axis gives way by more microsteps until the torque is there. So finer microsteps make motion smoother; they do not make the position that much finer.")},
	}
	return p, len(figures) > 0
}

// corner is where a motor's current can no longer follow.
func (a *rates) corner() (Part, bool) {
	p := Part{ID: "corner", Title: "When the motor cannot follow: a rule of thumb", Folded: true,
		Needs: concat(a.needs, []string{"supply", "inductance", "current"})}
	s := a.sheet
	var missing []string
	for _, e := range []struct {
		key   string
		given bool
	}{{"supply", s.Supply.Given}, {"inductance", s.Inductance.Given}, {"current", s.Current.Given}} {
		if !e.given {
			missing = append(missing, e.key)
		}
	}
	turning := slices.DeleteFunc(slices.Clone(a.rows), func(r *rateRow) bool { return r.is.motor.StepAngle == 0 || r.is.motor.Microsteps == 0 })
	if len(turning) == 0 {
		missing = append(missing, "angle", "micro")
	}
	p.Blocks = []Block{caution("wiring"), caution("mains")}
	if len(missing) > 0 {
		p.Blocks = append(p.Blocks, Ask{missing, "the ideal corner speed"})
		return p, true
	}
	t := Table{Caption: "The ideal corner speed", Head: []string{"Axis", "Motor", "", "Axis moves"}}
	var doubts []Block
	var c drive.Corner
	for _, r := range turning {
		c = drive.CornerOf(s.Supply.Value, s.Inductance.Value, s.Current.Value, r.is.motor.FullSteps())
		follow := c.Turns * r.is.motor.Pulses() / r.is.steps
		t.Rows = append(t.Rows, []Line{say(r.name), say(r.figure("corner", "Corner", c.Turns, "rev/s")), say(r.figure("rpm", "Corner", c.Turns*unit.Minute, "rev/min")),
			say(r.figure("follow", "Speed", follow, r.mm("/s")))})
		for _, sp := range r.speeds {
			if sp.value > follow {
				doubts = append(doubts, Note{Doubt, say(r.name + " at " + sp.word + " is faster than that: expect much less torque there.")})
			}
		}
	}
	p.Blocks = append(p.Blocks,
		Figures{[]Figure{
			{ID: "swing", Label: "The current swings over in", Value: 1000 * float64(c.PerFullStep), Unit: "ms", Digits: 4},
			{ID: "fullrate", Label: "Full steps per second at which it just does", Value: c.FullSteps, Unit: "steps/s", Digits: rateDigits},
		}}, t)
	p.Blocks = append(p.Blocks, doubts...)
	p.Blocks = append(p.Blocks, Para{say("A rule of thumb: an ideal winding whose current must swing from one peak to the other within a full step. The winding's resistance, " +
		"the voltage that the turning motor makes itself (back-EMF) and the load are left out, so torque begins to fall before this speed. " +
		"It takes the same motor, supply and current on every axis" + afterwards(a.swap()) + ".")})
	return p, true
}

// aboutPulses explains what is counted.
var aboutPulses = Part{ID: "pulses", Title: "What is counted here", Guide: true, Blocks: []Block{
	Points{[]Line{
		say("The controller sends one pulse for each microstep: pulses per second are speed times steps per mm."),
		say("How many it can send is in its documents, for one axis or for all together. Above that it skips, or moves slower than it was told."),
		say("Speeds are those that you use: from the program that prepares the job, or from your own settings. Here a number alone is in mm per second; on the page that measures it is in mm per minute."),
	}},
}}
