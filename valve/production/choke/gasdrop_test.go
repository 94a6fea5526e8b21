package choke_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"github.com/stretchr/testify/require"
)

// methane is about that at 1,300 psi and 200 °F; an invented choke.
var (
	methane = choke.UpstreamGas{Density: 60 * unit.KilogramPerCubicMetre, HeatRatio: 1.3}
	small   = choke.Trim{Coefficient: 5 * unit.Cv, GasRatio: 0.7, Recovery: 0.9, Style: 0.46, Bore: 2 * unit.Inch}
)

// Forward and inverse hold each other, turbulent, viscous and with fittings.
func TestGasDropIsTheInverseOfGas(t *testing.T) {
	fitted := small
	fitted.Upstream, fitted.Downstream = 3*unit.Inch, 4*unit.Inch
	thick := methane
	thick.Viscosity = 20000 * unit.Centipoise
	upstream := 1300 * unit.PSI
	for _, trim := range []choke.Trim{small, fitted} {
		for _, gas := range []choke.UpstreamGas{methane, thick} {
			for _, share := range []float64{1e-6, 0.01, 0.2, 0.5, 0.6, 0.649} {
				forward, err := trim.Gas(gas, upstream, upstream-unit.Pressure(share)*(upstream+unit.Atmosphere))
				require.NoError(t, err)
				if forward.Critical {
					continue
				}
				back, err := trim.GasDrop(gas, upstream, forward.Mass)
				require.NoError(t, err)
				require.InEpsilon(t, share, back.Ratio, 1e-8, "%+v", gas) // flat near critical
				require.InEpsilon(t, float64(forward.Mass), float64(back.Mass), 1e-12)
			}
		}
	}
}

// Without fittings and viscosity the ratio is a root of the cubic
// x·(1 - x/(3F))² = (W/C)²/(p1·ρ1), F = γ/1.4·xT, which with u = x/(3F) is
// u³ - 2u² + u = k: its least root by Cardano's trigonometric form.
func TestGasDropByTheCubic(t *testing.T) {
	upstream := 1300 * unit.PSI
	rate := 0.4 * unit.KilogramPerSecond
	f, err := small.GasDrop(methane, upstream, rate)
	require.NoError(t, err)
	F := 1.3 / 1.4 * 0.7
	wc := float64(rate) / float64(small.Coefficient)
	k := wc * wc / (float64(upstream+unit.Atmosphere) * 60) / (3 * F)
	// u = v + 2/3: v³ - v/3 + 2/27 - k = 0
	angle := math.Acos(-(2.0/27 - k) / 2 * 27)
	u := 2.0/3 + 2.0/3*math.Cos((angle+2*math.Pi)/3)
	require.InEpsilon(t, 3*F*u, f.Ratio, 1e-10)
}

func TestGasDropFaults(t *testing.T) {
	upstream := 1300 * unit.PSI
	critical, err := small.Gas(methane, upstream, 0)
	require.NoError(t, err)
	require.True(t, critical.Critical)
	_, err = small.GasDrop(methane, upstream, critical.Mass*1.0001)
	require.ErrorIs(t, err, choke.ErrChoked)
	at, err := small.GasDrop(methane, upstream, critical.Mass*(1-1e-9))
	require.NoError(t, err)
	require.Less(t, at.Ratio, at.ChokedRatio)
	still, err := small.GasDrop(methane, upstream, 0)
	require.NoError(t, err)
	require.Zero(t, still.Drop)
	for _, w := range []unit.MassRate{-1, unit.MassRate(math.NaN()), unit.MassRate(math.Inf(1))} {
		_, err = small.GasDrop(methane, upstream, w)
		require.Error(t, err)
	}
	_, err = small.GasDrop(choke.UpstreamGas{}, -5*unit.Atmosphere, 1)
	require.ErrorContains(t, err, "Gas.Density")
	require.ErrorContains(t, err, "upstream")
}

func ExampleTrim_GasDrop() {
	trim := choke.Trim{Coefficient: 5 * unit.Cv, GasRatio: 0.7}
	gas := choke.UpstreamGas{Density: 60 * unit.KilogramPerCubicMetre, HeatRatio: 1.3}
	f, err := trim.GasDrop(gas, 1300*unit.PSI, 1.5*unit.KilogramPerSecond)
	fmt.Println(f.Drop.Rounded(4), f.Critical, err)
	_, err = trim.GasDrop(gas, 1300*unit.PSI, 5*unit.KilogramPerSecond)
	fmt.Println(err)
	// Output:
	// 774 psi false <nil>
	// choke: choked below the wanted rate: 11.023 lb/s is wanted; from 1300 psi upstream this choke of 5 Cv passes 3.3184 lb/s at most, from a drop of 854.55 psi on
}

// Any numbers: an answer that is one and gives the rate back, or an error.
func FuzzGasDrop(f *testing.F) {
	f.Add(60.0, 1.3, 0.0, 1300.0, 1.0, 5.0, 0.7, 0.05, 0.08)
	f.Add(1e-3, 2.0, 1e3, 1e-3, 1e-9, 1e-6, 1.0, 1e-3, 0.0)
	f.Fuzz(func(t *testing.T, rho, k, mu, p, w, c, xt, bore, pipe float64) {
		trim := choke.Trim{Coefficient: unit.FlowCoefficient(c) * unit.Cv, GasRatio: xt, Recovery: 0.9, Style: 0.46, Bore: unit.Length(bore), Upstream: unit.Length(pipe)}
		r, err := trim.GasDrop(choke.UpstreamGas{Density: unit.Density(rho), HeatRatio: k, Viscosity: unit.Viscosity(mu)}, unit.Pressure(p)*unit.PSI, unit.MassRate(w))
		if err != nil {
			return
		}
		for _, x := range []float64{float64(r.Mass), float64(r.Drop), r.Ratio, r.Expansion} {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				t.Fatalf("%+v", r)
			}
		}
		if math.Abs(float64(r.Mass)-w) > 1e-6*w+1e-300 {
			t.Fatalf("%g was wanted, %g flows: %+v", w, float64(r.Mass), r)
		}
	})
}
