// Command mutate says how much the tests of packages notice: it makes small mistakes
// (mutants) in their sources, one at a time, and runs the tests that reach each.
//
//	mutate [flags] PACKAGE...
//
// The mutants:
//
//   - a comparison lets its limit in or keeps it out (< <= > >=), and is turned round
//     (< to >=, == to !=)
//   - + and -, * and / (and % to *) change places, also in += and the like; a minus
//     before a value goes; ++ and -- change places
//   - && and || change places; any other condition is negated
//   - a number is another: 0 and 1 change places, others become one more. Numbers are
//     literals, and untyped or plain constants where they are used
//   - an assignment to what was there before, and a call whose result nobody takes, go
//   - a return gives zero values, unless it ends in false: nobody looks at the rest then
//
// Texts are left alone: strings, letters, assignments to strings, returns of nothing
// but strings. So are declarations of constants, shifts, operators on bits, and the size
// in bits that strconv is told.
//
// All mutants of all packages are compiled in at once, each behind a number that an
// environment variable switches on (runtime.go.txt), so that each package's tests are
// compiled once; the sources are rewritten by go build's -overlay, in no folder of the
// project. Each test function is then run by itself, to learn which mutants it
// reaches, and how long it takes. A mutant is judged by the tests of its own package
// that reach it: one that killed a mutant nearby, the one that killed most of all, the
// quick ones together, then one after the other; those that live by those of the other
// packages that take less than 0.4 s. What takes eight times as long as it should (by the
// processor's clock, and 2 s more) is killed by time, as is what runs out of memory.
// Properties are tried from a fixed seed, on 20 cases where 100 take long.
//
// Results go to a file, line by line, and a run goes on where the last one stopped.
// What is alive is compared with the list of mutants that are known to be equivalent:
// the program ends with 1 if one lives that is not listed, with 3 if -for ended it.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"
)

// options are what the command line says.
type options struct {
	packages []string
	dir      string // where binaries and results are kept
	list     string // the file of known survivors
	skip     string // a pattern of tests that are left out
	samples  samples
	seed     uint64
	again    bool
	limit    time.Duration
	verbose  bool
}

func main() {
	o := options{samples: samples{}}
	flag.StringVar(&o.dir, "dir", ".build/mutate", "folder for binaries and results")
	flag.StringVar(&o.list, "known", "calc/testdata/survivors.txt", "file of the mutants that are known to be equivalent")
	flag.StringVar(&o.skip, "skip", "", "leave out the tests that match this pattern, as go test -skip does")
	flag.Var(o.samples, "sample", "PACKAGE=N: judge one mutant of N of this package, drawn from the seed; with 0, none")
	flag.Uint64Var(&o.seed, "seed", 1, "seed of the samples")
	flag.BoolVar(&o.again, "again", false, "judge once more what lived and is not listed, and nothing else: tests were added")
	flag.DurationVar(&o.limit, "for", 0, "stop after so long; the next run goes on")
	flag.BoolVar(&o.verbose, "v", false, "print each mutant as it is judged")
	flag.Parse()
	if o.packages = flag.Args(); len(o.packages) == 0 {
		fmt.Fprintln(os.Stderr, "usage: mutate [flags] PACKAGE...")
		flag.PrintDefaults()
		os.Exit(2)
	}
	done, err := run(o, os.Stdout)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(2)
	case done.left > 0:
		os.Exit(3)
	case done.unlisted > 0:
		os.Exit(1)
	}
}

// run judges all mutants of the packages that are not judged yet.
func run(o options, out io.Writer) (tally, error) {
	began := time.Now()
	dir, err := filepath.Abs(o.dir)
	if err != nil {
		return tally{}, err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return tally{}, err
	}
	pkgs, err := load(o.packages)
	if err != nil {
		return tally{}, err
	}
	mutants, overlay, err := rewriteAll(pkgs, dir)
	if err != nil {
		return tally{}, err
	}
	suites, err := compile(pkgs, overlay, dir, o.skip)
	if err != nil {
		return tally{}, err
	}
	results, err := openResults(filepath.Join(dir, "results.txt"))
	if err != nil {
		return tally{}, err
	}
	defer results.close()
	known, err := readKnown(o.list)
	if err != nil {
		return tally{}, err
	}
	var living map[string]bool
	if o.again {
		living = results.forgetLiving(known)
	}
	j := judge{suites: suites, kills: results.kills()}
	left := 0
	for _, m := range mutants {
		if !o.samples.has(m, o.seed) || results.has(m) || o.again && !living[m.key] {
			continue
		}
		if o.limit > 0 && time.Since(began) > o.limit {
			left++
			continue
		}
		outcome, by, err := j.judge(m)
		if err != nil {
			return tally{}, err
		}
		if o.verbose {
			fmt.Fprintf(out, "%-8s %s:%d %s %s\n", outcome, m.file, m.line, m.key, by)
		}
		if err := results.add(m, outcome, by); err != nil {
			return tally{}, err
		}
	}
	return report(out, o, mutants, results, known, left), nil
}
