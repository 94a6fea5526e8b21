package choke

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Permitted ranges hold on the limit and end just beyond it.
func TestLimitsOfTheInputs(t *testing.T) {
	trim := Trim{Coefficient: 1e-4, Recovery: 1, GasRatio: 1, Style: 1, Bore: 0.05}
	gas := UpstreamGas{Density: 40, HeatRatio: 2, Viscosity: 1e-5}
	liquid := UpstreamLiquid{Density: 900, Viscosity: 1e-3}
	up, down := 9e5*unit.Pascal, 7e5*unit.Pascal
	above := func(x float64) float64 { return math.Nextafter(x, 9) }

	_, err := trim.Gas(gas, up, down)
	require.NoError(t, err, "every factor at its greatest")
	_, err = trim.Liquid(liquid, up, down)
	require.NoError(t, err, "every factor at its greatest")
	for name, change := range map[string]func(*Trim, *UpstreamGas){
		"Gas.HeatRatio: is":    func(_ *Trim, g *UpstreamGas) { g.HeatRatio = above(2) },
		"Gas.HeatRatio: is 1;": func(_ *Trim, g *UpstreamGas) { g.HeatRatio = 1 },
		"GasRatio: is":         func(c *Trim, _ *UpstreamGas) { c.GasRatio = above(1) },
		"Style: is":            func(c *Trim, _ *UpstreamGas) { c.Style = above(1) },
		"Recovery: is":         func(c *Trim, _ *UpstreamGas) { c.Recovery = above(1) },
		"Bore: is":             func(c *Trim, _ *UpstreamGas) { c.Bore = 0 },
		"Gas.Density: is +Inf": func(_ *Trim, g *UpstreamGas) { g.Density = unit.Density(math.Inf(1)) },
		"Gas.Density: is":      func(_ *Trim, g *UpstreamGas) { g.Density = unit.Density(math.NaN()) },
		"Coefficient: is":      func(c *Trim, _ *UpstreamGas) { c.Coefficient = unit.FlowCoefficient(math.Inf(1)) },
		"Coefficient: is NaN":  func(c *Trim, _ *UpstreamGas) { c.Coefficient = unit.FlowCoefficient(math.NaN()) },
		"Upstream: is":         func(c *Trim, _ *UpstreamGas) { c.Upstream = c.Bore * (1 - 1e-9) },
		"Downstream: is":       func(c *Trim, _ *UpstreamGas) { c.Downstream = unit.Length(math.Inf(1)) },
	} {
		c, g := trim, gas
		change(&c, &g)
		_, err := c.Gas(g, up, down)
		require.ErrorContains(t, err, name)
	}
	same := trim
	same.Upstream = same.Bore
	_, err = same.Gas(gas, up, down)
	require.NoError(t, err, "a pipe as wide as the bore")

	for _, recovery := range []float64{0, above(1)} {
		c := trim
		c.Recovery = recovery
		_, err = c.Liquid(UpstreamLiquid{Density: 900}, up, down)
		require.ErrorContains(t, err, "must be above 0.01 and at most 1")
	}
	boiling := UpstreamLiquid{Density: 900, VapourPressure: up + unit.Atmosphere, CriticalPressure: 2e7}
	_, err = trim.Liquid(boiling, up, down)
	require.ErrorContains(t, err, "boils before the choke", "on the limit")
	for _, pc := range []unit.Pressure{7e4, unit.Pressure(math.Inf(1))} {
		_, err = trim.Liquid(UpstreamLiquid{Density: 900, VapourPressure: 7e4, CriticalPressure: pc}, up, down)
		require.ErrorContains(t, err, "must be above the vapour pressure of 70 kPa")
	}

	_, err = Nozzle(gas, 1.1, 1e-4, up, down)
	require.NoError(t, err)
	_, err = Nozzle(gas, above(1.1), 1e-4, up, down)
	require.ErrorContains(t, err, "cd: is")
	_, err = Nozzle(gas, 1, 1e-4, -unit.Atmosphere, -unit.Atmosphere)
	require.ErrorIs(t, err, ErrNoFlow)
	_, err = trim.Gas(gas, -unit.Atmosphere, -unit.Atmosphere)
	require.ErrorIs(t, err, ErrNoFlow)
	_, err = trim.Gas(gas, up, -2*unit.Atmosphere)
	require.EqualError(t, err, "choke: downstream: is -2 atm; must be at least -14.6959 psi")
	_, err = trim.Gas(gas, 1234.5678*unit.PSI, 1234.6123*unit.PSI)
	require.EqualError(t, err, "choke: no flow in this direction: upstream 1234.6 psi is below downstream 1234.6 psi")
}

