package movement_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// strained is the strained length of the string above each node, from what the
// nodes show alone: Hooke, ballooning and heat by the trapezoid, buckling by
// movement.Confined at each node.
func strained(sections []movement.StringSection, inclination unit.Angle, nodes []movement.Node) []float64 {
	strain := func(n movement.Node) float64 {
		s := sections[n.Section]
		p := s.Pipe
		m := p.Material
		as, ai, ao := float64(p.SteelArea()), float64(p.InnerArea()), float64(p.OuterArea())
		lies := movement.Confined{Pipe: p, Hole: s.Hole, Weight: n.Weight, Inclination: inclination}.Under(n.Effective)
		return (float64(n.True)-2*m.Poisson*(ai*float64(n.Inside)-ao*float64(n.Outside)))/(float64(m.Young)*as) +
			float64(m.Expansion)*n.Temperature.Kelvin() + lies.Strain
	}
	out := make([]float64, len(nodes))
	for i := 1; i < len(nodes); i++ {
		a, b := nodes[i-1], nodes[i]
		out[i] = out[i-1] + float64(b.MD-a.MD)*(strain(a)+strain(b))/2
	}
	return out
}

// TestLengthsFollowFromTheNodes: strings with two places that hold, seals, joints,
// plugs and hung loads, in straight holes upright and inclined, buckled or not. How
// far every part has moved is the strain of all that is above it, added up from what
// the nodes show: so the forces that were found keep the lengths that they must.
func TestLengthsFollowFromTheNodes(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 7))
	checked, buckled := 0, 0
	for range 120 {
		inclination := unit.Angle(0)
		if r.IntN(2) == 0 {
			inclination = unit.Angle(20+40*r.Float64()) * unit.Degree
		}
		path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: inclination}, {MD: 10000 * unit.Foot, Inclination: inclination}})
		require.NoError(t, err)
		a := randomAssembly(t, r)
		a.Path, a.Spacing = path, 10*unit.Foot
		m := made(t, a)
		before := randomConditions(r, m, a)
		s, err := m.Land(before)
		require.NoError(t, err)
		landed, err := m.Load(s, before)
		require.NoError(t, err)
		for place := range a.Holds {
			s, err = m.TakeHold(s, place, randomConditions(r, m, a))
			require.NoError(t, err)
		}
		after := randomConditions(r, m, a)
		if r.IntN(2) == 0 { // pulled, with the hole's drag on the way
			after.Top, after.Sliding = movement.OnHookOpen, movement.SlidingUp
			after.Reading, after.Drag = unit.Force(50000+r.Float64()*100000)*unit.PoundForce, unit.Force(r.Float64()*9000)*unit.PoundForce
		}
		l, err := m.Load(s, after)
		require.NoError(t, err)
		if l.Snapping {
			continue
		}
		was, is := strained(a.Sections, inclination, landed.Nodes), strained(a.Sections, inclination, l.Nodes)
		at := func(md unit.Length) float64 {
			for i, n := range l.Nodes {
				if n.MD == md {
					return float64(l.TopMoved) + is[i] - was[i]
				}
			}
			t.Fatalf("no node at %v", md)
			return 0
		}
		const near = 2e-4 // m: the trapezoid's error where a helix begins within 10 ft
		for i, h := range a.Holds {
			require.InDelta(t, float64(l.Holds[i].Moved), at(h.MD), near)
			checked++
		}
		for i, x := range a.Seals {
			require.InDelta(t, float64(l.Seals[i].Travel), at(x.MD), near)
			checked++
		}
		end := a.Sections[len(a.Sections)-1].BottomMD
		require.InDelta(t, float64(l.EndMoved), at(end), near)
		// The weight at a node within a stretch of pipe is the slope of the effective force there, but for
		// what flow outside drags along the pipe: half of the loss's force on the gap, beside that on the pipe.
		for k := 1; k+1 < len(l.Nodes) && after.Drag == 0; k++ {
			u, v, w := l.Nodes[k-1], l.Nodes[k], l.Nodes[k+1]
			if u.Section == v.Section && v.Section == w.Section && u.MD < v.MD && v.MD < w.MD {
				x := a.Sections[v.Section]
				gap := math.Pi / 2 * float64(x.Hole-x.Pipe.OD) / 2 * float64(x.Pipe.OD)
				drag := float64(after.OutsideFriction[v.Section]) * (gap + float64(x.Pipe.OuterArea())) / math.Cos(float64(inclination))
				require.InDelta(t, float64(u.Effective-v.Effective)/float64(v.TVD-u.TVD)-drag, float64(v.Weight), 1e-3)
			}
		}
		// What each cause did to the whole string, from the nodes.
		balloon, heat := 0.0, 0.0
		for i, sign := range map[*movement.Node]float64{&l.Nodes[0]: 1, &landed.Nodes[0]: -1} {
			nodes := l.Nodes
			if i == &landed.Nodes[0] {
				nodes = landed.Nodes
			}
			for k := 1; k < len(nodes); k++ {
				u, v := nodes[k-1], nodes[k]
				p := a.Sections[v.Section].Pipe
				long := float64(v.MD-u.MD) / 2
				ai, ao := float64(p.InnerArea()), float64(p.OuterArea())
				balloon -= sign * long * 2 * p.Material.Poisson / float64(p.Material.Young) / float64(p.SteelArea()) *
					(ai*float64(u.Inside+v.Inside) - ao*float64(u.Outside+v.Outside))
				heat += sign * long * float64(p.Material.Expansion) * (u.Temperature.Kelvin() + v.Temperature.Kelvin())
			}
		}
		require.InDelta(t, balloon, float64(l.Movement.Ballooning), 1e-9)
		require.InDelta(t, heat, float64(l.Movement.Thermal), 1e-9)
		require.InDelta(t, float64(l.BuckledShortening-landed.BuckledShortening), float64(l.Movement.Buckling), 1e-9)
		// What is bent, and what is a helix: where the compression is above its onset, on straight lines
		// between nodes.
		bent, helix := 0.0, 0.0
		share := func(a, b float64) float64 {
			switch {
			case a > 0 && b > 0:
				return 1
			case a <= 0 && b <= 0:
				return 0
			}
			return math.Max(a, b) / math.Abs(a-b)
		}
		for k := 1; k < len(l.Nodes); k++ {
			u, v := l.Nodes[k-1], l.Nodes[k]
			if long := float64(v.MD - u.MD); long > 0 && a.Sections[v.Section].Hole > a.Sections[v.Section].Pipe.OD {
				bent += long * share(-float64(u.Effective)-float64(u.Onset), -float64(v.Effective)-float64(v.Onset))
				helix += long * share(-float64(u.Effective)-2*math.Sqrt2*float64(u.Onset), -float64(v.Effective)-2*math.Sqrt2*float64(v.Onset))
			}
		}
		require.InDelta(t, bent, float64(l.BuckledLength), 1e-6)
		require.InDelta(t, helix, float64(l.HelicalLength), 1e-6)
		if l.BuckledLength > 0 {
			buckled++
		}
		require.False(t, math.IsNaN(float64(l.HangerLoad)))
	}
	require.Greater(t, checked, 200)
	require.Greater(t, buckled, 20)
}
