package sequence_test

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// gauge is a bit more than the half psi to which windows are rounded inwards, with what is left
// unsure where pressures that move together are only enclosed.
const gaugePSI = 0.8

// windowCheck holds a programme's windows against a fine scan.
type windowCheck struct {
	plan  *sequence.Plan
	draws []*sequence.Plan
	sharp bool // one world: the scan must find the very edges
	step  float64
}

// faults says where a window and the scan part.
func (c *windowCheck) faults(k int, w *sequence.Window) []string {
	h := held{k, append([]string{w.Compartment}, w.Together...), levelPressure(w.Planned)}
	right := func(x float64) bool { return h.right(c.plan, c.draws, x) }
	var all []string
	say := func(x float64, what string) {
		all = append(all, c.plan.Name+", "+c.plan.Steps[k].Name+", "+w.Compartment+" at "+pounds(x).String()+": "+what+"; "+w.Words())
	}
	elsewhere := func(x float64) bool { // in another interval: a gap may be narrower than a gauge shows
		return slices.ContainsFunc(w.Intervals, func(i sequence.Interval) bool {
			return x >= levelPressure(i.Least).In(psi) && x <= levelPressure(i.Greatest).In(psi)
		})
	}
	for _, i := range w.Intervals {
		a, b := levelPressure(i.Least).In(psi), levelPressure(i.Greatest).In(psi)
		for _, x := range []float64{a, a + (b-a)*0.37, b} {
			if !right(x) {
				say(x, "fails, but lies in the window")
			}
		}
		if c.sharp && i.Above != "" && !elsewhere(b+gaugePSI) && right(b+gaugePSI) {
			say(b+gaugePSI, "is right above the edge")
		}
		if c.sharp && i.Below != "" && a > gaugePSI && !elsewhere(a-gaugePSI) && right(a-gaugePSI) {
			say(a-gaugePSI, "is right below the edge")
		}
	}
	if !c.sharp {
		return all
	}
	for x := 0.0; x <= sequence.WindowCap.In(psi); x += c.step {
		in := false
		for _, i := range w.Intervals {
			in = in || x >= levelPressure(i.Least).In(psi)-gaugePSI && x <= levelPressure(i.Greatest).In(psi)+gaugePSI
		}
		if !in && right(x) && right(x+0.6) && right(max(0, x-0.6)) {
			say(x, "is right, but in no interval")
			break
		}
	}
	return all
}

func levelPressure(l sequence.Level) pressure {
	p, _ := l.Pressure()
	return p
}

func everything(t testing.TB, p *sequence.Plan) *sequence.Programme {
	t.Helper()
	r, err := sequence.Check(context.Background(), p, sequence.Options{Workers: 1})
	require.NoError(t, err)
	return r
}

// The windows of twoParts are known by hand.
func TestWindowOfARoomThatOpens(t *testing.T) {
	r := everything(t, twoParts())
	var w *sequence.Window
	for i := range r.Steps[0].Windows {
		if x := &r.Steps[0].Windows[i]; levelPressure(x.Planned) == 2000*psi {
			w = x
		}
	}
	require.NotNil(t, w)
	require.Len(t, w.Intervals, 2, w.Words())
	for i, want := range []interval{{0, 3300}, {4000, 4500}} {
		require.InDelta(t, want.least, levelPressure(w.Intervals[i].Least).In(psi), gaugePSI)
		require.InDelta(t, want.greatest, levelPressure(w.Intervals[i].Greatest).In(psi), gaugePSI)
	}
}

// In one world the window is exactly where the plain walker finds it; in a box of
// them no draw fails inside.
func TestWindowsAgainstAFineScan(t *testing.T) {
	from, to := plansWanted(t, long.Size(1, 8))
	eachPlan(from, to, func(n uint64) {
		switch n {
		case 6:
			n = 16 // what comes at the very same pressure only at single pressures of the window
		case 7:
			n = 87 // two that go together: right over a wide range, wrong over another, and only narrow pieces tell
		}
		p := plainPlan(77, n)
		exact := sharp(p, nominalOf)
		checkWindows(t, n, &windowCheck{plan: exact, draws: []*sequence.Plan{exact}, sharp: true, step: 50})
		c := &windowCheck{plan: p}
		random := newRandom(77, n)
		for k := range 40 {
			c.draws = append(c.draws, drawValues(p, random, k))
		}
		checkWindows(t, n, c)
	})
}

func checkWindows(t testing.TB, n uint64, c *windowCheck) {
	ctx, stop := context.WithTimeout(context.Background(), 5*time.Minute)
	defer stop()
	r, err := sequence.Check(ctx, c.plan, sequence.Options{Workers: 1})
	if err != nil {
		t.Errorf("plan %d, sharp %v: %v", n, c.sharp, err)
		keepPlan(t, fmt.Sprintf("window-%d-%v", n, c.sharp), c.plan)
		return
	}
	for k := range r.Steps {
		if c.sharp && k > 0 && !(held{step: k - 1}).right(c.plan, c.draws, 0) {
			return // what comes after it has nothing to stand on
		}
		for i := range r.Steps[k].Windows {
			for _, fault := range c.faults(k, &r.Steps[k].Windows[i]) {
				t.Errorf("plan %d, sharp %v: %s", n, c.sharp, fault)
				keepPlan(t, fmt.Sprintf("window-%d-%v", n, c.sharp), c.plan)
			}
		}
	}
}

// By hand: the annulus goes to 1,310 psi and the tubing to 1,416.4 psi; a device
// moves at 181.2 psi of annulus less tubing. So the tubing must go to 1,128.8 psi
// at least, and the annulus to 1,597.6 psi at most.
func TestWindowsOfTwoMovers(t *testing.T) {
	p := gaugeWell()
	addAction(p, "device", "annulus", "tubing", rising(181.2*psi, 181.2*psi))
	p.Steps = []sequence.Step{{Name: "together", Ramps: []map[string]pressure{{"annulus": 1310 * psi, "tubing": 1416.4 * psi}}}}
	r := everything(t, p)
	require.True(t, r.OK())
	for _, w := range r.Steps[0].Windows {
		require.Len(t, w.Intervals, 1, w.Words())
		if i := w.Intervals[0]; w.Compartment == "tubing" {
			require.InDelta(t, 1310-181.2, levelPressure(i.Least).In(psi), gaugePSI)
		} else {
			require.InDelta(t, 1416.4+181.2, levelPressure(i.Greatest).In(psi), gaugePSI)
		}
	}
}
