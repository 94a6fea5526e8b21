package hydrostatics_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// asked is a fluid that counts how often it is asked for its density.
type asked struct {
	density func(p, kelvin float64) float64
	times   *int
}

func (a asked) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	*a.times++
	return unit.Density(a.density(float64(p), t.Kelvin())), nil
}

// A column asks its fluid for few densities: its first guess, its steps and when it is content are worth what they
// cost. The pressures are those of the exponential law, of an ideal gas, and those that an ever finer trapezium finds.
func TestColumnsAskForFewDensities(t *testing.T) {
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(15)}, {TVD: 2500, Temperature: unit.Celsius(80)}, {TVD: 4000, Temperature: unit.Celsius(150)}})
	require.NoError(t, err)
	times := 0
	for _, density := range []func(p, kelvin float64) float64{
		func(p, kelvin float64) float64 { return 1000 * math.Exp(4.5e-10*p) },
		func(p, kelvin float64) float64 { return 1100 * math.Exp(4e-10*p-5e-4*(kelvin-288)) },
		func(p, kelvin float64) float64 { return (p + 101325) * 0.016 / (8.314 * kelvin) },
		func(p, kelvin float64) float64 { return 1300 + 2e-7*p - 0.6*(kelvin-288) },
		func(p, kelvin float64) float64 { return 900 * (1 + 1e-9*p + 1e-17*p*p) },
	} {
		for _, reference := range []hydrostatics.Reference{{Pressure: 2e7, TVD: 0}, {Pressure: 6e7, TVD: 4000}, {Pressure: 3e7, TVD: 1700}} {
			c, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: asked{density, &times}, BottomTVD: 4000}}, profile, reference)
			require.NoError(t, err)
			p := float64(reference.Pressure)
			const pieces = 40000
			h := (4000 - float64(reference.TVD)) / pieces
			at := func(z, p float64) float64 { return density(p, profile.At(unit.Length(z)).Kelvin()) * 9.80665 }
			for i := range pieces { // Heun
				z := float64(reference.TVD) + float64(i)*h
				k := at(z, p)
				p += h / 2 * (k + at(z+h, p+h*k))
			}
			got, err := c.At(4000)
			require.NoError(t, err)
			require.InEpsilon(t, p, float64(got), 1e-7)
		}
	}
	require.LessOrEqual(t, times, 833)
	asking := func(depth unit.Length, density func(p, kelvin float64) float64) int {
		times = 0
		_, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: asked{density, &times}, BottomTVD: depth}}, profile, hydrostatics.Reference{Pressure: 1e6})
		require.NoError(t, err)
		return times
	}
	// A front between two fluids, and a density with a kink.
	require.LessOrEqual(t, asking(4000, func(p, _ float64) float64 { return 1000 + 40*math.Tanh((p-2e7)/2e5) }), 444)
	require.LessOrEqual(t, asking(4000, func(p, _ float64) float64 { return 1000 + 1e-5*math.Abs(p-1.7e7) }), 602)
	// A jump is closed in upon by 32 halvings.
	require.Equal(t, 734, asking(4000, func(p, _ float64) float64 {
		if p < 1.7e7 {
			return 1000
		}
		return 1100
	}))
	// What is all but incompressible, or runs straight with temperature, is met by the guess: three densities and the eight
	// that confirm it.
	require.Equal(t, 11, asking(2400, func(p, _ float64) float64 { return 1000 * math.Exp(1e-12*p) }))
	require.Equal(t, 11, asking(2400, func(_, kelvin float64) float64 { return 1000 - 0.05*(kelvin-288) }))
	require.Equal(t, 19, asking(2400, func(p, _ float64) float64 { return 1000 * math.Exp(1e-11*p) }))
}

type given float64

func (g given) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	return unit.Density(g), nil
}

type lower struct{}

func (lower) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	if p > 2e7 {
		return 0, errors.New("no such pressure")
	}
	return 1000, nil
}

