package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/convert"
	"striderule/calc/page/swap"
	"striderule/calc/sheet"
)

func problems(f *form.Form) string {
	var says []string
	for _, p := range f.Problems() {
		says = append(says, p.Says)
	}
	return strings.Join(says, "\n")
}

func TestBadLinksTellTheirProblemsAndKeepTheRest(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&asked=8Omm&steps=538&colour=red&steps=400&mark&rest=28.7")
	for _, says := range []string{
		"Commanded length: “Omm” in “8Omm” isn't a unit this field takes. Write it like 80 mm or 1.75 mm.",
		"“colour” in the link isn't a field of this page.",
		"“steps” is in the link twice; the first one is used.",
		"“mark” in the link has no value. Write mark=value.",
	} {
		assert.Contains(t, problems(f), says)
	}
	assert.Equal(t, "538", f.Text("steps", 0))
	assert.Equal(t, "28.7", f.Text("rest", 0))
	assert.Equal(t, "v=1&steps=538&asked=8Omm&rest=28.7&colour=red&mark", f.Fragment(), "what is not understood is kept")
	f.Set("asked", 0, "80")
	assert.Empty(t, f.Problems(), "a link's notices end with the first change")
}

func TestLinkVersions(t *testing.T) {
	assert.Empty(t, calctest.Load(t, "measure", "steps=538").Problems(), "a link typed by hand needs none")
	f := calctest.Load(t, "measure", "v=7&steps=538")
	assert.Contains(t, problems(f), "The link is version “7”; this page knows version 1.")
	assert.Equal(t, "538", f.Text("steps", 0))
}

func TestLongLinksAreCutAtAPiece(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=538&line="+strings.Repeat("a", 2000)+"&entry="+strings.Repeat("b", 3000))
	assert.Contains(t, problems(f), "longer than 4000 characters")
	assert.Equal(t, "538", f.Text("steps", 0))
	assert.Empty(t, f.Text("entry", 0))
	assert.NotEmpty(t, f.Text("line", 0))
	f = calctest.Load(t, "measure", strings.Repeat("a", 5000))
	assert.Contains(t, problems(f), "longer than 4000 characters")
}

// What is as long as a link may be is read to its end; of more, whole pieces.
func TestLinksOfJustTheLength(t *testing.T) {
	const start, end = "v=1&asked=80&line=", "&steps=538"
	address := start + strings.Repeat("a", link.MostLink-len(start)-len(end)) + end
	require.Len(t, address, link.MostLink)
	f := calctest.Load(t, "measure", address)
	assert.NotContains(t, problems(f), "longer than 4000 characters")
	assert.Equal(t, "538", f.Text("steps", 0))
	f = calctest.Load(t, "measure", address+"0")
	assert.Contains(t, problems(f), "longer than 4000 characters")
	assert.Empty(t, f.Text("steps", 0), "a piece that is cut would be another value")
	assert.Equal(t, "80", f.Text("asked", 0))

	fits := start + strings.Repeat("a", link.MostLink-len(start))
	f = calctest.Load(t, "measure", fits+"&steps=538")
	assert.Len(t, f.Text("line", 0), link.MostLink-len(start), "what ends just there is whole")
	f = calctest.Load(t, "measure", fits+"a&steps=538")
	assert.Empty(t, f.Text("line", 0))
	f = calctest.Load(t, "measure", strings.Repeat("a", 5000))
	assert.Len(t, f.Problems(), 1, "nothing of one long piece is read")
}

func TestMoreRowsThanThereAreAreLeftOut(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&rest="+strings.Repeat("1,", sheet.MostRows)+"2")
	assert.Contains(t, problems(f), "Remaining: the link has 51 values; 50 are read.")
	rest, _ := f.Field("rest")
	assert.Equal(t, sheet.MostRows, f.Rows(rest))
	assert.NotContains(t, f.Fragment(), "2")
}

func TestHiddenTextIsToldAndLeftOut(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=538&read=fed&rest=28.7&fed=76")
	assert.Contains(t, problems(f), "“Remaining” is in the link but isn't used with these choices.")
	assert.NotContains(t, f.Fragment(), "rest=")
	f.Set("read", 0, "rest")
	assert.Equal(t, "28.7", f.Text("rest", 0), "it is still there")
	assert.Contains(t, f.Fragment(), "rest=28.7")
}

