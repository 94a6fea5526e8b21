package api

import (
	"go/ast"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// One style of names in JSON: lower case, words joined by an underscore.
func TestNamesInJSONAreOfOneStyle(t *testing.T) {
	style := regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
	packages, err := public(root)
	require.NoError(t, err)
	for _, p := range packages {
		texts := asText(p)
		for _, file := range p.Code {
			ast.Inspect(file, func(n ast.Node) bool {
				spec, ok := n.(*ast.TypeSpec)
				if !ok {
					return true
				}
				of, ok := spec.Type.(*ast.StructType)
				if !ok || !spec.Name.IsExported() || strings.HasSuffix(spec.Name.Name, "Error") || texts[spec.Name.Name] {
					return false
				}
				for _, f := range of.Fields.List {
					for _, field := range f.Names {
						name := ""
						if f.Tag != nil {
							tag, err := strconv.Unquote(f.Tag.Value)
							require.NoError(t, err)
							name, _, _ = strings.Cut(reflect.StructTag(tag).Get("json"), ",")
						}
						switch {
						case !field.IsExported() || name == "-":
						case name == "":
							t.Errorf("%s: %s.%s has no name for JSON", p.Path, spec.Name.Name, field.Name)
						case name != "" && !style.MatchString(name):
							t.Errorf("%s: %s.%s is %q in JSON; must be lower case, words joined by _", p.Path, spec.Name.Name, field.Name, name)
						}
					}
				}
				return false
			})
		}
	}
}

// asText are the types of a package that write themselves.
func asText(p source) map[string]bool {
	types := map[string]bool{}
	for _, file := range p.Code {
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && (f.Name.Name == "MarshalText" || f.Name.Name == "MarshalJSON") {
				types[receiver(f)] = true
			}
		}
	}
	return types
}
