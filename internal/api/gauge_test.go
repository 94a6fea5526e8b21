package api

import (
	"go/ast"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	saysGauge    = regexp.MustCompile(`(?i)\bgauge\b`)
	saysAbsolute = regexp.MustCompile(`(?i)\babsolute\b(?: (?:pressure|Pa|psi)|\W*$|[^ ]| (?:and|at|under|of)\b)`)
	saysEither   = regexp.MustCompile(`(?i)\bgauge\b|\babsolute\b`)
)

// Pressures are gauge, and the doc of each package that has any says so. Where a struct
// also holds an absolute one, each of its pressures says which it is; where a call
// takes a pressure beside such a struct, or is one of its methods, its doc does.
func TestPressuresSayWhetherTheyAreGaugeOrAbsolute(t *testing.T) {
	packages, err := public(root)
	require.NoError(t, err)
	structs, calls := 0, 0
	for _, p := range packages {
		if strings.HasPrefix(p.Path, "hydrostatics/unit") || strings.HasSuffix(p.name(), "test") {
			continue // quantities and how they are shown
		}
		mixed := map[string]bool{}
		hasPressures := false
		for _, file := range p.Code {
			for _, d := range file.Decls {
				switch d := d.(type) {
				case *ast.GenDecl:
					for _, spec := range d.Specs {
						s, ok := spec.(*ast.TypeSpec)
						if !ok || !s.Name.IsExported() {
							continue
						}
						of, ok := s.Type.(*ast.StructType)
						if !ok {
							continue
						}
						hasPressures = hasPressures || len(pressures(of.Fields)) > 0
						if absolute(of.Fields) {
							mixed[s.Name.Name] = true
							structs++
							for _, f := range pressures(of.Fields) {
								if !saysEither.MatchString(f.Doc.Text() + f.Comment.Text()) {
									t.Errorf("%s: %s has an absolute pressure; the doc of %s must say gauge or absolute", p.Path, s.Name.Name, f.Names[0].Name)
								}
							}
						}
					}
				case *ast.FuncDecl:
					hasPressures = hasPressures || d.Name.IsExported() && len(pressures(d.Type.Params)) > 0
				}
			}
		}
		if hasPressures && !saysGauge.MatchString(packageDoc(p)) {
			t.Errorf("%s: the package's doc must say that pressures are gauge", p.Path)
		}
		docs := docsOf(p)
		for _, file := range p.Code {
			for _, d := range file.Decls {
				f, ok := d.(*ast.FuncDecl)
				if !ok || !f.Name.IsExported() || len(pressures(f.Type.Params)) == 0 {
					continue
				}
				name := f.Name.Name
				if of := receiver(f); of != "" {
					name = of + "." + name
				}
				beside := mixed[receiver(f)]
				for _, x := range f.Type.Params.List {
					if id, ok := x.Type.(*ast.Ident); ok {
						beside = beside || mixed[id.Name]
					}
				}
				if !beside && saysAbsolute.MatchString(docs[name]) && !saysGauge.MatchString(docs[name]) {
					t.Errorf("%s: the doc of %s speaks of absolute pressure; it must say whether what it takes is gauge", p.Path, name)
				}
				if beside {
					calls++
					if !saysEither.MatchString(docs[name]) {
						t.Errorf("%s: %s takes a pressure beside an absolute one; its doc must say which is gauge and which absolute", p.Path, name)
					}
				}
			}
		}
	}
	require.Greater(t, structs, 3, "the search for absolute pressures has gone blind")
	require.Positive(t, calls)
}

// pressures are the fields or parameters that are pressures, or bands of them.
func pressures(list *ast.FieldList) []*ast.Field {
	var all []*ast.Field
	for _, f := range list.List {
		typ := f.Type
		if band, ok := typ.(*ast.IndexExpr); ok {
			typ = band.Index
		}
		if sel, ok := typ.(*ast.SelectorExpr); ok && sel.Sel.Name == "Pressure" && len(f.Names) > 0 {
			if id, ok := sel.X.(*ast.Ident); ok && id.Name == "unit" {
				all = append(all, f)
			}
		}
	}
	return all
}

// absolute tells whether a field says that it is an absolute pressure.
func absolute(list *ast.FieldList) bool {
	for _, f := range pressures(list) {
		if f.Names[0].IsExported() && strings.Contains(f.Doc.Text()+f.Comment.Text(), "absolute") {
			return true
		}
	}
	return false
}

func packageDoc(p source) string {
	var all strings.Builder
	for _, f := range p.Code {
		all.WriteString(f.Doc.Text())
	}
	return all.String()
}
