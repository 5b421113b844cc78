package flow

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// flowDigits is how precisely a flow is shown of whose uncertainty nothing is
// known.
const flowDigits = 4

// reading is a figure in the unit of the readings, in the digits that their
// mean supports.
func (a *solution) reading(id, label string, v float64) *report.Figure {
	return &report.Figure{ID: id, Label: label, Value: v, Unit: a.unit, Like: a.known(a.raw.Estimate()), Digits: 5}
}

// known is the ± of an estimate; 0 where a single reading shows none.
func (a *solution) known(e measure.Estimate) float64 {
	if a.alone {
		return 0
	}
	return e.HalfWidth()
}

// factor is the new flow, as a factor.
func (a *solution) factor() measure.Estimate { return a.scale.Steps(a.sheet.flow()) }

// used is the flow that the readings were made with.
func (a *solution) used(id string) *report.Figure {
	return &report.Figure{ID: id, Label: flowLabel, Value: a.sheet.flow(), Digits: 6}
}

func (a *solution) answer() *report.Answer {
	f := a.factor()
	answer := &report.Answer{
		Figure:  report.Figure{ID: "flow", Label: newFlow, Value: f.Value, U: a.known(f), Digits: flowDigits, Keep: true},
		Verdict: verdicts.Verdict(a.judged, a.scale.Error()),
		Says:    a.inPercent(f),
		Notes:   a.grave(),
		Needs:   flowKeys,
	}
	if a.alone {
		answer.Verdict = verdicts.Alone(a.judged, a.scale.Error())
	}
	unclear := a.unclear()
	switch v := a.judged.Verdict; {
	case unclear != nil:
		answer.Verdict = unclear
		fallthrough
	case v == measure.MeasureMore, v == measure.NotWithThis:
		answer.Keep = a.used("")
		answer.Label, answer.Keep.Label = flowSoFar, holdFlowAt
		answer.Says = report.Together(answer.Says, report.Say(notYet))
	case v == measure.LeaveIt:
		keep := a.used("")
		keep.Label = leaveFlowAt
		answer.Label, answer.Keep = readingsGive, keep
	}
	return answer
}

// inPercent says the new flow and the one that was used as most slicers show them.
func (a *solution) inPercent(f measure.Estimate) report.Line {
	percent := &report.Figure{ID: "percent", Value: 100 * f.Value, U: 100 * a.known(f), Unit: "%", Digits: flowDigits}
	used := &report.Figure{Value: 100 * a.sheet.flow(), Unit: "%", Digits: 6}
	return report.Say(inPercent, "new", percent, "used", used)
}

// words are what is said of the way that is chosen.
func (s *entries) words() *wayWords {
	switch s.By.Word {
	case byWalls:
		return &wallWords
	case byMass:
		return &massWords
	}
	return &diameterWords
}

// grave are the doubts that nobody may overlook.
func (a *solution) grave() []report.Note {
	var notes []report.Note
	doubt := func(t word.Template, parts ...any) { notes = append(notes, report.DoubtNote(t, parts...)) }
	if r := a.suspect(); r != nil {
		doubt(outlier, "n", strconv.Itoa(r.row+1), "leaveout", asideLabel)
	}
	e := a.scale.Error().Value
	if math.Abs(e) > farOffBy {
		doubt(farOff)
	}
	if a.sheet.By.Word != byDiameter && a.sheet.Printed.Word == printedUnsaid.Word {
		notes = append(notes, report.TipNote(printedWhen))
	}
	switch {
	case a.sheet.By.Word == byDiameter:
		notes = append(notes, report.TipNote(diameterOnly))
	case a.sheet.By.Word == byWalls && a.sheet.walls() > 1 && a.sheet.Fused.Word == "fused" && e < 0:
		doubt(gapsMayOpen, "gaps", linesGaps.Label)
	case a.sheet.By.Word == byMass && !a.sheet.DensityLimits.Given:
		doubt(densityTaken)
	}
	if note, ok := a.sheet.tool.Assumes(); ok && a.sheet.By.Word != byMass && (!a.alone || a.judged.Verdict == measure.NotWithThis) {
		notes = append(notes, note)
	}
	return notes
}

// suspect is the reading that stands out from the others, if one does.
func (a *solution) suspect() *reading {
	counted, grid := a.counted(), math.Inf(1)
	for _, r := range counted {
		grid = min(grid, r.grid)
	}
	out, err := measure.StandsOut(a.series(), max(grid, a.raw.Test.With.Resolution)/2)
	if err != nil || !out.Found {
		return nil
	}
	return &counted[out.Index]
}

// calibrateFirst says why there is no flow before the extruder is calibrated.
func (a *solution) calibrateFirst() *report.Part {
	return &report.Part{ID: "scale", Title: calibrateFirstTitle, Needs: []string{"scale"}, Blocks: []report.Block{
		report.DoubtNote(calibrateFirst),
		report.Links{All: []report.Link{axis.LinkTo(calibrateLink, "measure", a.sheet.tool.Filled("")...)}},
		report.Ask{Keys: []string{"scale"}, For: forTheNewFlow},
	}}
}

// missing asks for what the answer needs.
func (a *solution) missing() *report.Part {
	var keys []string
	need := func(key string, given bool) {
		if !given {
			keys = append(keys, key)
		}
	}
	s := a.sheet
	readings := "thick"
	switch s.By.Word {
	case byMass:
		readings = "weighed"
		if s.Stated.Word == "mass" {
			need("planned", s.Planned.Given)
		} else {
			need("used", s.Used.Given)
			need("set", s.Set.Given)
			need("density", s.Density.Given)
		}
	case byDiameter:
		readings = "across"
		need("set", s.Set.Given)
	default:
		need("width", s.Width.Given || s.Spacing.Given)
		need("layer", s.Layer.Given || s.sideBySide())
	}
	need(readings, len(a.counted()) > 0)
	if len(keys) == 0 {
		return nil
	}
	return &report.Part{ID: report.Missing, Title: missingTitle, Blocks: []report.Block{report.Ask{Keys: keys, For: forTheNewFlow}}}
}

