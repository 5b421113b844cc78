package calc

import (
	"math"
	"slices"
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/measure"
)

// readings shows each run and what they have in common.
func (a *measured) readings() *Part {
	if len(a.runs) == 0 || a.sheet.method() == bothSides {
		return nil
	}
	p := &Part{ID: "runs", Title: "What the readings say", Needs: a.readKeys, Blocks: []Block{a.runTable()}}
	if a.found && a.sheet.method() == oneLength {
		p.add(a.runChart(), Figures{a.runFigures()})
	}
	p.add(a.doubts()...)
	return p
}

func (a *measured) runTable() Table {
	unit := ", " + a.unit // once, in the head: five columns must fit on a phone
	mark := a.runs[0].mark > 0
	t := Table{Caption: "Runs", Head: []string{"Run", capital(a.verb()) + unit}}
	if mark {
		t.Head = []string{"Run", "Mark" + unit, "Left" + unit, "Fed" + unit}
	}
	if a.hasAsked {
		t.Head = append(t.Head, "Error, %")
	}
	cell := func(id string, v float64) Line { return say(&Figure{ID: id, Value: v, Digits: 5}) }
	for _, r := range a.runs {
		n := strconv.Itoa(r.row + 1)
		name := n
		if r.aside {
			name += ", set aside"
		}
		cells := []Line{say(name)}
		if mark {
			cells = append(cells, cell("", r.mark), cell("", r.rest))
		}
		cells = append(cells, cell("moved-"+n, r.moved))
		if a.hasAsked {
			cells = append(cells, say(&Figure{ID: "off-" + n, Value: 100 * measure.Error(a.asked, r.moved), Digits: 3, Keep: true}))
		}
		t.Rows = append(t.Rows, cells)
	}
	t.Folded = len(t.Rows) > MostAtSight
	return t
}

func (a *measured) runFigures() []Figure {
	e := a.scale.Error()
	off := percent("error", "Error", e.Value, 0)
	if !a.alone {
		off.U = 100 * e.Expanded()
	}
	var figures figureList
	figures.add(a.length("mean", "Mean", a.test.Length), off,
		&Figure{ID: "correction", Label: "Correction (commanded / measured)", Value: a.scale.Factor().Value, Digits: 6})
	if len(a.test.Runs) > 1 {
		figures.add(&Figure{ID: "spread", Label: "Spread (standard deviation)", Value: a.test.Scatter, Unit: a.unit, Digits: 2, Keep: true})
	}
	return figures
}

// runChart draws the readings with their mean, its interval, and the lengths
// that the tolerance lets pass.
func (a *measured) runChart() Chart {
	c := readingsChart{
		chart: Chart{ID: "runs", X: Scale{Label: "Run"}, Y: Scale{Label: capital(a.verb()), Unit: a.unit, Digits: 5}},
		noun:  "run", mean: a.test.Estimate(),
	}
	suspect := a.suspect()
	for _, r := range a.runs {
		c.add(r.row, r.moved, r.aside, suspect != nil && suspect.row == r.row)
	}
	t := a.sheet.tolerance()
	c.within(a.asked*(1-t), a.asked*(1+t))
	for _, r := range a.later {
		n := strconv.Itoa(r.row + 1)
		c.put(n, Point{Y: r.moved, Lo: r.moved, Hi: r.moved, Label: "run " + n + " after the change", Kind: Later})
	}
	return c.chart
}

// suspect is the run that stands out from the others, if one does.
func (a *measured) suspect() *run {
	runs := counted(a.runs)
	if a.sheet.method() != oneLength {
		return nil
	}
	with, _ := a.sheet.instrument()
	i, found := standsOut(seriesOf(runs), with.Resolution)
	if !found {
		return nil
	}
	return &runs[i]
}

func seriesOf(runs []run) measure.Series {
	series := make(measure.Series, len(runs))
	for i, r := range runs {
		series[i] = r.moved
	}
	return series
}

