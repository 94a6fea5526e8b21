package validation

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

var movementSuite = Suite{
	File: "tubular-movement.csv",
	Quantities: map[string]Evaluator{
		"free movement":                ofWell(func(a movement.Analysis) unit.Length { return a.Movement.Total() }),
		"free movement, node by node":  landedMovement,
		"piston movement":              ofWell(func(a movement.Analysis) unit.Length { return a.Movement.Piston }),
		"buckling movement":            ofWell(func(a movement.Analysis) unit.Length { return a.Movement.Buckling }),
		"ballooning movement":          ofWell(func(a movement.Analysis) unit.Length { return a.Movement.Ballooning }),
		"thermal movement":             ofWell(func(a movement.Analysis) unit.Length { return a.Movement.Thermal }),
		"piston force change, tension": ofWell(func(a movement.Analysis) unit.Force { return a.Sections[0].PistonChange }),
		"effective force above seals":  ofWell(func(a movement.Analysis) unit.Force { return a.EndEffective }),
		"true force above seals":       ofWell(func(a movement.Analysis) unit.Force { return a.EndForce }),
		"effective weight":             ofWell(func(a movement.Analysis) unit.WeightPerLength { return a.Sections[0].Final.Weight }),
		"height of neutral point":      ofWell(func(a movement.Analysis) unit.Length { return a.Neutral }),
		"slack-off stretch":            ofWell(func(a movement.Analysis) unit.Length { return a.SlackOff.Stretch }),
		"slack-off buckling":           ofWell(func(a movement.Analysis) unit.Length { return a.SlackOff.Buckling }),
		"force on the packer":          ofWell(func(a movement.Analysis) unit.Force { return a.PackerForce }),
		"pull that lifts the seals":    hangerLoad,
		"pressure force at the end":    endForce,
		"sinusoidal load":              ofHole(movement.Confined.Sinusoidal),
		"helical load, least":          ofHole(movement.Confined.HelicalLeast),
		"helical load, full":           ofHole(movement.Confined.Helical),
		"sinusoidal load, vertical":    ofHole(movement.Confined.VerticalSinusoidal),
		"helical load, vertical":       ofHole(movement.Confined.VerticalHelical),
	},
}

// well reads the classical case: a uniform string in a vertical well, with the
// same fluid on both sides at first.
func well(in *published.Inputs) movement.Vertical {
	pipe := tubular.Pipe{Material: tubular.Steel()}
	var depth, hole unit.Length
	var v movement.Vertical
	in.Read("od", &pipe.OD)
	in.Read("id", &pipe.ID)
	in.Optional("weight", &pipe.Weight)
	in.Read("depth", &depth)
	hole = pipe.OD
	in.Optional("hole", &hole)
	v.Sections = []movement.StringSection{{Pipe: pipe, BottomMD: depth, Hole: hole}}
	if v.Closed = !in.Has("bore"); !v.Closed {
		in.Read("bore", &v.Seals.Bore)
	}
	in.Optional("initial", &v.Initial.InsideDensity)
	v.Initial.OutsideDensity = v.Initial.InsideDensity
	v.Final = v.Initial
	in.Optional("inside", &v.Final.InsideDensity)
	in.Optional("outside", &v.Final.OutsideDensity)
	in.Optional("pi", &v.Final.InsideSurface)
	in.Optional("po", &v.Final.OutsideSurface)
	in.Optional("warming", &v.Warming)
	if in.Has("slackoff") {
		v.Seals.Restraint = movement.Anchored
		in.Read("slackoff", &v.SlackOff)
	}
	return v
}

func ofWell[Q unit.Scalar](of func(movement.Analysis) Q) Evaluator {
	return func(in *published.Inputs) (any, error) {
		a, err := well(in).Analyse()
		if err != nil {
			return nil, err
		}
		return of(a), nil
	}
}

// landedCase is the classical case node by node.
func landedCase(in *published.Inputs) (movement.Case, error) {
	v := well(in)
	path, err := hydrostatics.Vertical(v.Sections[0].BottomMD)
	if err != nil {
		return movement.Case{}, err
	}
	state := func(c movement.WellFluids, d unit.TemperatureDifference) movement.WellProfiles {
		return movement.WellProfiles{Inside: c.Inside, Outside: c.Outside, Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(150).Add(d) }}
	}
	l, err := movement.String{Sections: v.Sections, Path: path, Seals: v.Seals}.Land(state(v.Initial, 0), v.SlackOff)
	if err != nil {
		return movement.Case{}, err
	}
	return l.Load(state(v.Final, v.Warming))
}

func landedMovement(in *published.Inputs) (any, error) {
	c, err := landedCase(in)
	return c.Movement.Total(), err
}

func hangerLoad(in *published.Inputs) (any, error) {
	c, err := landedCase(in)
	return c.HangerLoad, err
}

func endForce(in *published.Inputs) (any, error) {
	var e movement.End
	in.Read("bore", &e.Bore)
	in.Read("od", &e.OD)
	in.Read("id", &e.ID)
	in.Read("inside", &e.Inside)
	in.Read("outside", &e.Outside)
	e.Below = e.Inside
	return e.Force(), nil
}

func ofHole(load func(movement.Confined) unit.Force) Evaluator {
	return func(in *published.Inputs) (any, error) {
		c := movement.Confined{Pipe: tubular.Pipe{Material: tubular.Steel()}}
		in.Read("od", &c.Pipe.OD)
		in.Read("id", &c.Pipe.ID)
		in.Read("hole", &c.Hole)
		in.Read("weight", &c.Weight)
		in.Read("inclination", &c.Inclination)
		return load(c), nil
	}
}
