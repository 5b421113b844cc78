// Package slim makes a program that Go's linker wrote for the browser smaller
// and quicker, without changing what it does.
//
// The linker serves many masters: it writes tables of function names, files and
// lines for traces that nobody reads in a browser, tens of thousands of data
// segments, and code in which every jump goes through one table at the top of its
// function. What a phone must fetch shrinks by about a third when
//
//   - the tables keep only what the garbage collector and panics need (tables.go),
//   - the table by which functions are found has no entries that nobody reads (lookup.go),
//   - what follows from the order of the functions is worked out at the start (derive.go),
//   - the data comes in a few segments (memory.go),
//   - a jump forward is a jump forward (jumps.go),
//   - a call's return address is a small number (calls.go),
//   - a value is computed where it is used (sink.go),
//   - calls that nothing returns from need nothing to go on with (ends.go),
//   - what computes nothing is left out (idioms.go),
//   - and so is what a page never comes to (needless.go).
//
// All of it leans on how one version of the toolchain writes programs. Of a
// program by another Go it must not be tried: see Knows.
package slim

import (
	"fmt"
)

// Toolchain is the Go whose programs are understood, and by which the program is built
// whatever Go somebody has: go fetches it where it is another one. To raise it:
//
//   - compare cmd/internal/obj/wasm, cmd/link/internal/wasm, runtime/symtab.go (moduledata)
//     and lib/wasm/wasm_exec.js of both;
//   - change it here, and run scripts/test full: the tests of this package run a program
//     under Node, those of the browser the site;
//   - look at what scripts/size prints before and after.
const Toolchain = "go1.26.8"

// Knows reports whether programs by a Go of this version (as `go env GOVERSION`
// has it) can be slimmed, and if not what to do about it.
func Knows(version string) error {
	if version == Toolchain {
		return nil
	}
	return fmt.Errorf("scripts/make/slim knows the programs of %s, and this is one of %s: build with GOTOOLCHAIN=%s, or with -slim=0; slim.Toolchain says how to raise it", Toolchain, version, Toolchain)
}

// Program returns the WebAssembly program, slimmed. Of functions whose names begin as one in never
// the caller says that this program never comes to them: they end it.
func Program(program []byte, never ...string) ([]byte, error) {
	m, err := parse(program)
	if err != nil {
		return nil, fmt.Errorf("slim: %w", err)
	}
	mem, err := m.memory()
	if err != nil {
		return nil, fmt.Errorf("slim: data: %w", err)
	}
	tables, err := findTables(mem)
	if err != nil {
		return nil, fmt.Errorf("slim: tables of functions: %w", err)
	}
	if err := m.slimCode(tables, never); err != nil {
		return nil, fmt.Errorf("slim: code: %w", err)
	}
	tables.strip()
	if err := m.derive(tables); err != nil {
		return nil, fmt.Errorf("slim: numbers to be worked out: %w", err)
	}
	m.setMemory(mem)
	return m.bytes(), nil
}
