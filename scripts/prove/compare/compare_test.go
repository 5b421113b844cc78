package main

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/make/built"
	"striderule/scripts/make/slim"
)

type entry struct{ name, content string }

func pack(t *testing.T, entries ...entry) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, e := range entries {
		w, err := z.Create(e.name)
		require.NoError(t, err)
		_, err = w.Write([]byte(e.content))
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return b.Bytes()
}

// compare runs the command on a zip, against what a build would have made.
func compare(t *testing.T, given, fresh []byte) (string, bool) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "given.zip")
	require.NoError(t, os.WriteFile(file, given, 0o644))
	var out strings.Builder
	same, err := run(file, &out, func(built.Facts) ([]byte, error) { return fresh, nil })
	require.NoError(t, err)
	return out.String(), same
}

func TestCompare(t *testing.T) {
	facts := entry{built.Name, built.Facts{Go: slim.Toolchain}.String()}
	program, page := entry{"web/app.wasm", "\x00asm, and so on"}, entry{"index.html", "<!DOCTYPE html>"}
	fresh := pack(t, program, page, facts)
	inZip := func(content, name string) string {
		return fmt.Sprintf("only in the zip: \"%x  %s\"", sha256.Sum256([]byte(content)), name)
	}
	here := func(e entry) string {
		return fmt.Sprintf("only in what this source makes: \"%x  %s\"", sha256.Sum256([]byte(e.content)), e.name)
	}
	for _, c := range []struct {
		name  string
		given []byte
		says  []string // nothing for the same
	}{
		{"the same", fresh, nil},
		{"a changed byte", pack(t, entry{program.name, "\x00asm, and so On"}, page, facts), []string{inZip("\x00asm, and so On", program.name), here(program)}},
		{"a missing file", pack(t, program, facts), []string{here(page)}},
		{"an added file", pack(t, program, page, facts, entry{"web/more.js", "x()"}), []string{inZip("x()", "web/more.js")}},
		{"one that would be unpacked elsewhere", pack(t, program, page, facts, entry{"../more.js", "x()"}), []string{inZip("x()", "../more.js")}},
		{"another before the right one", pack(t, entry{program.name, "bad"}, program, page, facts), []string{inZip("bad", program.name)}},
		{"the same one twice", pack(t, program, program, page, facts), []string{inZip(program.content, program.name)}},
		{"two faults", pack(t, entry{program.name, "bad"}, facts), []string{inZip("bad", program.name), here(program), here(page)}},
		{"another order", pack(t, page, program, facts), []string{"All files are the same. The zip around them is not"}},
		{"something before the zip", append([]byte("#!/bin/sh\n"), fresh...), []string{"All files are the same. The zip around them is not"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			said, same := compare(t, c.given, fresh)
			assert.Equal(t, c.says == nil, same)
			if same {
				assert.Contains(t, said, "is what this source makes, byte for byte: 3 files.")
				return
			}
			_, list, found := strings.Cut(said, "The zip is not what this source makes:\n")
			require.True(t, found, said)
			lines := strings.Split(strings.TrimSpace(list), "\n")
			require.Len(t, lines, len(c.says), said)
			for i := range lines {
				assert.Contains(t, lines[i], c.says[i])
			}
		})
	}
}

func TestAnotherGoIsSaid(t *testing.T) {
	other := pack(t, entry{built.Name, built.Facts{Go: "go1.26.7"}.String()})
	said, same := compare(t, other, pack(t, entry{built.Name, built.Facts{Go: slim.Toolchain}.String()}))
	assert.False(t, same)
	assert.Contains(t, said, "This source is built by "+slim.Toolchain+": the program and what goes with it will differ by that alone.")
}

func TestWhatIsNoZipOfTheSite(t *testing.T) {
	for says, given := range map[string][]byte{
		"cannot be compared": []byte("PK, but no zip"),
		"has no built.txt":   pack(t, entry{"index.html", "x"}),
		"says nothing known": pack(t, entry{built.Name, "Built with go1.26.8\nrm -rf\n"}),
		"checksum error":     bytes.Replace(stored(t), []byte(slim.Toolchain), []byte("go1.26.9"), 1),
	} {
		file := filepath.Join(t.TempDir(), "given.zip")
		require.NoError(t, os.WriteFile(file, given, 0o644))
		_, err := run(file, &strings.Builder{}, nil)
		assert.ErrorContains(t, err, says)
	}
}

// stored is a zip whose bytes are those of its file.
func stored(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	w, err := z.CreateHeader(&zip.FileHeader{Name: built.Name, Method: zip.Store})
	require.NoError(t, err)
	_, err = w.Write([]byte(built.Facts{Go: slim.Toolchain}.String()))
	require.NoError(t, err)
	require.NoError(t, z.Close())
	return b.Bytes()
}
