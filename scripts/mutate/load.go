package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
)

// A source is a file of a package that tests are not.
type source struct {
	path   string
	text   []byte
	syntax *ast.File
}

// A pkg is a package with its types.
type pkg struct {
	path, dir string
	files     []source
	types     *types.Package
	info      *types.Info
	fset      *token.FileSet
	module    module
}

type module struct{ Path, Dir string }

// goTool runs the go command and returns what it prints.
func goTool(args ...string) ([]byte, error) {
	cmd := exec.Command("go", args...)
	var said bytes.Buffer
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go %s: %w\n%s", args[0], err, said.Bytes())
	}
	return out, nil
}

// load reads the packages and finds the types in them; those of what they import come
// from what the compiler has written down.
func load(patterns []string) ([]*pkg, error) {
	out, err := goTool(append([]string{"list", "-deps", "-export", "-json=ImportPath,Dir,GoFiles,Export,DepOnly,Module"}, patterns...)...)
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	fset := token.NewFileSet()
	var pkgs []*pkg
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var listed struct {
			ImportPath, Dir, Export string
			GoFiles                 []string
			DepOnly                 bool
			Module                  *module
		}
		if err := d.Decode(&listed); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		exports[listed.ImportPath] = listed.Export
		if listed.DepOnly || listed.Module == nil {
			continue
		}
		p := &pkg{path: listed.ImportPath, dir: listed.Dir, fset: fset, module: *listed.Module}
		for _, name := range listed.GoFiles {
			path := filepath.Join(p.dir, name)
			text, err := os.ReadFile(path)
			if err != nil {
				return nil, err
			}
			syntax, err := parser.ParseFile(fset, path, text, parser.SkipObjectResolution)
			if err != nil {
				return nil, err
			}
			p.files = append(p.files, source{path, text, syntax})
		}
		pkgs = append(pkgs, p)
	}
	imports := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) {
		if exports[path] == "" {
			return nil, fmt.Errorf("nothing is known of %s", path)
		}
		return os.Open(exports[path])
	})
	for _, p := range pkgs {
		var syntax []*ast.File
		for _, f := range p.files {
			syntax = append(syntax, f.syntax)
		}
		p.info = &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}}
		if p.types, err = (&types.Config{Importer: imports}).Check(p.path, fset, syntax, p.info); err != nil {
			return nil, err
		}
	}
	return pkgs, nil
}
