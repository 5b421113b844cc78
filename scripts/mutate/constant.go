package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"
)

// constant puts another number in place of one. It is given the whole of what is known
// when it is compiled: 2*math.Pi is one number.
func (w *rewriter) constant(e ast.Expr, tv types.TypeAndValue) {
	if !isNumber(tv.Type) || !w.written(e) {
		return
	}
	kind, ok := w.spelled(tv.Type)
	if !ok {
		return
	}
	from, to := w.offset(e.Pos()), w.offset(e.End())
	text := w.flat(e)
	other := text + " + 1"
	value := constant.ToFloat(tv.Value)
	f, _ := constant.Float64Val(value)
	_, whole := constant.Int64Val(constant.ToInt(tv.Value))
	switch {
	case f == 0:
		other = "1"
	case f == 1:
		other = "0"
	case tv.Type.Underlying().(*types.Basic).Info()&types.IsFloat != 0 && f+1 == f:
		other = "(" + text + ") / 2"
	case !whole && tv.Type.Underlying().(*types.Basic).Info()&types.IsInteger != 0, f >= 1<<31-1:
		other = text + " - 1"
	}
	number := w.add(from, to, other)
	w.wrap(from, to, fmt.Sprintf("%s.Const[%s](%d, ", name, kind, number), ", "+other+")")
	// The walk does not go into a number: it is closed here.
	for _, closed := range w.stack[len(w.stack)-1].closed {
		closed()
	}
}

// written says whether a number is one that somebody wrote: a literal, or a constant
// that is untyped or of a plain type. Those with a type of their own are names of
// choices and units; letters are text.
func (w *rewriter) written(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			found = found || n.Kind == token.INT || n.Kind == token.FLOAT
		case *ast.Ident:
			if c, ok := w.pkg.info.Uses[n].(*types.Const); ok {
				basic, plain := c.Type().(*types.Basic)
				found = found || plain && basic.Info()&types.IsNumeric != 0 && basic.Kind() != types.UntypedRune
			}
		}
		return !found
	})
	return found
}

// spelled is a type as the file can write it.
func (w *rewriter) spelled(t types.Type) (string, bool) {
	ok := true
	text := types.TypeString(t, func(p *types.Package) string {
		if p == w.pkg.types {
			return ""
		}
		for _, spec := range w.source.syntax.Imports {
			if strings.Trim(spec.Path.Value, `"`) == p.Path() && spec.Name == nil {
				return p.Name()
			}
		}
		ok = false
		return p.Name()
	})
	if named, isNamed := t.(*types.Named); isNamed && named.Obj().Pkg() != w.pkg.types {
		ok = ok && named.Obj().Exported()
	}
	return text, ok
}

// call leaves the size in bits alone that strconv is told: it takes any other as 64.
func (w *rewriter) call(n *ast.CallExpr) {
	if s, ok := n.Fun.(*ast.SelectorExpr); ok && w.text(s.X) == "strconv" && len(n.Args) > 1 {
		w.skip[n.Args[len(n.Args)-1]] = true
	}
}
