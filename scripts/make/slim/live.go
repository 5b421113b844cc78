package slim

// variables is a set of local variables, by their index.
type variables uint64

const mostVariables = 64

func (v variables) has(index int64) bool { return v>>index&1 != 0 }

// liveAfter returns for each instruction the variables that may be read behind it before they
// are set again.
func liveAfter(code []instr) []variables {
	after, before := make([]variables, len(code)), make([]variables, len(code))
	next := successors(code)
	for changed := true; changed; {
		changed = false
		for i := len(code) - 1; i >= 0; i-- {
			live := variables(0)
			for _, to := range next[i] {
				if to < len(code) {
					live |= before[to]
				}
			}
			after[i] = live
			switch in := code[i]; in.op {
			case opLocalGet:
				live |= 1 << in.n
			case opLocalSet, opLocalTee:
				live &^= 1 << in.n
			}
			if live != before[i] {
				before[i], changed = live, true
			}
		}
	}
	return after
}

// successors returns for each instruction those that may come next.
func successors(code []instr) [][]int {
	next := make([][]int, len(code))
	var open []int          // what opened the blocks around
	ends := map[int][]int{} // by what opened a block: who goes on at its end
	branch := func(from int, depth uint64) {
		if int(depth) >= len(open) { // out of the function
			next[from] = append(next[from], len(code))
		} else if to := open[len(open)-1-int(depth)]; code[to].op == opLoop {
			next[from] = append(next[from], to)
		} else {
			ends[to] = append(ends[to], from)
		}
	}
	otherwise := map[int]int{} // by the if: its else
	for i, in := range code {
		switch in.op {
		case opBr:
			branch(i, uint64(in.n))
		case opBrIf:
			next[i] = append(next[i], i+1)
			branch(i, uint64(in.n))
		case opBrTable:
			for _, depth := range in.to {
				branch(i, depth)
			}
		case opElse: // here what is done if so is at its end
			branch(i, 0)
			otherwise[open[len(open)-1]] = i
		case opReturn, opUnreachable:
		default:
			next[i] = append(next[i], i+1)
		}
		switch {
		case in.opens():
			open = append(open, i)
		case in.op == opEnd && len(open) > 0:
			opener := open[len(open)-1]
			open = open[:len(open)-1]
			if other, ok := otherwise[opener]; ok {
				next[opener] = append(next[opener], other+1)
			} else if code[opener].op == opIf {
				next[opener] = append(next[opener], i)
			}
			for _, from := range ends[opener] {
				next[from] = append(next[from], i)
			}
		}
	}
	return next
}
