package calc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/report"
)

// A planned number of runs: no verdict before, the full 5 % with the last of them, and the
// level of that number of looks after it.
func TestPlannedRuns(t *testing.T) {
	const test = "steps=415&asked=100&mark=120&tool=caliper-0.05&rest=20.1,20.3,20"
	assert.Equal(t, report.MeasureMore, kindOf(t, "measure", test), "0.45 of 0.37 mm")
	at := calctest.Open(t, "measure", "v=1&"+test+"&planned=3")
	assert.Equal(t, report.Leave, calctest.Verdict(at).Kind, "0.26 of 0.37 mm")
	assert.Contains(t, calctest.Verdict(at).Says.String(), "the error itself is most likely within it (96.")
	assert.Equal(t, report.MeasureMore, kindOf(t, "measure", test+",20.5,19.7&planned=3"))
	before := calctest.Open(t, "measure", "v=1&steps=415&asked=100&mark=120&tool=caliper-0.05&rest=25.1,25.2,25&planned=4")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(before).Kind, "5 % too little, and no verdict yet")
	assert.Contains(t, calctest.Verdict(before).Says.String(), "You planned 4 runs: the verdict comes with the last of them.")
	assert.NotContains(t, calctest.Verdict(before).Says.String(), "can't tell")
}

// Scatter known from before counts with that of the runs, pooled; for a single run it has to
// come from five runs at least.
func TestScatterFromBefore(t *testing.T) {
	const one = "steps=538.0&asked=80&mark=105&rest=28.7&tool=caliper-0.05&spread=0.15"
	f := calctest.Open(t, "measure", "v=1&"+one+"&spreaddof=6")
	assert.Equal(t, report.Change, calctest.Verdict(f).Kind)
	assert.InEpsilon(t, 2.74518948344089, f.Report().Answer.U, 1e-9)
	assert.InEpsilon(t, 0.464150852807070, calctest.Out(t, f, "half"), 1e-9)
	assert.NotContains(t, f.Report().String(), "One run can't show the scatter")
	few := calctest.Open(t, "measure", "v=1&"+one+"&spreaddof=3")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(few).Kind)
	assert.Zero(t, few.Report().Answer.U)
	pooled := calctest.Open(t, "measure", heron+"&tool=caliper-0.05&spread=0.1")
	assert.InEpsilon(t, 0.223571419636727, calctest.Out(t, pooled, "half"), 1e-9)
	assert.InEpsilon(t, 0.152752523165, calctest.Out(t, pooled, "spread"), 1e-9, "of the runs themselves")
}

// Whatever the tool, naming it never makes an interval narrower.
func TestNamingAToolNeverNarrows(t *testing.T) {
	for _, test := range []string{
		"asked=80&mark=105&rest=28.7,28.9,28.6", "asked=80&mark=105&rest=28.7,28.9,28.6,28.7,28.8,28.6,28.9", "asked=80&mark=105&rest=28.7,28.9",
		"trial=speeds&asked=100&read=fed&at=60,60,180,180,360,360&fed=99.42,99.38,99.03,98.98,98.42,98.38",
	} {
		page, _ := calc.PageOf("measure")
		bare := calc.Load(page, "v=1&steps=538&"+test).Report().Answer
		for _, tool := range []string{"tape", "rule", "caliper-0.1", "caliper-0.05", "caliper-0.02", "caliper-0.01"} {
			assert.GreaterOrEqual(t, calc.Load(page, "v=1&steps=538&"+test+"&tool="+tool).Report().Answer.U, bare.U, "%s, %s", test, tool)
		}
	}
}
