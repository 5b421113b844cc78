package trim

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// listed returns Go code that lists every constructor of html_gen.go, with the
// exported methods that its untouched interface offers.
func listed(t *testing.T, src []byte) []byte {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "html_gen.go", src, 0)
	require.NoError(t, err)
	methods := map[string][]string{}
	out := bytes.NewBufferString("package app\n\nvar allElements = []struct {\n\tname string\n\tmake func() HTML\n\tmethods []string\n}{\n")
	for _, decl := range file.Decls {
		switch d := decl.(type) {
		case *ast.GenDecl:
			s, ok := d.Specs[0].(*ast.TypeSpec)
			if !ok {
				continue
			}
			if of, ok := s.Type.(*ast.InterfaceType); ok {
				for _, m := range of.Methods.List {
					for _, name := range m.Names {
						if name.IsExported() {
							methods[s.Name.Name] = append(methods[s.Name.Name], name.Name)
						}
					}
				}
			}
		case *ast.FuncDecl:
			if d.Recv != nil {
				continue
			}
			argument := ""
			if d.Type.Params.NumFields() == 1 {
				argument = `"of-any-name"`
			}
			result := d.Type.Results.List[0].Type.(*ast.Ident).Name
			fmt.Fprintf(out, "\t{%q, func() HTML { return %s(%s) }, %#v},\n", d.Name.Name, d.Name.Name, argument, methods[result])
		}
	}
	out.WriteString("}\n")
	return out.Bytes()
}

// asked compiles a copy of go-app for this machine, with what is told below
// testdata, and returns what its functions say.
func asked(t *testing.T, root string, copied tree, list []byte) string {
	t.Helper()
	copied = maps.Clone(copied)
	inside, err := os.ReadFile(filepath.Join("testdata", "elements.go.txt"))
	require.NoError(t, err)
	copied["pkg/app/elements_asked.go"] = inside
	copied["pkg/app/elements_listed.go"] = list
	copied["asked/main.go"] = []byte("package main\n\nimport (\n\t\"fmt\"\n\t\"" + Module + "/pkg/app\"\n)\n\nfunc main() { fmt.Print(app.Elements(), app.Updates()) }\n")
	dir, err := os.MkdirTemp(filepath.Join(root, ".build"), "trim-test-")
	require.NoError(t, err)
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	require.NoError(t, copied.write(filepath.Join(dir, "go-app")))
	modfile, err := writeMod(root, dir)
	require.NoError(t, err)
	run := exec.Command("go", "run", "-mod=mod", "-modfile="+modfile, Module+"/asked")
	run.Dir = root
	var problems bytes.Buffer
	run.Stderr = &problems
	out, err := run.Output()
	require.NoError(t, err, problems.String())
	return string(out)
}

// onPurpose are the lines in which the trimmed go-app says something else.
var onPurpose = map[string]string{
	// An empty alt stays: see edits.go.
	`Area.Alt area  true [] [] 0 <area>`:    `Area.Alt area  true [alt=""] [] 0 <area alt>`,
	`Img.Alt img  true [] [] 0 <img>`:       `Img.Alt img  true [alt=""] [] 0 <img alt>`,
	`Input.Alt input  true [] [] 0 <input>`: `Input.Alt input  true [alt=""] [] 0 <input alt>`,
	// The kind of an element includes its name space.
	`svg becomes svg of a space: true`: `svg becomes svg of a space: false`,
	`svg of a space becomes svg: true`: `svg of a space becomes svg: false`,
	// Two ways to make the same element make the same.
	`Div becomes a div by name: false`: `Div becomes a div by name: true`,
	`a div by name becomes Div: false`: `a div by name becomes Div: true`,
}

// The trimmed go-app makes of every constructor and every method what the
// untouched one makes of it: attributes, events, content, markup, and which
// element may become which in place.
func TestElementsAreThoseOfTheUntouchedGoApp(t *testing.T) {
	root := moduleRoot(t)
	require.NoError(t, os.MkdirAll(filepath.Join(root, ".build"), 0o755))
	dir, err := moduleDir(root)
	require.NoError(t, err)
	plain, err := read(dir)
	require.NoError(t, err)
	list := listed(t, plain["pkg/app/html_gen.go"])
	trimmed := maps.Clone(plain)
	require.NoError(t, trimmed.trim())

	before := strings.Split(asked(t, root, plain, list), "\n")
	after := strings.Split(asked(t, root, trimmed, list), "\n")
	assert.Contains(t, before, "Div becomes Span: false")
	assert.Contains(t, before, `Textarea.Text textarea  false [value="text & <more>"] [] 0 <textarea value="text & <more>"></textarea>`)
	assert.Greater(t, len(before), 30000, "the check would see little")
	require.Len(t, after, len(before))
	purposes, shown := 0, 0
	for i, line := range before {
		if changed, ok := onPurpose[line]; ok {
			purposes++
			line = changed
		}
		if after[i] != line && shown < 10 {
			shown++
			t.Errorf("untouched: %s\ntrimmed:   %s", line, after[i])
		}
	}
	assert.Len(t, onPurpose, purposes)
}

