package hydrostatics_test

import (
	"errors"
	"fmt"
	"time"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// A 14 lb/gal mud at 18,304 ft. The inquiry into the Macondo blowout printed
// 13,321 psi with 0.433/8.33 psi/ft per lb/gal, 0.063 % above the exact factor
// (National Academy of Engineering 2012, Appendix D).
func ExamplePressure() {
	p := hydrostatics.Pressure(14*unit.PoundPerGallon, 18304*unit.Foot)
	fmt.Println(p.Rounded(5))
	// Output: 13312 psi
}

// 11,892 psi at 18,212 ft is 12.57 lb/gal (ibid.).
func ExampleEquivalentDensity() {
	fmt.Println(hydrostatics.EquivalentDensity(11892*unit.PSI, 18212*unit.Foot).Rounded(4))
	// Output: 12.57 lb/gal
}

// 100 lb/ft³ is 0.6944 psi/ft (Lapeyrouse 2nd ed., ch. 1).
func ExampleGradient() {
	fmt.Println(hydrostatics.Gradient(100 * unit.PoundPerCubicFoot).Rounded(4))
	// Output: 0.6944 psi/ft
}

// 0.4992 psi/ft is 9.6 lb/gal with the source's 0.052 (Lapeyrouse 2nd ed., ch. 1).
func ExampleDensity() {
	fmt.Println(hydrostatics.Density(0.4992 * unit.PSIPerFoot).Rounded(3))
	// Output: 9.61 lb/gal
}

func ExampleHead() {
	fmt.Println(hydrostatics.Head(100*unit.PSI, 8.34*unit.PoundPerGallon).Rounded(4))
	// Output: 230.8 ft
}

func ExamplePressureOf() {
	fmt.Println(hydrostatics.PressureOf(0.624*unit.PSIPerFoot, 8500*unit.Foot).Rounded(5)) // 5304 psi, Lapeyrouse ch. 1
	// Output: 5304 psi
}

func ExampleGradientOf() {
	fmt.Println(hydrostatics.GradientOf(5304*unit.PSI, 8500*unit.Foot).Rounded(4))
	// Output: 0.624 psi/ft
}

func ExampleAPIGravity() {
	rho := hydrostatics.DensityOfSpecificGravity(0.85, hydrostatics.WaterAt60F)
	fmt.Printf("SG %.2f is %.2f degAPI\n", hydrostatics.SpecificGravity(rho, hydrostatics.WaterAt60F), hydrostatics.APIGravity(rho))
	fmt.Printf("%.3f kg/m3\n", hydrostatics.DensityOfAPIGravity(10).In(unit.KilogramPerCubicMetre))
	// Output:
	// SG 0.85 is 34.97 degAPI
	// 999.016 kg/m3
}

// A build from 15° at N20E to 25° at N45E over 100 ft. The worked example
// prints 94.01, 27.22 and 19.45 ft, and 12.95°/100 ft.
func ExampleCourseBetween() {
	c := hydrostatics.CourseBetween(
		hydrostatics.Station{MD: 3500 * unit.Foot, Inclination: 15 * unit.Degree, Azimuth: 20 * unit.Degree},
		hydrostatics.Station{MD: 3600 * unit.Foot, Inclination: 25 * unit.Degree, Azimuth: 45 * unit.Degree},
	)
	fmt.Printf("%.2f, %.2f, %.2f ft\n", c.TVD.In(unit.Foot), c.North.In(unit.Foot), c.East.In(unit.Foot))
	fmt.Println(c.DoglegSeverity.Rounded(4))
	// Output:
	// 94.01, 27.22, 19.45 ft
	// 12.95 deg/100ft
}

func ExampleNewPath() {
	p, err := hydrostatics.NewPath([]hydrostatics.Station{
		{MD: 3000 * unit.Foot},
		{MD: 6000 * unit.Foot, Inclination: 60 * unit.Degree, Azimuth: 45 * unit.Degree},
		{MD: 10000 * unit.Foot, Inclination: 60 * unit.Degree, Azimuth: 45 * unit.Degree},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	at, _ := p.At(8000 * unit.Foot)
	out, azimuth := at.Closure()
	fmt.Println(at.TVD.Rounded(5), out.Rounded(5), azimuth.Rounded(3))
	_, err = p.At(11000 * unit.Foot)
	fmt.Println(errors.Is(err, hydrostatics.ErrOutsidePath))
	// Output:
	// 6481 ft 3164.4 ft 45 deg
	// true
}

// A hole that rises past level meets the same depth twice.
func ExamplePath_MDs() {
	p, _ := hydrostatics.NewPath([]hydrostatics.Station{{MD: 1000}, {MD: 2000, Inclination: 100 * unit.Degree}, {MD: 2500, Inclination: 100 * unit.Degree}})
	for _, md := range p.MDs(1570) {
		fmt.Printf("%.1f m\n", md.In(unit.Metre))
	}
	// Output:
	// 1841.8 m
	// 1958.2 m
}

func ExampleGeothermal() {
	p, _ := hydrostatics.Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.5 * unit.FahrenheitPer100Feet}.Profile(12000 * unit.Foot)
	fmt.Println(p.At(10000 * unit.Foot).Rounded(4))
	// Output: 220 degF
}

func ExampleFlowing_Producing() {
	ground, _ := hydrostatics.Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.5 * unit.FahrenheitPer100Feet}.Profile(10000 * unit.Foot)
	flow := hydrostatics.Flowing{Ground: ground, Inlet: ground.At(10000 * unit.Foot), BottomTVD: 10000 * unit.Foot, Relaxing: 5000 * unit.Foot}
	p, _ := flow.Producing(0.01)
	fmt.Println("at the wellhead", p.At(0).Rounded(3)) // 70 + 75·(1 − e⁻²)
	// Output: at the wellhead 135 degF
}

func ExampleHeatExchange_RelaxationDistance() {
	a, err := hydrostatics.HeatExchange{
		Rate: 10 * unit.KilogramPerSecond, SpecificHeat: 1 * unit.BtuPerPoundFahrenheit,
		Radius: 62 * unit.Millimetre, Transfer: 30 * unit.WattPerSquareMetreKelvin, Hole: 108 * unit.Millimetre,
		Conductivity: 2.4 * unit.WattPerMetreKelvin, Diffusivity: 1.03 * unit.SquareMillimetrePerSecond,
		Time: 75 * 24 * time.Hour,
	}.RelaxationDistance()
	fmt.Printf("%.0f m %v\n", a.In(unit.Metre), err)
	// Output: 13536 m <nil>
}

func ExampleThermalTime() {
	fmt.Printf("%.3f\n", hydrostatics.ThermalTime(100))
	// Output: 2.725
}

// The annulus of a cementing exercise: 5,681 psi is printed with 0.052 psi/ft
// per lb/gal (PE petroleum exam review, Pumping 2021-29).
func ExampleNewColumn() {
	mud := func(ppg float64) hydrostatics.Fluid {
		return hydrostatics.Incompressible(unit.Density(ppg) * unit.PoundPerGallon)
	}
	c, err := hydrostatics.NewColumn([]hydrostatics.Layer{
		{Fluid: mud(10), TopTVD: 0, BottomTVD: 7000 * unit.Foot},
		{Fluid: mud(8), TopTVD: 7000 * unit.Foot, BottomTVD: 7500 * unit.Foot},
		{Fluid: mud(12.5), TopTVD: 7500 * unit.Foot, BottomTVD: 9000 * unit.Foot},
		{Fluid: mud(16.5), TopTVD: 9000 * unit.Foot, BottomTVD: 10000 * unit.Foot},
	}, nil, hydrostatics.Reference{})
	if err != nil {
		fmt.Println(err)
		return
	}
	p, _ := c.At(10000 * unit.Foot)
	rho, _ := c.EquivalentDensity(10000 * unit.Foot)
	z, _ := c.Depth(3000 * unit.PSI)
	fmt.Println(p.Rounded(4), rho.Rounded(4), z.Rounded(4))
	// Output: 5675 psi 10.92 lb/gal 5775 ft
}

func ExampleColumn_Carry() {
	brine := hydrostatics.SlightlyCompressible{
		Reference: 9.2 * unit.PoundPerGallon, Temperature: unit.Fahrenheit(70),
		Compressibility: 2.7e-6 * unit.PerPSI, Expansivity: 2.5e-4 * unit.PerFahrenheit,
	}
	ground, _ := hydrostatics.Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.5 * unit.FahrenheitPer100Feet}.Profile(12000 * unit.Foot)
	c, _ := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: brine, BottomTVD: 12000 * unit.Foot}}, ground, hydrostatics.Reference{})
	for _, surface := range []unit.Pressure{0, 3000 * unit.PSI} {
		p, _ := c.Carry(surface, 0, 12000*unit.Foot)
		fmt.Println(surface, "at surface:", (p - surface).Rounded(5), "of column")
	}
	// Output:
	// 0 psi at surface: 5650.8 psi of column
	// 3000 psi at surface: 5697.1 psi of column
}

