package calibrate

import (
	"math"
	"slices"
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// readings shows each run and what they have in common.
func (a *solution) readings() *report.Part {
	if len(a.runs) == 0 || a.sheet.Method() == trial.BothSides {
		return nil
	}
	p := &report.Part{ID: "runs", Title: "What the readings say", Needs: a.readKeys, Blocks: []report.Block{a.runTable()}}
	if a.found && a.sheet.Method() == trial.OneLength {
		p.Add(a.runChart(), report.Figures{All: a.runFigures()})
	}
	p.Add(a.doubts()...)
	return p
}

func (a *solution) runTable() report.Table {
	unit := ", " + a.unit // once, in the head: five columns must fit on a phone
	mark := a.runs[0].Mark > 0
	t := report.Table{Caption: "Runs", Head: []string{"Run", word.Capital(a.verb()) + unit}}
	if mark {
		t.Head = []string{"Run", "Mark" + unit, "Left" + unit, "Fed" + unit}
	}
	if a.hasAsked {
		t.Head = append(t.Head, "Error, %")
	}
	cell := func(id string, v float64) report.Line { return report.Say(&report.Figure{ID: id, Value: v, Digits: 5}) }
	for _, r := range a.runs {
		n := strconv.Itoa(r.Row + 1)
		name := n
		if r.Aside {
			name += ", set aside"
		}
		cells := []report.Line{report.Say(name)}
		if mark {
			cells = append(cells, cell("", r.Mark), cell("", r.Rest))
		}
		cells = append(cells, cell("moved-"+n, r.Moved))
		if a.hasAsked {
			cells = append(cells, report.Say(&report.Figure{ID: "off-" + n, Value: 100 * measure.Error(a.asked, r.Moved), Digits: 3, Keep: true}))
		}
		t.Rows = append(t.Rows, cells)
	}
	t.Folded = len(t.Rows) > sheet.MostAtSight
	return t
}

func (a *solution) runFigures() []report.Figure {
	e := a.scale.Error()
	off := report.Percent("error", "Error", e.Value, 0)
	if !a.alone {
		off.U = 100 * e.Expanded()
	}
	var figures report.FigureList
	figures.Add(a.length("mean", "Mean", a.test.Length), off,
		&report.Figure{ID: "correction", Label: "Correction (commanded / measured)", Value: a.scale.Factor().Value, Digits: 6})
	if len(a.test.Runs) > 1 {
		figures.Add(&report.Figure{ID: "spread", Label: "Spread (standard deviation)", Value: a.test.Scatter, Unit: a.unit, Digits: 2, Keep: true})
	}
	return figures
}

// runChart draws the readings with their mean, its interval, and the lengths
// that the tolerance lets pass.
func (a *solution) runChart() report.Chart {
	c := report.ReadingsChart{
		Chart: report.Chart{ID: "runs", X: report.Scale{Label: "Run"}, Y: report.Scale{Label: word.Capital(a.verb()), Unit: a.unit, Digits: 5}},
		Noun:  "run", Mean: a.test.Estimate(),
	}
	suspect := a.suspect()
	for _, r := range a.runs {
		c.Add(r.Row, r.Moved, r.Aside, suspect != nil && suspect.Row == r.Row)
	}
	t := a.sheet.tolerance()
	c.Within(a.asked*(1-t), a.asked*(1+t))
	for _, r := range a.later {
		n := strconv.Itoa(r.Row + 1)
		c.Put(n, report.Point{Y: r.Moved, Lo: r.Moved, Hi: r.Moved, Label: "run " + n + " after the change", Kind: report.Later})
	}
	return c.Chart
}

// suspect is the run that stands out from the others, if one does.
func (a *solution) suspect() *trial.Run {
	runs := trial.Counted(a.runs)
	if a.sheet.Method() != trial.OneLength {
		return nil
	}
	with, _ := a.sheet.instrument()
	i, found := trial.StandsOut(seriesOf(runs), with.Resolution)
	if !found {
		return nil
	}
	return &runs[i]
}

func seriesOf(runs []trial.Run) measure.Series {
	series := make(measure.Series, len(runs))
	for i, r := range runs {
		series[i] = r.Moved
	}
	return series
}

// grave are the doubts that who reads no further must see.
func (a *solution) grave() []report.Note {
	var notes []report.Note
	doubt := func(text string) { notes = append(notes, report.DoubtNote(text)) }
	if r := a.suspect(); r != nil {
		doubt("Run " + strconv.Itoa(r.Row+1) + " stands out from the others by more than chance explains. A slip in typing or reading? Tick Set aside there if you know why; if not, make more runs.")
	}
	if a.hasAsked && a.runs[0].Mark > 0 && a.runs[0].Mark <= a.asked {
		doubt("The mark is not farther away than the commanded length: it would run into the drive. Mark it some 20 mm farther.")
	}
	if a.test.Scatter == 0 && len(a.test.Runs) > 1 {
		seldom := ""
		if a.runs[0].Mark > 0 {
			seldom = " A mark that is made by hand is seldom that good."
		}
		doubt(string(measure.WarnAllEqual) + seldom)
	}
	if math.Abs(a.scale.Error().Value) > 0.2 {
		doubt("That is more than a fifth off: seldom grip or wear. Look at step angle, microsteps, gears, pulley and unit first.")
	}
	if a.sheet.Axis.Word == "travel" {
		notes = append(notes, report.TipNote(trustParts))
	}
	return notes
}

// doubts are what would make the answer better, each with its cure.
func (a *solution) doubts() []report.Block {
	var notes []report.Block
	for _, w := range a.warnings() {
		if w == measure.WarnAllEqual {
			continue // beside the answer already
		}
		notes = append(notes, report.DoubtNote(string(w)))
	}
	if _, told := a.sheet.instrument(); !told && a.found && !a.sheet.rotary() {
		notes = append(notes, report.DoubtNote("Say what you read it with: its share of the doubt is missing so far."))
	}
	if a.sheet.Axis.Word == "travel" && a.sheet.Method() == trial.OneLength {
		notes = append(notes, report.TipNote("One length cannot tell the scale from a fixed offset such as slack: choose Several lengths for that."))
	}
	return notes
}

const trustParts = "For belts and screws, trust the value that the parts give over a measured one unless a part explains the difference."

// warnings are those of the evidence and of what was made of it, once each.
func (a *solution) warnings() []measure.Warning {
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
func (s *entries) runs(r *trial.RoundEntry, suffix string) (runs []trial.Run, keys []string, problems []report.Problem) {
	keys = []string{"aside" + suffix}
	switch {
	case s.rotary():
		return trial.PlainRuns(r, r.Turned.Cells()), append(keys, "turned"+suffix), nil
	case s.Axis.Word == "travel":
		return trial.PlainRuns(r, r.Moved.Cells()), append(keys, "moved"+suffix), nil
	case s.Read.Word == "fed":
		return trial.PlainRuns(r, r.Fed.Cells()), append(keys, "fed"+suffix), nil
	}
	each := s.Marks.Word == "each"
	keys = append(keys, "mark", "rest"+suffix)
	if each {
		keys[1] = "eachmark" + suffix
	}
	for i, rest := range r.Rest.Rows {
		mark := s.Mark.Entry()
		if each {
			mark = &r.Each.Rows[i]
		}
		if !mark.Given || !rest.Given {
			continue
		}
		if rest.Number >= mark.Number {
			problems = append(problems, report.Problem{Key: "rest" + suffix, Row: i, Says: word.Quote(rest.String()) + " is not less than the mark, " + mark.String() +
				": nothing would have been fed. Write what is left between the drive and the mark; if you measured what went in, choose Fed length above."})
			continue
		}
		runs = append(runs, trial.Run{Row: i, Mark: mark.Number, Rest: rest.Number, Moved: mark.Number - rest.Number, Aside: r.Aside.Rows[i].On})
	}
	return runs, keys, problems
}
