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

// edits is what is taken out, in order, and why it can be.
var edits = []edit{
	// The HTTP handler serves pages from a server. Ours are made by app/generate.go.
	drop{"pkg/app/http.go"},
	drop{"pkg/app/static.go"},
	drop{"pkg/app/wasm.go"},
	keep{"pkg/app/resource.go", []string{"clientResourceResolver", "resolveOGResource", "remoteLocation", "webLocation"}},

	// One type for all elements. What the body is stays an interface: before the
	// first page it is none, which the engine asks for by nil.
	oneElement{"pkg/app/html_gen.go", "htmlTextarea", []string{"Text", "Textf"}},
	replace{"pkg/app/html.go", "\tisSelfClosing bool\n", "\tisSelfClosing bool\n\tapart         bool // a textarea, whose text is its value\n"},
	replace{"pkg/app/engine.go", "\tbody    HTMLBody\n", "\tbody    HTML\n"},
	cut{"pkg/app/engine.go", []string{"engineX.Encode"}}, // asks for an element by its type

	// The type does not tell an element from another any more: what it is does.
	replace{"pkg/app/node.go", "\tcase *htmlElem, *htmlElemSelfClosing:\n\t\treturn v.(HTML).Tag() == new.(HTML).Tag()\n",
		"\tcase *htmlElement:\n\t\treturn v.(*htmlElement).sameKind(new.(*htmlElement))\n"},

	// Encrypted states draw in crypto/*; the uuid package draws in crypto/* and
	// database/sql. We keep no states, and our identifiers guard nothing.
	drop{"pkg/app/crypto.go"},
	replace{"pkg/app/context.go", "\t\"github.com/google/uuid\"\n", ""},
	replace{"pkg/app/context.go", "uuid.NewString()", "newID()"},
	replace{"pkg/app/state.go", "\t\"github.com/google/uuid\"\n", ""},
	replace{"pkg/app/state.go", "uuid.NewString()", "newID()"},

	// Our routes are plain paths.
	replace{"pkg/app/route.go", "\t\"regexp\"\n", ""},
	replace{"pkg/app/route.go", "regexp.MustCompile(pattern)", "compilePattern(pattern)"},
	replace{"pkg/app/route.go", "*regexp.Regexp", "pattern"},

	// JSON is for stored states, notifications and the text of errors. The first
	// two are refused with an error, errors are written as plain text.
	nojson("pkg/app/context.go"),
	nojson("pkg/app/engine.go"),
	nojson("pkg/app/notification.go"),
	nojson("pkg/app/state.go"),
	nojson("pkg/app/storage.go"),
	nojson("pkg/app/strings.go"),
	replace{"pkg/errors/errors.go", "\t\"encoding/json\"\n", ""},
	replace{"pkg/errors/errors.go", "Encoder = json.Marshal\n", "Encoder = text\n"},
	replace{"pkg/errors/errors.go", "json.MarshalIndent(v, \"\", \"  \")", "text(v)"},

	// go-app drops empty attributes. An empty alt says that a picture is mere
	// decoration; without it, a screen reader reads the file's name out.
	replace{"pkg/app/attribute.go", "\tswitch v {\n\tcase \"cite\",\n", "\tif name == \"alt\" {\n\t\ta[name] = v\n\t\treturn\n\t}\n\tswitch v {\n\tcase \"cite\",\n"},

	// At its start go-app reads every entry of localStorage to delete expired
	// states. The entries may be those of another tool of the same host, and
	// where a browser refuses storage the exception would end the program.
	replace{"pkg/app/engine.go", "\te.states.CleanupExpiredPersistedStates(e.baseContext())\n", ""},

	// After an event go-app waits for up to a 120th of a second before it renders,
	// to take several in one. A key and its answer have no time to wait.
	replace{"pkg/app/app.go", "engine.Start(120)", "engine.Start(1000)"},
}

func nojson(file string) edit {
	return replace{file, "\t\"encoding/json\"\n", "\tjson \"" + Module + "/pkg/nojson\"\n"}
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

// keep leaves only the named functions of a file, and the imports they use.
type keep struct {
	file  string
	funcs []string
}

func (k keep) apply(t tree) error {
	src, there := t[k.file]
	if !there {
		return fmt.Errorf("%s is gone", k.file)
	}
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, k.file, src, 0)
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
