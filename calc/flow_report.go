package calc

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/unit"
)

// flowDigits is how precisely a factor is shown of whose uncertainty nothing is
// known.
const flowDigits = 4

// reading is a figure in the unit of the readings, in the digits that their
// mean supports.
func (a *flowed) reading(id, label string, v float64) *Figure {
	return &Figure{ID: id, Label: label, Value: v, Unit: a.unit, Like: a.raw.Estimate().Expanded(), Digits: 5}
}

// factor is the new flow factor.
func (a *flowed) factor() measure.Estimate { return a.scale.Steps(a.sheet.flow()) }

func (a *flowed) was(id string) *Figure {
	return &Figure{ID: id, Label: "Flow factor, before", Value: a.sheet.flow(), Digits: 6}
}

func (a *flowed) answer() *Answer {
	f := a.factor()
	percent := &Figure{ID: "percent", Value: 100 * f.Value, U: 100 * f.Expanded(), Unit: "%", Digits: flowDigits}
	answer := &Answer{
		Figure:  Figure{ID: "flow", Label: "New flow factor", Value: f.Value, U: f.Expanded(), Digits: flowDigits, Keep: true},
		Verdict: a.wording().verdict(a.judged, a.scale.Error()),
		Says:    say("In percent: ", percent, ". Now it is ", a.was(""), "."),
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
		answer.Says = append(answer.Says, say(" Do not enter this yet.")...)
	}
	return answer
}

// wording is how this page says its verdicts.
func (a *flowed) wording() wording {
	by := a.sheet.By.Word
	return wording{
		it:      worded{{byWalls, "The wall holds "}, {byMass, "The piece holds "}, {byDiameter, "The filament carries "}}.of(by),
		what:    " plastic",
		exactly: "exactly the plastic that it should.",
		tries:   "readings",
		hopeless: worded{
			{byWalls, "Not with this instrument and wall"}, {byMass, "Not with this balance and density"}, {byDiameter, "Not with this instrument"},
		}.of(by),
		tooCoarse: "It is off, but what you read it with is too coarse to set it right to",
		cannot:    "However many readings you take, that cannot tell",
	}
}

// grave are the doubts that who reads no further must see.
func (a *flowed) grave() []Note {
	var notes []Note
	doubt := func(text string) { notes = append(notes, doubtNote(text)) }
	if r := a.suspect(); r != nil {
		doubt("Reading " + strconv.Itoa(r.row+1) + " stands out from the others by more than chance explains. A blob, a burr, the seam, a slip in typing? Tick Set aside there if you know why; if not, take more readings.")
	}
	e := a.scale.Error().Value
	if math.Abs(e) > 0.2 {
		doubt("That is more than a fifth off, which flow seldom is. Look at what should be there first: line width, number of lines, filament diameter, and the scale once more.")
	}
	switch {
	case a.sheet.By.Word == byDiameter:
		notes = append(notes, tipNote("That is the share of the filament's diameter alone. A printed wall shows all there is, this share included: do not count it twice."))
	case a.sheet.By.Word == byWalls && a.sheet.walls() > 1 && a.sheet.Fused.Word == "fused" && e < 0:
		doubt("Where plastic is missing, gaps may open between the lines while the wall stays nearly as thick. Break the wall open and look: if there are gaps, choose With gaps above.")
	case a.sheet.By.Word == byMass && !a.sheet.DensityLimits.Given:
		doubt("The density is taken to be right within 1 %. From a label it is often only good to 1 to 2 %, and such an error goes straight into the flow factor: say above how good yours is.")
	}
	return notes
}

// suspect is the reading that stands out from the others, if one does.
func (a *flowed) suspect() *flowReading {
	i, found := standsOut(a.series(), a.raw.Test.With.Resolution)
	if !found {
		return nil
	}
	return &a.counted()[i]
}

// scaleFirst says why there is no flow factor without a verified scale.
func (a *flowed) scaleFirst() *Part {
	return &Part{ID: "scale", Title: "First the scale", Needs: []string{"scale"}, Blocks: []Block{
		doubtNote("A wrong scale would be hidden by the flow factor: it would fit this one material, while retraction, loading and every other profile stay wrong. Verify first that a length of filament asked for is the length that is fed."),
		Links{[]Link{hand("Measure the feed scale first", "measure", a.sheet.tool.handed("")...)}},
		Ask{[]string{"scale"}, "a flow factor"},
	}}
}

// missing asks for what the answer needs.
func (a *flowed) missing() *Part {
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
	return &Part{ID: "missing", Title: "Still needed", Blocks: []Block{Ask{keys, "the flow factor"}}}
}

