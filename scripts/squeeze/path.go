package squeeze

import "math"

// A token is a byte as it is (back 0, length the byte) or a match.
type token match

// The symbols of RFC 1951 3.2.5: bytes, the end of a block, and the lengths; and
// the distances. Each stands for a range, told apart by extra bits.
const (
	endOfBlock  = 256
	literals    = 286
	distances   = 30
	firstLength = 257
)

var (
	lengthSymbol [maxMatch + 1]uint16
	lengthExtra  [literals]uint8
	lengthBase   [literals]uint16
	backSymbol   [window + 1]uint8
	backExtra    [distances]uint8
	backBase     [distances]uint16
)

func init() {
	length := minMatch
	for s := firstLength; s < literals; s++ {
		extra := max(0, (s-firstLength)/4-1)
		if s == literals-1 {
			length, extra = maxMatch, 0 // which has a symbol of its own
		}
		lengthBase[s], lengthExtra[s] = uint16(length), uint8(extra)
		for range 1 << extra {
			if length <= maxMatch {
				lengthSymbol[length] = uint16(s)
			}
			length++
		}
	}
	back := 1
	for s := range distances {
		extra := max(0, s/2-1)
		backBase[s], backExtra[s] = uint16(back), uint8(extra)
		for range 1 << extra {
			backSymbol[back] = uint8(s)
			back++
		}
	}
}

// counts says how often a block uses each symbol.
type counts struct {
	literal [literals]int
	back    [distances]int
}

func (c *counts) add(t token) {
	if t.back == 0 {
		c.literal[t.length]++
		return
	}
	c.literal[lengthSymbol[t.length]]++
	c.back[backSymbol[t.back]]++
}

func count(tokens []token) *counts {
	c := &counts{}
	for _, t := range tokens {
		c.add(t)
	}
	c.literal[endOfBlock]++
	return c
}

// extraBits are those that follow the symbols.
func (c *counts) extraBits() int {
	sum := 0
	for s, n := range c.literal {
		sum += n * int(lengthExtra[s])
	}
	for s, n := range c.back {
		sum += n * int(backExtra[s])
	}
	return sum
}

// prices says what each way of writing costs, in bits.
type prices struct {
	literal [256]float32
	length  [maxMatch + 1]float32
	back    [distances]float32
}

// fixedPrices are a first guess.
func fixedPrices() *prices {
	p := &prices{}
	for i := range p.literal {
		p.literal[i] = 8
	}
	for n := minMatch; n <= maxMatch; n++ {
		p.length[n] = 7 + float32(lengthExtra[lengthSymbol[n]])
	}
	for s := range p.back {
		p.back[s] = 5 + float32(backExtra[s])
	}
	return p
}

// prices are what the symbols would cost in a code made for these counts.
func (c *counts) prices() *prices {
	p := &prices{}
	literal, back := ideal(c.literal[:]), ideal(c.back[:])
	for i := range p.literal {
		p.literal[i] = float32(literal[i])
	}
	for n := minMatch; n <= maxMatch; n++ {
		s := lengthSymbol[n]
		p.length[n] = float32(literal[s]) + float32(lengthExtra[s])
	}
	for s := range p.back {
		p.back[s] = float32(back[s]) + float32(backExtra[s])
	}
	return p
}

// ideal returns the bits of each symbol by how often it comes (Shannon). One that
// does not come costs as much as one that comes once.
func ideal(counts []int) []float64 {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	bits := make([]float64, len(counts))
	all := math.Log2(float64(max(sum, 1)))
	for s, n := range counts {
		bits[s] = all - math.Log2(float64(max(n, 1)))
	}
	return bits
}

// cheapest returns the tokens by which content[from:to] costs least. The matches
// are those of the chunk that begins at start.
func cheapest(content []byte, found *matches, start, from, to int, p *prices) []token {
	size := to - from
	cost := make([]float32, size+1)
	by := make([]token, size+1) // the last token of the cheapest way to here
	for i := 1; i <= size; i++ {
		cost[i] = math.MaxFloat32
	}
	for i := range size {
		here := cost[i]
		b := content[from+i]
		if c := here + p.literal[b]; c < cost[i+1] {
			cost[i+1], by[i+1] = c, token{uint16(b), 0}
		}
		length := minMatch
		for _, m := range found.at(from + i - start) {
			base := here + p.back[backSymbol[m.back]]
			for end := min(int(m.length), size-i); length <= end; length++ {
				if c := base + p.length[length]; c < cost[i+length] {
					cost[i+length], by[i+length] = c, token{uint16(length), m.back}
				}
			}
		}
	}
	n := 0
	for i := size; i > 0; n++ {
		i -= by[i].size()
	}
	tokens := make([]token, n)
	for i := size; i > 0; {
		n--
		tokens[n] = by[i]
		i -= by[i].size()
	}
	return tokens
}

// size is how many bytes the token stands for.
func (t token) size() int {
	if t.back == 0 {
		return 1
	}
	return int(t.length)
}
