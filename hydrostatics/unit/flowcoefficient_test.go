package unit_test

import (
	"encoding"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestFlowCoefficient(t *testing.T) {
	// IEC 60534-1: Cv = 1.156 Kv.
	require.InDelta(t, 1.156, unit.Kv.In(unit.Cv), 0.0005)
	// One gal/min of water at one psi is a Cv of one; one m³/h at one bar a Kv of one.
	const water = 999.1026
	av := func(q unit.FlowRate, dp unit.Pressure) float64 { return float64(q) * math.Sqrt(water/float64(dp)) }
	require.InEpsilon(t, av(unit.GallonPerMinute, unit.PSI), float64(unit.Cv), 1e-15)
	require.InEpsilon(t, av(unit.CubicMetrePerHour, unit.Bar), float64(unit.Kv), 1e-15)
}

func TestPermeability(t *testing.T) {
	// SPE Metric Standard (1984): 1 darcy = 9.869233e-13 m².
	require.InDelta(t, 9.869233e-13, float64(unit.Darcy), 0.5e-19)
	require.InEpsilon(t, 1000.0, unit.Darcy.In(unit.Millidarcy), 1e-15)
}

func TestRatesAsText(t *testing.T) {
	for text, q := range map[string]interface {
		encoding.TextMarshaler
		encoding.TextUnmarshaler
	}{
		"7.7 lb/s": new(unit.MassRate),
		"20 mD":    new(unit.Permeability),
		"30 Cv":    new(unit.FlowCoefficient),
	} {
		require.NoError(t, q.UnmarshalText([]byte(text)))
		back, err := q.MarshalText()
		require.NoError(t, err)
		require.Equal(t, text, string(back))
		require.Error(t, q.UnmarshalText([]byte("30")), "a bare number")
		require.Error(t, q.UnmarshalText([]byte("30 psi")))
	}
}
