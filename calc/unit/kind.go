package unit

import (
	"math"
	"strconv"
	"strings"

	"striderule/calc/word"
)

// A Unit is one way to write a quantity. A value in it is worth
// value*Times/Over in the base unit, or Times/(value*Over) where Inverse is set.
type Unit struct {
	Symbol  string   // "mm"; what texts are written with
	Also    []string // further spellings, lower case and without spaces
	Before  []string // spellings that may stand before the number, likewise
	Times   float64  // exact; 0 stands for 1
	Over    float64  // exact; 0 stands for 1
	Inverse bool     // 200 steps per turn are 360/200 degrees a step

	// A bare number in it that is less than Least or, where there is one, more than Most was
	// probably meant in the unit Rather: Asks asks.
	Least, Most float64
	Rather      string
	Asks        word.Template
}

func orOne(f float64) float64 {
	if f == 0 {
		return 1
	}
	return f
}

func (u *Unit) toBase(v float64) float64 {
	if u.Inverse {
		return orOne(u.Times) / (v * orOne(u.Over))
	}
	return v * orOne(u.Times) / orOne(u.Over)
}

// FromBase returns what v, in the base unit, is in this one.
func (u *Unit) FromBase(v float64) float64 {
	if u.Inverse {
		return orOne(u.Times) / (v * orOne(u.Over))
	}
	return v * orOne(u.Over) / orOne(u.Times)
}

func (u *Unit) spelled(s string) bool {
	if s == fold(u.Symbol) {
		return true
	}
	for _, a := range u.Also {
		if a == s {
			return true
		}
	}
	return false
}

// lookalikes are other characters, and words, for what units are made of.
var lookalikes = []string{perWord, "/", "º", "°", "˚", "°", "μ", "µ", "”", `"`, "″", `"`}

// Replaced returns a text with some pieces replaced: at each place the first one
// that is there. pairs are what to look for, and what to put in its place.
func Replaced(text string, pairs ...string) string {
	var b strings.Builder
	for text != "" {
		old, put := text[:1], text[:1]
		for i := 0; i < len(pairs); i += 2 {
			if strings.HasPrefix(text, pairs[i]) {
				old, put = pairs[i], pairs[i+1]
				break
			}
		}
		b.WriteString(put)
		text = text[len(old):]
	}
	return b.String()
}

// fold brings a typed unit into the form that the tables are kept in.
func fold(s string) string {
	s = strings.ToLower(strings.TrimSpace(s))
	s = Replaced(s, lookalikes...)
	s = strings.Join(strings.Fields(s), "")
	return strings.TrimSuffix(s, ".")
}

// A Quantity is a named number in its base unit.
type Quantity interface{ ~float64 | ~int }

// A Kind is one quantity as people write it: its words and its units, the base
// unit first. T only says what holds the values.
type Kind[T Quantity] writing

// writing is what there is to every Kind, whatever holds its values.
type writing struct {
	Words *Words
	Units []Unit
	Whole bool // counts: no fractions
	// Reciprocal reads a value below one as its reciprocal:
	// drivers are labelled 1/16 where they make 16 microsteps.
	Reciprocal bool
	// Colon reads "54:12", and "12 → 54", as 54/12.
	Colon bool
	// Chosen says that a form offers the units beside the number.
	Chosen bool
}

// spelled returns the unit that a text spells, nil if there is none.
func (w *writing) spelled(text string) *Unit {
	text = fold(text)
	for i := range w.Units {
		if w.Units[i].spelled(text) {
			return &w.Units[i]
		}
	}
	return nil
}

// Text writes v in the base unit with as many digits as it takes to read back
// the same value.
func (k *Kind[T]) Text(v T) string { return (*writing)(k).text(float64(v)) }

func (w *writing) text(v float64) string { return withSymbol(shortest(v), w.Units[0].Symbol) }

func withSymbol(number, symbol string) string {
	if symbol == "" || symbol == "°" || symbol == "%" || symbol == "‰" {
		return number + symbol
	}
	return number + " " + symbol
}

