package calibrate_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// Three full turns that end where they began: what that settles depends on what they were read
// with, and that can be said.
func TestMeasureRotaryFullTurn(t *testing.T) {
	const turns = "v=1&axis=rotary&stepsdeg=80&askeddeg=360&turned=360,360,360"
	f := calctest.Open(t, "measure", turns)
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
	assert.Contains(t, calctest.Part(f, "next"), "Choose your measuring tool")
	assert.Contains(t, calctest.Part(f, "runs"), "Choose your measuring tool: its uncertainty isn't included yet")
	f.Set("tooldeg", 0, "protractor")
	assert.Empty(t, f.Problems())
	// Half a degree each of its lines and of how good it usually is: 1 − √0.05 of a degree, or 0.216 %.
	assert.Equal(t, report.Hopeless, calctest.Verdict(f).Kind)
	assert.InEpsilon(t, 100*math.Sqrt2/math.Sqrt(12)/360, calctest.Out(t, f, "combined"), 1e-12)
	assert.InEpsilon(t, 100*(1-math.Sqrt(0.05))/360, calctest.Out(t, f, "half"), 1e-12)
	assert.NotContains(t, f.Report().String(), "Choose your measuring tool")
	assert.Equal(t, turns+"&tooldeg=protractor", f.Fragment())
	f.Set("limitsdeg", 0, "0.1")
	assert.Equal(t, report.Leave, calctest.Verdict(f).Kind, "0.6 degrees of 360 are 0.17 %")
}

// Resolution and limits of one's own count as they do for lengths: a dial of 0.01 mm on an arm of
// 100 mm shows 0.01/100 rad.
func TestMeasureRotaryOwnTool(t *testing.T) {
	angle := calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=80&askeddeg=3&turned=2.99,2.985,2.992&tooldeg=own&stepdeg=0.00573&limitsdeg=0.01")
	length := calctest.Open(t, "measure", "v=1&axis=travel&steps=80&asked=3&moved=2.99,2.985,2.992&tool=own&step=0.00573&limits=0.01")
	assert.Equal(t, calctest.Out(t, length, "combined"), calctest.Out(t, angle, "combined"))
	assert.Equal(t, calctest.Out(t, length, "steps"), calctest.Out(t, angle, "steps"))
	assert.Contains(t, calctest.Part(angle, "why"), "Tool accuracy")
}

// Each sort of axis has a tool of its own: that of the other sort waits until it is asked for.
func TestMeasureRotaryToolIsItsOwn(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&axis=rotary&stepsdeg=80&askeddeg=360&turned=360,360,360&tool=caliper-0.05")
	assert.NotEmpty(t, f.Problems(), "a tool for lengths")
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
}

