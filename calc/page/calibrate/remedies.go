package calibrate

import (
	"strconv"

	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// leastRuns is how many runs show a scatter well enough.
const leastRuns = 3

// remedies say what would settle it: the best first.
func (a *solution) remedies() []report.Line {
	means, err := a.scale.Advise(a.sheet.acceptable())
	with, told := a.sheet.measuredWith()
	switch {
	case told && err == nil && a.judged.Verdict == measure.NotWithThis && len(means) == 0:
		return []report.Line{report.Say(a.sheet.moves().FinerOrWiderStep)}
	case a.scale.Plan > a.scale.Runs:
		return []report.Line{report.Say(finishStep, "n", strconv.Itoa(a.scale.Plan-a.scale.Runs), "all", strconv.Itoa(a.scale.Plan))}
	case err != nil || len(means) == 0 || a.scale.Ratio.U == 0: // nothing is known that could be improved
		var steps report.Sentences
		if a.scale.Runs < leastRuns {
			steps.Say(threeRunsStep)
		}
		if !told {
			steps.Say(chooseToolStep)
		}
		return steps
	case a.alone && a.judged.Verdict == measure.MeasureMore: // what more would bring, a single run can't tell
		return []report.Line{report.Say(threeRunsStep)}
	}
	var items report.Sentences
	if a.sheet.Method() == trial.OneLength && with.Resolution > 0 && a.test.Scatter > 5*with.Resolution {
		vary := a.length("", "", 2*a.test.Scatter)
		vary.Digits = 2
		says := runsVaryStep
		if a.runs[0].Mark > 0 {
			says = marksVaryStep
		}
		items.Say(says, "length", vary)
	}
	for _, m := range means {
		items = append(items, a.remedy(m))
	}
	return items
}

// remedy says what one means would bring, and how much of it would settle it.
func (a *solution) remedy(m measure.Remedy) report.Line {
	u := report.Percent("", "", m.U, m.U)
	switch m.Means {
	case measure.MoreRuns:
		says := oneMoreStep
		switch {
		case m.About:
			says = oneMoreAbout
		case m.Settles():
			says = oneMoreSettles
		}
		return report.Say(says, "error", u, "enough", strconv.Itoa(m.Enough.Runs))
	case measure.LongerMove:
		says := longerStep
		switch {
		case m.About:
			says = longerAbout
		case m.Settles():
			says = longerSettles
		}
		return report.Say(says, "length", a.length("", "", m.Next.Commanded), "error", u, "enough", a.length("", "", m.Enough.Commanded))
	}
	return trial.FinerTool(m)
}
