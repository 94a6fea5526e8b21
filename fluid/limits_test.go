package fluid

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// span is a permitted range and a call that asks inside it.
type span struct {
	name            string
	least, greatest float64
	ask             func(x float64) error
}

// Each range holds on its ends and ends just beyond them.
func TestRangesOnAndBeyond(t *testing.T) {
	const atm = float64(unit.Atmosphere)
	psi := float64(unit.PSI)
	fahrenheit := func(f float64) float64 { return unit.Fahrenheit(f).Kelvin() }
	density := func(f interface {
		Density(unit.Pressure, unit.Temperature) (unit.Density, error)
	}, p, k float64) error {
		_, err := f.Density(unit.Pressure(p), unit.Kelvin(k))
		return err
	}
	brine := Brine{At70F: 1200, Expansion: 3e-4, Compression: 3e-10}
	salty := Solution{Salt: SodiumChloride, Fraction: 0.1, Compression: 3e-10}
	oil := Oil{Crude, 850}
	points := ControlFluid{Points: []ControlPoint{{unit.Kelvin(300), 1050, 0.003}, {unit.Kelvin(400), 990, 0.001}}, Compression: 3e-10}
	measured := Measured{Pressures: []unit.Pressure{0, 1e7}, Temperatures: []unit.Temperature{unit.Kelvin(300), unit.Kelvin(350)}, Densities: [][]unit.Density{{1000, 980}, {1010, 990}}}
	osif := func(p, c, k float64) error {
		_, err := Osif(unit.Pressure(p), unit.Density(c), unit.Kelvin(k))
		return err
	}
	viscosity := func(p, k float64) error {
		_, err := gasViscosity("gas", 0.0195, 145, unit.Pressure(p), unit.Kelvin(k))
		return err
	}
	z := func(ppr, tpr float64) error { _, err := ZFactor(ppr, tpr); return err }
	sour := func(c, h float64) error {
		_, err := PseudoCritical{4.6e6, unit.Kelvin(200)}.WichertAziz(c, h)
		return err
	}
	freezing := func(s, p float64) error { _, err := Seawater{s}.FreezingPoint(unit.Pressure(p)); return err }
	crystal := func(s Salt, w, p float64) error { _, err := Crystallisation(s, w, unit.Pressure(p)); return err }
	dead := func(rho, k float64) error {
		_, err := Oil{Crude, unit.Density(rho)}.Viscosity(0, unit.Kelvin(k))
		return err
	}
	gravity := func(api float64) float64 { return waterAt60F * 141.5 / (api + 131.5) }
	for _, s := range []span{
		{"water temperature", 273.15, 623.15, func(k float64) error { return density(Water{}, 5e7, k) }},
		{"water pressure, cold", 611.2126 - atm, 100e6 - atm, func(p float64) error { return density(Water{}, p, 273.15) }},
		{"boiling temperature", 273.15, 623.15, func(k float64) error { _, err := Water{}.BoilingPressure(unit.Kelvin(k)); return err }},
		{"seawater temperature", 267.15, 313.15, func(k float64) error { return density(Seawater{0.035}, 1e6, k) }},
		{"seawater pressure", 0, 100e6, func(p float64) error { return density(Seawater{0.035}, p, 300) }},
		{"seawater salinity", 0, 0.042, func(s float64) error { return density(Seawater{s}, 1e6, 300) }},
		{"freezing salinity", 4 * 35.16504 / 35 / 1000, 40 * 35.16504 / 35 / 1000, func(s float64) error { return freezing(s, 0) }},
		{"freezing pressure", 0, 5e6, func(p float64) error { return freezing(0.035, p) }},
		{"nitrogen temperature", 150, 600, func(k float64) error { return density(Nitrogen{}, 1e7, k) }},
		{"nitrogen pressure", 1 - atm, 200e6 - atm, func(p float64) error { return density(Nitrogen{}, p, 300) }},
		{"methane temperature", 200, 600, func(k float64) error { return density(Methane{}, 1e7, k) }},
		{"methane pressure", 1 - atm, 200e6 - atm, func(p float64) error { return density(Methane{}, p, 300) }},
		{"brine temperature", fahrenheit(32), fahrenheit(345), func(k float64) error { return density(brine, 1e7, k) }},
		{"brine pressure", -atm, 22000 * psi, func(p float64) error { return density(brine, p, 300) }},
		{"brine expansion", 0, 1e-3 * 1.8, func(a float64) error { return density(Brine{1200, unit.Expansivity(a), 3e-10}, 0, 300) }},
		{"brine compression", 0, 1e-5 / psi, func(c float64) error { return density(Brine{1200, 3e-4, unit.Compressibility(c)}, 0, 300) }},
		{"solution temperature", 273.15, 413.15, func(k float64) error { return density(salty, 1e7, k) }},
		{"solution pressure", -atm, 22000 * psi, func(p float64) error { return density(salty, p, 300) }},
		{"solution fraction", 0, 0.26, func(w float64) error { return density(Solution{SodiumChloride, w, 3e-10}, 0, 300) }},
		{"solution compression", 0, 1e-5 / psi, func(c float64) error { return density(Solution{SodiumChloride, 0.1, unit.Compressibility(c)}, 0, 300) }},
		{"oil temperature", fahrenheit(-58), fahrenheit(302), func(k float64) error { return density(oil, 0, k) }},
		{"oil pressure", 0, 1500 * psi, func(p float64) error { return density(oil, p, 300) }},
		{"crude density", 610.6, 1163.5, func(r float64) error { return density(Oil{Crude, unit.Density(r)}, 0, 300) }},
		{"lubricating oil density", 800.9, 1163.5, func(r float64) error { return density(Oil{LubricatingOil, unit.Density(r)}, 0, 300) }},
		{"dead oil temperature", fahrenheit(70), fahrenheit(295), func(k float64) error { return dead(870, k) }},
		{"dead oil gravity", gravity(58), gravity(16), func(r float64) error { return dead(r, 330) }},
		{"osif pressure", 1000*psi - atm, 20000*psi - atm, func(p float64) error { return osif(p, 10, 350) }},
		{"osif concentration", 0, 200, func(c float64) error { return osif(5e7, c, 350) }},
		{"osif temperature", fahrenheit(65), fahrenheit(270), func(k float64) error { return osif(5e7, 10, k) }},
		{"gas viscosity pressure", -atm, 8000*psi - atm, func(p float64) error { return viscosity(p, 350) }},
		{"gas viscosity temperature", fahrenheit(100), fahrenheit(340), func(k float64) error { return viscosity(1e7, k) }},
		{"Z pressure", 0, 30, func(p float64) error { return z(p, 1.5) }},
		{"Z temperature", 1.05, 3, func(r float64) error { return z(2, r) }},
		{"sour carbon dioxide", 0, 0.544, func(c float64) error { return sour(c, 0.1) }},
		{"sour hydrogen sulphide", 0, 0.738, func(h float64) error { return sour(0.1, h) }},
		{"sour both", 0.3, 1 - 0.5, func(h float64) error { return sour(0.5, h) }},
		{"gas nitrogen", 0, 0.25, func(n float64) error { _, err := Gas{Gravity: 0.9, Nitrogen: n}.PseudoCritical(); return err }},
		{"gas gravity", 0.57, 1.68, func(g float64) error { _, err := Gas{Gravity: g}.PseudoCritical(); return err }},
		{"gas contaminants", 0.2, 0.3, func(h float64) error {
			_, err := Gas{Gravity: 1.35, CarbonDioxide: 0.5, HydrogenSulphide: h}.PseudoCritical()
			return err
		}},
		{"mixture's sum", 1 - 1e-4, 1 + 1e-4, func(s float64) error {
			_, err := GasMixture{Methane: 0.5, Ethane: s - 0.5}.PseudoCritical()
			return err
		}},
		{"crystallisation fraction NaCl", 0, 0.2846, func(w float64) error { return crystal(SodiumChloride, w, 0) }},
		{"crystallisation pressure", 0, 150e6, func(p float64) error { return crystal(SodiumChloride, 0.1, p) }},
		{"control fluid temperature", 300, 400, func(k float64) error { return density(points, 0, k) }},
		{"control fluid pressure", -atm, 30000 * psi, func(p float64) error { return density(points, p, 350) }},
		{"control fluid compression", 0, 1e-5 / psi, func(c float64) error {
			return ControlFluid{points.Points, unit.Compressibility(c)}.Validate()
		}},
		{"point temperature", 1, 1000, func(k float64) error { return ControlPoint{unit.Kelvin(k), 1000, 0}.Validate() }},
		{"point density", 1, 1e4, func(r float64) error {
			return ControlPoint{unit.Kelvin(300), unit.Density(r), 0}.Validate()
		}},
		{"point viscosity", 0, 1e3, func(v float64) error {
			return ControlPoint{unit.Kelvin(300), 1000, unit.Viscosity(v)}.Validate()
		}},
		{"measured pressure", 0, 1e7, func(p float64) error { return density(measured, p, 320) }},
		{"measured temperature", 300, 350, func(k float64) error { return density(measured, 5e6, k) }},
		{"measured density", 1, 1e4, func(r float64) error {
			m := measured
			m.Densities = [][]unit.Density{{unit.Density(r), 980}, {1010, 990}}
			return m.Validate()
		}},
		{"measured pressures", 5e6, 30000 * psi, func(p float64) error {
			if p < 5e6 {
				return errors.New("not asked")
			}
			m := measured
			m.Pressures = []unit.Pressure{0, unit.Pressure(p)}
			return m.Validate()
		}},
	} {
		const near = 2e-7
		beyond := near * max(math.Abs(s.greatest), s.greatest-s.least)
		inside := 1e-12 * (s.greatest - s.least)
		require.NoError(t, s.ask(s.least+inside), "%s at its least", s.name)
		require.NoError(t, s.ask(s.greatest-inside), "%s at its greatest", s.name)
		require.Error(t, s.ask(s.greatest+beyond), "%s beyond its greatest", s.name)
		if s.name != "sour both" && s.name != "gas contaminants" {
			below := near * max(math.Abs(s.least), min(1, s.greatest-s.least)*1e-3)
			require.Error(t, s.ask(s.least-below), "%s below its least", s.name)
		}
		require.Error(t, s.ask(math.NaN()), s.name)
	}
	for _, bad := range []Commodity{-1, 3} {
		require.False(t, bad.known())
	}
	for _, bad := range []Salt{0, 10} {
		require.False(t, bad.known())
	}
}

