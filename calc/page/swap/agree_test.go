package swap_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/page/swap"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// doubted is what the answer says against itself.
func doubted(t testing.TB, fragment string) string {
	t.Helper()
	var all []string
	for _, n := range calctest.Open(t, "swap", fragment).Report().Answer.Notes {
		if n.Kind == report.Doubt {
			all = append(all, n.Line.String())
		}
	}
	return strings.Join(all, "\n")
}

const belt = "&anglekept=1.8&gearskept=none&pitchkept=2&teethkept=18" // 88.889 steps/mm at 16, 44.444 at 8

// The setting of one number of microsteps beside another: the answer is twice what it should be.
func TestSettingOfOtherMicrosteps(t *testing.T) {
	f := calctest.Open(t, "swap", "v=1&changed=micro&steps=88.888889&micro=8&micronew=64"+belt)
	assert.Equal(t, "88.88889 steps/mm doesn't fit the old parts: those give 44.44444 steps/mm, the new ones 355.5556 steps/mm. "+
		"88.88889 steps/mm fits 16 microsteps. 88.88889 steps/mm fits a 0.9° motor.", doubted(t, f.Fragment()))
	assert.Equal(t, report.Remark{Key: "steps", Says: "These parts give 44.44444 steps/mm.", Doubt: true}, f.RemarkAt("steps", 0))
	assert.Empty(t, doubted(t, "v=1&changed=micro&steps=88.888889&micro=16&micronew=64"+belt))
	assert.Empty(t, doubted(t, "v=1&changed=micro&steps=44.1&micro=8&micronew=64"+belt), "a correction of less than a hundredth")
	assert.Contains(t, doubted(t, "v=1&changed=micro&as=turn&turn=18&micro=8&micronew=64"+belt), "18 mm/rev doesn't fit the old parts: those give 36 mm/rev, the new ones 36 mm/rev.")
	// Nobody said whether there are gears: they could make a half, not a double.
	plain := strings.Replace(belt, "&gearskept=none", "", 1)
	assert.Contains(t, doubted(t, "v=1&changed=micro&steps=88.888889&micro=8&micronew=64"+plain), "without gears those give 44.44444 steps/mm")
	assert.Empty(t, doubted(t, "v=1&changed=micro&steps=133.333&micro=8&micronew=64"+plain), "gears of 3:1")
	assert.Contains(t, doubted(t, "v=1&changed=micro&steps=29.63&micro=8&micronew=64"+plain), "without gears those give 44.44444 steps/mm")
}

// Where the parts are not known, the page says at least what it takes the setting for.
func TestSettingSaysWhatItIsTakenFor(t *testing.T) {
	const taken = "This holds if you entered the setting from before the swap. If it came with the new part, keep it as it is."
	f := calctest.Open(t, "swap", "v=1&changed=micro&steps=88.888889&micro=8&micronew=64")
	assert.Contains(t, calctest.Answer(f), taken)
	assert.Contains(t, calctest.Answer(f), "88.88889 steps/mm at 8 microsteps × 8.")
	steps, _ := f.Field("steps")
	assert.Contains(t, steps.Hint, "with the old motor, microsteps and parts")
	f = calctest.Open(t, "swap", "v=1&changed=micro&as=turn&turn=36&micro=8&micronew=64")
	assert.NotContains(t, calctest.Answer(f), taken, "the microsteps are not in it")
	for _, fragment := range []string{
		"changed=gears&moves=feed&steps=415&gears=none&gearsnew=ratio&rationew=3",
		"changed=gears&as=turn&turn=8&gears=none&gearsnew=ratio&rationew=3",
		"changed=angle&steps=80&angle=1.8&anglenew=0.9",
		"changed=out&as=output&output=40&pitch=2&teeth=20&pitchnew=2&teethnew=16",
		"changed=out&steps=400&out=screw&screw=Tr8x8(P2)&outnew=screw&screwnew=Tr8x2",
		"changed=gears&moves=rotary&stepsdeg=80&gears=ratio&ratio=90&gearsnew=ratio&rationew=60",
	} {
		assert.Contains(t, calctest.Answer(calctest.Open(t, "swap", "v=1&"+fragment)), taken, fragment)
	}
	f = calctest.Open(t, "swap", "v=1&changed=gears&as=output&output=40&gears=none&gearsnew=ratio&rationew=3")
	assert.NotContains(t, calctest.Answer(f), taken, "the gears are not in it")
	assert.Empty(t, doubted(t, swap.Page.Example))
}

