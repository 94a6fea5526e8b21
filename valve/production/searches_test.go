package production

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// counted is an inflow that counts how often it is asked.
type counted struct {
	inflow inflow.LiquidDeliverability
	asked  *int
}

func (c counted) Validate() error       { return nil }
func (c counted) Static() unit.Pressure { return c.inflow.Reservoir }
func (c counted) At(p float64) (q, slope float64) {
	*c.asked++
	x := (float64(c.inflow.Reservoir) - p) / float64(c.inflow.Reservoir)
	return 0.02 * x * (1 + 0.5*x), -0.02 * (1 + x) / float64(c.inflow.Reservoir)
}

// A search takes few looks: its first guess, its slopes and when it is content are worth what they cost.
func TestSearchesTakeFewLooks(t *testing.T) {
	looks := 0
	for _, x := range []struct {
		f    func(x float64) (float64, float64)
		root float64
	}{
		{func(x float64) (float64, float64) { return x*x - 2, 2 * x }, math.Sqrt2},
		{func(x float64) (float64, float64) { return 3*x - 1, 3 }, 1. / 3},
		{func(x float64) (float64, float64) { return math.Exp(x) - 5, math.Exp(x) }, math.Log(5)},
		{func(x float64) (float64, float64) { return math.Cbrt(x - 1), 1e-3 }, 1},
		{func(x float64) (float64, float64) { return math.Atan(50 * (x - 1.7)), 50 / (1 + 2500*(x-1.7)*(x-1.7)) }, 1.7},
		{func(x float64) (float64, float64) { return math.Floor(x) - 1.5, 0 }, 2},
		{func(x float64) (float64, float64) { return math.Pow(x, 9) - 0.1, 9 * math.Pow(x, 8) }, math.Pow(0.1, 1./9)},
	} {
		n := 0
		got := bracketed(0, 3, func(v float64) (float64, float64) { n++; return x.f(v) })
		require.InDelta(t, x.root, got, 1e-9)
		looks += n
	}
	require.LessOrEqual(t, looks, 135)

	asked := 0
	reservoir := inflow.LiquidDeliverability{Reservoir: 3e7}
	z := Zone{Name: "z", Inflow: counted{reservoir, &asked}, Density: 800, Chokes: choke.Table{{Name: "one", Coefficient: 3 * unit.Cv}}}
	n := newNode(z, true, 0)
	for _, p := range []float64{0, 1e6, 1e7, 2e7, 2.9e7, 3.1e7, 4e7} {
		q, slope := n.onCurve(p, n.chokes[0])
		s := p + n.chokes[0]*q*math.Abs(q)
		want, _ := counted{reservoir, new(int)}.At(s)
		require.InEpsilon(t, want, q, 1e-9)
		h := 1e-4 * 3e7
		up, _ := n.onCurve(p+h, n.chokes[0])
		down, _ := n.onCurve(p-h, n.chokes[0])
		require.InEpsilon(t, (up-down)/(2*h), slope, 1e-3)
	}
	require.LessOrEqual(t, asked, 117)
}

// Without a choke, or where the tubing has the zone's own pressure, there is nothing to search: the inflow is asked once.
func TestNothingToSearch(t *testing.T) {
	asked := 0
	curve := counted{inflow.LiquidDeliverability{Reservoir: 3e7, Index: 1e-9}, &asked}
	n := node{shape: other, static: 3e7, curve: curve}
	for _, x := range []struct{ p, k float64 }{{1e7, 0}, {3e7, 1e9}, {3e7, 0}, {4e7, 0}} {
		asked = 0
		q, slope := n.onCurve(x.p, x.k)
		require.Equal(t, 1, asked)
		want, fall := curve.At(x.p)
		require.Equal(t, want, q)
		require.Equal(t, fall, slope)
	}
}

// Through a choke that is all but shut a zone gives what the choke lets out from its static pressure, to all digits: the
// inflow at a pressure so near to that would have lost them.
func TestGasThroughAChokeAllButShut(t *testing.T) {
	g := newGasNode(GasAtChoke{Density: 0.8, Standard: unit.Celsius(15), Temperature: unit.Celsius(60), Z: 1, HeatRatio: 1.3, Ratio: 0.7})
	const static, p = 4e7, 3.7e7
	for _, c := range []float64{1e-17, 1e-16, 1e-15} {
		want, _, _ := g.out(static, p, c)
		q, _ := g.rate(stairsOf(static), static, p, c)
		require.InEpsilon(t, want, q, 1e-9, "%v", c)
	}
}

