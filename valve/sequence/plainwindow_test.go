package sequence_test

import (
	"maps"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// held is a pressure that a step's ramps go to: of some compartments, wherever it
// stands in the step.
type held struct {
	step    int
	names   []string
	planned pressure
}

// allHeld are the pressures that a plan's ramps go to.
func allHeld(p *sequence.Plan) []held {
	var all []held
	for k, s := range p.Steps {
		for _, ramp := range s.Ramps {
			for _, name := range slices.Sorted(maps.Keys(ramp)) {
				all = append(all, held{k, []string{name}, ramp[name]})
			}
		}
	}
	return all
}

// at returns the plan with another pressure there, and without the steps that
// come after.
func (h held) at(p *sequence.Plan, x float64) *sequence.Plan {
	c := *p
	c.Steps = slices.Clone(p.Steps[:h.step+1])
	s := &c.Steps[h.step]
	s.Ramps = slices.Clone(s.Ramps)
	for r := range s.Ramps {
		s.Ramps[r] = maps.Clone(s.Ramps[r])
		for name, q := range s.Ramps[r] {
			if q == h.planned && slices.Contains(h.names, name) {
				s.Ramps[r][name] = pounds(x)
			}
		}
	}
	return &c
}

// right tells whether the held pressure's step keeps all its limits in every one
// of some draws of the plan, in every order in which the steps before it do what
// they should: with the others a window has nothing to do.
func (h held) right(p *sequence.Plan, draws []*sequence.Plan, x float64) bool {
	for _, d := range draws {
		if r := plainOrdersUntil(h.at(d, x), 3, 24, func(r *plainResult) bool { return r.failsFirstIn(p, h.step) }); r.failsFirstIn(p, h.step) {
			return false
		}
	}
	return true
}

// failsFirstIn tells whether something fails in a step and nothing before it.
func (r *plainResult) failsFirstIn(p *sequence.Plan, step int) bool {
	for k := range step {
		if r.failsIn(p.Steps[k].Name) {
			return false
		}
	}
	return r.fault != nil || r.failsIn(p.Steps[step].Name)
}

func (r *plainResult) failsIn(step string) bool {
	return slices.ContainsFunc(r.failures, func(f plainFailure) bool { return f.Step == step })
}

type interval struct{ least, greatest float64 }

// intervalsOf scans a yes-or-no question and closes in on every change of its
// answer.
func intervalsOf(right func(float64) bool, from, to, step, within float64) []interval {
	var all []interval
	edge := func(yes, no float64) float64 {
		for max(yes-no, no-yes) > within {
			if middle := (yes + no) / 2; right(middle) {
				yes = middle
			} else {
				no = middle
			}
		}
		return yes
	}
	was := false
	for x := from; ; x += step {
		x = min(x, to)
		is := right(x)
		switch {
		case is && x == from:
			all = append(all, interval{from, from})
		case is && !was:
			all = append(all, interval{edge(x, x-step), x})
		case !is && was:
			all[len(all)-1].greatest = edge(x-step, x)
		}
		if is {
			all[len(all)-1].greatest = max(all[len(all)-1].greatest, x)
		}
		if was = is; x >= to {
			return all
		}
	}
}

// By hand: the packer wants 3,375 psi less the columns' 327.27 psi at surface, and
// the wall breaks at 4,000 psi less the same.
func TestPlainWindow(t *testing.T) {
	p := mini()
	p.Devices[0].Actions[0].Triggers = []sequence.Trigger{{Threshold: unit.Exactly(3375 * psi)}}
	p.Steps[0].Ramps = p.Steps[0].Ramps[:1]
	p.Ratings = []sequence.Rating{{Name: "wall", Inside: "tubing", Outside: "annulus", FromMD: 9000 * foot, ToMD: 9000 * foot, Burst: exactly(4000)}}
	column := 0.7 * 12 / 231 * 9000
	h := allHeld(p)[0]
	got := intervalsOf(func(x float64) bool { return h.right(p, []*sequence.Plan{p}, x) }, 0, 6000, 25, 0.01)
	require.Len(t, got, 1)
	require.InDelta(t, 3375-column, got[0].least, 0.02)
	require.InDelta(t, 4000-column, got[0].greatest, 0.02)
}

// twoParts is a plan whose first held pressure may lie below 3,300 psi, where a
// room under the tubing keeps the pressure that it was run with, or between 4,000
// and 4,500 psi, where the tubing has opened it and brings the same, give or take
// 250 psi; in between it brings too little.
func twoParts() *sequence.Plan {
	p := mini()
	p.Devices = nil
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "room", TopMD: 8000 * foot, BottomMD: 9000 * foot, Fluid: "tubing fluid", Capacity: 0.01 * unit.BarrelPerFoot})
	setTrapped(&p.Compartments[2], 4250+9.5*12/231*8000)
	p.Ports = []sequence.Port{{Name: "in", Joins: []string{"tubing", "room"}, MD: 9000 * foot}}
	chamber := pressure(0)
	p.Devices = []sequence.Device{{Name: "disc", MD: 0, Actions: []sequence.Action{{Name: "bursts", Inside: "tubing", Chamber: &chamber,
		Triggers: []sequence.Trigger{{Threshold: unit.Exactly(3300 * psi)}}, Opens: []string{"in"}}}}}
	f := sequence.Formation{Name: "sand", MD: 8500 * foot}
	setPore(&f, 4000)
	p.Formations = []sequence.Formation{f}
	wanted := 4250 + 9.5*12/231*8500 - 4000
	p.Steps = []sequence.Step{{Name: "one", Expect: []string{"disc: bursts"},
		Ramps: []map[string]pressure{{"tubing": 2000 * psi}, {"tubing": 5000 * psi}},
		Balance: []sequence.Balance{{Compartment: "room", Formation: "sand", Moment: sequence.AtPeak,
			Overbalance: unit.Band[pressure]{Least: pounds(wanted - 250), Nominal: pounds(wanted), Greatest: pounds(wanted + 250)}}}}}
	return p
}

func TestPlainWindowInTwoParts(t *testing.T) {
	p := twoParts()
	require.NoError(t, p.Validate())
	h := allHeld(p)[0]
	got := intervalsOf(func(x float64) bool { return h.right(p, []*sequence.Plan{p}, x) }, 0, 6000, 25, 0.01)
	require.Len(t, got, 2)
	for i, want := range []interval{{0, 3300}, {4000, 4500}} {
		require.InDelta(t, want.least, got[i].least, 0.02)
		require.InDelta(t, want.greatest, got[i].greatest, 0.02)
	}
}
