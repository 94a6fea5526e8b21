package inflow

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// Rawlins and Schellhardt (1936) with its slope, and Darcy's radial flow, worked with 256 bits.
func TestGasInflowWorked(t *testing.T) {
	g := GasDeliverability{Reservoir: 2.4e7, OpenFlow: 9, Exponent: 0.82}
	of := precise.Values{"pr": 2.4e7 + 101325, "p": 1.5e7 + 101325, "q0": 9, "n": 0.82}
	const scale = "s = pr*pr - 101325*101325\nx = (pr*pr - p*p)/s\n"
	q, slope := g.At(1.5e7)
	precise.Equal(t, q, scale+"q0*pow(x, n)", of)
	precise.Equal(t, slope, scale+"-n*q0*pow(x, n - 1)*2*p/s", of)
	_, slope = g.At(2.4e7)
	require.True(t, math.IsInf(slope, -1))
	g.Exponent = 1
	_, slope = g.At(2.4e7)
	precise.Equal(t, slope, "-q0*2*pr/(pr*pr - 101325*101325)", of)
	q, _ = g.At(0)
	require.InEpsilon(t, 9, q, 1e-15)

	for n, ok := range map[float64]bool{0.5: true, 0.4999999: false, 1: true, 1.0000001: false} {
		g.Exponent = n
		require.Equal(t, ok, g.Validate() == nil, "%v", n)
	}
	g.Exponent = 0.8
	for _, rate := range []float64{math.Inf(-1), math.Inf(1), math.NaN(), 9.0000001} {
		_, err := g.Pressure(unit.FlowRate(rate))
		require.ErrorIs(t, err, ErrBeyondOpenFlow)
	}
}

func TestIndexWorked(t *testing.T) {
	f := Formation{Permeability: 1e-13, Thickness: 12, Viscosity: 8e-4, VolumeFactor: 1.3, Hole: 0.108, Boundary: 350, Skin: 2}
	for regime, offset := range []float64{0, 0.5, 0.75} {
		f.Regime = Regime(regime)
		j, err := f.Index()
		require.NoError(t, err)
		precise.Equal(t, float64(j), "2*pi*1e-13*12/(8e-4*1.3*(log(350/0.108) - c + 2))", precise.Values{"c": offset})
	}
	for _, bad := range []Regime{-1, 3} {
		f.Regime = bad
		_, err := f.Index()
		require.ErrorContains(t, err, "must be from 0 to 2")
	}
	precise.Equal(t, DamageSkin(1e-13, 2e-14, 0.108, 0.9), "(1e-13/2e-14 - 1)*log(0.9/0.108)", nil)
}

func TestGasTestFaults(t *testing.T) {
	_, err := GasFromTests(2e7, Test{1e7, 1}, Test{2e7, -1})
	require.ErrorContains(t, err, "tests[1].Flowing: is 20 MPa")
	require.ErrorContains(t, err, "tests[1].Rate: is -1 m3/s")
	_, err = GasFromTests(2e7, Test{1e7, 1}, Test{1e7, 2})
	require.ErrorContains(t, err, "tests: all have the same flowing pressure; must differ")
	_, err = GasFromTests(2e7, Test{1e7, 1})
	require.ErrorContains(t, err, "has 1 rates; must have two or more")
	fit, err := GasFromTests(2e7, Test{1.8e7, 1}, Test{1e7, unit.FlowRate(math.Pow((2.0101325e7*2.0101325e7-1.0101325e7*1.0101325e7)/(2.0101325e7*2.0101325e7-1.8101325e7*1.8101325e7), 0.7))})
	require.NoError(t, err, "two rates are enough")
	require.InEpsilon(t, 0.7, fit.Exponent, 1e-9)
	for _, reservoir := range []unit.Pressure{0, unit.Pressure(math.Inf(1)), -1} {
		_, err = GasFromTests(reservoir, Test{1e7, 1}, Test{0.5e7, 2})
		require.ErrorContains(t, err, "reservoir: is")
	}
}
