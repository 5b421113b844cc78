package slim

import (
	"fmt"
	"maps"
)

// Instructions by their number (WebAssembly core specification, 5.4).
const (
	opUnreachable   = 0x00
	opBlock         = 0x02
	opLoop          = 0x03
	opIf            = 0x04
	opElse          = 0x05
	opEnd           = 0x0B
	opBr            = 0x0C
	opBrIf          = 0x0D
	opBrTable       = 0x0E
	opReturn        = 0x0F
	opCall          = 0x10
	opCallIndirect  = 0x11
	opDrop          = 0x1A
	opSelect        = 0x1B
	opLocalGet      = 0x20
	opLocalSet      = 0x21
	opLocalTee      = 0x22
	opGlobalGet     = 0x23
	opGlobalSet     = 0x24
	opLoadFirst     = 0x28 // i32.load
	opI32Load8U     = 0x2D
	opStoreFirst    = 0x36 // i32.store
	opI64Store      = 0x37
	opStoreLast     = 0x3E
	opMemorySize    = 0x3F
	opMemoryGrow    = 0x40
	opI32Const      = 0x41
	opI64Const      = 0x42
	opF32Const      = 0x43
	opF64Const      = 0x44
	opI32Eqz        = 0x45
	opI32LtU        = 0x49
	opI64Eqz        = 0x50
	opCompareLast   = 0x66
	opI32Add        = 0x6A
	opI32Mul        = 0x6C
	opI64Add        = 0x7C
	opI64Or         = 0x84
	opI64ShrU       = 0x88
	opI32WrapI64    = 0xA7
	opI64ExtendI32U = 0xAD
	opNumericLast   = 0xC4
	opPrefixed      = 0xFC
	opMemoryCopy    = 10 // behind opPrefixed
	opMemoryFill    = 11

	typeI32   = 0x7F
	typeI64   = 0x7E
	blockVoid = 0x40
)

// noHint is the alignment of an access of which nothing is said.
const noHint = 0

// instr is an instruction with what goes with it: a number, a depth, an index or an
// offset in n, and in rest what else there is, as it is written.
type instr struct {
	op   byte
	n    int64
	rest []byte   // type of a block, bits of a float
	to   []uint64 // depths of a br_table, the last for all other numbers
}

func (i instr) is(op byte, n int64) bool { return i.op == op && i.n == n }

// opens reports whether a block begins here.
func (i instr) opens() bool { return i.op == opBlock || i.op == opLoop || i.op == opIf }

// decode reads a function's instructions.
func decode(r *reader) ([]instr, error) {
	var code []instr
	for !r.end() {
		in := instr{op: r.byte()}
		switch op := in.op; {
		case in.opens():
			in.rest = r.bytes(1)
			if in.rest != nil && in.rest[0] < blockVoid {
				return nil, fmt.Errorf("a block is of type %#x", in.rest[0])
			}
		case op == opBr, op == opBrIf, op == opCall, op >= opLocalGet && op <= opGlobalSet:
			in.n = int64(r.uint())
		case op == opCallIndirect:
			in.n = int64(r.uint())
			in.rest = r.bytes(1)
		case op == opBrTable:
			for n := r.uint() + 1; n > 0 && r.err == nil; n-- {
				in.to = append(in.to, r.uint())
			}
		case op >= opLoadFirst && op <= opStoreLast:
			r.bytes(1) // how the address is aligned is a hint that browsers make no use of
			in.n = int64(r.uint())
		case op == opMemorySize, op == opMemoryGrow:
			in.rest = r.bytes(1)
		case op == opI32Const, op == opI64Const:
			in.n = r.int()
		case op == opF32Const:
			in.rest = r.bytes(4)
		case op == opF64Const:
			in.rest = r.bytes(8)
		case op == opPrefixed:
			in.n = int64(r.uint())
			switch {
			case in.n == opMemoryCopy:
				in.rest = r.bytes(2)
			case in.n == opMemoryFill:
				in.rest = r.bytes(1)
			case in.n > 7: // up to it, conversions
				return nil, fmt.Errorf("instruction %#x %d is not known", op, in.n)
			}
		case op <= 0x01, op == opElse, op == opEnd, op == opReturn, op == opDrop, op == opSelect, op >= opI32Eqz && op <= opNumericLast:
		default:
			return nil, fmt.Errorf("instruction %#x is not known", op)
		}
		code = append(code, in)
	}
	return code, r.err
}

// encode writes instructions as they are in a program.
func encode(b []byte, code []instr) []byte {
	for _, in := range code {
		b = append(b, in.op)
		switch op := in.op; {
		case op == opI32Const, op == opI64Const:
			b = appendInt(b, in.n)
		case op == opBr, op == opBrIf, op == opCall, op >= opLocalGet && op <= opGlobalSet, op == opPrefixed, op == opCallIndirect:
			b = append(appendUint(b, uint64(in.n)), in.rest...)
		case op >= opLoadFirst && op <= opStoreLast:
			b = appendUint(append(b, noHint), uint64(in.n))
		case op == opBrTable:
			b = appendUint(b, uint64(len(in.to)-1))
			for _, depth := range in.to {
				b = appendUint(b, depth)
			}
		default:
			b = append(b, in.rest...)
		}
	}
	return b
}

