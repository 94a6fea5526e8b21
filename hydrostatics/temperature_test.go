package hydrostatics

import (
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestTemperatureProfile(t *testing.T) {
	p := offshore(t)
	for _, row := range [][2]float64{
		{-10, 22}, {0, 22}, {25, 22}, {162.5, 15.5}, {300, 9}, {900, 6.5}, {1500, 4}, {2500, 36}, {6000, 148}, {6100, 151.2},
	} {
		require.InDelta(t, row[1], p.At(unit.Length(row[0])).Celsius(), 1e-9, "at %g m", row[0])
	}
	require.Len(t, p.Points(), 5)
	// Next kinks, down and up.
	for _, row := range [][3]float64{{0, 6000, 25}, {25, 6000, 300}, {300, 1000, 1000}, {1500, 6000, 6000}, {6000, 0, 1500}, {1500, 0, 300}, {300, 200, 200}, {25, 0, 0}} {
		require.Equal(t, row[2], p.kink(row[0], row[1]), "%v", row)
	}
	one, err := NewTemperatureProfile([]TemperaturePoint{{100, unit.Celsius(20)}})
	require.NoError(t, err)
	require.Equal(t, unit.Celsius(20), one.At(5000))
	require.Equal(t, 7., one.kink(3, 7))
	require.Equal(t, unit.Temperature{}, (*TemperatureProfile)(nil).At(5))
	require.Empty(t, (*TemperatureProfile)(nil).Points())

	land, err := Geothermal{GroundTVD: 9, Ground: unit.Fahrenheit(70), Gradient: 1.6 * unit.FahrenheitPer100Feet}.Profile(4000)
	require.NoError(t, err)
	require.InDelta(t, 70, land.At(3).Fahrenheit(), 1e-9)
	require.InDelta(t, 70+160, land.At(9+10000*unit.Foot).Fahrenheit(), 1e-9)
	deck, err := Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.6 * unit.FahrenheitPer100Feet}.Profile(4000)
	require.NoError(t, err)
	require.InDelta(t, 70, deck.At(0).Fahrenheit(), 1e-9)
}

func TestTemperatureFaults(t *testing.T) {
	_, err := NewTemperatureProfile(nil)
	require.Error(t, err)
	_, err = NewTemperatureProfile([]TemperaturePoint{{5, unit.Celsius(4)}, {5, unit.Temperature{}}, {unit.Length(math.NaN()), unit.Kelvin(math.Inf(1))}})
	for _, want := range []string{"points[1].TVD: is", "points[1].Temperature: is", "points[2].TVD: is NaN", "points[2].Temperature: is"} {
		require.ErrorContains(t, err, want)
	}
	_, err = Geothermal{GroundTVD: 1000, Gradient: unit.TemperatureGradient(math.NaN()), Sea: unit.Celsius(10), SeaTVD: 1200}.Profile(500)
	for _, want := range []string{"Ground: is", "Gradient: is", "depth: is", "SeaTVD: is"} {
		require.ErrorContains(t, err, want)
	}
	_, err = Geothermal{GroundTVD: 1000, Ground: unit.Celsius(4), Water: []TemperaturePoint{{3, unit.Celsius(3)}}}.Profile(5000)
	require.ErrorContains(t, err, "without a temperature of the sea")
}

// The ground's response to a constant heat rate by the exact integral of
// Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, 13.5:
//
//	f(tD) = (4/π²)·∫ (1 − e^(−u²·tD))/(u³·[J1²(u) + Y1²(u)]) du, 0 to ∞
func exactThermalTime(td float64) float64 {
	sum := 0.0
	const n = 20000
	const lo, hi = -14.0, 9.0 // u = e^s
	for i := range n {
		s := lo + (hi-lo)*(float64(i)+0.5)/n
		u := math.Exp(s)
		j, y := math.J1(u), math.Y1(u)
		sum += -math.Expm1(-u*u*td) / (u * u * (j*j + y*y)) * (hi - lo) / n
	}
	return 4 / (math.Pi * math.Pi) * sum
}

func TestThermalTime(t *testing.T) {
	for _, row := range [][2]float64{ // tD and what the doc claims
		{0.001, 0.03}, {0.1, 0.03}, {0.3, 0.03}, {0.7, 0.03}, {1, 0.03}, {1.5, 0.08}, {1.51, 0.08}, {1.7, 0.08}, {2, 0.08}, {3, 0.08},
		{5, 0.005}, {10, 0.005}, {100, 0.005}, {1000, 0.005}, {1e5, 0.005},
	} {
		require.InEpsilon(t, exactThermalTime(row[0]), ThermalTime(row[0]), row[1], "tD = %g", row[0])
	}
	for _, td := range []float64{1e3, 1e5} { // Ramey 1962
		require.InDelta(t, math.Log(2*math.Sqrt(td))-0.290, ThermalTime(td), 0.01)
	}
}

