package main

import (
	"go/ast"
	"go/token"
	"go/types"
	"path/filepath"
	"strings"
)

// edit replaces bytes of a file; where start and end are equal it inserts.
type edit struct {
	start, end int
	closes     bool // goes before what opens at the same byte
	text       string
}

// walker finds the mutations of one file and the edits that put them behind
// switches.
type walker struct {
	s     *source
	file  *ast.File
	text  []byte
	lines []string
	decl  string
	alone func(file string, row int) bool // rows that can't be switched
	next  *int                            // id of the next switch

	variables map[types.Object]types.Type // constants that may be variables

	found []Mutation
	edits []edit
}

func (w *walker) byteOf(p token.Pos) int { return w.s.fset.Position(p).Offset }

func (w *walker) inserted(at token.Pos, closes bool, text string) {
	b := w.byteOf(at)
	w.edits = append(w.edits, edit{b, b, closes, text})
}

func (w *walker) replaced(at token.Pos, old, text string) {
	b := w.byteOf(at)
	w.edits = append(w.edits, edit{b, b + len(old), false, text})
}

// mutation records one; switched ones get the next id.
func (w *walker) mutation(at token.Pos, kind Kind, old, new string, switched bool) int {
	p := w.s.fset.Position(at)
	line := w.lines[p.Line-1]
	trimmed := strings.TrimSpace(line)
	m := Mutation{
		Package: w.s.name, File: filepath.Base(p.Filename), Decl: w.decl, Line: trimmed,
		At: p.Column - 1 - strings.Index(line, trimmed), Kind: kind, Old: old, New: new,
		start: p.Offset, end: p.Offset + len(old), row: p.Line,
	}
	if switched {
		*w.next++
		m.id = *w.next
	}
	w.found = append(w.found, m)
	return m.id
}

func (w *walker) canSwitch(n ast.Node) bool {
	p := w.s.fset.Position(n.Pos())
	return w.alone == nil || !w.alone(filepath.Base(p.Filename), p.Line)
}

func (w *walker) walkFile() {
	for _, d := range w.file.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			w.decl = d.Name.Name
			if d.Recv != nil && len(d.Recv.List) == 1 {
				w.decl = strings.TrimPrefix(types.ExprString(d.Recv.List[0].Type), "*") + "." + w.decl
			}
			if d.Body != nil {
				w.visit(d.Body)
			}
		case *ast.GenDecl:
			w.decl = ""
			w.genDecl(d)
		}
	}
}

func (w *walker) genDecl(d *ast.GenDecl) {
	outer := w.decl
	for _, spec := range d.Specs {
		v, ok := spec.(*ast.ValueSpec)
		if !ok {
			continue
		}
		if outer == "" {
			w.decl = v.Names[0].Name
		}
		for _, value := range v.Values {
			if d.Tok == token.CONST {
				w.declared(d, v, value)
			} else {
				w.visit(value)
			}
		}
		w.decl = outer
	}
}

func mentions(e ast.Expr, name string) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		found = found || ok && id.Name == name
		return !found
	})
	return found
}

// visit walks a node of the program's running part.
func (w *walker) visit(n ast.Node) {
	if e, ok := n.(ast.Expr); ok {
		if tv := w.s.info.Types[e]; tv.IsType() {
			return // such as the length of an array
		} else if tv.Value != nil {
			w.constant(e, tv)
			return
		}
	}
	switch n := n.(type) {
	case *ast.GenDecl:
		w.genDecl(n)
	case *ast.BinaryExpr:
		w.binary(n)
	case *ast.UnaryExpr:
		w.unary(n)
	case *ast.AssignStmt:
		w.assign(n)
	case *ast.IncDecStmt:
		w.visit(n.X)
		w.incDec(n)
	case *ast.ForStmt:
		w.loop(n)
	case *ast.CompositeLit:
		w.composite(n)
	case *ast.CallExpr:
		w.call(n)
	case *ast.ReturnStmt:
		w.result(n)
	default:
		w.children(n)
	}
}

func (w *walker) children(n ast.Node) {
	first := true
	ast.Inspect(n, func(c ast.Node) bool {
		if first {
			first = false
			return true
		}
		if c != nil {
			w.visit(c)
		}
		return false
	})
}

// loop leaves the step of a counted loop alone: turned round it never ends.
func (w *walker) loop(n *ast.ForStmt) {
	post := n.Post
	if _, counts := post.(*ast.IncDecStmt); counts {
		post = nil
	}
	for _, part := range []ast.Node{n.Init, n.Cond, post, n.Body} {
		if part != nil {
			w.visit(part)
		}
	}
}

// composite leaves the keys of arrays alone: they must be constants.
func (w *walker) composite(n *ast.CompositeLit) {
	_, isMap := w.s.info.TypeOf(n).Underlying().(*types.Map)
	for _, e := range n.Elts {
		kv, ok := e.(*ast.KeyValueExpr)
		if !ok {
			w.visit(e)
			continue
		}
		if isMap {
			w.visit(kv.Key)
		}
		w.visit(kv.Value)
	}
}

// beside are the functions whose whole numbers are no counts of a formula: room
// that is asked for, signs, bits, printed digits.
var beside = map[string]bool{
	"make": true, "Grow": true, "Inf": true, "ParseFloat": true, "FormatFloat": true, "ParseInt": true, "Rounded": true,
}

// call leaves those alone and looks at what else goes in.
func (w *walker) call(n *ast.CallExpr) {
	name := ""
	switch f := n.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	if !beside[name] {
		w.children(n)
		return
	}
	w.visit(n.Fun)
	for _, a := range n.Args {
		if w.s.info.Types[a].Value == nil && name != "make" && name != "Grow" {
			w.visit(a)
		}
	}
}

// result leaves a plain number that goes back beside an error alone: nobody may
// look at it.
func (w *walker) result(n *ast.ReturnStmt) {
	for i, e := range n.Results {
		last := n.Results[len(n.Results)-1]
		_, plain := e.(*ast.BasicLit)
		id, named := last.(*ast.Ident)
		if plain && i < len(n.Results)-1 && w.isError(last) && !(named && id.Name == "nil") {
			continue
		}
		w.visit(e)
	}
}

func (w *walker) isError(e ast.Expr) bool {
	t := w.s.info.TypeOf(e)
	return t != nil && types.Implements(t, types.Universe.Lookup("error").Type().Underlying().(*types.Interface))
}
