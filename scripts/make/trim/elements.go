package trim

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"slices"
	"strings"
)

// oneElement makes one type of the hundred that go-app generates, one an element,
// each with the same hundred methods and an interface that lists them: every
// method returns the interface of its own element, so the linker can drop none.
// Here the names become other names of *htmlElement, which gets each method once.
// Constructors stay as they are: they differ in the tag, and in what closes itself.
type oneElement struct {
	file string
	// apart is the one element of which some methods, named here, do something else.
	// Its constructor sets htmlElement.apart (a field of ours), and they ask for it.
	apart   string
	methods []string
}

// shared is the type that all elements become.
const shared = "htmlElement"

func (o oneElement) apply(t tree) error {
	src, there := t[o.file]
	if !there {
		return fmt.Errorf("%s is gone", o.file)
	}
	e := elements{oneElement: o, fset: token.NewFileSet(), src: src, common: map[string]method{}, special: map[string]method{}}
	file, err := parser.ParseFile(e.fset, o.file, src, 0)
	if err != nil {
		return err
	}
	for _, decl := range file.Decls {
		switch d := decl.(type) {
		case *ast.GenDecl:
			err = e.types(d)
		case *ast.FuncDecl:
			if d.Recv == nil {
				err = e.constructor(d)
			} else {
				err = e.method(d)
			}
		}
		if err != nil {
			return fmt.Errorf("%s: %w", o.file, err)
		}
	}
	out, err := e.write(file)
	if err != nil {
		return fmt.Errorf("%s: %w", o.file, err)
	}
	t[o.file], err = format.Source(out)
	return err
}

// elements is what was found in the generated file, in its order.
type elements struct {
	oneElement
	fset         *token.FileSet
	src          []byte
	names        []string // the interfaces that become other names of the type
	structs      []string // the types behind them
	constructors []string
	order        []string
	common       map[string]method
	special      map[string]method
}

type method struct{ of, head, body string }

func (e *elements) text(n ast.Node) string {
	return string(e.src[e.fset.Position(n.Pos()).Offset:e.fset.Position(n.End()).Offset])
}

// types takes the interfaces' names, and sees that the types behind them hold
// nothing but what they share.
func (e *elements) types(d *ast.GenDecl) error {
	for _, spec := range d.Specs {
		s, ok := spec.(*ast.TypeSpec)
		if !ok {
			if d.Tok == token.IMPORT {
				continue
			}
			return fmt.Errorf("%s is no element", e.text(spec))
		}
		switch of := s.Type.(type) {
		case *ast.InterfaceType:
			e.names = append(e.names, s.Name.Name)
		case *ast.StructType:
			if len(of.Fields.List) != 1 || e.text(of.Fields.List[0]) != shared {
				return fmt.Errorf("type %s holds more than %s", s.Name.Name, shared)
			}
			e.structs = append(e.structs, s.Name.Name)
		default:
			return fmt.Errorf("type %s is no element", s.Name.Name)
		}
	}
	return nil
}

// constructor takes "e := &htmlA{htmlElement: htmlElement{...}}; return e".
func (e *elements) constructor(d *ast.FuncDecl) error {
	name := d.Name.Name
	unknown := fmt.Errorf("func %s makes its element in a new way", name)
	if len(d.Body.List) != 2 || d.Type.Results.NumFields() != 1 || e.text(d.Body.List[1]) != "return e" {
		return unknown
	}
	assign, ok := d.Body.List[0].(*ast.AssignStmt)
	if !ok || len(assign.Rhs) != 1 {
		return unknown
	}
	pointer, ok := assign.Rhs[0].(*ast.UnaryExpr)
	if !ok {
		return unknown
	}
	outer, ok := pointer.X.(*ast.CompositeLit)
	if !ok || len(outer.Elts) != 1 {
		return unknown
	}
	field, ok := outer.Elts[0].(*ast.KeyValueExpr)
	if !ok {
		return unknown
	}
	inner, ok := field.Value.(*ast.CompositeLit)
	if !ok || e.text(inner.Type) != shared {
		return unknown
	}
	fields := make([]string, 0, len(inner.Elts)+1)
	for _, f := range inner.Elts {
		fields = append(fields, e.text(f))
	}
	if e.text(outer.Type) == e.apart {
		fields = append(fields, "apart: true")
	}
	e.constructors = append(e.constructors, fmt.Sprintf("func %s%s %s { return &%s{%s} }",
		name, e.text(d.Type.Params), e.text(d.Type.Results), shared, strings.Join(fields, ", ")))
	return nil
}

