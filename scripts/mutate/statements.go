package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"
)

// listed says whether this statement stands in a list of statements, where an if may
// stand too.
func (w *rewriter) listed() bool {
	if len(w.stack) < 2 {
		return false
	}
	switch w.stack[len(w.stack)-2].node.(type) {
	case *ast.BlockStmt, *ast.CaseClause, *ast.CommClause:
		return true
	}
	return false
}

// remove takes a statement out.
func (w *rewriter) remove(n ast.Stmt) {
	if !w.listed() {
		return
	}
	from, to := w.offset(n.Pos()), w.offset(n.End())
	w.wrap(from, to, fmt.Sprintf("if !%s.On(%d) { ", name, w.add(from, to, "")), " }")
}

func (w *rewriter) assign(n *ast.AssignStmt) {
	if n.Tok == token.DEFINE {
		return
	}
	texts := true
	for _, e := range n.Lhs {
		if id, ok := e.(*ast.Ident); !ok || id.Name != "_" {
			texts = texts && isString(w.pkg.info.TypeOf(e))
		}
	}
	if texts {
		return
	}
	w.remove(n)
	sum, ok := sums[n.Tok]
	if !ok || w.calls(n.Lhs[0]) || !isNumber(w.pkg.info.TypeOf(n.Lhs[0])) {
		return
	}
	at := w.offset(n.TokPos)
	end := at + len(n.Tok.String())
	number := w.add(at, end, sum[1])
	w.edits.replace(at, end, fmt.Sprintf("= %s.%s(%d, %s,", name, sum[0], number, w.flat(n.Lhs[0])))
	w.closing(func() { w.edits.close(w.offset(n.End()), ")") })
}

func (w *rewriter) step(n *ast.IncDecStmt) {
	if w.calls(n.X) {
		return
	}
	at := w.offset(n.TokPos)
	other, assign := "--", "+="
	if n.Tok == token.DEC {
		other, assign = "++", "-="
	}
	number := w.add(at, at+2, other)
	w.edits.replace(at, at+2, fmt.Sprintf(" %s %s.Step(%d, %s)", assign, name, number, w.flat(n.X)))
}

// returned gives zero values back. What is mutated inside is not, when it is all.
func (w *rewriter) returned(n *ast.ReturnStmt) {
	if len(n.Results) == 0 || !w.listed() {
		return
	}
	if len(n.Results) == 1 {
		tv := w.pkg.info.Types[n.Results[0]]
		if _, ok := ast.Unparen(n.Results[0]).(*ast.BinaryExpr); ok || tv.Value != nil && tv.Value.Kind() != constant.Bool {
			return
		}
	}
	if last := w.pkg.info.Types[n.Results[len(n.Results)-1]]; last.Value != nil && last.Value.Kind() == constant.Bool && !constant.BoolVal(last.Value) {
		return
	}
	zeros := true
	for _, e := range n.Results {
		zeros = zeros && w.zero(e)
	}
	if zeros {
		return
	}
	var declared, names []string
	texts := true
	for _, field := range w.results().List {
		texts = texts && isString(w.pkg.info.TypeOf(field.Type))
		for range max(1, len(field.Names)) {
			names = append(names, fmt.Sprintf("zero%d", len(names)))
			declared = append(declared, "var "+names[len(names)-1]+" "+w.flat(field.Type)+"; ")
		}
	}
	if texts {
		return
	}
	from, to := w.offset(n.Pos()), w.offset(n.End())
	number := w.add(from+len("return "), to, "zero")
	w.edits.open(from, fmt.Sprintf("if %s.On(%d) { %sreturn %s }; ", name, number, strings.Join(declared, ""), strings.Join(names, ", ")))
}

// results are those of the function that the walk is in.
func (w *rewriter) results() *ast.FieldList {
	for i := len(w.stack) - 1; i >= 0; i-- {
		switch n := w.stack[i].node.(type) {
		case *ast.FuncDecl:
			return n.Type.Results
		case *ast.FuncLit:
			return n.Type.Results
		}
	}
	return nil
}

// zero says whether an expression is plainly a zero value.
func (w *rewriter) zero(e ast.Expr) bool {
	tv := w.pkg.info.Types[e]
	if tv.IsNil() {
		return true
	}
	if c, ok := e.(*ast.CompositeLit); ok {
		_, isStruct := tv.Type.Underlying().(*types.Struct)
		return isStruct && len(c.Elts) == 0
	}
	if tv.Value == nil {
		return false
	}
	switch tv.Value.Kind() {
	case constant.Bool:
		return !constant.BoolVal(tv.Value)
	case constant.String:
		return constant.StringVal(tv.Value) == ""
	}
	return constant.Sign(tv.Value) == 0
}

// calls says whether there is a call in an expression, so that it can't stand twice.
func (w *rewriter) calls(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		_, call := n.(*ast.CallExpr)
		found = found || call
		return !found
	})
	return found
}

// flat is the text of a node in one line.
func (w *rewriter) flat(n ast.Node) string { return strings.ReplaceAll(w.text(n), "\n", " ") }
