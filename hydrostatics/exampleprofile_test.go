package hydrostatics_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// Offshore it is coldest at the sea bed.
func ExampleNewTemperatureProfile() {
	p, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{
		{TVD: 80 * unit.Foot, Temperature: unit.Fahrenheit(75)},
		{TVD: 4080 * unit.Foot, Temperature: unit.Fahrenheit(40)},
		{TVD: 12080 * unit.Foot, Temperature: unit.Fahrenheit(180)},
	})
	fmt.Println(p.At(2080*unit.Foot).Rounded(3), p.At(8080*unit.Foot).Rounded(3), err)
	// Output: 57.5 degF 110 degF <nil>
}

// Cold water injected: 60 °F at the wellhead meets ground of 70 °F + 1.5 °F/100 ft.
// By hand with A = 5,000 ft: 220 − 75 + (60 + 75 − 70)·e⁻² at 10,000 ft.
func ExampleFlowing_Injecting() {
	ground, _ := hydrostatics.Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.5 * unit.FahrenheitPer100Feet}.Profile(10000 * unit.Foot)
	p, err := hydrostatics.Flowing{Ground: ground, Inlet: unit.Fahrenheit(60), BottomTVD: 10000 * unit.Foot, Relaxing: 5000 * unit.Foot}.Injecting(0.01)
	fmt.Println(p.At(10000*unit.Foot).Rounded(4), err)
	// Output: 153.8 degF <nil>
}

func ExamplePath_Positions() {
	p, _ := hydrostatics.NewPath([]hydrostatics.Station{{MD: 1000}, {MD: 1900, Inclination: 45 * unit.Degree}})
	for _, at := range p.Positions() {
		fmt.Printf("MD %.0f m: TVD %.1f m, north %.1f m, %.1f deg/30m\n", at.MD.In(unit.Metre), at.TVD.In(unit.Metre), at.North.In(unit.Metre), at.DoglegSeverity.In(unit.DegreePer30Metres))
	}
	// Output:
	// MD 0 m: TVD 0.0 m, north 0.0 m, 0.0 deg/30m
	// MD 1000 m: TVD 1000.0 m, north 0.0 m, 0.0 deg/30m
	// MD 1900 m: TVD 1810.3 m, north 335.6 m, 1.5 deg/30m
}

// The same fluid, known at the formation instead of at surface.
func ExampleColumn_WithReference() {
	depth := 10000 * unit.Foot
	c, _ := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(9.24 * unit.PoundPerGallon), BottomTVD: depth}}, nil, hydrostatics.Reference{})
	known, _ := c.WithReference(hydrostatics.Reference{Pressure: 4300 * unit.PSI, TVD: depth})
	surface, err := known.At(0)
	fmt.Println(surface.Rounded(4), err)
	// Output: -500 psi <nil>
}

// Pressure every 3,000 ft of a column of brine under 500 psi held at surface.
func ExampleColumn_Profile() {
	column, err := hydrostatics.NewColumn(
		[]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(9.2 * unit.PoundPerGallon), BottomTVD: 9000 * unit.Foot}},
		nil, hydrostatics.Reference{Pressure: 500 * unit.PSI})
	if err != nil {
		fmt.Println(err)
		return
	}
	depths := []unit.Length{0, 3000 * unit.Foot, 6000 * unit.Foot, 9000 * unit.Foot}
	pressures := make([]unit.Pressure, len(depths))
	if err := column.Profile(depths, pressures); err != nil {
		fmt.Println(err)
		return
	}
	for i, p := range pressures {
		fmt.Println(depths[i], p.Rounded(5))
	}
	// Output:
	// 0 ft 500 psi
	// 3000 ft 1933.8 psi
	// 6000 ft 3367.5 psi
	// 9000 ft 4801.3 psi
}
