package production

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// two is a network of two straight zones, the lower behind a choke, in SI: figures
// by hand.
func two() *Network {
	return &Network{lift: 5e5, outflow: outflow{kind: tubing, pressure: 1.5e7, linear: 1e8, square: 2e9}, nodes: []node{
		{shape: line, static: 2.2e7, a: 6e8, chokes: []float64{2e10, math.Inf(1)}, head: 5e5, linear: 3e8, square: 4e10},
		{shape: line, static: 2.0e7, a: 9e8, chokes: []float64{0, math.Inf(1)}},
	}}
}

// One pass upwards, worked: the lower zone's rate, the loss on the way up, the upper
// zone's rate, and the slope of it all.
func TestPassWorked(t *testing.T) {
	n := two()
	zones := make([]ZoneFlow, 2)
	s := n.pass(1.9e7, []int{0, 0}, false, 0, zones)
	const by = `
		q1 = (sqrt(pow(6e8, 2) + 4*2e10*3e6) - 6e8)/(2*2e10)
		s1 = -1/sqrt(pow(6e8, 2) + 4*2e10*3e6)
		p2 = 1.9e7 - 5e5 - 3e8*q1 - 4e10*q1*q1
		d2 = 1 - (3e8 + 2*4e10*q1)*s1
		q2 = (2e7 - p2)/9e8
		Q = q1 + q2
		dQ = s1 - d2/9e8
	`
	precise.Equal(t, float64(zones[0].Rate), by+"q1", nil)
	precise.Equal(t, float64(zones[1].Rate), by+"q2", nil)
	precise.Equal(t, float64(zones[1].Tubing), by+"p2", nil)
	precise.Equal(t, float64(zones[1].Passing), by+"Q", nil)
	precise.Equal(t, s.top, by+"p2", nil)
	precise.Equal(t, s.rate, by+"Q", nil)
	precise.Within(t, 1e-10, s.excess, by+"p2 - 1.5e7 - 1e8*Q - 2e9*Q*Q", nil)
	precise.Equal(t, s.slope, by+"d2 - (1e8 + 2*2e9*Q)*dQ", nil)
	s = n.pass(1.9e7, []int{0, 0}, true, 0.001, nil)
	precise.Within(t, 1e-11, s.excess, by+"0.001 - Q", nil)
	precise.Equal(t, s.slope, by+"-dQ", nil)
	s = n.pass(1.9e7, []int{1, 0}, false, 0, zones)
	require.Zero(t, zones[0].Rate, "shut")
	precise.Equal(t, s.rate, "(2e7 - 1.85e7)/9e8", nil)

	lo, hi := n.statics([]int{0, 0})
	require.Equal(t, []float64{2.05e7, 2.2e7}, []float64{lo, hi}, "told at the lower zone")
	lo, hi = n.statics([]int{1, 0})
	require.Equal(t, []float64{2.05e7, 2.05e7}, []float64{lo, hi})
	q, _ := n.nodes[0].onLine(1.55e7, 2e10)
	require.InEpsilon(t, q+5e6/9e8, n.scale([]int{0, 0}), 1e-14)
	require.InEpsilon(t, 5e6/9e8, n.scale([]int{1, 0}), 1e-14)
}

// A shut zone holds its static pressure against the tubing; shares are of what all give.
func TestShutZoneAndShares(t *testing.T) {
	n := two()
	n.outflow = outflow{kind: fixedPressure, pressure: 1.8e7}
	n.well.Zones = make([]Zone, 2)
	var f Flow
	require.NoError(t, n.Solve([]int{1, 0}, &f))
	require.InDelta(t, 2.2e7-1.85e7, float64(f.Zones[0].Drop), 1e-3)
	require.InDelta(t, 2.2e7, float64(f.Zones[0].Sandface), 1e-3)
	require.Equal(t, 1.0, f.Share(1))
	require.Zero(t, f.Share(0))
	n.outflow.pressure = 2.1e7 // the upper zone takes
	require.NoError(t, n.Solve([]int{0, 0}, &f))
	require.Positive(t, float64(f.Crossflow))
	require.InEpsilon(t, float64(f.Zones[0].Rate)/float64(f.Rate+f.Crossflow), f.Share(0), 1e-14)
	require.InDelta(t, 1, f.Share(0), 1e-12, "the only one that gives")
	require.Zero(t, f.Share(1))
	require.Zero(t, (&Flow{Zones: []ZoneFlow{{Rate: 1}}}).Share(0), "nothing given in all")
}