func ExampleLayersAlong() {
	p, _ := hydrostatics.NewPath([]hydrostatics.Station{{MD: 1000}, {MD: 1600, Inclination: 60 * unit.Degree}, {MD: 3000, Inclination: 60 * unit.Degree}})
	layers, _ := hydrostatics.LayersAlong(p, []hydrostatics.MeasuredLayer{
		{Fluid: hydrostatics.Incompressible(850), TopMD: 0, BottomMD: 2000},
		{Fluid: hydrostatics.Incompressible(1100), TopMD: 2000, BottomMD: 3000},
	})
	fmt.Printf("%.1f m, %.1f m\n", layers[0].BottomTVD.In(unit.Metre), layers[1].BottomTVD.In(unit.Metre))
	// Output: 1696.2 m, 2196.2 m
}

func ExampleFormation_KillDensity() {
	// 4690 psi at 10,000 ft with 250 psi overbalance: 9.5 lb/gal (Well Control
	// for Completions and Interventions, 2018, p. 194).
	f := hydrostatics.Formation{Pressure: 4690 * unit.PSI, TVD: 10000 * unit.Foot}
	fmt.Println(f.KillDensity(250 * unit.PSI).Rounded(2))
	fmt.Println(f.Overbalance(hydrostatics.Pressure(9.0*unit.PoundPerGallon, f.TVD)).Rounded(2))
	// Output:
	// 9.5 lb/gal
	// -15 psi
}

