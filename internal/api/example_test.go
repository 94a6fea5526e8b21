package api

import (
	"testing"

	"github.com/stretchr/testify/require"
)

const root = "../.."

func TestEveryCalculationIsShownInAnExample(t *testing.T) {
	packages, err := public(root)
	require.NoError(t, err)
	for _, p := range packages {
		t.Logf("%-30s %d of %d: %v", p.Path, len(missing(p)), len(calculations(p)), missing(p))
	}
}
