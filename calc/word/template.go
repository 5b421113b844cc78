package word

import (
	"strconv"
	"strings"
)

// A Template is a whole sentence, title or label, with the names of its parts in braces:
// "Feed {length} at {speed}." A part is a name, a number or a quantity, never a piece of a
// sentence. All that a page says stands as such in its words.go, so that it can be read,
// bettered and translated as it is.
type Template string

// Fill puts the parts where their names stand: a name, its text, a name, its text ...
func (t Template) Fill(parts ...string) string {
	var all strings.Builder
	t.Each(func(text string) { all.WriteString(text) }, func(name string) {
		for i := 0; i+1 < len(parts); i += 2 {
			if parts[i] == name {
				all.WriteString(parts[i+1])
				return
			}
		}
		all.WriteString("{" + name + "}") // TestWords looks for parts that are not given
	})
	return all.String()
}

// Each hands over the pieces of a template in order: its text, and the names of its parts.
func (t Template) Each(text, part func(string)) {
	rest := string(t)
	for rest != "" {
		before, after, found := strings.Cut(rest, "{")
		if before != "" {
			text(before)
		}
		if !found {
			return
		}
		name, behind, _ := strings.Cut(after, "}")
		part(name)
		rest = behind
	}
}

// A Counted is a sentence about one thing, and the same about any other number of them,
// which both may have as the part {n}.
type Counted struct {
	_          [0]func() // nobody compares them: no code does
	One, Other Template
}

// Of is the sentence for so many.
func (c Counted) Of(n int) Template {
	if n == 1 {
		return c.One
	}
	return c.Other
}

// Fill is Fill of the sentence for so many, with that number as its part {n}.
func (c Counted) Fill(n int, parts ...string) string {
	return c.Of(n).Fill(append(parts, "n", strconv.Itoa(n))...)
}

// Together are whole sentences, one behind the other; empty ones are none.
func Together(sentences ...string) string {
	var b strings.Builder
	for _, s := range sentences {
		if b.Len() > 0 && s != "" {
			b.WriteByte(' ')
		}
		b.WriteString(s)
	}
	return b.String()
}
