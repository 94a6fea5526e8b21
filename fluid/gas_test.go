package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// By hand: 0.7 gravity at 2,014.7 psia and 250 °F. Sutton: γ 0.7 → 663.336 psia,
// 377.59 °R; Tpr = 709.67/377.59 = 1.87947; without contaminants, nothing else.
func TestGasPseudoCriticalByHand(t *testing.T) {
	pc, err := Gas{Gravity: 0.7}.PseudoCritical()
	require.NoError(t, err)
	require.InDelta(t, 663.336, pc.Pressure.In(unit.PSI), 5e-4)
	require.InDelta(t, 377.59, pc.Temperature.Rankine(), 5e-3)
}

// By hand: A = 0.15, h = 0.10: ε = 120·(0.181323 − 0.048054) + 15·(0.316228 −
// 0.0001) = 15.9923 + 4.7419 = 20.7342 °R; T' = 400 − 20.7342 = 379.2658;
// p' = 700·379.2658/(400 + 0.09·20.7342) = 660.633.
func TestWichertAzizByHand(t *testing.T) {
	pc, err := PseudoCritical{700 * unit.PSI, unit.Rankine(400)}.WichertAziz(0.05, 0.10)
	require.NoError(t, err)
	require.InDelta(t, 379.266, pc.Temperature.Rankine(), 1e-2)
	require.InDelta(t, 660.63, pc.Pressure.In(unit.PSI), 2e-2)
	for _, c := range [][2]float64{{0.55, 0}, {0, 0.74}, {0.5, 0.6}, {-0.1, 0.2}, {math.NaN(), 0}} {
		_, err := PseudoCritical{700 * unit.PSI, unit.Rankine(400)}.WichertAziz(c[0], c[1])
		require.ErrorIs(t, err, ErrOutsideRange)
	}
}

var gases = map[string]interface {
	slopes
	Viscosity(unit.Pressure, unit.Temperature) (unit.Viscosity, error)
	ZFactor(unit.Pressure, unit.Temperature) (float64, error)
	MolarMass() float64
}{
	"sweet":   Gas{Gravity: 0.65},
	"sour":    Gas{Gravity: 0.85, Nitrogen: 0.03, CarbonDioxide: 0.08, HydrogenSulphide: 0.1},
	"mixture": GasMixture{Methane: 0.85, Ethane: 0.05, Propane: 0.02, Nitrogen: 0.03, CarbonDioxide: 0.05},
}

func TestGasSlopes(t *testing.T) {
	for name, g := range gases {
		t.Run(name, func(t *testing.T) {
			for _, p := range []unit.Pressure{50 * unit.PSI, 2000 * unit.PSI, 12000 * unit.PSI} {
				for _, f := range []float64{60, 200, 340} {
					checkSlopes(t, g, p, unit.Fahrenheit(f), 1e-4)
				}
			}
		})
	}
}

// Density is p·M/(Z·R·T) with the Z of the function.
func TestGasDensityIsZ(t *testing.T) {
	for name, g := range gases {
		p, T := 3000*unit.PSI, unit.Fahrenheit(150)
		z, err := g.ZFactor(p, T)
		require.NoError(t, err)
		rho, err := g.Density(p, T)
		require.NoError(t, err)
		require.InEpsilon(t, absolute(p)*g.MolarMass()/(z*gasConstant*T.Kelvin()), float64(rho), 1e-12, name)
		mu, err := g.Viscosity(p, T)
		require.NoError(t, err)
		require.True(t, mu > 0.01*unit.Centipoise && mu < 0.05*unit.Centipoise, name)
	}
}

// A mixture and the same gas by its gravity agree as corresponding states do.
func TestGasMixtureAgainstGravity(t *testing.T) {
	m := GasMixture{Methane: 0.9, Ethane: 0.07, Propane: 0.03}
	g := Gas{Gravity: m.Gravity()}
	for _, p := range []unit.Pressure{500 * unit.PSI, 3000 * unit.PSI, 9000 * unit.PSI} {
		a, err := m.Density(p, unit.Fahrenheit(150))
		require.NoError(t, err)
		b, err := g.Density(p, unit.Fahrenheit(150))
		require.NoError(t, err)
		require.InEpsilon(t, float64(a), float64(b), 0.03)
	}
}

