package slim

import "slices"

// The compiler computes a value into a register, and some instructions later copies it to where
// it belongs; registers are variables here. A value that is used once can be computed where it
// is used, and no variable is named.

// sink moves what is computed into a variable to where it is used, if that is its only use and
// nothing between changes what it is computed from.
func (f *function) sink() {
	if f.variables() > mostVariables {
		return
	}
	s := sinker{waiting: map[int64]span{}}
	live := liveAfter(f.code)
	for i, in := range f.code {
		s.add(in, live[i])
	}
	f.code = slices.DeleteFunc(s.out, isGone)
}

// variables is how many a function has, with its parameter.
func (f *function) variables() uint64 {
	n := uint64(1)
	for _, l := range f.locals {
		n += l.n
	}
	return n
}

// opGone is what is left of an instruction that was moved: the nop.
const opGone = 0x01

func isGone(in instr) bool { return in.op == opGone }

type sinker struct {
	out      []instr
	operands []int          // of each value on the stack, where its code begins
	waiting  map[int64]span // by the variable, code that could still be moved
}

// span is code that leaves one value, from an instruction up to another.
type span struct{ from, to int }

// add appends an instruction, behind which these variables are still read.
func (s *sinker) add(in instr, live variables) {
	pops, pushes, known := in.effect()
	switch {
	case in.op == opLocalTee && !live.has(in.n):
		return
	case !known || len(s.operands) < pops:
		s.out = append(s.out, in)
		s.operands = nil
		clear(s.waiting)
		return
	}
	from := len(s.out)
	if pops > 0 {
		from = s.operands[len(s.operands)-pops]
	}
	var address span
	if isStore(in) {
		address = span{from, s.operands[len(s.operands)-1]}
		in.n += s.distance(address)
	}
	s.operands = s.operands[:len(s.operands)-pops]
	if pushes > 0 {
		s.operands = append(s.operands, from)
	}
	value, ok := s.waiting[in.n]
	if in.op == opLocalGet {
		delete(s.waiting, in.n) // what is used twice stays
		if ok && !live.has(in.n) {
			s.move(value)
			return
		}
	}
	s.outdate(in, address)
	s.out = append(s.out, in)
	if value := (span{from, len(s.out) - 1}); in.op == opLocalSet && s.movable(value) {
		s.waiting[in.n] = value
	}
}

// move moves a value's code to the end, and takes away the instruction that put it into a variable.
func (s *sinker) move(value span) {
	s.out = append(s.out, s.out[value.from:value.to]...)
	for i := value.from; i <= value.to; i++ {
		s.out[i].op = opGone
	}
}

// movable reports whether code does nothing but leave its value.
func (s *sinker) movable(value span) bool {
	return !slices.ContainsFunc(s.out[value.from:value.to], func(in instr) bool {
		_, pushes, _ := in.effect()
		return in.op != opGone && (pushes == 0 || in.op == opLocalTee || in.op == opMemoryGrow)
	})
}

// outdate forgets the waiting values that would be others behind an instruction. If it is a
// store, it has the code of its address.
func (s *sinker) outdate(by instr, address span) {
	var changes func(i int) bool // whether it changes what the instruction at i gives
	switch {
	case by.op == opLocalSet, by.op == opLocalTee:
		delete(s.waiting, by.n)
		changes = func(i int) bool { return s.out[i].is(opLocalGet, by.n) }
	case by.op == opGlobalSet:
		changes = func(i int) bool { return s.out[i].is(opGlobalGet, by.n) }
	case isStore(by):
		inFrame := s.isStack(address)
		changes = func(i int) bool {
			in := s.out[i]
			const widest = 8
			apart := inFrame && i > 0 && s.out[i-1].is(opLocalGet, stackLocal) && (in.n >= by.n+widest || by.n >= in.n+widest)
			return isLoad(in) && !apart
		}
	case by.op == opPrefixed, by.op == opMemoryGrow:
		changes = func(i int) bool { return isLoad(s.out[i]) || s.out[i].op == opMemorySize }
	default:
		return
	}
	for variable, value := range s.waiting {
		for i := value.from; i < value.to; i++ {
			if changes(i) {
				delete(s.waiting, variable)
			}
		}
	}
}

// isStack reports whether an address is that of the frame.
func (s *sinker) isStack(address span) bool {
	code := slices.DeleteFunc(slices.Clone(s.out[address.from:address.to]), isGone)
	return len(code) == 1 && code[0].is(opLocalGet, stackLocal)
}

// distance takes away what an address ends with if it is a number that is added to it: an
// access to memory can add by itself.
func (s *sinker) distance(address span) int64 {
	n := address.to
	for n > address.from && s.out[n-1].op == opGone {
		n--
	}
	if n-address.from < 3 || s.out[n-1].op != opI32Add || s.out[n-2].op != opI32Const || s.out[n-2].n < 0 {
		return 0
	}
	s.out[n-1].op, s.out[n-2].op = opGone, opGone
	return s.out[n-2].n
}

// effect returns how many values an instruction takes off the stack and leaves there. Of those
// that lead elsewhere it is not known.
func (i instr) effect() (pops, pushes int, known bool) {
	switch op := i.op; {
	case op == opLocalGet, op == opGlobalGet, op == opMemorySize, op >= opI32Const && op <= opF64Const:
		return 0, 1, true
	case op == opLocalSet, op == opGlobalSet, op == opDrop:
		return 1, 0, true
	case op == opLocalTee, op == opMemoryGrow, isLoad(i), isUnary(op), op == opPrefixed && i.n < opMemoryCopy:
		return 1, 1, true
	case isStore(i):
		return 2, 0, true
	case op >= opI32Eqz && op <= opNumericLast:
		return 2, 1, true
	case op == opSelect:
		return 3, 1, true
	case op == opPrefixed:
		return 3, 0, true
	}
	return 0, 0, false
}

// isUnary reports whether an instruction computes from one value.
func isUnary(op byte) bool {
	// Zero or not; zeros and ones counted; of floats what keeps their type; conversions.
	for _, from := range [][2]byte{{opI32Eqz, opI32Eqz}, {opI64Eqz, opI64Eqz}, {0x67, 0x69}, {0x79, 0x7B}, {0x8B, 0x91}, {0x99, 0x9F}, {opI32WrapI64, opNumericLast}} {
		if op >= from[0] && op <= from[1] {
			return true
		}
	}
	return false
}
