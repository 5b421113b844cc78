// Command pace measures how long a phone waits for the calculator and its answers,
// beside a stock go-app hello world that is built and served in the same run: the
// ratios count, as machines differ.
//
//	go run ./scripts/pace [-runs 5] [-check] [-lighthouse]
package main

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"striderule/scripts/browser"
	"striderule/scripts/serving"
)

func main() {
	runs := flag.Int("runs", 0, "`number` to take the median of: 5 starts, or 3 runs of Lighthouse")
	check := flag.Bool("check", false, "fail over the targets")
	lighthouse := flag.Bool("lighthouse", false, "have Lighthouse look at every page instead")
	flag.Parse()
	over, err := run(*runs, *lighthouse)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(1)
	case *check && over > 0:
		os.Exit(1)
	}
}

// run measures, prints, and returns how many figures miss their targets.
func run(runs int, lighthouse bool) (over int, err error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return 0, err
	}
	root := filepath.Dir(strings.TrimSpace(string(out)))
	dist := filepath.Join(root, "dist")
	if _, err := serving.Program(dist); err != nil {
		return 0, err
	}
	if lighthouse {
		return printLighthouse(root, dist, cmp.Or(runs, 3))
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
	t := table{runs: cmp.Or(runs, 5)}
	for _, part := range []func(context.Context, *table, string, string) error{starts, blocking, typed} {
		if err := part(chromium, &t, dist, stock); err != nil {
			return 0, err
		}
	}
	return t.print(), nil
}
