package unit

import (
	"math"
	"strings"
)

// An Input is one entry of a sheet: a quantity that may or may not be given.
// Its fields are those of an Entry, which reads and writes it as text.
type Input[T Quantity] Entry

// Value is in the base unit; 0 while not given.
func (in *Input[T]) Value() T { return T(in.Number) }

// Entry is what reads and writes the input.
func (in *Input[T]) Entry() *Entry { return (*Entry)(in) }

// Text is what the entry writes; see Entry.String.
func (in *Input[T]) Text() string { return in.Entry().String() }

// Bare returns the value as a number alone, empty if it is not given.
func (in *Input[T]) Bare() string { return in.Entry().Bare() }

// An Entry is what there is to every Input, whatever its quantity. It is a
// flag.Value: text in, text out. That it is all in one type keeps code for
// each quantity out of the program.
type Entry struct {
	_      Uncompared
	Number float64 // the value, without its type
	Given  bool
	takes  *limit
	typed  string // what Number was read from
	plain  string // Plain of that
}

// Uncompared, as a field without a name, says that nobody compares the values of
// a type: the compiler then writes no code that does. It takes no room.
type Uncompared [0]func()

// Input returns an entry that is not given yet. A bare number is read in the
// unit bare; a value must lie from least to most, both in the base unit. It
// panics if the kind has no such unit: a bug of the caller.
func (k *Kind[T]) Input(bare string, least, most T) Input[T] {
	return Input[T]((*writing)(k).entry(bare, float64(least), float64(most)))
}

func (w *writing) entry(bare string, least, most float64) Entry {
	u := w.spelled(bare)
	if u == nil {
		panic("unit: " + w.Words.Noun + " has no unit " + bare)
	}
	return Entry{takes: &limit{w, u, least, most}}
}

// Set reads text. Empty text makes the entry not given. A text that is refused
// does so too, and the error is an *Error.
func (e *Entry) Set(text string) error {
	e.Number, e.Given, e.typed, e.plain = 0, false, "", ""
	if strings.TrimSpace(text) == "" {
		return nil
	}
	v, plain, err := e.takes.read(text)
	if err != nil {
		return err
	}
	e.Number, e.Given, e.typed, e.plain = v, true, text, plain
	return nil
}

// String returns a text that reads back to the same value, empty if the entry
// is not given.
func (e *Entry) String() string {
	if !e.Given {
		return ""
	}
	return e.takes.text(e.Number)
}

// Bare returns the value as a number alone, empty if the entry is not given.
func (e *Entry) Bare() string {
	if !e.Given {
		return ""
	}
	return Full(e.Number)
}

// Plain returns text as it was typed, but with the point as decimal mark and
// without grouping. What cannot be read is returned as it is.
func (e *Entry) Plain(text string) string {
	if e.Given && text == e.typed {
		return e.plain
	}
	if strings.TrimSpace(text) == "" {
		return ""
	}
	if _, plain, err := e.takes.read(text); err == nil {
		return plain
	}
	return text
}

// Unit returns the symbol of the unit that a bare number is read in.
func (e *Entry) Unit() string { return e.takes.bare.Symbol }

// About says what the entry takes: "a length, 0.1 to 10000 mm".
func (e *Entry) About() string {
	says, ends := e.takes.ends(e.takes.bare, &about)
	return says.Fill(append(ends, "kind", e.takes.Words.Noun)...)
}

// Typed returns what the value was read from, as Plain has it.
func (e *Entry) Typed() string { return e.plain }

// Numeric reports whether digits and a decimal mark are enough to type what
// people have to type: not a ratio, and not what is marked in one of several units.
func (e *Entry) Numeric() bool {
	for i := range e.takes.Units {
		if e.takes.Units[i].Before != nil {
			return false
		}
	}
	return !e.takes.Colon
}

// Grid returns what one in the last decimal stands for, in the base unit: readings of 28.7 and
// 3.9 in are known to lie on lines 0.1 mm and 2.54 mm apart. Zeros at the end do not count. It
// is 0 where nothing is given, and of fractions.
func (e *Entry) Grid() float64 {
	digits, rest := "", strings.TrimLeft(e.plain, "+-−")
	for i, r := range rest + " " {
		if (r < '0' || r > '9') && r != '.' {
			digits, rest = rest[:i], rest[i:]
			break
		}
	}
	v, ok := parse(digits)
	if !ok || v == 0 || strings.ContainsAny(rest, "/:0123456789") {
		return 0
	}
	_, decimals, _ := strings.Cut(digits, ".")
	return math.Abs(e.Number) / v * math.Pow10(-len(strings.TrimRight(decimals, "0")))
}
