package slim

import (
	"fmt"
	"slices"
)

// The functions have their records one behind the other, in the order of their numbers. So where
// each begins, which the table of the index tells, and which function each is, which the index,
// the records and the table of lookups tell, need not be fetched: the program works it out when
// it starts, before its own first function.

// derive takes these numbers out of the tables, and gives the program a start that puts them back.
func (m *module) derive(t *tables) error {
	n, record := len(t.at), t.functions
	for i := range n {
		size := recSize + 4*(len(t.byAddress(record))+len(t.ownValues(record)))
		for _, number := range []struct{ place, is int }{
			{t.index + indexSize*i, firstAddress + i},
			{t.index + indexSize*i + 4, record - t.index},
			{record + recEntry, firstAddress + i},
			{t.lookups + lookupSize*i, i},
		} {
			if int(t.uint32(number.place)) != number.is {
				return fmt.Errorf("of function %d stands %d where %d should", i, t.uint32(number.place), number.is)
			}
			little.PutUint32(t.mem[number.place:], 0)
		}
		record += size
	}
	signature, err := m.add(typeSection, []byte{0x60, 0, 0}) // nothing in, nothing out
	if err != nil {
		return err
	}
	if _, err := m.add(functionSection, appendUint(nil, signature)); err != nil {
		return err
	}
	body := t.start(int64(n)).encode()
	function, err := m.add(codeSection, append(appendUint(nil, uint64(len(body))), body...))
	if err != nil {
		return err
	}
	function += uint64(t.imported)
	behind := slices.IndexFunc(m.sections, func(s section) bool { return s.id > startSection })
	m.sections = slices.Insert(m.sections, behind, section{startSection, appendUint(nil, function)})
	return nil
}

// start is what puts the numbers of n functions back.
func (t *tables) start(n int64) function {
	const i, record = 0, 1 // variables: a function's number, and its record, counted from the index
	get := func(variable int64) instr { return instr{op: opLocalGet, n: variable} }
	number := func(n int64) instr { return instr{op: opI32Const, n: n} }
	store := func(at int) instr { return instr{op: opStoreFirst, n: int64(at)} }
	load := func(op byte, at int) instr { return instr{op: op, rest: []byte{0}, n: int64(at)} }
	add, times := instr{op: opI32Add}, instr{op: opI32Mul}
	set := func(variable int64) instr { return instr{op: opLocalSet, n: variable} }
	code := []instr{
		number(int64(t.functions - t.index)), set(record),
		{op: opLoop, rest: []byte{blockVoid}},

		get(i), number(indexSize), times, get(i), number(firstAddress), add, store(t.index),
		get(i), number(indexSize), times, get(record), store(t.index + 4),
		get(record), get(i), number(firstAddress), add, store(t.index + recEntry),
		get(i), number(lookupSize), times, get(i), store(t.lookups),

		get(record), load(opLoadFirst, t.index+recByAddress), get(record), load(opI32Load8U, t.index+recOwn), add,
		number(4), times, number(recSize), add, get(record), add, set(record),

		get(i), number(1), add, {op: opLocalTee, n: i}, number(n), {op: opI32LtU}, {op: opBrIf},
		{op: opEnd},
		{op: opEnd},
	}
	return function{locals: []local{{2, typeI32}}, code: code}
}
