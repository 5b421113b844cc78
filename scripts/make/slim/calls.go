package slim

// firstAddress is the upper part of the first function's address
// (cmd/link/internal/wasm/asm.go, funcValueOffset).
const firstAddress = 0x1000

// address returns the upper part of a function's addresses, whose lower 16 bits
// are a block's number.
func address(function int) int64 { return int64(firstAddress+function) << 16 }

// isAddress reports whether an instruction gives an address within a function.
func isAddress(in instr, function int) (block int64, ok bool) {
	block = in.n - address(function)
	return block, in.op == opI64Const && block >= 0 && block < 1<<16
}

// returns reports whether a call's return address is stored by the instruction at i.
func returns(code []instr, i, function int) (block int64, ok bool) {
	block, ok = isAddress(code[i], function)
	return block, ok && i > 0 && i+1 < len(code) && code[i+1].is(opI64Store, 0) && code[i-1].is(opLocalGet, stackLocal)
}

// shareAddress has a function compute its return addresses from one: a large number
// at every call is most of what a call weighs, compressed.
func (f *function) shareAddress(function int, numbers map[int64]int64) {
	calls := 0
	for i := range f.code {
		if _, ok := returns(f.code, i, function); ok {
			calls++
		}
	}
	if calls == 0 {
		return
	}
	base := f.addLocal(typeI64)
	code := append([]instr{{op: opI64Const, n: address(function)}, {op: opLocalSet, n: base}}, f.code[:2]...)
	for i := 2; i < len(f.code); i++ {
		block, ok := returns(f.code, i, function)
		if is, moved := numbers[block]; moved {
			block = is
		}
		switch {
		case !ok:
			code = append(code, f.code[i])
		case block == 0:
			code = append(code, instr{op: opLocalGet, n: base})
		default:
			code = append(code, instr{op: opLocalGet, n: base}, instr{op: opI64Const, n: block}, instr{op: opI64Or})
		}
	}
	f.code = code
}

// liveNumbers are the numbers that a function can be entered with from outside: the
// first, and those at which it goes on after a call.
func liveNumbers(code []instr, function int) map[int64]bool {
	live := map[int64]bool{0: true}
	for _, in := range code {
		if number, ok := isAddress(in, function); ok {
			live[number] = true
		}
	}
	return live
}

// fixed are the functions whose numbers must stay: all goroutines return to the
// second of goexit (runtime.newproc1), and in others an address of their own serves
// for something else than to return to it.
func fixed(functions []function, t *tables) map[int]bool {
	is := map[int]bool{}
	for i, f := range functions {
		if at, known := t.at[i]; known && t.name(at) == "runtime.goexit" {
			is[i] = true
		}
		for j, in := range f.code {
			of := int(in.n>>16) - firstAddress
			if in.op != opI64Const || in.n&0xFFFF == 0 || of < 0 || of >= len(functions) {
				continue
			}
			if _, back := returns(f.code, j, i); !back {
				is[of] = true
			}
		}
	}
	return is
}
