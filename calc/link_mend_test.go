package calc_test

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/drive"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// What is said of a link that was mended.
const (
	toldEncoded   = "The link was percent-encoded more than once."
	toldCommas    = "Commas between values had been percent-encoded."
	toldEntity    = "The code that web pages write for “&” was read as “&”."
	toldMicro     = "“µ” was read as “&micro”."
	toldBreaks    = "Line breaks were removed."
	toldInvisible = "Invisible characters were removed."
	toldWide      = "Wide letters and digits were read as plain ones."
	toldDash      = "A long dash was read as a minus."
	toldBlank     = "Special spaces were read as plain ones."
	toldSpaces    = "Spaces were removed."
)

const (
	mostText    = 8 * link.MostLink // that is looked through
	marksBehind = ".,;:!?)]}>\"'»”’…*"
)

// cutShort matches marks that a link which was cut short ends in.
var cutShort = regexp.MustCompile(`(^|,)(…|\.\.)`)

const (
	sent   = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&angle=1.8deg&micro=16"
	sentAt = "https://club.example/tools/measure/#" + sent
)

func TestMend(t *testing.T) {
	amp := func(code string) string { return strings.ReplaceAll(sent, "&", code) }
	for name, c := range map[string]struct{ text, fragment, says string }{
		"as it was":               {sent, sent, ""},
		"amp":                     {amp("&amp;"), sent, toldEntity},
		"semicolons":              {strings.ReplaceAll(sent, "&", ";"), sent, "“;” was read as “&”."},
		"amp of amp":              {amp("&amp;amp;"), sent, toldEntity},
		"number of amp":           {amp("&#38;"), sent, toldEntity},
		"amp, encoded":            {amp("%26amp%3B"), sent, toldEntity},
		"encoded":                 {encodeAll(sent), sent, toldEncoded},
		"encoded twice":           {encodeAll(encodeAll(sent)), sent, toldEncoded},
		"marks encoded":           {amp("%26"), sent, toldEncoded},
		"a full stop":             {sent + ".", sent, "“.” after the link was dropped."},
		"marks":                   {sent + ")?!…", sent, "“)?!…” after the link was dropped."},
		"a quotation mark":        {sent + "”", sent, "“”” after the link was dropped."},
		"a code behind":           {sent + "&quot;.", sent, "“&quot;.” after the link was dropped."},
		"Markdown":                {sent + "](" + sentAt + ")", sent, "after the link was dropped."},
		"BBCode":                  {sent + "[/url]", sent, "“[/url]” after the link was dropped."},
		"HTML":                    {sent + "</a>", sent, "“</a>” after the link was dropped."},
		"a line break":            {sent[:13] + "\r\n  " + sent[13:], sent, toldBreaks},
		"an encoded line break":   {sent[:13] + "%0A" + sent[13:], sent, toldBreaks},
		"spaces beside marks":     {amp(" & "), sent, toldSpaces},
		"an encoded one":          {amp("&%20"), sent, toldSpaces},
		"a space in an escape":    {"v=1&name=Heron%2 0feed", "v=1&name=Heron%20feed", toldSpaces},
		"no-break spaces":         {amp("\u00A0&"), sent, toldBlank},
		"encoded no-break spaces": {amp("&%C2%A0"), sent, toldSpaces},
		"zero width":              {sent[:13] + "\u200B" + sent[13:], sent, toldInvisible},
		"zero width in a key":     {strings.ReplaceAll(sent, "asked", "as%E2%80%8Bked"), sent, toldInvisible},
		"zero width everywhere":   {strings.NewReplacer("asked", "as%E2%80%8Bked", "28.7", "28%E2%80%8B.7").Replace(sent), sent, toldInvisible},
		"soft hyphen":             {strings.ReplaceAll(sent, "steps", "st\u00ADeps"), sent, toldInvisible},
		"wide":                    {wide(sent), sent, toldWide},
		"wide, encoded":           {encodeHigh(wide(sent)), sent, toldWide},
		"wide digits, encoded":    {encodeHigh(wideDigits(sent)), sent, toldWide},
		"a long dash":             {"v=1&tool=caliper–0.05", "v=1&tool=caliper-0.05", toldDash},
		"a minus":                 {"v=1&balance=−3", "v=1&balance=-3", toldDash},
		"micro":                   {strings.ReplaceAll(sent, "&micro", "µ"), sent, toldMicro},
		"micro, encoded":          {strings.ReplaceAll(sent, "&micro", "%C2%B5"), sent, toldMicro},
		"commas encoded":          {"v=1&rest=28.7%2C28.9&saw=steps%3A564.3", "v=1&rest=28.7,28.9&saw=steps%3A564.3", toldCommas},
		"behind the claim":        {sent + "&saw=steps:564.3%22%29", sent + "&saw=steps:564.3", "“\")” after the link was dropped."},

		"dots behind the claim": {sent + "&saw=steps:564.3…", sent + "&saw=steps:564.3", "“…” after the link was dropped."},

		// Not certain, or not mangled at all.
		"shortened in a value":       {sent[:40] + "…", sent[:40] + "…", ""},
		"shortened in a value, dots": {sent[:40] + "...", sent[:40] + "...", ""},
		"words of its own":           {"v=1&name=%E2%80%8BHeron%20%E2%80%93%20feed%EF%BC%91", "v=1&name=%E2%80%8BHeron%20%E2%80%93%20feed%EF%BC%91", ""},
		"a bracket of its own":       {"v=1&line=M92 E{value}", "v=1&line=M92 E{value}", ""},
		"a guarded end":              {"v=1&name=100%25", "v=1&name=100%25", ""},
		"an inch":                    {"v=1&asked=7.5%22", "v=1&asked=7.5%22", ""},
		"a typed list":               {"v=1&rest=28.7%2C28.9", "v=1&rest=28.7%2C28.9", ""},
		"twice encoded words":        {"v=1&name=Heron%2520feed", "v=1&name=Heron%2520feed", ""},
		"no field":                   {"amp;wat=1&%2541=2", "amp;wat=1&%2541=2", ""},
		"not our text":               {"hello world", "hello world", ""},
		"nothing":                    {"", "", ""},
	} {
		fragment, said := calc.Mend(c.text)
		assert.Equal(t, c.fragment, fragment, name)
		if c.says == "" {
			assert.Empty(t, said, name)
		} else {
			assert.Contains(t, strings.Join(said, "; "), c.says, name)
			again, more := calc.Mend(fragment)
			assert.Equal(t, fragment, again, name)
			assert.Empty(t, more, name)
		}
	}
	long := strings.Repeat("v=1&amp;", mostText)
	fragment, said := calc.Mend(long)
	assert.Equal(t, long, fragment)
	assert.Empty(t, said)
}

