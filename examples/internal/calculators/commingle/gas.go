package commingle

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/hydrostatics/working"
	"completion.example/valve/production"
	"completion.example/valve/production/inflow"
)

// air is its density at 60 degF and one atmosphere, as an ideal gas of 28.964
// kg/kmol; a gas's gravity is counted from it.
const air = 1.2232 * unit.KilogramPerCubicMetre

// gasZone is what a zone of gas is given as; an AOF makes a zone one.
type gasZone struct {
	inflow  inflow.GasDeliverability
	gravity float64
	choke   production.GasAtChoke
}

// usual are the values of what isn't given: common for a sweet gas, invented for
// the choke.
func usual() gasZone {
	return gasZone{inflow: inflow.GasDeliverability{Exponent: 0.8}, gravity: 0.65,
		choke: production.GasAtChoke{Standard: unit.Fahrenheit(60), Temperature: unit.Fahrenheit(200), Z: 0.9, HeatRatio: 1.28, Ratio: 0.7}}
}

// into makes z a zone of gas.
func (g gasZone) into(z *zone, reservoir unit.Pressure) {
	g.inflow.Reservoir = reservoir
	g.choke.Density = unit.Density(g.gravity) * air
	z.Inflow, z.Gas, z.gravity = g.inflow, &g.choke, g.gravity
}

// rate writes a rate as its phase is counted.
func rate(q unit.FlowRate, gas bool) any {
	if gas {
		return working.In(q, unit.ThousandCubicFeetPerDay, "Mcf/d")
	}
	return working.In(q, unit.BarrelPerDay, "bbl/d")
}

// purpose is what a rate is for.
func purpose(gas bool) display.Purpose {
	if gas {
		return display.GasRate
	}
	return display.ProductionRate
}
