package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// What sw.js and the pages have where the build's facts go.
const (
	versionMark = "__VERSION__"
	filesMark   = "__FILES__"
	sizeMark    = "__SIZE__"
	loadMark    = "__LOAD__"
	digestMark  = "__DIGEST__"
)

// version names this build by its content and writes the name into the pages, by
// which the worker knows them, and into the worker with the list of what to keep
// for offline use.
func (b *builder) version() error {
	files, err := siteFiles(b.site)
	if err != nil {
		return err
	}
	all := sha256.New()
	content := map[string][]byte{}
	for _, f := range files {
		if content[f], err = os.ReadFile(b.path(f)); err != nil {
			return err
		}
		fmt.Fprintf(all, "%s %d\n", f, len(content[f]))
		all.Write(content[f])
	}
	version := hex.EncodeToString(all.Sum(nil))[:12]

	keep, err := b.offline(content)
	if err != nil {
		return err
	}
	list, err := json.MarshalIndent(keep, "", "  ")
	if err != nil {
		return err
	}
	marks := map[string]string{versionMark: version, filesMark: string(list)}
	for _, f := range files {
		switch {
		case f == lostPage:
		case f == "sw.js":
			err = b.fill(f, content[f], marks, versionMark, filesMark)
		case strings.HasSuffix(f, ".html"):
			err = b.fill(f, content[f], marks, versionMark)
		default:
			continue
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// offline says what the worker keeps: each file with the digests by which the
// worker knows a right copy. A page has none: it is known by the version in it.
// Of the program there are two forms, of which the worker keeps one.
func (b *builder) offline(content map[string][]byte) (map[string][]string, error) {
	list := map[string][]string{}
	for f, c := range content {
		switch {
		case f == "sw.js", f == lostPage:
		case strings.HasPrefix(f, "preview/"): // no page shows them
		case strings.HasSuffix(f, ".html"):
			list[strings.TrimSuffix(f, "index.html")] = []string{}
		case strings.HasSuffix(f, ".wasm"):
			zipped, err := b.squeezed(c, ".gz")
			if err != nil {
				return nil, err
			}
			list[f] = []string{digest(c)}
			// Some hosts undo the compression on the way.
			list[f+".gz"] = []string{digest(zipped), digest(c)}
		default:
			list[f] = []string{digest(c)}
		}
	}
	return list, nil
}

func digest(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:])
}

func (b *builder) fill(file string, content []byte, with map[string]string, marks ...string) error {
	for _, mark := range marks {
		if !bytes.Contains(content, []byte(mark)) {
			return fmt.Errorf("%s does not say %s", file, mark)
		}
		content = bytes.ReplaceAll(content, []byte(mark), []byte(with[mark]))
	}
	return os.WriteFile(b.path(file), content, 0o644)
}

func (b *builder) path(file string) string {
	return filepath.Join(b.site, filepath.FromSlash(file))
}
