package choke_test

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"github.com/stretchr/testify/require"
)

var nitrogen = choke.UpstreamGas{Density: 60, HeatRatio: 1.4}

// Every relation of the standard names what is out of range before it solves.
func TestSizingFaults(t *testing.T) {
	for _, rate := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := globe.SizeLiquid(hotWater, inlet, outlet, unit.FlowRate(rate))
		require.ErrorContains(t, err, "choke: rate: is ", "%g", rate)
		_, err = globe.SizeGas(nitrogen, inlet, outlet, unit.MassRate(rate))
		require.ErrorContains(t, err, "choke: rate: is ", "%g", rate)
	}
	_, err := globe.SizeLiquid(choke.UpstreamLiquid{}, inlet, outlet, wanted)
	require.ErrorContains(t, err, "Density: is")
	_, err = globe.SizeGas(choke.UpstreamGas{}, inlet, outlet, 1)
	require.ErrorContains(t, err, "Density: is")
	_, err = globe.LiquidDrop(hotWater, inlet, -1)
	require.ErrorContains(t, err, "choke: rate: is ")
	gas := choke.Trim{Coefficient: 5 * unit.Cv, GasRatio: 0.7}
	_, err = gas.GasDrop(nitrogen, inlet, -1)
	require.ErrorContains(t, err, "choke: rate: is ")
	none, err := gas.GasDrop(nitrogen, inlet, 0)
	require.NoError(t, err)
	require.Zero(t, none.Drop)
	l := hotWater
	l.VapourPressure = 700 * kPa
	_, err = globe.Liquid(l, inlet, outlet)
	require.ErrorContains(t, err, "choke: upstream: is 680 kPa absolute; must be above the vapour pressure of 7 bar: the liquid boils before the choke")
	_, err = choke.Table{{Name: "one", Coefficient: 1}}.Curve()
	require.ErrorContains(t, err, "choke: table has one position; must have two or more for a curve")
	_, err = choke.Table{}.Curve()
	require.ErrorContains(t, err, "choke: ")
	full := choke.Trim{Bore: 50 * mm, Coefficient: 1e4 * unit.Kv, Upstream: 50 * mm, Downstream: 500 * mm, Recovery: 0.9}
	_, err = full.Liquid(choke.UpstreamLiquid{Density: 1000, CriticalPressure: 22120 * kPa}, inlet, outlet)
	require.ErrorContains(t, err, "which has no piping factor; must be smaller")
}

// What can't be read as a table is said, and a gas whose drop can't be asked for.
func TestTablesAndDropsThatCannotBe(t *testing.T) {
	_, err := choke.ReadTable(strings.NewReader("position,travel,coefficient\n1,\"2\n"))
	require.ErrorContains(t, err, "choke: table: ")
	trim := choke.Trim{Coefficient: 5 * unit.Cv, GasRatio: 0.7}
	_, err = trim.GasDrop(choke.UpstreamGas{}, inlet, 1)
	require.ErrorContains(t, err, "Density: is")
	_, err = trim.GasDrop(nitrogen, inlet, 1e6)
	require.ErrorIs(t, err, choke.ErrChoked)
	_, err = globe.SizeLiquid(hotWater, outlet, inlet, wanted)
	require.ErrorIs(t, err, choke.ErrNoFlow)
	_, err = choke.Trim{GasRatio: 0.7}.SizeGas(nitrogen, outlet, inlet, 1)
	require.ErrorIs(t, err, choke.ErrNoFlow)
	_, err = globe.LiquidDrop(hotWater, inlet, 1e6)
	require.ErrorIs(t, err, choke.ErrChoked)
}

// Far below the standard's range the orifice's equation has no answer.
func TestOrificeFarBelowItsRange(t *testing.T) {
	m := felt
	m.Viscosity, m.Exponent = 1e6, 0
	_, err := meter.Rate(m)
	// by hand: 0.6/sqrt(1 - 0.6788^4)·π/4·0.05²·sqrt(2·17,000·999.1) = 7.74 kg/s, Re = 4·7.74/(π·0.07366·1e6)
	require.ErrorContains(t, err, "choke: orifice at a Reynolds number near 0.000134,")
}
