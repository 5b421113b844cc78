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

// flowDigits is how precisely a factor is shown of whose uncertainty nothing is
// known.
const flowDigits = 4

// reading is a figure in the unit of the readings, in the digits that their
// mean supports.
func (a *solution) reading(id, label string, v float64) *report.Figure {
	return &report.Figure{ID: id, Label: label, Value: v, Unit: a.unit, Like: a.raw.Estimate().Expanded(), Digits: 5}
}

// factor is the new flow factor.
func (a *solution) factor() measure.Estimate { return a.scale.Steps(a.sheet.flow()) }

func (a *solution) was(id string) *report.Figure {
	return &report.Figure{ID: id, Label: "Flow factor, before", Value: a.sheet.flow(), Digits: 6}
}

func (a *solution) answer() *report.Answer {
	f := a.factor()
	percent := &report.Figure{ID: "percent", Value: 100 * f.Value, U: 100 * f.Expanded(), Unit: "%", Digits: flowDigits}
	answer := &report.Answer{
		Figure:  report.Figure{ID: "flow", Label: "New flow factor", Value: f.Value, U: f.Expanded(), Digits: flowDigits, Keep: true},
		Verdict: a.wording().Verdict(a.judged, a.scale.Error()),
		Says:    report.Say("In percent: ", percent, ". Now it is ", a.was(""), "."),
		Notes:   a.grave(),
		Needs:   flowKeys,
	}
	switch a.judged.Verdict {
	case measure.LeaveIt:
		keep := a.was("")
		keep.Label = "Leave the flow factor at"
		answer.Label, answer.Keep = "What the readings give", keep
	case measure.MeasureMore, measure.NotWithThis:
		answer.Label = "So far, flow factor"
		answer.Says = append(answer.Says, report.Say(" Do not enter this yet.")...)
	}
	return answer
}

// wording is how this page says its verdicts.
func (a *solution) wording() trial.Wording {
	by := a.sheet.By.Word
	return trial.Wording{
		It:      word.Table{{byWalls, "The wall holds "}, {byMass, "The piece holds "}, {byDiameter, "The filament carries "}}.Of(by),
		What:    " plastic",
		Exactly: "exactly the plastic that it should.",
		Tries:   "readings",
		Hopeless: word.Table{
			{byWalls, "Not with this instrument and wall"}, {byMass, "Not with this balance and density"}, {byDiameter, "Not with this instrument"},
		}.Of(by),
		TooCoarse: "It is off, but what you read it with is too coarse to set it right to",
		Cannot:    "However many readings you take, that cannot tell",
	}
}

// grave are the doubts that who reads no further must see.
func (a *solution) grave() []report.Note {
	var notes []report.Note
	doubt := func(text string) { notes = append(notes, report.DoubtNote(text)) }
	if r := a.suspect(); r != nil {
		doubt("Reading " + strconv.Itoa(r.row+1) + " stands out from the others by more than chance explains. A blob, a burr, the seam, a slip in typing? Tick Set aside there if you know why; if not, take more readings.")
	}
	e := a.scale.Error().Value
	if math.Abs(e) > 0.2 {
		doubt("That is more than a fifth off, which flow seldom is. Look at what should be there first: line width, number of lines, filament diameter, and the scale once more.")
	}
	switch {
	case a.sheet.By.Word == byDiameter:
		notes = append(notes, report.TipNote("That is the share of the filament's diameter alone. A printed wall shows all there is, this share included: do not count it twice."))
	case a.sheet.By.Word == byWalls && a.sheet.walls() > 1 && a.sheet.Fused.Word == "fused" && e < 0:
		doubt("Where plastic is missing, gaps may open between the lines while the wall stays nearly as thick. Break the wall open and look: if there are gaps, choose With gaps above.")
	case a.sheet.By.Word == byMass && !a.sheet.DensityLimits.Given:
		doubt("The density is taken to be right within 1 %. From a label it is often only good to 1 to 2 %, and such an error goes straight into the flow factor: say above how good yours is.")
	}
	return notes
}

// suspect is the reading that stands out from the others, if one does.
func (a *solution) suspect() *reading {
	i, found := trial.StandsOut(a.series(), a.raw.Test.With.Resolution)
	if !found {
		return nil
	}
	return &a.counted()[i]
}

