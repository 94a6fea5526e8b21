package tubular_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// wall and bore return steel pipe by its sizes in inches.
func wall(od, t float64) tubular.Pipe { return bore(od, od-2*t) }

func bore(od, id float64) tubular.Pipe {
	return tubular.Pipe{OD: unit.Length(od) * unit.Inch, ID: unit.Length(id) * unit.Inch, Material: tubular.Steel()}
}

func graded(p tubular.Pipe, yield, tensile unit.Pressure) tubular.Pipe {
	p.Material = p.Material.WithStrength(yield, tensile)
	return p
}

// near holds two numbers together to a relative tolerance.
func near(t *testing.T, want, got, relative float64, what ...any) {
	t.Helper()
	require.LessOrEqual(t, math.Abs(got-want), relative*math.Max(math.Abs(want), math.Abs(got)), "got %v, want %v: %v", got, want, what)
}

func TestGeometryByHand(t *testing.T) {
	p := bore(2.875, 2.441) // 2-7/8 in 6.5 lb/ft
	near(t, 0.217, p.Wall().In(unit.Inch), 1e-12)
	near(t, 2.875/0.217, p.Slenderness(), 1e-12)
	// By hand: 0.785398 · 2.875² = 6.4918, 0.785398 · 2.441² = 4.6798.
	require.InDelta(t, 6.4918, p.OuterArea().In(unit.SquareInch), 5e-5)
	require.InDelta(t, 4.6798, p.InnerArea().In(unit.SquareInch), 5e-5)
	require.InDelta(t, 1.8120, p.SteelArea().In(unit.SquareInch), 5e-5)
	near(t, float64(p.OuterArea()-p.InnerArea()), float64(p.SteelArea()), 1e-14)
	// π/64 (2.875⁴ - 2.441⁴) = 1.6109 (Dawson and Paslay's buckling example, from memory).
	require.InDelta(t, 1.6109, p.SecondMoment().In(unit.InchToTheFourth), 5e-5)
	require.Equal(t, 2*p.SecondMoment(), p.PolarMoment())
	require.Equal(t, p.InnerArea(), p.Capacity())
	casing := bore(7, 6.094)
	near(t, float64(casing.InnerArea()-p.OuterArea()), float64(casing.AnnularCapacity(p)), 1e-14)
	require.Negative(t, float64(p.AnnularCapacity(casing)), "a pipe that does not fit")
	require.True(t, math.IsNaN(float64(tubular.AnnularCapacity(unit.Length(math.NaN()), 0))))
}

func TestFieldConstants(t *testing.T) {
	// (d² - D²)/1029.4 bbl/ft: the field's constant is 1029.411… rounded.
	one := tubular.AnnularCapacity(unit.Inch, 0)
	require.InDelta(t, 1029.4, 1/one.In(unit.BarrelPerFoot), 0.05)
	// API Spec 5CT: 10.69 (D - t) t lb/ft and 0.0246615 (D - t) t kg/m, to all printed digits.
	p := wall(2, 0.5)
	require.InDelta(t, 10.69144, p.PlainEndWeight().In(unit.PoundPerFoot)/(1.5*0.5), 5e-6, "as the doc has it unrounded")
	require.InDelta(t, 10.69, p.PlainEndWeight().In(unit.PoundPerFoot)/(1.5*0.5), 0.005)
	m := tubular.Pipe{OD: 100 * unit.Millimetre, ID: 80 * unit.Millimetre, Material: tubular.Steel()}
	require.InDelta(t, 0.0246615, m.PlainEndWeight().In(unit.KilogramPerMetre)/(90*10), 5e-8)
}

