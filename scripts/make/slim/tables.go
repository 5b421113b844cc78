package slim

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// tables are what the runtime knows of functions (runtime/symtab.go: pcHeader,
// moduledata; runtime/runtime2.go: _func), in the memory of a program:
//
//	header | names | files of packages | files | values by address | index | functions
//
// A function has values that change with the address, such as the size of its
// frame, in runs of (difference of the value, difference of the address), and
// values of its own, such as its map of pointers.
type tables struct {
	mem []byte

	names, packages, files, runs, index int // addresses
	functions, end                      int
	module                              int // address of moduledata
	lookups                             int // address of the table of lookups, once it is thinned
	own                                 int // address that the functions' own values count from
	imported                            int // functions, which are counted first

	at      map[int]int       // address of each function's record
	numbers map[int]numbering // of functions with new ones
}

// wiped are the own values that were wiped: functions may share them.
type wiped map[uint32]bool

var little = binary.LittleEndian

const (
	tableMagic  = 0xFFFFFFF1 // internal/abi.Go120PCLnTabMagic, current since
	headerWords = 8          // of pcHeader behind its first eight bytes
	ownInModule = 320        // where moduledata has gofunc
)

// Places in a function's record.
const (
	recEntry       = 0
	recName        = 4
	recDeferReturn = 12
	recFrame       = 16 // values by address: pcsp
	recFile        = 20
	recLine        = 24
	recByAddress   = 28 // how many more values by address
	recPackage     = 32
	recStartLine   = 36
	recOwn         = 43 // how many values of its own, a byte
	recSize        = 44
)

const indexSize = 8 // of an entry of the index: a function, and where its record is

// Values by address and own ones that nothing but traces and preemption by
// signals, which browsers don't have, asks for (internal/abi/symtab.go).
var (
	needlessByAddress = []bool{0: true, inlineIndex: true, 3: true} // UnsafePoint, InlTreeIndex, ArgLiveIndex
	needlessOwn       = []bool{inlineTree: true, argumentInfo: true, 6: true}
)

const (
	inlineIndex  = 2 // by address
	inlineTree   = 3
	argumentInfo = 5
	none         = 0xFFFFFFFF // no such own value
)

func isOne(of []bool, i int) bool { return i < len(of) && of[i] }

func findTables(mem []byte) (*tables, error) {
	header := append(little.AppendUint32(nil, tableMagic), 0, 0, 1, 8)
	at := bytes.Index(mem, header)
	if at < 0 || bytes.Contains(mem[at+1:], header) {
		return nil, errors.New("their header is not there, or not once")
	}
	if len(mem)-at < len(header)+headerWords*8 {
		return nil, errShort
	}
	word := func(i int) int { return int(little.Uint64(mem[at+len(header)+8*i:])) }
	t := &tables{mem: mem, at: map[int]int{}, numbers: map[int]numbering{}, names: at + word(3), packages: at + word(4), files: at + word(5), runs: at + word(6), index: at + word(7)}
	n := word(0)
	if n < 1 || !(at < t.names && t.names < t.packages && t.packages < t.files && t.files < t.runs && t.runs < t.index) || n > (len(mem)-t.index)/8 {
		return nil, errors.New("their header makes no sense")
	}
	module := bytes.Index(mem, little.AppendUint64(little.AppendUint64(nil, uint64(at)), uint64(t.names)))
	if module < 0 || len(mem)-module < ownInModule+8 {
		return nil, errors.New("the description of the module (moduledata) is not there")
	}
	t.module = module
	t.own = int(little.Uint64(mem[module+ownInModule:]))
	t.functions = t.index + indexSize*n + 4
	if t.own <= 0 || t.own >= len(mem) {
		return nil, errors.New("the description of the module (moduledata) makes no sense")
	}
	if t.functions > len(mem) {
		return nil, errShort
	}
	for place := t.index; place < t.functions-4; place += indexSize {
		function, at := int(t.uint32(place))-firstAddress, t.index+int(t.uint32(place+4))
		if at < t.functions || at+recSize > len(mem) {
			return nil, fmt.Errorf("function %d has no record", function)
		}
		t.at[function] = at
		t.end = max(t.end, at+recSize+4*int(t.uint32(at+recByAddress))+4*int(mem[at+recOwn]))
	}
	return t, nil
}

func (t *tables) uint32(at int) uint32 { return little.Uint32(t.mem[at:]) }

// byAddress and ownValues return where the record at an address has those values.
func (t *tables) byAddress(at int) []int {
	var places []int
	for i := range int(t.uint32(at + recByAddress)) {
		places = append(places, at+recSize+4*i)
	}
	return places
}

func (t *tables) ownValues(at int) []int {
	from := at + recSize + 4*int(t.uint32(at+recByAddress))
	var places []int
	for i := range int(t.mem[at+recOwn]) {
		places = append(places, from+4*i)
	}
	return places
}

// Names that the runtime looks at: isSystemGoroutine knows its own goroutines by the
// package of the function that they began with, stkframe.argMapInternal two functions
// of package reflect, and panicwrap takes the name of a method apart.
const (
	ofRuntime = "runtime."
	aMethod   = "(*T).method"
)

var asTheyAre = []string{"reflect.makeFuncStub", "reflect.methodValueCall"}

