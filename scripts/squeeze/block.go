package squeeze

import "slices"

// block is a piece of the content with a code of its own.
type block struct {
	tokens        []token
	end           int // of the content up to here
	used          *counts
	literal, back []uint8 // lengths of the codes' words
	header        header
	bits          int
}

// header says which code a block uses.
type header struct {
	literals, backs int // how many lengths are written of each
	runs            []run
	lengths         []uint8 // of the code that the runs are written in
	written         int     // how many of those are written
}

// order is that in which the lengths of the runs' code are written.
var order = [19]int{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15}

func newBlock(tokens []token, _, end int) block {
	b := block{tokens: tokens, end: end, used: count(tokens)}
	b.literal, b.back = codeLengths(b.used.literal[:], 15), codeLengths(b.used.back[:], 15)
	if !slices.ContainsFunc(b.back, func(l uint8) bool { return l > 0 }) {
		b.back[0] = 1 // some readers want one
	}
	b.header.make(b.literal, b.back)
	b.bits = b.header.bits() + b.used.extraBits()
	for s, n := range b.used.literal {
		b.bits += n * int(b.literal[s])
	}
	for s, n := range b.used.back {
		b.bits += n * int(b.back[s])
	}
	return b
}

func (h *header) make(literal, back []uint8) {
	h.literals, h.backs = len(literal), len(back)
	for h.literals > firstLength && literal[h.literals-1] == 0 {
		h.literals--
	}
	for h.backs > 1 && back[h.backs-1] == 0 {
		h.backs--
	}
	h.runs = runs(slices.Concat(literal[:h.literals], back[:h.backs]))
	var used [19]int
	for _, r := range h.runs {
		used[r.symbol]++
	}
	h.lengths = codeLengths(used[:], 7)
	h.written = len(order)
	for h.written > 4 && h.lengths[order[h.written-1]] == 0 {
		h.written--
	}
}

func (h *header) bits() int {
	n := 3 + 5 + 5 + 4 + 3*h.written
	for _, r := range h.runs {
		n += int(h.lengths[r.symbol]) + int(r.bits)
	}
	return n
}

func (b block) write(w *bitWriter, last bool) {
	h := b.header
	final := uint32(0)
	if last {
		final = 1
	}
	w.bits(final, 1)
	w.bits(2, 2) // a code of its own
	w.bits(uint32(h.literals-firstLength), 5)
	w.bits(uint32(h.backs-1), 5)
	w.bits(uint32(h.written-4), 4)
	for _, s := range order[:h.written] {
		w.bits(uint32(h.lengths[s]), 3)
	}
	words := codeWords(h.lengths)
	for _, r := range h.runs {
		w.bits(words[r.symbol], uint(h.lengths[r.symbol]))
		w.bits(uint32(r.extra), r.bits)
	}
	literal, back := codeWords(b.literal), codeWords(b.back)
	for _, t := range b.tokens {
		if t.back == 0 {
			w.bits(literal[t.length], uint(b.literal[t.length]))
			continue
		}
		s := lengthSymbol[t.length]
		w.bits(literal[s], uint(b.literal[s]))
		w.bits(uint32(t.length-lengthBase[s]), uint(lengthExtra[s]))
		d := backSymbol[t.back]
		w.bits(back[d], uint(b.back[d]))
		w.bits(uint32(t.back-backBase[d]), uint(backExtra[d]))
	}
	w.bits(literal[endOfBlock], uint(b.literal[endOfBlock]))
}
