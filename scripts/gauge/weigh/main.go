// Command weigh prints what a visitor's device must fetch: the program's size
// beside that of a stock go-app hello world built by the same compiler.
//
//	go run ./scripts/gauge/weigh [-whole] [-steps]
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
	steps := flag.Bool("steps", false, "what each step of the program buys, instead")
	flag.Parse()
	if err := run(*whole, *steps); err != nil {
		fmt.Fprintln(os.Stderr, "size:", err)
		os.Exit(1)
	}
}

func run(whole, steps bool) error {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return err
	}
	root := filepath.Dir(strings.TrimSpace(string(out)))
	if steps {
		return printSteps(root)
	}
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
