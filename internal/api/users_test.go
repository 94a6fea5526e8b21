package api

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestEveryExportedNameHasAUser(t *testing.T) {
	p, err := read(root)
	require.NoError(t, err)
	for _, name := range p.unused() {
		t.Error(name)
	}
}
