package movement_test

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// scene is a random string in random conditions: every kind of part, landed,
// held, pulled, parted.
type scene struct {
	assembly movement.Assembly
	made     *movement.MadeUp
	standing movement.Standing
	last     movement.Conditions
	loading  movement.Loading
}

func randomAssembly(t testing.TB, r *rand.Rand) movement.Assembly {
	a := movement.Assembly{Sections: randomSections(r), Path: randomPath(t, r), Spacing: 250 * unit.Foot, Block: 10000 * unit.PoundForce, HangerSeal: 10 * unit.Inch}
	end := a.Sections[len(a.Sections)-1].BottomMD
	at := func() unit.Length { return unit.Length(0.3+0.7*r.Float64()) * end }
	bore := func() unit.Length { return unit.Length(3+3*r.Float64()) * unit.Inch }
	for range r.IntN(3) {
		a.Seals = append(a.Seals, movement.Seal{MD: at(), Bore: bore(), Up: unit.Foot, Down: 3 * unit.Foot, Friction: 500 * unit.PoundForce})
	}
	for range 1 + r.IntN(2) {
		a.Holds = append(a.Holds, movement.Hold{MD: at(), Bore: bore(), Casing: 8.5 * unit.Inch})
	}
	for range 1 + r.IntN(2) {
		a.Joints = append(a.Joints, movement.Joint{MD: at(), Seal: bore()})
	}
	if r.IntN(2) == 0 {
		a.Plugs = append(a.Plugs, at())
	}
	if r.IntN(2) == 0 {
		a.Hung = append(a.Hung, at())
	}
	return a
}

// randomConditions are those of a string with these many parts, in water of one
// density with pressures of their own.
func randomConditions(r *rand.Rand, m *movement.MadeUp, a movement.Assembly) movement.Conditions {
	one := randomState(r)
	in, out := make([]unit.Pressure, len(m.InsideParts())), make([]unit.Pressure, len(m.OutsideParts()))
	for i := range in {
		in[i] = unit.Pressure(r.Float64()*2000) * unit.PSI
	}
	for i := range out {
		out[i] = unit.Pressure(r.Float64()*2000) * unit.PSI
	}
	c := movement.Conditions{
		Inside:      func(k int, d unit.Length) unit.Pressure { return in[k] + one.Inside(d) },
		Outside:     func(k int, d unit.Length) unit.Pressure { return out[k] + one.Outside(d) },
		Temperature: one.Temperature,
	}
	for range a.Sections {
		c.Friction = append(c.Friction, unit.Gradient(r.Float64()*0.02)*unit.PSIPerFoot)
		c.OutsideFriction = append(c.OutsideFriction, -unit.Gradient(r.Float64()*0.01)*unit.PSIPerFoot)
	}
	for range a.Hung {
		c.Hung = append(c.Hung, unit.Force(r.Float64()*5000)*unit.PoundForce)
	}
	return c
}

// randomStanding is a string that has landed, held in two of three of its places and parted in
// one of so many of its joints.
func randomStanding(t testing.TB, r *rand.Rand, m *movement.MadeUp, a movement.Assembly, parts int) movement.Standing {
	s, err := m.Land(randomConditions(r, m, a))
	require.NoError(t, err)
	for place := range a.Holds {
		if r.IntN(3) > 0 {
			s, err = m.TakeHold(s, place, randomConditions(r, m, a))
			require.NoError(t, err)
		}
	}
	for joint := range a.Joints {
		if r.IntN(parts) == 0 {
			s, err = m.Part(s, joint)
			require.NoError(t, err)
		}
	}
	return s
}

func randomScene(t testing.TB, r *rand.Rand) scene {
	a := randomAssembly(t, r)
	m := made(t, a)
	s := randomStanding(t, r, m, a, 4)
	c := randomConditions(r, m, a)
	if r.IntN(2) == 0 {
		c.Top, c.Reading, c.Drag = movement.OnHookClosed, unit.Force(50000+r.Float64()*100000)*unit.PoundForce, unit.Force(r.Float64()*8000)*unit.PoundForce
		c.Sliding = movement.SlidingUp
	}
	l, err := m.Load(s, c)
	require.NoError(t, err)
	return scene{a, m, s, c, l}
}

// TestEveryPartIsInBalance holds the random strings to equilibrium, piece by
// piece between neighbouring nodes, and every line of the working to its value.
func TestEveryPartIsInBalance(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 2))
	for range 300 {
		x := randomScene(t, r)
		workingtest.Check(t, x.made.Steps(&x.loading))
		terms := x.made.Terms(&x.loading)
		sum := terms.End + terms.Weight + terms.Shoulders + terms.Rings + terms.Plugs + terms.Hung + terms.Flow + terms.Seals + terms.Drag
		require.InDelta(t, float64(terms.Top), float64(sum), 1e-6)
		require.InDelta(t, float64(x.loading.EndMoved-x.loading.TopMoved), float64(x.loading.Movement.Total()+x.loading.Held), 1e-9)
		for i, n := range x.loading.Nodes {
			if x.loading.Lost > 0 && n.MD >= x.loading.Lost {
				continue
			}
			p := x.assembly.Sections[n.Section].Pipe
			fe := p.EffectiveForce(tubular.Load{Axial: n.True, Inside: n.Inside, Outside: n.Outside})
			require.InDelta(t, float64(fe), float64(n.Effective), 1e-5, "node %d", i)
		}
		if x.last.Top == movement.AtHanger {
			continue
		}
		// On the hook the reading asked for is there, unless nothing holds it, and
		// its inverse comes back to it.
		if !x.loading.Free {
			require.InDelta(t, float64(x.last.Reading), float64(x.loading.Reading), 1e-6)
		}
		for j := range x.loading.Joints {
			reading, err := x.made.ReadingForJoint(&x.loading, j, 40000*unit.PoundForce)
			if err != nil {
				require.ErrorIs(t, err, movement.ErrNotReached)
				continue
			}
			c := x.last
			c.Reading = reading
			l, err := x.made.Load(x.standing, c)
			require.NoError(t, err)
			require.InDelta(t, 40000, l.Joints[j].Balance.In(unit.PoundForce), 1e-6)
		}
	}
}

// TestHeldPlacesStayWhereTheyTookHold: whatever comes, a place that holds hasn't
// moved since.
func TestHeldPlacesStayWhereTheyTookHold(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 3))
	for range 100 {
		x := randomScene(t, r)
		if x.last.Top != movement.AtHanger {
			continue
		}
		again, err := x.made.Load(x.standing, randomConditions(r, x.made, x.assembly))
		require.NoError(t, err)
		for i := range again.Holds {
			if again.Holds[i].Held {
				require.InDelta(t, float64(x.loading.Holds[i].Moved), float64(again.Holds[i].Moved), 1e-12)
			}
		}
	}
}