// strip leaves in the tables only what a running program asks for. They stay where
// they are, with zeros behind them: other tables have their addresses.
func (t *tables) strip() {
	names, offsets := []byte{0}, map[string]uint32{"": 0}
	nameAt := func(name string) uint32 {
		at, ok := offsets[name]
		if !ok {
			at = uint32(len(names))
			offsets[name] = at
			names = append(append(names, name...), 0)
		}
		return at
	}
	runs, places := []byte{0}, map[string]uint32{}
	place := func(v values) uint32 {
		run := v.appendRun(nil)
		at, ok := places[string(run)]
		if !ok {
			at = uint32(len(runs))
			places[string(run)] = at
			runs = append(runs, run...)
		}
		return at
	}
	var records []byte
	done := wiped{}
	for entry := t.index; entry < t.functions-4; entry += indexSize {
		function := int(t.uint32(entry)) - firstAddress
		at := t.at[function]
		t.dropOwn(at, done)
		frame, byAddress := t.values(t.uint32(at+recFrame)), []values{}
		for i, place := range t.byAddress(at) {
			v := t.values(t.uint32(place))
			if isOne(needlessByAddress, i) {
				v = nil
			}
			byAddress = append(byAddress, v)
		}
		afterPanic := t.uint32(at + recDeferReturn)
		if n, ok := t.numbers[function]; ok {
			frame = n.frame
			if pointerIndex < len(byAddress) && byAddress[pointerIndex] != nil {
				byAddress[pointerIndex] = n.pointer
			}
			afterPanic = uint32(n.new[int64(afterPanic)])
		}
		record := bytes.Clone(t.mem[at : at+recSize])
		put := func(place int, v uint32) { little.PutUint32(record[place:], v) }
		put(recName, nameAt(shortName(t.name(at))))
		put(recDeferReturn, afterPanic)
		put(recFrame, place(frame))
		for _, place := range []int{recFile, recLine, recPackage, recStartLine} {
			put(place, 0)
		}
		var behind []uint32
		for _, v := range byAddress {
			if v == nil {
				behind = append(behind, 0)
			} else {
				behind = append(behind, place(v))
			}
		}
		behind = cut(behind, 0)
		put(recByAddress, uint32(len(behind)))
		var own []uint32
		for i, place := range t.ownValues(at) {
			if isOne(needlessOwn, i) {
				own = append(own, none)
			} else {
				own = append(own, t.uint32(place))
			}
		}
		own = cut(own, none)
		record[recOwn] = byte(len(own))
		for _, v := range append(behind, own...) {
			record = little.AppendUint32(record, v)
		}
		little.PutUint32(t.mem[entry+4:], uint32(t.functions-t.index+len(records)))
		records = append(records, record...)
	}
	for _, part := range []struct {
		from, to int
		content  []byte
	}{
		{t.names, t.packages, names},
		{t.packages, t.runs, nil},
		{t.runs, t.index, runs},
		{t.functions, t.end, records},
	} {
		if len(part.content) > part.to-part.from {
			panic("slim: a table has grown") // each is a part of what it was
		}
		clear(t.mem[part.from:part.to])
		copy(t.mem[part.from:part.to], part.content)
	}
}

// cut leaves out absent values at the end.
func cut(values []uint32, absent uint32) []uint32 {
	for len(values) > 0 && values[len(values)-1] == absent {
		values = values[:len(values)-1]
	}
	return values
}

// name returns a function's name.
func (t *tables) name(at int) string {
	name := t.mem[t.names+int(t.uint32(at+recName)) : t.packages]
	return string(name[:bytes.IndexByte(name, 0)])
}

// has reports whether there is a function whose name begins so.
func (t *tables) has(begin string) bool {
	for _, at := range t.at {
		if strings.HasPrefix(t.name(at), begin) {
			return true
		}
	}
	return false
}

// shortName returns what is kept of a name.
func shortName(name string) string {
	if slices.Contains(asTheyAre, name) {
		return name
	}
	short := ""
	if strings.HasPrefix(name, ofRuntime) {
		short = ofRuntime
	}
	if strings.Contains(name, ".(*") {
		short = cmp.Or(short, "value.") + aMethod
	}
	return short
}

// dropOwn wipes the needless own values of a function: what was inlined where, and
// how to print arguments. Their sizes are known.
func (t *tables) dropOwn(at int, done wiped) {
	byAddress, own := t.byAddress(at), t.ownValues(at)
	first := func(i int) (from int, ok bool) {
		if i >= len(own) {
			return 0, false
		}
		offset := t.uint32(own[i])
		if offset == none || done[offset] {
			return 0, false
		}
		done[offset] = true
		return t.own + int(offset), true
	}
	if from, ok := first(inlineTree); ok && inlineIndex < len(byAddress) {
		if index := t.values(t.uint32(byAddress[inlineIndex])); index != nil {
			clear(t.mem[from : from+16*int(slices.Max(index)+1)]) // runtime.inlinedCall: 16 bytes
		}
	}
	if from, ok := first(argumentInfo); ok {
		length := bytes.IndexByte(t.mem[from:], 0xFF) // abi.TraceArgsEndSeq
		clear(t.mem[from : from+length+1])
	}
}
