package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
)

// merged are the scripts that reach the browser in one file, which is one request
// less each: the file's name, and what it is made of, in order.
var merged = []struct {
	name  string
	parts []string
}{
	{"load.js", []string{"link.js", "load.js", "peek.js"}},
	{"start.js", []string{"address.js", "page.js", "run.js", "carry.js", "left.js", "newer.js", "wasm_exec.js", "start.js"}},
}

func (b *builder) merge() error {
	for _, m := range merged {
		var all bytes.Buffer
		for _, part := range m.parts {
			file := b.path("web/" + part)
			content, err := os.ReadFile(file)
			if err != nil {
				return err
			}
			all.Write(withoutRemarks(content))
			if err := os.Remove(file); err != nil {
				return err
			}
		}
		if err := os.WriteFile(b.path("web/"+m.name), all.Bytes(), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// withoutRemarks leaves out the lines of a script that are only for its readers, and
// how far the others are indented.
func withoutRemarks(script []byte) []byte {
	var out bytes.Buffer
	for line := range bytes.Lines(script) {
		line = bytes.TrimLeft(line, " \t")
		if !bytes.HasPrefix(line, []byte("//")) && len(bytes.TrimSpace(line)) > 0 {
			out.Write(line)
		}
	}
	return out.Bytes()
}

// inlined is the script that stands in each page.
const inlined = "web/load.js"

// named are the kinds of files in web/ that get a name which changes with their
// content. Caches may keep them for ever, and never mix two versions. What the
// program and the manifest ask for (icons) keeps its name.
var named = []string{".css", ".js", ".wasm"}

// lostPage is what hosts send where there is no page. It computes nothing.
const lostPage = "404.html"

// names gives the files these names, and writes them into the pages, each of
// which must name every one of them; but lostPage only the style.
func (b *builder) names() error {
	files, err := siteFiles(b.site)
	if err != nil {
		return err
	}
	var marks []string
	with := map[string]string{}
	for _, f := range files {
		kind := path.Ext(f)
		if !strings.HasPrefix(f, "web/") || !slices.Contains(named, kind) {
			continue
		}
		content, err := os.ReadFile(b.path(f))
		if err != nil {
			return err
		}
		if kind == ".wasm" {
			marks = append(marks, sizeMark)
			with[sizeMark] = strconv.Itoa(len(content))
		}
		if f == inlined {
			sum := sha256.Sum256(content)
			marks = append(marks, loadMark, digestMark)
			with[loadMark], with[digestMark] = string(content), base64.StdEncoding.EncodeToString(sum[:])
		}
		to := strings.TrimSuffix(f, kind) + "." + digest(content)[:10] + kind
		if err := os.Rename(b.path(f), b.path(to)); err != nil {
			return err
		}
		// As the end of an attribute, so that no word of the text is meant.
		marks = append(marks, f+`"`)
		with[f+`"`] = to + `"`
	}
	for _, f := range files {
		if !strings.HasSuffix(f, ".html") {
			continue
		}
		content, err := os.ReadFile(b.path(f))
		if err != nil {
			return err
		}
		here := marks
		if f == lostPage {
			here = []string{"web/style.css\""}
		}
		if err := b.fill(f, content, with, here...); err != nil {
			return err
		}
	}
	return nil
}