// What is too long is not looked through, and of a text only as much as that.
func TestMendingHasAnEnd(t *testing.T) {
	const start, end = "v=1&amp;line=", "&amp;asked=80"
	most := start + strings.Repeat("a", mostText-len(start)-len(end)) + end
	_, said := calc.Mend(most)
	assert.Equal(t, []string{toldEntity}, said)
	_, said = calc.Mend(most + "0")
	assert.Empty(t, said)

	const at = "https://club.example/measure/#v=1&asked=80"
	_, fragment, said, ok := calc.ReadAddress(at + strings.Repeat("0", mostText-len(at)))
	assert.True(t, ok)
	assert.Len(t, fragment, mostText-strings.IndexByte(at, 'v'))
	assert.Empty(t, said)
	_, fragment, said, ok = calc.ReadAddress(at + strings.Repeat("0", mostText-len(at)+1))
	assert.True(t, ok)
	assert.Len(t, fragment, mostText-strings.IndexByte(at, 'v'))
	assert.Equal(t, []string{"Only the first part of this long text was read."}, said)
}

// A space that is taken out of an escape is not said to be left.
func TestSpacesAreLeftOrTakenOut(t *testing.T) {
	for value, says := range map[string]string{
		"M9%20E% 7B": toldSpaces, "M9%20E%7 B": toldSpaces, "M9%20 E%7B": "Spaces within values were left as they are.",
	} {
		_, _, said, ok := calc.ReadAddress("https://club.example/measure/#v=1&line=" + value + "&asked=80")
		require.True(t, ok)
		assert.Equal(t, []string{says}, said, value)
	}
}

func TestMendingIsSaid(t *testing.T) {
	p, _ := calc.PageOf("measure")
	f := calc.Load(p, strings.ReplaceAll(sent, "&", "&amp;")+".")
	assert.Equal(t, calc.Load(p, sent).Report(), f.Report())
	require.Len(t, f.Problems(), 1)
	assert.Equal(t, report.Problem{Key: "link", Row: 0, Says: "The link was damaged on the way and has been repaired. " + toldEntity +
		" “.” after the link was dropped. Check the entries against what was sent."}, f.Problems()[0])
	f.Set("asked", 0, "81")
	assert.Empty(t, f.Problems(), "it was about the link that was opened")
}

