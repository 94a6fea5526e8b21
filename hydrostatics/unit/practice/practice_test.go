package practice

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Every factor is of units that there are, rounds the exact one, and is exact where
// it says so.
func TestFactors(t *testing.T) {
	names := map[string]bool{}
	for _, q := range unit.Quantities() {
		names[q.Name] = true
	}
	for _, f := range factors {
		require.True(t, names[f.Quantity], f.Quantity)
		require.False(t, math.IsNaN(f.Off()), "%+v", f)
		limit := 0.02
		require.InDelta(t, 0, f.Off(), limit, "%+v", f)
		if f.Source == "exact" || len(f.Source) > 6 && f.Source[:6] == "exact;" {
			require.InDelta(t, 0, f.Off(), 1e-15, "%+v", f)
		}
	}
	require.Empty(t, Factors("colour"))
	require.True(t, math.IsNaN(Factor{Quantity: "length", From: "m", To: "ft", Written: "x"}.Value()))
	require.True(t, math.IsNaN(Factor{Quantity: "length", From: "m", To: "ell", Written: "1"}.Off()))
}

// By hand: a pound per gallon is 4/77 psi/ft, and 0.052·77/4 = 1.001.
func TestTheTradesGradient(t *testing.T) {
	f := Factors("density")[0]
	require.InEpsilon(t, 4.0/77, f.Exact(), 1e-15)
	require.InDelta(t, 0.001, f.Off(), 1e-12)
	require.InEpsilon(t, 0.4784, f.Convert(9.2), 1e-12)
}

func ExampleFactor_Off() {
	f := Factors("density")[0]
	fmt.Printf("%s to %s: %s in place of %.6f, %+.3f %%\n", f.From, f.To, f.Written, f.Exact(), 100*f.Off())
	// Output:
	// lb/gal to psi/ft: 0.052 in place of 0.051948, +0.100 %
}

// 9.2 lb/gal by the field's factor, and exactly.
func ExampleFactor_Convert() {
	f := Factors("density")[0]
	fmt.Printf("%.4f with %g; %.5f exactly\n", f.Convert(9.2), f.Value(), 9.2*f.Exact())
	// Output:
	// 0.4784 with 0.052; 0.47792 exactly
}