var exchange = HeatExchange{
	Rate: 10, SpecificHeat: 4186.8, Radius: 0.062, Transfer: 30, Hole: 0.108,
	Conductivity: 2.4, Diffusivity: 1.03e-6, Time: 75 * 24 * time.Hour,
}

func TestRelaxationDistance(t *testing.T) {
	a, err := exchange.RelaxationDistance()
	require.NoError(t, err)
	// By hand: tD = 1.03e-6·6.48e6/0.108² = 572.2; f = 3.5833·1.00105 = 3.5850;
	// A = 41868·[1/(2π·0.062·30) + 3.5850/(2π·2.4)] = 41868·(0.085567 + 0.237738) = 13,536 m.
	require.InDelta(t, 13536, float64(a), 3)
	// Ramey's form, w·c·(k + r·U·f)/(2π·r·U·k).
	td := 1.03e-6 * exchange.Time.Seconds() / (0.108 * 0.108)
	require.InEpsilon(t, 41868*(2.4+0.062*30*ThermalTime(td))/(2*math.Pi*0.062*30*2.4), float64(a), 1e-12)
	_, err = HeatExchange{}.RelaxationDistance()
	for _, want := range []string{"Rate: is", "SpecificHeat: is", "Transfer: is", "Diffusivity: is", "Time: is"} {
		require.ErrorContains(t, err, want)
	}
}

// The profile obeys dT/dz = (Te − T)/A along the flow: against a fine
// Runge–Kutta integration of that law.
func TestFlowingProfile(t *testing.T) {
	ground := offshore(t)
	for _, a := range []unit.Length{50, 600, 5000} {
		f := Flowing{Ground: ground, BottomTVD: 4000, Relaxing: a}
		for _, up := range []bool{true, false} {
			from, to := 0.0, 4000.0
			f.Inlet = unit.Celsius(30)
			flow := f.Injecting
			if up {
				from, to = to, from
				f.Inlet = ground.At(4000)
				flow = f.Producing
			}
			profile, err := flow(0.01)
			require.NoError(t, err)
			temperature := f.Inlet.Kelvin()
			const n = 8000
			h := (to - from) / n
			slope := func(z, t float64) float64 {
				return (ground.At(unit.Length(z)).Kelvin() - t) / float64(a) * math.Copysign(1, h)
			}
			for i := range n {
				z := from + h*float64(i)
				k1 := slope(z, temperature)
				k2 := slope(z+h/2, temperature+h/2*k1)
				k3 := slope(z+h/2, temperature+h/2*k2)
				k4 := slope(z+h, temperature+h*k3)
				temperature += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
				require.InDelta(t, temperature, profile.At(unit.Length(z+h)).Kelvin(), 0.0101, "A %v, up %v, at %g m", a, up, z+h)
			}
		}
	}
}

// Ramey's own equations for ground that is straight from surface.
func TestRameyClosedForm(t *testing.T) {
	ground := straight(t, 20, 0.03)
	f := Flowing{Ground: ground, BottomTVD: 3000, Relaxing: 800, Inlet: unit.Celsius(15)}
	down, err := f.Injecting(0.001)
	require.NoError(t, err)
	for z := 0.0; z <= 3000; z += 100 {
		want := 0.03*z + 20 - 0.03*800 + (15+0.03*800-20)*math.Exp(-z/800)
		require.InDelta(t, want, down.At(unit.Length(z)).Celsius(), 0.0011)
	}
	// Slow flow has the ground's temperature, fast flow its own.
	f.Relaxing, f.Inlet = 0.5, unit.Celsius(110)
	slow, err := f.Producing(0.01)
	require.NoError(t, err)
	require.InDelta(t, 20, slow.At(0).Celsius(), 0.05)
	f.Relaxing = 1e9
	fast, err := f.Producing(0.01)
	require.NoError(t, err)
	require.InDelta(t, 110, fast.At(0).Celsius(), 0.01)
	_, err = Flowing{}.Producing(0)
	for _, want := range []string{"Inlet: is", "BottomTVD: is", "Relaxing: is", "tolerance: is", "Ground: is missing"} {
		require.ErrorContains(t, err, want)
	}
}