// scaleFirst says why there is no flow factor without a verified scale.
func (a *solution) scaleFirst() *report.Part {
	return &report.Part{ID: "scale", Title: "First the scale", Needs: []string{"scale"}, Blocks: []report.Block{
		report.DoubtNote("A wrong scale would be hidden by the flow factor: it would fit this one material, while retraction, loading and every other profile stay wrong. Verify first that a length of filament asked for is the length that is fed."),
		report.Links{All: []report.Link{axis.LinkTo("Measure the feed scale first", "measure", a.sheet.tool.Filled("")...)}},
		report.Ask{Keys: []string{"scale"}, For: "a flow factor"},
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
		need("layer", s.Layer.Given)
	}
	need(readings, len(a.counted()) > 0)
	if len(keys) == 0 {
		return nil
	}
	return &report.Part{ID: "missing", Title: "Still needed", Blocks: []report.Block{report.Ask{Keys: keys, For: "the flow factor"}}}
}

// readingsPart shows each reading and what they have in common.
func (a *solution) readingsPart() *report.Part {
	if len(a.readings) == 0 {
		return nil
	}
	p := &report.Part{ID: "readings", Title: "What the readings say", Needs: flowKeys, Blocks: []report.Block{a.table()}}
	if a.found {
		p.Add(a.chart(), report.Figures{All: a.figures()})
		p.Add(a.doubts()...)
	}
	return p
}

// quantity is what is read.
func (a *solution) quantity() string {
	return word.Table{{byWalls, "Thickness"}, {byMass, "Mass"}, {byDiameter, "Diameter"}}.Of(a.sheet.By.Word)
}

func (a *solution) table() report.Table {
	t := report.Table{Caption: "Readings", Head: []string{"Reading", a.quantity() + ", " + a.unit}}
	if a.hasGauge {
		t.Head = append(t.Head, "Plastic, error in %")
	}
	for _, r := range a.readings {
		n := strconv.Itoa(r.row + 1)
		name := n
		if r.aside {
			name += ", set aside"
		}
		cells := []report.Line{report.Say(name), report.Say(&report.Figure{ID: "read-" + n, Value: r.value, Digits: 5})}
		switch {
		case a.hasGauge && r.value > a.gauge.offset:
			cells = append(cells, report.Say(&report.Figure{ID: "off-" + n, Value: 100 * (a.gauge.ratio(r.value) - 1), Digits: 3}))
		case a.hasGauge:
			cells = append(cells, report.Say("none at all"))
		}
		t.Rows = append(t.Rows, cells)
	}
	t.Folded = len(t.Rows) > sheet.MostAtSight
	return t
}

func (a *solution) figures() []report.Figure {
	e := a.scale.Error()
	off := report.Percent("plastic", "Error of the plastic", e.Value, 0)
	off.U = 100 * e.Expanded()
	var figures report.FigureList
	figures.Add(a.reading("mean", "Mean of the readings", a.raw.Length), a.reading("wanted", "It should be", a.gauge.at(1)), off)
	if len(a.raw.Runs) > 1 {
		figures.Add(&report.Figure{ID: "spread", Label: "Spread (standard deviation)", Value: a.raw.Scatter, Unit: a.unit, Digits: 2, Keep: true})
	}
	s := a.sheet
	if s.By.Word == byWalls {
		area := s.Layer.Number * s.spacing()
		if !s.Spacing.Given {
			area = drive.BeadArea(s.Width.Value(), s.Layer.Value())
		}
		figures.Add(&report.Figure{ID: "bead", Label: "Section of one line as it should be", Value: area, Unit: "mm²", Digits: 4})
	}
	figures.Add(a.was("was"))
	return figures
}

// chart draws the readings with their mean, its interval, and what the
// tolerance lets pass.
func (a *solution) chart() report.Chart {
	c := report.ReadingsChart{
		Chart: report.Chart{ID: "readings", X: report.Scale{Label: "Reading"}, Y: report.Scale{Label: a.quantity(), Unit: a.unit, Digits: 5}},
		Noun:  "reading", Mean: a.raw.Estimate(),
	}
	suspect := a.suspect()
	for _, r := range a.readings {
		c.Add(r.row, r.value, r.aside, suspect != nil && suspect.row == r.row)
	}
	t := a.sheet.tolerance()
	c.Within(a.gauge.at(1-t), a.gauge.at(1+t))
	return c.Chart
}

// flowWarnings are the engine's doubts in the words of this page.
var flowWarnings = word.Table{
	{string(measure.WarnOneRun), "One reading cannot show how much they differ. Until there are more, a usual scatter is assumed. Take at least three."},
	{string(measure.WarnTwoRuns), "Two readings show the scatter only roughly, which makes the interval wide. One more cuts it to about a third."},
	{string(measure.WarnNothingKnown), "Nothing is known of how good these readings are. Say what they were read with, and take at least three."},
}

// doubts are what would make the answer better, each with its cure.
func (a *solution) doubts() []report.Block {
	var notes []report.Block
	for _, w := range a.raw.Warnings {
		text := flowWarnings.Of(string(w))
		if text == "" {
			text = string(w)
		}
		notes = append(notes, report.DoubtNote(text))
	}
	if _, told := a.sheet.instrument(0); !told {
		notes = append(notes, report.DoubtNote("Say what you read it with: its share of the doubt is missing so far."))
	}
	return notes
}

// why is what the verdict rests on, folded away.
func (a *solution) why() *report.Part {
	name := func(id string) string {
		switch id {
		case measure.Scatter:
			return "the readings differ among themselves"
		case measure.Placement:
			return "one reading: the scatter that is usual"
		case densityPart:
			return "how well the density is known"
		}
		return trial.PartName(id)
	}
	return &report.Part{ID: "why", Title: "Why: what the uncertainty is made of", Folded: true, Needs: flowKeys,
		Blocks: trial.WhyBlocks(a.budget, a.scale.Error(), a.judged, name)}
}

// entered is the new factor, rounded to below a tenth of its uncertainty, without
// which nothing is to be entered.
func (a *solution) entered() string {
	f := a.factor()
	number, _ := unit.Measured(f.Value, f.Expanded())
	return number
}
