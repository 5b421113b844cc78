package trim

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
)

// untagged leaves the tags of errors out: the sentences and their causes stay. The
// tags tell whoever writes a page which element it was; the plain build has them.
type untagged struct{ file string }

func (u untagged) apply(t tree) error {
	src, there := t[u.file]
	if !there {
		return fmt.Errorf("%s is gone", u.file)
	}
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, u.file, src, parser.ParseComments)
	if err != nil {
		return err
	}
	drop := make([]bool, len(src))
	tags := 0
	ast.Inspect(file, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		method, ok := call.Fun.(*ast.SelectorExpr)
		if !ok || method.Sel.Name != "WithTag" {
			return true
		}
		tags++
		for i := fset.Position(method.X.End()).Offset; i < fset.Position(call.End()).Offset; i++ {
			drop[i] = true
		}
		return true
	})
	if tags == 0 {
		return fmt.Errorf("%s has no tags", u.file)
	}
	var out bytes.Buffer
	for i, b := range src {
		if !drop[i] {
			out.WriteByte(b)
		}
	}
	t[u.file], err = withoutSpareImports(u.file, out.Bytes())
	return err
}
