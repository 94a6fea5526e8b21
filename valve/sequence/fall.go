package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// between is how far apart the depths are between which the string takes the pressure
// about a level as straight.
const between = 50 * unit.Foot

// drained are more depths of a compartment whose level falls, in a plan with a string.
func (p *Plan) drained(c Compartment) []unit.Length {
	falls := slices.ContainsFunc(p.Steps, func(s Step) bool {
		return slices.ContainsFunc(s.Do, func(a Act) bool { return a.Drain == c.Name })
	})
	if p.Begin != nil {
		_, begun := p.Begin.Levels[c.Name]
		falls = falls || begun
		for _, m := range p.Begin.String {
			_, then := m.Levels[c.Name]
			falls = falls || then
		}
	}
	if !falls || p.String == nil {
		return nil
	}
	var all []unit.Length
	for md := c.TopMD + between; md < c.BottomMD; md += between {
		all = append(all, md)
	}
	return all
}

// before is the nominal well as a step finds it; the first finds the well that the plan
// begins with.
func (k *checker) before(i int) *well.State {
	if i > 0 {
		return k.ends[i-1].State
	}
	return k.nominal.Before[0][0].State
}

// volumeDown is the volume of a compartment from its top to a measured depth.
func (c Compartment) volumeDown(md unit.Length) unit.Volume {
	if c.Capacity != 0 || len(c.Bores) == 0 {
		return unit.Volume(float64(c.capacity()) * float64(md-c.TopMD))
	}
	sum, top := 0.0, c.TopMD
	for _, b := range c.Bores {
		if to := min(b.To, md); to > top {
			sum += float64(b.conduit().Area()) * float64(to-top)
			top = to
		}
	}
	return unit.Volume(sum)
}

// down is how far the level of a compartment has fallen: the depth, and the volume.
func (k *checker) down(s *well.State, c int) (md unit.Length, volume unit.Volume) {
	p := k.plan.Compartments[c]
	if s.Low(c) < 0 {
		return p.TopMD, 0
	}
	md = unit.Length(s.LevelAt(c))
	return md, p.volumeDown(md)
}

// levels are those of a step, with the nominal values.
func (k *checker) levels(i int) []LevelAt {
	var all []LevelAt
	states := []*well.State{k.before(i)}
	for n := range k.standstills[i] {
		states = append(states, k.standstills[i][n].world.State)
	}
	for c, p := range k.plan.Compartments {
		x := LevelAt{Compartment: p.Name}
		low := false
		for n, s := range states {
			if s.Low(c) < 0 {
				continue
			}
			low = true
			md, volume := k.down(s, c)
			if md > x.Depth {
				x.Depth, x.TVD, x.Fill = md, unit.Length(k.tvdAt(float64(md))), volume
			}
			x.Fluid = k.Network.Fluids[s.FluidAt(c, float64(md))].Name
			if n == 0 {
				continue
			}
			if _, was := k.down(states[n-1], c); volume > was || volume == 0 && states[n-1].Low(c) < 0 {
				x.Falls = true
				x.Lost += volume - was
				for _, m := range s.Body(c) {
					if f := s.Compartments[m].Formation; f >= 0 {
						x.Into = k.plan.Formations[f].Name
					}
				}
			}
		}
		if low {
			x.Filled = states[len(states)-1].Low(c) < 0
			all = append(all, x)
		}
	}
	return all
}

// fillVolumes are what fills columns that had fallen.
func (k *checker) fillVolumes(before, after *well.State) []Volume {
	var all []Volume
	for c, p := range k.plan.Compartments {
		if before.Low(c) < 0 || after.Low(c) >= 0 {
			continue
		}
		md, volume := k.down(before, c)
		if volume > 0 {
			all = append(all, Volume{Compartment: p.Name, What: "fill with " + k.Network.Fluids[before.FluidAt(c, float64(md))].Name, Volume: volume})
		}
	}
	return all
}

// keptFull tells of columns that stand open, lose fluid and are taken as kept full.
func (k *checker) keptFull(i int) []string {
	if k.ends[i] == nil {
		return nil
	}
	const none = 0.5 * unit.PSI
	s := k.ends[i].State
	into := map[string][]string{} // formations, by compartment
	for c := range s.Compartments {
		m := s.SecondReference(c)
		if m.With < 0 || unit.Pressure(m.Excess.F.C) < none || s.Surface[c] || !s.Surface[m.With] || !s.Applied[m.With].Same(affine.Line{}, float64(none)) {
			continue
		}
		if f := s.Compartments[c].Formation; f >= 0 {
			name := k.plan.Compartments[m.With].Name
			into[name] = append(into[name], k.plan.Formations[f].Name)
		}
	}
	var all []string
	for _, name := range sortedKeys(into) {
		slices.Sort(into[name])
		text := fmt.Sprintf("%q stands open, loses fluid into %q and is taken as kept full", name, into[name])
		if len(into[name]) == 1 {
			text = fmt.Sprintf(`%q stands open, loses fluid into %q and is taken as kept full; {"drain": %q} in "do" lets its level fall`, name, into[name][0], name)
		}
		all = append(all, text)
	}
	return all
}
