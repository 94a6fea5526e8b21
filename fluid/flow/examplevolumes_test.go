package flow_test

import (
	"fmt"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
)

// Volumes of a well and the strokes that fill it.
func ExampleWell_PipeVolume() {
	depth := 9000 * unit.Foot
	w := flow.Well{
		Pipe:    []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 2.992 * unit.Inch}, Length: depth, BottomTVD: depth}},
		Annulus: []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: depth, BottomTVD: depth}},
	}
	pump := flow.Pump{Cylinders: 3, Liner: 5 * unit.Inch, Stroke: 10 * unit.Inch, Efficiency: 0.97}
	fmt.Println(w.PipeVolume().Rounded(4), "and", w.AnnulusVolume().Rounded(4))
	fmt.Printf("%.0f strokes\n", pump.Strokes(w.PipeVolume()+w.AnnulusVolume()))
	// Output:
	// 78.27 bbl and 227.2 bbl
	// 5188 strokes
}

// The chart's factor, which is Darcy's, put into Fanning's equation.
func ExampleDarcyFactor_Fanning() {
	f := flow.Colebrook(1e5, 1e-4)
	g := flow.FanningGradient(f.Fanning(), 1000*unit.KilogramPerCubicMetre, 2*unit.MetrePerSecond, 0.1*unit.Metre)
	fmt.Printf("%s, %s: %.0f Pa/m\n", f.Rounded(3), f.Fanning().Rounded(3), g.In(unit.PascalPerMetre))
	// Output: 0.0185, 0.00463: 370 Pa/m
}

// Darcy's factor is four times Fanning's.
func ExampleFriction_Darcy() {
	f, err := flow.Stream{Conduit: flow.Conduit{Outer: 4 * unit.Inch}, Rheology: flow.Newtonian(1 * unit.Centipoise), Density: 8.34 * unit.PoundPerGallon, Rate: 5 * unit.BarrelPerMinute}.Friction()
	fmt.Printf("%.4f and %.4f %v\n", f.Factor, f.Darcy(), err)
	// Output: 0.0041 and 0.0162 <nil>
}
