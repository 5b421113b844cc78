package rate_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/report"
)

func TestRateOfAMachine(t *testing.T) {
	p, _ := calc.PageOf("rate")
	f := calctest.Open(t, "rate", p.Example)
	assert.InEpsilon(t, 564.3*45, calctest.Out(t, f, "back-1"), 1e-15)
	assert.InEpsilon(t, 564.3*3, calctest.Out(t, f, "work-1"), 1e-15)
	assert.InEpsilon(t, 88.8889*200, calctest.Out(t, f, "fast-2"), 1e-15)
	assert.InEpsilon(t, 88.8889*1500, calctest.Out(t, f, "accel-2"), 1e-15)
	assert.InEpsilon(t, 1/564.3, calctest.Out(t, f, "microstep-1"), 1e-15)
	assert.InEpsilon(t, 0.02, calctest.Out(t, f, "fullstep-3"), 1e-15)
	assert.InEpsilon(t, 40000/564.3, calctest.Out(t, f, "top-1"), 1e-15)
	assert.InEpsilon(t, 564.3*3+88.8889*50+800*5, calctest.Out(t, f, "allwork"), 1e-14)
	assert.InEpsilon(t, 88.8889*200+800*12, calctest.Out(t, f, "allfast"), 1e-14, "an extruder has no travel speed")
	assert.InEpsilon(t, 100*math.Sin(math.Pi/32), calctest.Out(t, f, "torque-1"), 1e-14)
	assert.Equal(t, "Heron extruder at retraction speed: 25393.5 pulses/s\nOK: "+percent(63.5)+" of your controller's limit.", calctest.Answer(f))
	assert.Contains(t, calctest.Part(f, "limit"), "All your speeds are OK.")
	assert.Contains(t, calctest.Part(f, "all"), "Plover X | Travel speed, 200 mm/s | 17777.8 pulses/s")
}

func percent(v float64) string { return report.Figure{Value: v, Unit: "%", Digits: 3}.String() }

// The reference values of the motor vectors, typed into the page.
func TestRateAtTheLimit(t *testing.T) {
	check := func(entries string, rate, top float64, possible bool) {
		t.Helper()
		f := calctest.Open(t, "rate", "v=1&"+entries)
		assert.InEpsilon(t, rate, f.Report().Answer.Value, 1e-12)
		assert.InEpsilon(t, top, calctest.Out(t, f, "top-1"), 1e-12)
		assert.Equal(t, possible, len(f.Report().Answer.Notes) == 0)
	}
	check("steps=80&work=300&limit=40000", 24000, 500, true)
	check("steps=400&work=120&limit=40000", 48000, 100, false)
	check("moves=feed&steps=538.6&back=45&limit=100kHz", 24237, 185.6665428889714, true)
	check("as=turn&turn=40&angle=1.8&micro=16&fast=30000mm/min&limit=40kHz", 40000, 500, true) // at the limit still
	check("moves=rotary&stepsdeg=800&fastdeg=1rev/s&limit=0.1MHz", 288000, 125, false)
	f := calctest.Open(t, "rate", "v=1&steps=400,80&work=120,100&fast=200&limit=40000")
	assert.Equal(t, "Axis 1 at travel speed (too fast): 80000 pulses/s\nToo fast for your controller.\n"+
		"Axis 1 at travel speed needs 80000 pulses/s, over the limit of 40000 pulses/s. Use fewer microsteps, or stay at 100 mm/s or less.", calctest.Answer(f))
	assert.Contains(t, calctest.Part(f, "limit"), "Axis 1 at working speed needs 48000 pulses/s")
	assert.NotContains(t, calctest.Part(f, "limit"), "Axis 2 at")
}

func TestRateTogether(t *testing.T) {
	f := calctest.Open(t, "rate", "v=1&steps=80,80&work=300,300&limit=40kHz")
	assert.Empty(t, f.Report().Answer.Notes, "each axis has the limit to itself")
	f.Set("share", 0, "all")
	assert.InEpsilon(t, 48000., f.Report().Answer.Value, 1e-15)
	assert.Contains(t, calctest.Answer(f), "All axes together at working speed need 48000 pulses/s")
	assert.Contains(t, calctest.Answer(f), "run at "+percent(83.3)+" of these speeds")
	assert.InEpsilon(t, 40/48.*100, calctest.Out(t, f, "slower"), 1e-14)
	alone := calctest.Open(t, "rate", "v=1&steps=80&work=300&limit=40kHz&share=all")
	assert.InEpsilon(t, 24000., alone.Report().Answer.Value, 1e-15)
	assert.Empty(t, calctest.Part(alone, "together"))
}

