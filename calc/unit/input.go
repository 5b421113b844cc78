package unit

import "strings"

// An Input is one entry of a sheet: a quantity that may or may not be given.
// It is a flag.Value: text in, text out.
type Input[T Quantity] struct {
	Value  T // in the base unit; 0 while not given
	Given  bool
	kind   Kind[T]
	bare   Unit
	within Range[T]
}

// Input returns an entry that is not given yet. A bare number is read in the
// unit bare; a value must lie from least to most, both in the base unit.
func (k Kind[T]) Input(bare string, least, most T) Input[T] {
	return Input[T]{kind: k, bare: k.unit(bare), within: Range[T]{least, most}}
}

// Set reads text. Empty text makes the entry not given. A text that is refused
// does so too, and the error is an *Error.
func (in *Input[T]) Set(text string) error {
	in.Value, in.Given = 0, false
	if strings.TrimSpace(text) == "" {
		return nil
	}
	v, _, err := in.kind.read(text, in.bare, in.within)
	if err != nil {
		return err
	}
	in.Value, in.Given = v, true
	return nil
}

// String returns a text that reads back to the same value, empty if the entry
// is not given.
func (in *Input[T]) String() string {
	if !in.Given {
		return ""
	}
	return in.kind.Text(in.Value)
}

// Plain returns text as it was typed, but with the point as decimal mark and
// without grouping. What cannot be read is returned as it is.
func (in *Input[T]) Plain(text string) string {
	if strings.TrimSpace(text) == "" {
		return ""
	}
	if _, plain, err := in.kind.read(text, in.bare, in.within); err == nil {
		return plain
	}
	return text
}

// Unit returns the symbol of the unit that a bare number is read in.
func (in *Input[T]) Unit() string { return in.bare.Symbol }

// About says what the entry takes: "a length, 0.1 to 10000 mm".
func (in *Input[T]) About() string {
	return in.kind.Noun + ", " + in.within.text(in.kind, in.bare)
}

// Numeric reports whether digits and a decimal mark are enough to type it.
func (in *Input[T]) Numeric() bool { return !in.kind.Colon }
