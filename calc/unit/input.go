package unit

import "strings"

// An Input is one entry of a sheet: a quantity that may or may not be given.
// It is a flag.Value: text in, text out.
type Input[T Quantity] struct {
	Value T // in the base unit; 0 while not given
	Given bool
	takes *limit
}

// Input returns an entry that is not given yet. A bare number is read in the
// unit bare; a value must lie from least to most, both in the base unit. It
// panics if the kind has no such unit: a bug of the caller.
func (k *Kind[T]) Input(bare string, least, most T) Input[T] {
	return Input[T]{takes: (*writing)(k).limit(bare, float64(least), float64(most))}
}

func (w *writing) limit(bare string, least, most float64) *limit {
	u := w.spelled(bare)
	if u == nil {
		panic("unit: " + w.Noun + " has no unit " + bare)
	}
	return &limit{w, u, least, most}
}

// Set reads text. Empty text makes the entry not given. A text that is refused
// does so too, and the error is an *Error.
func (in *Input[T]) Set(text string) error {
	v, given, err := in.takes.set(text)
	in.Value, in.Given = T(v), given
	return err
}

func (l *limit) set(text string) (v float64, given bool, err error) {
	if strings.TrimSpace(text) == "" {
		return 0, false, nil
	}
	v, _, err = l.read(text)
	return v, err == nil, err
}

// String returns a text that reads back to the same value, empty if the entry
// is not given.
func (in *Input[T]) String() string {
	if !in.Given {
		return ""
	}
	return in.takes.text(float64(in.Value))
}

// Plain returns text as it was typed, but with the point as decimal mark and
// without grouping. What cannot be read is returned as it is.
func (in *Input[T]) Plain(text string) string { return in.takes.plain(text) }

func (l *limit) plain(text string) string {
	if strings.TrimSpace(text) == "" {
		return ""
	}
	if _, plain, err := l.read(text); err == nil {
		return plain
	}
	return text
}

// Unit returns the symbol of the unit that a bare number is read in.
func (in *Input[T]) Unit() string { return in.takes.bare.Symbol }

// About says what the entry takes: "a length, 0.1 to 10000 mm".
func (in *Input[T]) About() string { return in.takes.about() }

func (l *limit) about() string { return l.Noun + ", " + l.ends(l.bare) }

// Numeric reports whether digits and a decimal mark are enough to type it.
func (in *Input[T]) Numeric() bool { return !in.takes.Colon }
