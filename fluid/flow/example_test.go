package flow_test

import (
	"fmt"
	"time"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
)

// The explicit formulas at Re 1e5 and ε/D 1e-4; the documentation of the Python
// library fluids prints 0.0184626, 0.0182651, 0.0184524 and 0.0185528.
func ExampleChurchill() {
	fmt.Printf("%.7f\n", flow.Churchill(1e5, 1e-4))
	// Output: 0.0184626
}

func ExampleHaaland() {
	fmt.Printf("%.7f\n", flow.Haaland(1e5, 1e-4))
	// Output: 0.0182651
}

func ExampleSwameeJain() {
	fmt.Printf("%.7f\n", flow.SwameeJain(1e5, 1e-4))
	// Output: 0.0184524
}

func ExampleChen() {
	fmt.Printf("%.7f\n", flow.Chen(1e5, 1e-4))
	// Output: 0.0185528
}

func ExampleBlasius() {
	// API RP 13D (3rd edition) worked set: 0.00483 for n 0.275 at Re 2928.7.
	fmt.Printf("%.5f\n", flow.Blasius(2928.7, 0.275))
	// Output: 0.00483
}

func ExampleTurbulent() {
	fmt.Printf("%.5f\n", flow.Turbulent(0.6, 2e4, 0))
	// Output: 0.00452
}

func ExampleLaminarReynolds() {
	fmt.Println(flow.LaminarReynolds(1), flow.TurbulentReynolds(1))
	// Output: 2100 2900
}

func ExampleFanningGradient() {
	g := flow.FanningGradient(0.005, 1000*unit.KilogramPerCubicMetre, 2*unit.MetrePerSecond, 0.1*unit.Metre)
	fmt.Println(float64(g), "Pa/m")
	// Output: 400 Pa/m
}

func ExampleConduit_Laminar() {
	c := flow.Conduit{Outer: 8.5 * unit.Inch, Inner: 5 * unit.Inch}
	l, err := c.Laminar(flow.Bingham(20*unit.Centipoise, 12*unit.PoundForcePer100SquareFeet), 2*unit.FootPerSecond)
	fmt.Println(l.Gradient(c.HydraulicDiameter()).Rounded(4), err)
	// Output: 0.01811 psi/ft <nil>
}

func ExampleConduit_LaminarRate() {
	c := flow.Conduit{Outer: 8.5 * unit.Inch, Inner: 5 * unit.Inch}
	q, err := c.LaminarRate(flow.Bingham(20*unit.Centipoise, 12*unit.PoundForcePer100SquareFeet), 0.02*unit.PSIPerFoot)
	fmt.Printf("%.1f gal/min, %v\n", q.In(unit.GallonPerMinute), err)
	// Output: 337.0 gal/min, <nil>
}

func ExampleRheology_SlotLaminar() {
	// Lapeyrouse, chapter 5: 716 psi in 14,300 ft at 378 ft/min.
	c := flow.Conduit{Outer: 7.875 * unit.Inch, Inner: 4.5 * unit.Inch}
	r := flow.PowerLaw(0.522*unit.PoundForceSecondNPer100SquareFeet, 0.8069)
	v := 378 * unit.FootPerMinute
	l, err := r.SlotLaminar(unit.ShearRate(12 * float64(v) / float64(c.HydraulicDiameter())))
	fmt.Println(unit.Pressure(float64(l.Gradient(c.HydraulicDiameter()))*float64(14300*unit.Foot)).Rounded(3), err)
	// Output: 716 psi <nil>
}

func ExampleCriticalRates() {
	k, err := flow.CriticalRates(flow.Conduit{Outer: 3.826 * unit.Inch}, flow.PowerLaw(3.21*unit.DyneSecondNPerSquareCentimetre, 0.64), 12.8*unit.PoundPerGallon)
	fmt.Printf("laminar to %.0f, turbulent from %.0f gal/min, %v\n", k.Laminar.In(unit.GallonPerMinute), k.Turbulent.In(unit.GallonPerMinute), err)
	// Output: laminar to 138, turbulent from 168 gal/min, <nil>
}

func ExampleStream_APIFigures() {
	// Printed: 48.97 cP and Re 8667, with the velocity 0.12 % low.
	s := flow.Stream{
		Conduit:  flow.Conduit{Outer: 3.826 * unit.Inch},
		Rheology: flow.PowerLaw(3.21*unit.DyneSecondNPerSquareCentimetre, 0.64),
		Density:  12.8 * unit.PoundPerGallon, Rate: 335 * unit.GallonPerMinute,
	}
	f, err := s.APIFigures()
	fmt.Printf("%.2f cP, Re %.0f, %v\n", f.EffectiveViscosity.In(unit.Centipoise), f.Reynolds, err)
	// Output: 48.95 cP, Re 8676, <nil>
}

func ExampleTwoPointBingham() {
	r, err := flow.TwoPointBingham(flow.Reading{Speed: 600, Dial: 53}, flow.Reading{Speed: 300, Dial: 34})
	fmt.Printf("%.0f cP, %.2f Pa, %v\n", 1000*float64(r.Consistency), float64(r.Yield), err)
	// Output: 19 cP, 7.66 Pa, <nil>
}

