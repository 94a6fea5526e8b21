package sequence_test

import (
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// What follows a step has its branches again, also of a plan in which they were written
// out; the plan that goes on after a step before them keeps them.
func TestAfterKeepsBranches(t *testing.T) {
	p := readPlan(t, shipped+"branch-shifts-without-equalising.json")
	for _, q := range []*sequence.Plan{p, p.Expanded()} {
		all, err := q.After(0, false)
		require.NoError(t, err)
		require.Len(t, all, 2)
		require.Len(t, all[0].Otherwise.Steps, 1)
		all, err = q.After(1, true)
		require.NoError(t, err)
		require.Equal(t, []string{"shift the valve by coiled tubing", "produce"}, []string{all[0].Name, all[1].Name})
		all, err = q.After(1, false)
		require.NoError(t, err)
		require.Len(t, all, 1)
		all, err = q.After(3, false)
		require.NoError(t, err)
		require.Empty(t, all)
		_, err = q.After(4, false)
		require.ErrorContains(t, err, "must be from 0 to 3")
		rest, err := q.Rest(t.Context(), p.Steps[0].Name)
		require.NoError(t, err)
		require.Len(t, rest.Steps, 2)
		require.Len(t, rest.Steps[0].Otherwise.Steps, 1)
		_, err = q.Rest(t.Context(), p.Steps[1].Name)
		require.ErrorContains(t, err, "branches")
	}
	p.Steps[1].Otherwise.Then = "end"
	all, err := p.After(2, false) // in the branch, which ends the plan
	require.NoError(t, err)
	require.Empty(t, all)
	_, err = (*sequence.Plan)(nil).After(0, false)
	require.Error(t, err)
}
