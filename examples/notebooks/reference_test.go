package main

import (
	"os/exec"
	"path/filepath"
	"testing"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// validate is the format's own schema, as its reference library holds it.
const validate = `
import sys, nbformat
for name in sys.argv[1:]:
    nbformat.validate(nbformat.read(name, as_version=nbformat.NO_CONVERT))
print(len(sys.argv) - 1)
`

// Where the reference library is installed (Debian's package python3-nbformat), it
// finds the notebooks valid.
func TestNotebooksAgainstTheReferenceLibrary(t *testing.T) {
	long.Skip(t, "starts Python")
	python := ""
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if python == "" && exec.Command(name, "-c", "import nbformat").Run() == nil { //nolint:gosec // one of two names
			python = name
		}
	}
	if python == "" {
		t.Skip("no Python with nbformat here")
	}
	books, err := filepath.Glob("*.ipynb")
	require.NoError(t, err)
	require.Len(t, books, 16)
	out, err := exec.Command(python, append([]string{"-c", validate}, books...)...).CombinedOutput() //nolint:gosec // files of our own
	require.NoError(t, err, string(out))
	require.Equal(t, "16\n", string(out))
}