func TestOneElementFailsLoudly(t *testing.T) {
	const generated = `package app

import "strings"

type HTMLA interface {
	HTML
	Class(v ...string) HTMLA
}

func A() HTMLA {
	e := &htmlA{
		htmlElement: htmlElement{
			tag:           "a",
			isSelfClosing: false,
		},
	}

	return e
}

type htmlA struct {
	htmlElement
}

func (e *htmlA) Class(v ...string) HTMLA {
	e.setAttr("class", strings.Join(v, " "))
	return e
}
`
	second := strings.ReplaceAll(generated[strings.Index(generated, "type HTMLA"):], `"a"`, `"b"`)
	second = strings.NewReplacer("HTMLA", "HTMLB", "htmlA", "htmlB", "A()", "B()").Replace(second)
	two := generated + "\n" + second
	file := tree{"a.go": []byte(two)}
	require.NoError(t, oneElement{file: "a.go"}.apply(file))
	got := string(file["a.go"])
	assert.Contains(t, got, "HTMLB = *htmlElement\n")
	assert.Contains(t, got, "func B() HTMLB { return &htmlElement{tag: \"b\", isSelfClosing: false} }\n")
	assert.Equal(t, 1, strings.Count(got, ") Class("))

	for _, c := range []struct{ name, old, new, says string }{
		{"another body", `func (e *htmlB) Class(v ...string) HTMLB {`, `func (e *htmlB) Class(v ...string) HTMLB { e.setAttr("b", "")`, "Class of htmlB is not that of htmlA"},
		{"other values", `func (e *htmlB) Class(v ...string)`, `func (e *htmlB) Class(v string)`, "Class of htmlB is not that of htmlA"},
		{"a field of its own", "type htmlB struct {\n\thtmlElement\n}", "type htmlB struct {\n\thtmlElement\n\tb int\n}", "htmlB holds more than htmlElement"},
		{"made otherwise", "e := &htmlB{", "e := &htmlB{b: 1,", "func B makes its element in a new way"},
		{"set afterwards", "\te := &htmlB{", "\tprintln()\n\te := &htmlB{", "func B makes its element in a new way"},
		{"no constructor", "func B() HTMLB {", "func (e *htmlB) make() HTMLB {", "2 interfaces, 2 types and 1 constructors"},
		{"a variable", "type HTMLB interface", "var b int\n\ntype HTMLB interface", "is no element"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(two, c.old))
			err := oneElement{file: "a.go"}.apply(tree{"a.go": []byte(strings.Replace(two, c.old, c.new, 1))})
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
		})
	}
	err := oneElement{"a.go", "htmlB", []string{"Class", "Text"}}.apply(tree{"a.go": []byte(two)})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "htmlB has 1 of the methods [Class Text]")
}

func TestCutTakesWhatItsImportsWereFor(t *testing.T) {
	src := "package a\n\nimport (\n\t\"io\"\n\t\"math/rand/v2\"\n\t\"strings\"\n)\n\n// gone goes.\ntype gone struct{ io.Reader }\n\n// Read too.\nfunc (g *gone) Read() int { return rand.Int() }\n\ntype kept struct{}\n\nfunc (kept) one() {}\n\n// two of it goes.\nfunc (k kept) two() {}\n\nfunc three() string { return strings.ToUpper(\"\") }\n"
	files := tree{"a.go": []byte(src)}
	require.NoError(t, cut{"a.go", []string{"gone", "kept.two"}}.apply(files))
	assert.Equal(t, "package a\n\nimport (\n\t\"strings\"\n)\n\ntype kept struct{}\n\nfunc (kept) one() {}\n\nfunc three() string { return strings.ToUpper(\"\") }\n", string(files["a.go"]))

	err := cut{"a.go", []string{"kept.three"}}.apply(files)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "a.go has no kept.three")
}