func TestOrificeLimits(t *testing.T) {
	m := Metered{Density: 999, Viscosity: 1e-3, Upstream: 2e5, Downstream: 1.9e5}
	o := Orifice{Pipe: 0.1, Bore: 0.1}
	_, err := o.Rate(m)
	require.ErrorContains(t, err, "Bore: is 0.1")
	o.Bore = 0.06
	for _, k := range []float64{1, math.Nextafter(2, 3), -1} {
		m.Exponent = k
		_, err = o.Rate(m)
		require.ErrorContains(t, err, "must be above 1 and at most 2")
	}
	m.Exponent = 2
	_, err = o.Rate(m)
	require.NoError(t, err)
	m.Upstream, m.Downstream = -unit.Atmosphere, -unit.Atmosphere
	f, err := o.Rate(m)
	require.NoError(t, err)
	require.Equal(t, []string{"there is no flow"}, f.Outside)
	require.Equal(t, 1.0, f.Expansion)

	// Source: ISO 5167-2:2003, 5.3.1. Each limit on, and just beyond.
	said := func(pipe, bore unit.Length, reynolds, ratio float64) string {
		return strings.Join(Orifice{Pipe: pipe, Bore: bore}.outside(reynolds, ratio, true), "; ")
	}
	mm := unit.Millimetre
	require.Empty(t, said(50*mm, 12.5*mm, 5000, 0.75))
	require.Empty(t, said(unit.Metre, 100*mm, 5000, 1))
	require.Equal(t, "bore is 0.4921 in; the standard covers 12.5 mm and more", said(50*mm, 12.49999*mm, 5000, 0.75))
	require.Equal(t, "pipe is 1.969 in; the standard covers 50 mm to 1 m", said(49.9999*mm, 12.5*mm, 5000, 0.75))
	require.Equal(t, "pipe is 39.37 in; the standard covers 50 mm to 1 m", said(1000.0001*mm, 200*mm, 1e7, 0.75))
	require.Equal(t, "diameter ratio is 0.100; the standard covers 0.1 to 0.75", said(500*mm, 49.9999*mm, 5000, 0.75))
	require.Empty(t, said(500*mm, 375*mm, 1e9, 0.75))
	require.Equal(t, "diameter ratio is 0.750; the standard covers 0.1 to 0.75", said(500*mm, 375.0001*mm, 1e9, 0.75))
	require.Equal(t, "pressure ratio is 0.750; the standard covers 0.75 and more", said(50*mm, 12.5*mm, 5000, 0.7499999))
	require.Equal(t, "Reynolds number is 5000; the standard covers 5000 and more", said(50*mm, 12.5*mm, 4999.999, 0.75))
	require.Empty(t, said(400*mm, 200*mm, 170*0.25*400, 1)) // 170·β²·D/mm
	require.Equal(t, "Reynolds number is 1.7e+04; the standard covers 1.7e+04 and more", said(400*mm, 200*mm, 170*0.25*400-0.01, 1))
	require.Empty(t, Orifice{Pipe: 50 * mm, Bore: 12.5 * mm}.outside(5000, 0.1, false), "the ratio matters to gas alone")

	for _, bad := range []Taps{-1, 3} {
		_, err := bad.MarshalText()
		require.Error(t, err)
		require.Contains(t, bad.String(), "Taps(")
	}
}

