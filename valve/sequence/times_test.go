package sequence_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Times add up by hand: 2 h as the plan says and 30 min of a test, then a tool of 4 h.
// The branch's 5 h aren't on the way; it counts from its own beginning.
func TestTimesAddUp(t *testing.T) {
	p := branched()
	p.Steps[0].Takes = "2h"
	p.Steps[0].Otherwise.Steps[0].Takes = "1h"
	p.Steps[0].Otherwise.Steps[1].Do[0].Takes = "4h"
	p.Steps[1].Takes = "30m"
	r := checked(t, p)
	require.True(t, r.OK(), "%v", r.Findings)
	require.Equal(t, "2h30m0s", r.Takes)
	require.Equal(t, "5h0m0s", r.Steps[2].Time.Since)
	require.Equal(t, "2h30m0s", r.Steps[3].Time.Since)
	require.Equal(t, "shift by wireline: “sleeve: moves”", r.Steps[2].Time.Parts[0].What)
	p.Steps[0].Rise = 100 * psi // a minute: 1,200 psi
	require.Equal(t, "2h42m0s", checked(t, p).Takes)
	for _, bad := range []string{"-1h", "0s", "soon", "99999h"} {
		p.Steps[0].Takes = bad
		require.ErrorContains(t, p.Validate(), "steps[0].takes")
	}
	require.Empty(t, checked(t, branched()).Takes)
}
