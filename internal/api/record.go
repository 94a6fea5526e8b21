package api

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/printer"
	"go/token"
	"slices"
	"strings"
)

// recordOf lists every exported name of a package, one a line: constants and
// variables, functions, types with their exported fields and methods.
func recordOf(s source) string {
	var lines []string
	add := func(format string, args ...any) { lines = append(lines, fmt.Sprintf(format, args...)) }
	for _, file := range s.Code {
		for _, d := range file.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if of := receiver(d); d.Name.IsExported() && (of == "" || ast.IsExported(of)) {
					add("%s", s.function(d))
				}
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					switch spec := spec.(type) {
					case *ast.TypeSpec:
						if spec.Name.IsExported() {
							lines = append(lines, s.typed(spec)...)
						}
					case *ast.ValueSpec:
						for _, name := range spec.Names {
							if name.IsExported() {
								add("%s %s%s", d.Tok, name.Name, s.of(spec.Type))
							}
						}
					}
				}
			}
		}
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n") + "\n"
}

// function is a signature with its receiver.
func (s source) function(f *ast.FuncDecl) string {
	head := *f
	head.Body, head.Doc = nil, nil
	return s.text(&head)
}

// typed lists a type and what of it is exported.
func (s source) typed(t *ast.TypeSpec) []string {
	name := "type " + t.Name.Name
	if t.Assign.IsValid() {
		name += " ="
	}
	switch of := t.Type.(type) {
	case *ast.StructType:
		lines := []string{name + " struct"}
		for _, f := range of.Fields.List {
			tag := ""
			if f.Tag != nil {
				tag = " " + f.Tag.Value
			}
			if len(f.Names) == 0 {
				lines = append(lines, name+" struct, embeds"+s.of(f.Type)+tag)
			}
			for _, n := range f.Names {
				if n.IsExported() {
					lines = append(lines, name+" struct, "+n.Name+s.of(f.Type)+tag)
				}
			}
		}
		return lines
	case *ast.InterfaceType:
		lines := []string{name + " interface"}
		for _, m := range of.Methods.List {
			if len(m.Names) == 0 {
				lines = append(lines, name+" interface, embeds"+s.of(m.Type))
			}
			for _, n := range m.Names {
				lines = append(lines, name+" interface, "+n.Name+strings.TrimPrefix(s.text(m.Type), "func"))
			}
		}
		return lines
	}
	return []string{name + s.of(t.Type)}
}

// of is a type after a space, or nothing where there is none.
func (s source) of(t ast.Expr) string {
	if t == nil {
		return ""
	}
	return " " + s.text(t)
}

// text prints a node on one line.
func (s source) text(n ast.Node) string {
	var b bytes.Buffer
	if err := (&printer.Config{Mode: printer.RawFormat}).Fprint(&b, token.NewFileSet(), n); err != nil {
		return err.Error()
	}
	return strings.Join(strings.Fields(b.String()), " ")
}
