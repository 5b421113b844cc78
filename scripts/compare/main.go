// Command compare says whether a zip of the site is what this source makes.
//
//	compare FILE.zip
//
// It builds the site afresh, as the zip says that it was built, and ends with 0 if
// both zips are the same, byte for byte, with 1 if they are not, and with 2 if that
// could not be found out.
package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"

	"striderule/scripts/built"
	"striderule/scripts/program"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: compare FILE.zip")
		os.Exit(2)
	}
	same, err := run(os.Args[1], os.Stdout, program.GoEnv, build)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "verify:", err)
		os.Exit(2)
	case !same:
		os.Exit(1)
	}
}

// run compares the zip with one that build makes here, and says what it finds.
func run(file string, out io.Writer, goEnv func(root, name string) (string, error), build func(built.Facts) ([]byte, error)) (same bool, err error) {
	given, err := os.ReadFile(file)
	if err != nil {
		return false, err
	}
	files, err := unpack(given)
	if err != nil {
		return false, fmt.Errorf("%s cannot be read: %w", file, err)
	}
	facts, err := files.facts()
	if err != nil {
		return false, err
	}
	here, err := goEnv(".", "GOVERSION")
	if err != nil {
		return false, err
	}
	fmt.Fprint(out, facts)
	if facts.Go != here {
		fmt.Fprintf(out, "Here is %s: the program and what goes with it will differ by that alone. GOTOOLCHAIN=%s scripts/verify uses the same.\n", here, facts.Go)
	}
	fresh, err := build(facts)
	if err != nil {
		return false, err
	}
	if bytes.Equal(given, fresh) {
		fmt.Fprintf(out, "The zip is what this source makes, byte for byte: %d files.\n", len(files.names))
		return true, nil
	}
	ours, err := unpack(fresh)
	if err != nil {
		return false, err
	}
	fmt.Fprintln(out, "The zip is not what this source makes:")
	for _, d := range differences(files, ours) {
		fmt.Fprintln(out, " ", d)
	}
	return false, nil
}

// build returns the zip of a site that is built afresh, with nothing compressed before.
func build(f built.Facts) ([]byte, error) {
	dir, err := os.MkdirTemp("", "striderule-verify-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	dist := filepath.Join(dir, "dist")
	args := []string{"run", "./scripts/site", "-anew", "-out", dist, "-address", f.Address}
	for _, step := range f.Without {
		args = append(args, "-"+step+"=0")
	}
	site := exec.Command("go", args...)
	site.Stdout, site.Stderr = os.Stderr, os.Stderr
	if err := site.Run(); err != nil {
		return nil, fmt.Errorf("the site could not be built: %w", err)
	}
	return os.ReadFile(filepath.Join(dist, built.Zip))
}
