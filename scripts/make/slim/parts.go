package slim

import (
	"errors"
)

// Part is a function of a program. Its name is as the linker writes it: all but
// letters, digits, `_` and `.` are `_`.
type Part struct {
	Name string
	Code []byte
}

// Parts takes a program with names apart: its functions, and its data segments.
func Parts(program []byte) (functions []Part, data []byte, err error) {
	m, err := parse(program)
	if err != nil {
		return nil, nil, err
	}
	if data, err = m.body(dataSection); err != nil {
		return nil, nil, err
	}
	code, err := m.body(codeSection)
	if err != nil {
		return nil, nil, err
	}
	imports, err := m.body(importSection)
	if err != nil {
		return nil, nil, err
	}
	names, err := m.names()
	if err != nil {
		return nil, nil, err
	}
	first := (&reader{b: imports}).uint() // only functions are imported
	r := &reader{b: code}
	for i := range r.uint() {
		functions = append(functions, Part{names[first+i], r.bytes(int(r.uint()))}) // our own start has none
	}
	return functions, data, r.err
}

// names returns functions' names by index (core specification, appendix: name section).
func (m *module) names() (map[uint64]string, error) {
	for _, s := range m.sections {
		r := &reader{b: s.body}
		if s.id != 0 || string(r.bytes(int(r.uint()))) != "name" {
			continue
		}
		for !r.end() {
			kind := r.byte()
			part := &reader{b: r.bytes(int(r.uint()))}
			if kind != 1 { // functions
				continue
			}
			names := map[uint64]string{}
			for n := part.uint(); n > 0 && part.err == nil; n-- {
				index := part.uint()
				names[index] = string(part.bytes(int(part.uint())))
			}
			return names, part.err
		}
	}
	return nil, errors.New("it has no names")
}
