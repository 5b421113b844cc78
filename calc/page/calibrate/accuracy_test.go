package calibrate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/calctest"
)

// Three targets, three approaches from either side, by hand. Deviations in hundredths of a mm:
//
//	target     +           mean s     −            mean s    |B|   2s+2s+|B|
//	10      3, 4, 5        4    1  −5, −4, −3     −4    1     8       12
//	100     4, 6, 5        5    1  −2, −4, −6     −4    2     9       15
//	190     2, 4, 6        4    2  −6, −5, −4     −5    1     9       15
//
// So E is from −5 to 5, R the largest of the last column (4s is 8 at most), and A reaches from
// −4 − 2·2 to 4 + 2·2. The means of both sides are 0, 0.5 and −0.5.
const approaches = "v=1&axis=travel&steps=80&trip=sides&target=10,100,190,10,100,190,10,100,190" +
	"&up=10.03,100.04,190.02,10.04,100.06,190.04,10.05,100.05,190.06" +
	"&down=9.95,99.98,189.94,9.96,99.96,189.95,9.97,99.94,189.96"

func TestMeasureAccuracyByHand(t *testing.T) {
	f := calctest.Open(t, "measure", approaches)
	for id, want := range map[string]float64{
		"accuracy": 16, "repeat": 15, "repeatup": 8, "repeatdown": 8,
		"systematic": 10, "systematicup": 1, "systematicdown": 1, "meanrange": 1, "reversal": 9,
		"devup-1": 4, "devup-2": 5, "devup-3": 4, "devdown-1": -4, "devdown-2": -4, "devdown-3": -5,
		"scatterup-1": 1, "scatterup-2": 1, "scatterup-3": 2, "scatterdown-1": 1, "scatterdown-2": 2, "scatterdown-3": 1,
	} {
		assert.InDelta(t, want/100, calctest.Out(t, f, id), 1e-12, id)
	}
	part := calctest.Part(f, "accuracy")
	for _, says := range []string{
		"Repeatability and accuracy (ISO 230-2)", "Bidirectional accuracy A: 0.16 mm", "Bidirectional repeatability R: 0.15 mm",
		"Target | Mean +, mm | Mean −, mm | s +, mm | s −, mm", "190 mm | 0.04 | −0.05 | 0.02 | 0.01", "five approaches from each side", "not a certificate",
	} {
		assert.Contains(t, part, says)
	}
	for _, p := range f.Report().Parts {
		if p.ID == "accuracy" {
			assert.True(t, p.Folded, "out of the way of who came for the backlash")
		}
	}
}

// One approach shows no scatter: what needs it is left out, and it is said what it needs.
func TestMeasureAccuracyOfOneApproach(t *testing.T) {
	for _, entries := range []string{
		"target=10,100,190&up=10.04,100.05,190.04&down=9.96,99.96,189.95",
		"target=10,100,190,10,100&up=10.04,100.05,190.04,10.04,100.05&down=9.96,99.96,189.95,9.96,99.96",
	} {
		f := calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=sides&"+entries)
		assert.InDelta(t, 0.10, calctest.Out(t, f, "systematic"), 1e-12)
		assert.InDelta(t, 0.01, calctest.Out(t, f, "meanrange"), 1e-12)
		part := calctest.Part(f, "accuracy")
		assert.Contains(t, part, "Target | Mean +, mm | Mean −, mm\n")
		assert.NotContains(t, part, "accuracy A:")
		assert.NotContains(t, part, "repeatability R:")
		assert.Contains(t, part, "R and A need two approaches or more of every target from each side")
	}
}

// In degrees the same, and nothing of it for the other methods.
func TestMeasureAccuracyOfAngles(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=80&trip=sides&targetdeg=-90,0,90,-90,0,90&updeg=-89.9,0.1,90.1,-89.92,0.08,90.08&downdeg=-90.1,-0.1,89.9,-90.08,-0.08,89.92")
	assert.InDelta(t, 0.18, calctest.Out(t, f, "systematic"), 1e-12)
	assert.Contains(t, calctest.Part(f, "accuracy"), "Bidirectional systematic deviation E: 0.18°")
	assert.Contains(t, calctest.Part(f, "accuracy"), "Target | Mean +, ° |")
	assert.Empty(t, calctest.Part(calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=80&askeddeg=90&turned=90,91,90"), "accuracy"))
}
