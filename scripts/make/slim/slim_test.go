package slim

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "striderule/calc/calctest/cases"
)

// build compiles a program of testdata for the browser.
func build(t *testing.T, source string) []byte {
	t.Helper()
	to := filepath.Join(t.TempDir(), "program.wasm")
	compile := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", to, filepath.Join("testdata", source))
	compile.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOFLAGS=")
	out, err := compile.CombinedOutput()
	require.NoError(t, err, string(out))
	program, err := os.ReadFile(to)
	require.NoError(t, err)
	return program
}

// run lets node run a program and returns what it printed.
func run(t *testing.T, program []byte, env ...string) string {
	t.Helper()
	out, err := tryRun(t, program, env...)
	require.NoError(t, err, out)
	return out
}

// tryRun does so for a program that may fail.
func tryRun(t *testing.T, program []byte, env ...string) (string, error) {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "program.wasm")
	require.NoError(t, os.WriteFile(file, program, 0o644))
	node := exec.Command("node", filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), file)
	node.Env = append([]string{"PATH=" + os.Getenv("PATH")}, env...)
	out, err := node.CombinedOutput()
	return string(out), err
}

// TestProgram runs one program as it was and slimmed. It does what leans on the
// runtime's tables: stacks that grow and are searched for pointers at every turn,
// goroutines that wait within calls, panics that are recovered from.
func TestProgram(t *testing.T) {
	was := build(t, "runtime.go")
	is, err := Program(was)
	require.NoError(t, err)
	assert.Less(t, len(is), len(was))
	again, err := Program(was)
	require.NoError(t, err)
	assert.Equal(t, is, again, "the same each time")
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("the program is not run: there is no node (Debian: apt-get install nodejs)")
	}
	want := run(t, was)
	assert.Contains(t, want, "all done")
	assert.Equal(t, want, run(t, is))
	assert.Equal(t, want, run(t, is, "GOGC=1"), "with a collection at every turn")
	assert.Equal(t, want, run(t, is, "GODEBUG=gcstoptheworld=2,clobberfree=1"), "and what is freed made useless")
}

// A panic ends the program as ever: its message is printed, and the page is told.
func TestPanicHasItsMessage(t *testing.T) {
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("the program is not run: there is no node (Debian: apt-get install nodejs)")
	}
	was := build(t, "panics.go")
	is, err := Program(was)
	require.NoError(t, err)
	for _, program := range [][]byte{was, is} {
		out, err := tryRun(t, program)
		var exit *exec.ExitError
		require.ErrorAs(t, err, &exit, out)
		assert.Equal(t, 2, exit.ExitCode(), out)
		assert.Contains(t, out, "panic: it broke in the cellar")
	}
}

// A name that is in no program any more is none to leave out, nor one that never returns.
func TestNeedlessIsThere(t *testing.T) {
	m, err := parse(build(t, "runtime.go"))
	require.NoError(t, err)
	mem, err := m.memory()
	require.NoError(t, err)
	tables, err := findTables(mem)
	require.NoError(t, err)
	var names []string
	for _, at := range tables.at {
		names = append(names, tables.name(at))
	}
	for _, begin := range neverCalled {
		assert.True(t, slices.ContainsFunc(names, func(name string) bool { return strings.HasPrefix(name, begin) }), begin)
	}
	for _, name := range slices.Concat(called, doNothing, noReturn) {
		assert.Contains(t, names, name)
	}
}

func TestKnows(t *testing.T) {
	assert.NoError(t, Knows(Toolchain))
	for _, version := range []string{"go1.26", "go1.26.7", "go1.26.80", "go1.25.3", "go1.27", "devel go1.27-0123456", ""} {
		assert.ErrorContains(t, Knows(version), "scripts/make/slim knows the programs of go1.26", version)
	}
}

func TestRefuses(t *testing.T) {
	whole := build(t, "runtime.go")
	for what, broken := range map[string][]byte{
		"nothing":      nil,
		"text":         []byte("<!doctype html>"),
		"cut short":    whole[:len(whole)/2],
		"head alone":   []byte(magic),
		"other tables": []byte(strings.Replace(string(whole), "\xf1\xff\xff\xff\x00\x00\x01\x08", "\xf0\xff\xff\xff\x00\x00\x01\x08", 1)),
	} {
		_, err := Program(broken)
		assert.ErrorContains(t, err, "slim: ", what)
	}
}

func TestNumbersReadAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		i, u := rapid.Int64().Draw(t, "int"), rapid.Uint64().Draw(t, "uint")
		r := reader{b: appendUint(appendInt(nil, i), u)}
		require.Equal(t, i, r.int())
		require.Equal(t, u, r.uint())
		require.True(t, r.end())
		require.NoError(t, r.err)
	})
}

func TestMemoryReadsAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var mem []byte
		for range rapid.IntRange(0, 6).Draw(t, "parts") {
			mem = append(mem, make([]byte, rapid.IntRange(0, 3*leastGap).Draw(t, "zeros"))...)
			mem = append(mem, rapid.SliceOfN(rapid.Byte(), 1, 40).Draw(t, "bytes")...)
		}
		m := &module{sections: []section{{id: dataSection}}}
		m.setMemory(mem)
		got, err := m.memory()
		require.NoError(t, err)
		for len(mem) > 0 && mem[len(mem)-1] == 0 {
			mem = mem[:len(mem)-1]
		}
		require.Equal(t, string(mem), string(got))
	})
}

func TestValuesReadAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := values(rapid.SliceOfN(rapid.Int32Range(-2, 3), 1, 50).Draw(t, "values"))
		tables := &tables{mem: v.appendRun([]byte{0}), index: 1 << 10}
		tables.index = len(tables.mem)
		require.Equal(t, v, tables.values(1))
	})
}

