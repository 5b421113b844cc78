package slim

import (
	"fmt"
	"maps"
	"slices"
)

// The compiler lays a function out as
//
//	block              if it has calls: left to unwind the stack
//	  loop             if it has jumps
//	    block × n      one per block of the source's flow
//	      local.get 0
//	      br_table ... by the number of the block to go to
//	    end
//	    code of the first block
//	    end
//	    code of the second, and so on
//
// and a jump writes the number and goes back to the loop. A jump to a block that
// is still ahead can leave the blocks between instead: no detour, and a small depth
// in place of a number and a large depth.

// frame is where the parts of that are.
type frame struct {
	unwind bool // there is the outermost block
	loop   bool
	blocks int // n
	table  int // index of the br_table
}

// frameOf finds the layout behind the first two instructions.
func frameOf(code []instr) (f frame, ok bool) {
	i := 2
	for i < len(code) && code[i].opens() && code[i].op != opIf {
		i++
	}
	if i+2 >= len(code) || !code[i].is(opLocalGet, blockLocal) || code[i+1].op != opBrTable || code[i+2].op != opEnd {
		return frame{}, false
	}
	f.table = i + 1
	f.blocks = i - 2
	for j := 2; j < i; j++ {
		if code[j].op == opLoop {
			f.loop = true
			f.unwind = j == 3
			f.blocks = i - j - 1
		}
	}
	if !f.loop {
		// One block more than there are numbers leads to: it is the outermost.
		f.unwind = f.blocks > int(maxOf(code[f.table].to))+1
		if f.unwind {
			f.blocks--
		}
	}
	return f, f.blocks == int(maxOf(code[f.table].to))+1
}

func maxOf(depths []uint64) uint64 {
	var most uint64
	for _, d := range depths {
		most = max(most, d)
	}
	return most
}

// jumper lays a function out anew.
type jumper struct {
	frame
	code    []instr
	numbers []uint64        // block to go to by number, the last for all others
	live    map[int64]bool  // numbers that the table is asked for
	new     map[int64]int64 // numbers by what they were
	used    []bool          // blocks that somebody goes to
	loops   bool            // somebody jumps back

	// Where in the code it is.
	position
	err error
}

type position struct {
	closed        int  // blocks behind it
	inner         int  // blocks of the source that are open
	over, unwound bool // the loop is behind it, and the outermost block
}

// block returns the block to go to by number.
func (j *jumper) block(number int64) int {
	return int(j.numbers[min(uint64(number), uint64(len(j.numbers)-1))])
}

// jump reports whether a jump by number begins at i.
func (j *jumper) jump(i int) (number int64, ok bool) {
	c := j.code
	ok = j.loop && c[i].op == opI32Const && i+2 < len(c) &&
		c[i+1].is(opLocalSet, blockLocal) && c[i+2].is(opBr, int64(j.blocks-j.closed+j.inner))
	return c[i].n, ok
}

// part is what of the layout an instruction ends.
type part int

const (
	nothing part = iota
	endOfBlock
	endOfLoop
	endOfUnwind
)

// pass moves on over an instruction and returns what of the layout it ends.
func (j *jumper) pass(in instr) part {
	switch {
	case in.opens():
		j.inner++
	case in.op != opEnd:
	case j.inner > 0:
		j.inner--
	case j.closed < j.blocks:
		j.closed++
		return endOfBlock
	case j.loop && !j.over:
		j.over = true
		return endOfLoop
	case j.unwind && !j.unwound:
		j.unwound = true
		return endOfUnwind
	}
	return nothing
}

// mark finds out which blocks and numbers are gone to.
func (j *jumper) mark() {
	for i := j.table + 1; i < len(j.code); i++ {
		if number, ok := j.jump(i); ok {
			if b := j.block(number); b >= j.closed {
				j.used[b] = true
			} else {
				j.live[number], j.loops = true, true
			}
		}
		j.pass(j.code[i])
	}
	j.position = position{}
	for number := range j.live {
		j.used[j.block(number)] = true
	}
}

// open is how many blocks that stay are open from one up to another.
func (j *jumper) open(from, to int) int64 {
	n := int64(0)
	for _, used := range j.used[from:to] {
		if used {
			n++
		}
	}
	return n
}

// layOut writes the function.
func (j *jumper) layOut() []instr {
	table := j.newTable()
	if len(table) == 1 {
		j.used[0] = false // it begins at the beginning only
	}
	out := slices.Clone(j.code[:2])
	void := []byte{blockVoid}
	if j.loops {
		out = append(out, instr{op: opLoop, rest: void})
	}
	for range j.open(0, j.blocks) {
		out = append(out, instr{op: opBlock, rest: void})
	}
	if len(table) > 1 {
		out = append(out, instr{op: opLocalGet, n: blockLocal}, instr{op: opBrTable, to: table})
	}
	for i := j.table + 1; i < len(j.code); i++ {
		in := j.code[i]
		if number, ok := j.jump(i); ok && j.block(number) >= j.closed {
			depth := j.open(j.closed, j.block(number)) + int64(j.inner)
			i += 2
			if last := out[len(out)-1]; last.op == opIf && j.code[i+1].op == opEnd {
				out[len(out)-1] = instr{op: opBrIf, n: depth - 1}
				i++
				j.inner--
			} else {
				out = append(out, instr{op: opBr, n: depth})
			}
			continue
		}
		if number, ok := j.jump(i); ok {
			in.n = j.new[number]
		}
		switch part := j.pass(in); {
		case part == endOfBlock && !j.used[j.closed-1], part == endOfLoop && !j.loops, part == endOfUnwind:
		case (in.op == opBr || in.op == opBrIf) && in.n >= int64(j.inner):
			out = append(out, j.leave(in)...)
		default:
			out = append(out, in)
		}
	}
	return out
}

// leave returns a branch to the loop, or out of all blocks, anew. The way out is to
// return 1, and saying so is always the same, whereas a depth differs.
func (j *jumper) leave(branch instr) []instr {
	outer := branch.n - int64(j.inner+j.blocks-j.closed)
	switch {
	case j.loop && outer == 0:
		branch.n = int64(j.inner) + j.open(j.closed, j.blocks)
		return []instr{branch}
	case j.unwind && branch.op == opBrIf && (outer == 0 || j.loop && outer == 1):
		return []instr{{op: opIf, rest: []byte{blockVoid}}, {op: opI32Const, n: 1}, {op: opReturn}, {op: opEnd}}
	}
	j.err = fmt.Errorf("a branch leads to depth %d with %d blocks open", branch.n, j.inner+j.blocks-j.closed)
	return nil
}

// newTable returns the table by new number.
func (j *jumper) newTable() []uint64 {
	var table []uint64
	for _, was := range slices.Sorted(maps.Keys(j.live)) {
		block := uint64(j.open(0, j.block(was)))
		for int64(len(table)) <= j.new[was] {
			table = append(table, block)
		}
	}
	return table
}
