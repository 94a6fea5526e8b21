package sequence

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/well"
)

// compartments finds, for every compartment, the depths at which anything is ever
// asked or changes: between two of them its pressure is straight.
func (c *compiler) compartments() {
	n := c.Network
	c.wanted = make([][]well.Depth, len(c.plan.Compartments))
	want := func(i int, md unit.Length) { c.wanted[i] = append(c.wanted[i], c.depth(md)) }
	for i, k := range c.plan.Compartments {
		want(i, k.TopMD)
		want(i, k.BottomMD)
		for _, l := range k.Layers {
			want(i, l.ToMD)
		}
		for _, s := range c.plan.Well.Path {
			if k.TopMD < s.MD && s.MD < k.BottomMD {
				want(i, s.MD)
			}
		}
		for _, d := range c.turns() {
			if float64(k.TopMD) < d.MD && d.MD < float64(k.BottomMD) {
				c.wanted[i] = append(c.wanted[i], d)
			}
		}
	}
	// Whatever stands in a compartment's reach.
	all := []unit.Length{}
	for _, p := range c.plan.Ports {
		all = append(all, p.MD)
	}
	for _, d := range c.plan.Devices {
		all = append(all, d.MD)
	}
	for _, f := range c.plan.Formations {
		all = append(all, f.MD)
	}
	for _, s := range c.plan.Steps {
		for _, t := range s.Tests {
			all = append(all, t.MD)
		}
		for _, w := range s.Displace {
			all = append(all, w.FromMD, w.ToMD)
		}
	}
	for _, k := range c.plan.Compartments {
		all = append(all, k.TopMD, k.BottomMD)
		for _, b := range k.Bores {
			all = append(all, b.To)
		}
		for _, l := range k.Layers {
			all = append(all, l.ToMD)
		}
	}
	for _, r := range c.plan.Ratings {
		all = append(all, r.FromMD, r.ToMD)
	}
	all = append(all, c.plan.Begin.depths()...)
	if h := c.plan.Holding; h != nil {
		all = append(all, h.MD)
	}
	feels := slices.ContainsFunc(c.plan.Fluids, func(f Fluid) bool { return f.Kind == ClearBrine || f.Kind == FreshWater || f.Kind.Gas() })
	if feels {
		// A fluid that feels pressure isn't straight between them: some more.
		for k := 1; k < ratingPoints; k++ {
			all = append(all, c.plan.Well.MD*unit.Length(k)/ratingPoints)
		}
	}
	for i, k := range c.plan.Compartments {
		for _, md := range c.plan.drained(k) {
			want(i, md)
		}
		for _, md := range all {
			if k.TopMD < md && md < k.BottomMD {
				want(i, md)
			}
		}
	}
	for i, p := range c.plan.Compartments {
		d := c.wanted[i]
		inOrder(d, func(a, b well.Depth) int { return cmp.Compare(a.MD, b.MD) })
		d = slices.CompactFunc(d, func(a, b well.Depth) bool { return a.MD == b.MD })
		k := well.Compartment{Name: p.Name, Depths: d, Surface: p.Surface, Formation: -1, Trapped: c.forms["compartments."+p.Name+".trapped"],
			Volume: float64(p.capacity()) * float64(p.BottomMD-p.TopMD), Turn: c.turnsUp(float64(p.TopMD), float64(p.BottomMD))}
		for _, b := range p.Bores {
			k.Bores = append(k.Bores, well.Bore{Bottom: float64(b.To), Conduit: b.conduit()})
			if b.OuterWall > 0 {
				k.Walls = append(k.Walls, b.walls())
			}
		}
		if p.Fluid != "" {
			k.Layers = []well.Layer{{Fluid: c.fluid(p.Fluid), Bottom: d[len(d)-1]}}
		}
		for _, l := range p.Layers {
			k.Layers = append(k.Layers, well.Layer{Fluid: c.fluid(l.Fluid), Bottom: c.depth(l.ToMD)})
		}
		n.Compartments = append(n.Compartments, k)
		c.highPoint(i)
		if p.Formation != "" {
			x := &n.Compartments[i]
			x.Formation = c.by.formation[p.Formation]
			x.FormationAt = c.at(i, n.Formations[x.Formation].Depth)
			n.Formations[x.Formation].Face = i
		}
	}
}

// ratingPoints is how many more depths are looked at where a fluid's density
// feels pressure.
const ratingPoints = 16

// turns are the depths at which the well path turns up or down: there the pressure
// along it is greatest or least.
func (c *compiler) turns() []well.Depth {
	var all []well.Depth
	s := c.plan.Well.Path
	for i := 1; i < len(s); i++ {
		if s[i].Inclination <= rightAngle && s[i-1].Inclination <= rightAngle {
			continue
		}
		if (s[i].Inclination > rightAngle) == (s[i-1].Inclination > rightAngle) {
			continue
		}
		a, b := s[i-1].MD, s[i].MD
		for range 60 {
			mid := a + (b-a)/2
			p, err := c.path.At(mid)
			if err != nil {
				break
			}
			if (p.Inclination > rightAngle) == (s[i].Inclination > rightAngle) {
				b = mid
			} else {
				a = mid
			}
		}
		all = append(all, c.depth(b))
	}
	return all
}

