package swap_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/report"
)

func TestConvertBothWays(t *testing.T) {
	f := calctest.Open(t, "convert", "v=1&steps=538.0&angle=1.8&micro=16&ratio=54:12")
	assert.InEpsilon(t, 5.947955390334573, calctest.Out(t, f, "turn-1"), 1e-15)
	assert.InEpsilon(t, 26.765799256505577, calctest.Out(t, f, "output-1"), 1e-15)
	assert.InEpsilon(t, 13665.2, calctest.Out(t, f, "stepsin-1"), 1e-15)
	assert.InEpsilon(t, 5.947955390334573/25.4, calctest.Out(t, f, "turnin-1"), 1e-15)
	assert.InEpsilon(t, 0.02973977695167286, calctest.Out(t, f, "fullstep-1"), 1e-15)
	assert.InEpsilon(t, 0.0018587360594795538, calctest.Out(t, f, "microstep-1"), 1e-15)
	f = calctest.Open(t, "convert", "v=1&as=output&output=26.765799256505577&angle=1.8&micro=16&ratio=4.5")
	assert.InEpsilon(t, 538.0, calctest.Out(t, f, "steps-1"), 1e-15)
	assert.Equal(t, "steps", f.Report().Answer.ID)
}

func TestConvertRotary(t *testing.T) {
	f := calctest.Open(t, "convert", "v=1&moves=rotary&as=turn&turndeg=4&angle=1.8&micro=16&ratio=90")
	assert.InEpsilon(t, 800.0, calctest.Out(t, f, "steps-1"), 1e-15)
	assert.InEpsilon(t, 288000.0, calctest.Out(t, f, "stepsrev-1"), 1e-15)
	assert.InEpsilon(t, 360.0, calctest.Out(t, f, "output-1"), 1e-15)
	assert.Contains(t, f.Report().String(), "Steps per degree: 800 steps/°")
}

func TestConvertAsksByName(t *testing.T) {
	f := calctest.Open(t, "convert", "v=1&steps=538")
	assert.Nil(t, f.Report().Answer)
	assert.Contains(t, calctest.Part(f, "axis-1"), "travel per motor turn: angle, micro")
	assert.Contains(t, calctest.Part(f, "axis-1"), "travel per output turn: angle, micro, ratio")
	assert.Contains(t, calctest.Part(f, "axis-1"), "per microstep: angle, micro")
	f = calctest.Open(t, "convert", "v=1&as=turn&turn=8&micro=16")
	assert.Contains(t, calctest.Part(f, "axis-1"), "steps per mm: angle")
	assert.Contains(t, calctest.Part(f, "axis-1"), "output turn: ratio")
	f = calctest.Open(t, "convert", "v=1&as=output")
	assert.Contains(t, calctest.Part(f, "missing-1"), "output")
}

func TestConvertTable(t *testing.T) {
	f := calctest.Open(t, "convert", "v=1&name=X,,Z&as=,,turn&steps=80,&turn=,,8&angle=1.8,,1.8&micro=16,,16")
	assert.InEpsilon(t, 40.0, calctest.Out(t, f, "turn-1"), 1e-15)
	assert.InEpsilon(t, 400.0, calctest.Out(t, f, "steps-3"), 1e-15)
	assert.Empty(t, calctest.Part(f, "missing-2"), "a row in which nothing is told asks for nothing")
	assert.Contains(t, calctest.Part(f, "all"), "X | 80 steps/mm | 40 mm/rev")
	assert.Contains(t, calctest.Part(f, "all"), "Z | 8 mm/rev | 400 steps/mm")
	f.Set("name", 1, "Y")
	assert.Contains(t, calctest.Part(f, "missing-2"), "Y\n")
}

