// Package api holds what users of the library see: a record of every exported
// name, which a test holds against the source so that each change shows, and the
// test that every exported calculation is shown in an Example with its output.
package api

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
)

// source is one public package as it is written.
type source struct {
	Path  string // from the module's root, such as tubular/drag
	Files *token.FileSet
	Code  []*ast.File // in the order of their names
	Tests []*ast.File // of this package and of its _test package
}

// public reads every package below root that users can import: all but
// internal ones and the programs of examples. It reads them once.
func public(root string) ([]source, error) {
	packagesOnce.Lock()
	defer packagesOnce.Unlock()
	if all, ok := packagesRead[root]; ok {
		return all, nil
	}
	all, err := readPublic(root)
	if err == nil {
		packagesRead[root] = all
	}
	return all, err
}

var (
	packagesOnce sync.Mutex
	packagesRead = map[string][]source{}
)

func readPublic(root string) ([]source, error) {
	packages := map[string]*source{}
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if base := d.Name(); name != root && (base == "internal" || base == "examples" || base == "testdata" || strings.HasPrefix(base, ".")) {
				return filepath.SkipDir
			}
			return nil
		}
		if filepath.Ext(name) != ".go" {
			return nil
		}
		directory, err := filepath.Rel(root, filepath.Dir(name))
		if err != nil {
			return err
		}
		p := packages[directory]
		if p == nil {
			p = &source{Path: filepath.ToSlash(directory), Files: token.NewFileSet()}
			packages[directory] = p
		}
		f, err := parser.ParseFile(p.Files, name, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		if strings.HasSuffix(name, "_test.go") {
			p.Tests = append(p.Tests, f)
		} else {
			p.Code = append(p.Code, f)
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	var all []source
	for _, p := range packages {
		if len(p.Code) > 0 {
			all = append(all, *p)
		}
	}
	slices.SortFunc(all, func(a, b source) int { return strings.Compare(a.Path, b.Path) })
	return all, nil
}

// name of the package as code writes it.
func (s source) name() string { return path.Base(s.Path) }

// receiver is the type of a method, or empty for a function.
func receiver(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	t := f.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	if generic, ok := t.(*ast.IndexExpr); ok {
		t = generic.X
	}
	if id, ok := t.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}
