package sequence_test

import (
	"slices"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// smallest takes out of a plan what it can while the plan stays sound and still
// shows something.
func smallest(t testing.TB, p *sequence.Plan, shows func(*sequence.Plan) bool) *sequence.Plan {
	for {
		smaller := oneSmaller(t, p, shows)
		if smaller == nil {
			return p
		}
		p = smaller
	}
}

// oneSmaller is the plan with one thing less; nil where nothing can go.
func oneSmaller(t testing.TB, p *sequence.Plan, shows func(*sequence.Plan) bool) *sequence.Plan {
	for k := 0; ; k++ {
		c, err := sequence.Read(planFile(t, p))
		require.NoError(t, err)
		changed, more := lessOf(c, k)
		if !more {
			return nil
		}
		if changed && c.Validate() == nil && shows(c) {
			return c
		}
	}
}

// lessOf takes the k-th thing out; more is false after the last.
func lessOf(p *sequence.Plan, k int) (changed, more bool) {
	for _, n := range []struct {
		count int
		drop  func(i int) bool
	}{
		{len(p.Steps), func(i int) bool { p.Steps = slices.Delete(p.Steps, i, i+1); return true }},
		{len(p.Devices), func(i int) bool { dropDevice(p, i); return true }},
		{len(p.Ratings), func(i int) bool { p.Ratings = slices.Delete(p.Ratings, i, i+1); return true }},
		{len(p.Barriers), func(i int) bool {
			p.Barriers = slices.Delete(p.Barriers, i, i+1)
			p.Rules.Barriers = min(p.Rules.Barriers, len(p.Barriers))
			return true
		}},
		{1, func(int) bool { was := p.Rules.Barriers; p.Rules.Barriers = 0; return was > 0 }},
		{len(p.Ports), func(i int) bool { p.Ports = slices.Delete(p.Ports, i, i+1); return true }},
		{len(p.Compartments), func(i int) bool { p.Compartments = slices.Delete(p.Compartments, i, i+1); return true }},
		{len(p.Formations), func(i int) bool { p.Formations = slices.Delete(p.Formations, i, i+1); return true }},
		{len(p.Fluids), func(i int) bool { p.Fluids = slices.Delete(p.Fluids, i, i+1); return true }},
		{len(p.Compartments), func(i int) bool {
			c := &p.Compartments[i]
			layered := len(c.Layers) > 0
			if layered {
				c.Fluid, c.Layers = c.Layers[0].Fluid, nil
			}
			return layered
		}},
		{12 * len(p.Steps), func(i int) bool { return lessOfStep(&p.Steps[i/12], i%12) }},
		{8 * countActions(p), func(i int) bool { return lessOfAction(p, i/8, i%8) }},
		{200, func(i int) bool { return oneSharp(p, i) }},
	} {
		if k < n.count {
			return n.drop(k), true
		}
		k -= n.count
	}
	return false, false
}

func dropDevice(p *sequence.Plan, i int) {
	prefix := p.Devices[i].Name + ": "
	for k := range p.Steps {
		s := &p.Steps[k]
		s.Expect = slices.DeleteFunc(s.Expect, func(name string) bool { return strings.HasPrefix(name, prefix) })
	}
	p.Devices = slices.Delete(p.Devices, i, i+1)
}

func lessOfStep(s *sequence.Step, k int) bool {
	before := len(s.Shut) + len(s.Displace) + len(s.Ramps) + len(s.PressureChange) + len(s.Tests) + len(s.Balance) + len(s.Allow)
	switch k {
	case 0:
		s.Shut = nil
	case 1:
		s.Displace = s.Displace[:max(0, len(s.Displace)-1)]
	case 2, 3, 4:
		if i := k - 2; i < len(s.Ramps) {
			s.Ramps = slices.Delete(s.Ramps, i, i+1)
		}
	case 5:
		s.PressureChange = nil
	case 6:
		s.Tests = s.Tests[:max(0, len(s.Tests)-1)]
	case 7:
		s.Balance = s.Balance[:max(0, len(s.Balance)-1)]
	case 8:
		s.Allow = nil
	default: // one of the pressures of a ramp of two
		if i := k - 9; i < len(s.Ramps) && len(s.Ramps[i]) > 1 {
			delete(s.Ramps[i], "annulus")
			return true
		}
	}
	return before != len(s.Shut)+len(s.Displace)+len(s.Ramps)+len(s.PressureChange)+len(s.Tests)+len(s.Balance)+len(s.Allow)
}

func countActions(p *sequence.Plan) int {
	n := 0
	for _, d := range p.Devices {
		n += len(d.Actions)
	}
	return n
}

func lessOfAction(p *sequence.Plan, n, k int) bool {
	for d := range p.Devices {
		actions := p.Devices[d].Actions
		if n >= len(actions) {
			n -= len(actions)
			continue
		}
		a := &actions[n]
		name := p.Devices[d].Name + ": " + a.Name
		switch k {
		case 0:
			for i := range p.Steps {
				p.Steps[i].Expect = slices.DeleteFunc(p.Steps[i].Expect, func(x string) bool { return x == name })
			}
			gone := a.Name
			for i := range actions {
				actions[i].Arms = slices.DeleteFunc(actions[i].Arms, func(x string) bool { return x == gone })
			}
			p.Devices[d].Actions = slices.Delete(actions, n, n+1)
			return true
		case 1, 2:
			if len(a.Triggers) > 1 {
				a.Triggers = slices.Delete(a.Triggers, k-1, k)
				return true
			}
		case 3:
			had := len(a.Opens) + len(a.Closes)
			a.Opens, a.Closes = nil, nil
			return had > 0
		case 4:
			had := len(a.Arms)
			a.Arms = nil
			return had > 0
		case 5:
			if t := &a.Triggers[0]; t.Count > 1 {
				t.Count, t.Rearm = 0, unit.Band[pressure]{}
				return true
			}
		}
		return false
	}
	return false
}

// oneSharp takes the width out of the k-th band.
func oneSharp(p *sequence.Plan, k int) bool {
	changed := false
	c := eachBand(p, func(_ bandKind, b plainBand) plainBand {
		if k--; k == -1 && b.least < b.greatest {
			changed = true
			return plainBand{b.nominal, b.nominal, b.nominal}
		}
		return b
	})
	*p = *c
	return changed
}

// Of a plan with a draw that fails only a device, a step and their wells are
// needed.
func TestSmallestPlan(t *testing.T) {
	p := plainPlan(2026, 5)
	shows := func(p *sequence.Plan) bool {
		_, r := failingDraw(p, 1, 20)
		return r != nil
	}
	for n := uint64(0); !shows(p); n++ {
		p = plainPlan(2026, n)
	}
	q := smallest(t, p, shows)
	require.True(t, shows(q))
	require.LessOrEqual(t, len(q.Devices)+len(q.Steps), len(p.Devices)+len(p.Steps)-1)
}
