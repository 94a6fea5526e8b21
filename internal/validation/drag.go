package validation

import (
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/tubular"
	"completion.example/tubular/drag"
)

var dragSuite = Suite{
	File: "tubular-drag.csv",
	Quantities: map[string]Evaluator{
		"hook load, rotating":              verticalHookLoad,
		"pull around a bend":               capstan,
		"pull around a bend, node by node": bend,
		"hook load in a straight hole":     incline,
	},
}

// rig is a string of one pipe in air, along a path with one friction factor.
func rig(weight unit.WeightPerLength, length unit.Length, friction float64, stations ...hydrostatics.Station) (drag.String, error) {
	path, err := hydrostatics.NewPath(stations)
	pipe := tubular.Pipe{OD: 5 * unit.Inch, ID: 4.276 * unit.Inch, Weight: weight, Material: tubular.Steel()}
	return drag.String{
		Sections: []drag.PipeSection{{Pipe: pipe, Length: length}}, BottomMD: length, Path: path,
		HoleSections: []drag.HoleSection{{BottomMD: length, Friction: friction, Hole: 8.5 * unit.Inch}},
	}, err
}

// verticalHookLoad takes the steel's area from weight and density, as a
// buoyancy factor does.
func verticalHookLoad(in *published.Inputs) (any, error) {
	var weight unit.WeightPerLength
	var length unit.Length
	var fluid, steel unit.Density
	in.Read("weight", &weight)
	in.Read("length", &length)
	in.Read("fluid", &fluid)
	in.Read("steel", &steel)
	s, err := rig(weight, length, 0, hydrostatics.Station{}, hydrostatics.Station{MD: length})
	if err != nil {
		return nil, err
	}
	p := &s.Sections[0].Pipe
	p.Material.Density = steel
	od, area := float64(p.OD), float64(weight/unit.KilogramPerMetre)/float64(steel)
	p.ID = unit.Length(math.Sqrt(od*od - 4/math.Pi*area))
	s.Inside, s.Outside = fluid, fluid
	prepared, err := s.Prepare()
	if err != nil {
		return nil, err
	}
	return prepared.HookLoad(drag.Rotating, 0), nil
}

func readBend(in *published.Inputs) (far unit.Force, friction float64, bend unit.Angle) {
	in.Read("far", &far)
	in.Read("friction", &friction)
	in.Read("bend", &bend)
	return far, friction, bend
}

func capstan(in *published.Inputs) (any, error) { return drag.Capstan(readBend(in)), nil }

// bend pulls a string that weighs next to nothing around a bend.
func bend(in *published.Inputs) (any, error) {
	far, friction, angle := readBend(in)
	end := 1000 * unit.Foot
	s, err := rig(1e-6*unit.NewtonPerMetre, end, friction,
		hydrostatics.Station{}, hydrostatics.Station{MD: end / 2, Inclination: angle / 2}, hydrostatics.Station{MD: end, Inclination: angle})
	if err != nil {
		return nil, err
	}
	s.Spacing = unit.Foot
	prepared, err := s.Prepare()
	if err != nil {
		return nil, err
	}
	return prepared.HookLoad(drag.Pulled, far), nil
}

func incline(in *published.Inputs) (any, error) {
	var weight unit.WeightPerLength
	var length unit.Length
	var inclination unit.Angle
	var friction float64
	var motion drag.Motion
	in.Read("weight", &weight)
	in.Read("length", &length)
	in.Read("inclination", &inclination)
	in.Read("friction", &friction)
	in.Read("motion", &motion)
	s, err := rig(weight, length, friction, hydrostatics.Station{Inclination: inclination}, hydrostatics.Station{MD: length, Inclination: inclination})
	if err != nil {
		return nil, err
	}
	prepared, err := s.Prepare()
	if err != nil {
		return nil, err
	}
	return prepared.HookLoad(motion, 0), nil
}
