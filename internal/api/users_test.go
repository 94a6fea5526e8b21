package api

import (
	"os"
	"path/filepath"
	"testing"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

func TestEveryExportedNameHasAUser(t *testing.T) {
	long.Skip(t, "checks the types of the whole module")
	p, err := read(root)
	require.NoError(t, err)
	require.Greater(t, len(p.packages), 80)
	for _, name := range p.unused() {
		t.Errorf("%s: no other package, Example with output, lesson or README uses it: show its use, or don't export it", name)
	}
}

func TestWhatCountsAsAUser(t *testing.T) {
	files := map[string]string{
		"a/a.go": `package a
			type Shown struct { Of Held }
			type Held struct{}
			type Alone struct{}
			type Kind int
			const First Kind = 0
			const Number = 5
			func Called() Kind { return First }
			func Exemplary() int { return 1 }
			func Tested() int { return 1 }
			func Said() int { return 1 }
			func (Shown) Done() {}
			func (Shown) Idle() {}
			func (Shown) String() string { return "" }`,
		"a/a_test.go": `package a_test
			import ("fmt"; "testing"; "completion.example/a")
			func ExampleExemplary() { fmt.Println(a.Exemplary()) // Output: 1
			}
			func TestTested(*testing.T) { a.Tested() }`,
		"b/b.go": `package main
			import "completion.example/a"
			func main() { a.Called(); x := a.Shown{}; x.Done() }`,
		"README.md": "write `a.Said()`",
	}
	folder := t.TempDir()
	for name, text := range files {
		name = filepath.Join(folder, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	}
	p, err := read(folder)
	require.NoError(t, err)
	require.Equal(t, []string{"a.Alone", "a.Number", "a.Shown.Idle", "a.Tested"}, p.unused())
}
