package sequence

import (
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// trapped gives what nothing fixes at the start the pressure that it was closed in
// with as the string was run: that of its own fluid from surface to its top.
func (d *deriver) trapped() {
	path := d.path()
	if path == nil {
		return
	}
	for i := range d.plan.Compartments {
		c := &d.plan.Compartments[i]
		if c.Trapped.Greatest != 0 || d.fixed(c.Name) {
			continue
		}
		tvd, err := path.TVD(c.TopMD)
		if err != nil {
			continue
		}
		name := c.Fluid
		if len(c.Layers) > 0 {
			name = c.Layers[0].Fluid
		}
		k := slices.IndexFunc(d.plan.Fluids, func(f Fluid) bool { return f.Name == name })
		if k < 0 {
			continue
		}
		if band, ok := d.column(d.plan.Fluids[k], tvd); ok && band.Greatest > 0 {
			c.Trapped = band
			c.Note += "; closed in at the start with the pressure of its fluid from surface"
		}
	}
}

// fixed tells whether something fixes a compartment's pressure at the start: surface
// or a formation, in it or through open ports.
func (d *deriver) fixed(name string) bool {
	seen := map[string]bool{name: true}
	for todo := []string{name}; len(todo) > 0; todo = todo[1:] {
		for _, c := range d.plan.Compartments {
			if c.Name == todo[0] && (c.Surface || c.Formation != "") {
				return true
			}
		}
		for _, p := range d.plan.Ports {
			if !p.Open || !slices.Contains(p.Joins, todo[0]) {
				continue
			}
			for _, other := range p.Joins {
				if !seen[other] {
					seen[other] = true
					todo = append(todo, other)
				}
			}
		}
	}
	return false
}

// column is the pressure of a fluid from surface to a vertical depth, with the
// tolerance of its density.
func (d *deriver) column(f Fluid, tvd unit.Length) (unit.Band[unit.Pressure], bool) {
	var feels hydrostatics.Fluid
	switch f.Kind {
	case ClearBrine:
		feels = f.brine()
	case FreshWater:
		feels = f.water()
	case NaturalGas: // what was closed in depends on how it came there: the plan says it
		return unit.Band[unit.Pressure]{}, false
	default:
		return unit.Band[unit.Pressure]{Least: hydrostatics.Pressure(f.Density.Least, tvd), Nominal: hydrostatics.Pressure(f.Density.Nominal, tvd),
			Greatest: hydrostatics.Pressure(f.Density.Greatest, tvd)}, true
	}
	points := d.plan.Well.Temperatures[Undisturbed]
	at := make([]hydrostatics.TemperaturePoint, len(points))
	for i, m := range points {
		at[i] = hydrostatics.TemperaturePoint(m)
	}
	t, err := hydrostatics.NewTemperatureProfile(at)
	if err != nil {
		return unit.Band[unit.Pressure]{}, false
	}
	col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: feels, TopTVD: 0, BottomTVD: tvd}}, t, hydrostatics.Reference{})
	if err != nil {
		return unit.Band[unit.Pressure]{}, false
	}
	p, err := col.Carry(0, 0, tvd)
	if err != nil {
		return unit.Band[unit.Pressure]{}, false
	}
	if f.Kind == FreshWater || f.Density.Nominal == 0 {
		return unit.Exactly(p), true
	}
	return unit.Band[unit.Pressure]{Least: p * unit.Pressure(f.Density.Least/f.Density.Nominal), Nominal: p, Greatest: p * unit.Pressure(f.Density.Greatest/f.Density.Nominal)}, true
}
