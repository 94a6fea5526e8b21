package gaswell

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/valve/production"
)

// steps shows the zone's own equation at the pressure found; tubing and choke are
// marched and searched.
func (in input) steps(f production.GasWellFlow) []working.Step {
	absolute := func(p unit.Pressure) working.Value { return working.Of(p + unit.Atmosphere) }
	return []working.Step{{
		Name: "what the zone gives, pressures absolute", Symbol: "q", Equation: "AOF*pow((pr*pr-p*p)/(pr*pr-pa*pa),n)", Source: "Rawlins and Schellhardt 1936",
		Value: working.In(f.Rate, unit.ThousandCubicFeetPerDay, "Mcf/d"),
		Inputs: []working.Input{{Symbol: "AOF", Value: working.In(in.zone.OpenFlow, unit.ThousandCubicFeetPerDay, "Mcf/d")}, {Symbol: "pr", Value: absolute(in.zone.Reservoir)},
			{Symbol: "p", Value: absolute(f.Sandface)}, {Symbol: "pa", Value: absolute(0)}, {Symbol: "n", Value: working.Number(in.zone.Exponent)}},
	}}
}
