package controlline_test

import (
	"fmt"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/controlline"
)

var (
	line = controlline.Line{OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch, Length: 3000 * unit.Metre, TVD: 3000 * unit.Metre,
		Young: 28e6 * unit.PSI, Poisson: 0.3}
	liquid = controlline.LineFluid{Density: 870 * unit.KilogramPerCubicMetre, Viscosity: 10 * unit.Centipoise,
		Compressibility: unit.PerMegapascal / 1800}
)

func ExampleLine_RateAt() {
	q, err := line.RateAt(liquid, 3000*unit.PSI)
	fmt.Printf("%.3f L/min %v\n", q.In(unit.LitrePerMinute), err)
	// Output: 0.226 L/min <nil>
}

func ExampleLine_Friction() {
	f, err := line.Friction(liquid, 0.2*unit.LitrePerMinute)
	fmt.Println(f.Regime, f.Loss(line.Length).Rounded(4), err)
	// Output: laminar 2660 psi <nil>
}

func ExampleLine_LaminarLoss() {
	fmt.Println(line.LaminarLoss(10*unit.Centipoise, 0.2*unit.LitrePerMinute).Rounded(4))
	// Output: 2660 psi
}

func ExampleLine_Response() {
	r, err := line.Response(liquid)
	if err != nil {
		panic(err)
	}
	half, err := r.Until(0.5)
	fmt.Println("half has arrived after", half.Round(time.Second), "-", fmt.Sprintf("%.0f %% after 2 min", 100*r.Arrived(2*time.Minute)), err)
	// Output: half has arrived after 42s - 91 % after 2 min <nil>
}
