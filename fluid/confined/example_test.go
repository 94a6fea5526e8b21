package confined_test

import (
	"fmt"
	"strings"
	"time"

	"completion.example/fluid"
	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
)

func ExampleTube_OutsideCompliance() {
	tubing := confined.Tube{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28}
	fmt.Println(tubing.OutsideCompliance(confined.EndsFixed).Rounded(3))
	// Output: 3.71e-07 1/psi
}

func ExampleThinCompliance() {
	// D/t = 10, E = 200 GPa.
	fmt.Printf("%.2e 1/MPa\n", confined.ThinCompliance(10, 2e5*unit.Megapascal).In(unit.PerMegapascal))
	// Output: 5.00e-05 1/MPa
}

func ExampleMixed() {
	// M. Turri (2003) prints 3.58e-6 1/psi, which his own terms don't add up to.
	c := confined.Mixed([]float64{0.2, 0.7, 0.1}, []unit.Compressibility{3e-6 * unit.PerPSI, 5e-6 * unit.PerPSI, 0.2e-6 * unit.PerPSI})
	fmt.Println(c.Rounded(3))
	// Output: 4.12e-06 1/psi
}

func ExampleLinearLiquid_Density() {
	l := confined.LinearLiquid{Reference: 9.5 * unit.PoundPerGallon, Temperature: unit.Fahrenheit(70), Compressibility: 2e-6 * unit.PerPSI, Expansivity: 2.5e-4 * unit.PerFahrenheit}
	ρ, err := l.Density(5000*unit.PSI, unit.Fahrenheit(200))
	fmt.Println(ρ.Rounded(4), err)
	// Output: 9.289 lb/gal <nil>
}

func ExampleSpace_Compliance() {
	tubing := confined.Tube{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28}
	s := confined.Space{Outer: confined.Tube{OD: 9.625 * unit.Inch, ID: 8.681 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28}, Inner: &tubing}
	fmt.Println(s.Compliance().Rounded(3), s.Area().In(unit.BarrelPerFoot))
	// Output: 8.14e-07 1/psi 0.06130648161020642
}

func ExampleTrapped_BleedVolume() {
	// Water kept in a rigid space from 20 to 80 °C at 10 MPa absolute: the densities
	// of IAPWS-95 make 0.27168 m³ for 10 m³.
	p := 10*unit.Megapascal - unit.Atmosphere
	t := confined.Trapped{
		Space:    confined.Space{Outer: confined.Tube{OD: 7 * unit.Inch, ID: 6 * unit.Inch, Rigid: true}},
		Fills:    []confined.Fill{{Name: "water", Fluid: fluid.Water{}, Volume: 10 * unit.CubicMetre, From: unit.Celsius(20), To: unit.Celsius(80)}},
		Pressure: p,
	}
	v, err := t.BleedVolume(p)
	fmt.Printf("%.4f m3, %v\n", v.In(unit.CubicMetre), err)
	// Output: 0.2716 m3, <nil>
}

func ExamplePressureUp_Solve() {
	u := confined.PressureUp{
		Space: confined.Space{Outer: confined.Tube{OD: 9.625 * unit.Inch, ID: 8.681 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28}},
		Fluid: fluid.Water{}, Volume: 336 * unit.Barrel, To: 3000 * unit.PSI,
		Temperature: unit.Fahrenheit(120), Supply: unit.Fahrenheit(70),
	}
	p, err := u.Solve()
	fmt.Printf("%.2f bbl, of which the casing takes %.2f, %v\n", p.Volume.In(unit.Barrel), p.Ballooning.In(unit.Barrel), err)
	// Output: 3.59 bbl, of which the casing takes 0.63, <nil>
}

func ExampleTestVolume() {
	// M. Turri (2003): 0.97 bbl.
	fmt.Printf("%.2f bbl\n", confined.TestVolume(3.58e-6*unit.PerPSI, 180*unit.Barrel, 1500*unit.PSI).In(unit.Barrel))
	// Output: 0.97 bbl
}

func ExampleSystem_LeakRate() {
	s := confined.System{{Name: "annulus", Volume: 550 * unit.Barrel, Fluid: 2.8e-6 * unit.PerPSI, Walls: 0.8e-6 * unit.PerPSI}}
	fmt.Printf("%.1f cm3/min\n", s.LeakRate(50*unit.PSI, 30*time.Minute).In(unit.CubicCentimetrePerMinute))
	// Output: 524.7 cm3/min
}

func ExamplePreset() {
	c, err := confined.Preset("us-offshore-casing")
	fmt.Println(c.Source, c.Allowed(5000*unit.PSI).Rounded(3), err)
	// Output: 30 CFR 250.721(f): no more than 10 % decline in 30 minutes 500 psi <nil>
}

func ExampleReadRecord() {
	r, err := confined.ReadRecord(strings.NewReader("time/min,pressure/psi\n0,5000\n15,4985\n"))
	fmt.Println(len(r), r[1].At, r[1].Pressure, err)
	// Output: 2 15m0s 4985 psi <nil>
}
