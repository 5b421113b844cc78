package trim

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/format"
	"strings"
)

// narrow makes the setters of the elements take what a page gives them: a text. go-app
// takes formats with values of any type, so that every text of a page is boxed and
// counted where it is handed over, and formatted by type. A page that hands over
// something else does not compile.
type narrow struct{ file string }

// narrowed tells, for each list of parameters that a method may have, what becomes
// of it, and of the texts of its body.
var narrowed = map[string]struct {
	parameters string
	body       []string // pairs of old and new
}{
	"(format string, v ...any)":    {"(v string)", []string{"FormatString(format, v...)", "v"}},
	"(k, format string, v ...any)": {"(k, v string)", []string{"FormatString(format, v...)", "v"}},
	"(k string, v any)":            {"(k, v string)", []string{`FormatString("%v", v)`, "v"}},
	"(n string, v any)":            {"(n, v string)", nil},
	"(v any)":                      {"(v string)", nil},
	"(v ...UI)":                    {"(v ...UI)", []string{".(*" + shared + ")", ""}},
	"(v ...string)":                {"(v string)", []string{`strings.Join(v, " ")`, "v"}},
	"(ds map[string]any)":          {"(ds map[string]string)", nil},
	"(v bool)":                     {"(v bool)", []string{`", v)`, `", strconv.FormatBool(v))`}},
	"(v int)":                      {"(v int)", []string{`", v)`, `", strconv.Itoa(v))`}},
	"(v float64)":                  {"(v float64)", []string{`", v)`, `", strconv.FormatFloat(v, 'f', 4, 64))`}},
}

func (n narrow) apply(t tree) error {
	src, fset, file, err := t.parse(n.file, 0)
	if err != nil {
		return err
	}
	text := func(node ast.Node) string {
		return string(src[fset.Position(node.Pos()).Offset:fset.Position(node.End()).Offset])
	}
	var out bytes.Buffer
	last := 0
	instead := func(node ast.Node, by string) {
		out.Write(src[last:fset.Position(node.Pos()).Offset])
		out.WriteString(by)
		last = fset.Position(node.End()).Offset
	}
	used := map[string]bool{}
	for _, decl := range file.Decls {
		d, ok := decl.(*ast.FuncDecl)
		if !ok || d.Recv == nil {
			continue
		}
		parameters := text(d.Type.Params)
		rule, ok := narrowed[parameters]
		if !ok {
			continue
		}
		used[parameters] = true
		instead(d.Type.Params, rule.parameters)
		instead(d.Body, strings.NewReplacer(rule.body...).Replace(text(d.Body)))
	}
	out.Write(src[last:])
	if len(used) != len(narrowed) {
		return fmt.Errorf("%s has setters with %d of %d known lists of parameters", n.file, len(used), len(narrowed))
	}
	imports := "import (\n\"strconv\"\n)"
	narrow := bytes.Replace(out.Bytes(), []byte(`import "strings"`), []byte(imports), 1)
	for _, rest := range []string{"any", "FormatString", "strings."} {
		if i := bytes.Index(narrow, []byte(rest)); i >= 0 {
			line := narrow[bytes.LastIndexByte(narrow[:i], '\n')+1:]
			return fmt.Errorf("%s still has %s: %s", n.file, rest, line[:bytes.IndexByte(line, '\n')])
		}
	}
	t[n.file], err = format.Source(narrow)
	return err
}
