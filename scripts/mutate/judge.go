package main

import (
	"regexp"
	"strconv"
)

// A judge runs tests against mutants.
type judge struct {
	suites []*suite
	last   map[string]string // by function, the test that killed a mutant of it
	kills  map[string]int    // by test, how many it killed
}

// quick is how many seconds a test may take to be run together with others.
const quick = 0.08

// guest is how many seconds a test of another package may take to be asked.
const guest = 0.4

// judge says what comes of a mutant, and by which test.
func (j *judge) judge(m *mutant) (outcome, by string, err error) {
	if j.last == nil {
		j.last = map[string]string{}
	}
	if j.kills == nil {
		j.kills = map[string]int{}
	}
	reached := false
	for _, own := range []bool{true, false} {
		for _, s := range j.suites {
			if own != (s.pkg == m.pkg) {
				continue
			}
			for _, group := range s.groups(m, j.last[m.file+m.function], j.kills) {
				if !own && group[0].Seconds > guest {
					continue
				}
				reached = true
				seconds := 0.0
				for _, t := range group {
					seconds += t.Seconds
				}
				o := s.run(group, int(2+8*seconds), "MUTATED_AT="+strconv.Itoa(m.number))
				if o.outcome == alive {
					continue
				}
				if by = failed(o.said); by == "" {
					by = group[0].Name
					if len(group) > 1 {
						by += " or others"
					}
				} else {
					j.last[m.file+m.function] = by
					j.kills[by]++
				}
				if !own {
					by += " of " + s.pkg
				}
				return o.outcome, by, nil
			}
		}
	}
	if !reached {
		by = "no test reaches it"
	}
	return alive, by, nil
}

var failure = regexp.MustCompile(`(?m)^--- FAIL: (\w+)`)

func failed(said []byte) string {
	if found := failure.FindSubmatch(said); found != nil {
		return string(found[1])
	}
	return ""
}

// groups are the tests that reach a mutant: the one that killed one nearby, the one that
// killed most of all, the other quick ones together, and the rest one by one.
func (s *suite) groups(m *mutant, last string, kills map[string]int) [][]test {
	most := ""
	for _, t := range s.tests {
		if t.reached[m.site] && t.Seconds <= guest && kills[t.Name] > kills[most] {
			most = t.Name
		}
	}
	var first, second, together []test
	var single [][]test
	for _, t := range s.tests {
		switch {
		case !t.reached[m.site]:
		case t.Name == last && t.Seconds <= guest:
			first = append(first, t)
		case t.Name == most:
			second = append(second, t)
		case t.Seconds < quick:
			together = append(together, t)
		case t.Name == last:
			single = append([][]test{{t}}, single...)
		default:
			single = append(single, []test{t})
		}
	}
	var all [][]test
	for _, group := range [][]test{first, second, together} {
		if len(group) > 0 {
			all = append(all, group)
		}
	}
	return append(all, single...)
}
