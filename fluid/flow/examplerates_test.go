package flow_test

import (
	"fmt"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
)

func ExampleConduit_Area() {
	annulus := flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}
	fmt.Printf("%s %s %.3f bbl/min\n", annulus.Area().Rounded(4), annulus.Volume(1000*unit.Foot).Rounded(4), annulus.Rate(unit.FootPerSecond).In(unit.BarrelPerMinute))
	// Output: 20.41 in2 25.25 bbl 1.515 bbl/min
}

// A six-speed viscometer at 300 rev/min, dial at 28: 511 1/s and 14.3 Pa.
func ExampleReading_Rate() {
	r := flow.Reading{Speed: 300, Dial: 28}
	fmt.Printf("%.0f 1/s %.1f Pa\n", r.Rate().In(unit.PerSecond), float64(r.Stress()))
	// Output: 511 1/s 14.3 Pa
}

func ExampleRheology_Viscosity() {
	mud := flow.Bingham(20*unit.Centipoise, 10*unit.PoundForcePer100SquareFeet)
	rate := mud.Rate(15 * unit.PoundForcePer100SquareFeet)
	fmt.Printf("%.1f 1/s %s\n", rate.In(unit.PerSecond), mud.Viscosity(rate).Rounded(4))
	// Output: 119.7 1/s 60 cP
}

// Three nozzles of 12/32 in: the trade's 0.3313 in².
func ExampleOrifices_Area() {
	fmt.Println(flow.Orifices{Count: 3, Diameter: 12.0 / 32 * unit.Inch, Discharge: 0.95}.Area().Rounded(4))
	// Output: 0.3313 in2
}

// A triplex with 6 in liners and a stroke of 12 in at 95 %.
func ExamplePump_Rate() {
	p := flow.Pump{Cylinders: 3, Liner: 6 * unit.Inch, Stroke: 12 * unit.Inch, Efficiency: 0.95}
	fmt.Printf("%.5f bbl/stroke, %.2f bbl/min at 60\n", p.Output().In(unit.Barrel), p.Rate(60).In(unit.BarrelPerMinute))
	// Output: 0.09967 bbl/stroke, 5.98 bbl/min at 60
}

func ExampleFriction_EffectiveViscosity() {
	f, err := flow.Stream{Conduit: flow.Conduit{Outer: 2.992 * unit.Inch}, Rheology: flow.Newtonian(2 * unit.Centipoise), Density: 8.6 * unit.PoundPerGallon, Rate: 5 * unit.GallonPerMinute}.Friction()
	fmt.Println(f.Regime, f.EffectiveViscosity().Rounded(4), err)
	// Output: transitional 2 cP <nil>
}