// What a trim says of itself beyond the standard's range.
func TestTrimOutside(t *testing.T) {
	mm := unit.Millimetre
	wide := Trim{Coefficient: 0.047 * 2500 * unit.Kv * (1 + 1e-9), Bore: 50 * mm}
	require.Equal(t, []string{"C/d² is 0.047 Kv/mm²; the standard covers up to 0.047"}, wide.outside(1e5))
	wide.Coefficient *= 1 - 2e-9
	require.Empty(t, wide.outside(1e5))
	require.Empty(t, wide.outside(1), "without fittings at any Reynolds number")
	for _, pipes := range [][2]unit.Length{{80 * mm, 0}, {0, 80 * mm}, {80 * mm, 80 * mm}} {
		wide.Upstream, wide.Downstream = pipes[0], pipes[1]
		require.Empty(t, wide.outside(10000))
		require.Equal(t, []string{"valve Reynolds number is 9999; below 10000 the standard knows no fittings"}, wide.outside(9999))
	}
}

func TestTableLimits(t *testing.T) {
	table := Table{{Name: "shut"}, {Name: "open", Travel: 1, Coefficient: 5}}
	require.NoError(t, table.Validate())
	curve, err := table.Curve()
	require.NoError(t, err, "two positions are enough")
	for _, travel := range []float64{0, 1} {
		_, err := curve.At(travel)
		require.NoError(t, err)
	}
	require.Equal(t, 1, table.Least(5))
	require.Equal(t, 0, table.Least(0))
	table[1].Travel = math.Nextafter(1, 2)
	require.ErrorContains(t, table.Validate(), "[1].Travel: is 1.0000000000000002; must be from 0 to 1")
	table[1].Travel = 0
	require.ErrorContains(t, table.Validate(), "[1].Travel: is 0; must be above the 0 before it")
	table[1].Travel, table[1].Coefficient = 0.5, 0
	require.NoError(t, table.Validate(), "two shut positions")
	falling := Table{{Name: "a", Coefficient: 5 * unit.Cv}, {Name: "b", Travel: 0.5, Coefficient: 6 * unit.Cv}, {Name: "c", Travel: 1, Coefficient: 4 * unit.Cv}}
	require.EqualError(t, falling.Validate(), "choke: [2].Coefficient: is 4 Cv; must be at least the 6 Cv before it")

	_, err = ReadTable(strings.NewReader("position,travel,coefficient\nx,0,1 Cv\ny,q,2 Cv\n"))
	require.ErrorContains(t, err, "row 2.travel")
	_, err = ReadTable(strings.NewReader("position,travel,opening,discharge\nx,0,1 in2,1.1\n"))
	require.NoError(t, err)
	_, err = ReadTable(strings.NewReader("position,travel,opening,discharge\nx,0,1 in2,1.1000000000000003\n"))
	require.ErrorContains(t, err, "row 1.discharge: is")
}

// The small pipe's term of ISO 5167 begins at 71.12 mm: in one that is a hair wider there is none.
func TestOrificeInAPipeOfTwoPointEightInches(t *testing.T) {
	at := func(inches float64) float64 {
		return Orifice{Pipe: unit.Length(inches) * unit.Inch, Bore: unit.Length(inches) / 2 * unit.Inch, Taps: CornerTaps}.Discharge(1e6)
	}
	wide := at(3) // corner taps: nothing else depends on the size
	require.InDelta(t, wide, at(2.8*(1+4e-7)), 1e-10)
	require.InDelta(t, wide+0.011*0.25*2.8*4e-7, at(2.8*(1-4e-7)), 1e-11)
	require.InDelta(t, wide+0.011*0.25*0.8, at(2), 1e-15)
}
