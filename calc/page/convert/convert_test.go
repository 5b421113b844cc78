package convert_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/page/convert"
	"striderule/calc/report"
)

const (
	heron    = "v=1&name=Heron&steps=538.0&angle=1.8&micro=16&ratio=54:12"
	ungeared = "v=1&name=Plover&steps=88.888889&angle=1.8&micro=16&ratio=1"
)

// belongs are the figures that the answer shows, by their labels.
func belongs(f *form.Form) []string {
	var all []string
	a := f.Report().Answer
	if a.Instead == nil {
		return []string{a.Label + ": " + a.String()}
	}
	for _, b := range a.Instead.Blocks {
		if figures, ok := b.(report.Figures); ok {
			for _, x := range figures.All {
				all = append(all, x.Label+": "+x.String())
			}
		}
	}
	return all
}

// With gears between, two travels look alike, and one alone may be several times off: until
// it is told which is wanted, none stands alone.
func TestGearedSettingIsNoSingleNumber(t *testing.T) {
	f := calctest.Open(t, "convert", heron)
	assert.Equal(t, "Heron: depends on the new controller", f.Report().Answer.Instead.Title)
	assert.Equal(t, []string{
		"Travel per motor turn: 5.9479554 mm/rev", "Full steps per motor turn: 200", "Microsteps: 16",
		"Travel per output turn: 26.765799 mm/rev", "Gear ratio, 54:12: 4.5", "Full steps per motor turn: 200", "Microsteps: 16",
	}, belongs(f))
	answer := calctest.Answer(f)
	assert.Contains(t, answer, "If it stores travel per output turn, enter:")
	assert.Contains(t, answer, "The gears are in this number.")
	assert.Contains(t, answer, "Same as 538 steps/mm with a 1.8° motor at 16 microsteps. Choose what your new controller stores")
	assert.InEpsilon(t, 26.765799256505577, calctest.Out(t, f, "output"), 1e-15)
	assert.InEpsilon(t, 5.947955390334572, calctest.Out(t, f, "turn"), 1e-15)

	f = calctest.Open(t, "convert", "v=1&as=output&output=26.7658&angle=1.8&micro=16&ratio=4.5")
	assert.Equal(t, []string{"Steps per mm: 537.99999 steps/mm", "Travel per motor turn: 5.9479556 mm/rev", "Full steps per motor turn: 200", "Microsteps: 16"}, belongs(f))
	f = calctest.Open(t, "convert", "v=1&as=turn&turn=5.948&ratio=4.5&angle=1.8&micro=16")
	assert.Equal(t, []string{"Steps per mm: 537.99597 steps/mm", "Travel per output turn: 26.766 mm/rev", "Gear ratio: 4.5", "Full steps per motor turn: 200", "Microsteps: 16"}, belongs(f))
}

// What is told, and nothing else, is shown: with what must be entered beside it.
func TestWhatTheNewControllerWants(t *testing.T) {
	f := calctest.Open(t, "convert", heron+"&wants=output")
	assert.Equal(t, "Heron: enter these together", f.Report().Answer.Instead.Title)
	assert.Equal(t, []string{"Travel per output turn: 26.765799 mm/rev", "Gear ratio, 54:12: 4.5", "Full steps per motor turn: 200", "Microsteps: 16"}, belongs(f))
	assert.Equal(t, "output", f.Report().Answer.ID, "the check value of its link is that of what is wanted")
	f = calctest.Open(t, "convert", heron+"&wants=turn")
	assert.Equal(t, []string{"Travel per motor turn: 5.9479554 mm/rev", "Full steps per motor turn: 200", "Microsteps: 16"}, belongs(f))
	f = calctest.Open(t, "convert", "v=1&as=output&output=26.7658&angle=1.8&micro=16&ratio=4.5&wants=steps")
	assert.Equal(t, []string{"Steps per mm, Axis 1: 537.99999 steps/mm"}, belongs(f))
	f = calctest.Open(t, "convert", heron+"&wants=steps")
	assert.Contains(t, calctest.Answer(f), "It stores the same: keep the number")
	f = calctest.Open(t, "convert", "v=1&as=turn&turn=5.948&ratio=4.5&wants=output")
	assert.Contains(t, calctest.Answer(f), "Gear ratio: 4.5")
	assert.Contains(t, calctest.Answer(f), "the full steps per turn and microsteps to enter with it: angle, micro")
	f = calctest.Open(t, "convert", "v=1&steps=538&angle=1.8&micro=16&wants=output")
	assert.Nil(t, f.Report().Answer, "without the ratio there is nothing to enter")
	assert.Contains(t, f.Report().String(), "travel per output turn: ratio")
}

