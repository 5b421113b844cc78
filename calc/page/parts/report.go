package parts

import (
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

func (r *row) answer(needs []string) *report.Answer {
	f := *r.found
	f.ID, f.Label = strings.TrimSuffix(f.ID, "-"+r.N), r.Name+", "+word.Lower(f.Label)
	return &report.Answer{Figure: f, Says: report.Say(r.says), Notes: r.doubts, Needs: needs}
}

func (r *row) part() *report.Part {
	p := &report.Part{ID: "axis-" + r.N, Title: r.Name, Needs: r.needs}
	if r.found != nil {
		p.Add(report.ParaOf("With "+r.describe()+":"), report.Figures{All: r.figures}, report.ParaOf(r.says))
	} else {
		p.Add(report.Figures{All: r.figures})
	}
	if d, ok := r.drawing(); ok {
		p.Add(d)
	}
	p.Add(r.blocks...)
	for _, n := range r.doubts {
		p.Add(n)
	}
	if r.found != nil && r.find == findSetting {
		p.Add(report.Links{All: r.links()})
	}
	return p
}

// describe names what is known of the drivetrain.
func (r *row) describe() string {
	var known []string
	if len(r.NoMotor) == 0 {
		known = []string{word.Number(r.Motor.FullSteps()) + " full steps per motor turn", word.Plural(int(r.Motor.Microsteps), "microstep", "microsteps")}
	}
	if r.find != findGears && len(r.NoGears) == 0 {
		known = append(known, "a gear ratio of "+word.Number(r.Gears.Reduction()))
	}
	if r.find != findElement && !r.Rotary {
		known = append(known, r.out.Describe())
	}
	if r.find != findSetting {
		known = append(known, axis.SettingFigure("", r.Setting, r.Rotary, axis.Digits, false).String())
	}
	return strings.Join(known[:len(known)-1], ", ") + " and " + known[len(known)-1]
}

// glance is what was found of every axis, side by side.
func glance(rows []*row, needs []string) *report.Part {
	t := report.Table{Caption: "All axes", Head: []string{"Axis", "Found", "Beside it"}}
	for _, r := range rows {
		found := *r.found
		found.ID = ""
		beside := report.Say("")
		if turn, missing := r.In(drive.TravelPerTurn); len(missing) == 0 && r.find == findSetting {
			beside = report.Say(axis.SettingFigure("", turn, r.Rotary, axis.Digits, false))
		} else if r.find != findSetting {
			beside = report.Say(found.Label)
		}
		t.Row(r.Name, &found, beside)
	}
	return &report.Part{ID: "all", Title: "All axes at a glance", Needs: needs, Blocks: []report.Block{t}}
}

// axisWord is the kind of axis, as the other pages ask for it.
func (r *row) axisWord(roller, linear string) string {
	switch r.out.Kind.Word {
	case "roller":
		return roller
	case "rotary":
		return "rotary"
	}
	return linear
}

// filled is the setting that was found, for another page.
func (r *row) filled() axis.Filling {
	return axis.Fill(axis.SettingKey(drive.StepsPerUnit, r.Rotary), unit.Trim(r.found.Value, axis.Digits))
}

func (r *row) filledMotor(suffix string) []axis.Filling {
	return axis.Fills("angle"+suffix, unit.Full(float64(r.Motor.StepAngle)), "micro"+suffix, strconv.Itoa(int(r.Motor.Microsteps)))
}

func (r *row) filledGears(suffix string) []axis.Filling {
	if ratio, ok := r.Gears.(axis.PlainRatio); ok {
		return axis.Fills("gears"+suffix, "ratio", "ratio"+suffix, unit.Full(float64(ratio)))
	}
	var driving, driven []string
	for _, s := range r.Gears.(axis.ToothPairs) {
		driving, driven = append(driving, strconv.Itoa(int(s.Driving))), append(driven, strconv.Itoa(int(s.Driven)))
	}
	if driving == nil {
		return axis.Fills("gears"+suffix, "none")
	}
	return []axis.Filling{axis.Fill("gears"+suffix, "pairs"), axis.Fill("driving"+suffix, driving...), axis.Fill("driven"+suffix, driven...)}
}

// links lead on with what was found.
func (r *row) links() []report.Link {
	links := []report.Link{r.toMeasure(), r.toSwap(), r.toRate()}
	if !r.Rotary {
		links = append(links, axis.LinkTo("Plan a test of it", "plan", lists.Concat([]axis.Filling{axis.Fill("axis", r.axisWord("", "travel")), r.filled()}, r.filledMotor(""), r.filledGears(""))...))
	}
	return links
}

func (r *row) toMeasure() report.Link {
	entries := lists.Concat([]axis.Filling{axis.Fill("axis", r.axisWord("", "travel")), r.filled()}, r.filledMotor(""), r.filledGears(""))
	return axis.LinkTo("Measure with this setting", "measure", entries...)
}

func (r *row) toRate() report.Link {
	entries := append([]axis.Filling{axis.Fill("moves", r.axisWord("feed", "")), r.filled()}, r.filledMotor("")...)
	return axis.LinkTo("Speed and step rate", "rate", entries...)
}

// toSwap opens the swap of the output element, or of a rotary axis' gears, with
// what is there now.
func (r *row) toSwap() report.Link {
	to := func(changed string, entries ...[]axis.Filling) report.Link {
		all := lists.Concat([]axis.Filling{axis.Fill("changed", changed), axis.Fill("moves", r.axisWord("feed", "")), r.filled()}, lists.Concat(entries...))
		return axis.LinkTo("Swap a part of it", "swap", all...)
	}
	if r.Rotary {
		return to("gears", r.filledGears(""), r.filledMotor(axis.SuffixKept))
	}
	same := r.out.Filled("")[:1] // the same sort of element takes its place
	same[0].Key += axis.SuffixNew
	return to("out", r.out.Filled(""), same, r.filledMotor(axis.SuffixKept), r.filledGears(axis.SuffixKept))
}

// whereToRead tells where the parts say what they are.
var whereToRead = report.Part{ID: "reading", Title: "Where to read the parts", Guide: true, Blocks: []report.Block{
	report.CautionOf("wiring"),
	report.PointsOf(
		"Motor: the step angle is on its label. Driver: the microsteps are set by jumpers or by software.",
		"Gears and pulleys: mark a tooth and count. The motor side is the wheel that sits on the motor's shaft.",
		"Belt: measure over ten teeth and divide by ten.",
		"Screw: turn it once and measure how far the nut goes. That is the lead; with several starts it is more than the pitch.",
		"Roller: take the diameter where it grips, a little less than over its teeth. It is a start; a test finds the true one.",
		"Worm: count the threads that begin at its end; they stand for the teeth on the motor side.",
	),
}}

// firstMove goes before a value that nobody has tried.
var firstMove = report.Part{ID: "first", Title: "Before the first move", Blocks: []report.Block{
	report.CautionOf("maker"), report.CautionOf("stay"), report.CautionOf("range"), report.CautionOf("rollers"),
	report.ParaOf("Begin with a short, slow move. See that the direction is right and the length about right, before you ask for more."),
}}
