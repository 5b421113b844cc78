package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"sort"
	"strings"
)

// results are what came of mutants, in a file that grows while they are judged.
type results struct {
	of   map[string]result
	file *os.File
}

type result struct{ outcome, by string }

func openResults(path string) (*results, error) {
	r := &results{of: map[string]result{}}
	text, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return nil, err
	}
	for line := range strings.Lines(string(text)) {
		outcome, rest, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
		by, key, ok := strings.Cut(rest, "\t")
		if ok {
			r.of[key] = result{outcome, by}
		}
	}
	r.file, err = os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	return r, err
}

func (r *results) close() error { return r.file.Close() }

func (r *results) has(m *mutant) bool { _, ok := r.of[m.key]; return ok }

func (r *results) add(m *mutant, outcome, by string) error {
	r.of[m.key] = result{outcome, by}
	_, err := fmt.Fprintf(r.file, "%s\t%s\t%s\n", outcome, by, m.key)
	return err
}

// kills counts what each test killed.
func (r *results) kills() map[string]int {
	kills := map[string]int{}
	for _, found := range r.of {
		if found.outcome == killed {
			kills[found.by]++
		}
	}
	return kills
}

// forgetLiving forgets what lived and is not known to, and returns the keys of it.
func (r *results) forgetLiving(known map[string]string) map[string]bool {
	living := map[string]bool{}
	for key, found := range r.of {
		if found.outcome == alive && known[key] == "" {
			living[key] = true
			delete(r.of, key)
		}
	}
	return living
}

// readKnown reads the list of mutants that may live: a line each, its key, then " — "
// and why. Lines that begin with # are for people.
func readKnown(path string) (map[string]string, error) {
	text, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	known := map[string]string{}
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		at := strings.LastIndex(line, " — ")
		if at < 0 {
			return nil, fmt.Errorf("%s does not say why: %s", path, line)
		}
		known[line[:at]] = line[at+len(" — "):]
	}
	return known, nil
}

// A tally counts what came of the mutants of a package, or of all.
type tally struct {
	there, judged, killed, timed, listed, unlisted, left int
}

func (t tally) String() string {
	share := 100.0
	if t.judged > 0 {
		share = 100 * float64(t.killed+t.timed) / float64(t.judged)
	}
	return fmt.Sprintf("%6d mutants, %6d judged, %6d killed, %4d by time, %4d live and are listed, %4d live: %.1f %% killed",
		t.there, t.judged, t.killed, t.timed, t.listed, t.unlisted, share)
}

// report prints what lives and is not listed, and the figures by package.
func report(out io.Writer, o options, mutants []*mutant, r *results, known map[string]string, left int) tally {
	all := tally{left: left}
	by := map[string]*tally{}
	here := map[string]bool{}
	for _, m := range mutants {
		t := by[m.pkg]
		if t == nil {
			t = &tally{}
			by[m.pkg] = t
		}
		here[m.key] = true
		t.there++
		found, judged := r.of[m.key]
		if !judged || !o.samples.has(m, o.seed) {
			continue
		}
		t.judged++
		switch {
		case found.outcome == killed:
			t.killed++
		case found.outcome == byTime:
			t.timed++
		case known[m.key] != "":
			t.listed++
		default:
			t.unlisted++
			note := ""
			if found.by != "" {
				note = " (" + found.by + ")"
			}
			fmt.Fprintf(out, "lives, not listed: %s:%d %s%s\n", m.file, m.line, m.key, note)
		}
	}
	for _, key := range sortedKeys(known) {
		if found := r.of[key]; !here[key] && by[packageOf(key)] != nil {
			fmt.Fprintln(out, "listed, but no mutant:", key)
		} else if found.outcome == killed || found.outcome == byTime {
			fmt.Fprintln(out, "listed, but killed:", key)
		}
	}
	for _, path := range sortedKeys(by) {
		t := by[path]
		sampled := ""
		if n := o.samples[path]; n > 1 {
			sampled = fmt.Sprintf(" (one of %d, seed %d)", n, o.seed)
		}
		fmt.Fprintf(out, "%-28s %s%s\n", path, *t, sampled)
		all.there += t.there
		all.judged += t.judged
		all.killed += t.killed
		all.timed += t.timed
		all.listed += t.listed
		all.unlisted += t.unlisted
	}
	fmt.Fprintf(out, "%-28s %s\n", "all", all)
	if left > 0 {
		fmt.Fprintf(out, "%d are still to be judged: run it again\n", left)
	}
	return all
}

// packageOf is the import path that a key begins with.
func packageOf(key string) string {
	file, _, _ := strings.Cut(key, ": ")
	if at := strings.LastIndex(file, "/"); at >= 0 {
		return file[:at]
	}
	return ""
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for key := range m {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	return keys
}
