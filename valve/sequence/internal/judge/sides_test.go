package judge

import (
	"math"
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

// halfPSI is what counts as no flow, in Pa: half of 4.4482216152605 N on (0.0254 m)².
const halfPSI = 4.4482216152605 / (0.0254 * 0.0254) / 2

var nowhere = walk.Place{Action: -1}

// two is a well without weight: compartments a and b at surface, c behind a shut port with a formation
// of 1,000 Pa that cracks at 5,000; one symbol.
func two(t *testing.T, l *Limits) (*Judge, *walk.World) {
	t.Helper()
	n := &well.Network{Fluids: []well.Fluid{{Name: "nothing"}}, Symbols: []well.Symbol{{Name: "x", Half: 1}}, Devices: 1,
		Formations: []well.Formation{{Name: "sand", Face: 2, Pressure: affine.Const(1000), Fracture: affine.Const(5000), Cracks: true}},
		Ports:      []well.Port{{Name: "door", A: 0, B: 2}, {Name: "way", A: 0, B: 1}},
		Actions: []well.Action{{Name: "d: moves", Outside: 1, Row: []well.Trigger{{Level: affine.Const(100), Count: 1},
			{Level: affine.Const(200), Count: 2, Rearm: affine.Const(150)}}}}}
	for i, name := range []string{"a", "b", "c"} {
		c := well.Compartment{Name: name, Formation: -1, Surface: i < 2, Depths: []well.Depth{{}, {MD: 1}}, Layers: []well.Layer{{Bottom: well.Depth{MD: 1}}}}
		if i == 2 {
			c.Formation = 0
		}
		n.Compartments = append(n.Compartments, c)
	}
	n.Prepare()
	if l.Steps == nil {
		l.Steps = []Goals{{}}
	}
	j, _ := New(n, l, nil)
	w, err := walk.Start(n, affine.Box(1, []float64{0}))
	require.NoError(t, err)
	return j, w
}

// applied puts pressures on a and b.
func applied(t *testing.T, w *walk.World, a, b float64) {
	t.Helper()
	w.State.Applied[0], w.State.Applied[1] = affine.Line{F: affine.Const(a)}, affine.Line{F: affine.Const(b)}
	require.NoError(t, w.State.Solve(affine.Form{}))
}

func (j *Judge) all() walk.Place {
	p := nowhere
	for i := range j.list {
		p.Limits = append(p.Limits, i)
	}
	return p
}

// What each limit is compared with, on both sides, by hand: 700 Pa in a, 100 in b, 1,000 at the face.
func TestWhatLimitsAreComparedWith(t *testing.T) {
	at := [2]int{0, 0}
	l := &Limits{Least: 1,
		Ratings: []Rating{
			{Inside: 0, Outside: 1, Depths: [][2]int{at}, Burst: affine.Const(650), Collapse: affine.Const(50), HasBurst: true, HasCollapse: true},
			{Inside: 1, Outside: 0, Depths: [][2]int{at}, Burst: affine.Const(650), Collapse: affine.Const(50), HasBurst: true, HasCollapse: true},
			{Inside: 0, Outside: -1, Depths: [][2]int{at}, Background: []affine.Form{affine.Const(300)}, Burst: affine.Const(650), Collapse: affine.Const(50), HasBurst: true, HasCollapse: true},
		},
		Barriers: []Barrier{{Port: 0, Action: -1, Until: -1, Column: -1}, {Port: -1, Action: -1, Until: -1, Column: -1}, {Formation: 1, Port: 0, Action: -1, Until: -1, Column: -1}},
		Steps: []Goals{{
			Balances: []Balance{{Compartment: 0, Least: -400, Greatest: -100}},
			Tests:    []Test{{Inside: 0, Outside: 1, Least: 500, Greatest: 900}, {Inside: 1, Outside: 0, Least: -900, Greatest: -500}},
			Acts:     []Act{{Most: 70, HasMost: true}},
		}}}
	j, w := two(t, l)
	applied(t, w, 700, 100)
	require.NoError(t, j.Moment(w, j.all()))
	require.NoError(t, j.Standstill(w, nowhere, 0))
	j.Hand(w, nowhere, 0, walk.Free, 0, []affine.Form{affine.Const(60)})
	for k, want := range map[Key]float64{
		{0, Inside, 0}: 650 - 600, {0, Outside, 0}: 50 + 600,
		{0, Inside, 1}: 650 + 600, {0, Outside, 1}: 50 - 600,
		{0, Inside, 2}: 650 - 400, {0, Outside, 2}: 50 + 400,
		{0, Vacuum, 0}: 700 + 101325, {0, Vacuum, 1}: 100 + 101325,
		{0, Fracture, 0}:   5000 - 1000,
		{0, Barriers, 0}:   1, // two stand, one is wanted
		{0, BalanceLow, 0}: -300 + 400, {0, BalanceHigh, 0}: -100 + 300,
		{0, TestLow, 0}: 600 - 500, {0, TestHigh, 0}: 900 - 600,
		{0, TestLow, 1}: -600 + 900, {0, TestHigh, 1}: -500 + 600,
		{0, ByHand, 0}: 10,
	} {
		m := j.Margins[k]
		require.NotNil(t, m, "%v", k)
		require.InDelta(t, want, m.Least, 1e-9, "%v", k)
	}
	j.Hand(w, nowhere, 0, walk.Free, 0, []affine.Form{affine.Const(-65)})
	require.InDelta(t, 5, j.Margins[Key{0, ByHand, 0}].Least, 1e-9)
}

// Which compartments each limit holds against each other, and, from the number of compartments on,
// which actions: where one of them moves, the limit is looked at.
func TestWhatEachLimitLooksAt(t *testing.T) {
	l := &Limits{Least: 1, Steps: []Goals{{}},
		Ratings: []Rating{{Inside: 0, Outside: 1}, {Inside: 1, Outside: -1}, {Inside: 1, Outside: 0}},
		Barriers: []Barrier{{Port: 0, Action: -1, Until: -1, Column: -1}, {Port: -1, Action: 0, Until: 0, Column: -1}, {Port: -1, Action: -1, Until: -1, Column: 0},
			{Formation: 1, Port: 1, Action: -1, Until: -1, Column: -1}}}
	j, _ := two(t, l)
	_, ties := New(j.Network, l, []int{1, 2})
	require.Equal(t, [][]int{{0, 1}, {1}, {1, 0}, {0}, {1}, {2}, {2}, {0}, {1}, {0, 2, 3, 3, 0, 2}, {1, 2}}, ties)
	l.Least = 0
	_, ties = New(j.Network, l, nil)
	require.Equal(t, [][]int{{0, 1}, {1}, {1, 0}, {0}, {1}, {2}, {2}, {0}, {1}}, ties)
	j.Network.Formations[0].Face = -1 // behind nothing: it can't crack
	_, ties = New(j.Network, l, nil)
	require.Equal(t, [][]int{{0, 1}, {1}, {1, 0}, {0}, {1}, {2}, {0}, {1}}, ties)
}

// Flow is what two fixed pressures make that differ by more than half a psi: in, out, and from one
// surface to another, each unless it is part of the plan.
func TestWhatCountsAsFlow(t *testing.T) {
	for _, x := range []struct {
		a, b         float64 // applied
		join         bool    // a and b
		goals        Goals
		kinds        []Kind
		least, loser float64
	}{
		{a: 900, kinds: []Kind{Inflow, Loss}, least: -100 + halfPSI, loser: 100 + halfPSI},
		{a: 1900, kinds: []Kind{Inflow, Loss}, least: 900 + halfPSI, loser: -900 + halfPSI},
		{a: 1900, goals: Goals{Loss: true}, kinds: []Kind{Inflow}, least: 900 + halfPSI},
		{a: 900, goals: Goals{Inflow: true}, kinds: []Kind{Loss}, least: 100 + halfPSI},
		{a: 900, goals: Goals{Produces: true}},
		{a: 1000, b: 1e4, join: true, goals: Goals{Inflow: true, Loss: true}, kinds: []Kind{Circulation}, least: -9000 + halfPSI},
		{a: 1000, b: 1e4, join: true, goals: Goals{Inflow: true, Loss: true, Circle: true}},
	} {
		j, w := two(t, &Limits{Steps: []Goals{x.goals}})
		w.State.Open[0], w.State.Open[1] = !x.join, x.join
		applied(t, w, x.a, x.b)
		require.NoError(t, j.Moment(w, j.all()))
		noted := map[Kind]float64{}
		for k, m := range j.Margins {
			if k.Kind == Inflow || k.Kind == Loss || k.Kind == Circulation {
				if least, ok := noted[k.Kind]; !ok || m.Least < least {
					noted[k.Kind] = m.Least
				}
			}
		}
		require.Len(t, noted, len(x.kinds), "%+v: %v", x, noted)
		for i, k := range x.kinds {
			require.InDelta(t, []float64{x.least, x.loser}[i], noted[k], 1e-9, "%+v: %v", x, noted)
		}
	}
}

// Barriers are counted until a formation's inflow has been part of the plan: for certain, or in a part
// of the box.
func TestBarriersOfWhatHasFlowed(t *testing.T) {
	short := Limits{Least: 1, Barriers: []Barrier{{Port: 0, Action: -1, Until: -1, Column: -1}}}
	for _, x := range []struct {
		goals  Goals
		excess affine.Form
		live   bool
		dry    int
	}{
		{Goals{}, affine.Const(-2 * halfPSI), false, 0},
		{Goals{Inflow: true}, affine.Const(-2 * halfPSI), true, 0},
		{Goals{Inflow: true}, affine.Const(-halfPSI), false, 0},
		{Goals{Inflow: true}, affine.Const(-halfPSI * (1 + 1e-9)), true, 0},
		{Goals{Inflow: true}, form(-halfPSI, 3*halfPSI), false, 1},
		{Goals{Produces: true}, affine.Const(5), true, 0},
	} {
		l := short
		l.Steps = []Goals{x.goals}
		j, w := two(t, &l)
		w.State.Open[0] = true
		j.flowed(w, &l.Steps[0], 0, x.excess)
		j.flowed(w, &l.Steps[0], 0, x.excess) // once more changes nothing
		require.Equal(t, x.live, w.Live[0], "%+v", x)
		require.Len(t, w.Dry[0], x.dry, "%+v", x)
		require.NoError(t, j.barriers(w, nowhere, 0))
		require.Equal(t, !x.live, len(j.Passed()) == 1, "%+v", x)
		if x.dry > 0 { // only where it hasn't flowed in: x not negative
			require.GreaterOrEqual(t, j.Passed()[0].Points[0][0], -1e-9)
		}
	}
}

// A column counts while it overbalances, and no more are wanted than are lacking.
func TestColumnsThatAreBarriers(t *testing.T) {
	for _, x := range []struct {
		over   float64
		wanted int
		passed bool
	}{{1, 1, false}, {-halfPSI / 2, 1, false}, {-2 * halfPSI, 1, true}, {1, 2, true}, {1, 0, false}} {
		j, w := two(t, &Limits{Least: x.wanted, Barriers: []Barrier{{Port: -1, Action: -1, Until: -1, Column: 0}}})
		applied(t, w, 1000+x.over, 0)
		require.NoError(t, j.barriers(w, nowhere, 0))
		require.Equal(t, x.passed, len(j.Passed()) == 1, "%+v", x)
	}
	// An action that has to come first, and then stands.
	for times, passed := range []bool{true, false} {
		j, w := two(t, &Limits{Least: 1, Barriers: []Barrier{{Port: -1, Action: 0, Until: -1, Column: -1}}})
		w.Times[0] = times
		require.NoError(t, j.barriers(w, nowhere, 0))
		require.Equal(t, passed, len(j.Passed()) == 1, "%d", times)
	}
	// After what ends it, it doesn't.
	j, w := two(t, &Limits{Least: 1, Barriers: []Barrier{{Port: -1, Action: -1, Until: 0, Column: 0}}})
	applied(t, w, 1001, 0)
	w.Times[0] = 1
	require.NoError(t, j.barriers(w, nowhere, 0))
	require.Len(t, j.Passed(), 1)
}

// A test that may be met anywhere in its step is short where it is short everywhere, and never may it
// go beyond; one with the pressure outside the higher is its mirror.
func TestAFurthestTest(t *testing.T) {
	for _, sign := range []float64{1, -1} {
		least, greatest := 500., 900.
		if sign < 0 {
			least, greatest = -900, -500
		}
		for _, x := range []struct {
			first, second float64
			short, beyond float64
		}{{600, 300, 100, 300}, {300, 600, 100, 300}, {300, 400, -100, 500}, {950, 600, 450, -50}} {
			j, w := two(t, &Limits{Steps: []Goals{{Last: 2, Tests: []Test{{Inside: 0, Outside: 1, Least: least, Greatest: greatest, Furthest: true}}}}})
			for n, d := range []float64{9000, x.first, x.second} { // the beginning doesn't count
				if sign > 0 {
					applied(t, w, d, 0)
				} else {
					applied(t, w, 0, d)
				}
				require.NoError(t, j.tests(w, nowhere, n))
			}
			low, high := j.Margins[Key{0, TestLow, 0}].Least, j.Margins[Key{0, TestHigh, 0}].Least
			if sign < 0 {
				low, high = high, low
			}
			require.InDelta(t, x.short, low, 1e-9, "%v %+v", sign, x)
			require.InDelta(t, x.beyond, high, 1e-9, "%v %+v", sign, x)
		}
	}
}

// What is felt on the way to the last trigger of a row is how much is left; that an earlier one is met,
// counted, or comes back, is that the row may come on.
func TestHowMuchIsLeft(t *testing.T) {
	for _, x := range []struct {
		at       walk.Progress
		from, to float64
		cameOn   bool
		left     float64
	}{
		{walk.Progress{}, 0, 60, false, 40},
		{walk.Progress{}, 0, 100, true, 100},
		{walk.Progress{Links: 1}, 0, 160, false, 40},
		{walk.Progress{Links: 1}, 0, 200, true, 200},
		{walk.Progress{Links: 1, Count: 1, Out: true}, 300, 170, false, 20},
		{walk.Progress{Links: 1, Count: 1, Out: true}, 300, 150, true, 150},
		{walk.Progress{Links: 1, Count: 1}, 0, 200, false, 0},
		{walk.Progress{Links: 1, Count: 1}, 0, 230, false, -30},
	} {
		j, w := two(t, &Limits{})
		j.Sensed(w, nowhere, 0, x.at, affine.Const(x.from), affine.Const(x.to))
		s := j.SensedBy(0, 0)
		require.True(t, s.Seen)
		require.Equal(t, x.cameOn, s.CameOn, "%+v", x)
		require.InDelta(t, x.left, s.Left, 1e-9, "%+v", x)
		require.Equal(t, math.Min(x.from, x.to), s.Least)
		require.Equal(t, math.Max(x.from, x.to), s.Greatest)
	}
	j, w := two(t, &Limits{})
	j.Sensed(w, nowhere, 0, walk.Progress{Done: true}, affine.Const(0), affine.Const(1))
	require.False(t, j.SensedBy(0, 0).Seen)
	j.Reached(w, nowhere, 0, walk.Progress{Links: 1}, form(30, 10))
	j.Reached(w, nowhere, 0, walk.Progress{}, form(45, 10))
	s := j.SensedBy(0, 0)
	require.InDelta(t, 20, s.Reach, 1e-9)
	require.Equal(t, 1, s.ReachLink)
}

// Extremes of a force, and where.
func TestExtremesOfAForce(t *testing.T) {
	j, w := two(t, &Limits{})
	at := func(label string) walk.Place { return walk.Place{Label: label, Action: -1} }
	j.Force(w, at("first"), Wall, 2, form(100, 10))
	j.Force(w, at("second"), Wall, 2, form(95, 3))
	j.Force(w, at("third"), Wall, 2, form(110, 20))
	x := j.Forces[ForceKey{0, Wall, 2}]
	require.Equal(t, Extreme{90, 130, Moment{"first", -1, false}, Moment{"third", -1, false}}, *x)
}
