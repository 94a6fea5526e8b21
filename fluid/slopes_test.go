package fluid

import (
	"math/big"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// slope is d ln f/dx by a difference of 2^-59 in 256 bits, good to 1e-30.
func slope(t *testing.T, formula, of string, values precise.Values) float64 {
	t.Helper()
	const h = 0x1p-60
	at := func(h float64) *big.Float {
		with := precise.Values{"h": h}
		for k, v := range values {
			with[k] = v
		}
		v, err := precise.Eval(of+" = "+of+"0 + h\n"+formula, with)
		require.NoError(t, err)
		return v
	}
	up, down := at(h), at(-h)
	difference := new(big.Float).SetPrec(256).Sub(up, down)
	sum := new(big.Float).SetPrec(256).Add(up, down)
	x, _ := new(big.Float).SetPrec(256).Quo(difference, sum).Float64()
	return x / h
}

// The expansivity of oil is the slope of API MPMS 11.1's own CTL and CPL, typed from 11.1.5.3 and 11.1.6.1 and worked with 256 bits.
func TestOilExpansivityIsTheSlopeOfTheStandard(t *testing.T) {
	const formula = "x = c/630\n" +
		"c68 = c - x*(-0.148759 + x*(-0.267408 + x*(1.080760 + x*(1.269056 + x*(-4.089591 + x*(-1.871251 + x*(7.438081 + x*-3.536296)))))))\n" +
		"f = c68*1.8 + 32\nd = f - 60.006874897735\n" +
		"exp(-al*d*(1 + 0.8*al*(d + 0.01374979547)))/(1 - 1e-5*exp(-1.9947 + 0.00013427*f + (793920 + 2326*f)/(rho*rho))*p)"
	for _, celsius := range []float64{-20, 15, 60, 149} {
		for _, psi := range []float64{0, 1500} {
			oil := Oil{At60F: 850, Commodity: Crude}
			k := oil.corrected(unit.Celsius(celsius))
			at := precise.Values{"c0": celsius, "al": k.alpha, "rho": k.rho, "p": psi}
			got, err := oil.Expansivity(unit.Pressure(psi)*unit.PSI, unit.Celsius(celsius))
			require.NoError(t, err)
			require.InEpsilon(t, -slope(t, formula, "c", at), float64(got), 3e-13, "%v °C, %v psi", celsius, psi)
		}
	}
}

// The expansivity of a gas of corresponding states is (∂p/∂T)/(ρ·∂p/∂ρ) of Dranchuk and Abou-Kassem's equation, which gives
// p in closed form at a density; typed from the paper's constants and worked with 256 bits.
func TestGasExpansivityIsTheSlopeOfTheEquation(t *testing.T) {
	const equation = "a = 0.3265 - 1.07/T - 0.5339/pow(T, 3) + 0.01569/pow(T, 4) - 0.05165/pow(T, 5)\n" +
		"b = 0.5475 - 0.7361/T + 0.1844/pow(T, 2)\n" +
		"c = 0.1056*(-0.7361/T + 0.1844/pow(T, 2))\n" +
		"z = 1 + a*r + b*pow(r, 2) - c*pow(r, 5) + 0.6134*(1 + 0.721*pow(r, 2))*pow(r, 2)/pow(T, 3)*exp(-0.721*pow(r, 2))\n" +
		"z*r*T/0.27"
	const critical, hot = 4.6e6, 190.0
	g := &realGas{name: "gas", molarMass: 0.02, pressure: critical, reciproc: 1 / hot}
	for _, T := range []float64{1.08, 1.3, 1.8, 2.6} {
		for _, r := range []float64{0.1, 0.6, 1.2} {
			ppr := precise.Float(t, equation, precise.Values{"T": T, "r": r})
			byT := slope(t, equation, "T", precise.Values{"T0": T, "r": r})
			byR := slope(t, equation, "r", precise.Values{"T": T, "r0": r}) * r
			got, err := g.expansivity(unit.Pressure(ppr*critical)-unit.Atmosphere, unit.Kelvin(T*hot))
			require.NoError(t, err)
			require.InEpsilon(t, byT/hot/byR, float64(got), 1e-10, "%v %v", T, r)
		}
	}
}

// What tells a mixture from one that isn't whole, and a point of a control fluid from nonsense: on both sides of the figure.
func TestFractionsAndControlPointsOnTheirLimits(t *testing.T) {
	for off, ok := range map[float64]bool{1e-4 * (1 - 4e-7): true, 1e-4 * (1 + 4e-7): false, -1e-4 * (1 - 4e-7): true, -1e-4 * (1 + 4e-7): false} {
		_, err := GasMixture{Methane: 1 + off}.sum()
		if off > 0 {
			_, err = GasMixture{Methane: 0.5, Ethane: 0.5 + off}.sum()
		}
		require.Equal(t, ok, err == nil, "%v: %v", off, err)
	}
	for density, ok := range map[unit.Density]bool{1: true, 1 - 4e-7: false, 1 + 4e-7: true} {
		p := ControlPoint{Temperature: unit.Celsius(20), Density: density, Viscosity: unit.Centipoise}
		require.Equal(t, ok, p.sound(), "%v", density)
	}
}