// What is not certain is told where it shows as figures of another value.
func TestDoubtsAreTold(t *testing.T) {
	for fragment, says := range map[string]string{
		"v=1&rest=28%2C29":               "Remaining in run 1: “28,29” in the link was read as 28.29. Two values need a plain comma between them.",
		"v=1&rest=28.7%2C28.9":           "Remaining in run 1: “28.7,28.9” isn't a number.",
		"v=1&rest=28.7%E2%80%8B1":        "“28.7\u200b1” isn't a unit",
		"v=1&steps=%EF%BC%95":            "isn't a number",
		"v=1&tool=caliper%E2%80%930.05":  "isn't one of the options",
		"v=1&line=M92%2520E%257B1%257D":  "percent-encoded twice",
		"v=1&angle=1.8deg&amp;wat=1":     "“amp;wat”",
		"v=1&steps=538&asked=80%22%3Eok": "80\">ok",
	} {
		p, _ := calc.PageOf("measure")
		assert.Contains(t, problems(calc.Load(p, fragment)), says, fragment)
	}
	// Beside what else is wrong there.
	p, _ := calc.PageOf("plan")
	assert.Contains(t, problems(calc.Load(p, "v=1&trial=speeds&at=%2C80")), "Feed speed in row 1: “,80” in the link was read as .80")
	p, _ = calc.PageOf("convert")
	assert.Empty(t, calc.Load(p, "v=1&name=100%25,a%2Cb&steps=80,80.5").Problems(), "words may have commas and percent signs")
}

func encodeAll(s string) string { return strings.ReplaceAll(url.QueryEscape(s), "+", "%20") }

func encodeHigh(s string) string {
	var b strings.Builder
	for i := range len(s) {
		if s[i] > '~' {
			fmt.Fprintf(&b, "%%%02X", s[i])
		} else {
			b.WriteByte(s[i])
		}
	}
	return b.String()
}

func wide(s string) string {
	return strings.Map(func(r rune) rune {
		if r > ' ' && r <= '~' {
			return r - '!' + '！'
		}
		return r
	}, s)
}

func wideDigits(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r - '0' + '０'
		}
		return r
	}, s)
}

// A mangling is what happens to links. A certain one is mended; any other is
// told, unless it changes no figure.
type mangling struct {
	name    string
	certain bool
	pasted  bool // as an address with more around it
	do      func(t *rapid.T, link string) string
}

func replaced(old, with string) func(*rapid.T, string) string {
	return func(_ *rapid.T, s string) string { return strings.ReplaceAll(s, old, with) }
}

func wrapped(before, after string) func(*rapid.T, string) string {
	return func(_ *rapid.T, s string) string { return before + s + after }
}

// inserted puts a text into a link somewhere, not before its start.
func inserted(text string) func(*rapid.T, string) string {
	return func(t *rapid.T, s string) string {
		at := rapid.IntRange(strings.IndexByte(s, '#')+1, len(s)).Draw(t, "at")
		return s[:at] + text + s[at:]
	}
}

// lines breaks a link as mail does.
func lines(with string) func(*rapid.T, string) string {
	return func(t *rapid.T, s string) string {
		most := rapid.IntRange(20, 80).Draw(t, "most")
		var b strings.Builder
		for chunk := range slices.Chunk([]byte(s), most) {
			if b.Len() > 0 {
				b.WriteString(with)
			}
			b.Write(chunk)
		}
		return b.String()
	}
}

