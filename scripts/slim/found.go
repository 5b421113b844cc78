package slim

import (
	"context"
	"fmt"
	"slices"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
)

// found is the page that a program finds while it is begun here: all that it has are the
// things that syscall/js itself asks for, and room for one function. web/start.js
// gives the begun program the same values by the same numbers.
type found struct {
	values []string // those with a number of their own, from firstValue on
	set    []string // what the program has put on the page
}

// What the program knows values of JavaScript by (lib/wasm/wasm_exec.js).
const (
	theGlobal  = 5 // globalThis
	theGo      = 6 // the object that runs the program
	firstValue = 7

	nanHead   = 0x7FF80000 << 32 // of what is no number
	aFunction = 4 << 32

	importsFrom = "gojs"
)

// wanted are the values that a program has when it waits, by their numbers.
var wanted = []string{"Object", "Array", waitsIn, "function 1"}

// What a page starts the program with: a function of an object.
const (
	waitsIn = "striderule"
	waitsAs = "start"
)

// whole returns an error if the program has other values than web/start.js will give it.
func (f *found) whole() error {
	if !slices.Equal(f.values, wanted) || !slices.Equal(f.set, []string{waitsAs}) {
		return fmt.Errorf("when it waits it has %q and has set %q, which should be %q and %q: change web/start.js and scripts/slim/found.go together", f.values, f.set, wanted, waitsAs)
	}
	return nil
}

// value is how the program sees a function of the page.
func (f *found) value(name string) uint64 {
	f.values = append(f.values, name)
	return nanHead | aFunction | uint64(firstValue+len(f.values)-1)
}

// A stack is where the program puts what it asks, and finds the answer.
type stack struct {
	mem api.Memory
	sp  uint32
}

func (s stack) uint64(at uint32) uint64 {
	v, ok := s.mem.ReadUint64Le(s.sp + at)
	if !ok {
		panic("its stack is not in its memory")
	}
	return v
}

func (s stack) put(at uint32, v uint64) {
	if !s.mem.WriteUint64Le(s.sp+at, v) {
		panic("its stack is not in its memory")
	}
}

// bytes are those of the text or slice at a place.
func (s stack) bytes(at uint32) []byte {
	b, ok := s.mem.Read(uint32(s.uint64(at)), uint32(s.uint64(at+8)))
	if !ok {
		panic("what it says is not in its memory")
	}
	return b
}

func (s stack) ref(at uint32) uint32 { return uint32(s.uint64(at)) }

// answers are the functions that a program may call until it waits, by name.
func (f *found) answers() map[string]func(stack) {
	return map[string]func(stack){
		"runtime.resetMemoryDataView": func(stack) {},
		"runtime.nanotime1":           func(s stack) { s.put(8, 1) }, // 0 is none
		"runtime.getRandomData": func(s stack) {
			for i, b := 0, s.bytes(8); i < len(b); i++ {
				b[i] = byte(i*37 + 11) // all zeros would have Go ask its clock
			}
		},
		"syscall/js.valueGet": func(s stack) {
			of, name := s.ref(8), string(s.bytes(16))
			if of != theGlobal || !slices.Contains(wanted, name) {
				panic(fmt.Sprintf("it asks for %q of value %d", name, of))
			}
			s.put(32, f.value(name))
		},
		"syscall/js.valueCall": func(s stack) {
			of, name, args := s.ref(8), string(s.bytes(16)), s.uint64(40)
			if of != theGo || name != "_makeFuncWrapper" || args == 0 {
				panic(fmt.Sprintf("it calls %q of value %d", name, of))
			}
			id, _ := s.mem.ReadFloat64Le(uint32(s.uint64(32)))
			s.put(56, f.value(fmt.Sprint("function ", id)))
			s.put(64, 1) // nothing was thrown
		},
		"syscall/js.valueSet": func(s stack) {
			of, name := s.ref(8), string(s.bytes(16))
			if at := slices.Index(f.values, waitsIn); at < 0 || of != uint32(firstValue+at) {
				panic(fmt.Sprintf("it sets %q of value %d", name, of))
			}
			f.set = append(f.set, name)
		},
	}
}

// offer gives a program what it imports. What it is not to call yet says so.
func (f *found) offer(ctx context.Context, runtime wazero.Runtime, program wazero.CompiledModule) error {
	answers := f.answers()
	page := runtime.NewHostModuleBuilder(importsFrom)
	for _, imported := range program.ImportedFunctions() {
		_, name, _ := imported.Import()
		answer, ok := answers[name]
		if !ok {
			answer = func(stack) { panic("it calls " + name) }
		}
		does := api.GoModuleFunc(func(_ context.Context, m api.Module, args []uint64) {
			answer(stack{m.Memory(), uint32(args[0])})
		})
		page.NewFunctionBuilder().WithGoModuleFunction(does, imported.ParamTypes(), imported.ResultTypes()).Export(name)
	}
	_, err := page.Instantiate(ctx)
	return err
}