// grave are the doubts that who reads no further must see.
func (a *measured) grave() []Note {
	var notes []Note
	doubt := func(text string) { notes = append(notes, doubtNote(text)) }
	if r := a.suspect(); r != nil {
		doubt("Run " + strconv.Itoa(r.row+1) + " stands out from the others by more than chance explains. A slip in typing or reading? Tick Set aside there if you know why; if not, make more runs.")
	}
	if a.hasAsked && a.runs[0].mark > 0 && a.runs[0].mark <= a.asked {
		doubt("The mark is not farther away than the commanded length: it would run into the drive. Mark it some 20 mm farther.")
	}
	if a.test.Scatter == 0 && len(a.test.Runs) > 1 {
		seldom := ""
		if a.runs[0].mark > 0 {
			seldom = " A mark that is made by hand is seldom that good."
		}
		doubt(string(measure.WarnAllEqual) + seldom)
	}
	if math.Abs(a.scale.Error().Value) > 0.2 {
		doubt("That is more than a fifth off: seldom grip or wear. Look at step angle, microsteps, gears, pulley and unit first.")
	}
	if a.sheet.Axis.Word == "travel" {
		notes = append(notes, tipNote(trustParts))
	}
	return notes
}

// doubts are what would make the answer better, each with its cure.
func (a *measured) doubts() []Block {
	var notes []Block
	for _, w := range a.warnings() {
		if w == measure.WarnAllEqual {
			continue // beside the answer already
		}
		notes = append(notes, doubtNote(string(w)))
	}
	if _, told := a.sheet.instrument(); !told && a.found && !a.sheet.rotary() {
		notes = append(notes, doubtNote("Say what you read it with: its share of the doubt is missing so far."))
	}
	if a.sheet.Axis.Word == "travel" && a.sheet.method() == oneLength {
		notes = append(notes, tipNote("One length cannot tell the scale from a fixed offset such as slack: choose Several lengths for that."))
	}
	return notes
}

const trustParts = "For belts and screws, trust the value that the parts give over a measured one unless a part explains the difference."

// warnings are those of the evidence and of what was made of it, once each.
func (a *measured) warnings() []measure.Warning {
	var all []measure.Warning
	for _, w := range lists.Concat(a.test.Warnings, a.slip.Warnings, a.fit.Warnings, a.reversal.Warnings, a.judged.Warnings) {
		if !slices.Contains(all, w) {
			all = append(all, w)
		}
	}
	return all
}

// runs returns the complete rows, the keys they are read from, and what is
// wrong with those that cannot be.
func (s *measureSheet) runs(r *roundEntry, suffix string) (runs []run, keys []string, problems []Problem) {
	keys = []string{"aside" + suffix}
	switch {
	case s.rotary():
		return plainRuns(r, r.Turned.cells()), append(keys, "turned"+suffix), nil
	case s.Axis.Word == "travel":
		return plainRuns(r, r.Moved.cells()), append(keys, "moved"+suffix), nil
	case s.Read.Word == "fed":
		return plainRuns(r, r.Fed.cells()), append(keys, "fed"+suffix), nil
	}
	each := s.Marks.Word == "each"
	keys = append(keys, "mark", "rest"+suffix)
	if each {
		keys[1] = "eachmark" + suffix
	}
	for i, rest := range r.Rest.rows {
		mark := s.Mark.Entry()
		if each {
			mark = &r.Each.rows[i]
		}
		if !mark.Given || !rest.Given {
			continue
		}
		if rest.Number >= mark.Number {
			problems = append(problems, Problem{"rest" + suffix, i, quote(rest.String()) + " is not less than the mark, " + mark.String() +
				": nothing would have been fed. Write what is left between the drive and the mark; if you measured what went in, choose Fed length above."})
			continue
		}
		runs = append(runs, run{row: i, mark: mark.Number, rest: rest.Number, moved: mark.Number - rest.Number, aside: r.Aside.Rows[i].On})
	}
	return runs, keys, problems
}
