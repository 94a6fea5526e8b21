package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

const unit = "../../hydrostatics/unit"

func TestMethodsAreCurrent(t *testing.T) {
	want, err := methods(unit)
	require.NoError(t, err)
	got, err := os.ReadFile(filepath.Join(unit, file))
	require.NoError(t, err)
	require.Equal(t, string(want), string(got), "run go generate ./hydrostatics/unit")
}

func TestTypeWithoutTable(t *testing.T) {
	d := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(d, "a.go"), []byte("package unit\n\ntype Charge float64\n"), 0o600))
	_, err := methods(d)
	require.ErrorContains(t, err, "type Charge has no table chargeUnits")
}
