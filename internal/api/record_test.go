package api

import (
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "record the API as it is now")

// recorded is the file of a package's record.
func recorded(p source) string {
	return filepath.Join("recorded", strings.ReplaceAll(p.Path, "/", ".")+".txt")
}

// A change of the API is no fault: run
//
//	go test ./internal/api -update
//
// and say in README, under Changes, what users have to do.
func TestExportedNamesAreAsRecorded(t *testing.T) {
	packages, err := public(root)
	require.NoError(t, err)
	files := map[string]bool{}
	for _, p := range packages {
		name, got := recorded(p), recordOf(p)
		files[name] = true
		if *update {
			require.NoError(t, os.MkdirAll("recorded", 0o755))
			require.NoError(t, os.WriteFile(name, []byte(got), 0o644))
			continue
		}
		want, err := os.ReadFile(name)
		if err != nil && !os.IsNotExist(err) {
			t.Fatal(err)
		}
		if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
			t.Errorf("%s: exported names changed (-recorded +now); if they should, go test ./internal/api -update:\n%s", p.Path, d)
		}
	}
	old, err := filepath.Glob("recorded/*.txt")
	require.NoError(t, err)
	for _, name := range old {
		if files[name] {
			continue
		}
		if *update {
			require.NoError(t, os.Remove(name))
			continue
		}
		t.Errorf("%s is the record of a package that is no longer there", name)
	}
}

func TestRecordHasWhatUsersSeeAndNothingElse(t *testing.T) {
	p := parse(t, `package p
		const Limit = 5
		const Least, hidden unit.Length = 1, 2
		var ErrNone error
		type Pipe struct {
			OD, id float64 `+"`json:\"od\"`"+`
			Base
		}
		type Fluid interface { Density(p float64) (float64, error) }
		type Kind int
		type Alias = Kind
		type inner struct{ X int }
		func (p *Pipe) Area(a, b float64) float64 { return a }
		func (i inner) Area() float64 { return 1 }
		func Sum[Q any](q ...Q) Q { return q[0] }
		func sum() {}`, "package p")
	require.Equal(t, []string{
		"const Least unit.Length", "const Limit", "func (p *Pipe) Area(a, b float64) float64", "func Sum[Q any](q ...Q) Q",
		"type Alias = Kind", "type Fluid interface", "type Fluid interface, Density(p float64) (float64, error)", "type Kind int",
		"type Pipe struct", "type Pipe struct, OD float64 `json:\"od\"`", "type Pipe struct, embeds Base", "var ErrNone error", "",
	}, strings.Split(recordOf(p), "\n"))
}

// parse makes a package of two texts, code and tests.
func parse(t *testing.T, code, tests string) source {
	t.Helper()
	p := source{Path: "p", Files: token.NewFileSet()}
	read := func(name, text string) []*ast.File {
		f, err := parser.ParseFile(p.Files, name, text, parser.ParseComments)
		require.NoError(t, err)
		return []*ast.File{f}
	}
	p.Code, p.Tests = read("p.go", code), read("p_test.go", tests)
	return p
}

// The tests that look at types by reflection forget none of them.
func TestListOfTypesIsWhole(t *testing.T) {
	packages, err := public(root)
	require.NoError(t, err)
	want, err := typeList(packages)
	require.NoError(t, err)
	const name = "everytype_test.go"
	if *update {
		require.NoError(t, os.WriteFile(name, want, 0o644))
		return
	}
	got, err := os.ReadFile(name)
	require.NoError(t, err)
	if d := cmp.Diff(strings.Split(string(got), "\n"), strings.Split(string(want), "\n")); d != "" {
		t.Errorf("exported types came or went (-listed +now); go test ./internal/api -update:\n%s", d)
	}
	require.Greater(t, len(everyType), 500)
}