func TestRateAfterASwap(t *testing.T) {
	// 0.9° for 1.8°, 32 for 16 microsteps: four times the pulses.
	f := calctest.Open(t, "rate", "v=1&compare=swap&moves=feed&steps=415&angle=1.8&micro=16&back=45&anglenew=0.9&micronew=32&limit=50kHz&hold=0.4")
	assert.InEpsilon(t, 415*45., calctest.Out(t, f, "back-1"), 1e-15, "before")
	assert.InEpsilon(t, 4*415*45., calctest.Out(t, f, "new-back-1"), 1e-15)
	assert.InEpsilon(t, 50000/(4*415.), calctest.Out(t, f, "new-top-1"), 1e-14)
	assert.InEpsilon(t, 1/(4*415.), calctest.Out(t, f, "new-microstep-1"), 1e-14)
	assert.InEpsilon(t, 40*math.Sin(math.Pi/64), 100*calctest.Out(t, f, "new-holds-1"), 1e-13)
	assert.Contains(t, calctest.Answer(f), "Axis 1 at retraction speed, after the swap (too fast): 74700 pulses/s")
	assert.Contains(t, calctest.Answer(f), "over the limit of 50000 pulses/s")
	assert.Contains(t, calctest.Part(f, "torque"), "No holding torque is lost")
	// A new setting goes before what motor and microsteps would give.
	f = calctest.Open(t, "rate", "v=1&compare=swap&steps=80&micro=16&work=100&stepsnew=100&micronew=32")
	assert.InEpsilon(t, 10000., calctest.Out(t, f, "new-work-1"), 1e-15)
	f = calctest.Open(t, "rate", "v=1&compare=swap&moves=rotary&stepsdeg=80&workdeg=100&stepsdegnew=40")
	assert.InEpsilon(t, 4000., calctest.Out(t, f, "new-work-1"), 1e-15)
	// What is not swapped stays as it was.
	f = calctest.Open(t, "rate", "v=1&compare=swap&steps=80,400&micro=16,16&work=100,10&micronew=32")
	assert.Contains(t, calctest.Part(f, "axis-2"), "what the swap changes: stepsnew")
	assert.InEpsilon(t, 16000+4000., calctest.Out(t, f, "allwork"), 1e-15)
	assert.Contains(t, calctest.Part(calctest.Open(t, "rate", "v=1&compare=swap&steps=80&work=10&micronew=32"), "axis-1"), "what the swap changes: micro")
	assert.Contains(t, calctest.Part(calctest.Open(t, "rate", "v=1&compare=swap&steps=80&work=10&anglenew=0.9"), "axis-1"), "what the swap changes: angle")
	assert.Contains(t, calctest.Part(calctest.Open(t, "rate", "v=1&compare=swap&moves=rotary&stepsdeg=80&workdeg=10"), "axis-1"), "what the swap changes: stepsdegnew")
}

func TestRateWhenTheMotorCannotFollow(t *testing.T) {
	const motor = "&supply=24&inductance=1.6&current=2"
	f := calctest.Open(t, "rate", "v=1&steps=80&angle=1.8&micro=16&work=800"+motor)
	assert.InEpsilon(t, 0.26666666666666666, calctest.Out(t, f, "swing"), 1e-12)
	assert.InEpsilon(t, 3750., calctest.Out(t, f, "fullrate"), 1e-12)
	assert.InEpsilon(t, 18.75, calctest.Out(t, f, "corner-1"), 1e-12)
	assert.InEpsilon(t, 1125., calctest.Out(t, f, "rpm-1"), 1e-12)
	assert.InEpsilon(t, 750., calctest.Out(t, f, "follow-1"), 1e-12)
	corner := calctest.Part(f, "corner")
	for _, says := range []string{"rule of thumb", "back-EMF", "Axis 1 at working speed is faster than that", "Never connect or disconnect a motor under power"} {
		assert.Contains(t, corner, says)
	}
	for _, p := range f.Report().Parts {
		assert.Equal(t, p.ID != "limit" && p.ID != "after", p.Folded || p.Guide, "what the limit allows is in sight, the rest is folded: %s", p.ID)
	}
	assert.NotContains(t, calctest.Part(calctest.Open(t, "rate", "v=1&steps=80&angle=1.8&micro=16&work=700"+motor), "corner"), "is faster")
	assert.Contains(t, calctest.Part(calctest.Open(t, "rate", "v=1&steps=80&work=10&current=2"), "corner"), "supply, inductance, angle, micro")
	f = calctest.Open(t, "rate", "v=1&compare=swap&steps=80&angle=1.8&micro=16&work=700&anglenew=0.9"+motor)
	assert.InEpsilon(t, 18.75/2, calctest.Out(t, f, "corner-1"), 1e-12, "a motor of 0.9° turns half as fast")
	assert.InEpsilon(t, 750/2., calctest.Out(t, f, "follow-1"), 1e-12)
}

