package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strconv"
	"strings"
)

// swapped gives the other operator.
var swapped = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
	token.LAND: token.LOR, token.LOR: token.LAND,
	token.EQL: token.NEQ, token.NEQ: token.EQL,
	token.LSS: token.GEQ, token.GEQ: token.LSS, token.GTR: token.LEQ, token.LEQ: token.GTR,
	token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN,
	token.MUL_ASSIGN: token.QUO_ASSIGN, token.QUO_ASSIGN: token.MUL_ASSIGN,
}

// atLimit gives the comparison that differs on the limit alone.
var atLimit = map[token.Token]token.Token{
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR,
}

// names of the runtime's functions that do or don't swap.
var named = map[token.Token]string{
	token.ADD: "mutantAdd", token.SUB: "mutantSub", token.MUL: "mutantMul", token.QUO: "mutantQuo", token.REM: "mutantRem",
	token.LSS: "mutantLess", token.LEQ: "mutantAtMost", token.GTR: "mutantMore", token.GEQ: "mutantAtLeast",
}

// around is the text that puts a binary expression behind a switch.
type around struct{ before, afterX, op, beforeY, after string }

func (w *walker) binary(n *ast.BinaryExpr) {
	on := w.canSwitch(n) && w.canSwitch(n.Y)
	a := w.around(n, on)
	if !on || a == (around{}) {
		w.visit(n.X)
		w.visit(n.Y)
		return
	}
	w.inserted(n.X.Pos(), false, a.before)
	w.visit(n.X)
	w.inserted(n.X.End(), true, a.afterX)
	w.replaced(n.OpPos, n.Op.String(), a.op)
	w.inserted(n.Y.Pos(), false, a.beforeY)
	w.visit(n.Y)
	w.inserted(n.Y.End(), true, a.after)
}

func (w *walker) around(n *ast.BinaryExpr, on bool) around {
	op, old, other := n.Op, n.Op.String(), swapped[n.Op].String()
	switch op {
	case token.ADD, token.SUB, token.MUL, token.QUO, token.REM:
		if is(w.s.info.TypeOf(n), types.IsString) || w.byOne(n) {
			break
		}
		id := w.mutation(n.OpPos, Operator, old, other, on)
		return around{before: fmt.Sprintf("%s(%d, ", named[op], id), op: ",", after: ")"}
	case token.LSS, token.LEQ, token.GTR, token.GEQ:
		limit := w.mutation(n.OpPos, Limit, old, atLimit[op].String(), on)
		w.found[len(w.found)-1].Figures = w.figure(n.X) && w.figure(n.Y)
		id := w.mutation(n.OpPos, Operator, old, other, on)
		return around{before: fmt.Sprintf("(%s(%d, ", named[op], limit), op: ",", after: fmt.Sprintf(") != mutantOn(%d))", id)}
	case token.EQL, token.NEQ:
		id := w.mutation(n.OpPos, Operator, old, other, on)
		return around{before: "((", op: old, after: fmt.Sprintf(") != mutantOn(%d))", id)}
	case token.LAND, token.LOR: // a || b = !(!a && !b)
		id := w.mutation(n.OpPos, Operator, old, other, on)
		turned := fmt.Sprintf(") != mutantOn(%d)", id)
		return around{"(((", turned, old, "(", turned + turned + ")"}
	}
	return around{}
}

// figure tells whether an expression is a floating-point number that is worked out, none that is written down.
func (w *walker) figure(e ast.Expr) bool {
	tv := w.s.info.Types[e]
	return tv.Value == nil && is(tv.Type, types.IsFloat)
}

// byOne tells whether something is multiplied or divided by one, such as an SI
// unit: the other operator does the same.
func (w *walker) byOne(n *ast.BinaryExpr) bool {
	v := w.s.info.Types[n.Y].Value
	return (n.Op == token.MUL || n.Op == token.QUO) && v != nil && constant.Compare(constant.ToFloat(v), token.EQL, constant.MakeFloat64(1))
}

func (w *walker) unary(n *ast.UnaryExpr) {
	on := w.canSwitch(n)
	switch n.Op {
	case token.SUB:
		id := w.mutation(n.OpPos, Operator, "-", "+", on)
		if on {
			w.replaced(n.OpPos, "-", "mutantNeg("+strconv.Itoa(id)+", ")
			defer w.inserted(n.X.End(), true, ")")
		}
	case token.NOT:
		if b, ok := ast.Unparen(n.X).(*ast.BinaryExpr); ok && swapped[b.Op] != 0 {
			break // turning the comparison round is the same
		}
		id := w.mutation(n.OpPos, Operator, "!", " ", on)
		if on {
			w.inserted(n.OpPos, false, "((")
			defer w.inserted(n.X.End(), true, fmt.Sprintf(") != mutantOn(%d))", id))
		}
	}
	w.visit(n.X)
}

