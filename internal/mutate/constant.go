package main

import (
	"go/ast"
	"go/token"
	"go/types"
	"strings"
)

// declared walks a constant's declaration. Where the constant can be a variable it becomes one,
// on the same row, so that its numbers can be switched.
func (w *walker) declared(d *ast.GenDecl, v *ast.ValueSpec, value ast.Expr) {
	if mentions(value, "iota") {
		return
	}
	t := w.variables[w.s.info.Defs[v.Names[0]]]
	name, ok := "", false
	if t != nil && len(v.Names) == 1 && w.canSwitch(v) {
		name, ok = w.typeName(t)
	}
	if !ok {
		w.constantTokens(value, false)
		return
	}
	first := len(w.found)
	w.constantTokens(value, true)
	if len(w.found) == first {
		return
	}
	if d.Lparen.IsValid() {
		w.inserted(v.Pos(), false, "); var ")
		defer w.inserted(v.End(), true, "; const (")
	} else {
		w.replaced(d.TokPos, "const", "var")
	}
	if v.Type == nil {
		w.inserted(v.Names[0].End(), true, " "+name)
	}
	w.picked(value, name, w.found[first:])
}

// variables are the constants of a package, but the given ones, that could as well be variables:
// nobody else sees them, all uses are of one type, and nothing is reckoned from them that must be constant.
func (s *source) variables(not map[string]bool) map[types.Object]types.Type {
	all := map[types.Object]types.Type{}
	for _, f := range s.files {
		ast.Inspect(f, func(n ast.Node) bool {
			d, ok := n.(*ast.GenDecl)
			if !ok || d.Tok != token.CONST || strings.Contains(s.textOf(f, d), "iota") {
				return true
			}
			for _, spec := range d.Specs {
				v := spec.(*ast.ValueSpec)
				if len(v.Values) == 0 {
					for _, spec := range d.Specs { // the value before is meant again
						delete(all, s.info.Defs[spec.(*ast.ValueSpec).Names[0]])
					}
					break
				}
				name := v.Names[0]
				obj := s.info.Defs[name]
				if len(v.Names) > 1 || name.Name == "_" || name.IsExported() && obj.Parent() == s.types.Scope() || not[name.Name] {
					continue
				}
				if b, ok := obj.Type().(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
					all[obj] = nil // as used
				} else if is(obj.Type(), types.IsNumeric) {
					all[obj] = obj.Type()
				}
			}
			return true
		})
	}
	for id, obj := range s.info.Uses {
		before, ok := all[obj]
		if !ok {
			continue
		}
		t := s.info.Types[id].Type
		if t == nil || before != nil && !types.Identical(t, before) || !is(t, types.IsNumeric) || wasWhole(obj) && !is(t, types.IsInteger) {
			delete(all, obj)
			continue
		}
		all[obj] = t
	}
	for _, f := range s.files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.GenDecl:
				if n.Tok == token.CONST {
					for _, spec := range n.Specs {
						for _, value := range spec.(*ast.ValueSpec).Values {
							s.drop(all, value)
						}
					}
				}
			case *ast.ArrayType:
				s.drop(all, n.Len)
			case *ast.CompositeLit:
				if _, isMap := s.info.TypeOf(n).Underlying().(*types.Map); isMap {
					return true
				}
				for _, e := range n.Elts {
					if kv, ok := e.(*ast.KeyValueExpr); ok {
						s.drop(all, kv.Key)
					}
				}
			}
			return true
		})
	}
	return all
}

func wasWhole(obj types.Object) bool {
	b, ok := obj.Type().(*types.Basic)
	return ok && b.Kind() == types.UntypedInt
}

// drop takes out what an expression mentions.
func (s *source) drop(all map[types.Object]types.Type, e ast.Expr) {
	if e == nil {
		return
	}
	ast.Inspect(e, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok {
			delete(all, s.info.Uses[id])
		}
		return true
	})
}

func (s *source) textOf(f *ast.File, n ast.Node) string {
	return string(s.text[f][s.fset.Position(n.Pos()).Offset:s.fset.Position(n.End()).Offset])
}
