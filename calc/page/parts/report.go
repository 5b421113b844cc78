package parts

import (
	"slices"
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
	f.ID, f.Label = strings.TrimSuffix(f.ID, "-"+r.N), r.answerLabel().Fill("axis", r.Name)
	return &report.Answer{Figure: f, Says: report.Text(r.says), Notes: r.doubts, Needs: needs}
}

func (r *row) answerLabel() word.Template {
	found := r.out.Sort()
	switch r.find {
	case findSetting:
		found = axis.SettingKey(drive.StepsPerUnit, r.Rotary)
	case findGears:
		found = "ratio"
	}
	return word.Template(answerLabels.Of(found))
}

func (r *row) part() *report.Part {
	p := &report.Part{ID: "axis-" + r.N, Title: r.Name, Needs: r.needs}
	if r.found != nil {
		p.Add(report.Para{Line: report.Text(inARow(r.given()))}, report.Figures{All: r.figures}, report.Para{Line: report.Text(r.says)})
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

// given are statements of what is known of the drivetrain.
func (r *row) given() []string {
	var all []string
	if len(r.NoMotor) == 0 {
		all = append(all, motorGiven.Fill(int(r.Motor.Microsteps), "steps", unit.Trim(r.Motor.FullSteps(), 7)))
	}
	if r.find != findGears && len(r.NoGears) == 0 {
		all = append(all, ratioGiven.Fill("ratio", unit.Trim(r.Gears.Reduction(), 7)))
	}
	if r.find != findElement && !r.Rotary {
		all = append(all, r.out.Given())
	}
	if r.find != findSetting {
		all = append(all, settingGiven.Fill("setting", axis.SettingFigure("", r.Setting, r.Rotary, axis.Digits, false).String()))
	}
	return all
}

// inARow says short statements one behind the other.
func inARow(statements []string) string { return strings.Join(statements, ". ") + "." }

// glance is what was found of every axis, side by side.
func glance(rows []*row, needs []string) *report.Part {
	last := turnHead
	if slices.ContainsFunc(rows, func(r *row) bool { return r.find != findSetting }) {
		last = detailsHead
	}
	t := report.Table{Caption: tableCaption, Head: []string{axisHead, resultHead, last}}
	for _, r := range rows {
		found := *r.found
		found.ID = ""
		var details report.Line
		if turn, missing := r.In(drive.TravelPerTurn); len(missing) == 0 && r.find == findSetting {
			details = report.Show(axis.SettingFigure("", turn, r.Rotary, axis.Digits, false))
		} else if r.find != findSetting {
			details = report.Text(found.Label)
		}
		t.Row(r.Name, &found, details)
	}
	return &report.Part{ID: "all", Title: allTitle, Needs: needs, Blocks: []report.Block{t}}
}

// axisWord is the kind of axis, as the other pages ask for it.
func (r *row) axisWord(extruder, linear string) string {
	switch r.out.Kind.Word {
	case "roller":
		return extruder
	case "rotary":
		return "rotary"
	}
	return linear
}

// filled is the setting that was found, for another page.
func (r *row) filled() axis.Filling {
	return axis.Fill(axis.SettingKey(drive.StepsPerUnit, r.Rotary), unit.PlainTrim(r.found.Value, axis.Digits))
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
		links = append(links, axis.LinkTo(toPlan, "plan", lists.Concat([]axis.Filling{axis.Fill("axis", r.axisWord("", "travel")), r.filled()}, r.filledMotor(""), r.filledGears(""))...))
	}
	return links
}

func (r *row) toMeasure() report.Link {
	entries := lists.Concat([]axis.Filling{axis.Fill("axis", r.axisWord("", "travel")), r.filled()}, r.filledMotor(""), r.filledGears(""))
	return axis.LinkTo(toCalibrate, "measure", entries...)
}

func (r *row) toRate() report.Link {
	entries := append([]axis.Filling{axis.Fill("moves", r.axisWord("feed", "")), r.filled()}, r.filledMotor("")...)
	return axis.LinkTo(toStepRate, "rate", entries...)
}

// toSwap opens the swap of the output element, or of a rotary axis' gears, with
// what is there now.
func (r *row) toSwap() report.Link {
	to := func(changed string, entries ...[]axis.Filling) report.Link {
		all := lists.Concat([]axis.Filling{axis.Fill("changed", changed), axis.Fill("moves", r.axisWord("feed", "")), r.filled()}, lists.Concat(entries...))
		return axis.LinkTo(toSwap, "swap", all...)
	}
	if r.Rotary {
		return to("gears", r.filledGears(""), r.filledMotor(axis.SuffixKept))
	}
	same := r.out.Filled("")[:1] // the same sort of element takes its place
	same[0].Key += axis.SuffixNew
	return to("out", r.out.Filled(""), same, r.filledMotor(axis.SuffixKept), r.filledGears(axis.SuffixKept))
}

// whereToRead tells where the parts say what they are.
var whereToRead = report.Part{ID: "reading", Title: readingTitle, Brief: readingBrief, Guide: true, Blocks: []report.Block{
	report.CautionOf("wiring"), report.PointsOf(readingPoints...),
}}

// firstMove goes before a value that nobody has tried.
var firstMove = report.Part{ID: "first", Title: firstTitle, Brief: firstBrief, Folded: true, Blocks: []report.Block{
	report.CautionOf("maker"), report.CautionOf("stay"), report.CautionOf("range"), report.CautionOf("rollers"),
	report.ParaOf(firstMoveAdvice),
}}
