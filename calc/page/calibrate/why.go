package calibrate

import (
	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// why is what the verdict rests on, folded away.
func (a *solution) why() *report.Part {
	p := &report.Part{ID: "why", Title: whyTitle, Folded: true, Brief: whyBrief, Needs: a.readKeys}
	e := a.scale.Error()
	p.Blocks = trial.WhyBlocks(a.relativeBudget(), e, a.judged, a.alone, trial.PartName)
	if a.sheet.Method() == trial.OneLength && len(a.test.Runs) > 1 && e.U > 0 {
		low, high := e.Interval()
		p.Add(report.Lots{Value: a.test.Length, Budget: a.test.Budget, Commanded: a.asked, Low: 100 * low, High: 100 * high})
	}
	return p
}

// relativeBudget is the budget of the relative error.
func (a *solution) relativeBudget() measure.Budget {
	switch a.sheet.Method() {
	case trial.OneLength:
		return a.test.Budget.Scaled(1 / a.asked)
	case trial.SeveralLengths:
		return a.fit.Budget
	}
	return nil
}
