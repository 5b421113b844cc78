package trial

import (
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/report"
)

// PartName says a cause of uncertainty by its ID.
func PartName(id string) string { return parts.Of(id) }

// manyDof is from how many degrees of freedom on nobody learns anything from their number.
const manyDof = 1000

// WhyBlocks are what the verdict on a relative error rests on; name says the
// causes of its uncertainty. A single reading alone has no interval, so no chances either.
func WhyBlocks(budget measure.Budget, e measure.Estimate, judged measure.Judgement, alone bool, name func(id string) string) []report.Block {
	small := func(id, label string, v float64) *report.Figure {
		return &report.Figure{ID: id, Label: label, Value: v, Unit: "%", Digits: 3}
	}
	var blocks []report.Block
	if len(budget) > 0 {
		bars := report.Bars{Title: partsTitle}
		for i, c := range budget.BySize() {
			if c.U == 0 {
				break // the rest is not worth a bar
			}
			bars.All = append(bars.All, report.Bar{Label: name(c.ID), Value: *small("part-"+strconv.Itoa(i+1), "", 100*c.U)})
		}
		blocks = append(blocks, bars)
	}
	var figures report.FigureList
	figures.Add(small("combined", combinedLabel, 100*e.U))
	if e.U > 0 && !alone { // else nothing is known that chances could be told from
		if e.Dof < manyDof {
			figures.Add(&report.Figure{ID: "dof", Label: dofLabel, Value: e.Dof, Digits: 3})
		}
		figures.Add(&report.Figure{ID: "k", Label: coverageLabel, Value: e.K(), Digits: 3},
			small("guide", guideLabel, 100*e.Expanded()), small("half", halfLabel, 100*e.HalfWidth()))
		for _, c := range []struct {
			id, label string
			p         float64
		}{{"within", withinLabel, judged.Within}, {"above", aboveLabel, judged.Above}, {"below", belowLabel, judged.Below}} {
			f := chance(c.p)
			f.ID, f.Label = c.id, c.label
			figures.Add(f)
		}
	}
	blocks = append(blocks, report.Figures{All: figures})
	if alone {
		return blocks
	}
	return append(blocks, report.ParaOf(intervalMeans), report.ParaOf(levelMeans))
}

// Explain says what was mixed up, and what to check; two mistakes may only together explain it.
func Explain(mistakes []drive.Mistake) report.Line {
	var says []report.Line
	if len(mistakes) > 1 {
		says = append(says, report.Say(twoMistakes))
	}
	for _, m := range mistakes {
		says = append(says, report.Text(m.What), report.Text(m.Look))
	}
	return report.Together(says...)
}
