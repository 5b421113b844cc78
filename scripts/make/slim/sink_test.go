package slim

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Instructions of the tests.
func get(variable int64) instr    { return instr{op: opLocalGet, n: variable} }
func set(variable int64) instr    { return instr{op: opLocalSet, n: variable} }
func tee(variable int64) instr    { return instr{op: opLocalTee, n: variable} }
func number(n int64) instr        { return instr{op: opI64Const, n: n} }
func distance(n int64) instr      { return instr{op: opI32Const, n: n} }
func load(offset int64) instr     { return instr{op: opI64Load, n: offset} }
func store(offset int64) instr    { return instr{op: opI64Store, n: offset} }
func only(op byte) instr          { return instr{op: op} }
func opening(op byte) instr       { return instr{op: op, rest: []byte{blockVoid}} }
func jump(op byte, n int64) instr { return instr{op: op, n: n} }

const opI64Load = opLoadFirst + 1

func TestSink(t *testing.T) {
	sp := get(stackLocal)
	for what, c := range map[string]struct{ was, is []instr }{
		"a copy":                         {[]instr{sp, load(8), set(3), sp, get(3), store(0)}, []instr{sp, sp, load(8), store(0)}},
		"two at once":                    {[]instr{sp, load(16), set(3), sp, load(24), set(4), sp, get(3), store(0), sp, get(4), store(8)}, []instr{sp, sp, load(16), store(0), sp, sp, load(24), store(8)}},
		"used twice":                     {[]instr{sp, load(8), set(3), sp, get(3), store(0), sp, get(3), store(16)}, []instr{sp, load(8), set(3), sp, get(3), store(0), sp, get(3), store(16)}},
		"its place is written to":        {[]instr{sp, load(8), set(3), sp, number(1), store(12), sp, get(3), store(0)}, []instr{sp, load(8), set(3), sp, number(1), store(12), sp, get(3), store(0)}},
		"another place is written to":    {[]instr{sp, load(8), set(3), sp, number(1), store(16), sp, get(3), store(0)}, []instr{sp, number(1), store(16), sp, sp, load(8), store(0)}},
		"who knows what is written to":   {[]instr{sp, load(8), set(3), get(4), only(opI32WrapI64), number(1), store(16), sp, get(3), store(0)}, []instr{sp, load(8), set(3), get(4), only(opI32WrapI64), number(1), store(16), sp, get(3), store(0)}},
		"what it is made of is set":      {[]instr{get(4), set(3), number(1), set(4), sp, get(3), store(0), sp, get(4), store(8)}, []instr{get(4), set(3), sp, get(3), store(0), sp, number(1), store(8)}},
		"a call between":                 {[]instr{sp, load(8), set(3), distance(0), jump(opCall, 5), only(opDrop), sp, get(3), store(0)}, []instr{sp, load(8), set(3), distance(0), jump(opCall, 5), only(opDrop), sp, get(3), store(0)}},
		"nobody reads it":                {[]instr{sp, number(1), tee(3), store(0)}, []instr{sp, number(1), store(0)}},
		"read in the next turn":          {[]instr{opening(opLoop), sp, get(3), store(0), sp, number(1), tee(3), store(8), jump(opBr, 0), only(opEnd)}, []instr{opening(opLoop), sp, get(3), store(0), sp, number(1), tee(3), store(8), jump(opBr, 0), only(opEnd)}},
		"a distance":                     {[]instr{sp, distance(8), only(opI32Add), number(1), store(16)}, []instr{sp, number(1), store(24)}},
		"a distance back":                {[]instr{sp, distance(-8), only(opI32Add), number(1), store(0)}, []instr{sp, distance(-8), only(opI32Add), number(1), store(0)}},
		"a distance, and a value behind": {[]instr{sp, distance(8), only(opI32Add), distance(1), distance(2), only(opI32Add), only(opI64ExtendI32U), store(0)}, []instr{sp, distance(1), distance(2), only(opI32Add), only(opI64ExtendI32U), store(8)}},
	} {
		f := function{locals: []local{{1, typeI32}, {4, typeI64}}, code: c.was}
		f.sink()
		assert.Equal(t, c.is, f.code, what)
	}
	many := function{locals: []local{{mostVariables, typeI64}}, code: []instr{sp, load(8), set(3), sp, get(3), store(0)}}
	was := append([]instr(nil), many.code...)
	many.sink()
	assert.Equal(t, was, many.code, "more variables than can be counted")
}

// TestSunkDoesTheSame runs code as it was and sunk, from several beginnings.
func TestSunkDoesTheSame(t *testing.T) {
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		w := writer{t: t}
		for range rapid.IntRange(1, 6).Draw(t, "statements") {
			w.statement(2)
		}
		for variable := int64(2); variable < counter; variable++ {
			w.put(get(stackLocal), get(variable), store(8*variable))
		}
		f := function{locals: []local{{1, typeI32}, {8, typeI64}}, code: w.code}
		f.sink()
		f.tidy()
		if len(f.code) < len(w.code) {
			moved++
		}
		for seed := range int64(3) {
			was, is := newMachine(seed), newMachine(seed)
			was.run(w.code)
			is.run(f.code)
			require.Equal(t, was.memory, is.memory)
		}
	})
	require.Positive(t, moved)
}

