package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestDecay(t *testing.T) {
	for i := range 1001 {
		x := float64(i) / 100
		require.InEpsilon(t, math.Exp(-x), decay(x), 1e-14, "x = %g", x)
	}
	require.Equal(t, 1.0, decay(0))
}
