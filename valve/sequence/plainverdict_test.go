package sequence_test

import (
	"context"
	"fmt"
	"os"
	"testing"
	"time"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// verdictOf asks for a verdict.
func verdictOf(p *sequence.Plan) (v judged, err error) {
	defer func() {
		if x := recover(); x != nil {
			err = fmt.Errorf("panic: %v", x)
		}
	}()
	ctx := context.Background()
	if limit, err := time.ParseDuration(os.Getenv("SEQUENCE_TIMEOUT")); err == nil { // of one plan, in a hunt
		var stop context.CancelFunc
		ctx, stop = context.WithTimeout(ctx, limit)
		defer stop()
	}
	r, err := sequence.Check(ctx, p, sequence.Options{Only: sequence.VerdictOnly, Workers: 1})
	if err != nil {
		return judged{}, err
	}
	v = judged{proved: r.Verdict == sequence.Proved, refuted: r.Verdict == sequence.Refuted, says: r.Open}
	for _, f := range r.Findings {
		if v.says += " | " + string(f.Kind) + " " + f.Step + " " + f.Device; !f.Decided {
			continue
		}
		w, err := p.At(f.Witness)
		if err != nil {
			return v, err
		}
		v.witnesses = append(v.witnesses, witness{f, w})
	}
	return v, nil
}

// The promise: no plan that is called proved fails in a single draw, every
// refuted plan's witness fails, and hardly any is left open.
func TestVerdictsHoldAgainstThePlainWalker(t *testing.T) {
	var c tally
	from, to := plansWanted(t, long.Size(30, 1000))
	eachPlan(from, to, func(n uint64) {
		p := plainPlan(2026, n)
		v, err := verdictOf(p)
		if err != nil {
			c.unwalked(t, p, n, err)
			return
		}
		c.holdAgainst(t, p, n, v)
	})
	t.Log(&c)
	require.Zero(t, c.wrong.Load())
	require.LessOrEqual(t, c.open.Load()*100, int64(to-from), "not decided")
}

// The cases whose verdict was found by hand.
func TestVerdictsOfCases(t *testing.T) {
	for _, x := range plainCases() {
		t.Run(x.name, func(t *testing.T) {
			v, err := verdictOf(x.plan)
			require.NoError(t, err)
			if x.fails == "" {
				require.True(t, v.proved, v.says)
				return
			}
			require.True(t, v.refuted, v.says)
			require.NotEmpty(t, v.witnesses)
			require.Equal(t, x.fails, v.witnesses[0].finding.Kind)
			require.True(t, plainOrders(v.witnesses[0].plan, 16, 100).shows(v.witnesses[0].finding))
		})
	}
}

// In whatever order the lists of a plan stand, its verdict and what it finds are
// the same.
func TestVerdictsDoNotSeeTheOrderOfLists(t *testing.T) {
	from, to := plansWanted(t, long.Size(15, 60))
	eachPlan(from, to, func(n uint64) {
		p := plainPlan(99, n)
		a, err := verdictOf(p)
		b, fault := verdictOf(shuffled(p, newRandom(99, n)))
		if (err == nil) != (fault == nil) || a.proved != b.proved || a.refuted != b.refuted {
			keepPlan(t, fmt.Sprintf("shuffled-%d", n), p)
			t.Errorf("plan %d: proved %v, refuted %v (%s, %v); shuffled %v, %v (%s, %v)", n, a.proved, a.refuted, a.says, err, b.proved, b.refuted, b.says, fault)
		}
	})
}