// readingsPart shows each reading and what they have in common.
func (a *flowed) readingsPart() *Part {
	if len(a.readings) == 0 {
		return nil
	}
	p := &Part{ID: "readings", Title: "What the readings say", Needs: flowKeys, Blocks: []Block{a.table()}}
	if a.found {
		p.add(a.chart(), Figures{a.figures()})
		p.add(a.doubts()...)
	}
	return p
}

// quantity is what is read.
func (a *flowed) quantity() string {
	return worded{{byWalls, "Thickness"}, {byMass, "Mass"}, {byDiameter, "Diameter"}}.of(a.sheet.By.Word)
}

func (a *flowed) table() Table {
	t := Table{Caption: "Readings", Head: []string{"Reading", a.quantity() + ", " + a.unit}}
	if a.hasGauge {
		t.Head = append(t.Head, "Plastic, error in %")
	}
	for _, r := range a.readings {
		n := strconv.Itoa(r.row + 1)
		name := n
		if r.aside {
			name += ", set aside"
		}
		cells := []Line{say(name), say(&Figure{ID: "read-" + n, Value: r.value, Digits: 5})}
		switch {
		case a.hasGauge && r.value > a.gauge.offset:
			cells = append(cells, say(&Figure{ID: "off-" + n, Value: 100 * (a.gauge.ratio(r.value) - 1), Digits: 3}))
		case a.hasGauge:
			cells = append(cells, say("none at all"))
		}
		t.Rows = append(t.Rows, cells)
	}
	t.Folded = len(t.Rows) > MostAtSight
	return t
}

func (a *flowed) figures() []Figure {
	e := a.scale.Error()
	off := percent("plastic", "Error of the plastic", e.Value, 0)
	off.U = 100 * e.Expanded()
	var figures figureList
	figures.add(a.reading("mean", "Mean of the readings", a.raw.Length), a.reading("wanted", "It should be", a.gauge.at(1)), off)
	if len(a.raw.Runs) > 1 {
		figures.add(&Figure{ID: "spread", Label: "Spread (standard deviation)", Value: a.raw.Scatter, Unit: a.unit, Digits: 2, Keep: true})
	}
	s := a.sheet
	if s.By.Word == byWalls {
		area := s.Layer.Number * s.spacing()
		if !s.Spacing.Given {
			area = drive.BeadArea(s.Width.Value(), s.Layer.Value())
		}
		figures.add(&Figure{ID: "bead", Label: "Section of one line as it should be", Value: area, Unit: "mm²", Digits: 4})
	}
	figures.add(a.was("was"))
	return figures
}

// chart draws the readings with their mean, its interval, and what the
// tolerance lets pass.
func (a *flowed) chart() Chart {
	c := readingsChart{
		chart: Chart{ID: "readings", X: Scale{Label: "Reading"}, Y: Scale{Label: a.quantity(), Unit: a.unit, Digits: 5}},
		noun:  "reading", mean: a.raw.Estimate(),
	}
	suspect := a.suspect()
	for _, r := range a.readings {
		c.add(r.row, r.value, r.aside, suspect != nil && suspect.row == r.row)
	}
	t := a.sheet.tolerance()
	c.within(a.gauge.at(1-t), a.gauge.at(1+t))
	return c.chart
}

// flowWarnings are the engine's doubts in the words of this page.
var flowWarnings = worded{
	{string(measure.WarnOneRun), "One reading cannot show how much they differ. Until there are more, a usual scatter is assumed. Take at least three."},
	{string(measure.WarnTwoRuns), "Two readings show the scatter only roughly, which makes the interval wide. One more cuts it to about a third."},
	{string(measure.WarnNothingKnown), "Nothing is known of how good these readings are. Say what they were read with, and take at least three."},
}

// doubts are what would make the answer better, each with its cure.
func (a *flowed) doubts() []Block {
	var notes []Block
	for _, w := range a.raw.Warnings {
		text := flowWarnings.of(string(w))
		if text == "" {
			text = string(w)
		}
		notes = append(notes, doubtNote(text))
	}
	if _, told := a.sheet.instrument(0); !told {
		notes = append(notes, doubtNote("Say what you read it with: its share of the doubt is missing so far."))
	}
	return notes
}

// why is what the verdict rests on, folded away.
func (a *flowed) why() *Part {
	name := func(id string) string {
		switch id {
		case measure.Scatter:
			return "the readings differ among themselves"
		case measure.Placement:
			return "one reading: the scatter that is usual"
		case densityPart:
			return "how well the density is known"
		}
		return partName(id)
	}
	return &Part{ID: "why", Title: "Why: what the uncertainty is made of", Folded: true, Needs: flowKeys,
		Blocks: whyBlocks(a.budget, a.scale.Error(), a.judged, name)}
}

// entered is the new factor, rounded to below a tenth of its uncertainty, without
// which nothing is to be entered.
func (a *flowed) entered() string {
	f := a.factor()
	number, _ := unit.Measured(f.Value, f.Expanded())
	return number
}
