package calc_test

import (
	"maps"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
)

// A damage is what may happen to a link, by the luck of a draw.
type damage func(r *rand.Rand, s string) string

// somewhere is a place in a link behind its host.
func somewhere(r *rand.Rand, s string) int {
	from := strings.Index(s, "measure/") // any place does where there is no such page
	return max(from, 8) + r.IntN(len(s)-max(from, 8)+1)
}

// put puts a text into a link, at one to three places.
func put(text string) damage {
	return func(r *rand.Rand, s string) string {
		for range 1 + r.IntN(3) {
			at := inFragment(r, s)
			s = s[:at] + text + s[at:]
		}
		return s
	}
}

// inFragment is a place behind a link's mark.
func inFragment(r *rand.Rand, s string) int {
	from := strings.IndexByte(s, '#') + 1
	return from + r.IntN(len(s)-from+1)
}

// wrap breaks a link into lines, as mail does.
func wrap(with string) damage {
	return func(r *rand.Rand, s string) string {
		return strings.Join(slices.Collect(func(yield func(string) bool) {
			for chunk := range slices.Chunk([]byte(s), 60+r.IntN(20)) {
				if !yield(string(chunk)) {
					return
				}
			}
		}), with)
	}
}

func changing(old, with string) damage {
	return func(_ *rand.Rand, s string) string { return strings.ReplaceAll(s, old, with) }
}

// behindMark changes the part of a link behind its mark alone.
func behindMark(do func(r *rand.Rand, s string) string) damage {
	return func(r *rand.Rand, s string) string {
		at, fragment, found := strings.Cut(s, "#")
		if !found {
			return s
		}
		return at + "#" + do(r, fragment)
	}
}

func around(before, after string) damage {
	return func(_ *rand.Rand, s string) string { return before + s + after }
}

// escapeSome encodes some characters that need it not.
func escapeSome(r *rand.Rand, s string) string {
	var b strings.Builder
	for i := range len(s) {
		if c := s[i]; r.IntN(8) == 0 && c != '%' && (i == 0 || s[i-1] != '%') && (i < 2 || s[i-2] != '%') {
			b.WriteString("%" + string("0123456789ABCDEF"[c>>4]) + string("0123456789abcdef"[c&15]))
		} else {
			b.WriteByte(c)
		}
	}
	return b.String()
}

var damages = map[string]damage{
	"cut":          func(r *rand.Rand, s string) string { return s[:somewhere(r, s)] },
	"cut in front": func(r *rand.Rand, s string) string { return s[somewhere(r, s):] },
	"cut, dots":    func(r *rand.Rand, s string) string { return s[:somewhere(r, s)] + "…" },
	"cut, points":  func(r *rand.Rand, s string) string { return s[:somewhere(r, s)] + "..." },
	"cut, bracket": func(r *rand.Rand, s string) string { return s[:somewhere(r, s)] + ")." },
	"a piece out": func(r *rand.Rand, s string) string {
		at := inFragment(r, s)
		return s[:at] + s[min(len(s), at+1+r.IntN(9)):]
	},
	"a space":       put(" "),
	"a space, %20":  put("%20"),
	"a break":       put("\n"),
	"a break, %0A":  put("%0A"),
	"a tab":         put("\t"),
	"no-break":      put("\u00A0"),
	"no-break, %":   put("%C2%A0"),
	"zero width":    put("\u200B"),
	"zero width, %": put("%E2%80%8B"),
	"soft hyphen":   put("\u00AD"),
	"hyphen, %":     put("%C2%AD"),
	"quoted":        put("\n> "),
	"quoted, %":     put("%20%3E%20"),
	"lines":         wrap("\n"),
	"indented":      wrap("\r\n    "),
	"spaces":        wrap(" "),
	"quote":         wrap("\n> "),
	"amp":           changing("&", "&amp;"),
	"amp twice":     changing("&", "&amp;amp;"),
	"semicolons":    changing("&", ";"),
	"marks": func(r *rand.Rand, s string) string {
		return s + strings.Repeat(string([]rune(marksBehind)[r.IntN(17)]), 1+r.IntN(3))
	},
	"a sentence":   around("Look: ", " and tell me what you think."),
	"a figure":     around("", " 30 mm is what I wanted"),
	"brackets":     around("It is off (see ", ")."),
	"quotes":       around("“", "”!"),
	"Markdown":     around("[Heron](", ")"),
	"BBCode":       around("[url=", "]Heron[/url]"),
	"HTML":         around(`<a href="`, `">Heron</a>`),
	"question":     changing("#", "?"),
	"%23":          changing("#", "%23"),
	"encoded":      behindMark(func(_ *rand.Rand, s string) string { return encodeAll(s) }),
	"all encoded":  func(_ *rand.Rand, s string) string { return encodeAll(s) },
	"some encoded": behindMark(escapeSome),
	"twice":        changing("%", "%25"),
	"lower escapes": behindMark(func(_ *rand.Rand, s string) string {
		return strings.NewReplacer("%7B", "%7b", "%7D", "%7d", "%2C", "%2c").Replace(s)
	}),
	"decoded": behindMark(func(_ *rand.Rand, s string) string {
		return strings.NewReplacer("%20", " ", "%7B", "{", "%7D", "}", "%22", `"`).Replace(s)
	}),
	"plus":        changing("%20", "+"),
	"commas, %":   changing(",", "%2C"),
	"decimals":    behindMark(func(_ *rand.Rand, s string) string { return strings.ReplaceAll(s, ".", ",") }),
	"a decimal":   behindMark(func(r *rand.Rand, s string) string { return replaceOne(r, s, ".", ",") }),
	"a comma":     behindMark(func(r *rand.Rand, s string) string { return replaceOne(r, s, ",", ".") }),
	"wide":        func(_ *rand.Rand, s string) string { return wide(s) },
	"wide digits": behindMark(func(_ *rand.Rand, s string) string { return encodeHigh(wideDigits(s)) }),
	"dashes":      behindMark(func(_ *rand.Rand, s string) string { return strings.ReplaceAll(s, "-", "–") }),
	"micro":       changing("&micro", "µ"),
	"capitals":    behindMark(func(_ *rand.Rand, s string) string { return strings.ToUpper(s) }),
	"small":       behindMark(func(_ *rand.Rand, s string) string { return strings.ToLower(s) }),
	"a digit":     behindMark(func(r *rand.Rand, s string) string { at := r.IntN(len(s)); return s[:at] + "7" + s[min(at+1, len(s)):] }),
	"twice there": func(_ *rand.Rand, s string) string { return s + s },
}

