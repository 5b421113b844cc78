package swap_test

import (
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
		"With 64 instead of 32 microsteps the setting in steps per mm doubles; travel per motor turn stays, but the microsteps entry must become 64.")
	assert.Contains(t, effects("angle&angle=0.9&anglenew=1.8"),
		"With a step angle of 1.8° instead of 0.9° the setting in steps per mm halves; travel per motor turn stays, but the entry of full steps per turn must become 200.")
	assert.Contains(t, effects("gears&gears=none&gearsnew=pairs&drivingnew=20&drivennew=50"),
		"With a gear ratio of 2.5 instead of 1 the setting in steps per mm is multiplied by 2.5; travel per motor turn is multiplied by 0.4; travel per output turn stays, but the gear ratio must become 2.5.")
	assert.Contains(t, effects("out&pitch=2&teeth=20&pitchnew=2&teethnew=16"),
		"With a belt of 2 mm pitch on 16 teeth instead of a belt of 2 mm pitch on 20 teeth the setting in steps per mm is multiplied by 1.25; travel per motor turn is multiplied by 0.8; travel per output turn is multiplied by 0.8.")
	assert.Contains(t, effects("out&out=screw&screw=Tr8x8%28P2%29&outnew=rack&modulenew=1&pinionnew=20"),
		"a rack of module 1 on 20 teeth instead of a screw of 8 mm lead")
	assert.Contains(t, effects("out&moves=rotary&out=rotary&outnew=rotary"), "steps per degree stays")
	assert.Contains(t, effects("out&out=roller&roller=11&outnew=roller&rollernew=8.5"), "a roller of 8.5 mm effective diameter")
}

func TestSwapEntries(t *testing.T) {
	f := calctest.Open(t, "swap", "v=1&changed=angle,micro,gears&angle=1.8&anglenew=0.9&micro=16&micronew=32&gears=none&gearsnew=ratio&rationew=3")
	entries := calctest.Part(f, "entries")
	for _, says := range []string{
		"Steps per mm: must change; it is multiplied by 12.",
		"Full steps per turn: must change to 400.",
		"Microsteps, if the controller sets the driver: must change to 32.",
		"Travel per motor turn: must change; it is multiplied by 0.333333.",
		"Travel per output turn: stays.",
		"Gear ratio: must change to 3.",
		"restart the controller",
	} {
		assert.Contains(t, entries, says)
	}
	assert.Contains(t, calctest.Part(f, "missing"), "its factor is known already: steps")
	assert.Contains(t, calctest.Part(f, "check"), "driver's current")
	assert.Contains(t, calctest.Part(f, "check"), "under power")
}

// A part that was ticked, and is as it was, leaves the entry beside it alone.
func TestSwapOfTheSame(t *testing.T) {
	f := calctest.Open(t, "swap", "v=1&changed=angle,micro,gears&as=turn&turn=8&angle=1.8&anglenew=1.8&micro=16&micronew=16&gears=none&gearsnew=ratio&rationew=1")
	assert.NotContains(t, f.Report().String(), "must")
	assert.Contains(t, calctest.Part(f, "effects"), "With 16 instead of 16 microsteps the setting in steps per mm stays; travel per motor turn stays; travel per output turn stays.")
	for _, entry := range []string{"Full steps per turn", "Microsteps, if the controller sets the driver", "Gear ratio"} {
		assert.Contains(t, calctest.Part(f, "entries"), entry+": stays.")
	}
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
	assert.Contains(t, f.Problems()[0].Says, "cannot become one that turns in degrees")
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
	const doubt = "turn it round: 54:12, not 12:54"
	assert.Contains(t, calctest.Open(t, "convert", "v=1&steps=80&angle=1.8&micro=16&ratio=12:54").Report().String(), doubt)
	assert.NotContains(t, calctest.Open(t, "convert", "v=1&steps=80&angle=1.8&micro=16&ratio=54:12").Report().String(), doubt)
	assert.Contains(t, calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9&gears=pairs&driving=54&driven=12").Report().String(), doubt)
}
