package fluid_test

import (
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// Fresh water at the state of IAPWS-IF97 Table 5, whose volume is
// 0.100215168e-2 m³/kg.
func ExampleWater() {
	p, t := 3*unit.Megapascal-unit.Atmosphere, unit.Kelvin(300)
	rho, err := fluid.Water{}.Density(p, t)
	if err != nil {
		fmt.Println(err)
		return
	}
	mu, err := fluid.Water{}.Viscosity(p, t)
	fmt.Printf("%.11f m3/kg, %.4f cP %v\n", 1/float64(rho), mu.In(unit.Centipoise), err)
	_, err = fluid.Water{}.Density(0, unit.Fahrenheit(212))
	fmt.Println(err)
	// Output:
	// 0.00100215168 m3/kg, 0.8535 cP <nil>
	// fluid: pressure: is 0 psi; must be from 0.0134853 psi to 14489.1 psi for water as a liquid
}

// IAPWS R12-08, Table 4: 889.735100 µPa·s.
func ExampleWaterViscosity() {
	mu := fluid.WaterViscosity(998*unit.KilogramPerCubicMetre, unit.Kelvin(298.15))
	fmt.Printf("%.6f uPa.s\n", mu.In(unit.MicropascalSecond))
	// Output: 889.735100 uPa.s
}

// TEOS-10 check values, reference cast at 1,416 dbar: 1034.052226417 kg/m³.
func ExampleSeawater() {
	s := fluid.Seawater{Salinity: 0.034762487891}
	rho, err := s.Density(14.16*unit.Megapascal, unit.Celsius(3.375))
	fmt.Printf("%.9f kg/m3 %v\n", float64(rho), err)
	// Output: 1034.052226417 kg/m3 <nil>
}

func ExampleSeawater_FreezingPoint() {
	t, err := fluid.Seawater{Salinity: fluid.StandardSalinity}.FreezingPoint(0)
	fmt.Printf("%.2f degC %v\n", t.Celsius(), err)
	// Output: -1.92 degC <nil>
}

// Well Control for Completions and Interventions (2018), p. 194: 9.5 lb/gal and
// 2.54e-4 1/°F at 160 °F. The book prints 9.277; its numbers make 9.288.
func ExampleBrine() {
	b := fluid.Brine{At70F: 9.5 * unit.PoundPerGallon, Expansion: 2.54e-4 * unit.PerFahrenheit}
	rho, err := b.Density(0, unit.Fahrenheit(160))
	fmt.Println(rho.Rounded(4), err)
	// Output: 9.288 lb/gal <nil>
}

func ExampleKrookBoyce() {
	b, err := fluid.KrookBoyce(fluid.SystemCaBr2, 14.3*unit.PoundPerGallon)
	if err != nil {
		fmt.Println(err)
		return
	}
	rho, err := b.Density(8000*unit.PSI, unit.Fahrenheit(250))
	fmt.Println(rho.Rounded(4), err)
	_, err = fluid.KrookBoyce(fluid.SystemNaCl, 10.5*unit.PoundPerGallon)
	fmt.Println(err)
	// Output:
	// 13.89 lb/gal <nil>
	// fluid: At70F: is 10.5 lb/gal; must be from 9.0155 lb/gal to 9.9645 lb/gal for NaCl by Krook and Boyce
}

// The table prints 0.386 lb/gal per 100 °F for NaCl of 9.5 lb/gal.
func ExampleBridges() {
	b, err := fluid.Bridges(fluid.SystemNaCl, 9.5*unit.PoundPerGallon)
	fmt.Printf("%.3f lb/gal per 100 degF %v\n", b.At70F.In(unit.PoundPerGallon)*100*b.Expansion.In(unit.PerFahrenheit), err)
	// Output: 0.386 lb/gal per 100 degF <nil>
}

// Well Control for Completions and Interventions (2018), p. 195: Ct 0.3474
// lb/gal, Cp 0.0463.
func ExampleBrine_SurfaceWeight() {
	b, err := fluid.Bridges(fluid.SystemNaCl, 9.5*unit.PoundPerGallon)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := b.SurfaceWeight(fluid.WellAverage{Wanted: 9.5 * unit.PoundPerGallon,
		Surface: unit.Fahrenheit(80), Bottom: unit.Fahrenheit(260), BottomPressure: 4940 * unit.PSI})
	fmt.Println(s.Thermal.Rounded(4), s.Squeeze.Rounded(3), s.Weight.Rounded(4), err)
	// Output: 0.3474 lb/gal 0.0464 lb/gal 9.801 lb/gal <nil>
}

func ExampleBrine_State() {
	b := fluid.Brine{At70F: 9.5 * unit.PoundPerGallon, Expansion: 2.54e-4 * unit.PerFahrenheit, Compression: 1.98e-6 * unit.PerPSI}
	s, err := b.State(5000*unit.PSI, unit.Fahrenheit(160))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, step := range s.Steps() {
		fmt.Println(step.Symbol, "=", step.Equation, "=", s.Density.Rounded(4))
	}
	// Output: ρ = ρ70/((1+α*(T-T70))*(1-β*p)) = 9.381 lb/gal
}

// McCain (1990): 2.6348e-6 1/psi.
func ExampleOsif() {
	k, err := fluid.Osif(3500*unit.PSI-unit.Atmosphere, 74.2893*unit.KilogramPerCubicMetre, unit.Fahrenheit(165))
	fmt.Printf("%.4e 1/psi %v\n", k.In(unit.PerPSI), err)
	// Output: 2.6348e-06 1/psi <nil>
}

// Handbooks give 1.0707 g/cm³ for 10 % NaCl at 20 °C.
func ExampleSolution() {
	s := fluid.Solution{Salt: fluid.SodiumChloride, Fraction: 0.10}
	rho, err := s.Density(0, unit.Celsius(20))
	fmt.Printf("%.4f g/cm3 %v\n", rho.In(unit.GramPerCubicCentimetre), err)
	_, err = fluid.Solution{Salt: fluid.ZincBromide, Fraction: 0.5}.Density(0, unit.Celsius(20))
	fmt.Println(err)
	// Output:
	// 1.0708 g/cm3 <nil>
	// fluid: no published data: density of ZnBr2 by composition
}

func ExampleSolutionOfDensity() {
	s, err := fluid.SolutionOfDensity(fluid.CalciumChloride, 11*unit.PoundPerGallon, unit.Fahrenheit(70))
	fmt.Printf("%.1f %% CaCl2 %v\n", 100*s.Fraction, err)
	// Output: 33.4 % CaCl2 <nil>
}

// Lange's Handbook, 15th ed., Table 5.13: 15 % NaCl freezes at −10.88 °C.
func ExampleCrystallisation() {
	c, err := fluid.Crystallisation(fluid.SodiumChloride, 0.15, 0)
	fmt.Printf("%.2f degC, %v first %v\n", c.Temperature.Celsius(), c.Solid, err)
	_, err = fluid.Crystallisation(fluid.CalciumBromide, 0.52, 0)
	fmt.Println(err)
	// Output:
	// -10.88 degC, ice first <nil>
	// fluid: no published data: crystallisation of CaBr2 brine
}

// Lapeyrouse 2nd ed., ch. 3: 400 bbl of 11 lb/gal and 400 of 14 make 12.5 lb/gal.
func ExampleBlend() {
	b, err := fluid.Blend(
		fluid.Batch{Volume: 400 * unit.Barrel, Density: 11 * unit.PoundPerGallon},
		fluid.Batch{Volume: 400 * unit.Barrel, Density: 14 * unit.PoundPerGallon})
	fmt.Println(b.Volume.Rounded(4), b.Density.Rounded(4), err)
	// Output: 800 bbl 12.5 lb/gal <nil>
}

// Lapeyrouse 2nd ed., ch. 3: barite of 35 lb/gal that brings 100 bbl from 12 to 14
// lb/gal adds 9.52 bbl.
func ExampleAdjust() {
	a, err := fluid.Adjust(fluid.Batch{Volume: 100 * unit.Barrel, Density: 12 * unit.PoundPerGallon}, 14*unit.PoundPerGallon, 35*unit.PoundPerGallon)
	fmt.Printf("add %.2f bbl for %.2f bbl %v\n", a.Added.Volume.In(unit.Barrel), a.After.Volume.In(unit.Barrel), err)
	// Output: add 9.52 bbl for 109.52 bbl <nil>
}

func ExampleTreat() {
	tr, err := fluid.Treat(fluid.SodiumChloride, fluid.Batch{Volume: 200 * unit.Barrel, Density: 9 * unit.PoundPerGallon}, 9.5*unit.PoundPerGallon, unit.Fahrenheit(70))
	fmt.Println("add", tr.SaltAdded.Rounded(4), "of NaCl for", tr.After.Volume.Rounded(4), err)
	// Output: add 7231 lb of NaCl for 207.6 bbl <nil>
}

// The chart of Standing and Katz reads about 0.84 here.
func ExampleZFactor() {
	z, err := fluid.ZFactor(2.891013, 1.618967)
	fmt.Printf("%.4f %v\n", z, err)
	// Output: 0.8370 <nil>
}

func ExampleGas() {
	g := fluid.Gas{Gravity: 0.65, CarbonDioxide: 0.02}
	s, err := g.State(3000*unit.PSI, unit.Fahrenheit(150))
	fmt.Printf("Z %.4f, %s %v\n", s.Z, s.Density.Rounded(4), err)
	// Output: Z 0.8676, 1.337 lb/gal <nil>
}

func ExampleGasMixture() {
	g := fluid.GasMixture{Methane: 0.9, Ethane: 0.06, Nitrogen: 0.02, CarbonDioxide: 0.02}
	rho, err := g.Density(3000*unit.PSI, unit.Fahrenheit(150))
	fmt.Printf("gravity %.4f, %s %v\n", g.Gravity(), rho.Rounded(4), err)
	// Output: gravity 0.6106, 1.238 lb/gal <nil>
}

// Handbooks give 1.2504 kg/m³ at 0 °C and one atmosphere.
func ExampleNitrogen() {
	rho, err := fluid.Nitrogen{}.Density(0, unit.Celsius(0))
	fmt.Printf("%.4f kg/m3 %v\n", float64(rho), err)
	// Output: 1.2504 kg/m3 <nil>
}

func ExampleMethane() {
	rho, err := fluid.Methane{}.Density(3000*unit.PSI, unit.Fahrenheit(150))
	fmt.Println(rho.Rounded(4), err)
	// Output: 1.088 lb/gal <nil>
}

// U.S. Army QM5097, Table 6B: 0.9950.
func ExampleOil() {
	o := fluid.Oil{Commodity: fluid.RefinedProduct, At60F: hydrostatics.DensityOfAPIGravity(56.5)}
	v, err := o.VolumeCorrection(0, unit.Fahrenheit(67.5))
	fmt.Printf("%.4f %v\n", v.Total(), err)
	// Output: 0.9950 <nil>
}

func ExampleControlFluid() {
	c := fluid.ControlFluid{Points: []fluid.ControlPoint{
		{Temperature: unit.Fahrenheit(40), Density: 8.9 * unit.PoundPerGallon, Viscosity: 6 * unit.Centipoise},
		{Temperature: unit.Fahrenheit(200), Density: 8.5 * unit.PoundPerGallon, Viscosity: 1.5 * unit.Centipoise},
	}}
	rho, err := c.Density(0, unit.Fahrenheit(120))
	if err != nil {
		fmt.Println(err)
		return
	}
	mu, err := c.Viscosity(0, unit.Fahrenheit(120))
	fmt.Println(rho.Rounded(3), mu.Rounded(3), err)
	// Output: 8.7 lb/gal 3 cP <nil>
}

func ExampleMeasured() {
	m := fluid.Measured{
		Pressures:    []unit.Pressure{0, 10000 * unit.PSI},
		Temperatures: []unit.Temperature{unit.Fahrenheit(60), unit.Fahrenheit(250)},
		Densities:    [][]unit.Density{{6.8 * unit.PoundPerGallon, 6.2 * unit.PoundPerGallon}, {7.1 * unit.PoundPerGallon, 6.6 * unit.PoundPerGallon}},
	}
	rho, err := m.Density(5000*unit.PSI, unit.Fahrenheit(155))
	fmt.Println(rho.Rounded(4), err)
	// Output: 6.659 lb/gal <nil>
}

func ExampleConstant() {
	c := fluid.Constant{Value: 9.2 * unit.PoundPerGallon}
	rho, err := c.Density(5000*unit.PSI, unit.Fahrenheit(200))
	fmt.Println(rho, err)
	squeezed, err := c.Compressibility(5000*unit.PSI, unit.Fahrenheit(200))
	fmt.Println(squeezed, err)
	heated, err := c.Expansivity(5000*unit.PSI, unit.Fahrenheit(200))
	fmt.Println(heated, err)
	// Output:
	// 9.2 lb/gal <nil>
	// 0 1/psi <nil>
	// 0 1/degF <nil>
}

// Well Control for Completions and Interventions (2018), p. 33: 3,104.5 psi from
// 2,500, both taken absolute.
func ExampleAverageGasColumn() {
	c := fluid.AverageGasColumn{Gravity: 0.8, Z: 0.96, Temperature: unit.Fahrenheit(190), Height: 9000 * unit.Foot}
	fmt.Printf("%.0f psi\n", 2500*c.Factor())
	// Output: 3104 psi
}

func ExampleOil_Viscosity() {
	mu, err := fluid.Oil{Commodity: fluid.Crude, At60F: hydrostatics.DensityOfAPIGravity(35)}.Viscosity(0, unit.Fahrenheit(150))
	fmt.Println(mu.Rounded(2), err)
	// Output: 3.2 cP <nil>
}

// IAPWS-IF97, Table 35: 0.353658941e-2 MPa absolute at 300 K.
func ExampleWater_BoilingPressure() {
	p, err := fluid.Water{}.BoilingPressure(unit.Kelvin(300))
	fmt.Printf("%.8e MPa %v\n", (p + unit.Atmosphere).In(unit.Megapascal), err)
	// Output: 3.53658941e-03 MPa <nil>
}

func ExamplePseudoCritical_WichertAziz() {
	pc := fluid.PseudoCritical{Pressure: 700 * unit.PSI, Temperature: unit.Rankine(400)}
	sour, err := pc.WichertAziz(0.05, 0.10)
	fmt.Printf("%.1f psi, %.1f degR %v\n", sour.Pressure.In(unit.PSI), sour.Temperature.Rankine(), err)
	// Output: 660.6 psi, 379.3 degR <nil>
}

func ExampleGas_PseudoCritical() {
	pc, err := fluid.Gas{Gravity: 0.7}.PseudoCritical()
	fmt.Printf("%.1f psi, %.1f degR %v\n", pc.Pressure.In(unit.PSI), pc.Temperature.Rankine(), err)
	// Output: 663.3 psi, 377.6 degR <nil>
}
