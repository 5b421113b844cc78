package calc_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/report"
)

// What pages may say of readings, and what they may not. Figures that stand here as numbers were
// worked out apart from this code, from U = √((t·s/√n)² + R²) and the sum of rectangles, and of
// five runs or more the Guide's where that's wider.

// figureOf is a figure of a report by its ID.
func figureOf(t *testing.T, f *form.Form, id string) report.Figure {
	t.Helper()
	for _, figure := range f.Report().Figures() {
		if figure.ID == id {
			return figure
		}
	}
	require.FailNow(t, "no figure "+id)
	return report.Figure{}
}

// says is all that a page says of entries.
func says(t *testing.T, slug, entries string) string {
	t.Helper()
	return calctest.Open(t, slug, "v=1&"+entries).Report().String()
}

func kindOf(t *testing.T, slug, entries string) report.VerdictKind {
	t.Helper()
	return calctest.Verdict(calctest.Open(t, slug, "v=1&"+entries)).Kind
}

func TestIntervalOfOneLength(t *testing.T) {
	f := calctest.Open(t, "measure", heron+"&tool=caliper-0.05")
	for id, want := range map[string]float64{
		"combined": 0.11614980282583807, "dof": 2.464636012806417, "k": 3.6116202181622846,
		"guide": 0.4194889762213596, "half": 0.4795022884743620, "below": 100 - 0.03498295511556,
	} {
		assert.InEpsilon(t, want, calctest.Out(t, f, id), 1e-9, id)
	}
	assert.InEpsilon(t, 24.2294881976928, calctest.Out(t, f, "low"), 1e-9)
	assert.InEpsilon(t, 25.7705118023072, calctest.Out(t, f, "high"), 1e-9)
	right := calctest.Open(t, "measure", "v=1&steps=564.3&asked=80&mark=105&rest=25.0,24.9,25.1&tool=caliper-0.05")
	assert.InEpsilon(t, 1.0370066416, calctest.Out(t, right, "above"), 1e-9)
	assert.InEpsilon(t, 97.925986717, calctest.Out(t, right, "within"), 1e-9)
}

// From both sides the tool counts as it does for lengths: half a millimetre of 180.
func TestBothSidesCarryTheTool(t *testing.T) {
	const sides = "axis=travel&steps=80&trip=sides&target=10,10,100,100,190,190&up=10.04,10.05,100.04,100.03,190.05,190.04&down=9.96,9.95,99.96,99.97,189.96,189.95&tool=caliper-0.05"
	f := calctest.Open(t, "measure", "v=1&"+sides+"&limits=0.5")
	assert.Equal(t, report.Hopeless, calctest.Verdict(f).Kind)
	assert.InEpsilon(t, 0.315129022672393, calctest.Out(t, f, "half"), 1e-9)
	assert.Equal(t, report.Hopeless, kindOf(t, "measure", "axis=travel&steps=80&trip=lengths&want=10,100,190&moved=10.04,100.03,190.05&tool=caliper-0.05&limits=0.5"), "as of lengths")
	f = calctest.Open(t, "measure", "v=1&"+sides)
	assert.Equal(t, report.Leave, calctest.Verdict(f).Kind)
	assert.InEpsilon(t, 0.0386897746528446, calctest.Out(t, f, "half"), 1e-9)
	bare := calctest.Open(t, "measure", "v=1&"+strings.TrimSuffix(sides, "&tool=caliper-0.05"))
	assert.Greater(t, figureOf(t, f, "lost").U, figureOf(t, bare, "lost").U+0.02, "the step is in the backlash as well")
}