// A screw typed by its pitch, where the steps say that it has two starts.
func TestScrewTypedByItsPitch(t *testing.T) {
	const z = "v=1&changed=out&steps=640&out=screw&outnew=screw&screwnew=5&anglekept=1.8&microkept=16"
	assert.Equal(t, "640 steps/mm doesn't fit the old parts: without gears those give 1280 steps/mm, the new ones 640 steps/mm. "+
		"640 steps/mm fits 8 microsteps. 640 steps/mm fits a screw of 5 mm lead: if yours has 2 starts, write 2.5 x 2.", doubted(t, z+"&screw=2.5"))
	assert.Empty(t, doubted(t, z+"&screw=2.5x2"))
	assert.Contains(t, doubted(t, z+"&screw=4&gearskept=none"), "fits a screw of 5 mm lead.")
	f := calctest.Open(t, "swap", z+"&screw=2.5x2")
	assert.Equal(t, "Lead 5 mm, 2 starts.", f.RemarkAt("screw", 0).Says)
	assert.Equal(t, "Lead 5 mm, 1 start.", f.RemarkAt("screwnew", 0).Says)
}

func TestGearsAgainstTheSetting(t *testing.T) {
	const x = "v=1&changed=out&out=roller&roller=8.5&outnew=roller&rollernew=11&anglekept=1.8&microkept=16&moves=feed"
	assert.Empty(t, doubted(t, x+"&steps=538&gearskept=pairs&drivingkept=12&drivenkept=54"), "539 from the parts")
	assert.Empty(t, doubted(t, x+"&steps=538"), "gears that nobody told of")
	assert.Contains(t, doubted(t, x+"&steps=119.8&gearskept=pairs&drivingkept=12&drivenkept=54"), "119.8 steps/mm fits without the gears.")
	assert.Contains(t, doubted(t, x+"&steps=538&gearskept=pairs&drivingkept=54&drivenkept=12"), "the output turns faster than the motor")
}

// A length alone may be the lead of a screw, or its pitch: nothing but its setting tells which.
func TestLeadOrPitchOfANewScrew(t *testing.T) {
	assert.Contains(t, doubted(t, "v=1&changed=out&steps=80&pitch=2&teeth=20&outnew=screw&screwnew=2"), "Is 2 mm the lead or the pitch?")
	for _, screw := range []string{"2mm%20x%204", "2%20x%201", "Tr8x2", "8"} {
		assert.Empty(t, doubted(t, "v=1&changed=out&steps=80&pitch=2&teeth=20&outnew=screw&screwnew="+screw), screw)
	}
}

// Whatever a setting is that the parts give: it is not doubted, and twice of it is.
func TestDoubtIsOfTheDifference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		teeth := rapid.IntRange(10, 60).Draw(t, "teeth")
		micro := rapid.SampledFrom([]int{1, 2, 4, 8, 16, 32, 64}).Draw(t, "micro")
		off := rapid.Float64Range(0.95, 1.05).Draw(t, "corrected")
		mistake := rapid.SampledFrom([]float64{0.125, 0.25, 0.5, 1, 2, 4, 8}).Draw(t, "mistake")
		steps := 200 * float64(micro) / (2 * float64(teeth)) * off * mistake
		f := calc.Load(swap.Page, "v=1&changed=micro&micronew=256&anglekept=1.8&gearskept=none&pitchkept=2&steps="+unit.Full(steps)+
			"&micro="+unit.Full(float64(micro))+"&teethkept="+unit.Full(float64(teeth)))
		notes := f.Report().Answer.Notes
		if mistake == 1 {
			assert.Len(t, notes, 1)
			assert.Equal(t, report.Tip, notes[0].Kind)
		} else {
			assert.Len(t, notes, 1)
		}
	})
}