var manglings = []mangling{
	{"amp", true, false, replaced("&", "&amp;")},
	{"semicolons", true, false, func(_ *rapid.T, s string) string {
		if strings.Contains(s, ";") || !strings.Contains(s, "&") {
			return s
		}
		return strings.ReplaceAll(s, "&", ";")
	}},
	{"amp twice", true, false, replaced("&", "&amp;amp;")},
	{"number of amp", true, false, replaced("&", "&#38;")},
	{"encoded", true, false, func(_ *rapid.T, s string) string { return encodeAll(s) }},
	{"encoded twice", true, false, func(_ *rapid.T, s string) string { return encodeAll(encodeAll(s)) }},
	{"amp, encoded", true, false, func(_ *rapid.T, s string) string { return encodeAll(strings.ReplaceAll(s, "&", "&amp;")) }},
	{"lines", true, false, lines("\n")},
	{"indented lines", true, false, lines("\r\n\t ")},
	{"encoded lines", true, false, lines("%0D%0A")},
	{"spaces beside marks", true, false, replaced("&", " & ")},
	{"encoded spaces at keys", true, false, replaced("&", "&%20")},
	{"zero width", true, false, inserted("\u200B")},
	{"soft hyphen", true, false, inserted("\u00AD")},
	{"wide", true, false, func(_ *rapid.T, s string) string { return wide(s) }},
	{"wide, encoded", true, false, func(_ *rapid.T, s string) string { return encodeHigh(wide(s)) }},
	{"micro", true, false, replaced("&micro", "µ")},
	{"full stop", true, false, wrapped("", ".")},
	{"marks", true, false, func(t *rapid.T, s string) string {
		marks := rapid.StringOfN(rapid.SampledFrom([]rune(marksBehind)), 1, 4, -1).Filter(func(m string) bool {
			return !cutShort.MatchString(m) // below
		})
		return s + marks.Draw(t, "marks")
	}},

	{"shortened", false, false, func(t *rapid.T, s string) string {
		from := strings.IndexByte(s, '#') + 1
		return s[:rapid.IntRange(from, len(s)).Draw(t, "short")] + "…"
	}},
	{"encoded zero width", false, false, inserted("%E2%80%8B")},
	{"encoded no-break space", false, false, inserted("%C2%A0")},
	{"a space", false, false, inserted(" ")},
	{"percent signs encoded", false, false, replaced("%", "%25")},
	{"commas encoded", false, false, replaced(",", "%2C")},
	{"wide digits, encoded", false, false, func(_ *rapid.T, s string) string { return encodeHigh(wideDigits(s)) }},
	{"long dash, encoded", false, false, replaced("-", "%E2%80%93")},

	{"sentence", true, true, wrapped("Look: ", " and tell me what you think.")},
	{"sentence with a comma", true, true, wrapped("My figures are in ", ", the second run was odd.")},
	{"lines around", true, true, wrapped("Hello,\n\n", "\n\nThanks & bye\n")},
	{"brackets", true, true, wrapped("It is off (see ", ").")},
	{"angles", true, true, wrapped("<", ">")},
	{"quoted", true, true, wrapped("He wrote “", "”!")},
	{"Markdown", true, true, wrapped("See [Heron](", ") please")},
	{"Markdown twice", true, true, func(_ *rapid.T, s string) string { return "[" + s + "](" + s + ")" }},
	{"BBCode", true, true, wrapped("[url=", "]Heron[/url]")},
	{"bare BBCode", true, true, wrapped("[url]", "[/url]")},
	{"quoted BBCode", true, true, wrapped(`[url="`, `"]Heron[/url]`)},
	{"HTML", true, true, func(_ *rapid.T, s string) string {
		return `<a href="` + strings.ReplaceAll(s, "&", "&amp;") + `">Heron</a>`
	}},
	{"redirect", true, true, func(_ *rapid.T, s string) string { return "https://out.example/?to=" + encodeAll(s) }},

	{"hard lines, pasted", false, true, lines("\n")},
	{"a figure behind", false, true, wrapped("", " 30 mm is what I wanted")},
	{"a comma and a figure behind", false, true, wrapped("", ", 30 mm is what I wanted")},
}

// Whatever happened to a link: the sheet that was sent, and it is said; or a
// problem is told. Never other figures without a word.
func TestMangledLinks(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		rapid.Check(t, func(t *rapid.T) {
			was := drawForm(t, p)
			fragment := was.ShareFragment()
			if fragment == "" || len(fragment) > link.MostLink {
				return
			}
			untouched, said := calc.Mend(fragment)
			require.Equal(t, fragment, untouched)
			require.Empty(t, said, fragment)
			for _, m := range manglings {
				checkMangled(t, was, m, fragment)
			}
		})
	})
}

func checkMangled(t *rapid.T, was *form.Form, m mangling, fragment string) {
	text, door := m.do(t, fragment), "as an address"
	if text == fragment {
		return
	}
	var is *form.Form
	if m.pasted {
		door = "pasted"
		text = m.do(t, "https://club.example/tools/"+was.Page.Slug+"/#"+fragment)
		slug, read, said, ok := calc.ReadAddress(text)
		require.True(t, ok, text)
		require.Equal(t, was.Page.Slug, slug, text)
		is = calc.Load(was.Page, read)
		is.Mended(said)
	} else {
		is = calc.Load(was.Page, text)
	}
	if m.certain {
		require.Equal(t, was.Fragment(), is.Fragment(), "%s, %s: %s", m.name, door, text)
		require.Equal(t, was.Report(), is.Report(), text)
		require.Contains(t, problems(is), "has been repaired", text)
	} else if len(is.Problems()) == len(entryProblems(is)) && slices.Equal(entryProblems(was), entryProblems(is)) {
		requireSameFigures(t, calc.Load(was.Page, fragment), is, m.name+": "+text)
	}
}

// requireSameFigures holds two forms' entries against each other, free text
// apart: it is no figure. A screw may be written with other spaces.
func requireSameFigures(t *rapid.T, a, b *form.Form, why string) {
	for _, field := range a.Fields() {
		for row := range max(a.Rows(field), b.Rows(field)) {
			require.Equal(t, typed(a, field.Key, row), typed(b, field.Key, row), "%s: %s", field.Key, why)
		}
	}
}

func typed(f *form.Form, key string, row int) string {
	field, _ := f.Field(key)
	if row >= field.Cells.Len() || strings.TrimSpace(f.Text(key, row)) == "" {
		return ""
	}
	if isFree(field.Cells.At(row)) {
		return ""
	}
	text := field.Cells.At(row).String()
	if screw, err := drive.ParseScrew(text); err == nil { // "5/ 16 in" is 5/16 in
		return fmt.Sprint(screw)
	}
	return text
}
