package calibrate_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/unit"
)

// Heron got a 0.9° motor, and the setting is still that for 1.8°: it fed 38.767 mm of 80, so the
// correction is 2.0636: twice, and 3.18 % on top. What is to be set first is twice the setting.
const fineMotor = "v=1&steps=538.0&asked=80&mark=105&rest=66.2,66.4,66.1&tool=caliper-0.05"

func TestMeasureMistakeWithAnErrorOfItsOwn(t *testing.T) {
	f := calctest.Open(t, "measure", fineMotor+"&angle=0.9&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D")
	a := f.Report().Answer
	assert.Equal(t, "Look for a mistake first", a.Verdict.Title)
	assert.Contains(t, a.Verdict.Says.String(), "That calls for 2 times the setting, plus 3.2%")
	require.NotNil(t, a.Keep, "the plain correction is not the headline")
	assert.Equal(t, "If the machine is right, set steps per mm to: 1076 steps/mm", a.Keep.Label+": "+a.Keep.String())
	assert.Contains(t, a.Says.String(), "set 1076 steps/mm. Then repeat")
	assert.InEpsilon(t, 538*80/(105-66.2333333333), a.Value, 1e-9, "the check value of the link stays that of the readings")

	ratio := calctest.Part(f, "ratio")
	assert.Contains(t, ratio, "The setting is for a 1.8° motor, and yours has 0.9°.")
	assert.Contains(t, ratio, "The setting is for 8 microsteps, and the driver uses 16.")
	assert.Contains(t, ratio, "swap/#v=1&changed=angle&moves=feed&steps=538&angle=1.8&anglenew=0.9&microkept=16&gearskept=pairs&drivingkept=12&drivenkept=54")
	assert.Contains(t, ratio, "swap/#v=1&changed=micro&moves=feed&steps=538&micro=8&micronew=16&anglekept=0.9&gearskept=pairs&drivingkept=12&drivenkept=54")
	whole := f.Report().String()
	assert.NotContains(t, whole, "Check step angle")
	assert.NotContains(t, whole, "Check the step angle", "it is given")
	assert.Contains(t, calctest.Part(f, "apply"), "Send this: M92 E1076\n")
	assert.Contains(t, calctest.Part(f, "next"), "If the machine is as it should be, set 1076 steps/mm.")
	assert.Contains(t, calctest.Part(f, "touches"), "still sets 538 steps/mm: change it to 1076 steps/mm")
	assert.Contains(t, calctest.Part(f, "touches"), "Step rate at any speed: multiplied by 2.")
	assert.NotContains(t, calctest.Part(f, "touches"), "etraction")
	assert.Contains(t, calctest.Part(f, "conventions"), "Steps per mm | 538 steps/mm | 1076 steps/mm")
	assert.InEpsilon(t, 400*16*4.5/a.Value/math.Pi, calctest.Out(t, f, "diameter"), 1e-9, "what the readings imply of the drive gear")
	assert.NotContains(t, calctest.Part(f, "conventions"), "rare")
	odd := calctest.Open(t, "measure", heron+"&tool=caliper-0.05&angle=0.9&micro=32&gears=pairs&driving=12&driven=54")
	assert.Contains(t, calctest.Part(odd, "conventions"), "Drive gears of that size are rare")

	// The other way round: the driver does half of what is set up, and the axis a little less.
	f = calctest.Open(t, "measure", "v=1&steps=538.0&asked=20&read=fed&fed=41.2,41.3,41.2&tool=caliper-0.05&angle=1.8")
	assert.Contains(t, calctest.Verdict(f).Says.String(), "That calls for 0.5 times the setting, minus 3")
	assert.Equal(t, "269 steps/mm", f.Report().Answer.Keep.String())
	assert.Contains(t, calctest.Part(f, "ratio"), "The setting is for a 0.9° motor, and yours has 1.8°.")
}

// What is given of the motor and the driver rules out what it contradicts.
func TestMeasureMistakesAgainstTheFacts(t *testing.T) {
	ratio := func(entries string) string {
		return calctest.Part(calctest.Open(t, "measure", fineMotor+entries), "ratio")
	}
	assert.Contains(t, ratio(""), "A 0.9° motor is configured as 1.8°. Check the step angle")
	assert.NotContains(t, ratio("&angle=1.8"), "motor", "it is no 0.9° motor")
	assert.NotContains(t, ratio("&angle=7.5"), "motor")
	assert.NotContains(t, ratio("&micro=1"), "microsteps", "half a microstep there isn't")
	assert.Contains(t, ratio("&micro=1"), "0.9° motor")
	assert.NotContains(t, calctest.Part(calctest.Open(t, "measure", "v=1&steps=538&asked=20&read=fed&fed=41.2,41.3,41.2&tool=caliper-0.05&micro=256"), "ratio"), "512")
}

