package notebooks_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
)

// well is an invented well of a wet lower and a dry upper zone, each behind a
// choke of five positions.
func well(outflow production.Outflow) production.Well {
	chokes := choke.Table{
		{Name: "shut"},
		{Name: "1", Travel: 0.25, Coefficient: 1.5 * unit.Cv},
		{Name: "2", Travel: 0.5, Coefficient: 4 * unit.Cv},
		{Name: "3", Travel: 0.75, Coefficient: 9 * unit.Cv},
		{Name: "open", Travel: 1, Coefficient: 30 * unit.Cv},
	}
	return production.Well{
		Zones: []production.Zone{
			{Name: "lower", TVD: 9400 * unit.Foot, Chokes: chokes, WaterCut: 0.6,
				Inflow:  inflow.LiquidDeliverability{Reservoir: 4000 * unit.PSI, Index: 5 * unit.BarrelPerDayPSI},
				Density: 7.8 * unit.PoundPerGallon, VolumeFactor: 1.1,
				Above: production.Interval{Density: 7.4 * unit.PoundPerGallon}},
			{Name: "upper", TVD: 9000 * unit.Foot, Chokes: chokes, WaterCut: 0.05,
				Inflow:  inflow.LiquidDeliverability{Reservoir: 3500 * unit.PSI, Index: 4 * unit.BarrelPerDayPSI, Bubble: 2200 * unit.PSI},
				Density: 6.9 * unit.PoundPerGallon, VolumeFactor: 1.25},
		},
		Outflow: outflow,
	}
}

// toSurface is the tubing from the upper zone to a wellhead held at 250 psi.
func toSurface() production.Tubing {
	return production.Tubing{Surface: 250 * unit.PSI, Height: 9000 * unit.Foot, Density: 5.8 * unit.PoundPerGallon,
		Loss: production.Loss{At: 5000 * unit.BarrelPerDay, Turbulent: 260 * unit.PSI}}
}

// show prints what each zone does.
func show(w production.Well, f production.Flow) {
	for i, z := range f.Zones {
		fmt.Printf("%-6s %-12s in front of it %s, across the choke %s\n", w.Zones[i].Name, z.Rate.Rounded(4), z.Sandface.Rounded(4), z.Drop.Rounded(3))
	}
	fmt.Printf("to surface %s, water cut %.2f, crossflow %s\n", f.Rate.Rounded(4), f.WaterCut, f.Crossflow.Rounded(3))
}

func Example_oneZone() {
	zone := inflow.LiquidDeliverability{Reservoir: 4000 * unit.PSI, Index: 5 * unit.BarrelPerDayPSI}
	fmt.Println("at 3400 psi in front of it:", zone.Rate(3400*unit.PSI).Rounded(4))
	oil := 0.85 * 999.1 * unit.KilogramPerCubicMetre
	c := choke.LiquidCoefficient(3000*unit.BarrelPerDay, oil, 400*unit.PSI)
	fmt.Println("choke for 400 psi at that rate:", c.Rounded(4))
	saturated, err := inflow.LiquidFromTest(2000*unit.PSI, 2000*unit.PSI, 1500*unit.PSI, 65*unit.BarrelPerDay)
	fmt.Println("open flow of a saturated zone that gave 65 bbl/d:", saturated.OpenFlow().Rounded(4), err)
	// Output:
	// at 3400 psi in front of it: 3000 bbl/d
	// choke for 400 psi at that rate: 4.034 Cv
	// open flow of a saturated zone that gave 65 bbl/d: 162.5 bbl/d <nil>
}

func Example_shutIn() {
	j, p := production.Equivalent(
		production.Straight{Index: 5 * unit.BarrelPerDayPSI, Static: 4000 * unit.PSI},
		production.Straight{Index: 10 * unit.BarrelPerDayPSI, Static: 3500 * unit.PSI})
	fmt.Println("two layers at one depth look like one of", j.Rounded(3), "at", p.Rounded(5))
	w := well(production.FixedRate{})
	f, err := w.Flow()
	fmt.Println("our well shut in, both chokes open:", err)
	show(w, f)
	// Output:
	// two layers at one depth look like one of 15 bbl/d/psi at 3666.7 psi
	// our well shut in, both chokes open: <nil>
	// lower  766.4 bbl/d  in front of it 3847 psi, across the choke 0.628 psi
	// upper  -766.4 bbl/d in front of it 3692 psi, across the choke -0.718 psi
	// to surface 0 bbl/d, water cut 0.00, crossflow 766 bbl/d
}

func Example_flowingTogether() {
	w := well(toSurface())
	for _, positions := range [][]int{{4, 4}, {1, 4}} {
		f, err := w.Flow(positions...)
		fmt.Println("lower choke in", w.Zones[0].Chokes[positions[0]].Name, "- upper in", w.Zones[1].Chokes[positions[1]].Name, "-", err)
		show(w, f)
	}
	// Output:
	// lower choke in open - upper in open - <nil>
	// lower  3283 bbl/d   in front of it 3343 psi, across the choke 11.5 psi
	// upper  1279 bbl/d   in front of it 3180 psi, across the choke 2 psi
	// to surface 4562 bbl/d, water cut 0.45, crossflow 0 bbl/d
	// lower choke in 1 - upper in open - <nil>
	// lower  1149 bbl/d   in front of it 3770 psi, across the choke 565 psi
	// upper  1781 bbl/d   in front of it 3055 psi, across the choke 3.88 psi
	// to surface 2930 bbl/d, water cut 0.27, crossflow 0 bbl/d
}

func Example_noFlow() {
	heavy := toSurface()
	heavy.Density = 8.2 * unit.PoundPerGallon
	_, err := well(heavy).Flow()
	fmt.Println(err)
	// Output:
	// production: the network has no flow in this direction: without flow the zones hold 3692.3 psi at the topmost zone; the outflow asks for 4083.8 psi or more
}

func Example_keepWaterDown() {
	n, err := well(toSurface()).Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := n.LimitWater(0.3, production.Limits{NoCrossflow: true})
	fmt.Println("positions", n.Names(c.Positions), "oil", c.Flow.Oil().Rounded(4), err)
	fmt.Printf("water cut %.3f; %d settings tried, %d within the limits\n", c.Flow.WaterCut, c.Tried, c.Allowed)
	// Output:
	// positions [1 open] oil 2151 bbl/d <nil>
	// water cut 0.266; 24 settings tried, 6 within the limits
}