// Pure methane and nitrogen by corresponding states against their own reference
// equations, within what the doc claims.
func TestCorrespondingStatesAgainstReferenceEquations(t *testing.T) {
	for _, p := range []unit.Pressure{0, 1000 * unit.PSI, 5000 * unit.PSI, 10000 * unit.PSI} {
		for _, f := range []float64{60, 150, 250} {
			T := unit.Fahrenheit(f)
			want, err := Methane{}.Density(p, T)
			require.NoError(t, err)
			got, err := GasMixture{Methane: 1}.Density(p, T)
			require.NoError(t, err)
			require.InEpsilon(t, float64(want), float64(got), 0.02, "methane %v %v", p, T)
			want, err = Nitrogen{}.Density(p, T)
			require.NoError(t, err)
			got, err = GasMixture{Nitrogen: 1}.Density(p, unit.Fahrenheit(f))
			if err == nil {
				require.InEpsilon(t, float64(want), float64(got), 0.025, "nitrogen %v %v", p, T)
			}
		}
	}
}

func TestGasErrors(t *testing.T) {
	T := unit.Fahrenheit(150)
	for name, g := range map[string]Gas{
		"zero":             {},
		"light":            {Gravity: 0.5},
		"heavy":            {Gravity: 2},
		"nitrogen":         {Gravity: 0.7, Nitrogen: 0.3},
		"sour":             {Gravity: 1.1, HydrogenSulphide: 0.79},
		"NaN":              {Gravity: math.NaN()},
		"negative":         {Gravity: 0.7, Nitrogen: 0.2, CarbonDioxide: -0.1},
		"all contaminants": {Gravity: 1, Nitrogen: 0.2, CarbonDioxide: 0.5, HydrogenSulphide: 0.3},
	} {
		_, err := g.Density(1000*unit.PSI, T)
		require.ErrorIs(t, err, ErrOutsideRange, name)
		_, err = g.Viscosity(1000*unit.PSI, T)
		require.ErrorIs(t, err, ErrOutsideRange, name)
	}
	g := Gas{Gravity: 0.65}
	for _, c := range []struct {
		p unit.Pressure
		t unit.Temperature
	}{{30000 * unit.PSI, T}, {-15 * unit.PSI, T}, {0, unit.Fahrenheit(-100)}, {0, unit.Fahrenheit(800)}, {unit.Pressure(math.NaN()), T}, {0, unit.Kelvin(math.NaN())}} {
		_, err := g.Density(c.p, c.t)
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = g.Compressibility(c.p, c.t)
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = g.Expansivity(c.p, c.t)
		require.ErrorIs(t, err, ErrOutsideRange)
		_, err = g.Viscosity(c.p, c.t)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	_, err := g.Viscosity(9000*unit.PSI, unit.Fahrenheit(80))
	require.ErrorContains(t, err, "temperature")
	require.ErrorContains(t, err, "pressure")
	for _, m := range []GasMixture{{}, {Methane: 0.9}, {Methane: 1.2, Nitrogen: -0.2}, {Methane: math.NaN()}} {
		_, err := m.Density(1000*unit.PSI, T)
		require.ErrorIs(t, err, ErrOutsideRange)
	}
	vacuum, err := g.Density(-unit.Atmosphere, T)
	require.NoError(t, err)
	require.Zero(t, vacuum)
	_, err = g.Compressibility(-unit.Atmosphere, T)
	require.ErrorIs(t, err, ErrOutsideRange)
}

func BenchmarkGasDensity(b *testing.B) {
	g, p := Gas{Gravity: 0.65}, 3000*unit.PSI
	for b.Loop() {
		_, _ = g.Density(p, unit.Fahrenheit(150))
	}
}
