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
	"striderule/calc/sheet"
)

const (
	heron      = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6"
	heronShare = heron + "&saw=steps:564.3356643:2.81:2026-11"
)

func TestOwnSheetHasNothingToCompareWith(t *testing.T) {
	f := calctest.Load(t, "measure", heron)
	f.Set("asked", 0, "90")
	assert.Nil(t, f.Compare(), "nobody sent it")
	assert.Empty(t, f.AsReceived())
	assert.Equal(t, f.Fragment(), f.AddressFragment())
}

func TestReplyToASheet(t *testing.T) {
	f := calctest.Load(t, "measure", heronShare)
	assert.Nil(t, f.Compare(), "nothing is changed yet")
	f.Set("asked", 0, "90")
	f.Set("rest", 1, "28,4")
	c := f.Compare()
	require.NotNil(t, c)
	assert.False(t, c.Theirs)
	require.Len(t, c.Differences, 2)
	asked, rest := c.Differences[0], c.Differences[1]
	assert.Equal(t, []string{"Commanded length", "80 mm", "90 mm"}, []string{asked.Name, asked.Before, asked.After})
	assert.Equal(t, []string{"Remaining in run 2", "28.9 mm", "28.4 mm"}, []string{rest.Name, rest.Before, rest.After})
	// 538·80/76.2667 and, with one change each, 538·90/76.2667 and 538·80/76.4333.
	assert.InDelta(t, 564.335664, c.Before.Value, 1e-6)
	assert.InDelta(t, 634.877622, asked.Alone.Value, 1e-6)
	assert.InDelta(t, 563.105102, rest.Alone.Value, 1e-6)
	assert.InDelta(t, 633.493240, c.After.Value, 1e-6)

	assert.Equal(t, heronShare, f.AsReceived(), "exactly as it came")
	reply := f.ReplyFragment()
	assert.Equal(t, "v=1&saw=steps:633.4932403:3.15:"+form.Edition+":arp925n&steps=538.0&asked=90&mark=105&rest=28.7,28.4,28.6&was-asked=80&was-rest=28.7,28.9,28.6", reply)

	// The next person sees the same, before touching anything.
	g := calctest.Load(t, "measure", reply)
	check, says := g.Check()
	assert.Equal(t, form.Same, check, says)
	d := g.Compare()
	require.NotNil(t, d)
	assert.True(t, d.Theirs)
	c.Theirs = true
	assert.Equal(t, c, d)
	assert.Equal(t, heron, g.AsReceived(), "the sheet that it replies to")
	assert.Empty(t, g.Problems())
	assert.Equal(t, reply, g.AddressFragment(), "an untouched sheet keeps its address")

	// Whose changes are then held against the reply, not against the first sheet.
	g.Set("mark", 0, "106")
	d = g.Compare()
	require.Len(t, d.Differences, 1)
	assert.Equal(t, "Mark at", d.Differences[0].Name)
	assert.Nil(t, d.Differences[0].Alone, "alone and together are the same")
	assert.Equal(t, reply, g.AsReceived())
	g.Set("mark", 0, "105")
	assert.Nil(t, g.Compare(), "all is as received")
}

func TestOwnAddressKeepsTheComparison(t *testing.T) {
	f := calctest.Load(t, "measure", heronShare)
	f.Set("asked", 0, "90")
	g := calctest.Load(t, "measure", f.AddressFragment())
	assert.Equal(t, f.Compare().Differences, g.Compare().Differences)
	assert.False(t, g.Compare().Theirs)
	g.Set("mark", 0, "106")
	assert.Len(t, g.Compare().Differences, 2, "still held against what was received")
	f.Set("steps", 0, "")
	f.Set("asked", 0, "")
	f.Set("mark", 0, "")
	for row := range 3 {
		f.Set("rest", row, "")
	}
	g = calctest.Load(t, "measure", f.AddressFragment())
	assert.Len(t, g.Compare().Differences, 4, "emptied, and it is known what was there: %s", f.AddressFragment())
	assert.Equal(t, heron, g.AsReceived())
}

func TestComparisonNamesChoicesAndRows(t *testing.T) {
	f := calctest.Load(t, "measure", heronShare)
	f.Set("tool", 0, "caliper-0.05")
	f.Set("rest", 3, "28.8")
	c := f.Compare()
	require.Len(t, c.Differences, 2)
	rest, tool := c.Differences[0], c.Differences[1]
	field, _ := f.Field("tool")
	options := field.Cells.At(0).(*sheet.Choice).Options()
	assert.Equal(t, options[0].Label, tool.Before, "the default by its name")
	assert.Equal(t, "Caliper, 0.05 mm", tool.After)
	assert.Equal(t, []string{"Remaining", "28.7, 28.9, 28.6 mm", "28.7, 28.9, 28.6, 28.8 mm"}, []string{rest.Name, rest.Before, rest.After}, "a row came: the whole list")
}