// tooVague says that the readings lie too far apart.
func (a *solution) tooVague() *report.Part {
	if !a.vague {
		return nil
	}
	says := nothingSaid
	if a.scale.TooCoarse() {
		says = toolSaysNothing
	}
	return &report.Part{ID: "impossible", Title: vagueTitle, Needs: flowKeys, Blocks: []report.Block{report.DoubtNote(word.Template(says))}}
}

// readingsPart shows each reading and what they have in common.
func (a *solution) readingsPart() *report.Part {
	if len(a.readings) == 0 {
		return nil
	}
	p := &report.Part{ID: "readings", Title: readingsTitle, Needs: flowKeys, Blocks: []report.Block{a.table()}}
	if a.found {
		p.Add(a.chart(), report.Figures{All: a.figures()})
		p.Add(a.doubts()...)
	}
	return p
}

func (a *solution) table() report.Table {
	t := report.Table{Caption: readingsCaption, Head: []string{readingHead, a.sheet.words().head}}
	if a.hasGauge {
		t.Head = append(t.Head, errorHead)
	}
	for _, r := range a.readings {
		n := strconv.Itoa(r.row + 1)
		name := n
		if r.aside {
			name = leftOut.Fill("n", n)
		}
		cells := []report.Line{report.Text(name), report.Show(&report.Figure{ID: "read-" + n, Value: r.value, Digits: 5})}
		switch {
		case a.hasGauge && r.value > a.gauge.offset:
			cells = append(cells, report.Show(&report.Figure{ID: "off-" + n, Value: 100 * (a.gauge.ratio(r.value) - 1), Digits: 3}))
		case a.hasGauge:
			cells = append(cells, report.Say(noPlastic))
		}
		t.Rows = append(t.Rows, cells)
	}
	t.Folded = len(t.Rows) > sheet.MostAtSight
	return t
}

func (a *solution) figures() []report.Figure {
	e := a.scale.Error()
	off := report.Percent("plastic", errorLabel, e.Value, 0)
	off.U = 100 * a.known(e)
	var figures report.FigureList
	figures.Add(a.reading("mean", meanLabel, a.raw.Length), a.reading("wanted", targetLabel, a.gauge.at(1)), off)
	if len(a.raw.Runs) > 1 {
		figures.Add(&report.Figure{ID: "spread", Label: scatterLabel, Value: a.raw.Scatter, Unit: a.unit, Digits: 2, Keep: true})
	}
	s := a.sheet
	if s.By.Word == byWalls {
		area := s.Layer.Number * s.spacing()
		if !s.Spacing.Given && !s.sideBySide() {
			area = drive.BeadArea(s.Width.Value(), s.Layer.Value())
		}
		if s.Layer.Given {
			figures.Add(&report.Figure{ID: "bead", Label: beadLabel, Value: area, Unit: "mm²", Digits: 4})
		}
	}
	if side, ok := a.bySide(); ok {
		f := a.flowBy(side)
		f.ID, f.Label = "sideflow", sideFlowLabel
		figures.Add(f)
	}
	figures.Add(a.used("was"))
	return figures
}

// chart draws the readings with their mean, its interval, and the acceptable
// range.
func (a *solution) chart() report.Chart {
	c := report.ReadingsChart{
		Chart: report.Chart{ID: "readings", X: report.Scale{Label: readingHead}, Y: report.Scale{Label: a.sheet.words().quantity, Unit: a.unit, Digits: 5}},
		Words: report.PrintWords, Mean: a.raw.Estimate(),
	}
	suspect := a.suspect()
	for _, r := range a.readings {
		c.Add(r.row, r.value, r.aside, suspect != nil && suspect.row == r.row)
	}
	t := a.sheet.tolerance()
	c.Within(a.gauge.at(1-t), a.gauge.at(1+t))
	return c.Chart
}

// doubts are what would make the answer better, each with its cure.
func (a *solution) doubts() []report.Block {
	var notes []report.Block
	for _, w := range a.raw.Warnings {
		text := word.Template(warnings.Of(string(w)))
		if text == "" {
			text = trial.Doubt(w)
		}
		notes = append(notes, report.DoubtNote(text))
	}
	if _, told := a.sheet.instrument(0); !told {
		notes = append(notes, report.DoubtNote(noTool))
	}
	return notes
}

// why is what the verdict rests on, folded away.
func (a *solution) why() *report.Part {
	return &report.Part{ID: "why", Title: whyTitle, Folded: true, Needs: flowKeys,
		Blocks: trial.WhyBlocks(a.budget, a.scale.Error(), a.judged, a.alone, a.partName)}
}

// partName says a cause of uncertainty by its ID.
func (a *solution) partName(id string) string {
	name := parts.Of(id)
	if name == "" && a.sheet.By.Word == byMass {
		name = massParts.Of(id)
	}
	if name == "" {
		name = trial.PartName(id)
	}
	return name
}

// entered is the new flow, rounded to below a tenth of its uncertainty, without
// which nothing is to be entered.
func (a *solution) entered() string {
	f := a.factor()
	number, _ := unit.PlainMeasured(f.Value, f.HalfWidth())
	return number
}
