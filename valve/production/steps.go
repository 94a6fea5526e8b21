package production

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/valve/production/inflow"
)

// Steps returns the working of a solved flow, zone by zone, as one would check
// the answer by hand: the inflow at the pressure in front of the zone, and the
// drop across the choke. The answer was found by search; these lines show that
// it satisfies the laws. Chokes of gas and zones that take fluid have no lines.
func (n *Network) Steps(f *Flow) []working.Step {
	if n == nil || f == nil {
		return nil
	}
	var steps []working.Step
	for i := range min(len(f.Zones), len(n.nodes)) {
		z, g := n.well.Zones[i], f.Zones[i]
		if g.Shut || g.Takes {
			continue
		}
		k := fmt.Sprint(i + 1)
		switch l := z.Inflow.(type) {
		case inflow.LiquidDeliverability:
			steps = append(steps, inflowStep(z.Name, k, l, g))
		case inflow.GasDeliverability:
			steps = append(steps, gasStep(z.Name, k, l, g))
		}
		if g.Position >= 0 && g.Position < len(z.Chokes) && z.Gas == nil {
			steps = append(steps, chokeStep(z, k, g))
		}
	}
	return steps
}

func inflowStep(name, k string, l inflow.LiquidDeliverability, g ZoneFlow) working.Step {
	in := []working.Input{{Symbol: "J" + k, Value: working.Of(l.Index)}, {Symbol: "pr" + k, Value: working.Of(l.Reservoir)}, {Symbol: "pwf" + k, Value: working.Of(g.Sandface)}}
	s := working.Step{Name: "inflow of " + name, Symbol: "q" + k, Equation: fmt.Sprintf("J%[1]s*(pr%[1]s-pwf%[1]s)", k), Inputs: in,
		Value: working.Of(g.Rate), Source: "definition of the productivity index"}
	if bend := min(l.Bubble, l.Reservoir); g.Sandface < bend {
		s.Equation = fmt.Sprintf("J%[1]s*(pr%[1]s-pb%[1]s)+J%[1]s*pb%[1]s/1.8*(1-0.2*pwf%[1]s/pb%[1]s-0.8*pow(pwf%[1]s/pb%[1]s,2))", k)
		s.Inputs = append(in, working.Input{Symbol: "pb" + k, Value: working.Of(bend)})
		s.Source = "Vogel 1968, below the bubble point"
	}
	return s
}

func gasStep(name, k string, l inflow.GasDeliverability, g ZoneFlow) working.Step {
	rate := func(q unit.FlowRate) working.Value { return working.In(q, unit.ThousandCubicFeetPerDay, "Mcf/d") }
	return working.Step{Name: "inflow of " + name + ", pressures absolute", Symbol: "q" + k,
		Equation: fmt.Sprintf("AOF%[1]s*pow((pr%[1]s*pr%[1]s-pwf%[1]s*pwf%[1]s)/(pr%[1]s*pr%[1]s-pa*pa),n%[1]s)", k),
		Inputs: []working.Input{{Symbol: "AOF" + k, Value: rate(l.OpenFlow)}, {Symbol: "pr" + k, Value: working.Of(l.Reservoir + unit.Atmosphere)},
			{Symbol: "pwf" + k, Value: working.Of(g.Sandface + unit.Atmosphere)}, {Symbol: "pa", Value: working.Of(unit.Atmosphere)}, {Symbol: "n" + k, Value: working.Number(l.Exponent)}},
		Value: rate(g.Rate), Source: "Rawlins and Schellhardt 1936"}
}

func chokeStep(z Zone, k string, g ZoneFlow) working.Step {
	b := z.VolumeFactor
	if b == 0 {
		b = 1
	}
	c := z.Chokes[g.Position].Coefficient
	return working.Step{Name: "drop across the choke of " + z.Name, Symbol: "dp" + k, Equation: fmt.Sprintf("rho%[1]s*pow(B%[1]s*q%[1]s/Av%[1]s,2)", k),
		Inputs: []working.Input{{Symbol: "rho" + k, Value: working.Of(z.Density)}, {Symbol: "B" + k, Value: working.Number(b)},
			{Symbol: "q" + k, Value: working.Of(g.Rate)}, {Symbol: "Av" + k, Value: working.Of(c)}},
		Value: working.Of(g.Drop), Source: "IEC 60534-1, flow coefficient"}
}
