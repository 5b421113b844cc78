package slim

import "fmt"

// pageSize is how memory is counted.
const pageSize = 1 << 16

// An export is what a program shows of itself.
type export struct {
	name  string
	kind  byte
	index uint64
}

const globalExport = 3

func (m *module) exports() ([]export, error) {
	body, err := m.body(exportSection)
	if err != nil {
		return nil, err
	}
	r := reader{b: body}
	all := make([]export, 0, 16)
	for n := r.uint(); n > 0 && r.err == nil; n-- {
		name := string(r.bytes(int(r.uint())))
		all = append(all, export{name, r.byte(), r.uint()})
	}
	return all, r.err
}

func (m *module) setExports(all []export) {
	body := appendUint(nil, uint64(len(all)))
	for _, e := range all {
		body = appendUint(body, uint64(len(e.name)))
		body = append(append(body, e.name...), e.kind)
		body = appendUint(body, e.index)
	}
	m.set(exportSection, body)
}

// A global is a variable of the machine that a program is for: Go keeps in them what
// processors have in registers.
type global struct {
	kind  byte // the type of its value
	value int64
}

const kindI32, kindI64 = 0x7F, 0x7E

// globals returns the variables. All that Go's linker writes are whole numbers.
func (m *module) globals() ([]global, error) {
	body, err := m.body(globalSection)
	if err != nil {
		return nil, err
	}
	r := reader{b: body}
	var all []global
	for n := r.uint(); n > 0 && r.err == nil; n-- {
		g := global{kind: r.byte()}
		changes, op := r.byte(), r.byte()
		g.value = r.int()
		if end := r.byte(); changes != 1 || end != opEnd || !(g.kind == kindI32 && op == opI32Const || g.kind == kindI64 && op == opI64Const) {
			return nil, fmt.Errorf("global %d is no variable of whole numbers", len(all))
		}
		all = append(all, g)
	}
	return all, r.err
}

func (m *module) setGlobals(all []global) {
	body := appendUint(nil, uint64(len(all)))
	for _, g := range all {
		op := byte(opI32Const)
		if g.kind == kindI64 {
			op = opI64Const
		}
		body = appendInt(append(body, g.kind, 1, op), g.value)
		body = append(body, opEnd)
	}
	m.set(globalSection, body)
}
