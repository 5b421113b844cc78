package slim

// tidy leaves out what computes nothing, until nothing is left of it.
func (f *function) tidy() {
	out := f.code[:0:0]
	for _, in := range f.code {
		out = append(out, in)
		for shorter := true; shorter; {
			out, shorter = shorten(out)
		}
	}
	f.code = out
}

// shorten replaces an idiom at the end of the code by what does the same.
func shorten(c []instr) ([]instr, bool) {
	n := len(c)
	at := func(i int) instr { // i-th from the end, from 1
		if i > n {
			return instr{op: opUnreachable}
		}
		return c[n-i]
	}
	last := at(1)
	switch {
	// A variable set to itself.
	case last.op == opLocalSet && at(2).is(opLocalGet, last.n):
		return c[:n-2], true
	// An address on the stack, widened to compute and narrowed to use.
	case last.op == opI32WrapI64 && at(2).op == opI64ExtendI32U:
		return c[:n-2], true
	case last.op == opI32WrapI64 && at(2).op == opI64Add && at(3).op == opI64Const && at(4).op == opI64ExtendI32U:
		return append(c[:n-4], instr{op: opI32Const, n: int64(int32(at(3).n))}, instr{op: opI32Add}), true
	// A place in the frame: the access itself can add.
	case isLoad(last) && at(2).op == opI32Add && at(3).op == opI32Const && at(3).n >= 0 && at(4).is(opLocalGet, stackLocal):
		last.n += at(3).n
		return append(c[:n-3], last), true
	// Whether something is not zero, asked twice.
	case last.op == opI64Eqz && at(2).op == opI64ExtendI32U:
		return append(c[:n-2], instr{op: opI32Eqz}), true
	case last.op == opI32Eqz && at(2).op == opI32Eqz && isTruth(at(3)):
		return c[:n-2], true
	// The contrary of a comparison of whole numbers.
	case last.op == opI32Eqz && contrary[at(2).op] != 0:
		return append(c[:n-2], instr{op: contrary[at(2).op]}), true
	case last.op == opIf && at(2).op == opI32Eqz && at(3).op == opI32Eqz:
		return append(c[:n-3], last), true
	}
	return c, false
}

// contrary has for each comparison of whole numbers that which is true when it is not. Of floats
// both can be false.
var contrary = func() map[byte]byte {
	of := map[byte]byte{}
	for _, first := range []byte{opI32Eqz + 1, opI64Eqz + 1} { // equal, not equal; less, greater, at most, at least: signed and not
		of[first], of[first+1] = first+1, first
		for signed := range byte(2) {
			less, greater, most, least := first+2+signed, first+4+signed, first+6+signed, first+8+signed
			of[less], of[least], of[greater], of[most] = least, less, most, greater
		}
	}
	return of
}()

func isLoad(in instr) bool  { return in.op >= opLoadFirst && in.op < opStoreFirst }
func isStore(in instr) bool { return in.op >= opStoreFirst && in.op <= opStoreLast }

// isTruth reports whether an instruction leaves 0 or 1: comparisons do.
func isTruth(in instr) bool { return in.op >= opI32Eqz && in.op <= opCompareLast }
