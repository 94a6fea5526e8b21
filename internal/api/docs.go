package api

import "go/ast"

// docsOf are the docs of exported functions and methods, as Type.Method.
func docsOf(s source) map[string]string {
	docs := map[string]string{}
	for _, file := range s.Code {
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || !f.Name.IsExported() {
				continue
			}
			name := f.Name.Name
			if of := receiver(f); of != "" {
				name = of + "." + name
			}
			docs[name] = f.Doc.Text()
		}
	}
	return docs
}

// docsOfTypes are the docs of types.
func docsOfTypes(s source) map[string]string {
	docs := map[string]string{}
	for _, file := range s.Code {
		for _, d := range file.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok {
				continue
			}
			for _, spec := range g.Specs {
				if t, ok := spec.(*ast.TypeSpec); ok {
					docs[t.Name.Name] = g.Doc.Text() + t.Doc.Text()
				}
			}
		}
	}
	return docs
}

// failing are the functions and methods, as Type.Method, whose last result is an
// error.
func failing(s source) map[string]bool {
	names := map[string]bool{}
	for _, file := range s.Code {
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || f.Type.Results == nil {
				continue
			}
			list := f.Type.Results.List
			if last, ok := list[len(list)-1].Type.(*ast.Ident); ok && last.Name == "error" {
				name := f.Name.Name
				if of := receiver(f); of != "" {
					name = of + "." + name
				}
				names[name] = true
			}
		}
	}
	return names
}

// taking are the functions and methods, as Type.Method, that have arguments.
func taking(s source) map[string]bool {
	names := map[string]bool{}
	for _, file := range s.Code {
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || f.Type.Params.NumFields() == 0 {
				continue
			}
			name := f.Name.Name
			if of := receiver(f); of != "" {
				name = of + "." + name
			}
			names[name] = true
		}
	}
	return names
}
