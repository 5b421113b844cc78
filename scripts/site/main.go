// Command site builds the whole site with Go alone: pages, program, worker,
// icons, and the zip to unpack on a web host.
//
//	go run ./scripts/site [-plain] [-anew] [-out dist] [-address https://club.example/tools/striderule/]
//
// With the address that the site will have, its pages name their preview pictures
// by it, as some readers of links want.
//
// The result is the same, byte for byte, in whatever folder it is built, by whom,
// and with what settings, if the Go is the same: built.txt says which it was.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"striderule/scripts/serving"
	"striderule/scripts/squeeze"
)

func main() {
	plain := flag.Bool("plain", false, "build with the untouched go-app")
	anew := flag.Bool("anew", false, "compress anew, whatever is kept of earlier builds")
	out := flag.String("out", "dist", "`folder` to write, wiped first")
	address := flag.String("address", "", "`address` that the site will have")
	flag.Parse()
	if err := run(*out, *address, *plain, *anew); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

func run(out, address string, plain, anew bool) error {
	root, err := moduleRoot()
	if err != nil {
		return err
	}
	if out, err = filepath.Abs(out); err != nil {
		return err
	}
	// A neighbour of the result, so that the swap is a rename. Somebody who serves
	// the old folder meanwhile goes on doing so until the new one is whole.
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return err
	}
	work := filepath.Join(root, ".build")
	if err := os.MkdirAll(work, 0o755); err != nil {
		return err
	}
	fresh, err := os.MkdirTemp(filepath.Dir(out), ".dist-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(fresh)
	squeezed := filepath.Join(work, "squeezed")
	if anew {
		if err := os.RemoveAll(squeezed); err != nil {
			return err
		}
	}
	kept, err := squeeze.Keep(squeezed)
	if err != nil {
		return err
	}
	b := builder{root: root, work: work, site: fresh, address: address, plain: plain, kept: kept}
	for _, step := range []struct {
		what string
		do   func() error
	}{
		{"program", b.program},
		{"pages", b.pages},
		{"assets", b.assets},
		{"merging", b.merge},
		{"names", b.names},
		{"version", b.version},
		{"compression", b.compress},
		{"facts", b.facts},
		{"sums", b.sums},
		{"zip", b.zip},
		{"modes", b.modes},
	} {
		if err := step.do(); err != nil {
			return fmt.Errorf("%s: %w", step.what, err)
		}
	}
	if err := swap(fresh, out); err != nil {
		return err
	}
	return report(out)
}

// builder writes the site of the module at root into the folder site.
type builder struct {
	root, work, site string
	address          string // that the site will have, if it is known
	plain            bool
	kept             *squeeze.Kept
}

// moduleRoot returns the folder of go.mod.
func moduleRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return "", err
	}
	mod := strings.TrimSpace(string(out))
	if mod == "" || mod == os.DevNull {
		return "", fmt.Errorf("no go.mod here: run it inside the repository")
	}
	return filepath.Dir(mod), nil
}

// swap puts fresh in the place of out, which is there before and after.
func swap(fresh, out string) error {
	old := fresh + ".old"
	switch err := os.Rename(out, old); {
	case err == nil:
		defer os.RemoveAll(old)
	case !os.IsNotExist(err):
		return err
	}
	if err := os.Rename(fresh, out); err != nil {
		_ = os.Rename(old, out)
		return err
	}
	return nil
}

func report(out string) error {
	fmt.Println("built", out)
	program, err := serving.Program(out)
	if err != nil {
		return err
	}
	for _, f := range []string{program, program + ".gz", program + ".br", filepath.Join(out, zipName)} {
		info, err := os.Stat(f)
		if err != nil {
			return err
		}
		fmt.Printf("  %-24s %10d bytes\n", filepath.Base(f), info.Size())
	}
	return nil
}