// at is which of a compartment's depths that is.
func (c *compiler) at(i int, d well.Depth) int {
	for k, x := range c.Network.Compartments[i].Depths {
		if x.MD == d.MD {
			return k
		}
	}
	return 0 // the plan was checked: it lies within
}

// limits puts together what holds for the whole programme.
func (c *compiler) limits() {
	n := c.Network
	c.Limits = &judge.Limits{Least: c.plan.Rules.Barriers}
	for i, r := range c.plan.Ratings {
		x := judge.Rating{Inside: c.by.compartment[r.Inside], Outside: -1}
		if r.Outside != "" {
			x.Outside = c.by.compartment[r.Outside]
		}
		burst, collapse, err := r.strengths(c.pipes)
		c.check(fmt.Sprintf("ratings[%d]", i), err)
		f := r.factor()
		x.HasBurst, x.HasCollapse = burst > 0, collapse > 0
		x.Burst, x.Collapse = affine.Const(float64(burst)/f), affine.Const(float64(collapse)/f)
		if r.Pipe == nil {
			x.Burst = c.forms["ratings."+r.Name+".burst"].Times(1 / f)
			x.Collapse = c.forms["ratings."+r.Name+".collapse"].Times(1 / f)
		}
		for k, d := range n.Compartments[x.Inside].Depths {
			if d.MD < float64(r.FromMD) || d.MD > float64(r.ToMD) {
				continue
			}
			out := 0
			if x.Outside >= 0 {
				out = -1
				for m, y := range n.Compartments[x.Outside].Depths {
					if y.MD == d.MD {
						out = m
					}
				}
				if out < 0 {
					continue
				}
			} else {
				x.Background = append(x.Background, c.background(r.Background, d))
			}
			x.Depths = append(x.Depths, [2]int{k, out})
		}
		c.Limits.Ratings = append(c.Limits.Ratings, x)
	}
	for _, b := range c.plan.Barriers {
		x := judge.Barrier{Formation: c.by.formation[b.Formation], Port: -1, Action: -1, Until: -1, Column: -1}
		if b.Port != "" {
			x.Port = c.by.port[b.Port]
		}
		if b.Action != "" {
			x.Action = c.by.action[b.Action]
			n.Actions[x.Action].Watched = true
		}
		if b.Until != "" {
			x.Until = c.by.action[b.Until]
			n.Actions[x.Until].Watched = true
		}
		if b.Column != "" {
			x.Column = c.by.compartment[b.Column]
			x.ColumnAt = c.at(x.Column, n.Formations[x.Formation].Depth)
		}
		c.Limits.Barriers = append(c.Limits.Barriers, x)
	}
}

// background is the pressure of a fluid behind the pipe, from surface.
func (c *compiler) background(name string, d well.Depth) affine.Form {
	f := &c.Network.Fluids[c.fluid(name)]
	if f.Columns == nil {
		return f.Density.Times(well.Gravity * d.TVD)
	}
	p, err := f.Columns[0].Carry(0, 0, unit.Length(d.TVD))
	c.check("ratings", err)
	at := affine.Const(float64(p))
	if f.Warm[0] != nil {
		cold, warm, err := f.CarryEnds(0, 0, 0, d.TVD)
		c.check("ratings", err)
		h := c.Network.Heat[0]
		at = at.PlusTimes(h.Shift(-h.C), float64(warm-cold)/(2*h.Radius())).Widen(math.Abs(float64((warm+cold)/2 - p)))
	}
	return affine.Mul(at, f.Scale)
}

// loops finds rings of open ports without anything to fix their pressure: their
// pressures wouldn't be determined.
func (c *compiled) loops() error {
	s := c.Network.Start()
	var faults []error
	visited := make([]bool, len(s.Compartments))
	for i := range s.Compartments {
		if visited[i] {
			continue
		}
		members := s.Body(i)
		fixed, ports := false, 0
		var all []string
		for _, m := range members {
			visited[m] = true
			fixed = fixed || s.Surface[m] || s.Compartments[m].Formation >= 0
			all = append(all, s.Compartments[m].Name)
			for _, p := range s.PortsOf(m) {
				if s.Open[p] {
					ports++
				}
			}
		}
		if ports/2 >= len(members) && !fixed {
			slices.Sort(all)
			faults = append(faults, fault.New("ports", "%s are joined in a ring by open ports and nothing fixes their pressure", strings.Join(all, ", ")))
		}
	}
	return fault.Join("", faults...)
}

const rightAngle = 90 * unit.Degree
