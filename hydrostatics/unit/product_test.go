package unit

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"
)

// A number of up to forty digits is multiplied before it is rounded; of more, as a float64 is.
func TestNumbersOfFortyDigits(t *testing.T) {
	factor := float64(PSI)
	tried := 0
	for x := 1e7; tried < 20; x += 12345.678 {
		v := x / factor
		if v*factor == x {
			continue // met without
		}
		exact := new(big.Float).SetPrec(exactBits).SetFloat64(x)
		exact.Quo(exact, big.NewFloat(factor))
		forty, more := exact.Text('g', 40), exact.Text('g', 41)
		if figures(forty) < 40 || figures(more) < 41 {
			continue // ends in noughts
		}
		tried++
		require.Equal(t, x, product(forty, v, factor))
		require.NotEqual(t, x, product(more, v, factor))
		require.Equal(t, v*factor, product(more, v, factor))
	}
}
