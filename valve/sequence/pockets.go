package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/well"
)

// What is lighter than what stands over it rises, and collects at the first high point
// that it comes to: gas, oil and condensate alike. Fluids of a plan stay where they are
// put; the programme names what would not.

// pockets tells, of how a step leaves the well with the nominal values, what rises.
func (k *checker) pockets(i int) []string {
	if k.ends[i] == nil {
		return nil
	}
	s := k.ends[i].State
	var all []string
	for c := range s.Compartments {
		all = append(all, k.pocketsIn(s, c)...)
	}
	for p := range s.Ports {
		if !s.Open[p] {
			continue
		}
		x := &s.Ports[p]
		all = append(all, k.through(s, x, x.A, x.AtA, x.B, x.AtB)...)
		all = append(all, k.through(s, x, x.B, x.AtB, x.A, x.AtA)...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// pocketsIn are those of one compartment: what stands under something heavier, and what
// lies between heavier fluids at a high point of the hole.
func (k *checker) pocketsIn(s *well.State, c int) []string {
	var all []string
	name := k.plan.Compartments[c].Name
	layers := s.Layers(c)
	upper := make([]bool, len(layers)) // a heavier fluid stands at its upper end in the hole, below it
	for n := 1; n < len(layers); n++ {
		a, b, z := layers[n-1], layers[n], layers[n-1].Bottom.MD
		rises := k.turnsUpAt(z) // measured depth grows upwards there
		under, over := b.Fluid, a.Fluid
		if rises {
			under, over = a.Fluid, b.Fluid
		}
		switch {
		case k.lighter(under, over):
			all = append(all, fmt.Sprintf("%q stands under %q in %q at %s: it rises and collects at the high point at %s, which isn't followed",
				k.plan.Fluids[under].Name, k.plan.Fluids[over].Name, name, unit.Length(z).Rounded(5), unit.Length(k.highFrom(s, c, z, rises)).Rounded(5)))
		case rises: // the lower of both ends at the upper one, deeper in the hole
			upper[n] = k.lighter(b.Fluid, a.Fluid)
		case upper[n-1] && k.lighter(a.Fluid, b.Fluid):
			all = append(all, fmt.Sprintf("a pocket of %q stands in %q about the high point at %s, between heavier fluids: what is pumped past it may leave it there",
				k.plan.Fluids[a.Fluid].Name, name, unit.Length(k.highFrom(s, c, z, false)).Rounded(5)))
		}
	}
	return all
}

// through is what rises from one compartment through an open port into heavier fluid.
func (k *checker) through(s *well.State, port *well.Port, from, at, to, there int) []string {
	z := s.Compartments[from].Depths[at].MD
	rises := k.turnsUpAt(z)
	fluid, heavier := s.FluidAt(from, z), s.FluidAt(to, z-1e-6)
	if rises {
		heavier = s.FluidAt(to, z)
	}
	if level, gas := s.GasIn(from); gas { // its end moves
		switch {
		case z <= level.F.C+1e-3:
			fluid = s.Layers(from)[0].Fluid
		case len(s.Layers(from)) > 1 && fluid == s.Layers(from)[0].Fluid:
			fluid = s.Layers(from)[1].Fluid
		}
	}
	high := k.highFrom(s, to, z, rises)
	if !k.lighter(fluid, heavier) || high == s.Compartments[to].Depths[there].MD || s.Low(to) >= 0 {
		return nil
	}
	if level, gas := s.GasIn(to); gas && level.F.C >= z {
		return nil
	}
	return []string{fmt.Sprintf("%q stands in %q at %q, which is open at %s to %q in %q: it rises through that and collects at the high point at %s, which isn't followed",
		k.plan.Fluids[fluid].Name, k.plan.Compartments[from].Name, port.Name, unit.Length(z).Rounded(5), k.plan.Fluids[heavier].Name, k.plan.Compartments[to].Name, unit.Length(high).Rounded(5))}
}

// lighter tells whether a fluid floats on another and doesn't mix with it, whatever their
// tolerances: gas on any liquid, and oil or condensate, which are lighter than fresh water,
// on what isn't. Brines mix.
func (k *checker) lighter(a, b int) bool {
	f, g := &k.plan.Fluids[a], &k.plan.Fluids[b]
	if f.Kind.Gas() || g.Kind.Gas() {
		return f.Kind.Gas() && !g.Kind.Gas()
	}
	const water = 990 * unit.KilogramPerCubicMetre // warm
	return f.Kind != FreshWater && f.Density.Greatest < water && (g.Kind == FreshWater || g.Density.Least >= water)
}

// turnsUpAt tells whether the hole rises towards its end at a measured depth.
func (k *checker) turnsUpAt(md float64) bool { return k.tvdAt(md+0.01) < k.tvdAt(md-0.01)-1e-9 }

// highFrom is the first high point of a compartment up the hole from a depth: where the
// hole turns down again, or where the compartment ends.
func (k *checker) highFrom(s *well.State, c int, md float64, towardsEnd bool) float64 {
	d := s.Compartments[c].Depths
	at := md
	if towardsEnd {
		for _, x := range d {
			if x.MD > at {
				if x.TVD > k.tvdAt(at)+1e-6 {
					break
				}
				at = x.MD
			}
		}
		return at
	}
	for _, x := range slices.Backward(d) {
		if x.MD < at {
			if x.TVD > k.tvdAt(at)+1e-6 {
				break
			}
			at = x.MD
		}
	}
	return at
}
