package trim

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
)

// goAppEdits is what is taken out, in order, and why it can be.
var goAppEdits = slices.Concat(serverEdits, elementEdits, draftEdits, stateEdits, windowEdits, importEdits, ownEdits)

var serverEdits = []edit{
	// The HTTP handler serves pages from a server. Ours are made by app/pages.
	drop{"pkg/app/http.go"},
	drop{"pkg/app/static.go"},
	drop{"pkg/app/wasm.go"},
	drop{"pkg/app/cache.go"},
	drop{"pkg/app/social.go"},
	keep{"pkg/app/resource.go", []string{"clientResourceResolver", "resolveOGResource", "remoteLocation", "webLocation"}},
	cut{"pkg/app/engine.go", []string{"engineX.Encode"}},

	// Our routes are plain paths.
	replace{"pkg/app/route.go", "\t\"regexp\"\n", ""},
	replace{"pkg/app/route.go", "regexp.MustCompile(pattern)", "compilePattern(pattern)"},
	replace{"pkg/app/route.go", "*regexp.Regexp", "pattern"},
}

// One type for all elements.
var elementEdits = []edit{
	oneElement{"pkg/app/html_gen.go", "htmlTextarea", []string{"Text", "Textf"}},
	replace{"pkg/app/html.go", "\tisSelfClosing bool\n", "\tisSelfClosing bool\n\tapart         bool // a textarea, whose text is its value\n"},
	// Its setters take texts: see narrow. What only makes formats is left out.
	cut{"pkg/app/html_gen.go", []string{"htmlElement.Textf"}},
	narrow{"pkg/app/html_gen.go"},
	replace{"pkg/app/html.go", "setAttr(name string, value any)", "setAttr(name, value string)"},
	replace{"pkg/app/attribute.go", "Set(name string, value any)", "Set(name, value string)"},
	replace{"pkg/app/attribute.go", "v = toString(value)", "v = value"},
	replace{"pkg/app/attribute.go", "func toAttributeValue(v any) string {\n\treturn strings.TrimSpace(toString(v))\n", "func toAttributeValue(v string) string {\n\treturn strings.TrimSpace(v)\n"},
	replace{"pkg/app/event.go", "EventScope(v ...any)", "EventScope(v ...string)"},
	replace{"pkg/app/strings.go", "toPath(v ...any)", "toPath(v ...string)"},
	replace{"pkg/app/strings.go", "\tfor _, o := range v {\n\t\ts := toString(o)\n", "\tfor _, s := range v {\n"},
	cut{"pkg/app/strings.go", []string{"toString", "FormatString"}},
	cut{"pkg/app/text.go", []string{"Textf"}},
	replace{"pkg/app/text.go", "func Text(v any) UI {\n\treturn &text{value: toString(v)}\n", "func Text(v string) UI {\n\treturn &text{value: v}\n"},
	// The type does not tell an element from another any more: what it is does.
	replace{"pkg/app/node.go", "\tcase *htmlElem, *htmlElemSelfClosing:\n\t\treturn v.(HTML).Tag() == new.(HTML).Tag()\n",
		"\tcase *htmlElement:\n\t\treturn v.(*htmlElement).sameKind(new.(*htmlElement))\n"},
	// One type for all values of JavaScript as well.
	drop{"pkg/app/js.go"},
	drop{"pkg/app/js_wasm.go"},
	drop{"pkg/app/js_nowasm.go"},
	replace{"pkg/app/event.go", "type Event struct {\n\tValue\n}", "type Event struct {\n\t*value\n}"},
	replace{"pkg/app/node.go", "Event{Value: args[0]}", "Event{args[0]}"},
	replace{"pkg/app/browser.go", "Event{Value: args[0]}", "Event{args[0]}"},
	cut{"pkg/app/html.go", []string{"HTML"}},
	replace{"pkg/app/engine.go", "body.setJSElement(Window().Get(\"document\").Get(\"body\")).(HTMLBody)", "body.setJSElement(Window().Get(\"document\").Get(\"body\"))"},
	replace{"pkg/app/engine.go", "firstChild.setJSElement(body.JSValue().firstElementChild()).(HTMLDiv)", "firstChild.setJSElement(body.JSValue().firstElementChild())"},
	replace{"pkg/app/engine.go", "body.setBody([]UI{firstChild}).(HTMLBody)", "body.setBody([]UI{firstChild})"},
	// Before the first page there is no body, which the engine asks for by nil: that
	// takes an interface.
	replace{"pkg/app/engine.go", "\tbody    HTMLBody\n", "\tbody    UI\n"},
}

