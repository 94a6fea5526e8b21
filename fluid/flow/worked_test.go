package flow

import (
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// Friction factors typed from their papers and worked with 256 bits; laminar,
// transitional and turbulent, smooth and rough.
func TestFrictionFactorsWorked(t *testing.T) {
	for _, at := range [][2]float64{{3e3, 0}, {2e4, 1e-4}, {1e6, 0.02}, {5e8, 1e-5}} {
		of := precise.Values{"Re": at[0], "e": at[1]}
		precise.Within(t, 1e-13, float64(Haaland(at[0], max(at[1], 1e-12))), "1/pow(-1.8*log10(pow(e/3.7, 1.11) + 6.9/Re), 2)", precise.Values{"Re": at[0], "e": max(at[1], 1e-12)})
		precise.Equal(t, float64(SwameeJain(at[0], at[1])), "0.25/pow(log10(e/3.7 + 5.74/pow(Re, 0.9)), 2)", of)
		if at[1] > 0 {
			precise.Equal(t, float64(Chen(at[0], at[1])), "1/pow(-2*log10(e/3.7065 - 5.0452/Re*log10(pow(e, 1.1098)/2.8257 + 5.8506/pow(Re, 0.8981))), 2)", of)
		}
		f := float64(Colebrook(at[0], at[1]))
		of["f"] = f
		precise.Within(t, 1e-12, 1/math.Sqrt(f), "-2*log10(e/3.7 + 2.51/(Re*sqrt(f)))", of)
		for _, n := range []float64{0.4, 0.75} {
			f := float64(Turbulent(n, at[0], at[1]))
			// Dodge and Metzner with roughness: 1/√f = −4·log10(ε/3.7 + 1.255^(n^−1.2)·Re^(−n^−0.75)·x^((2−n)·n^−0.75))
			precise.Within(t, 1e-11, 1/math.Sqrt(f), "x = 1/sqrt(f)\np = pow(n, -0.75)\n-4*log10(e/3.7 + pow(1.255, pow(n, -1.2))*pow(Re, -p)*pow(x, (2 - n)*p))",
				precise.Values{"Re": at[0], "e": at[1], "f": f, "n": n})
		}
	}
	for _, re := range []float64{50, 1500, 2300, 3500, 1e5, 1e9} {
		precise.Within(t, 2e-12, float64(Churchill(re, 3e-4)), `
			A = pow(2.457*log(1/(pow(7/Re, 0.9) + 0.27*e)), 16)
			B = pow(37530/Re, 16)
			8*pow(pow(8/Re, 12) + 1/pow(A + B, 1.5), 1/12)
		`, precise.Values{"Re": re, "e": 3e-4})
	}
	for _, n := range []float64{0.35, 0.8, 1} {
		precise.Equal(t, float64(Blasius(2e4, n)), "(log10(n) + 3.93)/50/pow(Re, (1.75 - log10(n))/7)", precise.Values{"Re": 2e4, "n": n})
		precise.Equal(t, LaminarReynolds(n), "3470 - 1370*n", precise.Values{"n": n})
		precise.Equal(t, TurbulentReynolds(n), "4270 - 1370*n", precise.Values{"n": n})
	}
	// each range on its limit and beyond
	nan := func(x float64) bool { return math.IsNaN(x) }
	for _, f := range []func(re, e float64) DarcyFactor{Haaland, SwameeJain, Chen, Colebrook} {
		require.True(t, nan(float64(f(100, 1e-3))))
		require.False(t, nan(float64(f(100.0001, 1e-3))))
		require.False(t, nan(float64(f(1e20, 1e-3))))
		require.True(t, nan(float64(f(1.000001e20, 1e-3))))
		require.True(t, nan(float64(f(1e5, 1.000001))))
		require.True(t, nan(float64(f(1e5, -1e-9))))
	}
	require.False(t, nan(float64(Churchill(1e-3, 1))))
	require.True(t, nan(float64(Churchill(0, 0))))
	for re, ok := range map[float64]bool{100: false, 100.0001: true, 1e12: true, 1.000001e12: false} {
		require.Equal(t, ok, !nan(float64(Turbulent(0.7, re, 0))), "%v", re)
	}
}

// The transition joins 16/Re at its lower end to the turbulent factor at its upper,
// straight in logarithms; regimes change where their Reynolds numbers say.
func TestTransitionWorked(t *testing.T) {
	const n = 0.7
	lo, hi := LaminarReynolds(n), TurbulentReynolds(n)
	f, regime := factor(n, lo, 0)
	require.Equal(t, FlowLaminar, regime)
	precise.Equal(t, float64(f), "16/Re", precise.Values{"Re": lo})
	end, regime := factor(n, hi, 0)
	require.Equal(t, FlowTurbulent, regime)
	middle, regime := factor(n, math.Sqrt(lo*hi), 0)
	require.Equal(t, FlowTransitional, regime)
	precise.Equal(t, float64(middle), "sqrt(16/lo*end)", precise.Values{"lo": lo, "end": float64(end)})
	a, regime := factor(n, math.Nextafter(lo, hi), 0)
	require.Equal(t, FlowTransitional, regime)
	require.InEpsilon(t, float64(f), float64(a), 1e-9)
	b, regime := factor(n, math.Nextafter(hi, lo), 0)
	require.Equal(t, FlowTransitional, regime)
	require.InEpsilon(t, float64(end), float64(b), 1e-9)
}

// Minor losses, openings, pumps and the viscometer, worked; the instrument's
// constants as API RP 13D prints them.
func TestLossesAndVolumesWorked(t *testing.T) {
	precise.Equal(t, float64(MinorLoss(0.8, 1100, 3.2)), "0.8*1100*3.2*3.2/2", nil)
	precise.Equal(t, Enlargement(0.004, 0.011), "pow(1 - 0.004/0.011, 2)", nil)
	for ratio, formula := range map[float64]string{0.3: "0.42*(1 - 0.3)", 0.5775: "0.42*(1 - 0.5775)", 0.5777: "pow(1 - 0.5777, 2)", 0.9: "pow(1 - 0.9, 2)"} {
		precise.Within(t, 1e-12, Contraction(1, unit.Area(ratio)), formula, nil)
	}
	o := Orifices{Count: 3, Diameter: 0.012, Discharge: 0.95}
	precise.Equal(t, float64(o.Area()), "3*pi/4*0.012*0.012", nil)
	precise.Equal(t, float64(o.Loss(1200, 0.02)), "1200*pow(0.02/(0.95*3*pi/4*0.012*0.012), 2)/2", nil)
	precise.Equal(t, float64(OrificeRate(1200, 3e6, 3e-4, 0.8)), "0.8*3e-4*sqrt(2*3e6/1200)", nil)
	precise.Equal(t, float64(OrificeRate(1200, -3e6, 3e-4, 0.8)), "-0.8*3e-4*sqrt(2*3e6/1200)", nil)
	require.Equal(t, 0.95, DischargeNozzle)
	precise.Equal(t, DischargeSharp, "pi/(pi + 2)", nil)

	p := Pump{Cylinders: 3, Liner: 0.15, Stroke: 0.3, Efficiency: 0.97}
	precise.Equal(t, float64(p.Output()), "3*pi/4*0.15*0.15*0.3*0.97", nil)
	p = Pump{Cylinders: 2, Liner: 0.15, Rod: 0.06, Stroke: 0.4, Efficiency: 0.9, DoubleActing: true}
	precise.Equal(t, float64(p.Output()), "2*pi/4*(2*0.15*0.15 - 0.06*0.06)*0.4*0.9", nil)
	precise.Equal(t, float64(p.Rate(70)), "2*pi/4*(2*0.15*0.15 - 0.06*0.06)*0.4*0.9*70/60", nil)
	require.Equal(t, 90*time.Second, PumpingTime(1.8, 0.02))
	require.Zero(t, duration(9e9))
	require.NotZero(t, duration(8.9999e9))

	r := Reading{Speed: 300, Dial: 40}
	precise.Equal(t, float64(r.Rate()), "511", nil)
	precise.Equal(t, float64(r.Stress()), "0.511*40", nil)
	precise.Equal(t, float64(PlasticViscosity(70, 45)), "0.025", nil)
	precise.Equal(t, float64(YieldPoint(70, 45)), "20*0.45359237*9.80665/(100*0.3048*0.3048)", nil)
	law, err := TwoPointPowerLaw(Reading{600, 70}, Reading{300, 45})
	require.NoError(t, err)
	precise.Equal(t, law.Index, "log(70/45)/log(2)", nil)
	precise.Equal(t, float64(law.Consistency), "n = log(70/45)/log(2)\n0.511*70/pow(1022, n)", nil)
	straight, err := TwoPointBingham(Reading{600, 70}, Reading{300, 45})
	require.NoError(t, err)
	precise.Equal(t, float64(straight.Yield), "0.511*(2*45 - 70)", nil)
	precise.Equal(t, float64(straight.Consistency), "0.511*25/511", nil)
	for speed, ok := range map[float64]bool{0.01: true, 0.009999: false, 10_000: true, 10_000.01: false} {
		require.Equal(t, ok, Reading{speed, 10}.Validate() == nil, "%v", speed)
		require.Equal(t, ok, Reading{10, speed}.Validate() == nil, "%v", speed)
	}
}
