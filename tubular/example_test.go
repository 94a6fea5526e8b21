package tubular_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

func ExampleAnnularCapacity() {
	// Lapeyrouse, chapter 1: 12-1/4 in hole, 5 in pipe: 0.12149 bbl/ft, 0.682097 ft3/ft.
	a := tubular.AnnularCapacity(12.25*unit.Inch, 5*unit.Inch)
	fmt.Printf("%.5f bbl/ft, %.4f ft3/ft\n", a.In(unit.BarrelPerFoot), a.In(unit.SquareFoot))
	// Output: 0.12149 bbl/ft, 0.6821 ft3/ft
}

func ExampleBuoyancyFactor() {
	// The table prints 0.847 for 10 lb/gal.
	fmt.Printf("%.3f\n", tubular.BuoyancyFactor(10*unit.PoundPerGallon, 65.5*unit.PoundPerGallon))
	// Output: 0.847
}

func ExamplePipe_BuoyedWeight() {
	// Lubinski et al. 1962, 2-7/8 in tubing with 15 lb/gal inside, 7.31 outside.
	p := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	fmt.Printf("%.4f lb/in\n", p.BuoyedWeight(15*unit.PoundPerGallon, 7.31*unit.PoundPerGallon).In(unit.PoundPerInch))
	// Output: 0.6401 lb/in
}

func ExamplePrepareCollapse() {
	// API Bul 5C3 prints A = 3.071, B = 0.0667, C = 1955 for 80,000 psi.
	c, err := tubular.PrepareCollapse(80 * unit.KSI)
	fmt.Printf("%.3f %.4f %.0f psi, elastic above D/t %.2f, %v\n", c.A, c.B, c.C.In(unit.PSI), c.TransitionElastic, err)
	// Output: 3.071 0.0667 1955 psi, elastic above D/t 31.02, <nil>
}

func ExampleEquivalentYield() {
	fmt.Println(tubular.EquivalentYield(110*unit.KSI, 11*unit.KSI).Rounded(6))
	// Output: 104087 psi
}

func ExamplePipe_Buttress() {
	// 4-1/2 in 10.5 lb/ft J55: 203,000 lbf in the tables.
	p := tubular.Pipe{OD: 4.5 * unit.Inch, ID: 4.052 * unit.Inch, Material: tubular.Steel().WithStrength(55*unit.KSI, 75*unit.KSI)}
	fmt.Println(p.Buttress().Rounded(3))
	// Output: 202754 lbf
}

func ExampleCouplingThread() {
	fmt.Println(tubular.CouplingThread(5*unit.Inch, 4.5*unit.Inch, 95*unit.KSI).Rounded(4))
	// Output: 336690 lbf
}

func ExamplePipe_NonUpset() {
	p := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Material: tubular.Steel().WithStrength(55*unit.KSI, 75*unit.KSI)}
	fmt.Println(p.NonUpset(0.0556 * unit.Inch).Rounded(4))
	// Output: 72576 lbf
}

func ExamplePipe_Less() {
	p := tubular.Pipe{OD: 7 * unit.Inch, ID: 6.276 * unit.Inch, Weight: 26 * unit.PoundPerFoot, Material: tubular.Steel()}
	worn, err := p.Less(tubular.Allowance{Inside: 0.062 * unit.Inch})
	fmt.Println(worn.Wall().Rounded(3), worn.Weight.Rounded(4), err)
	// Output: 0.3 in 21.8 lb/ft <nil>
}

func ExamplePipe_At() {
	p := tubular.Pipe{OD: 7 * unit.Inch, ID: 6.276 * unit.Inch, Material: tubular.Steel().WithStrength(80*unit.KSI, 95*unit.KSI)}
	hot, err := p.At(unit.Fahrenheit(300), tubular.UsualDerating())
	fmt.Println(hot.Material.Yield.Rounded(5), err)
	// Output: 74480 psi <nil>
}

func ExamplePipe_HelixCurvature() {
	p := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Material: tubular.Steel()}
	κ := p.HelixCurvature(1.61*unit.Inch, -20*unit.Kilopound)
	fmt.Println(κ.Rounded(3), p.Stresses(tubular.Load{Curvature: κ}).Outer.Bending.Rounded(4))
	// Output: 22.9 deg/100ft 14367 psi
}

func ExamplePipe_FreeLength() {
	// Lapeyrouse: the free point constant of 2-7/8 in 6.5 lb/ft tubing is 4,530.
	p := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Material: tubular.Steel()}
	fmt.Println(p.FreeLength(unit.Inch, unit.Kilopound).Rounded(4))
	// Output: 4530 ft
}

func ExamplePipe_ThermalStretch() {
	// 10,000 ft cooled by 20 °F: 16.6 in shorter.
	p := tubular.Pipe{Material: tubular.Steel()}
	fmt.Printf("%.2f in\n", p.ThermalStretch(10_000*unit.Foot, -20*unit.FahrenheitDifference).In(unit.Inch))
	// Output: -16.56 in
}

func ExamplePullToStretch() {
	p := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Material: tubular.Steel()}
	pull, err := tubular.PullToStretch([]tubular.HangingSection{{Pipe: p, Length: 9000 * unit.Foot}}, 13.9*unit.Inch)
	fmt.Println(pull.Rounded(3), err)
	// Output: 10001 lbf <nil>
}

func ExampleMarginOfOverpull() {
	// 90 % of 436,000 lbf over a hook load of 270,000: 122,000 lbf.
	fmt.Println(tubular.MarginOfOverpull(436*unit.Kilopound, 0.9, 270*unit.Kilopound).Rounded(6))
	// Output: 122400 lbf
}
