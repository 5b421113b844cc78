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
	p := &report.Part{ID: "runs", Title: runsTitle, Needs: a.readKeys, Blocks: []report.Block{a.runTable()}}
	if a.found && a.sheet.Method() == trial.OneLength {
		p.Add(a.runChart(), report.Figures{All: a.runFigures()})
	}
	p.Add(a.doubts()...)
	return p
}

func (a *solution) runTable() report.Table {
	mark := a.runs[0].Mark > 0
	t := report.Table{Caption: runsCaption, Head: []string{runHead}}
	head := func(column word.Template) { // has the unit, once: five columns must fit on a phone
		t.Head = append(t.Head, column.Fill("unit", a.unit))
	}
	if mark {
		head(markHead)
		head(remainingHead)
	}
	head(a.wording().head)
	if a.hasAsked {
		t.Head = append(t.Head, errorHead)
	}
	cell := func(id string, v float64) report.Line {
		return report.Show(&report.Figure{ID: id, Value: v, Digits: 5})
	}
	for _, r := range a.runs {
		n := strconv.Itoa(r.Row + 1)
		name := n
		if r.Aside {
			name = leftOut.Fill("run", n)
		}
		cells := []report.Line{report.Text(name)}
		if mark {
			cells = append(cells, cell("", r.Mark), cell("", r.Rest))
		}
		cells = append(cells, cell("moved-"+n, r.Moved))
		if a.hasAsked {
			cells = append(cells, report.Show(&report.Figure{ID: "off-" + n, Value: 100 * measure.Error(a.asked, r.Moved), Digits: 3, Keep: true}))
		}
		t.Rows = append(t.Rows, cells)
	}
	t.Folded = len(t.Rows) > sheet.MostAtSight
	return t
}

func (a *solution) runFigures() []report.Figure {
	e := a.scale.Error()
	off := report.Percent("error", errorLabel, e.Value, 0)
	if !a.alone {
		off.U = 100 * e.HalfWidth()
	}
	var figures report.FigureList
	figures.Add(a.length("mean", meanLabel, a.test.Length), off,
		&report.Figure{ID: "correction", Label: correctionLabel, Value: a.scale.Factor().Value, Digits: 6})
	if len(a.test.Runs) > 1 {
		figures.Add(&report.Figure{ID: "spread", Label: scatterLabel, Value: a.test.Scatter, Unit: a.unit, Digits: 2, Keep: true})
	}
	return figures
}

// runChart draws the readings with their mean, its interval, and the lengths
// whose error is acceptable.
func (a *solution) runChart() report.Chart {
	c := report.ReadingsChart{
		Chart: report.Chart{ID: "runs", X: report.Scale{Label: runHead}, Y: report.Scale{Label: a.wording().did, Unit: a.unit, Digits: 5}},
		Words: report.RunWords, Mean: a.test.Estimate(),
	}
	suspect := a.suspect()
	for _, r := range a.runs {
		c.Add(r.Row, r.Moved, r.Aside, suspect != nil && suspect.Row == r.Row)
	}
	t := a.sheet.acceptable()
	c.Within(a.asked*(1-t), a.asked*(1+t))
	for _, r := range a.later {
		n := strconv.Itoa(r.Row + 1)
		c.Put(n, report.Point{Y: r.Moved, Lo: r.Moved, Hi: r.Moved, Label: checkLabel.Fill("n", n), Kind: report.Later})
	}
	return c.Chart
}

// suspect is the run that stands out from the others, if one does.
func (a *solution) suspect() *trial.Run {
	runs := trial.Counted(a.runs)
	if a.sheet.Method() != trial.OneLength {
		return nil
	}
	out, err := measure.StandsOut(trial.Series(runs), a.sheet.rounding(runs))
	if err != nil || !out.Found {
		return nil
	}
	return &runs[out.Index]
}

// rounding is by how much a length may be off at most by the lines that its readings fall on:
// half of those of the tool, or of the last decimal typed where that is coarser; of the mark as
// well where each run has its own.
func (s *entries) rounding(runs []trial.Run) float64 {
	with, _ := s.measuredWith()
	markWith := with
	if other, ok := s.markTool.Instrument(); ok {
		markWith = other
	}
	readings, marks := math.Inf(1), math.Inf(1)
	for _, r := range runs {
		readings = min(readings, r.Reading.Grid())
		if r.MarkedAt != nil && s.Marks.Word == "each" {
			marks = min(marks, r.MarkedAt.Grid())
		}
	}
	half := max(readings, with.Resolution) / 2
	if !math.IsInf(marks, 1) {
		half += max(marks, markWith.Resolution) / 2
	}
	return half
}

