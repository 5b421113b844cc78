package calibrate_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/report"
)

// What is not to be entered yet is not the large number, and no line with it is there to copy: the
// setting to keep is large.
func TestMeasureWhatIsNotToBeEnteredIsNotLarge(t *testing.T) {
	for _, test := range []string{
		"asked=80&mark=105&rest=24.7",
		"asked=80&mark=105&rest=24.7,25.3,24.6",
		"asked=80&mark=105&rest=24.7,24.8,24.6&tool=rule",
		"asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&planned=5",
	} {
		f := calctest.Open(t, "measure", "v=1&steps=538&line=M92%20E%7Bvalue%7D&"+test)
		a := f.Report().Answer
		assert.Contains(t, a.Says.String(), "Don't enter this yet.", test)
		require.NotNil(t, a.Keep, test)
		assert.Equal(t, "538 steps/mm", a.Keep.String(), test)
		assert.Equal(t, "For now, keep steps per mm at", a.Keep.Label, test)
		assert.NotContains(t, f.Report().String(), "M92", test)
	}
	a := calctest.Open(t, "measure", heron+"&tool=caliper-0.05").Report().Answer
	assert.Nil(t, a.Keep, "what is to be set is large itself")
}

// A setting that is far worse than the new one is uncertain is not left in the machine, however
// coarse the tool.
func TestMeasureInterimSetting(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=36,36.5,36&tool=rule&line=M92%20E%7Bvalue%7D&planned=3")
	a := f.Report().Answer
	assert.Equal(t, "Set it for now, and measure better", a.Verdict.Title)
	assert.Equal(t, "interim", a.Verdict.ID())
	assert.Nil(t, a.Keep)
	assert.Equal(t, "For now, set steps per mm to", a.Label)
	assert.NotContains(t, a.Says.String(), "Don't enter this yet")
	number, _, _ := strings.Cut(a.String(), " ")
	assert.Contains(t, calctest.Part(f, "apply"), "Send this: M92 E"+number+"\n")
	assert.Contains(t, calctest.Part(f, "next"), "new sheet")
	assert.NotContains(t, calctest.Part(f, "next"), "Add more runs here")
	// Off by little, with the same tool: nothing is gained.
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=26.5,26,26&tool=rule")
	assert.Equal(t, "Too coarse to settle it", calctest.Verdict(f).Title)
	// One run claims nothing, and a plan under way is not broken.
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=36&tool=rule")
	assert.Equal(t, "538 steps/mm", f.Report().Answer.Keep.String())
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=36,36.2,36&tool=caliper-0.05&planned=5")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
	assert.NotNil(t, f.Report().Answer.Keep)
}

// Whatever the readings: there is one instruction. What may be set is large or not there at all,
// and an interim setting is at least three times as good as the one in use.
func TestMeasureOneVerdict(t *testing.T) {
	p, _ := calc.PageOf("measure")
	rapid.Check(t, func(t *rapid.T) {
		rest := rapid.SliceOfN(rapid.IntRange(0, 1049), 1, 5).Draw(t, "rest")
		texts := make([]string, len(rest))
		for i, r := range rest {
			if i > 0 {
				r = min(1049, rest[0]+r%40)
			}
			texts[i] = strconv.FormatFloat(float64(r)/10, 'f', 1, 64)
		}
		tool := rapid.SampledFrom([]string{"", "&tool=rule", "&tool=tape", "&tool=caliper-0.05"}).Draw(t, "tool")
		a := calc.Load(p, "v=1&steps=538&asked=80&mark=105&rest="+strings.Join(texts, ",")+tool).Report().Answer
		if a == nil {
			return
		}
		enter := !strings.Contains(a.Says.String(), "Don't enter this yet")
		switch a.Verdict.ID() {
		case "leave":
			require.Equal(t, "538 steps/mm", a.Keep.String())
		case "more", "hopeless":
			require.Equal(t, "538 steps/mm", a.Keep.String())
			require.False(t, enter)
		case "mistake":
			require.NotNil(t, a.Keep)
		case "interim":
			require.Nil(t, a.Keep)
			require.True(t, enter)
			require.Greater(t, abs(a.Value/538-1)*538, 2*a.U)
		default:
			require.Nil(t, a.Keep)
			require.True(t, enter)
		}
	})
}

func abs(v float64) float64 { return max(v, -v) }

// An interval whose end, as it is shown, passes what is acceptable is not said to be within it.
func TestVerdictSaysNoContradiction(t *testing.T) {
	// 79.77 of 80 on average, ± 0.19 mm.
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&fed=79.55,79.9,79.7,79.9,79.8&tool=caliper-0.02&planned=5")
	says := calctest.Verdict(f).Says.String()
	require.Equal(t, report.Leave, calctest.Verdict(f).Kind, says)
	require.Regexp(t, `0\.5[1-9]% too little`, says)
	assert.NotContains(t, says, "That's within")
	assert.Contains(t, says, "One end of that is beyond your acceptable error of ± 0.5%")
	assert.Contains(t, says, "confidence")
}