func ExamplePlasticViscosity() {
	fmt.Printf("%.0f cP, %.0f lbf/100ft2\n", flow.PlasticViscosity(53, 34).In(unit.Centipoise), flow.YieldPoint(53, 34).In(unit.PoundForcePer100SquareFeet))
	// Output: 19 cP, 15 lbf/100ft2
}

func ExampleMinorLoss() {
	v := 10 * unit.FootPerSecond
	k := flow.Contraction(6*unit.SquareInch, 3*unit.SquareInch) + flow.Enlargement(3*unit.SquareInch, 6*unit.SquareInch)
	fmt.Println(flow.DynamicPressure(10*unit.PoundPerGallon, v).Rounded(3), flow.MinorLoss(k, 10*unit.PoundPerGallon, v).Rounded(3))
	// Output: 0.807 psi 0.371 psi
}

func ExampleOrificeRate() {
	q := flow.OrificeRate(10*unit.PoundPerGallon, 500*unit.PSI, 0.5*unit.SquareInch, flow.DischargeSharp)
	fmt.Printf("%.1f gal/min\n", q.In(unit.GallonPerMinute))
	// Output: 237.0 gal/min
}

func ExampleGelPressure() {
	c := flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}
	fmt.Println(flow.GelPressure(c, 20*unit.PoundForcePer100SquareFeet, 9000*unit.Foot).Rounded(3))
	// Output: 224 psi
}

func ExampleCling() {
	fmt.Printf("%.3f\n", flow.Cling(flow.Conduit{Outer: 7.875 * unit.Inch, Inner: 4.5 * unit.Inch}))
	// Output: 0.409
}

func ExampleOpenPipeVelocity() {
	// Lapeyrouse, chapter 5: 149 ft/min.
	v := flow.OpenPipeVelocity(flow.Conduit{Outer: 7.875 * unit.Inch, Inner: 4.5 * unit.Inch}, 3.82*unit.Inch, 270*unit.FootPerMinute, 0.45)
	fmt.Printf("%.1f ft/min\n", v.In(unit.FootPerMinute))
	// Output: 148.6 ft/min
}

func ExampleTrip_Solve() {
	r, err := flow.Trip{
		Annulus: []flow.ConduitSection{{Name: "casing", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: 9000 * unit.Foot, BottomTVD: 9000 * unit.Foot}},
		Liquid:  flow.PumpedFluid{Name: "brine", Density: 9.5 * unit.PoundPerGallon, Rheology: flow.Newtonian(1.5 * unit.Centipoise)},
		Speed:   90 * unit.FootPerMinute,
	}.Solve()
	fmt.Println(r.Loss.Rounded(3), r.RunningEquivalent.Rounded(4), r.PullingEquivalent.Rounded(4), err)
	// Output: 30.9 psi 9.566 lb/gal 9.434 lb/gal <nil>
}

func ExamplePumpingTime() {
	fmt.Println(flow.PumpingTime(120*unit.Barrel, 3*unit.BarrelPerMinute).Round(time.Second))
	// Output: 40m0s
}

func ExampleConduit_Length() {
	// 30 bbl of spacer outside 3-1/2 in tubing in 7 in 29 lb/ft casing.
	fmt.Println(flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}.Length(30 * unit.Barrel).Rounded(4))
	// Output: 1188 ft
}

func ExampleSchedule_FallRate() {
	depth := 9000 * unit.Foot
	brine := flow.PumpedFluid{Name: "brine", Density: 8.6 * unit.PoundPerGallon, Rheology: flow.Newtonian(1 * unit.Centipoise)}
	kill := flow.PumpedFluid{Name: "kill fluid", Density: 10 * unit.PoundPerGallon, Rheology: flow.Newtonian(2 * unit.Centipoise)}
	s, err := flow.Displacement{
		Well: flow.Well{
			Pipe:    []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 2.992 * unit.Inch}, Length: depth, BottomTVD: depth}},
			Annulus: []flow.ConduitSection{{Name: "annulus", Conduit: flow.Conduit{Outer: 6.184 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: depth, BottomTVD: depth}},
		},
		InPipe: brine, InAnnulus: brine,
		Stages: []flow.Stage{{Liquid: kill, Volume: 310 * unit.Barrel, Rate: 1 * unit.BarrelPerMinute}},
	}.Schedule()
	if err != nil {
		fmt.Println(err)
		return
	}
	u := s.UTubes[0]
	q, err := s.FallRate(u.At)
	fmt.Printf("from %v to %v; at %v pumped %.1f bbl/min, %v\n", u.From.Rounded(3), u.To.Rounded(3), u.At.Rounded(3), q.In(unit.BarrelPerMinute), err)
	for _, batch := range s.At(40 * unit.Barrel) {
		fmt.Println(batch.Name, batch.Length().Rounded(4))
	}
	// Output:
	// from 2.83 bbl to 295 bbl; at 78.3 bbl pumped 5.7 bbl/min, <nil>
	// kill fluid 4600 ft
	// brine 13400 ft
}