// method takes a method the first time that it comes, and sees that it is the same
// with every other element.
func (e *elements) method(d *ast.FuncDecl) error {
	star, ok := d.Recv.List[0].Type.(*ast.StarExpr)
	if !ok || d.Type.Results.NumFields() != 1 {
		return fmt.Errorf("method %s is made in a new way", d.Name.Name)
	}
	of, result := e.text(star.X), e.text(d.Type.Results.List[0].Type)
	if own := "HTML" + strings.TrimPrefix(of, "html"); result == own {
		result = "*" + shared
	}
	start := e.fset.Position(d.Body.Pos()).Offset
	body := e.src[start:e.fset.Position(d.Body.End()).Offset]
	var plain bytes.Buffer // the body without the name of its own type
	last := 0
	ast.Inspect(d.Body, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok && id.Name == of {
			at := e.fset.Position(id.Pos()).Offset - start
			plain.Write(body[last:at])
			plain.WriteString(shared)
			last = at + len(of)
		}
		return true
	})
	plain.Write(body[last:])
	m := method{of: of, head: e.text(d.Type.Params) + " " + result, body: plain.String()}

	name := d.Name.Name
	into := e.common
	if of == e.apart && slices.Contains(e.methods, name) {
		into = e.special
	}
	before, known := into[name]
	switch {
	case !known:
		into[name] = m
		if !slices.Contains(e.order, name) {
			e.order = append(e.order, name)
		}
	case before.head != m.head || before.body != m.body:
		return fmt.Errorf("method %s of %s is not that of %s", name, of, before.of)
	}
	return nil
}

func (e *elements) write(file *ast.File) ([]byte, error) {
	if len(e.names) == 0 || len(e.names) != len(e.structs) || len(e.names) != len(e.constructors) {
		return nil, fmt.Errorf("it has %d interfaces, %d types and %d constructors, not as many of each", len(e.names), len(e.structs), len(e.constructors))
	}
	if len(e.special) != len(e.methods) {
		return nil, fmt.Errorf("%s has %d of the methods %v", e.apart, len(e.special), e.methods)
	}
	out := bytes.NewBufferString("package " + file.Name.Name + "\n\n")
	for _, imported := range file.Imports {
		fmt.Fprintf(out, "import %s\n", e.text(imported))
	}
	out.WriteString("\ntype (\n")
	for _, name := range e.names {
		fmt.Fprintf(out, "%s = *%s\n", name, shared)
	}
	out.WriteString(")\n")
	for _, c := range e.constructors {
		fmt.Fprintf(out, "\n%s\n", c)
	}
	for _, name := range e.order {
		m, ok := e.common[name]
		if !ok {
			return nil, fmt.Errorf("method %s is that of %s alone", name, e.apart)
		}
		body := m.body
		if s, ok := e.special[name]; ok {
			if s.head != m.head {
				return nil, fmt.Errorf("method %s of %s takes other values", name, s.of)
			}
			body = "{\nif e.apart " + s.body + "\n" + strings.TrimPrefix(body, "{")
		}
		fmt.Fprintf(out, "\nfunc (e *%s) %s%s %s\n", shared, name, m.head, body)
	}
	return out.Bytes(), nil
}