// TestNumber checks what the runtime asks for: it finds under the new numbers what
// it found under the old ones.
func TestNumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.IntRange(1, 30).Draw(t, "size")
		frame := values(rapid.SliceOfN(rapid.Int32Range(0, 2), size, size).Draw(t, "frame"))
		pointer := values(rapid.SliceOfN(rapid.Int32Range(-1, 3), size, size).Draw(t, "pointer"))
		live := map[int64]bool{0: true}
		for _, n := range rapid.SliceOf(rapid.Int64Range(0, int64(size-1))).Draw(t, "live") {
			live[n] = true
		}
		afterPanic := rapid.Int64Range(0, int64(size-1)).Draw(t, "after a panic")
		live[afterPanic] = true
		ends := map[int64]bool{}
		for _, n := range rapid.SliceOf(rapid.Int64Range(1, int64(size))).Draw(t, "ends") {
			if !live[n] {
				ends[n] = true
			}
		}

		tables := &tables{at: map[int]int{7: 0}, numbers: map[int]numbering{}, runs: recSize + 4*2}
		record := make([]byte, tables.runs)
		runs := frame.appendRun([]byte{0})
		little.PutUint32(record[recFrame:], 1)
		little.PutUint32(record[recByAddress:], 2)
		little.PutUint32(record[recDeferReturn:], uint32(afterPanic))
		little.PutUint32(record[recSize+4*pointerIndex:], uint32(len(runs)))
		tables.mem = append(record, pointer.appendRun(runs)...)
		tables.index = len(tables.mem)
		tables.number(7, live, ends)

		n := tables.numbers[7]
		require.Equal(t, int64(0), n.new[0], "the entry stays the entry")
		seen := map[int64]bool{}
		for was := range live {
			is := n.new[was]
			require.False(t, seen[is], "each has its own")
			seen[is] = true
			require.LessOrEqual(t, is, 2*int64(len(live)))
			require.Equal(t, frame.at(was), values(n.frame).at(is))
			if was > 0 {
				require.Equal(t, pointer.at(was-1), values(n.pointer).at(is-1))
			}
		}
		for was := range ends {
			is := n.new[was]
			require.Positive(t, is)
			require.LessOrEqual(t, is, 2*int64(len(live)+len(ends)))
			require.Equal(t, frame.at(was), values(n.frame).at(is))
			require.Equal(t, pointer.at(was-1), values(n.pointer).at(is-1))
		}
		if afterPanic > 0 {
			require.Equal(t, pointer.at(afterPanic), values(n.pointer).at(n.new[afterPanic]))
		}
	})
}

func TestInstructionsReadAsWritten(t *testing.T) {
	m, err := parse(build(t, "runtime.go"))
	require.NoError(t, err)
	functions, err := m.functions()
	require.NoError(t, err)
	require.Greater(t, len(functions), 1000)
	for _, f := range functions {
		again, err := decodeFunction(f.encode())
		require.NoError(t, err)
		require.Equal(t, f, again)
	}
}

func TestTidy(t *testing.T) {
	get := instr{op: opLocalGet, n: stackLocal}
	other := instr{op: opLocalGet, n: 4}
	load := instr{op: opLoadFirst, n: 8}
	further := load
	further.n = 96
	for what, c := range map[string]struct{ was, is []instr }{
		"set to itself":       {[]instr{other, {op: opLocalSet, n: 4}, get}, []instr{get}},
		"set to another":      {[]instr{other, {op: opLocalSet, n: 5}}, []instr{other, {op: opLocalSet, n: 5}}},
		"place in the frame":  {[]instr{get, {op: opI64ExtendI32U}, {op: opI64Const, n: 88}, {op: opI64Add}, {op: opI32WrapI64}, load}, []instr{get, further}},
		"other address":       {[]instr{other, {op: opI32WrapI64}, {op: opI32Const, n: 88}, {op: opI32Add}, load}, []instr{other, {op: opI32WrapI64}, {op: opI32Const, n: 88}, {op: opI32Add}, load}},
		"asked twice":         {[]instr{other, {op: opI64Eqz}, {op: opI64ExtendI32U}, {op: opI64Eqz}, {op: opI32Eqz}, {op: opIf}}, []instr{other, {op: opI64Eqz}, {op: opIf}}},
		"not less":            {[]instr{other, other, {op: 0x53}, {op: opI32Eqz}}, []instr{other, other, {op: 0x59}}},                 // i64.lt_s, i64.ge_s
		"not more":            {[]instr{other, other, {op: 0x4B}, {op: opI32Eqz}}, []instr{other, other, {op: 0x4D}}},                 // i32.gt_u, i32.le_u
		"not the same":        {[]instr{other, other, {op: 0x51}, {op: opI32Eqz}}, []instr{other, other, {op: 0x52}}},                 // i64.eq, i64.ne
		"not less, of floats": {[]instr{other, other, {op: 0x63}, {op: opI32Eqz}}, []instr{other, other, {op: 0x63}, {op: opI32Eqz}}}, // f64.lt
	} {
		f := function{code: c.was}
		f.tidy()
		assert.Equal(t, c.is, f.code, what)
	}
}

func TestShortName(t *testing.T) {
	for name, want := range map[string]string{
		"main.main":              "",
		"runtime.bgsweep":        "runtime.",
		"runtime.(*mheap).alloc": "runtime.(*T).method",
		"main.(*sheet).Solve":    "value.(*T).method",
		"reflect.makeFuncStub":   "reflect.makeFuncStub",
	} {
		assert.Equal(t, want, shortName(name))
	}
}
