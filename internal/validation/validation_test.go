package validation_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"completion.example/internal/validation"
	"github.com/stretchr/testify/require"
)

// TestPublished runs every published case: a case fails alone, by its name.
func TestPublished(t *testing.T) {
	for _, s := range validation.Suites() {
		t.Run(s.File, func(t *testing.T) {
			outcomes, err := s.Run()
			require.NoError(t, err)
			require.NotEmpty(t, outcomes)
			for _, o := range outcomes {
				if o.Err != nil {
					t.Errorf("%v: %v (%s)", o.Case, o.Err, o.Source)
				} else if !o.Met() {
					t.Errorf("%v: %v (%s %s)", o.Case, o.Comparison, o.Source, o.Where)
				}
			}
		})
	}
}

// TestEveryFileIsRun finds case files that no suite reads.
func TestEveryFileIsRun(t *testing.T) {
	run := map[string]bool{}
	for _, s := range validation.Suites() {
		run[s.File] = true
	}
	files, err := fs.Glob(os.DirFS(filepath.Join("..", "published")), "*.csv")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		require.True(t, run[f], "%s is in no suite", f)
	}
}
