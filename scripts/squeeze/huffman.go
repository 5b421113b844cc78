package squeeze

import (
	"cmp"
	"math/bits"
	"slices"
)

// codeLengths returns the bits of each symbol in the shortest code whose words
// have at most limit bits (package-merge; Larmore and Hirschberg 1990). RFC 1951
// wants a word for a single symbol too.
func codeLengths(counts []int, limit int) []uint8 {
	type pack struct {
		weight  int
		symbols []int
	}
	lengths := make([]uint8, len(counts))
	var leaves []pack
	for s, n := range counts {
		if n > 0 {
			leaves = append(leaves, pack{n, []int{s}})
		}
	}
	if len(leaves) <= 2 {
		for _, l := range leaves {
			lengths[l.symbols[0]] = 1
		}
		return lengths
	}
	byWeight := func(a, b pack) int { return cmp.Compare(a.weight, b.weight) }
	slices.SortStableFunc(leaves, byWeight)
	level := leaves
	for range limit - 1 {
		var pairs []pack
		for i := 0; i+1 < len(level); i += 2 {
			pairs = append(pairs, pack{level[i].weight + level[i+1].weight, slices.Concat(level[i].symbols, level[i+1].symbols)})
		}
		level = append(pairs, leaves...)
		slices.SortStableFunc(level, byWeight)
	}
	for _, p := range level[:2*len(leaves)-2] {
		for _, s := range p.symbols {
			lengths[s]++
		}
	}
	return lengths
}

// codeWords returns the words of the code with these lengths (RFC 1951 3.2.2),
// first bit lowest, as the bits are packed.
func codeWords(lengths []uint8) []uint32 {
	words := make([]uint32, len(lengths))
	next := uint32(0)
	for n := uint8(1); n <= 15; n++ {
		for s, l := range lengths {
			if l == n {
				words[s] = bits.Reverse32(next) >> (32 - n)
				next++
			}
		}
		next <<= 1
	}
	return words
}

// run is a symbol of the code that the lengths are written in: a length, or 16 to
// 18 for repeated ones, with extra bits for how often.
type run struct {
	symbol, extra uint8
	bits          uint
}

// runs writes lengths down (RFC 1951 3.2.7).
func runs(lengths []uint8) []run {
	var out []run
	for i := 0; i < len(lengths); {
		l := lengths[i]
		n := 1
		for i+n < len(lengths) && lengths[i+n] == l {
			n++
		}
		i += n
		if l == 0 {
			for ; n >= 11; n -= min(n, 138) {
				out = append(out, run{18, uint8(min(n, 138) - 11), 7})
			}
			if n >= 3 {
				out = append(out, run{17, uint8(n - 3), 3})
				n = 0
			}
		} else {
			out = append(out, run{symbol: l})
			for n--; n >= 3; {
				take := min(n, 6)
				if n == 7 || n == 8 {
					take = n - n/2 // two short ones rather than one and single lengths
				}
				if take < 3 {
					break
				}
				out = append(out, run{16, uint8(take - 3), 2})
				n -= take
			}
		}
		for range n {
			out = append(out, run{symbol: l})
		}
	}
	return out
}
