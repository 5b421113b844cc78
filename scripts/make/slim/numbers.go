package slim

import (
	"maps"
	"slices"
)

// The compiler counts on at more places than a function can be entered at, so the
// numbers of its blocks have gaps, and a br_table with gaps compresses badly. They
// are given anew here, without gaps, in the code and in the runtime's tables alike.

// numbering are a function's new numbers, and its values by them.
type numbering struct {
	new            map[int64]int64
	frame, pointer []int32 // size of the frame, and which map of pointers holds
}

// pointerIndex is the place of the maps of pointers among the values by address.
const pointerIndex = 1

// number gives new numbers to a function's live ones. It looks at which value the
// runtime will ask for: the frame's size at the number itself, the map of pointers
// at the number before (stkframe.getStackMap), which is that of the call; and the
// map at the number at which the function goes on after a panic. Those that nothing goes on at take
// over a number that has the same values.
func (t *tables) number(function int, live, ends map[int64]bool) {
	at := t.at[function]
	var frame, pointer values
	frame = t.values(t.uint32(at + recFrame))
	if p := t.byAddress(at); pointerIndex < len(p) {
		pointer = t.values(t.uint32(p[pointerIndex]))
	}
	n := numbering{new: map[int64]int64{}}
	next := int64(0)
	asked := map[int64]int32{} // maps of pointers by new number
	give := func(was int64) {
		is := next
		if was > 0 {
			if have, ok := asked[is-1]; ok && have != pointer.at(was-1) {
				is++
			}
			asked[is-1] = pointer.at(was - 1)
		}
		if was > 0 && was == int64(t.uint32(at+recDeferReturn)) {
			asked[is] = pointer.at(was)
		}
		n.new[was] = is
		for len(n.frame) <= int(is) {
			n.frame = append(n.frame, frame.at(was))
		}
		next = is + 1
	}
	for _, was := range slices.Sorted(maps.Keys(live)) {
		give(was)
	}
	for _, was := range slices.Sorted(maps.Keys(ends)) {
		is := int64(1)
		same := func() bool {
			have, ok := asked[is-1]
			return ok && have == pointer.at(was-1) && n.frame[is] == frame.at(was)
		}
		for is < next && !same() {
			is++
		}
		if is < next {
			n.new[was] = is
		} else {
			give(was)
		}
	}
	for i := range n.frame {
		value, ok := asked[int64(i)]
		if !ok && i > 0 {
			value = n.pointer[i-1]
		} else if !ok {
			value = -1
		}
		n.pointer = append(n.pointer, value)
	}
	t.numbers[function] = n
}

// values are a table's values by address, up to its end.
type values []int32

func (v values) at(number int64) int32 {
	if len(v) == 0 {
		return -1 // as the runtime has it
	}
	return v[min(int(number), len(v)-1)]
}

// values reads a table of values by address; one at 0 is empty.
func (t *tables) values(offset uint32) values {
	if offset == 0 {
		return nil
	}
	var all values
	r := reader{b: t.mem[t.runs+int(offset) : t.index]}
	value := int32(-1)
	for first := true; !r.end(); first = false {
		diff := uint32(r.uint())
		if diff == 0 && !first {
			break
		}
		value += int32(-(diff & 1) ^ diff>>1) // zigzag
		for n := r.uint(); n > 0; n-- {
			all = append(all, value)
		}
	}
	return all
}

// appendRun writes values as a table by address.
func (v values) appendRun(b []byte) []byte {
	last := int32(-1)
	for i := 0; i < len(v); {
		j := i
		for j < len(v) && v[j] == v[i] {
			j++
		}
		diff := v[i] - last
		last = v[i]
		b = appendUint(b, uint64(uint32(diff<<1^diff>>31)))
		b = appendUint(b, uint64(j-i))
		i = j
	}
	return append(b, 0)
}