// Two readings of three that fall on the same line of a tool are no reason to doubt the third.
func TestTiesMakeNoOutlier(t *testing.T) {
	for _, entries := range []string{"rest=28.7,28.7,28.8", "rest=28.7,28.7,28.9&tool=caliper-0.05", "rest=28.7,28.7,28.7,28.8", "rest=28.7,28.7,28.7,28.7,28.8&tool=caliper-0.01"} {
		assert.NotContains(t, says(t, "measure", "steps=538&asked=80&mark=105&"+entries), "outlier", entries)
	}
	assert.NotContains(t, says(t, "flow", "scale=verified&width=0.45&layer=0.2&walls=4&thick=1.66,1.66,1.68&tool=caliper-0.01"), "outlier")
	assert.Contains(t, says(t, "measure", "steps=538&asked=80&mark=105&rest=28.7,28.8,28.6,28.7,33.7"), "Run 5 is an outlier")
}

func TestAnErrorThatRisesIsNoSlip(t *testing.T) {
	const speeds = "steps=400&trial=speeds&asked=100&read=fed&at=60,60,180,180,360,360&tool=caliper-0.02&fed="
	for fed, what := range map[string]string{
		"99.0,99.02,100,100.02,100.0,100.02":  "It feeds more at higher speed.",
		"100,100.02,100.5,100.52,100,100.02":  "Speed makes a difference, but not a steady one.",
		"100,100.02,99.5,99.52,100,100.02":    "Speed makes a difference, but not a steady one.",
		"100,100.02,100,100.02,100.5,100.52":  "It feeds more at higher speed.",
		"99.99,100.01,99.8,99.82,99.59,99.61": "It feeds less at higher speed: that's slip.",
	} {
		f := calctest.Open(t, "measure", "v=1&"+speeds+fed)
		assert.Contains(t, calctest.Part(f, "speeds"), what)
		slips := strings.Contains(what, "that's slip")
		assert.Equal(t, slips, calctest.Verdict(f).Slip, fed)
		for _, words := range []string{"cure slip", "there is slip", "correct slip"} {
			assert.Equal(t, slips, strings.Contains(f.Report().String(), words), "%s: %s", fed, words)
		}
	}
}

// Runs whose loss grows: the interval reaches from the slowest runs to no speed at all, where
// the true value is in both sheets the setting that's there.
func TestSeveralSpeedsHoldTheTrueValue(t *testing.T) {
	for entries, steps := range map[string]float64{
		"steps=415&asked=100&at=60,180,360,60,180,360,60,180,360&fed=100.00,99.85,99.75,99.75,99.95,99.75,100.05,99.90,99.80":                  415,
		"steps=80&asked=80&at=60,60,60,120,120,120,180,180,180,240,240,240&fed=79.9,79.9,79.9,79.6,79.6,79.6,78.8,78.8,78.8,77.4,77.4,77.4":    80,
		"steps=80&asked=80&at=60,60,60,120,120,120,180,180,180,240,240,240&fed=79.9,79.95,79.9,79.6,79.65,79.6,78.8,78.85,78.8,77.4,77.4,77.4": 80,
	} {
		a := calctest.Open(t, "measure", "v=1&trial=speeds&read=fed&tool=caliper-0.05&"+entries).Report().Answer
		require.NotNil(t, a)
		assert.LessOrEqual(t, math.Abs(a.Value-steps), a.U, entries)
		assert.Contains(t, a.Verdict.Says.String(), "between", "no sign is said that the interval does not show")
	}
}

// A single later run shows no scatter, as a first one does not.
func TestOneLaterRunClaimsNothing(t *testing.T) {
	for _, entries := range []string{"rest=28.7,28.9,28.6&tool=own&step=0.05", "rest=28.7&tool=caliper-0.05", "rest=28.7,28.9,28.6"} {
		f := calctest.Open(t, "measure", "v=1&steps=538.0&asked=80&mark=105&"+entries+"&restagain=25.1")
		assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind, entries)
		assert.Zero(t, figureOf(t, f, "then").U)
		assert.NotContains(t, calctest.Verdict(f).Says.String(), "confidence")
		assert.Contains(t, calctest.Verdict(f).Says.String(), "One run can't show the scatter")
	}
	known := calctest.Open(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6,28.8,28.7&tool=caliper-0.05&restagain=25.1")
	assert.Positive(t, figureOf(t, known, "then").U, "five first runs tell how one more scatters")
}