func TestSwapSentences(t *testing.T) {
	effects := func(entries string) string {
		return calctest.Part(calctest.Open(t, "swap", "v=1&changed="+entries), "effects")
	}
	assert.Contains(t, effects("micro&micro=32&micronew=64"),
		"Microsteps 64 instead of 32: steps per mm × 2. Travel per motor turn stays, but the microsteps stored with it become 64.")
	assert.Contains(t, effects("angle&angle=0.9&anglenew=1.8"),
		"Step angle 1.8° instead of 0.9°: steps per mm × 0.5. Travel per motor turn stays, but the full steps per turn stored with it become 200.")
	assert.Contains(t, effects("gears&gears=none&gearsnew=pairs&drivingnew=20&drivennew=50"),
		"Gear ratio 2.5 instead of 1: steps per mm × 2.5, travel per motor turn × 0.4. Travel per output turn stays, but the gear ratio stored with it becomes 2.5.")
	assert.Contains(t, effects("out&pitch=2&teeth=20&pitchnew=2&teethnew=16"),
		"Steps per mm × 1.25, travel per motor turn × 0.8, travel per output turn × 0.8.")
	belts := effects("out&pitch=2&teeth=20&pitchnew=2&teethnew=16")
	before, after, _ := strings.Cut(belts, "New part: ")
	assert.Regexp(t, "Old part: .*20 teeth", before)
	assert.Contains(t, after, "16 teeth")
	screw := effects("out&out=screw&screw=Tr8x8%28P2%29&outnew=rack&modulenew=1&pinionnew=20")
	before, after, _ = strings.Cut(screw, "New part: ")
	assert.Contains(t, before, "8 mm lead")
	assert.Contains(t, after, "module 1")
	assert.Contains(t, effects("out&moves=rotary&out=rotary&outnew=rotary"), "no setting changes")
	assert.Contains(t, effects("micro&moves=rotary&micro=16&micronew=32"), "steps per degree × 2.")
	assert.Contains(t, effects("out&out=roller&roller=11&outnew=roller&rollernew=8.5"), "8.5 mm effective diameter")
}

func TestSwapEntries(t *testing.T) {
	f := calctest.Open(t, "swap", "v=1&changed=angle,micro,gears&angle=1.8&anglenew=0.9&micro=16&micronew=32&gears=none&gearsnew=ratio&rationew=3")
	entries, others := calctest.Part(f, "entries"), calctest.Part(f, "others")
	for _, says := range []string{
		"Steps per mm: multiply by 12.",
		"Microsteps (if set in firmware): change to 32.",
		"Restart the controller",
	} {
		assert.Contains(t, entries, says)
	}
	for _, says := range []string{
		"Full steps per turn: change to 400.",
		"Microsteps (if set in firmware): change to 32.",
		"Travel per motor turn: multiply by 0.333333.",
		"Travel per output turn: no change.",
		"Gear ratio: change to 3.",
	} {
		assert.Contains(t, others, says)
	}
	assert.NotContains(t, others, "Steps per mm", "the person's own stand first, and once")
	assert.Contains(t, calctest.Part(f, "missing"), "the new setting: steps")
	assert.Contains(t, calctest.Part(f, "check"), report.CautionOf("swap").String())
	assert.Contains(t, calctest.Part(f, "check"), "under power")
}

// A part that was ticked, and is as it was, leaves the entry beside it alone.
func TestSwapOfTheSame(t *testing.T) {
	f := calctest.Open(t, "swap", "v=1&changed=angle,micro,gears&as=turn&turn=8&angle=1.8&anglenew=1.8&micro=16&micronew=16&gears=none&gearsnew=ratio&rationew=1")
	assert.NotRegexp(t, "change to|multiply by|stored with it become", f.Report().String())
	assert.Contains(t, calctest.Part(f, "effects"), "Microsteps 16 before and after: no setting changes for it.")
	for _, entry := range []string{"Full steps per turn", "Microsteps (if set in firmware)"} {
		assert.Contains(t, calctest.Part(f, "entries"), entry+": no change.")
	}
	assert.Contains(t, calctest.Part(f, "others"), "Gear ratio: no change.")
}

