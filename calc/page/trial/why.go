package trial

import (
	"math"
	"strconv"
	"strings"

	"striderule/calc/measure"
	"striderule/calc/report"
	"striderule/calc/word"
)

// partNames say the causes of doubt.
var partNames = word.Table{
	{measure.Scatter, "the runs differ among themselves"},
	{measure.Placement, "placing the mark and finding it again by eye"},
	{measure.Resolution, "the step of the instrument"},
	{measure.Accuracy, "the accuracy that is stated for the instrument"},
	{measure.Certificate, "the instrument's certificate"},
	{measure.LineFit, "how well the line is known"},
}

// PartName says a cause of doubt by its ID.
func PartName(id string) string {
	for _, of := range []struct{ prefix, says string }{{measure.MarkPart, ", at the mark"}, {measure.RemainingPart, ", at what remains"}} {
		if rest, ok := strings.CutPrefix(id, of.prefix); ok {
			return partNames.Of(rest) + of.says
		}
	}
	return partNames.Of(id)
}

// WhyBlocks are what the verdict on a relative error rests on; name says the
// causes of its doubt.
func WhyBlocks(budget measure.Budget, e measure.Estimate, judged measure.Judgement, name func(id string) string) []report.Block {
	small := func(id, label string, v float64) *report.Figure {
		return &report.Figure{ID: id, Label: label, Value: v, Unit: "%", Digits: 3}
	}
	var blocks []report.Block
	if len(budget) > 0 {
		bars := report.Bars{Title: "Standard uncertainty of the error, by cause, the largest first"}
		for i, c := range budget.BySize() {
			if c.U == 0 {
				break // the rest is not worth a bar
			}
			bars.All = append(bars.All, report.Bar{Label: word.Capital(name(c.ID)), Value: *small("part-"+strconv.Itoa(i+1), "", 100*c.U)})
		}
		blocks = append(blocks, bars)
	}
	var figures report.FigureList
	figures.Add(small("combined", "All together, standard uncertainty u", 100*e.U))
	if e.U > 0 { // else nothing is known that chances could be told from
		if !math.IsInf(e.Dof, 0) {
			figures.Add(&report.Figure{ID: "dof", Label: "Effective degrees of freedom", Value: e.Dof, Digits: 3})
		}
		figures.Add(&report.Figure{ID: "k", Label: "Coverage factor k of 95 %", Value: e.K(), Digits: 3},
			small("within", "Probability that the error is within the tolerance", 100*judged.Within),
			small("above", "Probability that it is beyond it, too much", 100*judged.Above),
			small("below", "Probability that it is beyond it, too little", 100*judged.Below))
	}
	return append(blocks, report.Figures{All: figures},
		report.ParaOf("Uncertainty ± is expanded: k times u, so that 95 of 100 such intervals hold the true value. With few runs k is large, as the scatter itself is hardly known. The verdict asks for 95 % on the side that it takes."))
}
