package unit

import (
	"math"
	"strconv"
	"strings"
)

// A Unit is one way to write a quantity. A value in it is worth
// value*Times/Over in the base unit, or Times/value where Inverse is set.
type Unit struct {
	Symbol  string   // "mm"; what texts are written with
	Also    []string // further spellings, lower case and without spaces
	Times   float64  // exact; 0 stands for 1
	Over    float64  // exact; 0 stands for 1
	Inverse bool     // 200 steps per turn are 360/200 degrees a step
}

func orOne(f float64) float64 {
	if f == 0 {
		return 1
	}
	return f
}

func (u *Unit) toBase(v float64) float64 {
	if u.Inverse {
		return orOne(u.Times) / v
	}
	return v * orOne(u.Times) / orOne(u.Over)
}

// FromBase returns what v, in the base unit, is in this one.
func (u *Unit) FromBase(v float64) float64 {
	if u.Inverse {
		return orOne(u.Times) / v
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
var lookalikes = []string{" per ", "/", "º", "°", "˚", "°", "μ", "µ", "”", `"`, "″", `"`}

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

// A Kind is one quantity as people write it: its noun, an example, and its
// units, the base unit first. T only says what holds the values.
type Kind[T Quantity] writing

// writing is what there is to every Kind, whatever holds its values.
type writing struct {
	Noun    string // with its article: "a length"
	Example string // "80 mm"
	Units   []Unit
	Whole   bool // counts: no fractions
	// Reciprocal reads a value below one as its reciprocal:
	// drivers are labelled 1/16 where they make 16 microsteps.
	Reciprocal bool
	// Colon reads "54:12" as 54/12.
	Colon bool
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
	if symbol == "" || symbol == "°" {
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
	refuse := func(cause error, problem, advice string) (float64, string, error) {
		return 0, "", &Error{Text: text, Problem: problem, Advice: advice, Cause: cause}
	}
	looks := l.Noun + " looks like " + l.Example
	source := text
	if l.Colon {
		source = strings.ReplaceAll(text, ":", "/")
	}
	n, ok := readNumber(source)
	if !ok {
		return refuse(ErrNumber, "not "+l.Noun, looks)
	}
	if l.Colon && strings.Contains(text, ":") {
		n.plain = strings.Replace(n.plain, "/", ":", 1)
	}
	u := l.bare
	if n.unit != "" {
		u = l.spelled(n.unit)
		if u == nil {
			typed := strings.TrimSpace(text)
			typed = typed[max(0, len(typed)-len(n.unit)):] // with its colons
			return refuse(ErrUnit, "not "+l.Noun+" (“"+clip(typed)+"” is not a unit of it)", looks)
		}
	}
	value, inside := l.value(n.value, u)
	plain := n.plain + n.gap + n.unit
	if other, otherInside := l.value(n.thousands, u); otherInside && l.counts(other) {
		grouped := shortest(n.thousands) + n.gap + n.unit
		if inside && l.counts(value) {
			return refuse(ErrAmbiguous, "this can be read in two ways",
				"is it "+plain+" or "+grouped+"? Write "+plain+" or "+grouped)
		}
		value, inside, plain = other, true, grouped
	}
	if !inside {
		return refuse(ErrRange, l.missed(n.value), l.Noun+" here is "+l.ends(u))
	}
	if !l.counts(value) {
		return refuse(ErrWhole, "not a whole number", "write "+l.Noun+" as a whole number, like "+l.Example)
	}
	return value, plain, nil
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

// missed says in words why v is not in the range.
func (l *limit) missed(v float64) string {
	switch {
	case v < 0 && l.least >= 0:
		return "it cannot be negative here"
	case v == 0 && l.least >= 0:
		return "it cannot be zero here"
	}
	return "outside the range"
}

// ends writes the range in the unit that was used.
func (l *limit) ends(u *Unit) string {
	a, b := u.FromBase(l.least), u.FromBase(l.most)
	if u.Inverse { // the least angle is the most steps
		a, b = b, a
	}
	const digits = 9 // no bound in use has more in its own unit
	switch {
	case Finite(a) && Finite(b):
		return Trim(a, digits) + " to " + withSymbol(Trim(b, digits), u.Symbol)
	case Finite(a):
		return "at least " + withSymbol(Trim(a, digits), u.Symbol)
	case Finite(b):
		return "at most " + withSymbol(Trim(b, digits), u.Symbol)
	}
	return "any finite number"
}
