package main

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"go/ast"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

//go:embed runtime.go.txt
var runtimeSource []byte

// name is what the rewritten files call the package in runtime.go.txt.
const name = "mutated__"

// rewriteAll writes the packages with all mutants in them below dir, and the file that
// tells go build to read them instead.
func rewriteAll(pkgs []*pkg, dir string) (mutants []*mutant, overlay string, err error) {
	replaced := map[string]string{}
	write := func(path string, text []byte) error {
		to := filepath.Join(dir, "source", strings.ReplaceAll(strings.Trim(path, "/"), "/", "_"))
		replaced[path] = to
		return os.WriteFile(to, text, 0o644)
	}
	if err := os.MkdirAll(filepath.Join(dir, "source"), 0o755); err != nil {
		return nil, "", err
	}
	for _, p := range pkgs {
		for _, f := range p.files {
			w := &rewriter{pkg: p, source: f, mutants: mutants, condition: map[ast.Expr]bool{}, skip: map[ast.Node]bool{}, seen: map[string]int{}}
			text := w.rewrite()
			mutants = w.mutants
			if err := write(f.path, text); err != nil {
				return nil, "", err
			}
		}
	}
	if len(mutants) == 0 {
		return nil, "", fmt.Errorf("there is nothing to mutate")
	}
	if err := write(filepath.Join(pkgs[0].module.Dir, "mutated", "mutated.go"), runtimeSource); err != nil {
		return nil, "", err
	}
	list, err := json.Marshal(map[string]any{"Replace": replaced})
	if err != nil {
		return nil, "", err
	}
	overlay = filepath.Join(dir, "overlay.json")
	return mutants, overlay, os.WriteFile(overlay, list, 0o644)
}

// A rewriter puts mutants into one file. Its edits hold no newlines, so that lines keep
// their numbers.
type rewriter struct {
	pkg       *pkg
	source    source
	edits     edits
	mutants   []*mutant
	before    int // mutants of other files
	stack     []frame
	condition map[ast.Expr]bool // stands where its being true or false decides
	skip      map[ast.Node]bool
	seen      map[string]int // keys, for those that come more than once
}

// A frame is a node that the walk is in, and what closes it.
type frame struct {
	node   ast.Node
	closed []func()
}

// rewrite returns the text of the file with its mutants.
func (w *rewriter) rewrite() []byte {
	w.before = len(w.mutants)
	ast.Inspect(w.source.syntax, func(n ast.Node) bool {
		if n == nil {
			top := w.stack[len(w.stack)-1]
			for i := len(top.closed) - 1; i >= 0; i-- {
				top.closed[i]()
			}
			w.stack = w.stack[:len(w.stack)-1]
			return true
		}
		if w.skip[n] {
			return false
		}
		w.stack = append(w.stack, frame{node: n})
		if w.visit(n) {
			return true
		}
		w.stack = w.stack[:len(w.stack)-1]
		return false
	})
	if len(w.mutants) > w.before {
		at := w.offset(w.source.syntax.Name.End())
		w.edits.open(at, "; import "+name+" "+strconv.Quote(w.pkg.module.Path+"/mutated"))
	}
	return w.edits.apply(w.source.text)
}

// add adds a mutant in which a text stands in place of the piece of the file from one
// place to the other, and returns its number.
func (w *rewriter) add(from, to int, text string) int {
	m := &mutant{number: len(w.mutants) + 1, pkg: w.pkg.path, file: filepath.Base(w.source.path), function: w.function()}
	m.site = m.number
	m.line = 1 + bytes.Count(w.source.text[:from], []byte("\n"))
	begin := bytes.LastIndexByte(w.source.text[:from], '\n') + 1
	end := len(w.source.text)
	if i := bytes.IndexByte(w.source.text[from:], '\n'); i >= 0 {
		end = from + i
	}
	old, rest := string(w.source.text[from:min(to, end)]), ""
	if to > end {
		old += " …"
	} else {
		rest = string(w.source.text[to:end])
	}
	m.text = strings.Join(strings.Fields(string(w.source.text[begin:from])+"‹"+old+" → "+text+"›"+rest), " ")
	m.key = w.pkg.path + "/" + m.file + ": " + m.function + ": " + m.text
	w.seen[m.key]++
	if n := w.seen[m.key]; n > 1 {
		m.key += fmt.Sprintf(" #%d", n)
	}
	w.mutants = append(w.mutants, m)
	return m.number
}

// also adds another mutant to the site of the last one.
func (w *rewriter) also(from, to int, text string) {
	site := w.mutants[len(w.mutants)-1].site
	w.add(from, to, text)
	w.mutants[len(w.mutants)-1].site = site
}

// function names what the walk is in.
func (w *rewriter) function() string {
	for _, f := range w.stack {
		switch n := f.node.(type) {
		case *ast.FuncDecl:
			if n.Recv == nil {
				return n.Name.Name
			}
			kind := n.Recv.List[0].Type
			if star, ok := kind.(*ast.StarExpr); ok {
				kind = star.X
			}
			if index, ok := kind.(*ast.IndexExpr); ok {
				kind = index.X
			}
			return w.text(kind) + "." + n.Name.Name
		case *ast.ValueSpec:
			return n.Names[0].Name
		}
	}
	return "?"
}
