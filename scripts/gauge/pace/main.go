// Command pace measures how long a phone waits for the calculator and its answers,
// beside a stock go-app hello world that is built and served in the same run: the
// ratios count, as machines differ.
//
//	go run ./scripts/gauge/pace [-runs 5] [-only starts,again,tasks,keys] [-check]
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"striderule/scripts/make/serving"
	"striderule/scripts/prove/browser"
)

func main() {
	runs := flag.Int("runs", 5, "`number` to take the median of")
	check := flag.Bool("check", false, "fail over the targets")
	only := flag.String("only", "", "measure these `parts` alone: "+strings.Join(names(), ","))
	flag.Parse()
	over, err := run(*runs, *only)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(1)
	case *check && over > 0:
		os.Exit(1)
	}
}

// parts are what is measured, in this order.
var parts = []struct {
	name    string
	measure func(chromium context.Context, t *table, dist, stock string) error
}{
	{"starts", starts},
	{"again", again},
	{"tasks", blocking},
	{"keys", typed},
}

func names() []string {
	var all []string
	for _, p := range parts {
		all = append(all, p.name)
	}
	return all
}

// chosen returns what of the parts is asked for, all by nothing.
func chosen(only string) ([]string, error) {
	if only == "" {
		return names(), nil
	}
	wanted := strings.Split(only, ",")
	for _, w := range wanted {
		if !slices.Contains(names(), w) {
			return nil, fmt.Errorf("-only: there is no part %q, but %s", w, strings.Join(names(), ", "))
		}
	}
	return wanted, nil
}

// run measures, prints, and returns how many figures miss their targets.
func run(runs int, only string) (over int, err error) {
	wanted, err := chosen(only)
	if err != nil {
		return 0, err
	}
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return 0, err
	}
	root := filepath.Dir(strings.TrimSpace(string(out)))
	dist := filepath.Join(root, "dist")
	if _, err := serving.Program(dist); err != nil {
		return 0, err
	}
	stock, err := buildStock(root)
	if err != nil {
		return 0, fmt.Errorf("stock hello world: %w", err)
	}
	chromium, end, err := browser.Launch(context.Background())
	if err != nil {
		return 0, err
	}
	defer end()
	t := table{runs: runs}
	for _, p := range parts {
		if !slices.Contains(wanted, p.name) {
			continue
		}
		before := pulses()
		if err := p.measure(chromium, &t, dist, stock); err != nil {
			return t.over, err
		}
		t.add(row{what: "this machine, a fixed loop before and after", unit: "ms", ours: append(before, pulses()...)})
	}
	return t.over, nil
}
