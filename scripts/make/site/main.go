// Command site builds the whole site with Go alone: pages, program, worker,
// icons, and the zip to unpack on a web host.
//
//	go run ./scripts/make/site [-serving] [-plain] [-trim=0] [-slim=0] [-anew] [-out dist] [-language de] [-address https://club.example/tools/striderule/]
//
// With -serving it makes what serving on this machine needs: nothing is compressed, and
// there is no zip. -trim=0 and -slim=0 leave a step of the program out each
// (scripts/make/program says what they buy), -plain both: a panic then says where it was.
//
// With the address that the site will have, its pages name their preview pictures
// by it, as some readers of links want.
//
// The result is the same, byte for byte, in whatever folder it is built, by whom,
// and with what settings, if the Go is the same: built.txt says which it was.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"striderule/scripts/make/language"
	"striderule/scripts/make/program"
	"striderule/scripts/make/serving"
	"striderule/scripts/make/squeeze"
)

func main() {
	var o program.Options
	plain := flag.Bool("plain", false, "as -trim=0 -slim=0: the program as Go makes it")
	flag.BoolVar(&o.Trim, "trim", true, "build with the trimmed copy of go-app")
	flag.BoolVar(&o.Slim, "slim", true, "take out of the program what it does without")
	serving := flag.Bool("serving", false, "make only what serving here needs")
	anew := flag.Bool("anew", false, "compress anew, whatever is kept of earlier builds")
	out := flag.String("out", "dist", "`folder` to write, wiped first")
	address := flag.String("address", "", "`address` that the site will have")
	tag := flag.String("language", "", "`tag` of another language than English, which languages/ has a folder for; xx is made up, to try it")
	flag.Parse()
	if *plain {
		o = program.Options{}
	}
	if err := run(*out, *address, *tag, o, *serving, *anew); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

func run(out, address, tag string, o program.Options, serving, anew bool) error {
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
	if tag != "" {
		if root, err = language.Write(root, tag); err != nil {
			return err
		}
		work = filepath.Join(root, ".build")
	}
	b := builder{root: root, work: work, site: fresh, address: address, options: o, kept: kept}
	steps := []step{
		{"program and pages", func() error { return together(b.program, b.pages) }},
		{"assets", b.assets},
		{"merging", b.merge},
		{"names", b.names},
		{"version", b.version},
		{"compression", b.compress},
		{"facts", b.facts},
		{"sums", b.sums},
		{"zip", b.zip},
		{"modes", b.modes},
	}
	if serving {
		steps = slices.DeleteFunc(steps, func(s step) bool { return s.what == "compression" || s.what == "zip" })
	}
	began := time.Now()
	for _, s := range steps {
		fmt.Printf("   %2.0f s: %s\n", time.Since(began).Seconds(), s.what)
		if err := s.do(); err != nil {
			return fmt.Errorf("%s: %w", s.what, err)
		}
	}
	if err := swap(fresh, out); err != nil {
		return err
	}
	return report(out)
}

// A step is one of a build.
type step struct {
	what string
	do   func() error
}

// together does both at the same time: the compiler seldom keeps two processors busy.
func together(one, other func() error) error {
	failed := make(chan error)
	go func() { failed <- other() }()
	return errors.Join(one(), <-failed)
}

// builder writes the site of the module at root into the folder site.
type builder struct {
	root, work, site string
	address          string // that the site will have, if it is known
	options          program.Options
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
		if os.IsNotExist(err) {
			continue // it is not needed for serving here
		}
		if err != nil {
			return err
		}
		fmt.Printf("  %-24s %10d bytes\n", filepath.Base(f), info.Size())
	}
	return nil
}
