package calculators_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"completion.example/examples/internal/calculators"
	"github.com/stretchr/testify/require"
)

// Every calculator is listed, has a package here and a command in examples, and
// stands in README.
func TestAllAreListed(t *testing.T) {
	folders, err := filepath.Glob("*/command.go")
	require.NoError(t, err)
	readme, err := os.ReadFile("../../../README.md")
	require.NoError(t, err)
	var listed, there []string
	for _, g := range calculators.Groups() {
		for _, c := range g.Commands {
			listed = append(listed, c.Name)
			require.Contains(t, string(readme), "`"+c.Name+"`", "README lists the calculators")
			require.FileExists(t, filepath.Join("..", "..", c.Name, c.Name+".go"))
			found, ok := calculators.Named(c.Name)
			require.True(t, ok)
			require.Equal(t, c.Question, found.Question)
			require.True(t, strings.HasSuffix(c.Question, "?"), c.Name)
		}
	}
	for _, f := range folders {
		there = append(there, filepath.Dir(f))
	}
	slices.Sort(listed)
	require.Equal(t, there, listed)
	_, ok := calculators.Named("nonsense")
	require.False(t, ok)
}