const (
	counter = 6  // the variable that counts the turns of loops
	room    = 96 // bytes of memory
)

// writer writes code as a compiler could.
type writer struct {
	t     *rapid.T
	code  []instr
	loops int
}

func (w *writer) put(code ...instr) { w.code = append(w.code, code...) }
func (w *writer) choose(n int) int  { return rapid.IntRange(0, n-1).Draw(w.t, "choice") }
func (w *writer) variable() int64   { return int64(2 + w.choose(counter-2)) }
func (w *writer) offset() int64     { return int64(4 * w.choose(16)) }

func (w *writer) address() {
	switch w.choose(3) {
	case 0:
		w.put(get(w.variable()), only(opI32WrapI64))
	case 1:
		w.put(get(stackLocal), distance(w.offset()), only(opI32Add))
	default:
		w.put(get(stackLocal))
	}
}

func (w *writer) value(depth int) {
	choices := 6
	if depth == 0 {
		choices = 3
	}
	switch w.choose(choices) {
	case 0, 1:
		w.put(get(w.variable()))
	case 2:
		w.put(number(int64(w.choose(9))))
	case 3:
		w.address()
		w.put(load(w.offset()))
	case 4:
		w.value(depth - 1)
		w.value(depth - 1)
		w.put(only(opI64Add))
	case 5:
		w.value(depth - 1)
		w.put(tee(w.variable()))
	}
}

func (w *writer) statement(depth int) {
	choices := 9
	if depth == 0 {
		choices = 6
	}
	switch w.choose(choices) {
	case 0, 1, 2:
		w.value(2)
		w.put(set(w.variable()))
	case 3, 4:
		w.address()
		w.value(2)
		w.put(store(w.offset()))
	case 5:
		w.put(distance(0), jump(opCall, 0), only(opDrop))
	case 6:
		w.value(1)
		w.put(only(opI64Eqz), opening(opIf))
		w.statement(depth - 1)
		if w.choose(2) == 0 {
			w.put(only(opElse))
			w.statement(depth - 1)
		}
		w.put(only(opEnd))
	case 7:
		w.put(opening(opBlock))
		w.statement(depth - 1)
		w.value(1)
		w.put(only(opI64Eqz), jump(opBrIf, 0))
		w.statement(depth - 1)
		w.put(only(opEnd))
	case 8:
		if w.loops > 0 { // one counter
			return
		}
		w.loops++
		w.put(number(-3), set(counter), opening(opLoop))
		w.statement(depth - 1)
		w.statement(depth - 1)
		w.put(get(counter), number(1), only(opI64Add), tee(counter), only(opI64Eqz), only(opI32Eqz), jump(opBrIf, 0), only(opEnd))
		w.loops--
	}
}

// machine runs what a writer writes. Its addresses go round.
type machine struct {
	variables [counter + 1]int64
	memory    [room]byte
	stack     []int64
}

func newMachine(seed int64) *machine {
	m := &machine{}
	for i := range m.memory {
		m.memory[i] = byte(int64(i)*7 + seed*31)
	}
	for i := 2; i < counter; i++ {
		m.variables[i] = seed * int64(i) % 5 * 8
	}
	return m
}

func (m *machine) pop() int64 {
	v := m.stack[len(m.stack)-1]
	m.stack = m.stack[:len(m.stack)-1]
	return v
}
func (m *machine) push(v int64) { m.stack = append(m.stack, v) }

func truth(is bool) int64 {
	if is {
		return 1
	}
	return 0
}

func (m *machine) place(base, offset int64, i int) *byte {
	return &m.memory[((base+offset+int64(i))%room+room)%room]
}

func (m *machine) run(code []instr) {
	next := successors(code)
	for at := 0; at < len(code); {
		in, to := code[at], at+1
		switch in.op {
		case opLocalGet:
			m.push(m.variables[in.n])
		case opLocalSet:
			m.variables[in.n] = m.pop()
		case opLocalTee:
			m.variables[in.n] = m.stack[len(m.stack)-1]
		case opI64Const, opI32Const:
			m.push(in.n)
		case opI64Add, opI32Add:
			m.push(m.pop() + m.pop())
		case opI64Eqz, opI32Eqz:
			m.push(truth(m.pop() == 0))
		case opI32WrapI64, opI64ExtendI32U:
		case opI64Load:
			base, v := m.pop(), int64(0)
			for i := range 8 {
				v |= int64(*m.place(base, in.n, i)) << (8 * i)
			}
			m.push(v)
		case opI64Store:
			v, base := m.pop(), m.pop()
			for i := range 8 {
				*m.place(base, in.n, i) = byte(v >> (8 * i))
			}
		case opDrop:
			m.pop()
		case opCall:
			for i := range m.memory {
				m.memory[i]++
			}
		case opIf, opBrIf: // the way if not, and if so, in this order for br_if
			if so := m.pop() != 0; so == (in.op == opBrIf) {
				to = next[at][1]
			}
		case opElse, opBr:
			to = next[at][0]
		}
		at = to
	}
}
