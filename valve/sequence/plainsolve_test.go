package sequence_test

import (
	"fmt"
	"math"
	"slices"
)

// plainTolerance in psi: reaching a level to within it is reaching it, and
// passing a limit by less is not passing it. plainHair is what a near miss is,
// plainExact what rounding makes of no miss at all.
const (
	plainTolerance = 1e-7
	plainHair      = 1e-6
	plainExact     = 1e-9
)

// plainGasHair is a near miss where gas stands, whose columns another integration
// gets to a millionth or so.
const plainGasHair = 0.05

func (w *plainWell) hair(x float64) bool {
	exact := plainExact
	if w.gas != "" {
		exact = 0
	}
	return (x > exact && x < w.near) || (x < -exact && x > -w.near)
}

// plainState is how one well stands.
type plainState struct {
	top      []float64 // psi at the top of each compartment
	layers   [][]plainLayer
	warm     string // the well's temperature; empty: undisturbed
	surface  []bool
	applied  []float64
	open     []bool
	armed    []bool
	links    []int
	counted  []int
	waiting  []bool // for the re-arm level
	happened []bool
	flowed   []bool // by formation: its inflow is part of the plan

	fallen []bool // by compartment: air stands over its column

	closed []bool      // by compartment: its gas is shut in
	mass   []float64   // of that, as the pressure that it makes
	key    []plainBody // by compartment: the body that it was last in

	well      *plainWell
	flows     map[int]plainPath // by compartment on the way of what is pumped
	rate      float64           // ft³/s
	injection []float64         // by formation: what it takes above its pressure
	riser     *plainRiser       // nil: nothing flows
}

func (w *plainWell) start() *plainState {
	s := &plainState{well: w, flows: map[int]plainPath{}, injection: make([]float64, len(w.forms))}
	for _, c := range w.comps {
		s.top = append(s.top, c.trapped)
		s.layers = append(s.layers, c.layers)
		s.surface = append(s.surface, c.surface)
		s.applied = append(s.applied, 0)
	}
	for _, p := range w.ports {
		s.open = append(s.open, p.open)
	}
	for _, a := range w.actions {
		s.armed = append(s.armed, !a.disarmed)
	}
	s.closed, s.mass, s.key = make([]bool, len(w.comps)), make([]float64, len(w.comps)), make([]plainBody, len(w.comps))
	for i := range s.key {
		s.key[i] = plainBodyOf(i)
	}
	n := len(w.actions)
	s.links, s.counted, s.waiting, s.happened = make([]int, n), make([]int, n), make([]bool, n), make([]bool, n)
	s.flowed, s.fallen = make([]bool, len(w.forms)), make([]bool, len(w.comps))
	return s
}

// head is the pressure of a compartment's column from its top down to a depth.
func (s *plainState) head(i int, depth float64) float64 {
	sum := 0.0
	for _, l := range s.layers[i] {
		if depth <= l.top {
			break
		}
		sum += l.gradient * (min(depth, l.bottom) - l.top)
	}
	return sum
}

func (s *plainState) at(i int, depth float64) float64 {
	if s.gassy(i) {
		return s.down(i, s.top[i], s.layers[i][0].top, depth)
	}
	p := s.top[i] + s.head(i, depth) - s.lost(i, depth)
	if s.fallen[i] {
		return max(p, 0)
	}
	return p
}

// felt is what an action's triggers feel.
func (s *plainState) felt(a *plainAction) float64 {
	in := s.at(a.inside, a.depth)
	for _, x := range a.more {
		in += x.times * s.at(x.comp, a.depth)
	}
	if a.outside < 0 {
		return in - a.chamber
	}
	return in - s.at(a.outside, a.depth)
}

// plainSolver finds the pressures at all tops.
type plainSolver struct {
	well    *plainWell
	members []int
	offset  []float64 // of a member's top against that of the body's first
	seen    []bool
	bodyOf  []int // by compartment: the first of its body
}

func newPlainSolver(w *plainWell) *plainSolver {
	n := len(w.comps)
	return &plainSolver{well: w, offset: make([]float64, n), seen: make([]bool, n), bodyOf: make([]int, n)}
}

