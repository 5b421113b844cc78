package main

import (
	"fmt"
	"hash/fnv"
	"strconv"
	"strings"
)

// A mutant is one small mistake.
type mutant struct {
	number   int    // from 1; what switches it on
	site     int    // the number of the first mutant of its site, by which it is reached
	pkg      string // import path
	file     string // without folders
	function string // with its receiver, or the variable that it gives a value to
	line     int
	text     string // the line, with the mistake between ‹ and ›
	key      string // names it for as long as its line stays as it is
}

// samples says of which packages one mutant of how many is judged; of 0, none is.
type samples map[string]int

func (s samples) String() string {
	var parts []string
	for path, n := range s {
		parts = append(parts, path+"="+strconv.Itoa(n))
	}
	return strings.Join(parts, " ")
}

func (s samples) Set(text string) error {
	path, count, _ := strings.Cut(text, "=")
	n, err := strconv.Atoi(count)
	if err != nil || n < 0 || path == "" {
		return fmt.Errorf("%q is no PACKAGE=N", text)
	}
	s[path] = n
	return nil
}

// has says whether the mutant is drawn. It hangs only on the mutant's key, so that
// other changes of the source draw no other mutants.
func (s samples) has(m *mutant, seed uint64) bool {
	n, drawn := s[m.pkg]
	if !drawn || n <= 1 {
		return n == 1 || !drawn
	}
	h := fnv.New64a()
	fmt.Fprintf(h, "%d %s", seed, m.key)
	sum := h.Sum64()
	return (sum^sum>>32)%uint64(n) == 0
}
