package hydrostatics

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// The ratio factor tan(β/2)/(β/2) by its series and by its closed form, worked
// with 256 bits on both sides of where one gives way to the other; far beyond it
// the series itself is held term by term.
func TestRatioFactorWorked(t *testing.T) {
	for _, xx := range []float64{1e-9, 1e-6, 1e-4, 0.999e-3, 1e-3, 1.001e-3, 0.1, 1} {
		precise.Within(t, 2e-15, ratioFactor(xx), "sqrt(xx)/atan(sqrt(xx))", precise.Values{"xx": xx})
	}
	// x/atan x = 1 + x²/3 − 4x⁴/45 + 44x⁶/945 − 428x⁸/14175 + 10196x¹⁰/467775: negative
	// squares, which no arc has, weigh every term of it.
	for _, xx := range []float64{-1, -5, -40} {
		precise.Within(t, 1e-14, ratioFactor(xx), "1 + xx/3 - 4*pow(xx, 2)/45 + 44*pow(xx, 3)/945 - 428*pow(xx, 4)/14175 + 10196*pow(xx, 5)/467775", precise.Values{"xx": xx})
	}
	precise.Equal(t, bend(0.03), "2*atan(sqrt(0.03))", nil)
	require.Equal(t, 0.0, fullTurn(-1e-30))
	precise.Equal(t, fullTurn(-1), "2*pi - 1", nil)
}

// The Chebyshev series of the polynomials T0 to T8 are the polynomials themselves.
func TestSeriesOfChebyshevPolynomials(t *testing.T) {
	for m := range degree + 1 {
		var v [degree + 1]float64
		for k := range v {
			v[k] = math.Cos(float64(m) * math.Acos(2*chebyshev[k]-1))
		}
		c := series(&v)
		for i := range c {
			want := 0.0
			if i == m {
				want = 1
			}
			require.InDelta(t, want, c[i], 1e-13, "T%d has coefficient %d", m, i)
		}
		for j := range collocated {
			// ∫Tm from −1 to xj by the antiderivative of cos(mθ)
			x := 2*chebyshev[j+1] - 1
			integral := func(x float64) float64 {
				T := func(n int) float64 { return math.Cos(float64(n) * math.Acos(x)) }
				switch m {
				case 0:
					return x
				case 1:
					return x * x / 2
				}
				return (T(m+1)/float64(m+1) - T(m-1)/float64(m-1)) / 2
			}
			sum := 0.0
			for k := range v {
				sum += collocated[j][k] * v[k]
			}
			require.InDelta(t, integral(x)-integral(-1), sum, 1e-13, "T%d to point %d", m, j+1)
		}
	}
	for m, want := range map[int]float64{5: 0, 6: 0, 7: 1, 8: 1} { // last terms that don't fall are the misfit
		var v [degree + 1]float64
		for k := range v {
			v[k] = math.Cos(float64(m) * math.Acos(2*chebyshev[k]-1))
		}
		require.InDelta(t, want, misfit(&v), 1e-13, "T%d", m)
	}
	// falling from 1 to 1/10: 4·0.1²/(1 − 0.1)/9, by hand
	var v [degree + 1]float64
	for k := range v {
		a := math.Acos(2*chebyshev[k] - 1)
		v[k] = math.Cos(5*a) + 0.1*math.Cos(8*a)
	}
	require.InEpsilon(t, 4*0.01/0.9/9, misfit(&v), 1e-12)
	for k := range v {
		a := math.Acos(2*chebyshev[k] - 1)
		v[k] = 2*math.Cos(6*a) + 0.2*math.Cos(7*a)
	}
	require.InEpsilon(t, 2*4*0.01/0.9/9, misfit(&v), 1e-12)
	for k, x := range chebyshev {
		precise.Within(t, 1e-14, 1+x, "(3 - cos(pi*k/8))/2", precise.Values{"k": float64(k)})
	}
}

// Hasan and Kabir (1991) on both sides of tD = 1.5.
func TestThermalTimeWorked(t *testing.T) {
	for _, td := range []float64{0.2, 1.5} {
		precise.Equal(t, ThermalTime(td), "1.1281*sqrt(t)*(1 - 0.3*sqrt(t))", precise.Values{"t": td})
	}
	for _, td := range []float64{1.5000001, 40} {
		precise.Equal(t, ThermalTime(td), "(0.4063 + log(t)/2)*(1 + 0.6/t)", precise.Values{"t": td})
	}
}

