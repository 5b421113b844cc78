package squeeze

// rounds is how often a block is worked out anew with the prices of the round
// before. More give next to nothing.
const rounds = 4

// blocksOf returns the blocks of a chunk.
func blocksOf(content []byte, from, to int) []block {
	found := findMatches(content, from, to)
	tokens := cheapest(content, found, from, from, to, fixedPrices())
	for range 2 {
		tokens = cheapest(content, found, from, from, to, count(tokens).prices())
	}
	var blocks []block
	// Twice: where a block best ends depends on what is in it.
	for range 2 {
		blocks = blocks[:0]
		start := from
		for _, part := range split(tokens) {
			end := start
			for _, t := range part {
				end += t.size()
			}
			blocks = append(blocks, best(content, found, from, start, end, part))
			start = end
		}
		tokens = nil
		for _, b := range blocks {
			tokens = append(tokens, b.tokens...)
		}
	}
	return blocks
}

// best makes a block as small as the rounds get it.
func best(content []byte, found *matches, start, from, to int, tokens []token) block {
	b := newBlock(tokens, from, to)
	last := b
	for range rounds {
		last = newBlock(cheapest(content, found, start, from, to, last.used.prices()), from, to)
		if last.bits < b.bits {
			b = last
		}
	}
	return b
}

// step is how many tokens lie between the places where a block may end.
const step = 256

// split cuts tokens into blocks, each of which has a code of its own: that pays
// where it saves more than the code takes.
func split(tokens []token) [][]token {
	sums := []counts{{}} // of all tokens before
	running := counts{}
	for i, t := range tokens {
		running.add(t)
		if (i+1)%step == 0 || i+1 == len(tokens) {
			sums = append(sums, running)
		}
	}
	var ends []int
	var cut func(from, to int, whole float64)
	cut = func(from, to int, whole float64) {
		at, least, left, right := 0, whole, 0.0, 0.0
		for i := from + 1; i < to; i++ {
			l, r := roughly(&sums[from], &sums[i]), roughly(&sums[i], &sums[to])
			if l+r < least {
				at, least, left, right = i, l+r, l, r
			}
		}
		if at == 0 {
			ends = append(ends, min(to*step, len(tokens)))
			return
		}
		cut(from, at, left)
		cut(at, to, right)
	}
	last := len(sums) - 1
	cut(0, last, roughly(&sums[0], &sums[last]))
	var parts [][]token
	start := 0
	for _, end := range ends {
		parts = append(parts, tokens[start:end])
		start = end
	}
	return parts
}

// roughly is about how many bits a block takes of the tokens between two sums.
func roughly(before, after *counts) float64 {
	var c counts
	used := 0
	for s := range c.literal {
		if c.literal[s] = after.literal[s] - before.literal[s]; c.literal[s] > 0 {
			used++
		}
	}
	for s := range c.back {
		if c.back[s] = after.back[s] - before.back[s]; c.back[s] > 0 {
			used++
		}
	}
	bits := 70 + 3.2*float64(used) + float64(c.extraBits())
	for s, price := range ideal(c.literal[:]) {
		bits += price * float64(c.literal[s])
	}
	for s, price := range ideal(c.back[:]) {
		bits += price * float64(c.back[s])
	}
	return bits
}
