package slim

import "slices"

// Calls that the program never returns from, above all to the panics of a nil pointer and of an
// index out of range, are one in five. Nothing goes on behind them. So they need no numbers to go
// on at, which only tell the maps of pointers there: they take over one that tells the same, which
// compresses better; nor code to go on with.

// noReturn are the functions that never return.
var noReturn = []string{
	"runtime.sigpanic", "runtime.gopanic", "runtime.throw", "runtime.fatal",
	"runtime.goPanicIndex", "runtime.goPanicIndexU", "runtime.goPanicSliceAlen", "runtime.goPanicSliceAlenU",
	"runtime.goPanicSliceAcap", "runtime.goPanicSliceAcapU", "runtime.goPanicSliceB", "runtime.goPanicSliceBU",
	"runtime.panicdivide", "runtime.panicshift", "runtime.panicwrap", "runtime.panicnildottype",
	"runtime.panicdottypeE", "runtime.panicdottypeI", "runtime.panicunsafestringlen", "runtime.panicunsafeslicelen",
}

// isLast reports whether an instruction calls one of them.
func (t *tables) isLast(in instr) bool {
	at, known := t.at[int(in.n)-t.imported]
	return in.op == opCall && known && slices.Contains(noReturn, t.name(at))
}

// ends are the numbers of a function that such calls would go on at.
func (t *tables) ends(code []instr, function int) map[int64]bool {
	const call = 3 // from the return address to the call: store it, begin at 0, call
	ends := map[int64]bool{}
	for i := range len(code) - call {
		if number, ok := returns(code, i, function); ok && t.isLast(code[i+call]) {
			ends[number] = true
		}
	}
	return ends
}

// dropAfter leaves out what stands behind such calls: the function returns what they return.
func (f *function) dropAfter(t *tables) {
	// Take the stack pointer back; return 1 if the stack is unwound.
	behind := []instr{{op: opGlobalGet, n: stackGlobal}, {op: opLocalSet, n: stackLocal}, {op: opIf}, {op: opI32Const, n: 1}, {op: opReturn}, {op: opEnd}}
	same := func(a, b instr) bool { return a.is(b.op, b.n) }
	var out []instr
	for i := 0; i < len(f.code); i++ {
		out = append(out, f.code[i])
		if next := i + 1 + len(behind); t.isLast(f.code[i]) && next <= len(f.code) && slices.EqualFunc(f.code[i+1:next], behind, same) {
			out = append(out, instr{op: opReturn})
			i = next - 1
		}
	}
	f.code = out
}
