package sleeve

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

func ExampleSystem_Faults() {
	s := well(2)
	faults, err := s.Faults([]Position{Open, Open}, Action{Close: true, Move: []int{1}, Hold: []int{0}}, 3000*unit.PSI)
	if err != nil {
		panic(err)
	}
	for _, f := range faults {
		for _, i := range f.Differs {
			fmt.Printf("line %d %v instead of %v: %s %v\n", f.Line, f.Actual, f.Planned, f.Effects[i].Name, f.Effects[i].Motion)
		}
	}
	// Output:
	// line -1 vented instead of pressured: sleeve 2 stays
	// line -1 blocked instead of pressured: sleeve 2 partly closes
	// line 0 vented instead of pressured: sleeve 1 closes
	// line 1 pressured instead of vented: sleeve 2 stays
	// line 1 blocked instead of vented: sleeve 2 partly closes
}

func TestFaultsAreAllThere(t *testing.T) {
	s := well(3)
	f, err := s.Faults([]Position{Closed, Closed, Open}, Action{Move: []int{0, 1}}, 3000*unit.PSI)
	require.NoError(t, err)
	require.Len(t, f, 2*4, "every line in two wrong ways")
	for _, x := range f {
		require.NotEqual(t, x.Planned, x.Actual)
		e, err := s.Apply([]Position{Closed, Closed, Open}, Panel{})
		require.NoError(t, err)
		require.Len(t, x.Effects, len(e))
	}
	// The close line under pressure as well: nothing opens, and the third closes.
	require.Equal(t, Pressured, f[0].Actual)
	require.Equal(t, []int{0, 1, 2}, f[0].Differs)
	_, err = s.Faults([]Position{Closed, Closed, Open}, Action{Move: []int{2}}, 1)
	require.Error(t, err)
	_, err = s.Faults([]Position{Closed, Closed, Open}, Action{Move: []int{1}}, unit.Pressure(math.NaN()))
	require.Error(t, err)
}
