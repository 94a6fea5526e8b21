package validation

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/valve/sequence"
)

var sequenceSuite = Suite{
	File: "sequence.csv",
	Quantities: map[string]Evaluator{
		"pressure at the device":                       devicePressure,
		"underbalance at the formation":                formationBalance,
		"surface pressure of the event":                eventPressure,
		"tension by cooling between hanger and packer": coolingTension,
		"end of the window of surface pressure":        surfaceWindow,
	},
}

// twoColumns is a well with tubing, annulus and one device.
func twoColumns(in *published.Inputs) (*sequence.Plan, error) {
	var depth unit.Length
	p := &sequence.Plan{Name: "case", Fluids: []sequence.Fluid{{Name: "tubing"}, {Name: "annulus", Density: unit.Exactly(unit.PoundPerGallon)}}}
	in.Read("depth", &depth)
	in.Read("tubing", &p.Fluids[0].Density)
	in.Optional("annulus", &p.Fluids[1].Density)
	p.Well.MD = depth
	annulus := sequence.Compartment{Name: "annulus", BottomMD: depth, Fluid: "annulus", Surface: true}
	if in.Has("to1") {
		annulus.Fluid = ""
		annulus.Layers = []sequence.Layer{{Fluid: "annulus"}}
		in.Read("to1", &annulus.Layers[0].ToMD)
		for _, k := range []string{"2", "3", "4"} {
			f := sequence.Fluid{Name: k}
			l := sequence.Layer{Fluid: k, ToMD: depth}
			in.Read("fluid"+k, &f.Density)
			in.Optional("to"+k, &l.ToMD)
			p.Fluids, annulus.Layers = append(p.Fluids, f), append(annulus.Layers, l)
		}
	}
	p.Compartments = []sequence.Compartment{{Name: "tubing", BottomMD: depth, Fluid: "tubing", Surface: true}, annulus}
	p.Devices = []sequence.Device{{Name: "device", MD: depth, Actions: []sequence.Action{{
		Name: "moves", Inside: "tubing", Outside: "annulus", Triggers: []sequence.Trigger{{Threshold: unit.Exactly(50000 * unit.PSI)}}}}}}
	p.Steps = []sequence.Step{{Name: "step"}}
	return p, in.Err()
}

func devicePressure(in *published.Inputs) (any, error) {
	var where string
	in.Read("in", &where)
	p, err := twoColumns(in)
	if err != nil {
		return nil, err
	}
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	if err != nil {
		return nil, err
	}
	for _, x := range r.Steps[0].Points[0].Pressures {
		if x.Compartment == where {
			return x.Pressure, nil
		}
	}
	return nil, fmt.Errorf("no compartment %q", where)
}

func formationBalance(in *published.Inputs) (any, error) {
	var pore unit.Pressure
	in.Read("pore", &pore)
	p, err := twoColumns(in)
	if err != nil {
		return nil, err
	}
	p.Formations = []sequence.Formation{{Name: "sand", MD: p.Well.MD, Pressure: unit.Exactly(pore)}}
	p.Steps[0].Balance = []sequence.Balance{{Compartment: "tubing", Formation: "sand"}}
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	if err != nil {
		return nil, err
	}
	return -r.Steps[0].Balance[0].Overbalance, nil
}

// pinsOf are the pins of a device.
func pinsOf(in *published.Inputs) *sequence.Pins {
	pins := &sequence.Pins{}
	in.Read("pins", &pins.Count)
	in.Read("strength", &pins.Strength)
	in.Read("tolerance", &pins.Tolerance)
	in.Read("area", &pins.Area)
	return pins
}

// eventPressure reads the band of surface pressure from the walk: what the
// event needs at nominal, and from the window at the ends.
func eventPressure(in *published.Inputs) (any, error) {
	var end string
	pins := pinsOf(in)
	in.Read("end", &end)
	p, err := twoColumns(in)
	if err != nil {
		return nil, err
	}
	a := &p.Devices[0].Actions[0]
	a.Triggers = []sequence.Trigger{{Pins: pins}}
	p.Steps[0].Ramps = []map[string]unit.Pressure{{"tubing": 9000 * unit.PSI}}
	p.Steps[0].Expect = []string{"device: moves"}
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	if err != nil {
		return nil, err
	}
	s := &r.Steps[0]
	if len(s.Events) == 0 {
		return nil, errors.New("no event")
	}
	surface := s.Events[0].Surface[0].Pressure
	t := s.Triggers[0].Threshold
	least, _ := t.Least.Pressure()
	nominal, _ := t.Nominal.Pressure()
	greatest, _ := t.Greatest.Pressure()
	switch end {
	case "least":
		surface += least - nominal
	case "greatest":
		surface += greatest - nominal
	}
	return surface, nil
}

