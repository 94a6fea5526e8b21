package catalogue_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/stretchr/testify/require"
)

func TestNoSizeHasNoDrift(t *testing.T) {
	nan := unit.Length(math.NaN())
	require.True(t, math.IsNaN(float64(catalogue.Drift(catalogue.Tubing, nan, 1))))
	require.True(t, math.IsNaN(float64(catalogue.Drift(catalogue.Casing, 1, nan))))
	require.True(t, math.IsNaN(float64(catalogue.Entry{OD: nan}.ThreadHeight())))
}
