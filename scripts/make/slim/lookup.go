package slim

import "fmt"

// The runtime finds a function's record from an address by a table with an entry for each
// 4096 addresses (runtime.findfunc). In the browser a function has 65,536 of them and is
// asked for by its first, so that fifteen entries of sixteen are never read: a fifth of the
// whole program. The table keeps the others, and the one function that reads it counts so.
const (
	lookups       = "runtime.findfunc"
	lookupsInDesc = 152 // where moduledata has findfunctab, minpc and maxpc
	tablesEnd     = 22  // words behind those: epclntab
	lookupSize    = 20  // runtime.findfuncbucket: four bytes, and one for each 16th part of it
	bucketBits    = 12  // internal/abi.FuncTabBucketSize
	functionBits  = 16  // cmd/link/internal/wasm: funcValueOffset
)

func (t *tables) thinLookups(functions []function) error {
	patched := 0
	for i, f := range functions {
		if at, known := t.at[i]; !known || t.name(at) != lookups {
			continue
		}
		for j := 1; j < len(f.code); j++ {
			if shift := &f.code[j-1]; shift.is(opI64Const, bucketBits) && f.code[j].op == opI64ShrU {
				shift.n = functionBits
				patched++
			}
		}
	}
	if patched != 1 {
		return fmt.Errorf("%s divides by the size of a bucket %d times", lookups, patched)
	}
	word := func(i int) int { return int(little.Uint64(t.mem[t.module+lookupsInDesc+8*i:])) }
	table, addresses, end := word(0), word(2)-word(1), word(tablesEnd)
	n := (addresses-1)>>functionBits + 1
	buckets, parts := (addresses-1)>>bucketBits+1, (addresses-1)>>(bucketBits-4)+1
	if n != len(t.at) || table <= 0 || table+4*buckets+parts != end || end > len(t.mem) {
		return fmt.Errorf("the table that %s reads is not where it should be", lookups)
	}
	t.lookups = table
	entries := t.mem[table:end]
	for i := range n {
		copy(entries[i*lookupSize:][:lookupSize], entries[i<<(functionBits-bucketBits)*lookupSize:])
	}
	clear(entries[n*lookupSize:])
	return nil
}