// body gathers what open ports join to compartment i, with the offsets that the
// columns make.
func (k *plainSolver) body(s *plainState, i int) error {
	k.members = append(k.members[:0], i)
	k.offset[i], k.seen[i], k.bodyOf[i] = 0, true, i
	ports := 0
	for n := 0; n < len(k.members); n++ {
		m := k.members[n]
		for p, port := range k.well.ports {
			if !s.open[p] || (port.a != m && port.b != m) {
				continue
			}
			ports++
			other := port.a + port.b - m
			offset := k.offset[m] + s.head(m, port.depth) - s.lost(m, port.depth) - s.head(other, port.depth) + s.lost(other, port.depth) + s.jump(p, other)
			if k.seen[other] {
				if math.Abs(k.offset[other]-offset) > plainFlow {
					return fmt.Errorf("ring of open ports at %q, round which fluid goes by itself", k.well.comps[i].name)
				}
				continue
			}
			k.seen[other], k.bodyOf[other] = true, i
			k.offset[other] = offset
			k.members = append(k.members, other)
		}
	}
	if ports/2 >= len(k.members) && (s.riser != nil || len(s.flows) > 0 || slices.ContainsFunc(k.members, func(m int) bool { return s.gassy(m) || s.fallen[m] })) {
		return fmt.Errorf("ring of open ports at %q", k.well.comps[i].name)
	}
	return nil
}

// rings makes it a fault if open ports make a ring which nothing fixes.
func (k *plainSolver) rings(s *plainState) error {
	clear(k.seen)
	for i := range k.well.comps {
		if k.seen[i] {
			continue
		}
		if err := k.body(s, i); err != nil {
			return err
		}
		ports, fixed := 0, false
		for _, m := range k.members {
			fixed = fixed || s.surface[m] || k.well.comps[m].formation >= 0
		}
		for p, x := range k.well.ports {
			if s.open[p] && slices.Contains(k.members, x.a) {
				ports++
			}
		}
		if ports >= len(k.members) && !fixed {
			return fmt.Errorf("ring of open ports which nothing fixes")
		}
	}
	return nil
}

// solve gives every compartment its pressure. own are the pressures at the tops
// before, injected what was pressed into each compartment since then, as
// pressure times volume.
func (k *plainSolver) solve(s *plainState, own, injected []float64) error {
	clear(k.seen)
	for i := range k.well.comps {
		if k.seen[i] {
			continue
		}
		if err := k.body(s, i); err != nil {
			return err
		}
		body := plainBodyOf(k.members...)
		if slices.ContainsFunc(k.members, s.gassy) {
			if err := k.gasBody(s, own); err != nil {
				return err
			}
			for _, m := range k.members {
				s.key[m] = body
				if injected[m] != 0 {
					return fmt.Errorf("a squeeze of gas")
				}
			}
			continue
		}
		for _, m := range k.members {
			s.key[m] = body
		}
		surface, formation, references := -1, -1, 0
		for _, m := range k.members {
			if s.surface[m] {
				surface = m
				references++
			}
			if k.well.comps[m].formation >= 0 {
				formation = m
			}
		}
		var base float64
		switch {
		case references > 1:
			return fmt.Errorf("two surfaces in the body of %q", k.well.comps[i].name)
		case surface >= 0:
			base = s.applied[surface] - k.offset[surface]
		case formation >= 0:
			f := k.well.forms[k.well.comps[formation].formation]
			for _, m := range k.members {
				if m != formation && k.well.comps[m].formation >= 0 {
					return fmt.Errorf("two formations in the body of %q", k.well.comps[i].name)
				}
			}
			base = f.pressure + s.injection[k.well.comps[formation].formation] - s.head(formation, f.depth) + s.lost(formation, f.depth) - k.offset[formation]
		default:
			var err error
			if base, err = k.trapped(s, own, injected); err != nil {
				return err
			}
		}
		for _, m := range k.members {
			s.top[m] = base + k.offset[m]
			if err := k.airGetsIn(s, m); err != nil {
				return err
			}
		}
	}
	return nil
}

// trapped is the pressure at the top of a trapped body's first compartment: it
// holds what its members held, by volume, and what was pressed into it.
func (k *plainSolver) trapped(s *plainState, own, injected []float64) (float64, error) {
	volume, sum := 0.0, 0.0
	weights := k.weights(s)
	for n, m := range k.members {
		v := weights[n]
		if v == 0 {
			if len(k.members) == 1 && injected[m] == 0 {
				return own[m], nil
			}
			return 0, fmt.Errorf("%q has no capacity", k.well.comps[m].name)
		}
		volume += v
		sum += v*(own[m]-k.offset[m]) + injected[m]
	}
	if len(k.members) == 1 {
		m := k.members[0]
		return own[m] + injected[m]/volume, nil
	}
	return sum / volume, nil
}

// fixed tells whether a surface or a formation fixes the body of a compartment.
func (k *plainSolver) fixed(s *plainState, i int) bool {
	clear(k.seen)
	if k.body(s, i) != nil {
		return true
	}
	for _, m := range k.members {
		if s.surface[m] || k.well.comps[m].formation >= 0 {
			return true
		}
	}
	return false
}

// volumeOf is the volume of the body of a compartment.
func (k *plainSolver) volumeOf(s *plainState, i int) float64 {
	clear(k.seen)
	if k.body(s, i) != nil {
		return 0
	}
	sum := 0.0
	for _, v := range k.weights(s) {
		sum += v
	}
	return sum
}