// Only bytes are coded, and what is not coded is said without fmt.
var qrEdits = []edit{
	cut{"coding/qr.go", []string{"Num", "Alpha", "String.String"}},
	replace{"coding/qr.go", "\t\"fmt\"\n", "\t\"errors\"\n"},
	replace{"coding/qr.go", "fmt.Errorf(\"cannot encode %d bits into %d-bit code\", b.Bits(), p.DataBytes*8)", "errors.New(\"qr: the text is too long for the code\")"},
	replace{"coding/qr.go", "fmt.Errorf(\"invalid QR version %d\", int(v))", "errors.New(\"qr: invalid version \" + strconv.Itoa(int(v)))"},
}

var ownEdits = []edit{
	// The address is that of a page already when the page is made: it reads it then.
	replace{"pkg/app/engine.go", "\tdefer func() {\n\t\tif updateHistory {\n\t\t\tWindow().addHistory(destination)\n\t\t}\n", "\tif updateHistory {\n\t\tWindow().addHistory(destination)\n\t}\n\tdefer func() {\n"},
	// go-app drops empty attributes. An empty alt says that a picture is mere
	// decoration; without it, a screen reader reads the file's name out.
	replace{"pkg/app/attribute.go", "\tswitch v {\n\tcase \"cite\",\n", "\tif name == \"alt\" {\n\t\ta[name] = v\n\t\treturn\n\t}\n\tswitch v {\n\tcase \"cite\",\n"},
}

type edit interface{ apply(tree) error }

// drop leaves a file out.
type drop struct{ file string }

func (d drop) apply(t tree) error {
	if _, there := t[d.file]; !there {
		return fmt.Errorf("%s is gone", d.file)
	}
	delete(t, d.file)
	return nil
}

// replace changes a text that must occur exactly once.
type replace struct{ file, old, new string }

func (r replace) apply(t tree) error {
	src, there := t[r.file]
	if !there {
		return fmt.Errorf("%s is gone", r.file)
	}
	if n := bytes.Count(src, []byte(r.old)); n != 1 {
		return fmt.Errorf("%s has %q %d times, not once", r.file, r.old, n)
	}
	t[r.file] = bytes.Replace(src, []byte(r.old), []byte(r.new), 1)
	return nil
}

// parse reads a file of the tree as Go.
func (t tree) parse(name string, mode parser.Mode) (src []byte, fset *token.FileSet, file *ast.File, err error) {
	src, there := t[name]
	if !there {
		return nil, nil, nil, fmt.Errorf("%s is gone", name)
	}
	fset = token.NewFileSet()
	file, err = parser.ParseFile(fset, name, src, mode)
	return src, fset, file, err
}

// keep leaves only the named functions of a file, and the imports they use.
type keep struct {
	file  string
	funcs []string
}

func (k keep) apply(t tree) error {
	src, fset, file, err := t.parse(k.file, 0)
	if err != nil {
		return err
	}
	var body bytes.Buffer
	used := map[string]bool{}
	kept := 0
	for _, decl := range file.Decls {
		fn, ok := decl.(*ast.FuncDecl)
		if !ok || fn.Recv != nil || !slices.Contains(k.funcs, fn.Name.Name) {
			continue
		}
		kept++
		ast.Inspect(fn, func(n ast.Node) bool {
			if sel, ok := n.(*ast.SelectorExpr); ok {
				if pkg, ok := sel.X.(*ast.Ident); ok {
					used[pkg.Name] = true
				}
			}
			return true
		})
		body.WriteByte('\n')
		body.Write(src[fset.Position(fn.Pos()).Offset:fset.Position(fn.End()).Offset])
		body.WriteByte('\n')
	}
	if kept != len(k.funcs) {
		return fmt.Errorf("%s has %d of the functions %v", k.file, kept, k.funcs)
	}
	out := bytes.NewBufferString("package " + file.Name.Name + "\n\n")
	for _, imp := range file.Imports {
		path, err := strconv.Unquote(imp.Path.Value)
		if err != nil {
			return err
		}
		if used[path[bytes.LastIndexByte([]byte(path), '/')+1:]] {
			fmt.Fprintf(out, "import %q\n", path)
		}
	}
	out.Write(body.Bytes())
	t[k.file], err = format.Source(out.Bytes())
	return err
}
