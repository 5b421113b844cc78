package main

import (
	"bytes"
	"sort"
)

// An edit puts a text in place of a piece of a file; most pieces are empty.
type edit struct {
	from, to int
	text     string
	after    bool // it closes what ends here, so it comes before what begins here
	order    int
}

// edits are made all at once. What begins first in the tree of the file is given
// first by opening, and last by closing.
type edits struct{ all []edit }

func (e *edits) open(at int, text string) {
	e.all = append(e.all, edit{from: at, to: at, text: text, order: len(e.all)})
}

func (e *edits) close(at int, text string) {
	e.all = append(e.all, edit{from: at, to: at, text: text, after: true, order: len(e.all)})
}

func (e *edits) replace(from, to int, text string) {
	e.all = append(e.all, edit{from: from, to: to, text: text, order: len(e.all)})
}

// apply returns the text with all edits made. Lines stay lines: no edit holds a newline.
func (e *edits) apply(text []byte) []byte {
	sort.SliceStable(e.all, func(i, j int) bool {
		a, b := e.all[i], e.all[j]
		if a.from != b.from {
			return a.from < b.from
		}
		if a.after != b.after {
			return a.after
		}
		return a.order < b.order
	})
	var out bytes.Buffer
	at := 0
	for _, edit := range e.all {
		out.Write(text[at:edit.from])
		out.WriteString(edit.text)
		at = edit.to
	}
	out.Write(text[at:])
	return out.Bytes()
}