func (w *walker) assign(n *ast.AssignStmt) {
	for _, e := range n.Lhs {
		w.visit(e)
	}
	other, ok := swapped[n.Tok]
	if !ok || is(w.s.info.TypeOf(n.Lhs[0]), types.IsString) {
		for _, e := range n.Rhs {
			w.visit(e)
		}
		return
	}
	times := n.Tok == token.MUL_ASSIGN || n.Tok == token.QUO_ASSIGN
	on := w.canSwitch(n) && !(times && is(w.s.info.TypeOf(n.Lhs[0]), types.IsInteger))
	id := w.mutation(n.TokPos, Operator, n.Tok.String(), other.String(), on)
	if on {
		name := "mutantSign"
		if times {
			name = "mutantInverse"
		}
		w.inserted(n.Rhs[0].Pos(), false, fmt.Sprintf("%s(%d, ", name, id))
		defer w.inserted(n.Rhs[0].End(), true, ")")
	}
	w.visit(n.Rhs[0])
}

func (w *walker) incDec(n *ast.IncDecStmt) {
	old, other, plus := "++", "--", "+="
	if n.Tok == token.DEC {
		old, other, plus = "--", "++", "-="
	}
	on := w.canSwitch(n)
	id := w.mutation(n.TokPos, Operator, old, other, on)
	if on {
		w.replaced(n.TokPos, old, " "+plus+" mutantSign("+strconv.Itoa(id)+", 1)")
	}
}

func is(t types.Type, info types.BasicInfo) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&info != 0
}

// constant switches between a constant expression and its mutations.
func (w *walker) constant(e ast.Expr, tv types.TypeAndValue) {
	if !is(tv.Type, types.IsNumeric) {
		return
	}
	typeName, ok := w.typeName(tv.Type)
	on := ok && w.canSwitch(e)
	first := len(w.found)
	w.constantTokens(e, on)
	if !on || len(w.found) == first {
		return
	}
	w.picked(e, typeName, w.found[first:])
}

// picked puts a constant expression and its mutations behind switches.
func (w *walker) picked(e ast.Expr, typeName string, found []Mutation) {
	from, to := w.byteOf(e.Pos()), w.byteOf(e.End())
	var b strings.Builder
	b.WriteString("mutantPick[" + typeName + "](" + strconv.Itoa(found[0].id) + ", " + flat(w.text[from:to]))
	for _, m := range found {
		b.WriteString(", " + flat(w.text[from:m.start]) + m.New + flat(w.text[m.end:to]))
	}
	b.WriteString(")")
	w.edits = append(w.edits, edit{from, to, false, b.String() + strings.Repeat("\n", strings.Count(string(w.text[from:to]), "\n"))})
}

func flat(text []byte) string { return strings.ReplaceAll(string(text), "\n", " ") }

func (w *walker) constantTokens(e ast.Expr, on bool) {
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			w.literal(n, on)
		case *ast.BinaryExpr:
			if other, ok := swapped[n.Op]; ok && !is(w.s.info.TypeOf(n.X), types.IsString) && !w.byOne(n) {
				w.mutation(n.OpPos, Operator, n.Op.String(), other.String(), on)
			}
		case *ast.UnaryExpr:
			if n.Op == token.SUB {
				w.mutation(n.OpPos, Operator, "-", "+", on)
			}
		}
		return true
	})
}

func (w *walker) literal(n *ast.BasicLit, on bool) {
	t := w.s.info.TypeOf(n)
	switch {
	case is(t, types.IsFloat) && (n.Kind == token.FLOAT || n.Kind == token.INT):
		if s := scaled(n.Value); s != "" {
			w.mutation(n.Pos(), Literal, n.Value, s, on)
		}
	case is(t, types.IsInteger) && n.Kind == token.INT:
		for _, s := range neighbours(n.Value, is(t, types.IsUnsigned)) {
			w.mutation(n.Pos(), Count, n.Value, s, on)
		}
	}
}

// typeName spells a type in this file; false where the file can't.
func (w *walker) typeName(t types.Type) (string, bool) {
	if b, ok := t.(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
		return "", false
	}
	ok := true
	name := types.TypeString(t, func(p *types.Package) string {
		if p == w.s.types {
			return ""
		}
		for _, i := range w.file.Imports {
			if strings.Trim(i.Path.Value, `"`) == p.Path() {
				if i.Name != nil {
					return i.Name.Name
				}
				return p.Name()
			}
		}
		ok = false
		return p.Name()
	})
	return name, ok
}
