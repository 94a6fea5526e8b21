package sequence_test

import (
	"slices"
	"testing"

	"maps"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// both is two features in one plan.
func both(a, b *feature) *feature {
	hooks := func(x, y func(m *plainMaker)) func(m *plainMaker) {
		return func(m *plainMaker) {
			for _, f := range []func(m *plainMaker){x, y} {
				if f != nil {
					f(m)
				}
			}
		}
	}
	return &feature{
		devices: hooks(a.devices, b.devices), steps: hooks(a.steps, b.steps), levels: hooks(a.levels, b.levels), more: hooks(a.more, b.more),
		goals: func(m *plainMaker, r *plainResult) {
			for _, f := range []*feature{a, b} {
				if f.goals != nil {
					f.goals(m, r)
				}
			}
		},
		dull: func(r *plainResult) bool { return a.dull != nil && a.dull(r) || b.dull != nil && b.dull(r) },
	}
}

// apart tells which don't go together: how far conditions have come can't be stated, and
// a plan begins once.
func apart(a, b string) bool {
	begins := func(x string) bool { return x == "begin" || x == "begun low" }
	return a == "areas" && b == "conditions" || begins(a) && (b == "conditions" || begins(b))
}

// Features go together: any two of them in one plan.
func TestPairsOfFeaturesHold(t *testing.T) {
	names := slices.Sorted(maps.Keys(features))
	names = slices.DeleteFunc(names, func(n string) bool { // a string is slow to load plainly; slower is slow, too
		return slices.Contains([]string{"string", "strings", "fished", "fished in", "slow"}, n)
	})
	var c tally
	c.draws = 100
	from, to := plansWanted(t, long.Size(6, 30))
	eachPlan(from, to, func(n uint64) {
		random := newRandom(n, 4713)
		i, j := random.IntN(len(names)), random.IntN(len(names)-1)
		if j >= i {
			j++
		}
		if apart(names[i], names[j]) || apart(names[j], names[i]) {
			return
		}
		f := both(features[names[i]], features[names[j]])
		p := plainPlanWith(4712, n, f)
		p.Name += " " + names[i] + "+" + names[j]
		if p.Validate() != nil {
			return // the makers of the two don't know of each other
		}
		v, err := verdictOf(p)
		if err != nil {
			t.Logf("%d %s: %v", n, p.Name, err)
			c.unwalked(t, p, n, err)
			return
		}
		was := c.wrong.Load()
		c.holdAgainst(t, p, n, v)
		if c.wrong.Load() > was {
			t.Log(n, p.Name)
		}
	})
	t.Log(&c)
	require.Zero(t, c.wrong.Load())
}
