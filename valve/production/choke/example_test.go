package choke_test

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
)

// Hot water of the standard's example 1: 0.94424 (IEC 60534-2-1).
func ExampleCriticalPressureRatio() {
	fmt.Printf("%.5f\n", choke.CriticalPressureRatio(70.1*unit.Kilopascal, 22120*unit.Kilopascal))
	// Output: 0.94424
}

// 12031 is printed for Cd of one in lb/gal, gal/min and in² (Applied Drilling
// Circulation Systems, Eq. 2.86); exact units give 12034.
func ExampleLiquidDrop() {
	c := choke.Coefficient(1, 1*unit.SquareInch)
	drop := choke.LiquidDrop(c, 1*unit.PoundPerGallon, 1*unit.GallonPerMinute)
	fmt.Printf("1/%.0f psi\n", 1/drop.In(unit.PSI))
	// Output: 1/12034 psi
}

func ExampleLiquidRate() {
	fmt.Println(choke.LiquidRate(10*unit.Cv, 999.1026*unit.KilogramPerCubicMetre, 100*unit.PSI).In(unit.GallonPerMinute))
	// Output: 100
}

func ExampleOpening() {
	fmt.Println(choke.Opening(4.034*unit.Cv, 0.95).Rounded(4))
	// Output: 0.1118 in2
}

// v = 0.3208·q/A: 100 gal/min through 0.5 in² is 64.17 ft/s
// (ibid., Eq. 2.87 prints 0.32086).
func ExampleJetVelocity() {
	mud := 10 * unit.PoundPerGallon
	drop := choke.LiquidDrop(choke.Coefficient(0.95, 0.5*unit.SquareInch), mud, 100*unit.GallonPerMinute)
	fmt.Println(choke.JetVelocity(0.95, mud, drop).Rounded(4), "at a drop of", drop.Rounded(4))
	// Output: 3850 ft/min at a drop of 36.83 psi
}

func ExampleSeries() {
	fmt.Println(choke.Series(10*unit.Cv, 10*unit.Cv).Rounded(4), choke.Parallel(10*unit.Cv, 10*unit.Cv).Rounded(4))
	// Output: 7.071 Cv 20 Cv
}

func ExampleErosionalRate() {
	bore := choke.Hole(1, 2.992*unit.Inch)
	q := choke.ErosionalRate(choke.ErosionContinuous, 50*unit.PoundPerCubicFoot, bore)
	fmt.Println(q.Rounded(5), choke.ErosionalArea(choke.ErosionContinuous, 50*unit.PoundPerCubicFoot, q).Rounded(5))
	// Output: 10626 bbl/d 7.0309 in2
}

func ExampleTrim_Liquid() {
	t := choke.Trim{Coefficient: 4 * unit.Cv, Recovery: 0.9}
	f, err := t.Liquid(choke.UpstreamLiquid{Density: 850}, 3400*unit.PSI, 3000*unit.PSI)
	fmt.Println(f.Rate.Rounded(5), "choked:", f.Choked, err)
	_, err = t.Liquid(choke.UpstreamLiquid{Density: 850}, 2900*unit.PSI, 3000*unit.PSI)
	fmt.Println(err)
	// Output:
	// 2973.7 bbl/d choked: false <nil>
	// choke: no flow in this direction: upstream 2900 psi is below downstream 3000 psi
}

func ExampleTrim_LiquidDrop() {
	t := choke.Trim{Coefficient: 4 * unit.Cv, Recovery: 0.9}
	f, err := t.LiquidDrop(choke.UpstreamLiquid{Density: 850}, 3400*unit.PSI, 3000*unit.BarrelPerDay)
	fmt.Println(f.Drop.Rounded(4), err)
	_, err = t.LiquidDrop(choke.UpstreamLiquid{Density: 850}, 3400*unit.PSI, 9000*unit.BarrelPerDay)
	fmt.Println(err)
	// Output:
	// 407.1 psi <nil>
	// choke: choked below the wanted rate: 9000 bbl/d would take a drop of 3663.9 psi; from 3400 psi upstream this choke of 4 Cv chokes at a drop of 2765.9 psi
}

// The standard's example 3: carbon dioxide, reducers at both ends. Kv 72.587 is
// printed after one round of the fittings' factors; converged it is 71.0.
func ExampleTrim_SizeGas() {
	const molarMass, molarGas = 44.01e-3, 8.314462618 // kg/mol, J/(mol·K)
	rho := unit.Density(680e3 * molarMass / (molarGas * 433 * 0.988))
	mass := unit.MassRate(3800.0 / 3600 * 101325 * molarMass / (molarGas * 273.15))
	t := choke.Trim{GasRatio: 0.6, Bore: 50 * unit.Millimetre, Upstream: 80 * unit.Millimetre, Downstream: 100 * unit.Millimetre}
	f, err := t.SizeGas(choke.UpstreamGas{Density: rho, HeatRatio: 1.3}, absolute(680*kPa), absolute(310*kPa), mass)
	fmt.Printf("Kv %.1f, FP %.4f, Y %.4f, %v\n", f.Coefficient.In(unit.Kv), f.PipingFactor, f.Expansion, err)
	// Output: Kv 71.0, FP 0.8666, Y 0.6877, <nil>
}

func ExampleNozzle() {
	f, err := choke.Nozzle(choke.UpstreamGas{Density: 60, HeatRatio: 1.3}, 0.95, choke.Hole(1, 0.25*unit.Inch), 1300*unit.PSI, 400*unit.PSI)
	fmt.Println(f.Mass.Rounded(4), "critical:", f.Critical, err)
	// Output: 1.032 lb/s critical: true <nil>
}

func ExampleCriticalRatio() {
	fmt.Printf("%.4f\n", choke.CriticalRatio(1.4))
	// Output: 0.5283
}

// 0.5990326… is printed in the documentation of python3-fluids 1.0.22.
func ExampleOrifice_Discharge() {
	o := choke.Orifice{Pipe: 73.91 * unit.Millimetre, Bore: 22.2 * unit.Millimetre, Taps: choke.FlangeTaps}
	fmt.Printf("%.6f\n", o.Discharge(4*0.12/(math.Pi*0.07391*1.85e-5)))
	// Output: 0.599033
}

func ExamplePosition_Shut() {
	table := choke.Table{{Name: "shut"}, {Name: "open", Travel: 1, Coefficient: 10 * unit.Cv}}
	for _, p := range table {
		fmt.Println(p.Name, p.Shut())
	}
	// Output:
	// shut true
	// open false
}
