package calibrate

import (
	"math"
	"strconv"

	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/word"
)

// accuracy is how well targets are reached from both sides, in the terms of ISO 230-2.
func (a *solution) accuracy() *report.Part {
	if a.sheet.Method() != trial.BothSides {
		return nil
	}
	r := a.reversal
	p := &report.Part{ID: "accuracy", Title: accuracyTitle, Folded: true, Brief: accuracyBrief, Needs: a.readKeys}
	var figures report.FigureList
	add := func(id, label string, v float64) {
		figures.Add(&report.Figure{ID: id, Label: label, Value: withoutNoise(v), Unit: a.unit, Digits: 3})
	}
	if r.HasSpread {
		add("accuracy", accuracyLabel, r.A)
		add("repeat", repeatLabel, r.R)
		add("repeatup", repeatUpLabel, r.RForward)
		add("repeatdown", repeatDownLabel, r.RBackward)
	}
	add("systematic", systematicLabel, r.E)
	add("systematicup", systematicUpLabel, r.EForward)
	add("systematicdown", systematicDownLabel, r.EBackward)
	add("meanrange", meanRangeLabel, r.M)
	p.Add(report.Figures{All: figures}, report.ParaOf(accuracySays), a.deviationTable())
	p.Add(report.PointsOf(settingInThem, needsApproaches, onlyItsArithmetic))
	return p
}

// deviationTable has the mean deviation at each target, and its scatter, by direction.
func (a *solution) deviationTable() report.Table {
	r := a.reversal
	heads := []word.Template{meanUpHead, meanDownHead}
	if r.HasSpread {
		heads = append(heads, scatterUpHead, scatterDownHead)
	}
	t := report.Table{Caption: deviationsCaption, Head: []string{targetName}}
	for _, h := range heads {
		t.Head = append(t.Head, h.Fill("unit", a.unit))
	}
	targets, _ := a.sheet.approached()
	for i, target := range targets {
		n := strconv.Itoa(i + 1)
		cell := func(id string, v float64) report.Line {
			return report.Show(&report.Figure{ID: id + "-" + n, Value: withoutNoise(v), Digits: 3})
		}
		cells := []report.Line{report.Show(&report.Figure{Value: target.Position, Unit: a.unit, Digits: 6}), cell("devup", r.Forward[i]), cell("devdown", r.Backward[i])}
		if r.HasSpread {
			cells = append(cells, cell("scatterup", r.SForward[i]), cell("scatterdown", r.SBackward[i]))
		}
		t.Rows = append(t.Rows, cells)
	}
	return t
}

// withoutNoise is a value that is 0 but for rounding as 0.
func withoutNoise(v float64) float64 {
	if math.Abs(v) < roundingNoise {
		return 0
	}
	return v
}
