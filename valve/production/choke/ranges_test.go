package choke

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// What may flow: on each limit an answer, just beyond it a fault that names the field.
func TestRangesOfFluids(t *testing.T) {
	const more = 1 + 1e-7
	for field, c := range map[string]struct {
		g  UpstreamGas
		ok bool
	}{
		"densest": {UpstreamGas{Density: 1e5, HeatRatio: 1.3}, true}, "Density: is": {UpstreamGas{Density: 1e5 * more, HeatRatio: 1.3}, false},
		"thickest": {UpstreamGas{Density: 1, HeatRatio: 1.3, Viscosity: 1e6}, true}, "Viscosity: is": {UpstreamGas{Density: 1, HeatRatio: 1.3, Viscosity: 1e6 * more}, false},
		"thinnest": {UpstreamGas{Density: 1, HeatRatio: 1.3, Viscosity: 1e-9}, true}, "Viscosity: is ": {UpstreamGas{Density: 1, HeatRatio: 1.3, Viscosity: 1e-9 / more}, false},
		"softest": {UpstreamGas{Density: 1, HeatRatio: 1 + 1e-7}, true}, "HeatRatio: is": {UpstreamGas{Density: 1, HeatRatio: 1}, false},
	} {
		err := c.g.Validate()
		if c.ok {
			require.NoError(t, err, field)
		} else {
			require.ErrorContains(t, err, field)
		}
	}
	_, err := Orifice{Pipe: 0.1, Bore: 0.06}.Rate(Metered{Density: 1, Viscosity: 1e-5, Exponent: 1 + 1e-7, Upstream: 2e5, Downstream: 1.9e5})
	require.NoError(t, err)
	for recovery, ok := range map[float64]bool{0.01: false, 0.01 * more: true} {
		_, err := Trim{Coefficient: 1e-4, Recovery: recovery}.Liquid(UpstreamLiquid{Density: 900}, 2e5, 1e5)
		require.Equal(t, ok, err == nil, "%v: %v", recovery, err)
	}
	for p, ok := range map[unit.Pressure]bool{1e10: true, 1e10 * more: false} {
		_, err := Trim{Coefficient: 1e-4, GasRatio: 0.7}.Gas(UpstreamGas{Density: 1, HeatRatio: 1.3}, p, 1e5)
		require.Equal(t, ok, err == nil, "%v: %v", p, err)
	}
	// xT of 1 and γ of 1.66 choke beyond vacuum: the most that flows flows into vacuum
	trim, g := Trim{Coefficient: 1e-4, GasRatio: 1}, UpstreamGas{Density: 8, HeatRatio: 1.66}
	vacuum, err := trim.Gas(g, 1e6, -unit.Atmosphere)
	require.NoError(t, err)
	require.False(t, vacuum.Critical)
	_, err = trim.GasDrop(g, 1e6, vacuum.Mass*(1-1e-9))
	require.NoError(t, err)
	_, err = trim.GasDrop(g, 1e6, vacuum.Mass*(1+2e-8))
	require.ErrorIs(t, err, ErrChoked)
	for _, curve := range []*Curve{nil, {}} {
		_, err := curve.At(0)
		require.Error(t, err)
	}
}
