package validation

import (
	"errors"
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

var tubularLoadsSuite = Suite{
	File: "tubular-loads.csv",
	Quantities: map[string]Evaluator{
		"upward force on the plug, from outside": func(in *published.Inputs) (any, error) {
			l, end, err := hangingPlug(in)
			if err != nil {
				return nil, err
			}
			// The wall carries what pushes down on the plug less what pushes up.
			down := unit.Force(float64(end.Inside) * float64(end.Pipe.InnerArea()))
			return down - l, nil
		},
		"wall force above the plug, hanging": func(in *published.Inputs) (any, error) {
			l, _, err := hangingPlug(in)
			return l, err
		},
		"outside area": func(in *published.Inputs) (any, error) {
			p := tubular.Pipe{}
			in.Read("od", &p.OD)
			return p.OuterArea(), nil
		},
		"tension of an anchored string that cools":              anchoredCooling,
		"sinusoidal load, over sqrt(E I w/r)":                   loadRatio(movement.Confined.Sinusoidal, nil),
		"full helix, over sqrt(E I w/r)":                        loadRatio(movement.Confined.Helical, nil),
		"full helix, over the sinusoidal load":                  loadRatio(movement.Confined.Helical, movement.Confined.Sinusoidal),
		"full helix, over the least helical load":               loadRatio(movement.Confined.Helical, movement.Confined.HelicalLeast),
		"yield strength left under tension and inside pressure": yieldShare,
		"packer on the casing":                                  packerOnCasing,
		"pressure force at the end":                             endForce,
		"buckling movement":                                     ofWell(func(a movement.Analysis) unit.Length { return a.Movement.Buckling }),
		"pressure at the bottom outside": func(in *published.Inputs) (any, error) {
			var d unit.Density
			var depth unit.Length
			in.Read("density", &d)
			in.Read("depth", &depth)
			return hydrostatics.Pressure(d, depth), nil
		},
		"external pressure by a rating scaled with that share": func(in *published.Inputs) (any, error) {
			var rating, inside unit.Pressure
			in.Read("rating", &rating)
			in.Read("inside", &inside)
			share, err := yieldShare(in)
			if err != nil {
				return nil, err
			}
			left, ok := share.(float64)
			if !ok {
				return nil, errors.New("a share is no number")
			}
			return rating*unit.Pressure(left) + inside, nil
		},
	},
}

// plugged is the end of a pipe with a plug in it.
type plugged struct {
	Pipe            tubular.Pipe
	Inside, Outside unit.Pressure
}

// hangingPlug is the wall force just above a plug at a string's lower end.
func hangingPlug(in *published.Inputs) (unit.Force, plugged, error) {
	x := plugged{Pipe: tubular.Pipe{Material: tubular.Steel()}}
	in.Read("od", &x.Pipe.OD)
	in.Read("id", &x.Pipe.ID)
	in.Read("inside", &x.Inside)
	in.Read("outside", &x.Outside)
	if err := in.Err(); err != nil {
		return 0, x, err
	}
	const depth = 10000 * unit.Foot
	m, err := oneSection(x.Pipe, depth, movement.Hold{MD: depth})
	if err != nil {
		return 0, x, err
	}
	l, err := landedLoad(m, level(x.Inside, x.Outside, x.Outside, nil), level(x.Inside, x.Outside, x.Outside, nil), false)
	if err != nil {
		return 0, x, err
	}
	return l.Holds[0].WallAbove, x, nil
}

// oneSection is a vertical string of one pipe without room to buckle.
func oneSection(p tubular.Pipe, depth unit.Length, hold movement.Hold) (*movement.MadeUp, error) {
	path, err := hydrostatics.Vertical(depth)
	if err != nil {
		return nil, err
	}
	return movement.Assembly{Sections: []movement.StringSection{{Pipe: p, BottomMD: depth, Hole: p.OD}}, Path: path, Holds: []movement.Hold{hold}}.MakeUp()
}

// level is the same pressures at every depth.
func level(inside, above, below unit.Pressure, temperature *unit.Temperature) movement.Conditions {
	c := movement.Conditions{
		Inside: func(int, unit.Length) unit.Pressure { return inside },
		Outside: func(part int, _ unit.Length) unit.Pressure {
			if part == 0 {
				return above
			}
			return below
		},
	}
	if temperature != nil {
		t := *temperature
		c.Temperature = func(unit.Length) unit.Temperature { return t }
	}
	return c
}

// landedLoad lands a string, holds it or not, and loads it.
func landedLoad(m *movement.MadeUp, before, after movement.Conditions, held bool) (movement.Loading, error) {
	s, err := m.Land(before)
	if err == nil && held {
		s, err = m.TakeHold(s, 0, before)
	}
	if err != nil {
		return movement.Loading{}, err
	}
	return m.Load(s, after)
}

func anchoredCooling(in *published.Inputs) (any, error) {
	var steel unit.Area
	var from, to unit.Temperature
	in.Read("steel", &steel)
	in.Read("from", &from)
	in.Read("to", &to)
	if err := in.Err(); err != nil {
		return nil, err
	}
	p := tubular.Pipe{OD: 3.5 * unit.Inch, Material: tubular.Steel()}
	od := float64(p.OD)
	p.ID = unit.Length(math.Sqrt(od*od - 4/math.Pi*float64(steel)))
	const depth = 9000 * unit.Foot
	m, err := oneSection(p, depth, movement.Hold{MD: depth})
	if err != nil {
		return nil, err
	}
	l, err := landedLoad(m, level(0, 0, 0, &from), level(0, 0, 0, &to), true)
	if err != nil {
		return nil, err
	}
	return l.Holds[0].Load, nil
}

// loadRatio is a load of buckling over another one, or over sqrt(E I w/r).
func loadRatio(load, over func(movement.Confined) unit.Force) Evaluator {
	read := ofHole(load)
	return func(in *published.Inputs) (any, error) {
		a, err := read(in)
		if err != nil {
			return nil, err
		}
		of := over
		if of == nil {
			of = func(c movement.Confined) unit.Force {
				return unit.Force(math.Sqrt(float64(c.Pipe.Material.Young) * float64(c.Pipe.SecondMoment()) * float64(c.Weight) / float64(c.Clearance())))
			}
		}
		b, err := ofHole(of)(in)
		if err != nil {
			return nil, err
		}
		top, ok1 := a.(unit.Force)
		bottom, ok2 := b.(unit.Force)
		if !ok1 || !ok2 {
			return nil, errors.New("a load of buckling is no force")
		}
		return float64(top / bottom), nil
	}
}

// yieldShare is the share of the yield strength that API's ellipse leaves.
func yieldShare(in *published.Inputs) (any, error) {
	var yield, axial, inside unit.Pressure
	in.Read("yield", &yield)
	in.Read("axial", &axial)
	in.Read("inside", &inside)
	if err := in.Err(); err != nil {
		return nil, err
	}
	return float64(tubular.EquivalentYield(yield, axial+inside) / yield), nil
}

// packerOnCasing is a packer at a string's lower end, open below, with weight set
// down on it from above.
func packerOnCasing(in *published.Inputs) (any, error) {
	p := tubular.Pipe{Material: tubular.Steel()}
	var depth, casing unit.Length
	var annulus, tubing unit.Pressure
	var down unit.Force
	in.Read("depth", &depth)
	in.Read("casing", &casing)
	in.Read("od", &p.OD)
	in.Read("id", &p.ID)
	in.Read("annulus", &annulus)
	in.Read("tubing", &tubing)
	in.Read("set-down", &down)
	if err := in.Err(); err != nil {
		return nil, err
	}
	m, err := oneSection(p, depth, movement.Hold{MD: depth, Casing: casing})
	if err != nil {
		return nil, err
	}
	c := level(tubing, annulus, tubing, nil)
	s, err := m.Land(c)
	if err == nil {
		s, err = m.TakeHold(s, 0, c)
	}
	if err != nil {
		return nil, err
	}
	// On the hook the wall force follows the reading: as much as sets the weight down.
	c.Top = movement.OnHookOpen
	l, err := m.Load(s, c)
	if err != nil {
		return nil, err
	}
	c.Reading = l.Reading - down - l.Holds[0].WallAbove
	l, err = m.Load(s, c)
	if err != nil {
		return nil, err
	}
	return l.Holds[0].Casing, nil
}