// Without gears the two travels are one, and stand alone as ever.
func TestUngearedSettingIsOneNumber(t *testing.T) {
	f := calctest.Open(t, "convert", ungeared)
	require.Nil(t, f.Report().Answer.Instead)
	assert.Equal(t, []string{"Travel per motor turn, Plover: 36 mm/rev"}, belongs(f))
	assert.Equal(t, "turn", f.Report().Answer.ID)
	f = calctest.Open(t, "convert", "v=1&as=turn&turn=5.948&angle=1.8&micro=16")
	assert.Nil(t, f.Report().Answer.Instead)
	assert.Contains(t, calctest.Answer(f), "If there are gears, and the new controller stores their ratio separately, fill in the gear ratio")
}

// A link as it was shared before the question says the same.
func TestOldClaimsStand(t *testing.T) {
	for _, saw := range []string{heron + "&saw=turn:5.94795539:", ungeared + "&saw=turn:35.999999955:"} {
		check, says := calctest.Open(t, "convert", saw+":2026-11").Check()
		assert.Equal(t, form.Same, check, says)
	}
	check, _ := calctest.Open(t, "convert", heron+"&wants=output&saw=output:26.76579926::2026-12").Check()
	assert.Equal(t, form.Same, check)
}

// What belongs together stands together in a post too, with the names marked.
func TestPostOfSeveralNumbers(t *testing.T) {
	f := calctest.Open(t, "convert", heron+"&wants=output")
	assert.Contains(t, form.Post(f, form.MarkdownPost, "x"), "**Heron: enter these together**\n\n- **Travel per output turn:** 26.765799 mm/rev\n"+
		"- **Gear ratio, 54:12:** 4.5\n- **Full steps per motor turn:** 200\n- **Microsteps:** 16\n\n- **Name:** Heron\n")
	f = calctest.Open(t, "convert", "v=1&name=%5Ba%5D&steps=538.0&angle=1.8&micro=16&ratio=54:12")
	post := form.Post(f, form.BBCodePost, "x")
	assert.Contains(t, post, "[b]［a］: depends on the new controller[/b]\n\nIf it stores travel per motor turn, enter:\n\n[list]\n[*][b]Travel per motor turn:[/b] 5.9479554 mm/rev\n")
	assert.Contains(t, post, "[/list]\n\nThe gears are in this number.")
}

func TestTableOfAxes(t *testing.T) {
	all := func(wants string) string {
		return calctest.Part(calctest.Open(t, "convert", "v=1&name=Heron,Plover%20X,Plover%20Z&as=,turn&steps=538.0,,800&turn=,36&angle=1.8,1.8,1.8&micro=16,16,16&ratio=54:12,1"+wants), "all")
	}
	assert.Contains(t, all(""), "Heron | 538 steps/mm | 5.9479554 mm/rev | 26.765799 mm/rev | 4.5")
	assert.Contains(t, all(""), "Plover Z | 800 steps/mm | 4 mm/rev | – | –")
	assert.Contains(t, all("&wants=output"), "Axis | You have | Travel per output turn | Gear ratio\n  Heron | 538 steps/mm | 26.765799 mm/rev | 4.5")
	assert.NotContains(t, all("&wants=output"), "Plover Z", "its gear ratio is missing")
	assert.Contains(t, all("&wants=steps"), "Axis | You have | Converted\n  Heron | 538 steps/mm | 538 steps/mm\n  Plover X | 36 mm/rev | 88.888889 steps/mm")
}

func TestRatioTheWrongWayRoundIsDoubtedAtTheAnswer(t *testing.T) {
	const doubt = "the output turns faster than the motor"
	f := calctest.Open(t, "convert", "v=1&name=Heron,Plover&steps=538.0,80&angle=1.8,1.8&micro=16,16&ratio=12:54,12:54")
	assert.Contains(t, calctest.Answer(f), doubt)
	assert.NotContains(t, calctest.Part(f, "axis-1"), doubt)
	assert.Contains(t, calctest.Part(f, "axis-2"), doubt)
}