func ExampleShutIn() {
	s := hydrostatics.ShutIn{Pressure: 450 * unit.PSI, Density: 12 * unit.PoundPerGallon, TVD: 9500 * unit.Foot}
	fmt.Println(s.FormationPressure().Rounded(4), s.KillDensity(0).Rounded(4))
	// Output: 6372 psi 12.91 lb/gal
}

func ExampleCushion_Length() {
	c := hydrostatics.Cushion{
		Formation: hydrostatics.Formation{Pressure: 5000 * unit.PSI, TVD: 10000 * unit.Foot}, Underbalance: 500 * unit.PSI,
		Heavy: hydrostatics.Incompressible(9.2 * unit.PoundPerGallon),
	}
	a, _ := c.Length()
	fmt.Println("fluid level", a.LevelTVD.Rounded(4))
	c.Light = hydrostatics.Incompressible(8.5 * unit.PoundPerGallon)
	c.Underbalance = 1000 * unit.PSI
	_, err := c.Length()
	fmt.Println(errors.Is(err, hydrostatics.ErrNoBalance))
	fmt.Println(err)
	// Output:
	// fluid level 584.2 ft
	// true
	// hydrostatics: 4000 psi is wanted at the formation; without the light fluid it is 4779.22 psi, with it all the way down 4415.58 psi: no balance possible
}

func ExampleCushion_Pressure() {
	c := hydrostatics.Cushion{
		Formation: hydrostatics.Formation{Pressure: 5000 * unit.PSI, TVD: 10000 * unit.Foot}, Underbalance: 500 * unit.PSI,
		Light: hydrostatics.Incompressible(1.2 * unit.PoundPerGallon), // a gas cushion, by its mean density
		Heavy: hydrostatics.Incompressible(9.2 * unit.PoundPerGallon),
	}
	a, _ := c.Pressure(4000 * unit.Foot)
	fmt.Println(a.Surface.Rounded(4), a.Well.Rounded(4))
	// Output: 1383 psi 4500 psi
}

