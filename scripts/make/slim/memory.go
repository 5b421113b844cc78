package slim

import (
	"errors"
	"fmt"
)

// leastGap is how many zeros end a data segment. Go's linker ends one after a
// few: that saves zeros, which compress to nothing, by addresses, which do not.
const leastGap = 256 // bytes

// memory returns the memory as it is when the program starts.
func (m *module) memory() ([]byte, error) {
	body, err := m.body(dataSection)
	if err != nil {
		return nil, err
	}
	var mem []byte
	r := reader{b: body}
	for n := r.uint(); n > 0 && r.err == nil; n-- {
		if flags := r.byte(); flags != 0 {
			return nil, fmt.Errorf("a segment is of kind %d, not 0", flags)
		}
		if op := r.byte(); op != opI32Const {
			return nil, errors.New("a segment's address is no constant")
		}
		from := int(r.int())
		if op := r.byte(); op != opEnd {
			return nil, errors.New("a segment's address is computed")
		}
		data := r.bytes(int(r.uint()))
		if from < 0 || from > 1<<30 {
			return nil, fmt.Errorf("a segment begins at %d", from)
		}
		if to := from + len(data); to > len(mem) {
			mem = append(mem, make([]byte, to-len(mem))...)
		}
		copy(mem[from:], data)
	}
	return mem, r.err
}

// setMemory writes the memory at the start as data segments.
func (m *module) setMemory(mem []byte) {
	var segments []byte
	n := uint64(0)
	for at := 0; at < len(mem); {
		from := at
		for from < len(mem) && mem[from] == 0 {
			from++
		}
		to := from // behind the last byte that is not zero
		for at = from; at < len(mem) && at-to < leastGap; at++ {
			if mem[at] != 0 {
				to = at + 1
			}
		}
		if to == from {
			break
		}
		segments = append(segments, 0, opI32Const)
		segments = appendInt(segments, int64(from))
		segments = append(segments, opEnd)
		segments = appendUint(segments, uint64(to-from))
		segments = append(segments, mem[from:to]...)
		n++
	}
	m.set(dataSection, append(appendUint(nil, n), segments...))
}
