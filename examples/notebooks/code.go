package main

import (
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"strings"
)

// Kind says what a cell holds.
type Kind int

// Kinds of cells. Declarations stand outside of every function: what several cells
// use is declared there, so that it is known to a kernel that compiles each cell by
// itself and to one that goes on from cell to cell.
const (
	Text Kind = iota
	Imports
	Declarations
	Statements
)

// newCode tells what a piece of code is, and asks that it is formatted.
func newCode(source string, folded bool) (Cell, error) {
	c := Cell{Folded: folded, Source: source}
	formatted, err := format.Source([]byte(source))
	if err != nil {
		return c, err
	}
	if string(formatted) != source {
		return c, fmt.Errorf("gofmt would write\n%s", formatted)
	}
	c.Kind = Statements
	if file, err := parser.ParseFile(token.NewFileSet(), "", "package p\n"+source, 0); err == nil {
		c.Kind = Declarations
		if len(file.Imports) > 0 {
			c.Kind = Imports
			if len(file.Decls) > 1 {
				return c, fmt.Errorf("imports must stand in a cell of their own")
			}
		}
	}
	return c, nil
}

// oneScope asks that all cells of statements can stand in one function, as in a
// program: no name is declared in two of them, and none is used in another than
// its own, as not every kernel keeps it.
func oneScope(cells []Cell) error {
	owner, outside := map[string]int{}, map[string]bool{}
	for _, c := range cells {
		if c.Kind == Declarations {
			for _, name := range topLevel(c.Source) {
				outside[name] = true
			}
		}
	}
	for i, c := range cells {
		if c.Kind != Statements {
			continue
		}
		body, err := statements(c.Source)
		if err != nil {
			return err
		}
		for _, s := range body.List {
			if r, ok := s.(*ast.ReturnStmt); ok {
				return fmt.Errorf("a return at %v ends the whole program; put the rest into the if", r.Pos())
			}
			if _, inner := s.(*ast.RangeStmt); inner {
				continue // its names end with it
			}
			for _, name := range declared(s) {
				if at, ok := owner[name]; ok && at != i {
					return fmt.Errorf("%s is declared in two cells; all cells must fit into one function", name)
				}
				if outside[name] {
					return fmt.Errorf("%s is declared outside of functions and again in a cell of statements", name)
				}
				owner[name] = i
			}
		}
	}
	for i, c := range cells {
		if c.Kind != Statements {
			continue
		}
		body, _ := statements(c.Source)
		own, fields := map[string]bool{}, map[*ast.Ident]bool{}
		ast.Inspect(body, func(n ast.Node) bool {
			switch n := n.(type) {
			case ast.Stmt:
				for _, name := range declared(n) {
					own[name] = true
				}
			case *ast.Field:
				for _, name := range n.Names {
					own[name.Name] = true
				}
			case *ast.SelectorExpr:
				fields[n.Sel] = true
			case *ast.KeyValueExpr:
				if key, ok := n.Key.(*ast.Ident); ok {
					fields[key] = true
				}
			}
			return true
		})
		var foreign string
		ast.Inspect(body, func(n ast.Node) bool {
			if id, ok := n.(*ast.Ident); ok && !own[id.Name] && !fields[id] && !outside[id.Name] {
				if at, ok := owner[id.Name]; ok && at != i {
					foreign = id.Name
				}
			}
			return true
		})
		if foreign != "" {
			return fmt.Errorf("%s is used in another cell than the one that declares it; declare it by var in a cell of its own", foreign)
		}
	}
	return nil
}

func statements(source string) (*ast.BlockStmt, error) {
	file, err := parser.ParseFile(token.NewFileSet(), "", "package p\nfunc f() {\n"+source+"\n}\n", 0)
	if err != nil {
		return nil, err
	}
	return file.Decls[0].(*ast.FuncDecl).Body, nil
}

// declared are the names that a statement leaves behind.
func declared(s ast.Stmt) (names []string) {
	add := func(e ast.Expr) {
		if n, ok := e.(*ast.Ident); ok && n != nil && n.Name != "_" {
			names = append(names, n.Name)
		}
	}
	switch s := s.(type) {
	case *ast.AssignStmt:
		if s.Tok == token.DEFINE {
			for _, e := range s.Lhs {
				add(e)
			}
		}
	case *ast.RangeStmt:
		if s.Tok == token.DEFINE {
			add(s.Key)
			add(s.Value)
		}
	case *ast.DeclStmt:
		if g, ok := s.Decl.(*ast.GenDecl); ok {
			names = append(names, named(g)...)
		}
	}
	return names
}

func topLevel(source string) (names []string) {
	file, err := parser.ParseFile(token.NewFileSet(), "", "package p\n"+source, 0)
	if err != nil {
		return nil
	}
	for _, d := range file.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			names = append(names, d.Name.Name)
		case *ast.GenDecl:
			names = append(names, named(d)...)
		}
	}
	return names
}

func named(g *ast.GenDecl) (names []string) {
	for _, s := range g.Specs {
		switch s := s.(type) {
		case *ast.ValueSpec:
			for _, n := range s.Names {
				names = append(names, n.Name)
			}
		case *ast.TypeSpec:
			names = append(names, s.Name.Name)
		}
	}
	return names
}

// imported are the packages that a lesson's cells import.
func (l Lesson) imported() (paths []string) {
	for _, c := range l.Cells {
		if c.Kind == Imports {
			file, err := parser.ParseFile(token.NewFileSet(), "", "package p\n"+c.Source, parser.ImportsOnly)
			if err != nil {
				continue
			}
			for _, i := range file.Imports {
				paths = append(paths, strings.Trim(i.Path.Value, `"`))
			}
		}
	}
	return paths
}