// A pair left out of the setting: the way to the swap has the gears before and after.
func TestMeasureGearsLeftOut(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=119.6&asked=80&read=fed&fed=17.2,17.2,17.1&tool=caliper-0.05&angle=1.8&micro=16&gears=pairs&driving=12&driven=54")
	assert.Contains(t, calctest.Part(f, "ratio"), "swap/#v=1&changed=gears&moves=feed&steps=119.6&gears=none&gearsnew=pairs&drivingnew=12&drivennew=54&anglekept=1.8&microkept=16")
	assert.Equal(t, "538.2 steps/mm", f.Report().Answer.Keep.String())
}

// Where the mistake sits in another entry, or what fits doesn't agree, the setting stays for now.
func TestMeasureMistakeElsewhere(t *testing.T) {
	for _, entries := range []string{
		"as=turn&turn=5.948&asked=80&read=fed&fed=38.8,38.6,38.9",
		"steps=538&asked=25.4&read=fed&fed=645.2,645.1,645.2",
		"steps=538&asked=80&read=fed&fed=30.2,30.1,30.2&counted=volume",
	} {
		f := calctest.Open(t, "measure", "v=1&tool=caliper-0.05&"+entries)
		a := f.Report().Answer
		require.Equal(t, "mistake", a.Verdict.ID(), entries)
		require.NotNil(t, a.Keep, entries)
		assert.True(t, strings.HasPrefix(a.Keep.Label, "For now, keep"), entries)
		assert.NotContains(t, calctest.Part(f, "next"), "A single reading from", entries)
	}
}

// Some two mistakes come near any ratio: a coarse reading is not told by them.
func TestMeasureNoTwoMistakesOfACoarseReading(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=400&asked=80&read=fed&fed=50.1,50.9,50&tool=caliper-0.05")
	assert.Equal(t, "Change it", calctest.Verdict(f).Title)
	assert.Empty(t, calctest.Part(f, "ratio"))
}

// Far off without a known mistake: what is given is not asked to be looked at, and the way to the
// swap is there.
func TestMeasureFarOff(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&fed=56,56.1,56&tool=caliper-0.05&angle=1.8")
	assert.Contains(t, calctest.Answer(f), "Was a part changed after this setting was made?")
	assert.NotContains(t, calctest.Answer(f), "step angle")
	assert.Contains(t, calctest.Part(f, "next"), "swap/#v=1&moves=feed&steps=538")
	f = calctest.Open(t, "measure", heron+"&tool=caliper-0.05")
	assert.NotContains(t, calctest.Part(f, "next"), "swap/")
}

// Whatever the setting, the motor and the error of the axis itself: what is to be set first is
// the setting for the motor that is fitted, and the test after it finds the axis' own error alone.
func TestMeasureMistakesConverge(t *testing.T) {
	p, _ := calc.PageOf("measure")
	rapid.Check(t, func(t *rapid.T) {
		right := rapid.Float64Range(50, 2000).Draw(t, "right")
		own := rapid.Float64Range(-0.04, 0.04).Draw(t, "own")
		angle := rapid.SampledFrom([]string{"0.9", "1.8"}).Draw(t, "angle")
		wrong := right / 2
		if angle == "1.8" {
			wrong = right * 2
		}
		fed := func(setting float64) string {
			texts := make([]string, 3)
			for i, scatter := range []float64{-0.05, 0, 0.05} {
				texts[i] = unit.Trim(80*setting/(right*(1+own))+scatter, 12)
			}
			return "&asked=80&read=fed&fed=" + strings.Join(texts, ",") + "&tool=caliper-0.05&angle=" + angle
		}
		f := calc.Load(p, "v=1&steps="+unit.Trim(wrong, 12)+fed(wrong))
		a := f.Report().Answer
		require.NotNil(t, a)
		require.Equal(t, "mistake", a.Verdict.ID())
		require.InEpsilon(t, right, a.Keep.Value, 1e-9)
		a = calc.Load(p, "v=1&steps="+unit.Trim(right, 12)+fed(right)).Report().Answer
		require.NotEqual(t, "mistake", a.Verdict.ID())
		require.LessOrEqual(t, math.Abs(a.Value/right-(1+own)), 1e-9)
	})
}
