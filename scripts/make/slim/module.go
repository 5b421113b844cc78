package slim

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
)

// Sections of a module by their number (WebAssembly core specification, 5.5.2).
const (
	typeSection     = 1
	importSection   = 2
	functionSection = 3
	startSection    = 8
	codeSection     = 10
	dataSection     = 11
)

type section struct {
	id   byte
	body []byte
}

// module is a program, by section.
type module struct{ sections []section }

const magic = "\x00asm\x01\x00\x00\x00"

func parse(program []byte) (*module, error) {
	if !bytes.HasPrefix(program, []byte(magic)) {
		return nil, errors.New("it is no WebAssembly program of version 1")
	}
	r := reader{b: program, at: len(magic)}
	var m module
	for !r.end() {
		id := r.byte()
		m.sections = append(m.sections, section{id, r.bytes(int(r.uint()))})
	}
	return &m, r.err
}

// body returns the contents of the only section of a number.
func (m *module) body(id byte) ([]byte, error) {
	var found [][]byte
	for _, s := range m.sections {
		if s.id == id {
			found = append(found, s.body)
		}
	}
	if len(found) != 1 {
		return nil, fmt.Errorf("there are %d sections %d, not one", len(found), id)
	}
	return found[0], nil
}

func (m *module) set(id byte, body []byte) {
	for i := range m.sections {
		if m.sections[i].id == id {
			m.sections[i].body = body
		}
	}
}

// add puts an entry behind those of a section, and returns its index.
func (m *module) add(id byte, entry []byte) (index uint64, err error) {
	body, err := m.body(id)
	r := reader{b: body}
	index = r.uint()
	m.set(id, slices.Concat(appendUint(nil, index+1), body[r.at:], entry))
	return index, err
}

func (m *module) bytes() []byte {
	out := []byte(magic)
	for _, s := range m.sections {
		out = append(out, s.id)
		out = appendUint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out
}