// Any other inflow behind a liquid choke: the pressure in front of the zone and the
// slope of both in series.
func TestOnCurveWorked(t *testing.T) {
	curve := inflow.GasDeliverability{Reservoir: 3e7, OpenFlow: 0.05, Exponent: 0.9}
	n := node{shape: other, static: 3e7, curve: curve}
	for _, p := range []float64{5e6, 2e7, 2.9e7, 3.2e7} {
		const k = 3e9
		q, slope := n.onCurve(p, k)
		s, err := curve.Pressure(unit.FlowRate(q))
		require.NoError(t, err)
		require.InEpsilon(t, p+k*q*math.Abs(q), float64(s), 1e-9, "%v", p)
		_, own := curve.At(float64(s))
		require.InEpsilon(t, 1/(1/own-2*k*math.Abs(q)), slope, 1e-9)
	}
	q, _ := n.onCurve(2e7, 0)
	want, _ := curve.At(2e7)
	require.Equal(t, want, q)
}

// Names, merits and the count of settings that may be chosen.
func TestChoosing(t *testing.T) {
	require.True(t, merit{2, 0}.above(merit{1, 9}))
	require.False(t, merit{1, 9}.above(merit{2, 0}))
	require.True(t, merit{1, 2}.above(merit{1, 1}))
	require.False(t, merit{1, 1}.above(merit{1, 1}))
	zone := func(name string, reservoir unit.Pressure, cut float64) Zone {
		return Zone{Name: name, Inflow: inflow.LiquidDeliverability{Reservoir: reservoir, Index: 1e-9}, Density: 800, WaterCut: cut,
			Chokes: choke.Table{{Name: "shut"}, {Name: "half", Travel: 0.5, Coefficient: 3e-5}, {Name: "open", Travel: 1, Coefficient: 1e-4}}}
	}
	n, err := Well{Zones: []Zone{zone("a", 3e7, 0), zone("b", 2.8e7, 0.6)}, Outflow: FixedPressure{2e7}}.Prepare()
	require.NoError(t, err)
	require.Equal(t, []string{"half", ""}, n.Names([]int{1}))
	require.Equal(t, []string{"", "open"}, n.Names([]int{-1, 2}))
	require.Equal(t, []string{"", "shut"}, n.Names([]int{3, 0}))
	c, err := n.MostRate(Limits{})
	require.NoError(t, err)
	require.Equal(t, []int{8, 8, 8}, []int{c.Tried, c.Solved, c.Allowed})
	require.Equal(t, []int{2, 2}, c.Positions)
	for most, ok := range map[int]bool{9: true, 8: false} {
		_, err = n.MostRate(Limits{Most: most})
		require.Equal(t, ok, err == nil, "%d combinations of nine", most)
	}
	for limit, ok := range map[float64]bool{0: true, 1: true, -1e-9: false, 1.0000001: false} {
		_, err := n.LimitWater(limit, Limits{})
		require.Equal(t, ok, err == nil, "%v", limit)
	}
	wet, err := Well{Zones: []Zone{zone("a", 3e7, 0.3), zone("b", 2.8e7, 0.6)}, Outflow: FixedPressure{2e7}}.Prepare()
	require.NoError(t, err)
	_, err = wet.LimitWater(0.2, Limits{})
	require.ErrorContains(t, err, "the least water cut of all is 0.3, 0.2 is allowed", "the drier zone alone")
}
