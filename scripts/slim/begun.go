package slim

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
)

// begin is what a page calls to start a program. One that was begun has it no more:
// that is how web/start.js tells them apart.
const begin = "run"

func begins(e export) bool { return e.name == begin }

// Begun runs the program, in an environment, up to where it waits for the page for
// the first time, and returns one that goes on from there: its memory is what Go's start,
// and that of all packages, made of it. A phone need not do it, nor compile what does it.
//
// Until it waits, the program may only do what found has; the error says what else it asked
// for. Clock and seeds are those of here, the same each time: what wants to be
// random must not lean on Go's own source.
func Begun(program []byte, env ...string) ([]byte, error) {
	m, err := parse(program)
	if err != nil {
		return nil, fmt.Errorf("slim: %w", err)
	}
	if err := m.begin(env); err != nil {
		return nil, fmt.Errorf("slim: begun: %w", err)
	}
	return m.bytes(), nil
}

func (m *module) begin(env []string) error {
	globals, err := m.globals()
	if err != nil {
		return err
	}
	exports, err := m.exports()
	if err != nil {
		return err
	}
	if !slices.ContainsFunc(exports, begins) {
		return errors.New("it was begun before")
	}
	visible := slices.Clone(exports)
	for i := range globals {
		visible = append(visible, export{name: seen(i), kind: globalExport, index: uint64(i)})
	}
	m.setExports(visible)
	mem, err := m.runUntilItWaits(globals, env)
	if err != nil {
		return err
	}
	m.setExports(slices.DeleteFunc(exports, begins))
	m.setGlobals(globals)
	m.set(memorySection, appendUint([]byte{1, 0}, uint64(len(mem)/pageSize)))
	m.setMemory(mem)
	return nil
}

// seen is the name under which a global is seen while the program runs here.
func seen(global int) string { return fmt.Sprint("global ", global) }

// runUntilItWaits returns the memory that the program leaves, and sets the globals to what
// they are then.
func (m *module) runUntilItWaits(globals []global, env []string) (mem []byte, err error) {
	ctx := context.Background()
	runtime := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfigInterpreter())
	defer func() { err = errors.Join(err, runtime.Close(ctx)) }()
	program, err := runtime.CompileModule(ctx, m.bytes())
	if err != nil {
		return nil, err
	}
	var page found
	if err := page.offer(ctx, runtime, program); err != nil {
		return nil, err
	}
	is, err := runtime.InstantiateModule(ctx, program, wazero.NewModuleConfig())
	if err != nil {
		return nil, err
	}
	argc, argv, err := arguments(is.Memory(), []string{"js"}, env)
	if err != nil {
		return nil, err
	}
	if _, err := is.ExportedFunction(begin).Call(ctx, argc, argv); err != nil {
		return nil, err
	}
	if err := page.whole(); err != nil {
		return nil, err
	}
	for i := range globals {
		value := is.ExportedGlobal(seen(i)).Get()
		globals[i].value = int64(value)
		if globals[i].kind == kindI32 {
			globals[i].value = int64(int32(value))
		}
	}
	all, _ := is.Memory().Read(0, is.Memory().Size())
	return slices.Clone(all), nil
}

// arguments puts the words of a command line, and the environment, where Go's
// lib/wasm/wasm_exec.js puts them.
func arguments(mem api.Memory, args, env []string) (argc, argv uint64, err error) {
	at := uint32(4096)
	var pointers []uint32
	for _, words := range [][]string{args, env} {
		for _, word := range words {
			pointers = append(pointers, at)
			if !mem.WriteString(at, word+"\x00") {
				return 0, 0, errors.New("there is no room for its arguments")
			}
			at = (at + uint32(len(word)) + 1 + 7) &^ 7
		}
		pointers = append(pointers, 0)
	}
	argv = uint64(at)
	for _, p := range pointers {
		if !mem.WriteUint64Le(at, uint64(p)) {
			return 0, 0, errors.New("there is no room for its arguments")
		}
		at += 8
	}
	return uint64(len(args)), argv, nil
}
