package calibrate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/calctest"
	"striderule/calc/report"
)

// Heron's first test, as its sheet has it.
const heron = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6"

// Equal readings of nothing that is known settle nothing, so no chances are told of them.
func TestMeasureOfNothingKnownTellsNoChances(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=400&asked=100&read=fed&fed=101,101,101")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
	assert.NotContains(t, calctest.Part(f, "why"), "Probability")
	f = calctest.Open(t, "measure", "v=1&steps=400&asked=100&read=fed&fed=101,101,101&tool=caliper-0.05")
	assert.Contains(t, calctest.Part(f, "why"), "Probability that it's too much: > 99.9%")
}

// Half a stage is none: what depends on the gears waits for the rest of it.
func TestMeasureHalfAStage(t *testing.T) {
	for _, gears := range []string{"gears=pairs", "gears=pairs&driving=12", "gears=pairs&driving=12,20&driven=54", "gears=pairs&driving=12,20&driven=54,"} {
		f := calctest.Load(t, "measure", heron+"&angle=1.8&micro=16&"+gears)
		assert.Contains(t, calctest.Part(f, "conventions"), "travel per output turn: driving, driven", gears)
	}
	f := calctest.Load(t, "measure", heron+"&angle=1.8&micro=16&gears=pairs&driving=,12&driven=,54")
	assert.Contains(t, calctest.Part(f, "conventions"), "Travel per output turn | 26.766", "a stage that is left empty is none")
}

// Readings that lie on a line but for what rounding leaves show no scatter: without an
// instrument nothing is known of how good they are, and with one only that.
func TestMeasureOnALineIsNotSure(t *testing.T) {
	for _, test := range []string{
		"trial=speeds&asked=100&read=fed&at=60,60,120,120&fed=99,99,98.3456,98.3456",
		"trial=speeds&asked=100&read=fed&at=60,120,180&fed=98.1,98,97.9",
		"trial=speeds&asked=100&read=fed&at=60,120,180&fed=100.01,100.02,100.03",
		"axis=travel&trip=lengths&want=20,20,100,100,180,180&moved=20.1,20.1,100.5,100.5,180.9,180.9",
		"axis=travel&trip=lengths&want=20,60,110,180&moved=20.1,60.3,110.55,180.9",
		"axis=travel&trip=sides&target=10,70,110,190&up=10.1,70.7,111.1,191.9&down=10,70.6,111,191.8",
	} {
		f := calctest.Open(t, "measure", "v=1&steps=415&"+test)
		assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind, test)
		assert.Zero(t, f.Report().Answer.U, test)
		assert.NotContains(t, f.Report().String(), "0000000", test)
	}
	f := calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,120,120&fed=99,99,98.3456,98.3456&tool=caliper-0.05")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
	// With a caliper the ± reaches from the line, 99.6544 mm, to the slow runs, 99; the step is on
	// the line √5 times over, its limits ± 0.05 mm of 100.
	wide := math.Sqrt(0.6544*0.6544 + 5*math.Pow(1.959964*0.05/math.Sqrt(12), 2) + math.Pow(0.95*0.05, 2))
	assert.InEpsilon(t, wide/99.6544*f.Report().Answer.Value, f.Report().Answer.U, 1e-6)
}
