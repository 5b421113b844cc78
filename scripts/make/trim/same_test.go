package trim

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
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
						if name.IsExported() && name.Name != "Textf" { // which is left out
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
// testdata, and returns what its functions say. Addresses and texts are made by the packages
// that are named.
func asked(t *testing.T, root string, copied tree, list []byte, addresses, texts string) string {
	t.Helper()
	copied = maps.Clone(copied)
	inside, err := os.ReadFile(filepath.Join("testdata", "asked.go.txt"))
	require.NoError(t, err)
	copied["pkg/app/asked.go"] = bytes.Replace(inside, []byte("import (\n"), []byte("import (\n\turl \""+addresses+"\"\n\tsprint \""+texts+"\"\n"), 1)
	copied["pkg/app/listed.go"] = list
	copied["asked/main.go"] = []byte("package main\n\nimport (\n\t\"fmt\"\n\t\"" + goApp.path + "/pkg/app\"\n)\n\nfunc main() { fmt.Print(app.Elements(), app.Updates(), app.Shown(), app.Fields(), app.Texts(), app.Addresses(), app.Values()) }\n")
	dir, err := os.MkdirTemp(filepath.Join(root, ".build"), "trim-test-")
	require.NoError(t, err)
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	require.NoError(t, copied.write(filepath.Join(dir, "go-app")))
	modfile, err := writeMod(root, dir, goApp)
	require.NoError(t, err)
	run := exec.Command("go", "run", "-trimpath", "-mod=mod", "-modfile="+modfile, goApp.path+"/asked")
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
	// A path without a page shows the start page.
	`/nowhere shows *app.notFound`: `/nowhere shows *app.startPage`,
	// Two ways to make the same element make the same.
	`Div becomes a div by name: false`: `Div becomes a div by name: true`,
	`a div by name becomes Div: false`: `a div by name becomes Div: true`,
}

// The trimmed go-app makes of every constructor and every method what the
// untouched one makes of it: attributes, events, content, markup, and which
// element may become which in place. So it is with texts, addresses, and what
// makes a component render anew.
func TestTrimmedSaysWhatTheUntouchedSays(t *testing.T) {
	root := moduleRoot(t)
	require.NoError(t, os.MkdirAll(filepath.Join(root, ".build"), 0o755))
	dir, err := goApp.dir(root)
	require.NoError(t, err)
	plain, err := goApp.read(dir)
	require.NoError(t, err)
	list := listed(t, plain["pkg/app/html_gen.go"])
	trimmed := maps.Clone(plain)
	require.NoError(t, goApp.trim(trimmed))

	before := strings.Split(asked(t, root, plain, list, "net/url", "fmt"), "\n")
	after := strings.Split(asked(t, root, trimmed, list, goAppPath+"/pkg/nourl", goAppPath+"/pkg/nofmt"), "\n")
	assertHas := func(line string) { assert.True(t, slices.Contains(before, line), line) }
	assertHas("Div becomes Span: false")
	assertHas("0 span map[] true")
	assertHas("1 circle map[r:2] true")
	assertHas("<nil> text true -3 300 233 -1 1152921504606846976 0.1 0.1 [a b] [1 2] it broke 7 map[a:1] 7 [x y] {inner [1 <nil> three]} mine")
	assertHas(`Textarea.Text textarea  false [value="text & <more>"] [] 0 <textarea value="text & <more>"></textarea>`)
	assert.Greater(t, len(before), 30000, "the check would see little")
	require.Equal(t, len(before), len(after))
	purposes, lenient, shown := 0, 0, 0
	for i, line := range before {
		if changed, ok := onPurpose[line]; ok {
			purposes++
			line = changed
		}
		if u, ok := brokenFragment(line); ok {
			lenient++
			assert.Contains(t, after[i], strconv.Quote(u.Path)+" "+strconv.Quote(u.Fragment)+" ", line)
			continue
		}
		if after[i] != line && shown < 10 {
			shown++
			t.Errorf("untouched: %s\ntrimmed:   %s", line, after[i])
		}
	}
	assert.Equal(t, len(onPurpose), purposes)
	assert.Greater(t, lenient, 10)
}

var brokenEscape = regexp.MustCompile(`%([^0-9A-Fa-f]|[0-9A-Fa-f][^0-9A-Fa-f]|.?$)`)

// brokenFragment returns what an address means that net/url refuses for a broken escape
// in its fragment, and for nothing else: browsers let that through.
func brokenFragment(line string) (*url.URL, bool) {
	quoted, none := strings.CutSuffix(line, " is none")
	text, err := strconv.Unquote(quoted)
	if !none || err != nil {
		return nil, false
	}
	address, fragment, _ := strings.Cut(text, "#")
	for at := brokenEscape.FindStringIndex(fragment); at != nil; at = brokenEscape.FindStringIndex(fragment) {
		fragment = fragment[:at[0]] + "%25" + fragment[at[0]+1:]
	}
	u, err := url.Parse(address + "#" + fragment)
	return u, err == nil
}