func TestSwapInEitherConvention(t *testing.T) {
	const parts = "changed=micro,gears&micro=16&micronew=64&gears=pairs&driving=16&driven=55&gearsnew=pairs&drivingnew=12&drivennew=54&anglekept=1.8"
	// 415 · 4 · 4.5/(55/16) steps/mm; 12,800 over it; times 4.5.
	for _, setting := range []string{"steps=415", "as=turn&turn=7.710843373493976", "as=output&output=26.506024096385545"} {
		f := calctest.Open(t, "swap", "v=1&"+setting+"&"+parts)
		assert.InEpsilon(t, 2173.090909090909, calctest.Out(t, f, "steps"), 1e-13, setting)
		assert.InEpsilon(t, 5.890227576974565, calctest.Out(t, f, "turn"), 1e-13, setting)
		assert.InEpsilon(t, 26.506024096385545, calctest.Out(t, f, "output"), 1e-13, setting)
		assert.InEpsilon(t, 415.0, calctest.Out(t, f, "was-steps"), 1e-13, setting)
	}
}

func TestSwapAsks(t *testing.T) {
	missing := func(entries string) string { return calctest.Part(calctest.Open(t, "swap", entries), "missing") }
	assert.Contains(t, missing(""), "changed")
	assert.Contains(t, missing("v=1&changed=angle,micro,gears,out"), "angle, anglenew, micro, micronew, gears, gearsnew, pitch, teeth, pitchnew, teethnew")
	assert.Contains(t, missing("v=1&changed=out&out=screw&outnew=rack"), "screw, modulenew, pinionnew")
	assert.Contains(t, missing("v=1&changed=out&out=roller&outnew=rotary"), "roller")
	assert.Contains(t, missing("v=1&changed=gears&gears=pairs&driving=12&gearsnew=ratio"), "driving, driven, rationew")
	f := calctest.Open(t, "swap", "v=1&changed=micro&steps=80&micro=16&micronew=32")
	assert.Contains(t, calctest.Part(f, "conventions"), "travel per motor turn: anglekept")
	assert.Contains(t, calctest.Part(f, "conventions"), "travel per output turn: anglekept, gearskept")
	f = calctest.Open(t, "swap", "v=1&changed=angle&steps=80&angle=1.8&anglenew=0.9")
	assert.Contains(t, calctest.Part(f, "conventions"), "travel per motor turn: microkept")
}

func TestSwapRefusesDegreesForMillimetres(t *testing.T) {
	p, _ := calc.PageOf("swap")
	f := calc.Load(p, "v=1&changed=out&steps=80&pitch=2&teeth=20&outnew=rotary")
	require.Len(t, f.Problems(), 1)
	assert.Contains(t, f.Problems()[0].Says, "A linear axis can't become a rotary one")
	assert.Nil(t, f.Report().Answer)
}

func TestSwapHandsOverToMeasure(t *testing.T) {
	for entries, want := range map[string]string{
		"v=1&changed=micro&steps=80&micro=16&micronew=32":                                      "v=1&axis=travel&steps=160",
		"v=1&changed=micro&as=turn&turn=40&micro=16&micronew=32":                               "v=1&axis=travel&as=turn&turn=40",
		"v=1&changed=out&steps=80&pitch=2&teeth=20&pitchnew=2&teethnew=16":                     "v=1&axis=travel&steps=100",
		"v=1&changed=micro&moves=rotary&stepsdeg=80&micro=16&micronew=32":                      "v=1&axis=rotary&stepsdeg=160",
		"v=1&changed=out&moves=feed&steps=80&out=roller&roller=11&outnew=roller&rollernew=5.5": "v=1&steps=160",
		"v=1&changed=gears&as=output&output=8&gears=none&gearsnew=ratio&rationew=1:2.5":        "v=1&axis=travel&as=output&output=8",
	} {
		f := calctest.Open(t, "swap", entries)
		links := 0
		for _, p := range f.Report().Parts {
			for _, b := range p.Blocks {
				if l, ok := b.(report.Links); ok {
					links++
					assert.Equal(t, "measure", l.All[0].Slug)
					assert.Equal(t, want, l.All[0].Fragment)
					assert.Equal(t, want, calctest.Open(t, "measure", l.All[0].Fragment).Fragment(), "handing over is a link like any other")
				}
			}
		}
		assert.Equal(t, 1, links, entries)
	}
}