// Lengths that are the same on paper are the same, though their last bits differ.
func TestRoundingNoiseIsNoScatter(t *testing.T) {
	for _, entries := range []string{
		"steps=400&asked=100&marks=each&eachmark=120.1,120.4,120.2&rest=20.5,20.8,20.6",
		"axis=travel&steps=80&asked=100&moved=99.06,3.9in,9.906cm",
	} {
		f := calctest.Open(t, "measure", "v=1&"+entries)
		assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind, entries)
		assert.Zero(t, f.Report().Answer.U)
		assert.Zero(t, calctest.Out(t, f, "spread"))
		assert.Contains(t, f.Report().String(), "All results are the same")
		assert.NotContains(t, f.Report().String(), "99999")
	}
	f := calctest.Open(t, "measure", "v=1&steps=400&asked=100&marks=each&eachmark=120.1,120.5,120.2&rest=20.4,20.8,20.5&tool=caliper-0.05")
	assert.Contains(t, f.Report().String(), "All results are the same")
	assert.NotContains(t, calctest.Part(f, "why"), "freedom")
}

func TestTwoEqualReadingsGiveNoVerdict(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=400&asked=100&read=fed&fed=99.3,99.3&tool=caliper-0.05")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
	assert.Contains(t, calctest.Verdict(f).Says.String(), "looks like more than your acceptable error of ± 0.5%: more runs must confirm it")
	assert.NotContains(t, []report.VerdictKind{report.Change, report.Leave}, kindOf(t, "flow", "scale=verified&width=0.45&layer=0.2&thick=0.62,0.62&tool=caliper-0.01"))
	assert.Equal(t, report.MeasureMore, kindOf(t, "flow", "scale=verified&width=0.45&layer=0.2&walls=4&thick=1.78,1.78&tool=caliper-0.01"))
	assert.Equal(t, report.Change, kindOf(t, "measure", "steps=400&asked=100&read=fed&fed=99,99,99&tool=caliper-0.05"), "three equal ones do")
}

// Three lengths once each: t of one degree of freedom, and a scatter that's not below a step's.
func TestFewPointsAreKnownPoorly(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=lengths&want=20,100,180&moved=20.10,100.10,180.05&tool=caliper-0.05")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
	assert.InEpsilon(t, 0.232110661494452, calctest.Out(t, f, "half"), 1e-9)
	assert.Contains(t, calctest.Part(f, "lengths"), "no visible fixed offset")
}

func TestFullTurnsCanBeSettled(t *testing.T) {
	const turns = "axis=rotary&stepsdeg=80&askeddeg=360&turned=360,360,360"
	assert.Contains(t, says(t, "measure", turns), "Choose your measuring tool")
	assert.Equal(t, report.Leave, kindOf(t, "measure", turns+"&tooldeg=gauge-0.1"))
}

// A blank accuracy is the usual one of that tool, and that is said; of a tool of one's own
// nothing is known but its resolution, and that is said too.
func TestBlankAccuracyIsTheUsualOne(t *testing.T) {
	for tool, usual := range map[string]string{"tape": "0.5", "rule": "0.2", "caliper-0.1": "0.1", "caliper-0.05": "0.05", "caliper-0.02": "0.03", "caliper-0.01": "0.03"} {
		const test = "axis=travel&steps=80&asked=100&moved=99.1,99.2,98.9&tool="
		blank, typed := calctest.Open(t, "measure", "v=1&"+test+tool), calctest.Open(t, "measure", "v=1&"+test+tool+"&limits="+usual)
		assert.Equal(t, calctest.Out(t, typed, "half"), calctest.Out(t, blank, "half"), tool)
		assert.Contains(t, blank.Report().String(), "is accurate to the usual ± "+usual+" mm", tool)
		assert.NotContains(t, typed.Report().String(), "the usual ±", tool)
	}
	angle := says(t, "measure", "axis=rotary&stepsdeg=80&askeddeg=360&turned=360,360,360&tooldeg=gauge-0.1")
	assert.Contains(t, angle, "This assumes that a digital angle gauge is accurate to the usual ± 0.2°.")
	own := says(t, "measure", strings.TrimPrefix(heron, "v=1&")+"&tool=own&step=0.05")
	assert.Contains(t, own, "Only your tool's resolution counts here")
	both := says(t, "measure", strings.TrimPrefix(heron, "v=1&")+"&tool=caliper-0.05&marktool=rule")
	assert.Contains(t, both, "a 0.05 mm caliper is accurate to the usual ± 0.05 mm")
	assert.Contains(t, both, "a steel ruler is accurate to the usual ± 0.2 mm", "what the mark is read with as well")
	assert.NotContains(t, says(t, "measure", "steps=538.0&asked=80&mark=105&rest=28.7&tool=caliper-0.05"), "the usual ±", "where nothing is claimed")
}