// shortest returns the fewest digits that read back to v, without an exponent
// where a person would not use one.
func shortest(v float64) string {
	if a := math.Abs(v); a != 0 && (a < 1e-6 || a >= 1e15) {
		return strconv.FormatFloat(v, 'e', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// A limit is what an entry takes: one quantity, with the unit of a bare number
// and the least and the most that it may be, both included.
type limit struct {
	*writing
	bare        *Unit
	least, most float64
}

// read turns text into a value in the base unit and the text with the point
// as decimal mark. A bare number is in the unit bare. Where "1,000" can be two
// numbers, the one inside the range is meant; both inside is an error.
func (l *limit) read(text string) (float64, string, error) {
	typed := text
	refuse := func(cause error, problem, advice word.Template, parts ...string) (float64, string, error) {
		return 0, "", &Error{Text: typed, Problem: problem, Advice: advice, Parts: parts, Cause: cause}
	}
	if l.Colon {
		text = turned(text)
	}
	before, u, source := l.before(text)
	if l.Colon {
		source = strings.ReplaceAll(source, ":", "/")
	}
	n, ok := readNumber(source)
	if !ok {
		return refuse(ErrNumber, notNumber, l.Words.Like)
	}
	if l.Colon && strings.Contains(text, ":") {
		if strings.Contains(n.plain, " ") { // "5 4:12" is no mixed number: 54:12 was meant
			return refuse(ErrNumber, notNumber, l.Words.Like)
		}
		n.plain = strings.Replace(n.plain, "/", ":", 1)
	}
	if n.unit != "" {
		behind := l.spelled(n.unit)
		if behind == nil || before != "" && behind != u { // "DP 24 mm"
			unit := strings.TrimSpace(text)
			unit = unit[max(0, len(unit)-len(n.unit)):] // with its colons
			return refuse(ErrUnit, notUnit, l.Words.Like, "unit", word.Clip(unit, mostUnit))
		}
		u = behind
	}
	value, inside := l.value(n.value, u)
	plain := before + n.plain + n.gap + n.unit
	if other, otherInside := l.value(n.thousands, u); otherInside && l.counts(other) {
		grouped := before + shortest(n.thousands) + n.gap + n.unit
		if inside && l.counts(value) {
			return refuse(ErrAmbiguous, twoWays, "", "decimal", plain, "thousands", grouped)
		}
		value, inside, plain = other, true, grouped
	}
	if !inside {
		problem, ends := l.ends(u, &outside)
		return refuse(ErrRange, problem, "", ends...)
	}
	if !l.counts(value) {
		return refuse(ErrWhole, notWhole, l.Words.Like)
	}
	return value, plain, nil
}

// turned writes a pair of teeth as the ratio that it makes: 12 → 54, the motor's side first,
// is 54:12.
func turned(pair string) string {
	driving, driven, ok := strings.Cut(Replaced(pair, "->", "→"), "→")
	if !ok {
		return pair
	}
	return strings.TrimSpace(driven) + ":" + strings.TrimSpace(driving)
}

// before takes off what a text spells of a unit before its number, and returns
// it, the unit of what is left, and that: "DP 24". It is the bare unit if there
// is nothing of that kind.
func (l *limit) before(text string) (spelling string, u *Unit, rest string) {
	i := strings.IndexAny(text, "0123456789")
	if i > 0 && !strings.ContainsAny(text[i-1:i], ".,+-") { // "DP.5" can be 5 or 0.5
		for k := range l.Units {
			for _, s := range l.Units[k].Before {
				if fold(text[:i]) == s {
					spelling = strings.Join(strings.Fields(text[:i]), " ")
					if strings.HasSuffix(text[:i], spelling[len(spelling)-1:]) {
						return spelling, &l.Units[k], text[i:]
					}
					return spelling + " ", &l.Units[k], text[i:]
				}
			}
		}
	}
	return "", l.bare, text
}

// counts says whether the kind can have v: things are counted in whole numbers.
func (w *writing) counts(v float64) bool { return !w.Whole || v == math.Trunc(v) }

// value converts v, given in u, and says whether it is a finite value inside
// the range.
func (l *limit) value(v float64, u *Unit) (float64, bool) {
	b := u.toBase(v)
	if l.Reciprocal && b > 0 && b < 1 {
		b = 1 / b
		if whole := math.Round(b); math.Abs(b-whole) < 1e-9*b {
			b = whole // 1/49 in binary is not quite a 49th
		}
	}
	// Finite even if the range has no end.
	return b, Finite(b) && b >= l.least && b <= l.most
}

// ends returns the sentence about the range, and its parts: the ends in the unit that was used.
func (l *limit) ends(u *Unit, says *ranged) (word.Template, []string) {
	a, b := u.FromBase(l.least), u.FromBase(l.most)
	if u.Inverse { // the least angle is the most steps
		a, b = b, a
	}
	const digits = 9 // no bound in use has more in its own unit
	switch {
	case Finite(a) && Finite(b): // the unit once
		return says.both, []string{"least", Trim(a, digits), "most", withSymbol(Trim(b, digits), u.Symbol)}
	case Finite(a):
		return says.least, []string{"least", withSymbol(Trim(a, digits), u.Symbol)}
	case Finite(b):
		return says.most, []string{"most", withSymbol(Trim(b, digits), u.Symbol)}
	}
	return says.none, nil
}
