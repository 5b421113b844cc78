package trim

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"path"
	"regexp"
	"slices"
	"strings"
)

// cut takes functions ("name"), methods ("type.name") and types with all their
// methods ("type") out of a file, and the imports that only they used.
type cut struct {
	file  string
	names []string
}

func (c cut) apply(t tree) error {
	src, fset, file, err := t.parse(c.file, parser.ParseComments)
	if err != nil {
		return err
	}
	found := map[string]bool{}
	var out bytes.Buffer
	last := 0
	remove := func(doc *ast.CommentGroup, n ast.Node) {
		from := n.Pos()
		if doc != nil {
			from = doc.Pos()
		}
		out.Write(src[last:fset.Position(from).Offset])
		last = fset.Position(n.End()).Offset
	}
	for _, decl := range file.Decls {
		switch d := decl.(type) {
		case *ast.FuncDecl:
			if name := c.named(d); name != "" {
				found[name] = true
				remove(d.Doc, d)
			}
		case *ast.GenDecl:
			if d.Tok != token.TYPE || len(d.Specs) != 1 {
				continue
			}
			if name := d.Specs[0].(*ast.TypeSpec).Name.Name; slices.Contains(c.names, name) {
				found[name] = true
				remove(d.Doc, d)
			}
		}
	}
	out.Write(src[last:])
	for _, name := range c.names {
		if !found[name] {
			return fmt.Errorf("%s has no %s", c.file, name)
		}
	}
	t[c.file], err = withoutSpareImports(c.file, out.Bytes())
	return err
}

// named returns which of the names means the function, "" for none.
func (c cut) named(d *ast.FuncDecl) string {
	names := []string{d.Name.Name}
	if d.Recv != nil {
		of := d.Recv.List[0].Type
		if star, ok := of.(*ast.StarExpr); ok {
			of = star.X
		}
		id, ok := of.(*ast.Ident)
		if !ok {
			return ""
		}
		names = []string{id.Name, id.Name + "." + d.Name.Name}
	}
	for _, name := range names {
		if slices.Contains(c.names, name) {
			return name
		}
	}
	return ""
}

var version = regexp.MustCompile(`^v[0-9]+$`)

// withoutSpareImports takes the imports out that a file does not use any more.
func withoutSpareImports(name string, src []byte) ([]byte, error) {
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, name, src, parser.ParseComments)
	if err != nil {
		return nil, err
	}
	used := map[string]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if pkg, ok := s.X.(*ast.Ident); ok {
				used[pkg.Name] = true
			}
		}
		return true
	})
	spare := func(i *ast.ImportSpec) bool {
		at := strings.Trim(i.Path.Value, `"`)
		local := path.Base(at)
		if version.MatchString(local) {
			local = path.Base(path.Dir(at))
		}
		if i.Name != nil {
			local = i.Name.Name
		}
		return !used[local] && local != "_"
	}
	var out bytes.Buffer
	last := 0
	remove := func(n ast.Node) {
		out.Write(src[last:fset.Position(n.Pos()).Offset])
		last = fset.Position(n.End()).Offset
	}
	for _, decl := range file.Decls {
		d, ok := decl.(*ast.GenDecl)
		if !ok || d.Tok != token.IMPORT {
			continue
		}
		var spares []ast.Node
		for _, spec := range d.Specs {
			if i := spec.(*ast.ImportSpec); spare(i) {
				spares = append(spares, i)
			}
		}
		if len(spares) == len(d.Specs) {
			spares = []ast.Node{d}
		}
		for _, n := range spares {
			remove(n)
		}
	}
	out.Write(src[last:])
	return format.Source(out.Bytes())
}