// replaceOne replaces one of the places of a text.
func replaceOne(r *rand.Rand, s, old, with string) string {
	parts := strings.Split(s, old)
	if len(parts) == 1 {
		return s
	}
	at := 1 + r.IntN(len(parts)-1)
	return strings.Join(parts[:at], old) + with + strings.Join(parts[at:], old)
}

// An end is what became of a damaged link.
type end int

const (
	endSame    end = iota // no damage: the link says what it said
	endMended             // the same entries and figures, and it is said that something was done
	endTold               // other entries, and it is told that they are not those that were sent
	endRefused            // no link, or nothing in it
	endSilent             // other entries or figures without a word
)

var endNames = [...]string{"no harm", "mended and said", "doubted", "refused", "silent"}

// endOf opens a damaged link.
func endOf(was *form.Form, damaged string) (end, *form.Form) {
	slug, fragment, said, ok := calc.ReadAddress(damaged)
	if !ok || slug != was.Page.Slug {
		return endRefused, nil
	}
	is := calc.Load(was.Page, fragment)
	is.Mended(said)
	check, _ := is.Check()
	told := check >= form.Differs && check != form.Reworked || problems(is) != problems(was)
	same := is.Fragment() == was.Fragment() && sameFigures(was, is)
	switch {
	case is.Fragment() == "" && !told:
		return endRefused, is
	case same && !told:
		return endSame, is
	case same && strings.Contains(problems(is), "has been repaired"):
		return endMended, is
	case told:
		return endTold, is
	}
	return endSilent, is
}

// entriesOf are a link's pieces less its version and the sender's result: that may have been
// damaged in what it says of its edition.
func entriesOf(fragment string) []link.Piece {
	return slices.DeleteFunc(link.Split(fragment), func(p link.Piece) bool { return p.Key == "v" || p.Key == link.ClaimKey })
}

func sameFigures(a, b *form.Form) bool {
	x, y := a.Report().Figures(), b.Report().Figures()
	if len(x) != len(y) {
		return false
	}
	for i := range x {
		if x[i].ID != y[i].ID || x[i].Value != y[i].Value || x[i].U != y[i].U {
			return false
		}
	}
	return true
}

// sharedNow are fifty sheets with a result, from all pages, as links of today carry them.
func sharedNow(t *testing.T) []*form.Form {
	t.Helper()
	var all []*form.Form
	for _, p := range calc.Pages {
		for _, l := range links(t)[p.Slug] {
			if f := calc.Load(p, calc.Load(p, l.fragment).ShareFragment()); f.Report().Answer != nil && len(f.Problems()) == 0 {
				all = append(all, f)
			}
		}
	}
	require.Greater(t, len(all), 50)
	var some []*form.Form
	for i := range 50 {
		some = append(some, all[i*len(all)/50])
	}
	return some
}

// Ten thousand damages of fifty links, one or two at a time: the figures that were sent, and it
// is said; or a reason why not. Never other figures without a word. The short tests have a
// tenth of them.
func TestTenThousandDamages(t *testing.T) {
	many := 1000
	if os.Getenv("STRIDERULE_FULL") != "" {
		many = 10_000
	}
	const seed = 22
	r := rand.New(rand.NewPCG(seed, 2026))
	names := slices.Sorted(maps.Keys(damages))
	sheets := sharedNow(t)
	counts := map[string]map[end]int{}
	total := map[end]int{}
	for i := range many {
		was := sheets[r.IntN(len(sheets))]
		sent := "https://club.example/tools/" + was.Page.Slug + "/#" + was.ShareFragment()
		name := names[i%len(names)]
		damaged, by := damages[name](r, sent), name
		if r.IntN(4) == 0 {
			more := names[r.IntN(len(names))]
			damaged, by = damages[more](r, damaged), name+" + "+more
		}
		e, is := endOf(was, damaged)
		if e == endSilent {
			assert.Fail(t, "other figures without a word", "%s: %s\nsent %s\nread %s\n%s", by, damaged, sent, is.Fragment(), problems(is))
		}
		if e == endSame && damaged != sent {
			_, fragment, _, _ := calc.ReadAddress(damaged)
			assert.Equal(t, entriesOf(was.ShareFragment()), entriesOf(fragment), "it is no damage: %s", by)
		}
		if counts[name] == nil {
			counts[name] = map[end]int{}
		}
		counts[name][e]++
		total[e]++
	}
	for _, name := range names {
		t.Log(name, counts[name])
	}
	for e, name := range endNames {
		t.Log(name, total[end(e)])
	}
	assert.Greater(t, total[endMended], many/3, "most are undone")
}
