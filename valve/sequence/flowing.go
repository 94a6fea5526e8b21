package sequence

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// knot is a pressure on the way up while zones flow.
type knot struct {
	md, tvd  float64
	pressure affine.Form
}

// flowing is the well while a step produces: nil where nothing flows, which the rates
// say. Between where zones come in, the string's pressure is straight in true vertical
// depth, and friction lies anywhere between along it and along the hole.
func (c *compiled) flowing(s *well.State, p *Produce) (*well.Flowed, error) {
	zs := c.zones(s, p)
	if len(zs) == 0 {
		return nil, nil
	}
	if err := c.throttled(zs); err != nil {
		return nil, err
	}
	if len(zs) > affine.MostInputs {
		return nil, walk.ErrEnclosed
	}
	solve := c.flows(p, zs)
	var mid [affine.MostInputs]float64
	in := make([]affine.Input, len(zs))
	for i, z := range zs {
		f := s.Formations[z.formation].Pressure
		in[i], mid[i] = affine.Input{Line: affine.Flat(f), Step: 2e4}, f.C
	}
	if _, err := solve(mid); errors.Is(err, production.ErrNoFlow) || errors.Is(err, production.ErrUnresolved) {
		return nil, nil
	} else if err != nil {
		return nil, err
	}
	f := &well.Flowed{Root: c.by.compartment[p.Compartment], Surface: affine.Const(float64(p.Surface)), Profiles: map[int]well.Profile{}, Jumps: map[int]affine.Form{},
		Same: func(s *well.State) bool { return slices.Equal(c.zones(s, p), zs) }}
	knots := []knot{{float64(c.plan.Compartments[f.Root].TopMD), s.Compartments[f.Root].Depths[0].TVD, f.Surface}}
	sandface := make([]affine.Form, len(zs))
	for i, z := range zs {
		out, err := affine.Enclose(in, 0, p.lifted(), func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			a, err := solve(x)
			if err == nil {
				y[0], y[1] = float64(a.flow.Zones[i].Tubing), float64(a.flow.Zones[i].Sandface)
			}
			return y, err
		})
		if err != nil {
			return nil, flowUnfound{err}
		}
		sandface[i] = out[1].F
		knots = append(knots, knot{c.entry(s, p, z), float64(z.tvd), out[0].F})
	}
	inOrder(knots, func(a, b knot) int { return cmp.Compare(a.tvd, b.tvd) })
	up := riser{c, p, zs, knots, in, solve}
	for i, z := range zs {
		// From the face to the choke the zone's own fluid stands; above it what flows up.
		above := z.choke == 0
		for at := s.Formations[z.formation].Face; ; {
			if above {
				var err error
				if f.Profiles[at], err = up.profile(&s.Compartments[at]); err != nil {
					return nil, flowUnfound{err}
				}
			} else {
				f.Profiles[at] = standing(s, at, float64(c.plan.Formations[z.formation].Inflow.weighs()))
			}
			port, next := c.towards(s, f.Root, at)
			if port < 0 {
				break
			}
			if _, ok := p.Chokes[s.Ports[port].Name]; ok && !above {
				above = true
				jump := sandface[i].Minus(knotAt(knots, float64(z.tvd)))
				if s.Ports[port].A == at { // side A is that of the zone
					jump = jump.Times(-1)
				}
				f.Jumps[port] = jump
			}
			at = next
		}
	}
	return f, nil
}

// flowUnfound says that what zones give isn't found with all values that are looked at
// together.
type flowUnfound struct{ why error }

func (e flowUnfound) Error() string {
	return "what the zones give isn't found with all values of their pressures: " + strings.TrimPrefix(e.why.Error(), "production: ")
}

func (e flowUnfound) Is(target error) bool { return target == walk.ErrEnclosed }

// flowAnswer is what the zones give at pressures of their formations, and the sections of
// the string that it makes where those follow from it.
type flowAnswer struct {
	flow     production.Flow
	sections []section
	err      error
}

// flowAt finds it.
type flowAt func(x [affine.MostInputs]float64) (flowAnswer, error)

// flows solves what the zones give at pressures of their formations, each choice once.
func (c *compiled) flows(p *Produce, zs []zone) flowAt {
	type question struct {
		produce *Produce
		zones   string
		x       [affine.MostInputs]float64
	}
	which := fmt.Sprint(zs)
	return func(x [affine.MostInputs]float64) (flowAnswer, error) {
		q := question{p, which, x}
		if a, ok := c.known.Load(q); ok {
			return a.(flowAnswer), a.(flowAnswer).err
		}
		var a flowAnswer
		a.flow, a.sections, a.err = c.flow(p, zs, func(f int) unit.Pressure {
			k := slices.IndexFunc(zs, func(z zone) bool { return z.formation == f })
			return unit.Pressure(x[k])
		})
		c.known.Store(q, a)
		return a, a.err
	}
}

// entry is the measured depth at which a zone comes into the string.
func (c *compiled) entry(s *well.State, p *Produce, z zone) float64 {
	root := c.by.compartment[p.Compartment]
	for at := s.Formations[z.formation].Face; ; {
		port, next := c.towards(s, root, at)
		if port < 0 {
			return s.Formations[z.formation].Depth.MD
		}
		if _, ok := p.Chokes[s.Ports[port].Name]; ok {
			return float64(c.plan.Ports[port].MD)
		}
		at = next
	}
}

// towards is the open port through which a compartment is reached from the root, and
// the compartment on the other side; -1 at the root.
func (c *compiled) towards(s *well.State, root, of int) (port, next int) {
	by := map[int]int{root: -1}
	order := []int{root}
	for k := 0; k < len(order); k++ {
		for i, x := range s.Ports {
			for _, pair := range [2][2]int{{x.A, x.B}, {x.B, x.A}} {
				if _, seen := by[pair[1]]; s.Open[i] && pair[0] == order[k] && !seen {
					by[pair[1]] = i
					order = append(order, pair[1])
				}
			}
		}
	}
	if port = by[of]; port < 0 {
		return -1, of
	}
	return port, s.Ports[port].A + s.Ports[port].B - of
}

// knotAt is the flowing pressure where a zone comes in.
func knotAt(knots []knot, tvd float64) affine.Form {
	for _, k := range knots {
		if k.tvd == tvd {
			return k.pressure
		}
	}
	return affine.Form{}
}

// standing is what a fluid at rest makes in a compartment.
func standing(s *well.State, i int, density float64) well.Profile {
	k := &s.Compartments[i]
	profile := make(well.Profile, len(k.Depths))
	for d := range profile {
		profile[d] = affine.Const(density * well.Gravity * (k.Depths[d].TVD - k.Depths[0].TVD))
	}
	return profile
}

// flowed keeps what the nominal walk shows of a step that produces.
func (k *checker) flowed(w *walk.World, step int) {
	for len(k.flowResults) <= step {
		k.flowResults = append(k.flowResults, nil)
	}
	if k.flowResults[step] == nil {
		k.flowStates[step] = w.State.Clone()
		k.flowResults[step], k.pumpFault = k.atDevices(w.State)
	}
}
