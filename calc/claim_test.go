package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/page/calibrate"
)

// A result is repeated with its unit, and in the digits that it supports, however many it came
// with; in more of them where it takes more to tell the two apart.
func TestClaimsAreRepeatedShort(t *testing.T) {
	says := func(saw string) string {
		check, says := calctest.Load(t, "measure", heron+"&saw="+saw).Check()
		require.Equal(t, form.Differs, check)
		return says
	}
	assert.Equal(t, "Differs: the link said 566.1 ± 2.8 steps/mm; these entries give 564.3 ± 2.8 steps/mm. The result or an entry in the link was changed after it was sent.", says("steps:566.12345678901:2.81"))
	assert.Equal(t, "Differs: the link said 566.1 steps/mm; these entries give 564.3 ± 2.8 steps/mm. The result or an entry in the link was changed after it was sent.", says("steps:566.12345678901"))
	assert.Equal(t, "Differs: the link said 564.33570 steps/mm; these entries give 564.33566 steps/mm. The result or an entry in the link was changed after it was sent.", says("steps:564.3357000:2.81"))
	assert.Equal(t, "Differs: the link said 5.67 mm/rev (New travel per motor turn); these entries give 564.3 ± 2.8 steps/mm (New steps per mm). The result or an entry in the link was changed after it was sent.", says("turn:5.67"))
	assert.Equal(t, "Differs: the link said ± 1.23; these entries give ± 2.81. The result or an entry in the link was changed after it was sent.", says("steps:564.3356643:1.23456"))
	assert.Equal(t, "Differs: the link said 1 (az09-); these entries give 564.3 ± 2.8 steps/mm (New steps per mm). The link was made by edition az09- of the calculations; this is edition "+form.Edition+".", says("az09-:1::az09-"))
	_, bare := calctest.Load(t, "flow", "v=1&saw=flow:1.5").Check()
	assert.Contains(t, bare, "the link said 1.5; these entries give no result")
	for _, strange := range []string{"`", "{", "/", ":", "A"} {
		f := calctest.Load(t, "measure", heron+"&saw=a"+strange+"z:1")
		check, _ := f.Check()
		assert.Equal(t, form.Unclaimed, check, strange)
	}
}

func TestClaimsHaveALength(t *testing.T) {
	const start = "steps:564.3356643:2.81:"
	longest := start + strings.Repeat("a", 80-len(start))
	check, says := calctest.Load(t, "measure", heron+"&saw="+longest).Check()
	assert.Equal(t, form.Same, check, says)
	check, _ = calctest.Load(t, "measure", heron+"&saw="+longest+"a").Check()
	assert.Equal(t, form.Unclaimed, check)
}

// The three states: the same, the same value with a ± of another edition, and another result.
func TestClaimsOfOtherEditions(t *testing.T) {
	check := func(saw string) (form.Check, string) {
		return calctest.Load(t, "measure", heron+"&tool=caliper-0.05&saw="+saw).Check()
	}
	const value, wide = "steps:564.3356643:", "2.84" // 2.83846
	for saw, want := range map[string]form.Check{
		value + wide + ":" + form.Edition: form.Same,
		value + wide + ":2026-11":         form.Same,
		value + wide:                      form.Same,
		value + ":2026-11":                form.Same, // whose sender saw no ±
		value + "2.62:2026-11":            form.Reworked,
		value + "2.62:2025-01":            form.Reworked,
		value + "2.62:2027-05":            form.Reworked,
		value + "0.001:2026-11":           form.Reworked,
		value + "2.62:" + form.Edition:    form.Differs,
		value + "2.62":                    form.Differs, // nothing says of which edition it is
		"steps:564.3356650:2.62:2026-11":  form.Differs,
		"steps:566:2.84:2026-11":          form.Differs,
		"turn:564.3356643:2.62:2026-11":   form.Differs,
	} {
		got, _ := check(saw)
		assert.Equal(t, want, got, saw)
	}
	_, says := check(value + "2.62:2026-11")
	assert.Equal(t, "Same value; the ± has been worked out differently since 2026-12.", says)
	_, says = check(value + "2.62:2027-05")
	assert.Equal(t, "Same value; the ± has been worked out differently since 2027-05.", says, "a site that's older than the link")
	_, says = check("steps:566:2.84:2026-11")
	assert.Equal(t, "Differs: the link said 566.0 ± 2.8 steps/mm; these entries give 564.3 ± 2.8 steps/mm. The link was made by edition 2026-11 of the calculations; this is edition "+form.Edition+".", says)
	_, says = check("steps:566:2.84:" + form.Edition + ":680nu9u")
	assert.Contains(t, says, "The entries aren't those that this result was sent with", "the tool is not among them")
	sent := calctest.Load(t, "measure", heron).ShareFragment()
	_, says = calctest.Load(t, "measure", strings.Replace(sent, "564.3356643", "566", 1)).Check()
	assert.Equal(t, "Differs: the link said 566.0 ± 2.8 steps/mm; these entries give 564.3 ± 2.8 steps/mm. The entries are those that were sent: the result in the link was changed.", says)
	_, says = check(value + "2.62:" + form.Edition)
	assert.Equal(t, "Differs: the link said ± 2.62; these entries give ± 2.84. The result or an entry in the link was changed after it was sent.", says)
}

// An edition comes with the link: what a page says has nothing of a stranger but its small
// letters, digits and hyphens, and only in its place.
func TestForgedEditions(t *testing.T) {
	const claim = "steps:564.3356643:2.62:"
	for _, forged := range []string{"2026-11%20(checked)", "2026.11", "Checked", "%3Cb%3Eall-well%3C/b%3E", "2026-11,2026-12", "2026_11", "%E2%80%AE2026-11", strings.Repeat("a", 80)} {
		f := calctest.Load(t, "measure", heron+"&tool=caliper-0.05&saw="+claim+forged)
		check, says := f.Check()
		assert.Equal(t, form.Unclaimed, check, forged)
		assert.Empty(t, says, forged)
		assert.Contains(t, problems(f), "there's nothing to compare with", forged)
	}
	plain := rapid.StringMatching(`[a-z0-9-]{1,50}`).Filter(func(s string) bool { return s != form.Edition })
	rapid.Check(t, func(t *rapid.T) {
		edition := plain.Draw(t, "edition")
		f := calc.Load(calibrate.Page, heron+"&tool=caliper-0.05&saw="+claim+edition)
		check, says := f.Check()
		require.Equal(t, form.Reworked, check)
		require.Equal(t, "Same value; the ± has been worked out differently since "+max(edition, form.Edition)+".", says)
		require.Empty(t, problems(f))
	})
}
