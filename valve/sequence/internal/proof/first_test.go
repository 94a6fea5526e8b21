package proof

import (
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"github.com/stretchr/testify/require"
)

// What only follows from the first failure that stands by itself is left out, and so is what isn't intended where it comes just at
// its level in a step after one in which it is shown already.
func TestWhatOnlyFollowsIsLeftOut(t *testing.T) {
	p := shutters(200*kPa, 60*kPa, [2]float64{90 * kPa, 110 * kPa}, [2]float64{60 * kPa, 80 * kPa})
	nominal := []float64{0, 0}
	failure := func(step int, kind judge.Kind, index int, value float64, witness []float64, follows bool) Failure {
		m := &judge.Margin{Key: judge.Key{Step: step, Kind: kind, Index: index}, Value: affine.Const(value)}
		return Failure{Margin: m, Shown: m, Witness: witness, follows: follows}
	}
	left := func(all ...Failure) (steps []int) {
		o := &Outcome{Failures: all}
		o.first(p)
		for _, f := range o.Failures {
			steps = append(steps, f.Step)
		}
		return steps
	}
	event := func(step int) Failure { return failure(step, judge.Event, 1, 0, nominal, false) }
	require.Equal(t, []int{1, 2}, left(event(1), event(2), failure(2, judge.Inside, 0, 0, nominal, true)), "it follows from step 2")
	require.Equal(t, []int{2, 2}, left(event(2), failure(2, judge.Inside, 0, 0, nominal, true)), "in the same step it stands")
	require.Equal(t, []int{1, 3}, left(failure(1, judge.Inside, 0, 0, nominal, false), failure(3, judge.Inside, 0, 0, nominal, true)), "a rating is no event")
	require.Equal(t, []int{1, 3}, left(failure(1, judge.Event, 1, 0, nil, false), failure(3, judge.Inside, 0, 0, nominal, true)), "an event that nobody has shown is none yet")
	require.Equal(t, []int{1, 3}, left(failure(1, judge.Event, 1, 0, nominal, true), failure(3, judge.Inside, 0, 0, nominal, true))[:2])
	require.Equal(t, []int{1}, left(failure(1, judge.ByHand, 0, 0, nominal, false), failure(3, judge.Inside, 0, 0, nominal, true)))

	// Action 0 comes at 100 kPa, nominally.
	at := func(step int, value float64, witness []float64) Failure {
		return failure(step, judge.Event, 0, value, witness, false)
	}
	require.Equal(t, []int{1}, left(at(1, 150*kPa, nominal), at(2, 100*kPa, nominal)))
	require.Equal(t, []int{1, 2}, left(at(1, 150*kPa, nil), at(2, 100*kPa, nominal)), "the first isn't shown")
	require.Equal(t, []int{1, 2}, left(at(1, 150*kPa, nominal), at(2, 130*kPa, nominal)), "it comes far beyond its level")
	require.Equal(t, []int{1, 2}, left(at(1, 150*kPa, nominal), at(2, 100*kPa, nil)))
	require.Equal(t, []int{1, 2}, left(failure(1, judge.Event, 1, 150*kPa, nominal, false), at(2, 100*kPa, nominal)), "another action")
	require.Equal(t, []int{2, 2}, left(at(2, 150*kPa, nominal), at(2, 100*kPa, nominal)), "the same step")
	require.Equal(t, []int{1, 2}, left(failure(1, judge.Inside, 0, 150*kPa, nominal, false), at(2, 100*kPa, nominal)), "another kind")
}

// A range that can't be walked and is narrower than two of what the search parts has the limit of one beside it; a wide one has none.
func TestNarrowRangesAreNamedAfterTheirNeighbours(t *testing.T) {
	m, n := new(judge.Margin), new(judge.Margin)
	for _, x := range []struct {
		least, greatest float64
		want            *judge.Margin
	}{{100, 102, m}, {100.9, 102.9, m}, {101.1, 102, nil}, {100, 102.1, nil}, {197, 199, n}, {150, 151, nil}, {1000, 1001, nil}} {
		w := &window{held: Held{Fine: 1}, bad: []Bad{{Least: 0, Greatest: 100, Margin: m}, {Least: 200, Greatest: 300, Margin: n}, {Least: x.least, Greatest: x.greatest}}}
		w.name()
		require.Same(t, x.want, w.bad[2].Margin, "%v to %v", x.least, x.greatest)
	}
}