func TestSlightlyCompressibleWorked(t *testing.T) {
	f := SlightlyCompressible{Reference: 1050, Pressure: 3e6, Temperature: unit.Kelvin(300), Compressibility: 4.4e-10, Expansivity: 5e-4}
	rho, err := f.Density(2.5e7, unit.Kelvin(360))
	require.NoError(t, err)
	precise.Equal(t, float64(rho), "1050*exp(4.4e-10*2.2e7 - 5e-4*60)", nil)
	require.Equal(t, []float64{1000, 999.016}, []float64{float64(PureWater), float64(WaterAt60F)})
}

// Each limit of a survey: on it a path, just beyond it a fault that names it.
func TestStationLimits(t *testing.T) {
	const turn = unit.Angle(2 * math.Pi)
	for _, s := range []Station{{MD: 1e6}, {MD: 10, Azimuth: turn}, {MD: 10, Azimuth: -turn}, {MD: 10, Inclination: math.Pi}, {MD: 10, Azimuth: turn + 0.99e-9}, {MD: 10, Inclination: math.Pi + 0.99e-9}} {
		require.NoError(t, checkStations([]Station{s}), "%+v", s)
	}
	for text, s := range map[string]Station{
		"stations[0].MD: is":                           {MD: 1e6 * (1 + 1e-9)},
		"stations[0].Inclination: is 180.00000018":     {MD: 10, Inclination: math.Pi * (1 + 1e-9)},
		"stations[0].Azimuth: is":                      {MD: 10, Azimuth: turn + 1.01e-9},
		"stations[0].Azimuth: is -360.000000057868734": {MD: 10, Azimuth: -turn - 1.01e-9},
		"stations[0].Inclination: is":                  {MD: 10, Inclination: -1e-12},
	} {
		require.ErrorContains(t, checkStations([]Station{s}), text)
	}
	err := checkStations([]Station{{MD: 10, Azimuth: 7, Inclination: 4}})
	require.ErrorContains(t, err, "must be from 0 deg to 180 deg")
	require.ErrorContains(t, err, "must be from -360 deg to 360 deg")
	require.ErrorContains(t, checkStations([]Station{{}, {MD: 10}, {MD: 10}}), "stations[2].MD: is")
	require.Error(t, checkStations([]Station{{}}))
	require.Error(t, checkStations(nil))
}

// The tolerance of a flowing profile holds on its limits and rules the number of points.
func TestFlowingTolerance(t *testing.T) {
	ground, err := NewTemperatureProfile([]TemperaturePoint{{0, unit.Kelvin(290)}, {3000, unit.Kelvin(380)}})
	require.NoError(t, err)
	f := Flowing{Ground: ground, Inlet: unit.Kelvin(380), TopTVD: 0, BottomTVD: 3000, Relaxing: 800}
	for tolerance, ok := range map[float64]bool{1e-4: true, 1e-4 * (1 - 1e-7): false, 100: true, 100 * (1 + 1e-7): false} {
		_, err := f.Producing(unit.TemperatureDifference(tolerance))
		require.Equal(t, ok, err == nil, "%v", tolerance)
	}
	p, err := f.Producing(0.01)
	require.NoError(t, err)
	// c = T − Te + slope·A with slope −30 K/km: |c| = 24 K; steps ⌈3000/800·√(24/(8·0.01))⌉ = 65
	require.Len(t, p.depth, 66)
	for _, z := range []float64{0, 700, 2200} {
		require.InDelta(t, 24*(1-math.Exp(-(3000-z)/800)), p.At(unit.Length(z)).Kelvin()-(290+0.03*z), 0.01)
	}
}

// A weak point may use all of its rating and no more.
func TestShareOfTheRating(t *testing.T) {
	for share, ok := range map[float64]bool{0: false, 1e-9: true, 1: true, 1.0000001: false} {
		column, err := NewColumn([]Layer{{BottomTVD: 1000, Fluid: SlightlyCompressible{Reference: 1000}}}, nil, Reference{})
		require.NoError(t, err)
		_, err = MaximumSurfacePressure(column, []WeakPoint{{Name: "shoe", TVD: 500, Rating: 2e8, Share: share}})
		if share == 1e-9 {
			continue // no room is another answer
		}
		require.Equal(t, ok, err == nil, "%v: %v", share, err)
	}
}