// Densities that can't be are told with what was asked; of a cushion too.
func TestDensitiesThatCannotBe(t *testing.T) {
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(15)}, {TVD: 4000, Temperature: unit.Celsius(150)}})
	require.NoError(t, err)
	for _, rho := range []float64{-5, 0, math.Inf(1), math.NaN()} {
		_, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: given(rho), BottomTVD: 100}}, profile, hydrostatics.Reference{})
		require.ErrorContains(t, err, "must be above 0 kg/m3 and finite")
	}
	_, err = hydrostatics.Cushion{Heavy: lower{}, Light: hydrostatics.Incompressible(200), Temperature: profile,
		Formation: hydrostatics.Formation{Pressure: 4e7, TVD: 3000}}.Pressure(2000)
	require.ErrorContains(t, err, "no such pressure")
	_, err = hydrostatics.SlightlyCompressible{Reference: 1000, Compressibility: 1e-6}.Density(1e12, unit.Celsius(15))
	require.ErrorContains(t, err, "no density at ")
	_, err = hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(-1), BottomTVD: 100}}, nil, hydrostatics.Reference{})
	require.ErrorContains(t, err, "Density: is ")
	for _, p := range []unit.Pressure{unit.Pressure(math.Inf(1)), unit.Pressure(math.Inf(-1))} {
		_, err = hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(1e300), BottomTVD: 1e300}}, nil, hydrostatics.Reference{TVD: 1e300 * unit.Length(math.Abs(math.Copysign(1, float64(p)))/2)})
		require.Error(t, err)
	}
}

// An azimuth is at most a full turn either way, and may be anything between.
func TestAzimuthsOnTheirLimits(t *testing.T) {
	for turn, ok := range map[float64]bool{-1: true, -0.75: true, -0.5: true, 0.75: true, 1: true, 1.001: false, -1.001: false, -1.5: false, 2: false} {
		_, err := hydrostatics.NewPath([]hydrostatics.Station{{MD: 0, Azimuth: unit.Angle(turn * 2 * math.Pi)}, {MD: 100, Inclination: 0.1, Azimuth: unit.Angle(turn * 2 * math.Pi)}})
		if ok {
			require.NoError(t, err, "%v", turn)
		} else {
			require.ErrorContains(t, err, "Azimuth", "%v", turn)
		}
	}
}

// What a bullhead is given, on its limits and just beyond; what is left of a shut-in.
func TestBullheadLimits(t *testing.T) {
	next := func(x float64) float64 { return math.Nextafter(x, math.Inf(1)) }
	for _, x := range []struct {
		name   string
		limit  float64
		change func(*hydrostatics.Bullhead, float64)
	}{
		{"Injection", 1e9, func(b *hydrostatics.Bullhead, x float64) { b.Injection = unit.Pressure(x) }},
		{"Formation.Pressure", 1e9, func(b *hydrostatics.Bullhead, x float64) { b.Formation.Pressure, b.Fracture = unit.Pressure(x), 2e9 }},
		{"Fracture", 10e9, func(b *hydrostatics.Bullhead, x float64) { b.Fracture = unit.Pressure(x) }},
		{"Kill", 10000, func(b *hydrostatics.Bullhead, x float64) { b.Kill = unit.Density(x) }},
		{"Sections[0].Area", 100, func(b *hydrostatics.Bullhead, x float64) { b.Sections[0].Area = unit.Area(x) }},
		{"Friction[1]", float64(10 * unit.PSIPerFoot), func(b *hydrostatics.Bullhead, x float64) { b.Friction = []unit.Gradient{0, unit.Gradient(x)} }},
	} {
		b := bullhead()
		x.change(&b, x.limit)
		_, err := b.Schedule(3)
		require.NoError(t, err, x.name)
		x.change(&b, next(x.limit))
		_, err = b.Schedule(3)
		require.ErrorContains(t, err, x.name+": is ")
	}
	for steps, ok := range map[int]bool{0: false, 1: true, 10000: true, 10001: false} {
		_, err := bullhead().Schedule(steps)
		require.Equal(t, ok, err == nil, "%d", steps)
	}
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(15)}, {TVD: 4000, Temperature: unit.Celsius(150)}})
	require.NoError(t, err)
	for left, ok := range map[float64]bool{0: true, 1: true, next(1): false, -1e-300: false} {
		_, err := hydrostatics.AfterShutIn(profile, profile, left)
		require.Equal(t, ok, err == nil, "%v", left)
	}
}