// grave are the doubts that who reads no further must see.
func (a *solution) grave() []report.Note {
	var notes []report.Note
	doubt := func(t word.Template, parts ...any) { notes = append(notes, report.DoubtNote(t, parts...)) }
	if note, ok := a.sheet.ScaleEntry.DoubtThousands(a.nowKey); ok {
		notes = append(notes, note)
	}
	if r := a.suspect(); r != nil {
		doubt(outlierDoubt, "n", strconv.Itoa(r.Row+1))
	}
	if a.hasAsked && a.runs[0].Mark > 0 && a.runs[0].Mark <= a.asked {
		doubt(markInsideDoubt)
	}
	if a.sheet.Method() == trial.OneLength && trial.AlikeFromBothEnds(a.asked, a.runs) && len(a.misread) == 0 {
		doubt(alikeDoubt)
	}
	if s := a.sheet; s.isFeed() && s.Speed.Given && s.Speed.Value() > s.TooFast() {
		doubt(fastDoubt)
	}
	if a.sheet.Axis.Word == "travel" && a.sheet.Method() == trial.OneLength && a.judged.Verdict == measure.ChangeIt && !a.suspectsMistake() && !a.keepsParts() {
		doubt(carriageDoubt)
	}
	if a.test.Scatter == 0 && len(a.test.Runs) > 1 {
		says := report.Say(trial.Doubt(measure.WarnAllEqual))
		if a.runs[0].Mark > 0 {
			says = report.Together(says, report.Say(handMadeDoubt))
		}
		notes = append(notes, report.Note{Kind: report.Doubt, Line: says})
	}
	switch {
	case a.suspectsMistake() || math.Abs(a.scale.Error().Value) <= farOff:
	case a.sheet.Angle.Given || a.sheet.Micro.Given || a.sheet.GearEntry.Known():
		doubt(farOffKnown)
	default:
		doubt(farOffDoubt)
	}
	if a.sheet.Method() == trial.SeveralLengths && a.fit.OffsetFound {
		o := a.offset("")
		notes = append(notes, report.TipNote(offsetTip, "offset", &o), report.TipNote(word.Template(a.sheet.moves().OffsetFound)))
	}
	if a.alone && a.judged.Verdict != measure.NotWithThis {
		return notes
	}
	note, ok := a.sheet.measuringTool().Assumes()
	if ok {
		notes = append(notes, note)
	}
	if other, both := a.sheet.markTool.Assumes(); both && len(a.runs) > 0 && a.runs[0].Mark > 0 && !(ok && other.Line.String() == note.Line.String()) {
		notes = append(notes, other)
	}
	return notes
}

// doubts are what would make the answer better, each with its cure.
func (a *solution) doubts() []report.Block {
	var notes []report.Block
	for _, w := range a.warnings() {
		known := a.sheet.Earlier().Dof > 0 && a.found && !a.alone
		if w == measure.WarnAllEqual || known && (w == measure.WarnOneRun || w == measure.WarnTwoRuns) {
			continue // beside the answer already, or the scatter is known from before
		}
		notes = append(notes, report.DoubtNote(a.sheet.doubt(w)))
	}
	if _, told := a.sheet.measuredWith(); !told && a.found {
		notes = append(notes, report.DoubtNote(toolDoubt))
	}
	if !a.sheet.isFeed() && a.sheet.Method() == trial.OneLength {
		notes = append(notes, report.TipNote(a.sheet.moves().OneLengthTip, "choice", a.sheet.Trip.Options()[1].Label))
	}
	return notes
}

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

// runs returns the complete rows, the keys they are read from, the reading's last, and what is
// wrong with those that cannot be.
func (s *entries) runs(r *trial.RoundEntry, suffix string) (runs []trial.Run, keys []string, problems []report.Problem) {
	keys = []string{"aside" + suffix}
	switch {
	case s.rotary():
		runs, keys = trial.PlainRuns(r, r.Turned.Cells()), append(keys, "turned"+suffix)
	case s.Axis.Word == "travel":
		runs, keys = trial.PlainRuns(r, r.Moved.Cells()), append(keys, "moved"+suffix)
	case s.Read.Word == "fed":
		runs, keys = trial.PlainRuns(r, r.Fed.Cells()), append(keys, "fed"+suffix)
	default:
		runs, keys = s.markRuns(r, suffix, keys)
	}
	return runs, keys, trial.Strays(runs, keys[len(keys)-1], readFed.Label)
}

// markRuns are those of a test with a mark on the filament.
func (s *entries) markRuns(r *trial.RoundEntry, suffix string, keys []string) ([]trial.Run, []string) {
	var runs []trial.Run
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
		runs = append(runs, trial.Run{Row: i, Mark: mark.Number, Rest: rest.Number, Moved: mark.Number - rest.Number, Aside: r.Aside.Rows[i].On, Reading: &r.Rest.Rows[i], MarkedAt: mark})
	}
	return runs, keys
}
