// Command weigh prints what a visitor's device must fetch and how long it waits:
// the program's size beside that of a stock go-app hello world built by the same
// compiler, the time from navigation to the calculator's first render, and that
// from a key to the painted answer.
//
//	go run ./scripts/weigh [-runs 3] [-keys]
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

func main() {
	runs := flag.Int("runs", 3, "`number` of starts to take the median of")
	keys := flag.Bool("keys", false, "print only how long a key takes")
	flag.Parse()
	if err := run(*runs, *keys); err != nil {
		fmt.Fprintln(os.Stderr, "size:", err)
		os.Exit(1)
	}
}

func run(runs int, keysOnly bool) error {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return err
	}
	root := filepath.Dir(strings.TrimSpace(string(out)))
	dist := filepath.Join(root, "dist")
	if _, err := os.Stat(filepath.Join(dist, "web", "app.wasm")); err != nil {
		return fmt.Errorf("there is no built site: run scripts/build first")
	}
	if keysOnly {
		return printKeys(dist, 20*runs)
	}
	if err := printSizes(root, dist); err != nil {
		return err
	}
	if err := printStarts(dist, runs); err != nil {
		return err
	}
	return printKeys(dist, 20*runs)
}