// Interpolation in a control fluid and a measured table, by hand.
func TestInterpolationByHand(t *testing.T) {
	c := ControlFluid{Points: []ControlPoint{{unit.Kelvin(300), 1050, 0.004}, {unit.Kelvin(400), 1000, 0.001}, {unit.Kelvin(450), 900, 0.0005}}, Compression: 4e-10}
	rho, err := c.Density(1e7, unit.Kelvin(350))
	require.NoError(t, err)
	require.InEpsilon(t, 1025/(1-4e-3), float64(rho), 1e-14)
	rho, err = c.Density(0, unit.Kelvin(400))
	require.NoError(t, err)
	require.Equal(t, unit.Density(1000), rho)
	a, err := c.Expansivity(0, unit.Kelvin(425)) // 100 kg/m³ in 50 K of 950
	require.NoError(t, err)
	require.InEpsilon(t, 2.0/950, float64(a), 1e-14)
	k, err := c.Compressibility(1e7, unit.Kelvin(350))
	require.NoError(t, err)
	require.InEpsilon(t, 4e-10/(1-4e-3), float64(k), 1e-14)
	mu, err := c.Viscosity(0, unit.Kelvin(350)) // halfway by ratio
	require.NoError(t, err)
	require.InEpsilon(t, 0.002, float64(mu), 1e-14)

	m := Measured{Pressures: []unit.Pressure{0, 1e7, 3e7}, Temperatures: []unit.Temperature{unit.Kelvin(300), unit.Kelvin(350), unit.Kelvin(450)},
		Densities: [][]unit.Density{{1000, 800, 500}, {1250, 1000, 625}, {2000, 1600, 1000}}} // volumes in litres a kilogram: 1, 1.25, 2; 0.8, 1, 1.6; 0.5, 0.625, 1
	for _, at := range []struct{ p, k, volume float64 }{
		{0, 300, 1}, {1e7, 350, 1}, {3e7, 450, 1}, {5e6, 325, (1 + 1.25 + 0.8 + 1) / 4}, {2.5e7, 425, 0.25*(0.25*1+0.75*1.6) + 0.75*(0.25*0.625+0.75*1)},
		{2.5e6, 310, 0.75*(0.8*1+0.2*1.25) + 0.25*(0.8*0.8+0.2*1)},
	} {
		rho, err := m.Density(unit.Pressure(at.p), unit.Kelvin(at.k))
		require.NoError(t, err)
		require.InEpsilon(t, 1000/at.volume, float64(rho), 1e-12, "%+v", at)
	}
	k, err = m.Compressibility(2.5e7, unit.Kelvin(425))
	require.NoError(t, err)
	v := 0.25*(0.25*1+0.75*1.6) + 0.75*(0.25*0.625+0.75*1)
	require.InEpsilon(t, (0.25*(1-0.625)+0.75*(1.6-1))/2e7/v, float64(k), 1e-12)
	a, err = m.Expansivity(2.5e7, unit.Kelvin(425))
	require.NoError(t, err)
	require.InEpsilon(t, (0.25*(1.6-1)+0.75*(1-0.625))/100/v, float64(a), 1e-12)
}
