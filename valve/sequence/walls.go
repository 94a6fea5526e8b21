package sequence

import (
	"slices"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/valve/sequence/internal/well"
)

// mostExpansion is more than any liquid of a well has.
const mostExpansion = 2e-3 * unit.PerFahrenheit

// space is a bore between its elastic walls, of steel and held at both ends.
func (b Bore) space() confined.Space {
	steel := tubular.Steel()
	tube := func(od, id unit.Length) confined.Tube {
		return confined.Tube{OD: od, ID: id, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}
	}
	s := confined.Space{Outer: tube(b.Outer+2*b.OuterWall, b.Outer)}
	if b.Inner > 0 {
		inner := tube(b.Inner, b.Inner-2*b.InnerWall)
		s.Inner = &inner
	}
	return s
}

// walls are how it gives way to pressure in it, and to heat.
func (b Bore) walls() well.Wall {
	s := b.space()
	return well.Wall{Bottom: float64(b.To), Area: float64(b.conduit().Area()), Compliance: float64(s.Compliance()), Expansion: s.Expansion(1, 1)}
}

// walls checks those of a bore: they are known of all of a compartment, or of none.
func (v *validation) walls(path string, c Compartment, b Bore) {
	v.notNegative(path+".outer_wall", b.OuterWall, float64(b.OuterWall))
	v.notNegative(path+".inner_wall", b.InnerWall, float64(b.InnerWall))
	known := c.Bores[0].OuterWall > 0
	switch {
	case known != (b.OuterWall > 0):
		v.fault(path+".outer_wall", "is %v; the walls of all bores of a compartment are known, or of none", b.OuterWall)
	case b.InnerWall > 0 && (!known || b.Inner == 0):
		v.fault(path+".inner_wall", "stands without an outer_wall or without an inner pipe")
	case known && b.Inner > 0 && !(b.InnerWall > 0):
		v.fault(path+".inner_wall", "is missing beside an outer_wall: the wall of the pipe within")
	case known:
		v.faultIf(path, b.space().Validate())
	}
}

// pressed checks a volume that goes into a compartment between known walls.
func (v *validation) pressed(path, name string, x unit.Volume) {
	if !finite(float64(x)) || x > mostPressed || x < -mostPressed {
		v.fault(path, "is %v; must be from %v to %v", x, -mostPressed, mostPressed)
	}
	for _, c := range v.plan.Compartments {
		if c.Name == name && !c.walled() {
			v.fault(path, "the walls of %q aren't known: give its bores outer_wall, and inner_wall where a pipe is within", name)
		}
	}
}

// mostPressed is more than any trapped space takes.
const mostPressed = 1000 * unit.Barrel

// walled tells whether a compartment's walls are known.
func (c Compartment) walled() bool { return len(c.Bores) > 0 && c.Bores[0].OuterWall > 0 }

// unwalled are trapped compartments that heat would change, if their walls were known.
func (k *checker) unwalled() []string {
	var all []string
	for i, c := range k.plan.Compartments {
		stated := slices.ContainsFunc(k.plan.Steps, func(s Step) bool { _, ok := s.PressureChange[c.Name]; return ok })
		if c.walled() || stated {
			continue
		}
		for n, s := range k.plan.Steps {
			was := k.before(n)
			if s.Temperature == "" || was.Temperature == k.Steps[n].Temperature {
				continue
			}
			trapped := true
			for _, m := range was.Body(i) {
				trapped = trapped && !was.Surface[m] && was.Compartments[m].Formation < 0 && !was.Closed(m)
			}
			if trapped {
				all = append(all, c.Name)
				break
			}
		}
	}
	return all
}

// strokes puts together what an action takes from compartments.
func (c *compiler) strokes(all map[string]unit.Volume) []well.Stroke {
	var list []well.Stroke
	for _, name := range sortedKeys(all) {
		list = append(list, well.Stroke{Compartment: c.by.compartment[name], Volume: float64(all[name])})
	}
	return list
}