func TestAmbiguousNumbersAreAsked(t *testing.T) {
	f := calc.NewForm(calibrate.Page)
	f.Set("steps", 0, "1,000")
	assert.Contains(t, problems(f), "Steps per mm: “1,000” could mean 1.000 or 1000. Write one of these.")
	f.Set("asked", 0, "7,684")
	assert.NotContains(t, problems(f), "Commanded length", "no small machine moves 7684 mm")
}

func TestRows(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&rest=1,2,3,4,5,6")
	rest, ok := f.Field("rest")
	require.True(t, ok)
	assert.Equal(t, 6, f.Rows(rest))
	f.RemoveRow(rest.Group, 1)
	assert.Equal(t, "v=1&rest=1,3,4,5,6", f.Fragment())
	require.True(t, f.AddRow(rest.Group))
	assert.Equal(t, 6, f.Rows(rest))
	assert.Equal(t, "v=1&rest=1,3,4,5,6", f.Fragment(), "an empty row at the end does not travel")
	f.Set("rest", 49, "5")
	assert.Equal(t, 50, f.Rows(rest))
	assert.False(t, f.AddRow(rest.Group), "no room")
	f.Set("rest", 50, "6")
	f.Set("rest", -1, "6")
	f.Set("nowhere", 0, "6")
	assert.Equal(t, 50, f.Rows(rest))
	g := calctest.Load(t, "convert", "v=1&name=X")
	name, _ := g.Field("name")
	g.RemoveRow(name.Group, 0)
	assert.Equal(t, 1, g.Rows(name), "the last row is emptied, not taken away")
	assert.Empty(t, g.Fragment())
}

func TestTicks(t *testing.T) {
	f := calc.NewForm(calibrate.Page)
	f.Tick("done", "slack", true)
	f.Tick("done", "filament", true)
	assert.Equal(t, "v=1&done=filament,slack", f.Fragment(), "in the order of the list")
	f.Tick("done", "slack", false)
	f.Tick("done", "nothing", true)
	f.Tick("asked", "slack", true)
	f.Tick("nowhere", "slack", true)
	assert.Equal(t, "v=1&done=filament", f.Fragment())
	f = calctest.Load(t, "measure", "v=1&done=slack,hope,slack")
	assert.Contains(t, problems(f), "Checks done: “hope” isn't one of the options. Write one of these: filament, path")
	assert.Equal(t, "v=1&done=slack,hope", f.Fragment())
}

func TestCommaTypedIntoALink(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&asked=80,5")
	assert.Equal(t, "v=1&asked=80.5", f.Fragment())
}

func TestSendersResultIsChecked(t *testing.T) {
	const entries = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6"
	check := func(saw string) (form.Check, string) { return calctest.Load(t, "measure", entries+"&saw="+saw).Check() }
	c, says := check("steps:564.3356643")
	assert.Equal(t, form.Same, c, says)
	c, says = check("steps:564.3")
	assert.Equal(t, form.Differs, c)
	assert.Equal(t, "Differs: the link said 564.300 steps/mm; these entries give 564.336 steps/mm. The result or an entry in the link was changed after it was sent.", says)
	c, says = check("turn:564.3356643")
	assert.Equal(t, form.Differs, c)
	assert.Contains(t, says, "said 564.336 mm/rev (New travel per motor turn); these entries give")
	c, says = calctest.Load(t, "measure", "v=1&steps=538&saw=steps:564").Check()
	assert.Equal(t, form.Differs, c)
	assert.Contains(t, says, "these entries give no result")
	c, _ = calctest.Load(t, "measure", entries).Check()
	assert.Equal(t, form.Unclaimed, c)

	f := calctest.Load(t, "measure", entries+"&saw=steps:NaN")
	assert.Contains(t, problems(f), "The sender's result, “steps:NaN”, isn't a number")
	f = calctest.Load(t, "measure", entries+"&saw=steps:564.3356643&saw=steps:1")
	c, _ = f.Check()
	assert.Equal(t, form.Same, c, "the first one counts")
	assert.Contains(t, problems(f), "“saw”")
	f.Set("asked", 0, "81")
	c, _ = f.Check()
	assert.Equal(t, form.Unclaimed, c, "changed entries are not what the sender saw")
	assert.Equal(t, "v=1&saw=steps:564.3356643:2.81:"+form.Edition+":680nu9u"+strings.TrimPrefix(entries, "v=1"), calctest.Open(t, "measure", entries).ShareFragment())
}

