package validation

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/valve/production"
	"completion.example/valve/production/inflow"
)

func vogelShare(in *published.Inputs) (any, error) {
	var pr, pwf unit.Pressure
	in.Read("pr", &pr)
	in.Read("pwf", &pwf)
	return inflow.VogelRatio(pwf, pr), nil
}

func saturated(in *published.Inputs) (inflow.LiquidDeliverability, error) {
	var pr, pwf unit.Pressure
	var q unit.FlowRate
	in.Read("pr", &pr)
	in.Read("pwf", &pwf)
	in.Read("q", &q)
	return inflow.LiquidFromTest(pr, pr, pwf, q)
}

func openFlow(in *published.Inputs) (any, error) {
	l, err := saturated(in)
	return l.OpenFlow(), err
}

func saturatedZone(in *published.Inputs) (any, error) {
	var p unit.Pressure
	in.Read("p", &p)
	l, err := saturated(in)
	if err != nil {
		return nil, err
	}
	f, err := production.Well{Zones: []production.Zone{{Name: "zone", Inflow: l}}, Outflow: production.FixedPressure{Pressure: p}}.Flow()
	return f.Rate, err
}

func hawkinsSkin(in *published.Inputs) (any, error) {
	var k, kd unit.Permeability
	var rw, rd unit.Length
	in.Read("k", &k)
	in.Read("kd", &kd)
	in.Read("rw", &rw)
	in.Read("rd", &rd)
	return inflow.DamageSkin(k, kd, rw, rd), nil
}

func layers(in *published.Inputs) (lower, upper inflow.LiquidDeliverability) {
	in.Read("J1", &lower.Index)
	in.Read("J2", &upper.Index)
	in.Read("p1", &lower.Reservoir)
	in.Read("p2", &upper.Reservoir)
	return lower, upper
}

// twoLayers flows at a pressure, or is shut in where none is given.
func twoLayers(in *published.Inputs) (production.Flow, error) {
	lower, upper := layers(in)
	w := production.Well{Zones: []production.Zone{{Name: "lower", Inflow: lower}, {Name: "upper", Inflow: upper}}, Outflow: production.FixedRate{}}
	if in.Has("pwf") {
		var p unit.Pressure
		in.Read("pwf", &p)
		w.Outflow = production.FixedPressure{Pressure: p}
	}
	return w.Flow()
}

func layerRate(in *published.Inputs, layer int) (any, error) {
	f, err := twoLayers(in)
	if err != nil {
		return nil, err
	}
	return f.Zones[layer].Rate, nil
}

func equivalent(in *published.Inputs) (any, error) {
	lower, upper := layers(in)
	_, p := production.Equivalent(production.Straight{Index: lower.Index, Static: lower.Reservoir}, production.Straight{Index: upper.Index, Static: upper.Reservoir})
	return p, nil
}

func dropToChoke(in *published.Inputs) (any, error) {
	var l inflow.LiquidDeliverability
	var p unit.Pressure
	var q unit.FlowRate
	in.Read("J", &l.Index)
	in.Read("pr", &l.Reservoir)
	in.Read("p", &p)
	in.Read("q", &q)
	sandface, err := l.Pressure(q)
	return sandface - p, err
}
