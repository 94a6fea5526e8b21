package inflow_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// The inverse checks what it is of before it answers, and what it answers.
func TestInverseFaults(t *testing.T) {
	require.Equal(t, 3e7*unit.Pascal, inflow.GasDeliverability{Reservoir: 3e7}.Static())
	_, err := inflow.GasDeliverability{}.Pressure(1)
	for _, want := range []string{"inflow: Reservoir: is ", "OpenFlow: is ", "Exponent: is 0"} {
		require.ErrorContains(t, err, want)
	}
	g := inflow.GasDeliverability{Reservoir: 3e7, OpenFlow: 1e-300, Exponent: 0.5}
	_, err = g.Pressure(-1e300)
	require.ErrorContains(t, err, "inflow: rate: is ")
	_, err = inflow.LiquidDeliverability{}.Pressure(1)
	require.ErrorContains(t, err, "inflow: ")
	l := inflow.LiquidDeliverability{Reservoir: 3e7, Index: 1e-300}
	require.NoError(t, l.Validate())
	_, err = l.Pressure(-1e20)
	require.ErrorContains(t, err, "no pressure in range takes it")

	f := inflow.Formation{Permeability: 1e300, Thickness: 1e300, Viscosity: 1e-300, VolumeFactor: 1, Hole: 0.1, Boundary: 300}
	_, err = f.Index()
	require.ErrorContains(t, err, "inflow: ")
}