// function is the body of one, with the types of its local variables.
type function struct {
	locals []local
	code   []instr
}

// local declares n variables of a type.
type local struct {
	n   uint64
	typ byte
}

func decodeFunction(body []byte) (function, error) {
	r := &reader{b: body}
	var f function
	for n := r.uint(); n > 0 && r.err == nil; n-- {
		f.locals = append(f.locals, local{r.uint(), r.byte()})
	}
	code, err := decode(r)
	f.code = code
	return f, err
}

func (f function) encode() []byte {
	b := appendUint(nil, uint64(len(f.locals)))
	for _, l := range f.locals {
		b = append(appendUint(b, l.n), l.typ)
	}
	return encode(b, f.code)
}

// addLocal gives a function a variable before its own, behind the stack pointer, so
// that it is the same in all functions, and returns its index.
func (f *function) addLocal(typ byte) int64 {
	const index = stackLocal + 1
	for i := range f.code {
		if in := &f.code[i]; in.op >= opLocalGet && in.op <= opLocalTee && in.n >= index {
			in.n++
		}
	}
	first := f.locals[0]
	locals := []local{{1, first.typ}, {1, typ}}
	if first.n > 1 {
		locals = append(locals, local{first.n - 1, first.typ})
	}
	f.locals = append(locals, f.locals[1:]...)
	return index
}

// slimCode rewrites the functions that Go's compiler wrote; those written by hand
// in assembly may do without its conventions, and stay. What is never called is left out.
func (m *module) slimCode(t *tables, never []string) error {
	functions, err := m.functions()
	if err != nil {
		return err
	}
	if err := t.thinLookups(functions); err != nil {
		return err
	}
	imports, err := m.body(importSection)
	if err != nil {
		return err
	}
	t.imported = int((&reader{b: imports}).uint()) // only functions are
	fixed := fixed(functions, t)
	out := appendUint(nil, uint64(len(functions)))
	for i, f := range functions {
		if at, known := t.at[i]; known {
			if instead, ok := needless(t.name(at), never); ok {
				f = instead
			} else if f.compiled() && !fixed[i] {
				if err := f.slim(i, t); err != nil {
					return fmt.Errorf("function %d: %w", i, err)
				}
			}
		}
		body := f.encode()
		out = append(appendUint(out, uint64(len(body))), body...)
	}
	m.set(codeSection, out)
	for _, begin := range never {
		if !t.has(begin) {
			return fmt.Errorf("no function's name begins as %s, which is to be left out", begin)
		}
	}
	return nil
}

func (m *module) functions() ([]function, error) {
	body, err := m.body(codeSection)
	if err != nil {
		return nil, err
	}
	r := reader{b: body}
	var all []function
	for n := r.uint(); n > 0 && r.err == nil; n-- {
		f, err := decodeFunction(r.bytes(int(r.uint())))
		if err != nil {
			return nil, fmt.Errorf("function %d: %w", len(all), err)
		}
		all = append(all, f)
	}
	return all, r.err
}

// slim rewrites one function.
func (f *function) slim(index int, t *tables) error {
	f.tidy()
	if lay, ok := frameOf(f.code); ok {
		j := jumper{frame: lay, code: f.code, numbers: f.code[lay.table].to, used: make([]bool, lay.blocks)}
		j.live = liveNumbers(f.code, index)
		ends := t.ends(f.code, index)
		maps.DeleteFunc(j.live, func(number int64, _ bool) bool { return ends[number] })
		j.live[int64(t.uint32(t.at[index]+recDeferReturn))] = true
		j.mark()
		maps.DeleteFunc(ends, func(number int64, _ bool) bool { return j.live[number] }) // somebody else goes there
		t.number(index, j.live, ends)
		j.new = t.numbers[index].new
		f.code = j.layOut()
		if j.err != nil {
			return j.err
		}
	}
	f.shareAddress(index, t.numbers[index].new)
	f.dropAfter(t)
	f.sink()
	f.tidy() // what has become neighbours
	return nil
}

// compiled reports whether a function begins as those by the compiler do, by
// copying the stack pointer.
func (f function) compiled() bool {
	return len(f.code) > 2 && f.code[0].is(opGlobalGet, stackGlobal) && f.code[1].is(opLocalSet, stackLocal) && len(f.locals) > 0
}

// Registers of the compiler (cmd/internal/obj/wasm/wasmobj.go, assemble): the
// parameter of a function is the number of the block to begin at.
const (
	stackGlobal = 0
	blockLocal  = 0
	stackLocal  = 1
)
