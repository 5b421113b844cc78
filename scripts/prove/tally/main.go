// Command tally runs go test, and tells how far it has come: how many of how many tests,
// after how long, and which one runs.
//
//	go run ./scripts/prove/tally [flags of go test] ./package ...
//
// Of a test it prints what it wrote if it fails, and why it was skipped. It exits as go
// test does.
package main

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"time"
)

func main() {
	args := os.Args[1:]
	total, err := count(args)
	if err == nil {
		err = run(args, &tally{out: os.Stdout, total: total, began: time.Now()})
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "tally:", err)
		os.Exit(1)
	}
}

// count returns how many tests there are to be run.
func count(args []string) (int, error) {
	which := "."
	var list []string
	for _, a := range args {
		if pattern, ok := strings.CutPrefix(a, "-run="); ok {
			which = pattern
		} else if !strings.HasPrefix(a, "-cover") && !strings.HasPrefix(a, "-timeout") {
			list = append(list, a)
		}
	}
	out, err := exec.Command("go", append([]string{"test", "-list=" + which}, list...)...).Output()
	n := 0
	for line := range bytes.Lines(out) {
		if testName.Match(line) {
			n++
		}
	}
	if err != nil {
		os.Stdout.Write(out) // what does not compile
		return n, fmt.Errorf("listing the tests: %w", err)
	}
	return n, nil
}

var testName = regexp.MustCompile(`^(Test|Fuzz|Example)`)

func run(args []string, t *tally) error {
	test := exec.Command("go", append([]string{"test", "-json"}, args...)...)
	test.Stderr = os.Stderr
	events, err := test.StdoutPipe()
	if err != nil {
		return err
	}
	if err := test.Start(); err != nil {
		return err
	}
	if err := t.read(events); err != nil {
		return err
	}
	return test.Wait()
}

// An event is a line of go test -json; see go doc test2json.
type event struct {
	Action, Package, Test, Output string
	Elapsed                       float64
}

// often is the longest time without a line.
const often = 10 * time.Second

// Tests that take longer are named, the slowest of a package.
const (
	slowIs   = 5 // s
	mostSlow = 12
)

type tally struct {
	out         io.Writer
	total, done int
	began, told time.Time
	wrote       map[string]*strings.Builder // by package and test
	skips       map[string][]string         // by package
	passed      map[string]int              // by package
	took        map[string][]took           // by package
}

// A took is how long a test took, in seconds.
type took struct {
	test string
	long float64
}

// tell says how far it is, if it has been silent for some time.
func (t *tally) tell(e event) {
	if time.Since(t.told) > often {
		t.told = time.Now()
		fmt.Fprintf(t.out, "   %d of %d, %s: %s %s\n", t.done, t.total, seconds(time.Since(t.began)), short(e.Package), e.Test)
	}
}

func (t *tally) read(events io.Reader) error {
	t.wrote, t.skips, t.passed, t.took = map[string]*strings.Builder{}, map[string][]string{}, map[string]int{}, map[string][]took{}
	lines := bufio.NewScanner(events)
	lines.Buffer(nil, 64<<20)
	for lines.Scan() {
		var e event
		if err := json.Unmarshal(lines.Bytes(), &e); err != nil {
			fmt.Fprintln(t.out, lines.Text()) // of the compiler
			continue
		}
		t.hear(e)
	}
	return lines.Err()
}

func (t *tally) hear(e event) {
	top, _, inside := strings.Cut(e.Test, "/")
	key := e.Package + " " + top
	switch e.Action {
	case "output", "build-output":
		if t.wrote[key] == nil {
			t.wrote[key] = &strings.Builder{}
		}
		t.wrote[key].WriteString(e.Output)
	case "run":
		if !inside {
			t.tell(e)
		}
	case "pass", "fail", "skip":
		if e.Test == "" {
			t.end(e)
			return
		}
		if inside {
			if e.Action == "skip" {
				t.skip(e, t.wrote[key])
			}
			return
		}
		t.done++
		t.tell(e) // of tests side by side all have begun long before
		t.took[e.Package] = append(t.took[e.Package], took{e.Test, e.Elapsed})
		switch e.Action {
		case "fail":
			fmt.Fprint(t.out, t.wrote[key])
		case "skip":
			t.skip(e, t.wrote[key])
		default:
			t.passed[e.Package]++
		}
		delete(t.wrote, key)
	}
}

// skip notes why a test was skipped: the last remark that it made.
func (t *tally) skip(e event, wrote *strings.Builder) {
	why := e.Test
	for line := range strings.Lines(wrote.String()) {
		if m := remark.FindStringSubmatch(line); m != nil {
			why = e.Test + ": " + m[1]
		}
	}
	t.skips[e.Package] = append(t.skips[e.Package], why)
}

var remark = regexp.MustCompile(`^\s+\w+\.go:\d+: (.*)\n$`)

// end tells of a package.
func (t *tally) end(e event) {
	wrote := t.wrote[e.Package+" "]
	switch {
	case e.Action == "fail" && wrote != nil:
		fmt.Fprint(t.out, wrote)
	case e.Action == "skip": // it has no tests
		return
	}
	if wrote != nil {
		if m := covered.FindString(wrote.String()); m != "" {
			e.Action += ", " + m
		}
	}
	fmt.Fprintf(t.out, "%s: %s, %d tests in %.1f s\n", short(e.Package), e.Action, t.passed[e.Package], e.Elapsed)
	slow := t.took[e.Package]
	slices.SortFunc(slow, func(a, b took) int { return cmp.Compare(b.long, a.long) })
	for _, s := range slow[:min(mostSlow, len(slow))] {
		if s.long > slowIs {
			fmt.Fprintf(t.out, "   %.0f s: %s\n", s.long, s.test)
		}
	}
	skips := t.skips[e.Package]
	slices.Sort(skips)
	for _, s := range slices.Compact(skips) {
		fmt.Fprintf(t.out, "   skipped %s\n", s)
	}
}

var covered = regexp.MustCompile(`coverage: [0-9.]+%`)

func short(pkg string) string { return strings.TrimPrefix(pkg, "striderule/") }

func seconds(d time.Duration) string { return fmt.Sprintf("%.0f s", d.Seconds()) }