// doubted is what the answer says against itself.
func doubted(f *form.Form) string {
	var all []string
	for _, n := range f.Report().Answer.Notes {
		all = append(all, n.Line.String())
	}
	return strings.Join(all, "\n")
}

// Travel per motor turn has the gears in it: a ratio that is typed beside it, and that what is
// wanted doesn't need, tells of travel per output turn.
func TestRatioThatIsNotUsedIsDoubted(t *testing.T) {
	const turn = "v=1&as=turn&turn=22.4&angle=1.8&micro=16&ratio=3.5&wants="
	f := calctest.Open(t, "convert", turn+"steps")
	assert.InEpsilon(t, 3200/22.4, calctest.Out(t, f, "steps"), 1e-12, "as the link means")
	assert.Equal(t, "The gear ratio isn't used for steps per mm: the travel per motor turn you entered has the gears in it. "+
		"If 22.4 mm is per output turn, it's 500 steps/mm.", doubted(f))
	assert.Contains(t, doubted(calctest.Open(t, "convert", turn+"turn")), "for travel per motor turn: the travel per motor turn you entered has the gears in it. If 22.4 mm is per output turn, it's 6.4 mm/rev.")
	assert.Empty(t, doubted(calctest.Open(t, "convert", turn+"output")), "it is used")
	assert.Empty(t, doubted(calctest.Open(t, "convert", strings.Replace(turn, "3.5", "1", 1)+"steps")))
	assert.Empty(t, doubted(calctest.Open(t, "convert", heron+"&wants=steps")))
	second := calctest.Open(t, "convert", "v=1&as=,turn&steps=80&turn=,22.4&angle=1.8,1.8&micro=16,16&ratio=,3.5&wants=steps")
	assert.Empty(t, doubted(second))
	assert.Contains(t, calctest.Part(second, "axis-2"), "it's 500 steps/mm.")
	assert.Empty(t, doubted(calctest.Open(t, "convert", convert.Page.Example)))
}

// An output turn of a rotary axis is 360°.
func TestOutputTurnOfARotaryAxisIsKnown(t *testing.T) {
	const rotary = "v=1&moves=rotary&angle=1.8&micro=16&ratio=90"
	f := calctest.Open(t, "convert", rotary+"&as=turn&turndeg=360&wants=steps")
	assert.Equal(t, "The gear ratio isn't used for steps per degree: the travel per motor turn you entered has the gears in it. "+
		"If 360° is per output turn, it's 800 steps/°.", doubted(f))
	assert.Contains(t, doubted(calctest.Open(t, "convert", rotary+"&as=turn&turndeg=360")), "it's 800 steps/°.")
	assert.Empty(t, doubted(calctest.Open(t, "convert", rotary+"&as=turn&turndeg=4&wants=steps")), "90 of these are a turn")

	f = calctest.Open(t, "convert", rotary+"&as=output&outputdeg=4&wants=steps")
	assert.InEpsilon(t, 72000., calctest.Out(t, f, "steps"), 1e-12, "as the link means")
	assert.Equal(t, "One output turn of a rotary axis is 360°, unless more gears follow. If 4° is per motor turn, it's 800 steps/°.", doubted(f))
	assert.Empty(t, doubted(calctest.Open(t, "convert", rotary+"&as=output&outputdeg=360&wants=steps")))
	assert.Empty(t, doubted(calctest.Open(t, "convert", "v=1&as=output&output=40&angle=1.8&micro=16&ratio=3&wants=steps")), "mm")
}

// A thread by its inches, typed bare.
func TestVeryLittleTravelPerTurnIsDoubtedAtTheField(t *testing.T) {
	f := calctest.Open(t, "convert", "v=1&as=turn&turn=0.1&angle=1.8&micro=8&wants=steps")
	assert.Equal(t, report.Remark{Key: "turn", Says: "0.1 mm is very little. Do you mean inches? Then write 0.1 in.", Doubt: true}, f.RemarkAt("turn", 0))
	for _, enough := range []string{"0.3", "0.1mm", "0.1in", "8"} {
		f.Set("turn", 0, enough)
		assert.Empty(t, f.RemarkAt("turn", 0).Says, enough)
	}
}