// failing is a fluid of a density that it doesn't know at some pressure.
type failing struct {
	rho         float64
	least, most unit.Pressure
}

func (f failing) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	if p < f.least || p > f.most {
		return 0, errors.New("unknown there")
	}
	return unit.Density(f.rho * (1 + 1e-10*float64(p))), nil
}

// The depth at which a fluid has no density is told: in the layer, and where the pressure is what it doesn't know.
func TestDepthWithoutADensity(t *testing.T) {
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(15)}, {TVD: 4000, Temperature: unit.Celsius(150)}})
	require.NoError(t, err)
	depth := func(f failing, r hydrostatics.Reference) float64 {
		_, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, BottomTVD: 4000}}, profile, r)
		require.ErrorContains(t, err, "unknown there")
		_, after, found := strings.Cut(err.Error(), "at TVD ")
		require.True(t, found, err)
		number, _, _ := strings.Cut(after, ":")
		var at unit.Length
		require.NoError(t, at.UnmarshalText([]byte(number)))
		return float64(at)
	}
	const weight = 1000 * 9.80665
	for share := 0.05; share < 1; share += 0.05 { // downwards, then upwards
		at := depth(failing{1000, -1, unit.Pressure(share * 4000 * weight)}, hydrostatics.Reference{})
		require.True(t, at >= share*4000*0.99 && at <= 4000+1e-6, "%v m for %v m", at, share*4000)
		at = depth(failing{1000, unit.Pressure(share * 4000 * weight), 1e9}, hydrostatics.Reference{Pressure: 4000 * weight, TVD: 4000})
		require.True(t, at >= -1e-6 && at <= share*4000+25, "%v m for %v m", at, share*4000)
	}
}

// The first station may lie at surface or as deep as any; it may point straight down or straight up.
func TestStationsOnTheirLimits(t *testing.T) {
	for _, x := range []struct {
		md, inclination float64
		fault           string
	}{
		{0, 0, ""}, {0, math.Pi, ""}, {999e3, 1, ""}, {1e6, 0, "MD"}, {-1e-9, 0, "MD"}, {0, -1e-12, "Inclination"}, {0, math.Pi + 2e-9, "Inclination"}, {1e6 + 1e-3, 0, "MD"},
	} {
		_, err := hydrostatics.NewPath([]hydrostatics.Station{{MD: unit.Length(x.md), Inclination: unit.Angle(x.inclination)}, {MD: unit.Length(math.Max(x.md, 0) + 10), Inclination: unit.Angle(math.Min(math.Max(x.inclination, 0), 3))}})
		if x.fault == "" {
			require.NoError(t, err, "%v", x)
		} else {
			require.ErrorContains(t, err, x.fault, "%v", x)
		}
	}
	_, err := hydrostatics.NewPath([]hydrostatics.Station{{MD: 1e6}})
	if err != nil {
		require.NotContains(t, err.Error(), "MD: is 1000 km", "just as deep as may be")
	}
}

// uniform is a fluid of one density that says so, and checks nothing.
type uniform float64

func (u uniform) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	return unit.Density(u), nil
}
func (u uniform) UniformDensity() (unit.Density, bool) { return unit.Density(u), true }

// A density that a fluid says is the same everywhere is no less than nought.
func TestUniformDensityIsChecked(t *testing.T) {
	for rho, ok := range map[float64]bool{0: true, 1000: true, -1e-9: false, math.NaN(): false} {
		_, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: uniform(rho), BottomTVD: 100}}, nil, hydrostatics.Reference{})
		if ok {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, "Density: is ")
		}
	}
}
