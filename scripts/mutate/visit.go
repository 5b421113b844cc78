package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
)

// visit puts in what mutates this node, and says whether to go on with what is in it.
func (w *rewriter) visit(n ast.Node) bool {
	if e, ok := n.(ast.Expr); ok {
		tv := w.pkg.info.Types[e]
		if tv.IsType() {
			return false
		}
		if tv.Value != nil {
			w.constant(e, tv)
			return false
		}
		if w.condition[e] && isBool(tv.Type) {
			w.negate(e)
		}
	}
	switch n := n.(type) {
	case *ast.GenDecl:
		return n.Tok == token.VAR
	case *ast.FuncDecl:
		w.skip[n.Type] = true
		if n.Recv != nil {
			w.skip[n.Recv] = true
		}
	case *ast.FuncLit:
		w.skip[n.Type] = true
	case *ast.KeyValueExpr:
		w.skip[n.Key] = true
	case *ast.IfStmt:
		w.decides(n.Cond)
	case *ast.ForStmt:
		w.decides(n.Cond)
	case *ast.SwitchStmt:
		if n.Tag == nil {
			for _, clause := range n.Body.List {
				for _, e := range clause.(*ast.CaseClause).List {
					w.decides(e)
				}
			}
		}
	case *ast.UnaryExpr:
		w.unary(n)
	case *ast.BinaryExpr:
		w.binary(n)
	case *ast.CallExpr:
		w.call(n)
	case *ast.IncDecStmt:
		w.step(n)
	case *ast.AssignStmt:
		w.assign(n)
	case *ast.ExprStmt:
		if call, ok := n.X.(*ast.CallExpr); ok && w.text(call.Fun) != "panic" {
			w.remove(n)
		}
	case *ast.ReturnStmt:
		w.returned(n)
	}
	return true
}

// decides marks what is negated when the expression decides; what is mutated inside
// anyhow (comparisons, && and ||) is not.
func (w *rewriter) decides(e ast.Expr) {
	if e == nil {
		return
	}
	e = ast.Unparen(e)
	switch n := e.(type) {
	case *ast.BinaryExpr:
		return
	case *ast.UnaryExpr:
		if _, ok := ast.Unparen(n.X).(*ast.BinaryExpr); ok {
			return
		}
	}
	w.condition[e] = true
}

func (w *rewriter) negate(e ast.Expr) {
	from, to := w.offset(e.Pos()), w.offset(e.End())
	var number int
	if not, ok := e.(*ast.UnaryExpr); ok && not.Op == token.NOT {
		number = w.add(from, from+1, "")
	} else {
		number = w.add(from, from, "!")
	}
	w.wrap(from, to, "((", fmt.Sprintf(") != %s.On(%d))", name, number))
}

func (w *rewriter) unary(n *ast.UnaryExpr) {
	from := w.offset(n.Pos())
	switch n.Op {
	case token.NOT:
		if _, ok := ast.Unparen(n.X).(*ast.BinaryExpr); !ok && !w.condition[n] && isBool(w.pkg.info.TypeOf(n)) {
			w.negate(n)
		}
	case token.SUB:
		number := w.add(from, from+1, "")
		w.edits.replace(from, from+1, fmt.Sprintf("%s.Neg(%d, ", name, number))
		w.closing(func() { w.edits.close(w.offset(n.End()), ")") })
	}
}

// orders are the helpers of the comparisons, and what each mutates to.
var orders = map[token.Token][3]string{
	token.LSS: {"Less", "<=", ">="},
	token.LEQ: {"LessEqual", "<", ">"},
	token.GTR: {"Greater", ">=", "<="},
	token.GEQ: {"GreaterEqual", ">", "<"},
}

// sums are the helpers of the arithmetic operators, and what each mutates to.
var sums = map[token.Token][2]string{
	token.ADD: {"Add", "-"}, token.SUB: {"Sub", "+"}, token.MUL: {"Mul", "/"}, token.QUO: {"Div", "*"}, token.REM: {"Rem", "*"},
	token.ADD_ASSIGN: {"Add", "-="}, token.SUB_ASSIGN: {"Sub", "+="}, token.MUL_ASSIGN: {"Mul", "/="}, token.QUO_ASSIGN: {"Div", "*="}, token.REM_ASSIGN: {"Rem", "*="},
}

func (w *rewriter) binary(n *ast.BinaryExpr) {
	from, to, at := w.offset(n.Pos()), w.offset(n.End()), w.offset(n.OpPos)
	end := at + len(n.Op.String())
	helper := func(function string, number int) {
		w.wrap(from, to, fmt.Sprintf("%s.%s(%d, ", name, function, number), ")")
		w.edits.replace(at, end, ",")
	}
	switch n.Op {
	case token.LAND, token.LOR:
		w.decides(n.X)
		w.decides(n.Y)
		if !isBool(w.pkg.info.TypeOf(n)) {
			return
		}
		other := "||"
		if n.Op == token.LOR {
			other = "&&"
		}
		// not (not a and not b) is a or b, and asks for b when that does.
		on := fmt.Sprintf("%s.On(%d)", name, w.add(at, end, other))
		w.wrap(from, to, "(((", ") != "+on+") != "+on+")")
		w.edits.replace(at, end, ") != "+on+" "+n.Op.String()+" (")
	case token.EQL, token.NEQ:
		if !isBool(w.pkg.info.TypeOf(n)) {
			return
		}
		other := "!="
		if n.Op == token.NEQ {
			other = "=="
		}
		w.wrap(from, to, "((", fmt.Sprintf(") != %s.On(%d))", name, w.add(at, end, other)))
	case token.LSS, token.LEQ, token.GTR, token.GEQ:
		if !isBool(w.pkg.info.TypeOf(n)) {
			return
		}
		order := orders[n.Op]
		number := w.add(at, end, order[1])
		w.also(at, end, order[2])
		helper(order[0], number)
	case token.ADD, token.SUB, token.MUL, token.QUO, token.REM:
		if isNumber(w.pkg.info.TypeOf(n)) {
			helper(sums[n.Op][0], w.add(at, end, sums[n.Op][1]))
		}
	}
}

// closing has done what closes this node after all that is in it.
func (w *rewriter) closing(do func()) {
	top := &w.stack[len(w.stack)-1]
	top.closed = append(top.closed, do)
}

// wrap puts texts around this node.
func (w *rewriter) wrap(from, to int, before, after string) {
	w.edits.open(from, before)
	w.closing(func() { w.edits.close(to, after) })
}

func (w *rewriter) offset(p token.Pos) int { return w.pkg.fset.Position(p).Offset }

func (w *rewriter) text(n ast.Node) string {
	return string(w.source.text[w.offset(n.Pos()):w.offset(n.End())])
}

func isBool(t types.Type) bool {
	b, ok := t.(*types.Basic)
	return ok && b.Info()&types.IsBoolean != 0
}

func isString(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsString != 0
}

func isNumber(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&(types.IsInteger|types.IsFloat) != 0 && b.Info()&types.IsUntyped == 0
}
