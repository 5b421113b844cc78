// Command weigh prints what a visitor's device must fetch: the program's size
// beside that of a stock go-app hello world built by the same compiler.
//
//	go run ./scripts/weigh [-whole]
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
	whole := flag.Bool("whole", false, "not by package")
	flag.Parse()
	if err := run(*whole); err != nil {
		fmt.Fprintln(os.Stderr, "size:", err)
		os.Exit(1)
	}
}

func run(whole bool) error {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return err
	}
	root := filepath.Dir(strings.TrimSpace(string(out)))
	share, err := printSizes(root, filepath.Join(root, "dist"))
	if err != nil {
		return err
	}
	if !whole {
		if err := printPackages(root); err != nil {
			return err
		}
	}
	return checkBudget(share)
}