func TestWeights(t *testing.T) {
	p := bore(3.5, 2.992)
	require.Equal(t, p.PlainEndWeight(), p.WeightInAir(), "zero stands for the plain-end weight")
	near(t, float64(p.SteelArea()), float64(p.Displacement()), 1e-14, "plain end displaces its steel")
	near(t, float64(p.OuterArea()), float64(p.ClosedDisplacement()), 1e-14)
	p.Weight = 9.3 * unit.PoundPerFoot
	require.Equal(t, p.Weight, p.WeightInAir())
	require.Greater(t, p.Displacement(), p.SteelArea(), "couplings displace too")
	// What the effective weight leaves out, and how much it is in brine.
	brine := 9.5 * unit.PoundPerGallon
	hangs := float64(p.Weight) * tubular.BuoyancyFactor(brine, p.Material.Density)
	couplings := float64(brine) * 9.80665 * float64(p.Displacement()-p.SteelArea())
	near(t, hangs+couplings, float64(p.BuoyedWeight(brine, brine)), 1e-12)
	require.InDelta(t, 0.006, couplings/float64(p.Weight), 0.003)

	// One fluid, no couplings: buoyancy by areas and by densities agree.
	p.Weight = 0
	mud := 10 * unit.PoundPerGallon
	near(t, float64(p.WeightInAir())*tubular.BuoyancyFactor(mud, p.Material.Density), float64(p.BuoyedWeight(mud, mud)), 1e-12)
	// Lubinski et al. 1962: 2-7/8 in 6.5 lb/ft, 15 lb/gal inside, 7.31 outside: 0.6401 lb/in (from memory).
	l := bore(2.875, 2.441)
	l.Weight = 6.5 * unit.PoundPerFoot
	require.InDelta(t, 0.6401, l.BuoyedWeight(15*unit.PoundPerGallon, 7.31*unit.PoundPerGallon).In(unit.PoundPerInch), 1e-4)
}

func TestSteelModulus(t *testing.T) {
	// G = E/2.6 by hand: 30e6/2.6 = 11.538e6 psi.
	require.InDelta(t, 11.538e6, tubular.Steel().ShearModulus().In(unit.PSI), 500)
}

func TestValidate(t *testing.T) {
	good := graded(bore(3.5, 2.992), 80*unit.KSI, 95*unit.KSI)
	require.NoError(t, good.Validate())
	require.NoError(t, bore(3.5, 2.992).Validate(), "strength may be missing")

	bad := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 3.5 * unit.Inch, Weight: -1,
		Material: tubular.Material{Young: 0, Poisson: 0.5, Density: -2, Yield: -3, Tensile: -4, Expansion: unit.Expansivity(math.Inf(1))}}
	err := bad.Validate()
	for _, field := range []string{"tubular: ID: is 3.5 in", "tubular: Weight: is", "Material.Young", "Material.Poisson: is 0.5", "Material.Density", "Material.Yield", "Material.Tensile", "Material.Expansion"} {
		require.ErrorContains(t, err, field)
	}
	weak := good
	weak.Material.Tensile = 70 * unit.KSI
	require.ErrorContains(t, weak.Validate(), "at least the yield strength of 80000 psi")
	for _, x := range []float64{math.NaN(), math.Inf(1), 0, -1} {
		p := good
		p.OD = unit.Length(x)
		require.ErrorContains(t, p.Validate(), "tubular: OD: is")
		p = good
		p.ID = unit.Length(x)
		require.ErrorContains(t, p.Validate(), "tubular: ID: is")
	}
	require.Error(t, tubular.Pipe{}.Validate(), "the zero value is not a pipe")
}

