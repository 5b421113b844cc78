package calc

import (
	"striderule/calc/measure"
)

// why is what the verdict rests on, folded away.
func (a *measured) why() *Part {
	p := &Part{ID: "why", Title: "Why: what the uncertainty is made of", Folded: true, Needs: a.readKeys}
	e := a.scale.Error()
	p.Blocks = whyBlocks(a.relativeBudget(), e, a.judged, partName)
	if a.sheet.method() == oneLength && len(a.test.Runs) > 1 && e.U > 0 {
		low, high := e.Interval()
		p.add(Lots{a.test.Length, a.test.Budget, a.asked, 100 * low, 100 * high})
	}
	return p
}

// relativeBudget is the budget of the relative error.
func (a *measured) relativeBudget() measure.Budget {
	switch a.sheet.method() {
	case oneLength:
		return a.test.Budget.Scaled(1 / a.asked)
	case severalLengths:
		return a.fit.Budget
	}
	return nil
}
