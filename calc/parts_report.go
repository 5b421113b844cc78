package calc

import (
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/unit"
)

func (r *partsRow) answer(needs []string) *Answer {
	f := *r.found
	f.ID, f.Label = strings.TrimSuffix(f.ID, "-"+r.n), r.name+", "+lower(f.Label)
	return &Answer{Figure: f, Says: say(r.says), Notes: r.doubts, Needs: needs}
}

func (r *partsRow) part() *Part {
	p := &Part{ID: "axis-" + r.n, Title: r.name, Needs: r.needs}
	if r.found != nil {
		p.add(para("With "+r.describe()+":"), Figures{r.figures}, para(r.says))
	} else {
		p.add(Figures{r.figures})
	}
	if d, ok := r.drawing(); ok {
		p.add(d)
	}
	p.add(r.blocks...)
	for _, n := range r.doubts {
		p.add(n)
	}
	if r.found != nil && r.find == findSetting {
		p.add(Links{r.links()})
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
func glance(rows []*partsRow, needs []string) *Part {
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
		t.row(r.name, &found, beside)
	}
	return &Part{ID: "all", Title: "All axes at a glance", Needs: needs, Blocks: []Block{t}}
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
	return fills("angle"+suffix, unit.Full(float64(r.motor.StepAngle)), "micro"+suffix, strconv.Itoa(int(r.motor.Microsteps)))
}

func (r *partsRow) handedGears(suffix string) []entry {
	if ratio, ok := r.gears.(plainRatio); ok {
		return fills("gears"+suffix, "ratio", "ratio"+suffix, unit.Full(float64(ratio)))
	}
	var driving, driven []string
	for _, s := range r.gears.(toothPairs) {
		driving, driven = append(driving, strconv.Itoa(int(s.Driving))), append(driven, strconv.Itoa(int(s.Driven)))
	}
	if driving == nil {
		return fills("gears"+suffix, "none")
	}
	return []entry{fill("gears"+suffix, "pairs"), fill("driving"+suffix, driving...), fill("driven"+suffix, driven...)}
}

// links lead on with what was found.
func (r *partsRow) links() []Link {
	links := []Link{r.toMeasure(), r.toSwap(), r.toRate()}
	if !r.rotary {
		links = append(links, hand("Plan a test of it", "plan", lists.Concat([]entry{fill("axis", r.axisWord("", "travel")), r.handed()}, r.handedMotor(""), r.handedGears(""))...))
	}
	return links
}

func (r *partsRow) toMeasure() Link {
	entries := lists.Concat([]entry{fill("axis", r.axisWord("", "travel")), r.handed()}, r.handedMotor(""), r.handedGears(""))
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
		all := lists.Concat([]entry{fill("changed", changed), fill("moves", r.axisWord("feed", "")), r.handed()}, lists.Concat(entries...))
		return hand("Swap a part of it", "swap", all...)
	}
	if r.rotary {
		return to("gears", r.handedGears(""), r.handedMotor(suffixKept))
	}
	same := r.out.handed("")[:1] // the same sort of element takes its place
	same[0].key += suffixNew
	return to("out", r.out.handed(""), same, r.handedMotor(suffixKept), r.handedGears(suffixKept))
}

// whereToRead tells where the parts say what they are.
var whereToRead = Part{ID: "reading", Title: "Where to read the parts", Guide: true, Blocks: []Block{
	caution("wiring"),
	points(
		"Motor: the step angle is on its label. Driver: the microsteps are set by jumpers or by software.",
		"Gears and pulleys: mark a tooth and count. The motor side is the wheel that sits on the motor's shaft.",
		"Belt: measure over ten teeth and divide by ten.",
		"Screw: turn it once and measure how far the nut goes. That is the lead; with several starts it is more than the pitch.",
		"Roller: take the diameter where it grips, a little less than over its teeth. It is a start; a test finds the true one.",
		"Worm: count the threads that begin at its end; they stand for the teeth on the motor side.",
	),
}}

// firstMove goes before a value that nobody has tried.
var firstMove = Part{ID: "first", Title: "Before the first move", Blocks: []Block{
	caution("maker"), caution("stay"), caution("range"), caution("rollers"),
	para("Begin with a short, slow move. See that the direction is right and the length about right, before you ask for more."),
}}