// 12 V on 5.5 mH at 1.2 A: the resistance makes it 4% slower. Worked to 40 digits
// from t = L/R · ln((V + I·R)/(V − I·R)).
func TestRateWithTheWindingsResistance(t *testing.T) {
	const motor = "v=1&steps=80&angle=1.8&micro=16&work=50&inductance=5.5&current=1.2"
	f := calctest.Open(t, "rate", motor+"&supply=12")
	assert.InEpsilon(t, 4.545454545454545, calctest.Out(t, f, "corner-1"), 1e-15)
	assert.Contains(t, calctest.Part(f, "corner"), "Resistance, back-EMF and load are left out")
	f.Set("resistance", 0, "3.3 ohm")
	assert.InEpsilon(t, 1.142760848051312842, calctest.Out(t, f, "swing"), 1e-15)
	assert.InEpsilon(t, 875.0737319232146807, calctest.Out(t, f, "fullrate"), 1e-15)
	assert.InEpsilon(t, 4.375368659616073404, calctest.Out(t, f, "corner-1"), 1e-15)
	assert.InEpsilon(t, 262.5221195769644042, calctest.Out(t, f, "rpm-1"), 1e-15)
	assert.InEpsilon(t, 175.0147463846429362, calctest.Out(t, f, "follow-1"), 1e-15)
	says := calctest.Part(f, "corner")
	assert.Contains(t, says, "against the winding's inductance and resistance. Back-EMF and load are left out")
	assert.NotContains(t, says, "Resistance, back-EMF")
	assert.Contains(t, says, "Never connect or disconnect a motor under power", "the cautions stay")
}

// A supply that does not drive the current through the winding gives no corner.
func TestRateSupplyTooLow(t *testing.T) {
	p, _ := calc.PageOf("rate")
	const motor = "v=1&steps=80&angle=1.8&micro=16&work=50&inductance=5.5&current=1.2"
	f := calctest.Open(t, "rate", motor+"&supply=3")
	assert.InEpsilon(t, 3/(2*5.5e-3*1.2*200), calctest.Out(t, f, "corner-1"), 1e-14, "as ever without the resistance")
	f = calc.Load(p, motor+"&supply=3&resistance=3.3")
	assert.Equal(t, "Supply voltage of the driver: “3 V” can't drive 1.2 A through 3.3 Ω: that takes more than 3.96 V. "+
		"Enter the supply's voltage, not the motor's rated one. If it's right, enter a peak phase current below 0.9091 A.", f.ProblemAt("supply", 0))
	assert.Empty(t, calctest.Part(f, "corner"))
	assert.InEpsilon(t, 4000., f.Report().Answer.Value, 1e-15, "the step rate doesn't need it")
	f.Set("current", 0, "0.909")
	assert.Empty(t, f.Problems())
	assert.Positive(t, calctest.Out(t, f, "corner-1"))
	f = calc.Load(p, "v=1&supply=12&resistance=30&current=0.4")
	assert.Contains(t, f.ProblemAt("supply", 0), "takes more than 12 V", "before there is any axis")
	f = calc.Load(p, "v=1&supply=12&resistance=30&current=0.399")
	assert.Empty(t, f.Problems())
	for text, says := range map[string]string{
		"3,3 mH": "Phase resistance, if known: “mH” in “3,3 mH” isn't a unit this field takes. Write it like 3.3 Ω or 3.3 ohm.",
		"0":      "“0” is out of range. It must be from 0.001 to 1000 Ω.",
	} {
		f.Set("resistance", 0, text)
		assert.Contains(t, f.ProblemAt("resistance", 0), says)
	}
}

func TestRateAsks(t *testing.T) {
	asks := func(entries string) string { return calctest.Part(calctest.Open(t, "rate", entries), "axis-1") }
	assert.Contains(t, asks(""), "the step rate: steps")
	assert.Contains(t, asks("v=1&as=turn"), "the step rate: turn, angle, micro")
	assert.Contains(t, asks("v=1&as=output&output=8&angle=1.8&micro=16"), "the step rate: ratio")
	assert.Contains(t, asks("v=1&steps=80"), "the step rate: work")
	assert.Contains(t, asks("v=1&moves=rotary&stepsdeg=80"), "the step rate: workdeg")
	assert.Contains(t, asks("v=1&steps=80"), "travel per full step, and torque: micro")
	f := calctest.Open(t, "rate", "v=1&steps=80")
	assert.Nil(t, f.Report().Answer)
	assert.InEpsilon(t, 0.0125, calctest.Out(t, f, "microstep-1"), 1e-15, "what can be told is told")
	assert.Contains(t, calctest.Part(f, "limit"), "the top speeds: limit")
	f = calctest.Open(t, "rate", "v=1&name=X,,Z&steps=80,,400&work=10,,10")
	assert.Empty(t, calctest.Part(f, "axis-2"), "a row in which nothing is told asks for nothing")
	assert.Contains(t, calctest.Answer(f), "Enter your controller's max. step rate")
}

