package squeeze

const (
	minMatch = 3
	maxMatch = 258
	window   = 1 << 15 // how far back a match may lie
	mostSeen = 1024    // earlier places looked at for each position
)

// match is a piece that was there before: how long, and how far back.
type match struct{ length, back uint16 }

// matches are those of every position of a chunk: longer and longer ones, each the
// nearest of its length.
type matches struct {
	all   []match
	first []int // by position, where in all its own begin
}

func (m *matches) at(position int) []match { return m.all[m.first[position]:m.first[position+1]] }

// findMatches looks for the matches of content[from:to] in all before.
func findMatches(content []byte, from, to int) *matches {
	const hashes = 1 << 16
	latest := make([]int32, hashes) // position + 1
	before := make([]int32, window) // the one before with the same hash
	m := &matches{first: make([]int, 0, to-from+1)}
	for i := max(0, from-window); i < to; i++ {
		if i >= from {
			m.first = append(m.first, len(m.all))
		}
		if i+minMatch > to {
			continue
		}
		hash := (uint32(content[i])<<16 | uint32(content[i+1])<<8 | uint32(content[i+2])) * 0x9e3779b1 >> 16
		candidate := int(latest[hash]) - 1
		latest[hash] = int32(i + 1)
		before[i%window] = int32(candidate + 1)
		if i < from {
			continue
		}
		longest, most := minMatch-1, min(maxMatch, to-i)
		for seen := 0; candidate >= 0 && i-candidate <= window && seen < mostSeen && longest < most; seen++ {
			if content[candidate+longest] == content[i+longest] {
				n := 0
				for n < most && content[candidate+n] == content[i+n] {
					n++
				}
				if n > longest {
					longest = n
					m.all = append(m.all, match{uint16(n), uint16(i - candidate)})
				}
			}
			next := int(before[candidate%window]) - 1
			if next >= candidate {
				break // overwritten since
			}
			candidate = next
		}
	}
	m.first = append(m.first, len(m.all))
	return m
}