func TestOneReadingOfFlowClaimsNothing(t *testing.T) {
	for _, entries := range []string{
		"scale=verified&width=0.45&layer=0.2&thick=0.62&tool=caliper-0.01", "scale=verified&width=0.45&layer=0.2&walls=4&thick=1.78&tool=caliper-0.01",
		"scale=verified&by=mass&stated=mass&planned=25&weighed=26.5&balance=0.1&densitylimits=0.5",
	} {
		f := calctest.Open(t, "flow", "v=1&"+entries)
		assert.Contains(t, []report.VerdictKind{report.MeasureMore, report.Hopeless}, calctest.Verdict(f).Kind, entries)
		assert.Zero(t, f.Report().Answer.U)
		assert.NotContains(t, f.Report().String(), "95% confidence")
		assert.NotContains(t, calctest.Part(f, "why"), "Probability")
	}
}

// A scatter that's wider than half a step of the tool spreads the readings over several: their
// mean is then better than the step, and more runs help.
func TestScatterDithersTheStep(t *testing.T) {
	fed := strings.TrimSuffix(strings.Repeat("100,101,100,99,100,", 10), ",") // s 0.64 mm
	f := calctest.Open(t, "measure", "v=1&steps=400&asked=100&read=fed&fed="+fed+"&tool=rule&tol=0.5")
	assert.NotEqual(t, report.Hopeless, calctest.Verdict(f).Kind)
	equal := strings.TrimSuffix(strings.Repeat("100,", 50), ",")
	assert.Equal(t, report.Hopeless, kindOf(t, "measure", "steps=400&asked=100&read=fed&fed="+equal+"&tool=rule&tol=0.5"), "else every one is rounded alike")
}

// Digits that nobody needs, and chances that nobody can mean.
func TestDigitsMeanSomething(t *testing.T) {
	assert.Equal(t, "Steps per mm so far: 564 steps/mm", lineOf(says(t, "measure", "steps=538.0&asked=80&mark=105&rest=28.7&tool=caliper-0.05"), "Steps per mm so far"))
	assert.Contains(t, says(t, "measure", "steps=400&asked=100&read=fed&fed=60,110,95,40&tool=caliper-0.05"), "so far apart that nothing can be said yet")
	far := says(t, "measure", strings.TrimPrefix(heron, "v=1&")+",28.7,28.8,28.9,28.6,28.7&tool=caliper-0.01")
	assert.Contains(t, far, "Probability that it's too little: > 99.9%")
	assert.Contains(t, far, "Probability that it's too much: < 0.1%")
	assert.NotRegexp(t, `\de[+-]\d`, far)
	for slug, entries := range map[string]string{
		"measure": "axis=rotary&stepsdeg=80&askeddeg=1&turned=1,1,1&tooldeg=protractor", "flow": "scale=verified&by=diameter&set=1.75&across=2,2,2.1&tool=rule",
	} {
		f := calctest.Open(t, slug, "v=1&"+entries)
		assert.Nil(t, f.Report().Answer)
		assert.Contains(t, calctest.Part(f, "impossible"), "Your measuring tool is so coarse", "not the readings: they are near each other")
	}
}

func lineOf(text, start string) string {
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, start) {
			return strings.TrimSpace(line)
		}
	}
	return ""
}