func TestReadAddress(t *testing.T) {
	read := func(text, slug, fragment string, ok bool) {
		t.Helper()
		s, f, said, isOK := calc.ReadAddress(text)
		assert.Empty(t, said, text)
		assert.Equal(t, ok, isOK, text)
		if ok {
			assert.Equal(t, slug, s)
			assert.Equal(t, fragment, f)
		}
	}
	read("https://club.example/tools/cal/measure/#v=1&steps=538", "measure", "v=1&steps=538", true)
	read(" http://localhost:8080/swap/index.html?x=1#v=1 \n", "swap", "v=1", true)
	read("/convert", "convert", "", true)
	read("measure/#", "measure", "", true)
	read("https://club.example/tools/cal/", "", "", false)
	read("", "", "", false)
}

func TestEscapesAreUndone(t *testing.T) {
	f := calctest.Open(t, "convert", "v=1&name=a%26b%3Dc%2Cd%20%C2%B0&steps=80")
	assert.Equal(t, "a&b=c,d °", f.Text("name", 0))
	assert.Equal(t, "v=1&name=a%26b%3Dc%2Cd%20%C2%B0&steps=80", f.Fragment())
	f = calctest.Load(t, "convert", "#v=1&name=100%&ratio=54%3a12")
	assert.Equal(t, "100%", f.Text("name", 0), "a broken escape stands for itself")
	assert.Equal(t, "54:12", f.Text("ratio", 0))
	f = calctest.Load(t, "convert", "v=1&name=a%00b%0Ac%FF")
	assert.Equal(t, "abc\uFFFD", f.Text("name", 0), "one line of valid text")
	assert.Equal(t, "v=1&name=end%2E", calctest.Load(t, "convert", "name=end%2E").Fragment(), "a forum would cut the point off")
}

func TestTextHasALimit(t *testing.T) {
	f := calc.NewForm(convert.Page)
	f.Set("name", 0, strings.Repeat("ä", 40))
	assert.Empty(t, f.Problems())
	f.Set("name", 0, strings.Repeat("ä", 41))
	assert.Contains(t, problems(f), "longer than 40 characters. Shorten it.")
}

func TestAboutNamesConditions(t *testing.T) {
	f := calc.NewForm(swap.Page)
	field, _ := f.Field("anglenew")
	assert.Equal(t, "a step angle, 0.01 to 90°; only with changed=angle", sheet.About(field))
	field, _ = f.Field("anglekept")
	assert.Contains(t, sheet.About(field), "only with changed≠angle")
	field, _ = f.Field("changed")
	assert.Equal(t, "any of angle, micro, gears, out", sheet.About(field))
	field, _ = f.Field("turndeg")
	assert.Contains(t, sheet.About(field), "only with moves=rotary&as=turn")
	field, _ = f.Field("screw")
	assert.Contains(t, sheet.About(field), "Tr8x8(P2)")
}

func TestNewerLinksOpenAsFarAsUnderstood(t *testing.T) {
	f := calctest.Load(t, "measure", "v=2&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&probe=laser&tool=comb-7")
	says := problems(f)
	assert.Contains(t, says, "The link is version “2”; this page knows version 1. It was read as far as possible.")
	assert.Contains(t, says, "“probe” in the link isn't a field of this page.")
	assert.Contains(t, says, "“comb-7” isn't one of the options")
	assert.Contains(t, f.Fragment(), "probe=laser", "what is not understood is kept")
	f.Set("tool", 0, "")
	assert.InDelta(t, 564.335664, f.Report().Answer.Value, 1e-6)
}

func TestLongLinksAreCutInWords(t *testing.T) {
	f := calctest.Load(t, "measure", heron+"&line="+strings.Repeat("x", link.MostLink))
	assert.Contains(t, problems(f), "The link is longer than 4000 characters; the rest wasn't read.")
	assert.InDelta(t, 564.335664, f.Report().Answer.Value, 1e-6, "what came before is")
}
