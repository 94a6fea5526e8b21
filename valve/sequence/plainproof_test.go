package sequence_test

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// judged is a verdict on a plan in the words of these tests.
type judged struct {
	proved, refuted bool
	witnesses       []witness
	says            string // what fails, or what is left open
}

// witness is a finding that was shown, and the plan with the values that show it.
type witness struct {
	finding sequence.Finding
	plan    *sequence.Plan
}

// plansWanted is how many random plans a brute-force test takes: n, or what the
// environment's SEQUENCE_PLANS says for a long run. SEQUENCE_FROM leaves out
// the first ones.
func plansWanted(t testing.TB, n int) (from, to uint64) {
	t.Helper()
	number := func(name string, otherwise int) uint64 {
		text, given := os.LookupEnv(name)
		if !given {
			return uint64(otherwise)
		}
		x, err := strconv.ParseUint(text, 10, 64)
		require.NoError(t, err, name)
		return x
	}
	from = number("SEQUENCE_FROM", 0)
	return from, from + number("SEQUENCE_PLANS", n)
}

// eachPlan calls f for every number on all cores.
func eachPlan(from, to uint64, f func(n uint64)) {
	var next atomic.Uint64
	next.Store(from)
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for n := next.Add(1) - 1; n < to; n = next.Add(1) - 1 {
				f(n)
			}
		})
	}
	group.Wait()
}

// keepPlan writes a plan that shows something into the directory that
// SEQUENCE_KEEP names, for a person to look at.
func keepPlan(t testing.TB, name string, p *sequence.Plan) {
	if dir := os.Getenv("SEQUENCE_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, name+".json"), planFile(t, p), 0o644); err != nil {
			t.Error(err)
		}
	}
}

// drawsPerPlan is how often a plan that is called proved is drawn.
const drawsPerPlan = 200

// failingDraw draws a plan and returns the first draw that fails by more than a
// hair, in whatever order what is due at once happens.
func failingDraw(p *sequence.Plan, n uint64, draws int) (*sequence.Plan, *plainResult) {
	random := newRandom(n, 99)
	for k := range draws {
		d := drawValues(p, random, k)
		if r := plainOrders(d, 4, 24); !r.ok() && !r.close {
			return d, r
		}
	}
	return nil, nil
}

func nominalOf(b plainBand) float64 { return b.nominal }

// tally is what a brute-force test saw.
type tally struct {
	proved, refuted, open, refused, close, wrong atomic.Int64

	draws int // of a plan that is called proved; 0: drawsPerPlan
}

func (c *tally) String() string {
	return fmt.Sprintf("%d proved, %d refuted, %d not decided, %d refused; %d too close to tell, %d wrong",
		c.proved.Load(), c.refuted.Load(), c.open.Load(), c.refused.Load(), c.close.Load(), c.wrong.Load())
}

// holdAgainst holds one verdict against the plain walker.
func (c *tally) holdAgainst(t testing.TB, p *sequence.Plan, n uint64, v judged) {
	switch {
	case v.proved:
		c.proved.Add(1)
		if d, r := failingDraw(p, n, cmp.Or(c.draws, drawsPerPlan)); d != nil {
			c.wrong.Add(1)
			keepPlan(t, fmt.Sprintf("proved-%d", n), p)
			keepPlan(t, fmt.Sprintf("proved-%d-draw", n), d)
			t.Errorf("plan %d is called proved; a draw fails: %v", n, r.failures)
		}
	case v.refuted:
		c.refuted.Add(1)
		for i, x := range v.witnesses {
			c.holdWitness(t, fmt.Sprintf("refuted-%d-%d", n, i), p, x)
		}
		if len(v.witnesses) == 0 {
			c.wrong.Add(1)
			t.Errorf("plan %d is refuted (%s) without a witness", n, v.says)
		}
	default:
		c.open.Add(1)
		keepPlan(t, fmt.Sprintf("open-%d", n), p)
		t.Logf("plan %d is not decided: %s", n, v.says)
	}
}

// holdWitness walks a witness in every order: in one of them it must show what
// its finding says.
func (c *tally) holdWitness(t testing.TB, name string, p *sequence.Plan, x witness) {
	any := false
	r := plainOrdersUntil(x.plan, 16, 2000, func(r *plainResult) bool {
		any = any || !r.ok()
		return r.shows(x.finding)
	})
	if r.shows(x.finding) {
		return
	}
	if r.close {
		c.close.Add(1)
		return
	}
	c.wrong.Add(1)
	keepPlan(t, name, p)
	keepPlan(t, name+"-witness", x.plan)
	if any {
		t.Errorf("%s: %s, %s, %s: its witness fails otherwise: %v", name, x.finding.Kind, x.finding.Step, x.finding.Device, r.failures)
	} else {
		t.Errorf("%s: %s, %s, %s: its witness is right", name, x.finding.Kind, x.finding.Step, x.finding.Device)
	}
}

// shows tells whether a walk fails in the kind and step of a finding. What comes
// in the wrong order may be called unintended or missing. What follows from a step
// before is looked at beyond what the plain walker goes on from: that step fails in it.
func (r *plainResult) shows(f sequence.Finding) bool {
	event := func(k sequence.Kind) bool { return k == sequence.Unintended || k == sequence.Missing }
	for _, x := range r.failures {
		if f.Follows != "" && x.Step == f.Follows && (x.Kind == plainUnwalked || event(x.Kind)) {
			return true
		}
		if x.Step == f.Step && (x.Kind == f.Kind || x.Kind == plainUnwalked || event(x.Kind) && event(f.Kind)) {
			return true
		}
	}
	return false
}

// unwalked holds a refusal: it is right where the plain walker, too, finds a draw
// that it can't walk.
func (c *tally) unwalked(t testing.TB, p *sequence.Plan, n uint64, err error) {
	c.refused.Add(1)
	unwalkable := func(r *plainResult) bool { return r.fault != nil }
	random, lastFirst := newRandom(n, 98), slices.Repeat([]int{99}, 1000)
	for k := range 2000 {
		d := drawValues(p, random, k)
		if unwalkable(plainWalkOf(d, 4, lastFirst)) || unwalkable(plainOrdersUntil(d, 4, 50, unwalkable)) {
			return
		}
	}
	c.wrong.Add(1)
	keepPlan(t, fmt.Sprintf("error-%d", n), p)
	t.Errorf("plan %d: %v", n, err)
}
