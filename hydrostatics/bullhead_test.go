package hydrostatics_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

// bullhead is a worked example of bullheading (drilling formulas site): top
// perforation at 11,000 ft, formation 0.445 psi/ft and fracture 0.645 psi/ft,
// tubing shut in at 2,800 psi, tubing of 0.0087 and casing of 0.0371 bbl/ft, packer
// at 10,300 ft. It prints 4,895 and 7,095 psi. Its text is cut off after that: what
// follows is by hand.
func bullhead() hydrostatics.Bullhead {
	const depth = 11000 * unit.Foot
	b := hydrostatics.Bullhead{
		Formation: hydrostatics.Formation{Pressure: hydrostatics.PressureOf(0.445*unit.PSIPerFoot, depth), TVD: depth},
		Fracture:  hydrostatics.PressureOf(0.645*unit.PSIPerFoot, depth),
		Sections:  []hydrostatics.LegSection{{BottomMD: 10300 * unit.Foot, Area: 0.0087 * unit.BarrelPerFoot}, {BottomMD: depth, Area: 0.0371 * unit.BarrelPerFoot}},
	}
	b.Influx = hydrostatics.Incompressible(hydrostatics.EquivalentDensity(b.Formation.Pressure-2800*unit.PSI, depth))
	b.Kill = b.Formation.KillDensity(0)
	return b
}

func TestBullheadWorkedExample(t *testing.T) {
	b := bullhead()
	require.InDelta(t, 4895, b.Formation.Pressure.In(unit.PSI), 0.5, "printed")
	require.InDelta(t, 7095, b.Fracture.In(unit.PSI), 0.5, "printed")
	points, err := b.Schedule(10)
	require.NoError(t, err)
	require.Len(t, points, 12, "ten steps, their start, and the change of bore")
	first, last := points[0], points[len(points)-1]
	require.InDelta(t, 2800, first.Shut.In(unit.PSI), 1e-6)
	require.InDelta(t, 5000, first.Greatest.In(unit.PSI), 1e-6, "7095 - (4895 - 2800), by hand")
	require.InDelta(t, 0, last.Shut.In(unit.PSI), 1e-6, "the kill fluid holds the formation")
	require.InDelta(t, 2200, last.Greatest.In(unit.PSI), 1e-6, "7095 - 4895, by hand")
	require.InDelta(t, 10300*0.0087+700*0.0371, last.Pumped.In(unit.Barrel), 1e-9)
	for _, p := range points {
		require.Equal(t, p.Shut, p.Pump, "no friction, nothing to inject")
		if p.FrontMD == 10300*unit.Foot {
			require.InDelta(t, 2800*(1-10300.0/11000), p.Shut.In(unit.PSI), 1e-6, "two columns of constant density: straight")
		}
	}
	workingtest.Check(t, b.Steps(last))
}

// densityFunc is a fluid by its density alone.
type densityFunc func(unit.Pressure, unit.Temperature) (unit.Density, error)

func (f densityFunc) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return f(p, t)
}

// A gas below the front is what its column makes of it; friction and injection
// come on top; and a survey counts the vertical depth alone.
func TestBullheadOfGas(t *testing.T) {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 1000 * unit.Metre}, {MD: 1000*unit.Metre + unit.Length(500*math.Pi/3), Inclination: 60 * unit.Degree}, {MD: 4000 * unit.Metre, Inclination: 60 * unit.Degree}})
	require.NoError(t, err)
	tvd, err := path.TVD(4000 * unit.Metre)
	require.NoError(t, err)
	gas := densityFunc(func(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
		return unit.Density(7e-6 * float64(p+unit.Atmosphere)), nil // an ideal gas: dp/dz = k·g·p
	})
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Celsius(60)}})
	require.NoError(t, err)
	b := hydrostatics.Bullhead{Formation: hydrostatics.Formation{Pressure: 300 * unit.Bar, TVD: tvd}, Injection: 20 * unit.Bar, Fracture: 450 * unit.Bar, Path: path,
		Sections: []hydrostatics.LegSection{{BottomMD: 4000 * unit.Metre, Area: 5 * unit.LitrePerMetre}}, Influx: gas, Kill: 1100 * unit.KilogramPerCubicMetre,
		Friction: []unit.Gradient{200 * unit.PascalPerMetre}, Temperature: profile}
	points, err := b.Schedule(40)
	require.NoError(t, err)
	for _, p := range points {
		below := float64(tvd - p.FrontTVD)
		up := func(bottom unit.Pressure) float64 { // closed form of the ideal gas
			return float64(bottom+unit.Atmosphere)*math.Exp(-7e-6*9.80665*below) - float64(unit.Atmosphere)
		}
		kill := 1100 * 9.80665 * float64(p.FrontTVD)
		friction := 200 * float64(p.FrontMD)
		require.InDelta(t, up(300*unit.Bar)-kill, float64(p.Shut), 1)
		require.InDelta(t, up(320*unit.Bar)-kill+friction, float64(p.Pump), 1)
		require.InDelta(t, up(450*unit.Bar)-kill, float64(p.Greatest), 1)
		require.InDelta(t, friction, float64(p.GreatestPumping-p.Greatest), 1e-6)
		require.InDelta(t, 0.005*float64(p.FrontMD), float64(p.Pumped), 1e-9)
	}
	workingtest.Check(t, b.Steps(points[len(points)-1]))
}

func TestBullheadFaults(t *testing.T) {
	require.Empty(t, hydrostatics.Bullhead{}.Steps(hydrostatics.BullheadPoint{}))
	_, err := hydrostatics.Bullhead{Friction: []unit.Gradient{-1}}.Schedule(0)
	for _, want := range []string{"Formation.TVD", "Fracture", "Kill: is", "steps: is 0", "Influx: is missing", "1 gradients for 0 sections", "Friction[0]", "Sections: are missing"} {
		require.ErrorContains(t, err, want)
	}
	b := bullhead()
	b.Formation.TVD += unit.Metre
	_, err = b.Schedule(5)
	require.ErrorContains(t, err, "must end at the formation")
	b = bullhead()
	b.Sections[1].BottomMD = b.Sections[0].BottomMD
	_, err = b.Schedule(5)
	require.ErrorContains(t, err, "Sections[1].BottomMD")
	b = bullhead()
	b.Influx = densityFunc(func(unit.Pressure, unit.Temperature) (unit.Density, error) { return 0, fmt.Errorf("no such gas") })
	b.Temperature, err = hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Celsius(60)}})
	require.NoError(t, err)
	_, err = b.Schedule(5)
	require.ErrorContains(t, err, "no such gas")
}

func ExampleBullhead_Schedule() {
	points, err := bullhead().Schedule(1)
	for _, p := range points {
		fmt.Println(p.Pumped.Rounded(4), p.Shut.Rounded(4), p.Greatest.Rounded(4))
	}
	fmt.Println(err)
	// Output:
	// 0 bbl 2800 psi 5000 psi
	// 89.61 bbl 178.2 psi 2378 psi
	// 115.6 bbl 0 psi 2200 psi
	// <nil>
}
