package drag

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// terms are those of an element, for a formula.
func terms(e *element) precise.Values {
	return precise.Values{"w": e.weight, "S": e.side, "B": e.build, "T": e.turn, "mu": e.μ, "L": e.length}
}

// Drag between two depths, the force at the middle of each length foreseen in four
// rounds, worked with 256 bits: from below for a string that hangs free, from above
// for one that is held.
func TestAlongWorked(t *testing.T) {
	p, err := bend(t).Prepare()
	require.NoError(t, err)
	force := func(md unit.Length) unit.Force { return 30000 - 40*unit.Force(md) }
	for _, c := range []struct {
		motion   Motion
		from, to unit.Length
		held     bool
		element  int
		way      float64
	}{{Pulled, 230, 400, false, 0, 1}, {Pulled, 30, 170, true, 1, -1}, {RunIn, 230, 400, false, 0, 1}} {
		x, err := p.Along(c.motion, c.from, c.to, c.held, force)
		require.NoError(t, err)
		e := &p.elements[c.element]
		of := terms(e)
		of["a"], of["b"], of["way"], of["sign"] = float64(c.from), float64(c.to), c.way, c.motion.sign()
		precise.Equal(t, float64(x.Total), `
			f = 30000 - 40*(a + b)/2
			k = sign*mu*(b - a)/L
			d1 = k*sqrt(pow(S - f*B, 2) + pow(f*T, 2))
			f1 = f + way*d1/2
			d2 = k*sqrt(pow(S - f1*B, 2) + pow(f1*T, 2))
			f2 = f + way*d2/2
			d3 = k*sqrt(pow(S - f2*B, 2) + pow(f2*T, 2))
			f3 = f + way*d3/2
			k*sqrt(pow(S - f3*B, 2) + pow(f3*T, 2))`, of)
	}
	_, err = p.Along(Pulled, 400, 230, false, force)
	require.ErrorContains(t, err, "no force is known, permitted a force between two depths from above")
	_, err = p.Along(Pulled, 30, 400, false, func(unit.Length) unit.Force { return unit.Force(math.Inf(1)) })
	require.ErrorContains(t, err, "must be finite")
}

// Other weights stand at the middle of each element.
func TestOtherWeightsWorked(t *testing.T) {
	p, err := bend(t).Prepare()
	require.NoError(t, err)
	q, err := p.With([]float64{0.11, 0.22}, func(md unit.Length) unit.WeightPerLength { return 100 + 0.3*unit.WeightPerLength(md) })
	require.NoError(t, err)
	for i, middle := range []float64{310, 100} {
		e, was := &q.elements[i], &p.elements[i]
		of := precise.Values{"m": middle, "h": was.drop, "l": was.lever}
		precise.Equal(t, e.weight, "(100 + 0.3*m)*h", of)
		precise.Equal(t, e.side, "(100 + 0.3*m)*l", of)
	}
	require.Equal(t, []float64{0.22, 0.11}, []float64{q.elements[0].μ, q.elements[1].μ})
	_, err = p.With([]float64{0.1}, nil)
	require.ErrorContains(t, err, "drag: factors: has 1; must have one for each of 2 zones")
	_, err = p.With(nil, func(unit.Length) unit.WeightPerLength { return unit.WeightPerLength(math.NaN()) })
	require.ErrorContains(t, err, "must be finite")
}

// Weight set down marches up by midpoints: each element's rise at the force half of
// its own rise further on.
func TestSetDownMarchWorked(t *testing.T) {
	p, err := bend(t).Prepare()
	require.NoError(t, err)
	s := p.pushed(-500) // a pull: nothing buckles
	require.Zero(t, s.Helical)
	lower, upper := terms(&p.elements[0]), terms(&p.elements[1])
	of := precise.Values{}
	for name, x := range lower {
		of[name+"1"] = x
	}
	for name, x := range upper {
		of[name+"2"] = x
	}
	precise.Equal(t, float64(s.HookLoad), `
		k1 = w1 - mu1*sqrt(pow(S1 - 500*B1, 2) + pow(500*T1, 2))
		m1 = 500 + k1/2
		f1 = 500 + w1 - mu1*sqrt(pow(S1 - m1*B1, 2) + pow(m1*T1, 2))
		k2 = w2 - mu2*sqrt(pow(S2 - f1*B2, 2) + pow(f1*T2, 2))
		m2 = f1 + k2/2
		f1 + w2 - mu2*sqrt(pow(S2 - m2*B2, 2) + pow(m2*T2, 2))`, of)
	require.Equal(t, movement.Straight, func() movement.Mode { _, m := p.rise(0, -500); return m }())
	require.Equal(t, 0.01, LockUp)
}

// Without friction all that is slacked off arrives, and all of what is added to it.
func TestAllArrivesWithoutFriction(t *testing.T) {
	s := bend(t)
	for i := range s.HoleSections {
		s.HoleSections[i].Friction = 0
	}
	p, err := s.Prepare()
	require.NoError(t, err)
	x := p.SetDown(2000)
	require.InDelta(t, 1, x.Passes, 1e-8)
	require.InDelta(t, 2000, float64(x.Slacked), 1e-9)
}
