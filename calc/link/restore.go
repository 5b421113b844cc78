package link

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// mostTries is how many texts are held against a sum: few enough that none of them has it
// by chance, and that it takes no time.
const mostTries = 3000

// sums returns the text of a fragment's entries, its other pieces, and the sum that it carries.
func sums(fragment string) (text string, others []Piece, sum string) {
	pieces := Split(fragment)
	for _, p := range pieces {
		if !isEntry(p) {
			others = append(others, p)
			sum = cmp.Or(sum, sumIn(p))
		}
	}
	return flat(pieces), others, sum
}

// isWhole reports whether a fragment's entries are those of its sum.
func isWhole(fragment string) bool {
	text, _, sum := sums(fragment)
	return sum != "" && sumOf(text) == sum
}

// restore takes back what changed the entries on their way, where their sum says that they
// are then as they were sent.
func restore(fragment string) (restored, says string) {
	text, others, sum := sums(fragment)
	want, err := strconv.ParseUint(sum, 36, 60)
	if err != nil || text == "" || sumOf(text) == sum {
		return fragment, ""
	}
	length := int(want >> sumBits)
	behind := text[min(length, len(text)):]
	for _, guess := range guesses {
		t := trial{sum: sum, length: length}
		if guess.try(&t, text); t.found == "" {
			continue
		}
		restored = Join(append(others, piecesOf(t.found)...))
		if !isWhole(restored) {
			break // it was made up, and by no page
		}
		if guess.says == "" {
			return restored, saysBehind(behind)
		}
		return restored, guess.says
	}
	return fragment, ""
}

// A trial looks for the text of a sum.
type trial struct {
	sum    string
	length int
	tries  int
	found  string
}

// of reports whether to look no further.
func (t *trial) of(text string) bool {
	if t.tries++; len(text) == t.length && sumOf(text) == t.sum {
		t.found = text
	}
	return t.isOver()
}

func (t *trial) isOver() bool { return t.found != "" || t.tries >= mostTries }

var guesses = [...]struct {
	says string
	try  func(t *trial, text string)
}{
	{"", func(t *trial, text string) { // something behind it, but no entry that somebody wrote
		if before := text[:min(t.length, len(text))]; !strings.Contains(text[len(before):], nextPiece) {
			t.of(before)
		}
	}},
	{mendedText, func(t *trial, text string) { t.blanks("", text) }},
	{mendedEncoding, func(t *trial, text string) {
		for range 3 {
			text = decode(text, anyByte)
			t.of(text)
		}
	}},
	{mendedCommas, func(t *trial, text string) { t.of(strings.ReplaceAll(text, ",", nextCell)) }},
	{mendedPlus, func(t *trial, text string) { t.of(strings.ReplaceAll(text, "+", " ")) }},
	{mendedText, func(t *trial, text string) { t.of(plainText(text)) }},
	{mendedDecimals, func(t *trial, text string) { t.decimals("", text) }},
}

// plainText reads what links do not have as mendCharacters does.
func plainText(text string) string {
	var b strings.Builder
	for i, r := range text {
		rest := text[i+utf8.RuneLen(r):]
		to, is := plainRune(r, rest)
		if is == notRaw || r < ' ' {
			to = string(r)
		}
		b.WriteString(to)
	}
	return b.String()
}

// blanks tries to take out what a broken or quoted line leaves: each run of blanks and of
// marks of a quote is taken out, was a single space, or is left.
func (t *trial) blanks(before, text string) bool {
	if t.isOver() || len(before)+len(text) < t.length {
		return t.isOver()
	}
	start := strings.IndexFunc(text, isPut)
	if start < 0 {
		return t.of(before + text)
	}
	rest := strings.TrimLeftFunc(text[start:], isPut)
	run := text[start : len(text)-len(rest)]
	before += text[:start]
	return t.blanks(before, rest) || run != " " && t.blanks(before+" ", rest) || t.blanks(before+run, rest)
}

// isPut reports whether a break of a line, or a quote, may have put a character into a link.
func isPut(r rune) bool {
	_, is := plainRune(r, "")
	return r == ' ' || r == '>' || r > ' ' && (is == rawInvisible || is == rawBlank)
}

// decimals tries to read commas between digits as decimal marks.
func (t *trial) decimals(before, text string) bool {
	i := strings.Index(text, nextCell)
	if t.isOver() {
		return true
	}
	if i < 0 {
		return t.of(before + text)
	}
	before += text[:i]
	text = text[i+1:]
	digits := len(text) - len(strings.TrimLeft(text, "0123456789"))
	// A number has one decimal mark: the digits behind this one go with it.
	if digits > 0 && endsInDigit(before) && t.decimals(before+"."+text[:digits], text[digits:]) {
		return true
	}
	return t.decimals(before+nextCell, text)
}

// endsInDigit reports whether a text ends in a whole number.
func endsInDigit(s string) bool {
	bare := strings.TrimRight(s, "0123456789")
	return bare != s && !strings.HasSuffix(bare, ".")
}

// Decimals reads the commas of a link's lists of whole numbers as decimal ones, two by two, and
// says so. It is a guess: without a sum, the sender's result tells whether it is right.
func Decimals(fragment string) (guess, says string) {
	pieces := Split(fragment)
	for i, p := range pieces {
		if len(p.Cells) < 2 || len(p.Cells)%2 > 0 || slices.ContainsFunc(p.Cells, func(c string) bool { return !isDigits(c) }) {
			continue
		}
		var cells []string
		for pair := range slices.Chunk(p.Cells, 2) {
			cells = append(cells, strings.Join(pair, "."))
		}
		pieces[i].Cells, says = cells, mendedDecimals
	}
	return Join(pieces), says
}