func ExampleAllowableSurfacePressure() {
	fmt.Println(hydrostatics.AllowableSurfacePressure(0.8*unit.PSIPerFoot, 10*unit.PoundPerGallon, 6000*unit.Foot).Rounded(4))
	// Output: 1683 psi
}

// A formation at 5,000 ft that fractures at 3,800 psi bears 14.6 lb/gal
// (Bourgoyne et al., Applied Drilling Engineering, 1986, ch. 4, exercises).
func ExampleAllowableDensity() {
	fracture := hydrostatics.GradientOf(3800*unit.PSI, 5000*unit.Foot)
	fmt.Println(hydrostatics.AllowableDensity(fracture, 0, 5000*unit.Foot).Rounded(3))
	fmt.Println(hydrostatics.AllowableDensity(fracture, 500*unit.PSI, 5000*unit.Foot).Rounded(3), "under 500 psi")
	// Output:
	// 14.6 lb/gal
	// 12.7 lb/gal under 500 psi
}

func ExampleMaximumSurfacePressure() {
	column, _ := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(10 * unit.PoundPerGallon), BottomTVD: 10000 * unit.Foot}}, nil, hydrostatics.Reference{})
	limit, _ := hydrostatics.MaximumSurfacePressure(column, []hydrostatics.WeakPoint{
		hydrostatics.FracturePoint("casing shoe", 0.8*unit.PSIPerFoot, 6000*unit.Foot),
		{Name: "wellhead", Rating: 5000 * unit.PSI, Share: 0.8},
		{Name: "plug", TVD: 9000 * unit.Foot, Rating: 2500 * unit.PSI, Share: 1, Outside: 4200 * unit.PSI},
	})
	for _, p := range limit.Points {
		fmt.Println(p.Name, p.Surface.Rounded(4))
	}
	fmt.Println("weakest:", limit.Points[limit.Weakest].Name)
	// Output:
	// casing shoe 1683 psi
	// wellhead 4000 psi
	// plug 2025 psi
	// weakest: casing shoe
}

func ExampleUTube_Rest() {
	port := 10000 * unit.Foot
	leg := func(area unit.Area, ppg float64) hydrostatics.Leg {
		return hydrostatics.Leg{
			Sections: []hydrostatics.LegSection{{BottomMD: port, Area: area}},
			Fluids:   []hydrostatics.Stretch{{BottomMD: port, Density: unit.Density(ppg) * unit.PoundPerGallon}},
		}
	}
	r, _ := hydrostatics.UTube{PortMD: port, Tubing: leg(0.0087*unit.BarrelPerFoot, 9.2), Annulus: leg(0.0233*unit.BarrelPerFoot, 8.6)}.Rest()
	fmt.Println("holds it:", r.Holding.Rounded(4))
	fmt.Println(r.Falling, "falls to", r.Tubing.LevelMD.Rounded(4), "and gives back", r.Returned.Rounded(3))
	// Output:
	// holds it: 311.7 psi
	// tubing falls to 636.7 ft and gives back 5.54 bbl
}

// 184 ft of dry pipe in 12.2 lb/gal with a slug 1 lb/gal heavier: 32.0 bbl, and
// 2.62 bbl of gain (Lapeyrouse 2nd ed., ch. 2; it rounds on the way).
func ExampleSlug() {
	s := hydrostatics.Slug{Mud: 12.2 * unit.PoundPerGallon, Pill: 13.2 * unit.PoundPerGallon, Capacity: 0.01422 * unit.BarrelPerFoot}
	fmt.Println(s.Volume(184*unit.Foot).Rounded(3), s.Gain(184*unit.Foot).Rounded(3), s.Dry(32*unit.Barrel).Rounded(4))
	// Output: 31.9 bbl 2.62 bbl 184.5 ft
}

// 20 bbl in 0.016 bbl/ft are 1,250 ft; 200 ft dry in 12 lb/gal wants 13.92 lb/gal.
func ExampleSlugDensity() {
	fmt.Println(hydrostatics.SlugDensity(12*unit.PoundPerGallon, 1250*unit.Foot, 200*unit.Foot).Rounded(4))
	// Output: 13.92 lb/gal
}
