package hydrostatics_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

func TestGradientsAreHomogeneous(t *testing.T) {
	rho, h, p := 9.7*unit.PoundPerGallon, 8123*unit.Foot, 4321*unit.PSI
	dimension.Check(t, dimension.Gravity, hydrostatics.Pressure, rho, h)
	dimension.Check(t, dimension.Gravity, hydrostatics.Gradient, rho)
	dimension.Check(t, dimension.Gravity, hydrostatics.Density, 0.61*unit.PSIPerFoot)
	dimension.Check(t, dimension.Free, hydrostatics.PressureOf, 0.61*unit.PSIPerFoot, h)
	dimension.Check(t, dimension.Free, hydrostatics.GradientOf, p, h)
	dimension.Check(t, dimension.Gravity, hydrostatics.EquivalentDensity, p, h)
	dimension.Check(t, dimension.Gravity, hydrostatics.Head, p, rho)
	dimension.Check(t, dimension.Free, hydrostatics.SpecificGravity, rho, hydrostatics.PureWater)
	dimension.Check(t, dimension.Gravity, hydrostatics.AllowableSurfacePressure, 0.8*unit.PSIPerFoot, rho, h)
	dimension.Check(t, dimension.Gravity, hydrostatics.AllowableDensity, 0.8*unit.PSIPerFoot, p, h)
	dimension.Check(t, dimension.Gravity, hydrostatics.ShutIn.KillDensity, hydrostatics.ShutIn{Pressure: p, Density: rho, TVD: h}, 200*unit.PSI)
	dimension.Check(t, dimension.Gravity, hydrostatics.Formation.KillDensity, hydrostatics.Formation{Pressure: p, TVD: h}, 200*unit.PSI)
	dimension.Check(t, dimension.Free, hydrostatics.Slug.Volume, hydrostatics.Slug{Mud: rho, Pill: 1.2 * rho, Capacity: 0.0142 * unit.BarrelPerFoot}, 184*unit.Foot)
	dimension.Check(t, dimension.Free, hydrostatics.SlugDensity, rho, 1000*unit.Foot, 184*unit.Foot)
}

func TestGradientInverses(t *testing.T) {
	for _, ppg := range []float64{0.5, 6.8, 8.34, 9.2, 14, 19.2} {
		rho := unit.Density(ppg) * unit.PoundPerGallon
		for _, ft := range []float64{1, 5000, 18304} {
			h := unit.Length(ft) * unit.Foot
			p := hydrostatics.Pressure(rho, h)
			require.InEpsilon(t, float64(rho), float64(hydrostatics.EquivalentDensity(p, h)), 1e-15)
			require.InEpsilon(t, float64(h), float64(hydrostatics.Head(p, rho)), 1e-15)
			require.InEpsilon(t, float64(p), float64(hydrostatics.PressureOf(hydrostatics.Gradient(rho), h)), 1e-15)
			require.InEpsilon(t, float64(hydrostatics.Gradient(rho)), float64(hydrostatics.GradientOf(p, h)), 1e-15)
			require.Equal(t, -p, hydrostatics.Pressure(rho, -h), "upwards pressure is lost")
		}
		require.InEpsilon(t, float64(rho), float64(hydrostatics.Density(hydrostatics.Gradient(rho))), 1e-15)
		require.InEpsilon(t, float64(rho), float64(hydrostatics.DensityOfAPIGravity(hydrostatics.APIGravity(rho))), 1e-14)
		sg := hydrostatics.SpecificGravity(rho, hydrostatics.PureWater)
		require.InEpsilon(t, float64(rho), float64(hydrostatics.DensityOfSpecificGravity(sg, hydrostatics.PureWater)), 1e-15)
	}
}

// One lb/gal is 4/77 psi/ft: a foot of a square inch is 12 in³, and a gallon
// has 231 in³, so a pound per gallon weighs 12/231 lbf there.
func TestPoundPerGallonIsFour77ths(t *testing.T) {
	require.InEpsilon(t, 4./77, hydrostatics.Gradient(unit.PoundPerGallon).In(unit.PSIPerFoot), 1e-15)
}

// Water has 10 °API by definition of the scale; lighter oils have more.
func TestAPIGravityOfWater(t *testing.T) {
	require.InDelta(t, 10, hydrostatics.APIGravity(hydrostatics.WaterAt60F), 1e-13)
	require.Greater(t, hydrostatics.APIGravity(0.85*hydrostatics.WaterAt60F), 30.)
}

func TestClosedFormulasPassNaN(t *testing.T) {
	nan := math.NaN()
	require.True(t, math.IsNaN(float64(hydrostatics.Pressure(unit.Density(nan), 1))))
	require.True(t, math.IsNaN(float64(hydrostatics.EquivalentDensity(1, unit.Length(nan)))))
	require.True(t, math.IsNaN(hydrostatics.APIGravity(unit.Density(nan))))
	require.True(t, math.IsNaN(float64(hydrostatics.AllowableSurfacePressure(unit.Gradient(nan), 1, 1))))
}
