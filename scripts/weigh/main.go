// Command weigh prints what a visitor's device must fetch: the program's size
// beside that of a stock go-app hello world built by the same compiler.
//
//	go run ./scripts/weigh
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
	flag.Parse()
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "size:", err)
		os.Exit(1)
	}
}

func run() error {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return err
	}
	root := filepath.Dir(strings.TrimSpace(string(out)))
	return printSizes(root, filepath.Join(root, "dist"))
}
