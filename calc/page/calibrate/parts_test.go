package calibrate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A belt on 18 teeth of 2 mm, 1.8° and 16 microsteps: 88.889 steps/mm. Measured: 0.2 mm and 0.3 % too
// much, which no part explains: the setting that the parts give is to be kept, and nothing else.
const plover = "v=1&axis=travel&steps=88.8889&trip=lengths&want=20,20,100,100,180,180&moved=20.26,20.25,100.5,100.51,180.74,180.75&tool=caliper-0.02"

func TestMeasureOneRecommendationForBelts(t *testing.T) {
	for _, entries := range []string{plover, plover + "&angle=1.8&micro=16&gears=none"} {
		f := calctest.Open(t, "measure", entries+"&linetravel=M92%20X%7Bvalue%7D")
		a := f.Report().Answer
		assert.Equal(t, "Keep it: the parts say so", a.Verdict.Title)
		assert.Equal(t, "parts", a.Verdict.ID())
		assert.Equal(t, report.Leave, a.Verdict.Kind)
		require.NotNil(t, a.Keep)
		assert.Equal(t, "88.8889 steps/mm", a.Keep.String())
		assert.Contains(t, a.Verdict.Says.String(), "36 mm per turn")
		assert.Equal(t, entries == plover, strings.Contains(a.Verdict.Says.String(), "the usual ones (1.8°, 16 microsteps, no gears)"))
		assert.Equal(t, "If you want to change it anyway", f.Report().Parts[partAt(f.Report(), "apply")].Title)
		assert.True(t, f.Report().Parts[partAt(f.Report(), "apply")].Folded)
		assert.Contains(t, calctest.Part(f, "next"), "explains the difference")
		assert.NotContains(t, calctest.Answer(f), "trust the value")
		// The offset stands in the answer.
		assert.Contains(t, calctest.Answer(f), "Fixed offset: 0.195 ± 0.037 mm.")
		assert.Contains(t, calctest.Answer(f), "Keep it out of steps/mm")
	}
	// With other gears it is no whole tooth: the measured setting is the one recommendation.
	f := calctest.Open(t, "measure", plover+"&angle=1.8&micro=16&gears=ratio&ratio=1.003")
	assert.Equal(t, "Change it", calctest.Verdict(f).Title)
	assert.NotContains(t, calctest.Answer(f), "parts")
	// A setting that was measured once comes from no parts; nor does an error of some per cent
	// come from the ruler.
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=88.71&asked=100&moved=100.5,100.51,100.49&tool=caliper-0.02")
	assert.Equal(t, "Change it", calctest.Verdict(f).Title)
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&asked=100&moved=104.5,104.51,104.49&tool=caliper-0.02")
	assert.Equal(t, "Change it", calctest.Verdict(f).Title)
	// A screw, as the travel per motor turn.
	f = calctest.Open(t, "measure", "v=1&axis=travel&as=turn&turn=4&asked=100&moved=100.5,100.51,100.49&tool=caliper-0.02")
	assert.Equal(t, "parts", calctest.Verdict(f).ID())
	assert.Equal(t, "4 mm/rev", f.Report().Answer.Keep.String())
	f = calctest.Open(t, "measure", plover+"&angle=0.9")
	assert.Equal(t, "Change it", calctest.Verdict(f).Title, "half of the facts is none")
	// Filament has no whole teeth.
	f = calctest.Open(t, "measure", "v=1&steps=400&asked=100&read=fed&fed=101,101.1,101&tool=caliper-0.02")
	assert.Equal(t, "Change it", calctest.Verdict(f).Title)
}

func partAt(r report.Report, id string) int {
	for i, p := range r.Parts {
		if p.ID == id {
			return i
		}
	}
	return 0
}

// Whatever whole teeth or lead, microsteps and gears: a small error of an axis that is set by its
// parts is never called a reason to change it, and the setting is never told both ways.
func TestMeasurePartsOrChange(t *testing.T) {
	p, _ := calc.PageOf("measure")
	rapid.Check(t, func(t *rapid.T) {
		travel := rapid.IntRange(4, 80).Draw(t, "travel per turn")
		micro := rapid.SampledFrom([]int{8, 16, 32, 64}).Draw(t, "microsteps")
		off := rapid.Float64Range(0.003, 0.014).Draw(t, "error") * rapid.SampledFrom([]float64{-1, 1}).Draw(t, "sign")
		steps := float64(200*micro) / float64(travel)
		moved := ""
		for _, s := range []float64{-0.02, 0, 0.02} {
			moved += "," + unit.Trim(300*(1+off)+s, 9)
		}
		link := "v=1&axis=travel&steps=" + unit.Trim(steps, 9) + "&asked=300&moved=" + moved[1:] + "&tool=caliper-0.02&angle=1.8&gears=none&micro=" + unit.Full(float64(micro))
		a := calc.Load(p, link).Report().Answer
		require.Equal(t, "parts", a.Verdict.ID(), link)
		require.InEpsilon(t, steps, a.Keep.Value, 1e-8)
	})
}
