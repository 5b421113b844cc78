// Package squeeze compresses files as small as they get, which takes its time.
// The same content always gives the same bytes.
package squeeze

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"os"
	"path/filepath"

	"github.com/andybalholm/brotli"
)

// Brotli compresses by brotli 11 with the largest window that browsers must have.
func Brotli(content []byte) ([]byte, error) {
	var out bytes.Buffer
	w := brotli.NewWriterOptions(&out, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: 24})
	return through(w, content, &out)
}

// Gzip compresses by gzip 9.
func Gzip(content []byte) ([]byte, error) {
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	return through(w, content, &out)
}

func through(w io.WriteCloser, content []byte, out *bytes.Buffer) ([]byte, error) {
	_, err := w.Write(content)
	err = errors.Join(err, w.Close())
	return out.Bytes(), err
}

// Kept is a folder of results, which saves the time for what has not changed.
type Kept struct {
	dir  string
	used map[string]bool
}

// Keep uses a folder for results.
func Keep(dir string) (*Kept, error) {
	return &Kept{dir, map[string]bool{}}, os.MkdirAll(dir, 0o755)
}

// Get returns the content as compress makes it. The way is its name, with a number
// that is raised when it gives another result.
func (k *Kept) Get(way string, content []byte, compress func([]byte) ([]byte, error)) ([]byte, error) {
	sum := sha256.Sum256(content)
	name := hex.EncodeToString(sum[:]) + "." + way
	k.used[name] = true
	file := filepath.Join(k.dir, name)
	if kept, err := os.ReadFile(file); err == nil {
		return kept, nil
	}
	made, err := compress(content)
	if err != nil {
		return nil, err
	}
	// Renamed into its place whole: a build may be broken off.
	if err := os.WriteFile(file+".part", made, 0o644); err != nil {
		return nil, err
	}
	return made, os.Rename(file+".part", file)
}

// Tidy drops what was not asked for since Keep.
func (k *Kept) Tidy() error {
	entries, err := os.ReadDir(k.dir)
	for _, e := range entries {
		if !k.used[e.Name()] {
			if err := os.Remove(filepath.Join(k.dir, e.Name())); err != nil {
				return err
			}
		}
	}
	return err
}
