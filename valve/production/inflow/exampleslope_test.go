package inflow_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/inflow"
)

// The slope of a straight inflow is its productivity index, and the inverse has
// its reciprocal.
func ExampleLiquidDeliverability_At() {
	l := inflow.LiquidDeliverability{Reservoir: 3000 * unit.PSI, Index: 2 * unit.BarrelPerDayPSI}
	q, slope := l.At(float64(2500 * unit.PSI))
	p, back := l.Inverse(q)
	fmt.Println(unit.FlowRate(q).Rounded(4), unit.ProductivityIndex(slope).Rounded(4), unit.Pressure(p).Rounded(4), slope*back)
	// Output: 1000 bbl/d -2 bbl/d/psi 2500 psi 1
}

func ExampleGasDeliverability_At() {
	g := inflow.GasDeliverability{Reservoir: 3000 * unit.PSI, OpenFlow: 10_000 * unit.ThousandCubicFeetPerDay, Exponent: 1}
	q, _ := g.At(float64(1500 * unit.PSI))
	fmt.Printf("%.0f Mcf/d\n", unit.FlowRate(q).In(unit.ThousandCubicFeetPerDay)) // 1 - (1514.7² - 14.7²)/(3014.7² - 14.7²) of the open flow
	// Output: 7476 Mcf/d
}