func TestRateRefuses(t *testing.T) {
	p, _ := calc.PageOf("rate")
	problem := func(entries, says string) {
		t.Helper()
		f := calc.Load(p, "v=1&"+entries)
		require.NotEmpty(t, f.Problems())
		assert.Contains(t, f.Problems()[0].Says, says)
		assert.Nil(t, f.Report().Answer)
	}
	problem("steps=80&work=fast", "Working speed in axis 1: “fast” isn't a number. Write it like 90 mm/min")
	problem("moves=rotary&stepsdeg=80&workdeg=90mm/s", "Working speed in axis 1: “mm/s” in “90mm/s” isn't a unit this field takes. Write it like 90°/s")
	problem("steps=80&work=10&limit=40GB", "Max. step rate: “GB” in “40GB” isn't a unit")
	problem("steps=80&work=10&limit=-1", "Max. step rate")
}

// At the highest speed the limit is just reached, in either convention.
func TestRateIsJustPossibleAtTheTop(t *testing.T) {
	p, _ := calc.PageOf("rate")
	rapid.Check(t, func(t *rapid.T) {
		micro := rapid.IntRange(1, 256).Draw(t, "micro")
		turn := rapid.Float64Range(0.5, 80).Draw(t, "turn")
		limit := rapid.IntRange(1000, 1_000_000).Draw(t, "limit")
		base := report.Figure{Value: turn}.Full()
		entries := "v=1&as=turn&turn=" + base + "&angle=1.8&micro=" + strconv.Itoa(micro) + "&work=10&limit=" + strconv.Itoa(limit)
		r := calc.Load(p, entries).Report()
		var top float64
		for _, f := range r.Figures() {
			if f.ID == "top-1" {
				top = f.Value
			}
		}
		require.InEpsilon(t, float64(limit)*turn/(200*float64(micro)), top, 1e-12)
		require.Equal(t, 10 > top, len(r.Answer.Notes) > 0)
	})
}

func TestRateIsHandedOver(t *testing.T) {
	for from, want := range map[string]string{
		"swap?v=1&changed=micro&steps=80&micro=16&micronew=32&fastest=300&limit=40kHz":                       "v=1&compare=swap&steps=80&micro=16&fast=300&stepsnew=160&micronew=32&limit=40000",
		"swap?v=1&changed=angle&moves=feed&steps=415&fastest=2700mm/min&angle=1.8&anglenew=0.9&microkept=16": "v=1&compare=swap&moves=feed&steps=415&angle=1.8&micro=16&back=45&stepsnew=830&anglenew=0.9",
		"swap?v=1&changed=micro&moves=rotary&stepsdeg=80&micro=16&micronew=8":                                "v=1&compare=swap&moves=rotary&stepsdeg=80&micro=16&stepsdegnew=40&micronew=8",
		"swap?v=1&changed=micro&as=turn&turn=40&micro=16&micronew=32":                                        "", // no steps without the step angle
		"swap?v=1&changed=micro&as=turn&turn=40&micro=16&micronew=32&anglekept=1.8":                          "v=1&compare=swap&steps=80&angle=1.8&micro=16&stepsnew=160&micronew=32",
		"parts?v=1&angle=1.8&micro=16&pitch=2&teeth=20":                                                      "v=1&steps=80&angle=1.8&micro=16",
		"parts?v=1&out=roller&angle=1.8&micro=16&roller=10":                                                  "v=1&moves=feed&steps=101.85916&angle=1.8&micro=16",
		"parts?v=1&out=rotary&angle=1.8&micro=16":                                                            "v=1&moves=rotary&stepsdeg=8.8888889&angle=1.8&micro=16",
	} {
		slug, entries, _ := strings.Cut(from, "?")
		got := ""
		for _, p := range calctest.Open(t, slug, entries).Report().Parts {
			for _, b := range p.Blocks {
				l, _ := b.(report.Links)
				for _, link := range l.All {
					if link.Slug == "rate" {
						got = link.Fragment
						assert.Equal(t, got, calctest.Open(t, "rate", got).Fragment(), "handing over is a link like any other")
					}
				}
			}
		}
		assert.Equal(t, want, got, from)
	}
}