func TestDimensions(t *testing.T) {
	p := graded(bore(3.5, 2.992), 80*unit.KSI, 95*unit.KSI)
	dimension.Check(t, dimension.Free, tubular.Pipe.SteelArea, p)
	dimension.Check(t, dimension.Free, tubular.Pipe.SecondMoment, p)
	dimension.Check(t, dimension.Gravity, tubular.Pipe.PlainEndWeight, p)
	dimension.Check(t, dimension.Gravity, tubular.Pipe.BuoyedWeight, p, 9*unit.PoundPerGallon, 8*unit.PoundPerGallon)
	dimension.Check(t, dimension.Gravity, tubular.Pipe.Displacement, p)
	dimension.Check(t, dimension.Free, tubular.Pipe.InternalYield, p)
	dimension.Check(t, dimension.Free, tubular.Pipe.YieldOpenEnds, p, 0.875)
	dimension.Check(t, dimension.Free, tubular.Pipe.YieldClosedEnds, p, 0.875)
	dimension.Check(t, dimension.Free, tubular.Pipe.BodyYield, p)
	dimension.Check(t, dimension.Free, tubular.Pipe.NonUpset, p, 0.05*unit.Inch)
	dimension.Check(t, dimension.Free, tubular.CouplingThread, 4*unit.Inch, 3*unit.Inch, 95*unit.KSI)
	dimension.Check(t, dimension.Free, tubular.EquivalentYield, 80*unit.KSI, 20*unit.KSI)
	l := tubular.Load{Axial: 100 * unit.Kilopound, Inside: 5 * unit.KSI, Outside: 2 * unit.KSI, Curvature: 5 * unit.DegreePer100Feet, Torque: 1000 * unit.FootPoundForce}
	dimension.Check(t, dimension.Free, func(p tubular.Pipe, l tubular.Load) (a, b tubular.WallStress) {
		s := p.Stresses(l)
		return s.Inner, s.Outer
	}, p, l)
	dimension.Check(t, dimension.Free, tubular.Pipe.EffectiveForce, p, l)
	dimension.Check(t, dimension.Free, tubular.Pipe.HelixCurvature, p, 2*unit.Inch, -10*unit.Kilopound)
	dimension.Check(t, dimension.Free, tubular.Pipe.Stretch, p, 10*unit.Kilopound, 9000*unit.Foot)
	dimension.Check(t, dimension.Free, tubular.Pipe.FreeLength, p, 20*unit.Inch, 25*unit.Kilopound)
	dimension.Check(t, dimension.Free, tubular.Pipe.PullFor, p, 20*unit.Inch, 5000*unit.Foot)
	dimension.Check(t, dimension.Free, tubular.Pipe.ThermalStretch, p, 5000*unit.Foot, 50*unit.FahrenheitDifference)
	dimension.Check(t, dimension.Gravity, func(p tubular.Pipe, length unit.Length, fluid unit.Density, pull unit.Force) (a, b, c, d, e unit.Length) {
		s, err := tubular.Hanging{Sections: []tubular.HangingSection{{Pipe: p, Length: length}, {Pipe: p, Length: length}}, Fluid: fluid, Pull: pull}.Stretch()
		require.NoError(t, err)
		return s.Weight, s.Pressure, s.Ballooning, s.Thermal, s.Pull
	}, p, 4000*unit.Foot, 9*unit.PoundPerGallon, 3*unit.Kilopound)
}

func ExamplePipe() {
	// 2-7/8 in 6.5 lb/ft tubing in 7 in 32 lb/ft casing.
	tubing := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	casing := tubular.Pipe{OD: 7 * unit.Inch, ID: 6.094 * unit.Inch, Weight: 32 * unit.PoundPerFoot, Material: tubular.Steel()}
	fmt.Println(tubing.Wall().Rounded(3), tubing.SteelArea().Rounded(4))
	fmt.Printf("capacity %.5f bbl/ft, annulus %.5f bbl/ft\n", tubing.Capacity().In(unit.BarrelPerFoot), casing.AnnularCapacity(tubing).In(unit.BarrelPerFoot))
	fmt.Println(tubing.PlainEndWeight().Rounded(4))
	// Output:
	// 0.217 in 1.812 in2
	// capacity 0.00579 bbl/ft, annulus 0.02805 bbl/ft
	// 6.167 lb/ft
}

func ExamplePipeOfWall() {
	p := tubular.PipeOfWall(7*unit.Inch, 0.408*unit.Inch, tubular.Steel())
	fmt.Println(p.ID.Rounded(5), p.WeightInAir().Rounded(4))
	// Output: 6.184 in 28.76 lb/ft
}