// surfaceWindow is an end of the window of a step in which one device has to move and
// another mustn't.
func surfaceWindow(in *published.Inputs) (any, error) {
	var end string
	pins := pinsOf(in)
	in.Read("end", &end)
	stronger := *pins
	in.Read("other", &stronger.Strength)
	p, err := twoColumns(in)
	if err != nil {
		return nil, err
	}
	other := p.Devices[0]
	other.Name = "other"
	other.Actions = []sequence.Action{{Name: "stays", Inside: "tubing", Outside: "annulus", Triggers: []sequence.Trigger{{Pins: &stronger}}}}
	p.Devices[0].Actions[0].Triggers = []sequence.Trigger{{Pins: pins}}
	p.Devices = append(p.Devices, other)
	p.Steps[0].Ramps = []map[string]unit.Pressure{{"tubing": 3700 * unit.PSI}}
	p.Steps[0].Expect = []string{"device: moves"}
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	if err != nil {
		return nil, err
	}
	s := &r.Steps[0]
	if len(s.Windows) != 1 || len(s.Windows[0].Intervals) != 1 {
		return nil, fmt.Errorf("windows are %v, not one", s.Windows)
	}
	if end == "least" {
		least, _ := s.Windows[0].Intervals[0].Least.Pressure()
		return least, nil
	}
	greatest, _ := s.Windows[0].Intervals[0].Greatest.Pressure()
	return greatest, nil
}

func coolingTension(in *published.Inputs) (any, error) {
	var pipe sequence.Pipe
	var depth unit.Length
	var cooling unit.TemperatureDifference
	in.Read("od", &pipe.Size)
	in.Read("weight", &pipe.Weight)
	in.Read("depth", &depth)
	in.Read("cooling", &cooling)
	pipe.Grade = "L80"
	warm := unit.Fahrenheit(200)
	even := func(t unit.Temperature) []sequence.MarkedTVD {
		return []sequence.MarkedTVD{{TVD: 0, Temperature: t}, {TVD: depth, Temperature: t}}
	}
	p := &sequence.Plan{Name: "case", Fluids: []sequence.Fluid{{Name: "fluid", Density: unit.Exactly(9 * unit.PoundPerGallon)}},
		Well: sequence.Well{MD: depth, Temperatures: map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(warm), "cold": even(warm.Add(-cooling))}},
		Compartments: []sequence.Compartment{
			{Name: "tubing", BottomMD: depth, Fluid: "fluid", Surface: true}, {Name: "annulus", BottomMD: depth, Fluid: "fluid", Surface: true}},
		Devices: []sequence.Device{{Name: "packer", MD: depth, Actions: []sequence.Action{{
			Name: "sets", Inside: "tubing", Outside: "annulus", Holds: true, Triggers: []sequence.Trigger{{Threshold: unit.Exactly(unit.PSI)}}}}}},
		String: &sequence.String{Inside: "tubing", Around: []string{"annulus"}, Below: "annulus", HeldMD: depth, Bore: pipe.Size, Up: depth,
			Sections: []sequence.StringSection{{Pipe: pipe, BottomMD: depth, Hole: 2 * pipe.Size}}},
		Steps: []sequence.Step{
			{Name: "set", Ramps: []map[string]unit.Pressure{{"tubing": 1 * unit.PSI}}, Expect: []string{"packer: sets"}},
			{Name: "cool", Temperature: "cold"}},
	}
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	if err != nil {
		return nil, err
	}
	last := func(k int) unit.Force { x := r.Steps[k].Points; return x[len(x)-1].String.Wall }
	if !slices.Equal(r.Steps[1].Unknown, []string{}) {
		return nil, errors.New("packer unknown")
	}
	return last(1) - last(0), nil
}
