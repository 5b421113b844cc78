// Command compare says whether a zip of the site is what this source makes.
//
//	compare FILE.zip
//
// It builds the site afresh, as the zip says that it was built, and ends with 0 if
// both zips are the same, byte for byte, with 1 if they are not, and with 2 if that
// could not be found out.
package main

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"

	"striderule/scripts/make/built"
	"striderule/scripts/make/slim"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: compare FILE.zip")
		os.Exit(2)
	}
	same, err := run(os.Args[1], os.Stdout, build)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "verify:", err)
		os.Exit(2)
	case !same:
		os.Exit(1)
	}
}

// run compares the zip with one that build makes here, and says what it finds.
func run(file string, out io.Writer, build func(built.Facts) ([]byte, error)) (same bool, err error) {
	given, err := os.ReadFile(file)
	if err != nil {
		return false, err
	}
	theirs, facts, err := sums(given)
	if err != nil {
		return false, fmt.Errorf("%s cannot be compared: %w", file, err)
	}
	f, err := built.Parse(facts)
	if err != nil {
		return false, err
	}
	fmt.Fprint(out, f)
	if f.Go != slim.Toolchain {
		fmt.Fprintf(out, "This source is built by %s: the program and what goes with it will differ by that alone.\n", slim.Toolchain)
	}
	fresh, err := build(f)
	if err != nil {
		return false, err
	}
	if bytes.Equal(given, fresh) {
		fmt.Fprintf(out, "The zip is what this source makes, byte for byte: %d files.\n", len(theirs))
		return true, nil
	}
	ours, _, err := sums(fresh)
	if err != nil {
		return false, err
	}
	fmt.Fprintln(out, "The zip is not what this source makes:")
	found := false
	for _, list := range []struct {
		says       string
		has, other []string
	}{{"only in the zip", theirs, ours}, {"only in what this source makes", ours, theirs}} {
		for _, line := range without(list.has, list.other) {
			fmt.Fprintf(out, "  %s: %q\n", list.says, line)
			found = true
		}
	}
	if !found {
		fmt.Fprintln(out, "  All files are the same. The zip around them is not: it was packed by another tool, in another order or with other times, or something was put between them.")
	}
	return false, nil
}

// sums are the files of a zip, each as "sum  name", and the text of built.txt.
func sums(file []byte) (lines []string, facts string, err error) {
	z, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	// The names of a zip that would write elsewhere are reported like any others.
	if err != nil && !errors.Is(err, zip.ErrInsecurePath) {
		return nil, "", err
	}
	for _, entry := range z.File {
		r, err := entry.Open()
		if err != nil {
			return nil, "", fmt.Errorf("%q: %w", entry.Name, err)
		}
		content, err := io.ReadAll(r)
		if err != nil {
			return nil, "", fmt.Errorf("%q: %w", entry.Name, err)
		}
		lines = append(lines, fmt.Sprintf("%x  %s", sha256.Sum256(content), entry.Name))
		if entry.Name == built.Name {
			facts = string(content)
		}
	}
	if facts == "" {
		return nil, "", fmt.Errorf("the zip has no %s, which would say how it was built: it is no zip of this site, or an older one", built.Name)
	}
	return lines, facts, nil
}

// without returns the lines of has that hasn does not have, or not as often.
func without(has, other []string) (rest []string) {
	left := slices.Clone(other)
	for _, line := range has {
		if i := slices.Index(left, line); i >= 0 {
			left = slices.Delete(left, i, i+1)
		} else {
			rest = append(rest, line)
		}
	}
	return rest
}

// build returns the zip of a site that is built afresh, with nothing compressed before.
func build(f built.Facts) ([]byte, error) {
	dir, err := os.MkdirTemp("", "striderule-verify-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	dist := filepath.Join(dir, "dist")
	args := []string{"run", "./scripts/make/site", "-anew", "-out", dist, "-address", f.Address}
	for _, step := range f.Without {
		args = append(args, "-"+step+"=0")
	}
	site := exec.Command("go", args...)
	site.Env = append(os.Environ(), "GOTOOLCHAIN="+slim.Toolchain) // as scripts/build
	site.Stdout, site.Stderr = os.Stderr, os.Stderr
	if err := site.Run(); err != nil {
		return nil, fmt.Errorf("the site could not be built: %w", err)
	}
	return os.ReadFile(filepath.Join(dist, built.Zip))
}