func TestHostileComparisons(t *testing.T) {
	f := calctest.Load(t, "measure", heron+"&was-nozzle=4&was-asked=1&was-asked=2&was-mark&was-steps=%3Cb%3Ex%3C/b%3E")
	says := problems(f)
	for _, key := range []string{"was-nozzle", "was-asked", "was-mark"} {
		assert.Contains(t, says, "“"+key+"”", "kept and told")
	}
	c := f.Compare()
	require.Len(t, c.Differences, 2)
	assert.Equal(t, "<b>x</b>", c.Differences[0].Before, "text like any other")
	assert.Equal(t, "1 mm", c.Differences[1].Before, "the first one counts")
	assert.Nil(t, c.Before, "a sheet that is wrong has no result")
}

func TestClaims(t *testing.T) {
	check := func(saw string) (form.Check, string) { return calctest.Load(t, "measure", heron+"&saw="+saw).Check() }
	c, _ := check("steps:564.3356643:2.81")
	assert.Equal(t, form.Same, c, "an edition need not be said")
	c, says := check("steps:564.3356643:1.81:" + form.Edition)
	assert.Equal(t, form.Differs, c)
	assert.Equal(t, "Differs: the link said ± 1.81; these entries give ± 2.81. The result or an entry in the link was changed after it was sent.", says)
	_, says = check("steps:566:2.81:2025-01")
	assert.Contains(t, says, "made by edition 2025-01 of the calculations; this is edition "+form.Edition)
	for _, bad := range []string{"steps:1e999", "steps:NaN", "steps:5б4", "steps:564:-1", "steps:564:x", "steps", "", "steps:٥٦٤", "Same result, says the club:564.3356643", "steps:564.3356643:2.81:checked by the club", strings.Repeat("s", 90) + ":564"} {
		f := calctest.Load(t, "measure", heron+"&saw="+bad)
		c, _ := f.Check()
		assert.Equal(t, form.Unclaimed, c, bad)
		assert.Contains(t, problems(f), "there's nothing to compare with", bad)
	}
}

// Whatever is changed in whatever sheet: the receiver of the reply sees the
// same differences and result, and can go back.
func TestRepliesArriveWhole(t *testing.T) {
	for _, p := range calc.Pages {
		t.Run(p.Slug, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				f := calc.Load(p, calc.Load(p, p.Example).ShareFragment())
				fields := f.Fields()
				for range rapid.IntRange(1, 4).Draw(t, "changes") {
					field := fields[rapid.IntRange(0, len(fields)-1).Draw(t, "field")]
					f.Set(field.Key, rapid.IntRange(0, min(5, mostCells(field)-1)).Draw(t, "row"), rapid.SampledFrom([]string{"", "3", "12,5 mm", "8Omm", "yes", "a&b=c"}).Draw(t, "text"))
				}
				want := f.Compare()
				g := calc.Load(p, f.ReplyFragment())
				got := g.Compare()
				if want == nil {
					require.Nil(t, got)
					return
				}
				require.NotNil(t, got)
				require.Equal(t, want.Differences, got.Differences)
				require.Equal(t, calc.Load(p, f.Fragment()).Report().Answer, got.After, "an empty row at the end does not travel")
				require.Equal(t, calc.Load(p, p.Example).Fragment(), calc.Load(p, g.AsReceived()).Fragment())
			})
		})
	}
}

// Of two runs that were changed, each is tried alone as well.
func TestTwoChangedRunsAlone(t *testing.T) {
	f := calctest.Load(t, "measure", heronShare)
	f.Set("rest", 0, "28.2")
	f.Set("rest", 1, "28.4")
	c := f.Compare()
	require.NotNil(t, c)
	require.Len(t, c.Differences, 2)
	// 538·80/m with a mean fed of 76.4333 each: 76.2667 + 0.5/3.
	assert.InDelta(t, 563.105102, c.Differences[0].Alone.Value, 1e-6)
	assert.InDelta(t, 563.105102, c.Differences[1].Alone.Value, 1e-6)
	assert.InDelta(t, 538*80/76.6, c.After.Value, 1e-6)
}

// An uncertainty below 1 is held against what is found as well.
func TestClaimOfASmallUncertainty(t *testing.T) {
	check, says := calctest.Load(t, "measure", heron+"&saw=steps:564.3356643:0.9").Check()
	assert.Equal(t, form.Differs, check, says)
}

// With many changes no one is tried alone: that would be work without end.
func TestManyChangesAreNotTriedAlone(t *testing.T) {
	for changes, alone := range map[int]bool{form.MostAlone: true, form.MostAlone + 1: false} {
		f := calctest.Load(t, "measure", "v=1&steps=415&asked=100&read=fed&fed=97,97.1,97.2,97.3,97,97.1,97.2,97.3,97,97.1,97.2,97.3,97&saw=steps:1")
		assert.False(t, f.HasBefore())
		for row := range changes {
			f.Set("fed", row, "98")
		}
		assert.True(t, f.HasBefore())
		c := f.Compare()
		require.Len(t, c.Differences, changes)
		for _, d := range c.Differences {
			assert.Equal(t, alone, d.Alone != nil)
		}
	}
}

// mostCells is how many cells a field may have.
func mostCells(field sheet.Field) int {
	if field.Group != nil {
		return field.Group.Most
	}
	if ticks, ok := field.Cells.(*sheet.Checks); ok {
		return len(ticks.Options())
	}
	return 1
}