// Guarded by a bracket, whatever newton finds or doesn't: stairs at a rate, giving and taking; tubing that would be
// below a vacuum is refused, one that is just not is no fault.
func TestStairsAtARate(t *testing.T) {
	w := Well{Zones: []Zone{{Name: "stairs", Inflow: stairs{}, Density: 800, Chokes: choke.Table{{Name: "one", Coefficient: unit.Cv}}}}}
	passes := 0
	for _, rate := range []unit.FlowRate{0.0009, 0.0015, 0.0021, -0.0004, -0.0023, -0.013, -0.05} {
		w.Outflow = FixedRate{Rate: rate}
		f, err := w.Flow()
		require.NoError(t, err, "%v", rate)
		q, _ := stairs{}.At(float64(f.Zones[0].Sandface))
		require.InDelta(t, q, float64(f.Rate), 1e-9)
		require.InDelta(t, float64(rate), float64(f.Rate), 1e-9)
		passes += f.Passes
	}
	require.LessOrEqual(t, passes, 113) // 111 where operations aren't fused

	for _, x := range []struct {
		top float64
		ok  bool
	}{{3e5, true}, {5e4, true}, {-5e4, true}, {-9e4, true}, {-1.2e5, false}, {-3e5, false}} {
		w := Well{Outflow: FixedRate{Rate: -0.0023}}
		for i := range 2 {
			z := Zone{Name: string(rune('a' + i)), Inflow: stairs{}, Density: 800, Chokes: choke.Table{{Name: "shut"}, {Name: "one", Travel: 1, Coefficient: unit.Cv}}}
			z.Above.Density = 1000
			w.Zones = append(w.Zones, z)
		}
		n, err := w.Prepare()
		require.NoError(t, err)
		var f Flow
		require.NoError(t, n.Solve([]int{1, 0}, &f))
		n.nodes[0].head = float64(f.Bottom) - x.top
		err = n.Solve([]int{1, 0}, &f)
		if x.ok {
			require.NoError(t, err, "%v", x.top)
			require.InDelta(t, x.top, float64(f.Pressure), 1)
		} else {
			require.ErrorContains(t, err, "which is below vacuum")
		}
	}
}

// A zone of gas under less than an atmosphere gives what its inflow gives at the pressure in front of it.
func TestGasUnderLessThanAnAtmosphere(t *testing.T) {
	g := newGasNode(GasAtChoke{Density: 0.8, Standard: unit.Celsius(15), Temperature: unit.Celsius(60), Z: 1, HeatRatio: 1.3, Ratio: 0.7})
	curve := stairsOf(8e4)
	for _, p := range []float64{-5e4, 0, 3e4, 7e4} {
		for _, c := range []float64{1e-6, 1e-5, 1e-4, 1e-3} {
			s := g.sandface(curve, 8e4, p, c)
			q, _ := curve.At(s)
			out, _, _ := g.out(s, p, c)
			require.InDelta(t, q, out, 1e-6*(math.Abs(q)+1e-3), "%v %v", p, c)
			require.GreaterOrEqual(t, s, p)
			require.LessOrEqual(t, s, 8e4)
		}
	}
}

// stairsOf is a straight inflow of a static pressure.
type stairsOf float64

func (s stairsOf) Validate() error                 { return nil }
func (s stairsOf) Static() unit.Pressure           { return unit.Pressure(s) }
func (s stairsOf) At(p float64) (float64, float64) { return (float64(s) - p) * 1e-7, -1e-7 }

func TestMerits(t *testing.T) {
	for _, c := range []struct {
		a, b  merit
		above bool
	}{
		{merit{3, 2}, merit{3, 1}, true}, {merit{3, 1}, merit{3, 2}, false}, {merit{3, 1}, merit{3, 1}, false}, {merit{2, 0}, merit{1, 5}, true},
		{merit{0, 9}, merit{1, 0}, false}, {merit{3, 1}, merit{3, 0}, true}, {merit{5, 1}, merit{5, 2}, false},
	} {
		require.Equal(t, c.above, c.a.above(c.b), "%v %v", c.a, c.b)
	}
}

// Below its least rate a table goes on as it begins; a level beginning belongs to the branch.
func TestBeginningOfATable(t *testing.T) {
	table := OutflowTable{{Rate: 0.01, Pressure: 1e7}, {Rate: 0.02, Pressure: 1.2e7}, {Rate: 0.03, Pressure: 1.9e7}}
	require.NoError(t, table.Validate())
	o, err := table.prepare()
	require.NoError(t, err)
	for _, q := range []float64{0.01, 0.03} {
		p, slope := o.table.at(q - 1e-9)
		p2, slope2 := o.table.at(q + 1e-9)
		require.InEpsilon(t, p, p2, 1e-6)
		require.InDelta(t, slope, slope2, 1e5)
	}
	level := OutflowTable{{Rate: 0.01, Pressure: 1e7}, {Rate: 0.02, Pressure: 1e7}, {Rate: 0.03, Pressure: 1.9e7}}
	require.NoError(t, level.Validate())
	require.Equal(t, 0, level.least())
	falls := OutflowTable{{Rate: 0.01, Pressure: 2e7}, {Rate: 0.02, Pressure: 2e7}, {Rate: 0.03, Pressure: 1e7}, {Rate: 0.04, Pressure: 1.5e7}, {Rate: 0.05, Pressure: 1.5e7}}
	require.NoError(t, falls.Validate(), "level is neither risen nor fallen")
	require.Equal(t, 1, OutflowTable{{Rate: 0.01, Pressure: 2e7}, {Rate: 0.02, Pressure: 1e7}, {Rate: 0.03, Pressure: 1.9e7}}.least())
	require.ErrorContains(t, OutflowTable{{Rate: 0.01, Pressure: 1e7}, {Rate: 0.02, Pressure: 2e7}, {Rate: 0.03, Pressure: 1.9e7}}.Validate(), "[2].Pressure: is ")
}

func TestPositionsThatAreNone(t *testing.T) {
	n := two()
	for p, ok := range map[int]bool{-1: false, 0: true, 1: true, 2: false} {
		err := n.check([]int{p, 0})
		if ok {
			require.NoError(t, err)
		} else {
			require.ErrorIs(t, err, ErrPosition)
		}
	}
}