func TestConvertRowsCarryTheMotor(t *testing.T) {
	f := calctest.Open(t, "convert", "v=1&name=X&steps=80&angle=1.8&micro=16&ratio=1")
	name, _ := f.Field("name")
	f.AddRow(name.Group)
	assert.Equal(t, "v=1&name=X&steps=80&angle=1.8,1.8&micro=16,16&ratio=1", f.Fragment())
}

func TestGearRatioTurnedRoundIsDoubted(t *testing.T) {
	const doubt = "turn the ratio round: 54:12, not 12:54"
	assert.Contains(t, calctest.Open(t, "convert", "v=1&steps=80&angle=1.8&micro=16&ratio=12:54").Report().String(), doubt)
	assert.NotContains(t, calctest.Open(t, "convert", "v=1&steps=80&angle=1.8&micro=16&ratio=54:12").Report().String(), doubt)
	assert.Contains(t, calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9&gears=pairs&driving=54&driven=12").Report().String(), doubt)
}

// A swap between parts by what stands on the shelf.
func TestSwapByTheNamesOnTheShelf(t *testing.T) {
	f := calctest.Open(t, "swap", "v=1&changed=out&steps=1600&out=screw&screw=Tr8x2&outnew=screw&screwnew=20%20tpi%20x%202")
	assert.InEpsilon(t, 1600*2/2.54, calctest.Out(t, f, "steps"), 1e-15)
	assert.Contains(t, calctest.Part(f, "effects"), "New part: a screw of 2.54 mm lead.")
	f = calctest.Open(t, "swap", "v=1&changed=out&steps=80&out=rack&module=1&pinion=20&outnew=rack&modulenew=24%20DP&pinionnew=20")
	assert.InEpsilon(t, 80*120/127., calctest.Out(t, f, "steps"), 1e-15)
	assert.Contains(t, calctest.Part(f, "effects"), "New part: a rack of module 1.0583333 on 20 teeth.")
	f = calctest.Open(t, "swap", "v=1&changed=out&steps=80&pitch=2&teeth=20&outnew=belt2&pitchnew=2&teethnew=20")
	assert.InEpsilon(t, 160., calctest.Out(t, f, "steps"), 1e-15)
	assert.Contains(t, calctest.Part(f, "effects"), "New part: a belt of 2 mm pitch on 20 teeth with a 2:1 moving pulley.")
	f = calctest.Open(t, "swap", "v=1&changed=out&steps=80&out=drum&drum=20&cable=0.8&outnew=differential&firstnew=20%20tpi&secondnew=M8x1.25")
	assert.InEpsilon(t, 80*math.Pi*20.8/0.02, calctest.Out(t, f, "steps"), 1e-14)
	assert.Contains(t, calctest.Part(f, "effects"), "Old part: a drum of 20 mm with a cable of 0.8 mm. New part: a differential screw that moves 0.02 mm per turn.")
	p, _ := calc.PageOf("swap")
	f = calc.Load(p, "v=1&changed=out&steps=80&out=drum&drum=20&cable=0.8&outnew=differential&firstnew=8&secondnew=Tr8x8(P2)")
	assert.Contains(t, f.ProblemAt("secondnew", 0), "“Tr8x8(P2)” has the same lead as the first thread, 8 mm")
	assert.Nil(t, f.Report().Answer)
}
