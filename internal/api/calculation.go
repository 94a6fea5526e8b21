package api

import (
	"go/ast"
	"go/doc"
	"go/token"
	"strings"
)

// calculations returns the exported functions and methods, as Type.Method, that
// have arithmetic in their body.
func calculations(s source) []string {
	var names []string
	for _, file := range s.Code {
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || !f.Name.IsExported() || f.Body == nil || services[f.Name.Name] || !computes(f.Body) {
				continue
			}
			switch of := receiver(f); {
			case of == "":
				names = append(names, f.Name.Name)
			case ast.IsExported(of):
				names = append(names, of+"."+f.Name.Name)
			}
		}
	}
	return names
}

// services are methods that check, write or read, and whose arithmetic nobody
// asks for by itself. What Steps shows a test of its own evaluates.
var services = map[string]bool{"Validate": true, "Error": true, "String": true, "Steps": true, "StepsNamed": true, "MarshalText": true, "UnmarshalText": true}

// computes tells whether a body has arithmetic on anything but texts and counts.
func computes(body ast.Node) (found bool) {
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.IndexExpr, *ast.SliceExpr: // counting elements
			return false
		case *ast.BinaryExpr:
			switch n.Op {
			case token.MUL, token.QUO:
				found = true
			case token.ADD, token.SUB:
				found = found || !counts(n.X) && !counts(n.Y)
			}
		}
		return !found
	})
	return found
}

// counts tells whether an operand makes a sum one of texts or whole numbers.
func counts(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return e.Kind == token.STRING || e.Kind == token.INT
	case *ast.BinaryExpr:
		return counts(e.X) || counts(e.Y)
	case *ast.CallExpr:
		switch f := e.Fun.(type) {
		case *ast.Ident:
			return f.Name == "len" || f.Name == "int" || f.Name == "string"
		case *ast.SelectorExpr: // a text
			return f.Sel.Name == "String" || f.Sel.Name == "Rounded" || f.Sel.Name == "Sprint" || f.Sel.Name == "Sprintf" || f.Sel.Name == "Index"
		}
	}
	return false
}

// shown returns the names that the package's Examples with output call, whatever
// value a method is called on, and those that an Example is named after.
func shown(s source) map[string]bool {
	names := map[string]bool{}
	for _, e := range doc.Examples(s.Tests...) {
		if e.Output == "" && !e.EmptyOutput {
			continue
		}
		of, suffix, _ := strings.Cut(e.Name, "_")
		method, _, _ := strings.Cut(suffix, "_")
		names[of], names[of+"."+method] = true, true
		ast.Inspect(e.Code, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				if sel, ok := call.Fun.(*ast.SelectorExpr); ok {
					names[sel.Sel.Name] = true
				} else if id, ok := call.Fun.(*ast.Ident); ok {
					names[id.Name] = true
				}
			}
			return true
		})
	}
	return names
}

// missing returns the calculations of a package that no Example shows.
func missing(s source) []string {
	seen := shown(s)
	var names []string
	for _, c := range calculations(s) {
		_, method, isMethod := strings.Cut(c, ".")
		if !seen[c] && !(isMethod && seen[method]) {
			names = append(names, c)
		}
	}
	return names
}