// A protractor that's too coarse is not to be replaced by a caliper.
func TestMeasureRotaryFinerTool(t *testing.T) {
	next := func(entries string) string {
		return calctest.Part(calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=80&"+entries), "next")
	}
	coarse := next("askeddeg=90&turned=90,91,90&tooldeg=protractor")
	assert.Contains(t, coarse, "A longer move of 180° would give")
	assert.NotContains(t, coarse, "caliper")
	assert.NotContains(t, coarse, "Measure with", "the scatter is far wider than the step: 1.8 % would become 1.7")
	assert.Contains(t, next("askeddeg=90&turned=90,90,90&tooldeg=protractor&limitsdeg=0.2"), "Measure with an index mark on the rim: that would give about")
	assert.Contains(t, next("askeddeg=180&turned=180,180,180&tooldeg=protractor"), "a digital angle gauge may settle it", "0.22 of 0.36 degrees")
	assert.Contains(t, next("askeddeg=90&turned=90,90,90&tooldeg=rim"), "Measure with a digital angle gauge: that would give about")
	assert.NotContains(t, next("askeddeg=20&turned=20,20.1,20&tooldeg=gauge-0.1"), "Measure with", "nothing finer is known")
	assert.NotContains(t, next("askeddeg=90&turned=90,91,90"), "Measure with", "what it was read with is not told")
}

func TestMeasureRotarySeveralAngles(t *testing.T) {
	// measured = 0.5 + 0.998·commanded
	f := calctest.Open(t, "measure", "v=1&axis=rotary&trip=lengths&stepsdeg=80&wantdeg=30,30,180,180,330,330&turned=30.46,30.42,180.16,180.12,329.86,329.82&tooldeg=gauge-0.1")
	assert.InDelta(t, 0.5, calctest.Out(t, f, "offset"), 1e-9)
	assert.InDelta(t, 80/0.998, calctest.Out(t, f, "steps"), 1e-9)
	part := calctest.Part(f, "lengths")
	assert.Contains(t, part, "There's a fixed offset, the same at every angle")
	assert.Contains(t, part, "Fixed offset: 0.50")
	assert.NotRegexp(t, `\bmm\b`, f.Report().String(), "nothing of it is a length")
	assert.NotContains(t, f.Report().String(), "length")

	says := func(entries, id string) string {
		return calctest.Part(calctest.Open(t, "measure", "v=1&axis=rotary&trip=lengths&stepsdeg=80&"+entries), id)
	}
	assert.Contains(t, says("", "missing"), "wantdeg, turned")
	assert.Contains(t, says("wantdeg=30,30,30&turned=30,30.1,30", "impossible"), "All runs are of the same angle. Add other angles, or choose “One length or angle”")
	assert.Contains(t, says("wantdeg=30,30,90&turned=30,30.1,90", "runs"), "Two angles always lie on a straight line")
	assert.Contains(t, says("wantdeg=30,30,90,90,180,180&turned=30,30.01,91,91.01,180,180.01", "runs"), "a gear or a scale that's off centre")
}

func TestMeasureRotaryFromBothSides(t *testing.T) {
	// Row by row the means of both sides are 1.01 times the target, before zero as well; the sides
	// differ by 0.1° and by 0.08°.
	f := calctest.Open(t, "measure", "v=1&axis=rotary&trip=sides&stepsdeg=100&targetdeg=-90,-90,0,0,90,90&updeg=-90.85,-90.86,0.05,0.04,90.95,90.94&downdeg=-90.95,-90.94,-0.05,-0.04,90.85,90.86")
	assert.InDelta(t, 0.09, calctest.Out(t, f, "reversal"), 1e-9)
	assert.InDelta(t, 0.09, calctest.Out(t, f, "lost"), 1e-9)
	assert.InEpsilon(t, 100/1.01, calctest.Out(t, f, "steps"), 1e-12)
	assert.Contains(t, calctest.Part(f, "sides"), "Backlash, largest (reversal value): 0.09°")
	assert.Contains(t, calctest.Part(f, "sides"), "don't correct it with steps/°")
	assert.NotRegexp(t, `\bmm\b`, f.Report().String())
	f = calctest.Open(t, "measure", "v=1&axis=rotary&trip=sides&stepsdeg=100&targetdeg=0,90,180&updeg=0,90,180&downdeg=0,90")
	assert.Contains(t, calctest.Part(f, "impossible"), "from both sides")
	f = calctest.Open(t, "measure", "v=1&axis=rotary&trip=sides&stepsdeg=100")
	assert.Contains(t, calctest.Part(f, "missing"), "targetdeg, updeg, downdeg")
}

// Links of before the methods were asked for an axis that turns mean what they meant.
func TestMeasureRotaryIsOneAngle(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=8.888888889&askeddeg=360&turned=358.5,358.7&turnedagain=360.1,359.9,360")
	assert.InEpsilon(t, 8.888888889*360/358.6, calctest.Out(t, f, "steps"), 1e-12)
	assert.InDelta(t, 0, calctest.Out(t, f, "then"), 1e-9)
	assert.Contains(t, calctest.Answer(f), "Steps per degree from the first runs")
	assert.Contains(t, calctest.Part(f, "runs"), "One angle can't tell an error of the setting from a fixed offset")
	f.Set("trip", 0, "lengths")
	assert.Contains(t, calctest.Part(f, "missing"), "wantdeg\n", "the commanded angle of all runs no longer counts")
}

// What readings say does not depend on whether they are millimetres or degrees.
func TestMeasureAnglesAreReckonedLikeLengths(t *testing.T) {
	linear := map[string]string{"steps": "stepsdeg", "asked": "askeddeg", "moved": "turned", "want": "wantdeg",
		"target": "targetdeg", "up": "updeg", "down": "downdeg", "tool": "tooldeg", "step": "stepdeg", "limits": "limitsdeg"}
	rapid.Check(t, func(t *rapid.T) {
		off := rapid.Float64Range(-0.9, 0.9)
		column := func(keys string, at []float64) [2]string {
			var cells []string
			for _, x := range at {
				cells = append(cells, unit.Trim(x+off.Draw(t, keys), 6))
			}
			return [2]string{keys, strings.Join(cells, ",")}
		}
		n := rapid.IntRange(1, 7).Draw(t, "rows")
		at := make([]float64, n)
		for i := range at {
			at[i] = float64(30 * rapid.IntRange(1, 4).Draw(t, "place"))
		}
		places := [2]string{"", strings.Trim(strings.ReplaceAll(fmt.Sprint(at), " ", ","), "[]")}
		trip := rapid.SampledFrom([]string{"one", "lengths", "sides"}).Draw(t, "trip")
		entries := [][2]string{{"steps", "81.23"}} // which no belt gives
		switch trip {
		case "one":
			for i := range at {
				at[i] = 120
			}
			entries = append(entries, [2]string{"asked", "120"}, column("moved", at))
		case "lengths":
			places[0] = "want"
			entries = append(entries, places, column("moved", at))
		case "sides":
			places[0] = "target"
			entries = append(entries, places, column("up", at), column("down", at))
		}
		entries = append(entries, [2]string{"tool", "own"}, [2]string{"step", "0.02"}, [2]string{"limits", unit.Trim(rapid.Float64Range(0.001, 0.5).Draw(t, "limits"), 3)})
		link := func(axis string, key func(string) string) string {
			all := "v=1&axis=" + axis + "&trip=" + trip
			for _, e := range entries {
				all += "&" + key(e[0]) + "=" + e[1]
			}
			return all
		}
		page, _ := calc.PageOf("measure")
		lengths := calc.Load(page, link("travel", func(k string) string { return k }))
		angles := calc.Load(page, link("rotary", func(k string) string { return linear[k] }))
		require.Empty(t, lengths.Problems())
		require.Empty(t, angles.Problems())
		values := func(f *form.Form) map[string][2]float64 {
			all := map[string][2]float64{}
			for _, figure := range f.Report().Figures() {
				if figure.ID != "" {
					all[figure.ID] = [2]float64{figure.Value, figure.U}
				}
			}
			return all
		}
		assert.Equal(t, values(lengths), values(angles))
	})
}
