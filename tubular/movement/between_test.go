package movement_test

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// Between two nodes every figure lies on the straight line between theirs, at a node it is the node's,
// and beyond the string there is none.
func TestAtIsOnTheLineBetweenNodes(t *testing.T) {
	node := func(md unit.Length, k float64) movement.Node {
		n := movement.Node{MD: md, TVD: md * 0.9, Inside: unit.Pressure(3 * k), Outside: unit.Pressure(5 * k), Temperature: unit.Kelvin(300 + k), True: unit.Force(7 * k),
			Effective: unit.Force(11 * k), Contact: unit.WeightPerLength(13 * k), Bending: unit.Pressure(17 * k), Curvature: unit.Curvature(19 * k)}
		n.Usage.Burst, n.Usage.Collapse, n.Usage.Axial, n.Usage.Triaxial = 23*k, 29*k, 31*k, 37*k
		return n
	}
	c := &movement.Case{Nodes: []movement.Node{node(100, 1), node(200, 3), node(200, 4), node(240, 8)}}
	for md, k := range map[unit.Length]float64{100: 1, 125: 1.5, 175: 2.5, 200: 3, 210: 5, 230: 7, 240: 8} {
		n, err := c.At(md)
		require.NoError(t, err)
		require.InDeltaSlice(t, []float64{float64(md), float64(md) * 0.9, 3 * k, 5 * k, 300 + k, 7 * k, 11 * k, 13 * k, 17 * k, 19 * k, 23 * k, 29 * k, 31 * k, 37 * k},
			[]float64{float64(n.MD), float64(n.TVD), float64(n.Inside), float64(n.Outside), n.Temperature.Kelvin(), float64(n.True), float64(n.Effective), float64(n.Contact),
				float64(n.Bending), float64(n.Curvature), n.Usage.Burst, n.Usage.Collapse, n.Usage.Axial, n.Usage.Triaxial}, 1e-9, "%v", md)
	}
	for _, md := range []unit.Length{99.999, 240.001} {
		_, err := c.At(md)
		require.ErrorIs(t, err, movement.ErrOutsideString)
		require.ErrorContains(t, err, "must be from "+unit.Length(100).Rounded(6)+" to "+unit.Length(240).Rounded(6))
	}
	_, err := (&movement.Case{}).At(0)
	require.ErrorIs(t, err, movement.ErrOutsideString)
	one := &movement.Case{Nodes: c.Nodes[:1]}
	n, err := one.At(100)
	require.NoError(t, err)
	require.Equal(t, c.Nodes[0], n)
}

// Conditions that are those of landing have done nothing to the string, whatever they are.
func TestNothingChangedNothingMoved(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 1))
	for range 60 {
		a := randomAssembly(t, r)
		m := made(t, a)
		c := randomConditions(r, m, a)
		s, err := m.Land(c)
		require.NoError(t, err)
		l, err := m.Load(s, c)
		require.NoError(t, err)
		require.Equal(t, movement.Movement{}, l.Movement)
		require.InDelta(t, 0, float64(l.EndMoved)+float64(l.TopMoved)+float64(l.Held), 1e-12)
		for i := range a.Holds {
			require.InDelta(t, 0, float64(l.Holds[i].Moved), 1e-12)
		}
		for i := range a.Seals {
			require.InDelta(t, 0, float64(l.Seals[i].Travel), 1e-12)
		}
	}
}

// A string that nothing holds, pulls or hangs on moves by its causes alone: Held is nothing, whatever the
// pressures, the heat, the flow and the seals.
func TestWhatNothingHoldsMovesByItsCauses(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 6))
	moved := 0.0
	for range 60 {
		a := randomAssembly(t, r)
		a.Hung, a.Joints = nil, nil
		m := made(t, a)
		s, err := m.Land(randomConditions(r, m, a))
		require.NoError(t, err)
		l, err := m.Load(s, randomConditions(r, m, a))
		require.NoError(t, err)
		require.InDelta(t, 0, float64(l.Held), 1e-9)
		require.InDelta(t, float64(l.EndMoved), float64(l.Movement.Total()), 1e-9)
		moved += float64(l.EndMoved * l.EndMoved)
	}
	require.Greater(t, moved, 1.0)
}

// Where all that the string stands in has moved alike, hanger, seals and places that hold, no force and no
// travel tells: only where things stand.
func TestAllAroundMovedAlike(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 7))
	for range 40 {
		a := randomAssembly(t, r)
		m := made(t, a)
		landing, taking, hooked, after := randomConditions(r, m, a), randomConditions(r, m, a), randomConditions(r, m, a), randomConditions(r, m, a)
		hooked.Top, hooked.Reading = movement.OnHookOpen, 90000*unit.PoundForce
		all := func(by unit.Length) movement.Loading {
			around := func(c movement.Conditions) movement.Conditions {
				if by != 0 {
					c.Around = func(unit.Length) unit.Length { return by }
				}
				return c
			}
			s, err := m.Land(landing) // stands still until here
			require.NoError(t, err)
			s, err = m.HangOff(s, around(hooked))
			require.NoError(t, err)
			for place := range a.Holds {
				s, err = m.TakeHold(s, place, around(taking))
				require.NoError(t, err)
			}
			l, err := m.Load(s, around(after))
			require.NoError(t, err)
			return l
		}
		still, moved := all(0), all(0.4)
		require.InDelta(t, float64(still.HangerLoad), float64(moved.HangerLoad), 1e-3)
		for i := range still.Holds {
			require.InDelta(t, float64(still.Holds[i].Load), float64(moved.Holds[i].Load), 1e-3)
			require.InDelta(t, float64(still.Holds[i].Moved)+0.4, float64(moved.Holds[i].Moved), 1e-9)
		}
		for i := range still.Seals {
			require.InDelta(t, float64(still.Seals[i].Travel), float64(moved.Seals[i].Travel), 1e-9)
		}
	}
}

// The working of a string held at its lower end splits its length's change as Movement does: piston,
// buckling, ballooning, heat and flow, term by term.
func TestWorkingSplitsTheMovement(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 8))
	for range 30 {
		a := randomAssembly(t, r)
		a.Holds, a.Joints, a.Seals, a.Plugs, a.Hung = a.Holds[:1], nil, nil, nil, nil
		a.Holds[0].MD = a.Sections[len(a.Sections)-1].BottomMD
		m := made(t, a)
		s, err := m.Land(randomConditions(r, m, a))
		require.NoError(t, err)
		s, err = m.TakeHold(s, 0, randomConditions(r, m, a))
		require.NoError(t, err)
		l, err := m.Load(s, randomConditions(r, m, a))
		require.NoError(t, err)
		found := false
		for _, step := range m.Steps(&l) {
			terms := map[string]float64{}
			for _, in := range step.Inputs {
				if q, ok := in.Value.Quantity().(unit.Length); ok {
					terms[in.Symbol] = float64(q)
				}
			}
			if _, ok := terms["dLw"]; !ok {
				continue
			}
			found = true
			for symbol, want := range map[string]unit.Length{"dL1": l.Movement.Piston, "dL3": l.Movement.Ballooning, "dL4": l.Movement.Thermal, "dL5": l.Movement.Friction, "dLw": 0} {
				require.InDelta(t, float64(want), terms[symbol], 1e-9, symbol)
			}
		}
		require.True(t, found)
	}
}
