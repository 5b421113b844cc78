package main

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"

	"striderule/scripts/built"
)

// unpacked is what a zip holds, by name; of a name that is there twice, the last.
type unpacked struct {
	names   []string // as often as they are there, in the zip's order
	content map[string][]byte
}

func unpack(file []byte) (unpacked, error) {
	z, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	// The names of a zip that would write elsewhere are reported like any others.
	if err != nil && !errors.Is(err, zip.ErrInsecurePath) {
		return unpacked{}, err
	}
	u := unpacked{content: map[string][]byte{}}
	for _, entry := range z.File {
		r, err := entry.Open()
		if err != nil {
			return unpacked{}, fmt.Errorf("%q: %w", entry.Name, err)
		}
		content, err := io.ReadAll(r)
		if err != nil {
			return unpacked{}, fmt.Errorf("%q: %w", entry.Name, err)
		}
		u.names = append(u.names, entry.Name)
		u.content[entry.Name] = content
	}
	return u, nil
}

func (u unpacked) facts() (built.Facts, error) {
	file, ok := u.content[built.Name]
	if !ok {
		return built.Facts{}, fmt.Errorf("the zip has no %s, which would say how it was built: it is no zip of this site, or an older one", built.Name)
	}
	return built.Parse(string(file))
}

// differences says in a sentence each how the given zip is not as ours.
func differences(given, ours unpacked) []string {
	var found []string
	say := func(format string, args ...any) { found = append(found, fmt.Sprintf(format, args...)) }
	names := slices.Concat(given.names, ours.names)
	slices.Sort(names)
	for _, name := range slices.Compact(names) {
		theirs, has := given.content[name]
		here, should := ours.content[name]
		switch {
		case !has:
			say("%q is missing.", name)
		case !should:
			say("%q is there and should not be: %d bytes.", name, len(theirs))
		case len(theirs) != len(here):
			say("%q has %d bytes and should have %d; they differ from byte %d on.", name, len(theirs), len(here), firstDifference(theirs, here))
		case !bytes.Equal(theirs, here):
			say("%q differs from byte %d on.", name, firstDifference(theirs, here))
		}
		n := 0
		for _, other := range given.names {
			if other == name {
				n++
			}
		}
		if n > 1 {
			say("%q is there %d times.", name, n)
		}
	}
	if found == nil {
		say("All files are the same. The zip around them is not: it was packed by another tool, in another order or with other times, or something was put between them.")
	}
	return found
}

// firstDifference returns where two contents part, counted from 1.
func firstDifference(a, b []byte) int {
	n := min(len(a), len(b))
	for i := range n {
		if a[i] != b[i] {
			return i + 1
		}
	}
	return n + 1
}
