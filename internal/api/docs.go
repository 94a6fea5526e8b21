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
