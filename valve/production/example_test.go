package production_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
)

func ExampleNetwork_MostRate() {
	n, err := twoZones().Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := n.MostRate(production.Limits{NoCrossflow: true})
	fmt.Println(n.Names(c.Positions), c.Flow.Rate.Rounded(4), err)
	// Output: [open open] 4972 bbl/d <nil>
}

// The working of a solved flow: each line can be checked by hand.
func ExampleNetwork_Steps() {
	w := production.Well{
		Zones: []production.Zone{{Name: "oil", Inflow: inflow.LiquidDeliverability{Reservoir: 4000 * psi, Index: 5 * pi}, Density: 7 * ppg,
			Chokes: choke.Table{{Name: "shut"}, {Name: "open", Travel: 1, Coefficient: 4 * unit.Cv}}}},
		Outflow: production.FixedPressure{Pressure: 3000 * psi},
	}
	n, err := w.Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	var f production.Flow
	if err := n.Solve(n.Open(), &f); err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range n.Steps(&f) {
		fmt.Println(s)
	}
	// Output:
	// q1 = J1*(pr1-pwf1) = (5 bbl/d/psi)*((4000 psi)-(3400.74 psi)) = 2996.3 bbl/d
	// dp1 = rho1*pow(B1*q1/Av1,2) = (7 lb/gal)*pow(1*(2996.3 bbl/d)/(4 Cv),2) = 400.741 psi
}

// Gas through chokes: the upper zone is weak and takes from the lower one as
// soon as the well is shut in.
func ExampleFixedRate() {
	zone := func(name string, depth unit.Length, pr unit.Pressure) production.Zone {
		return production.Zone{Name: name, TVD: depth,
			Inflow: inflow.GasDeliverability{Reservoir: pr, OpenFlow: 20000 * unit.ThousandCubicFeetPerDay, Exponent: 0.8},
			Chokes: choke.Table{{Name: "open", Coefficient: 10 * unit.Cv}},
			Gas:    &production.GasAtChoke{Density: 0.8, Standard: unit.Fahrenheit(60), Temperature: unit.Fahrenheit(200), Z: 0.9, HeatRatio: 1.28, Ratio: 0.7},
			Above:  production.Interval{Density: 1.2 * unit.PoundPerGallon}}
	}
	w := production.Well{Zones: []production.Zone{zone("lower", 9400*unit.Foot, 3000*psi), zone("upper", 9000*unit.Foot, 2500*psi)}, Outflow: production.FixedRate{}}
	f, err := w.Flow()
	fmt.Printf("%.0f Mcf/d cross over, %v\n", f.Crossflow.In(unit.ThousandCubicFeetPerDay), err)
	w.Outflow = production.FixedPressure{Pressure: 1500 * psi}
	f, err = w.Flow()
	fmt.Printf("%.0f and %.0f Mcf/d at 1500 psi, %v\n", f.Zones[0].Rate.In(unit.ThousandCubicFeetPerDay), f.Zones[1].Rate.In(unit.ThousandCubicFeetPerDay), err)
	// Output:
	// 4430 Mcf/d cross over, <nil>
	// 13046 and 11137 Mcf/d at 1500 psi, <nil>
}
