package gasflow_test

import (
	"errors"
	"testing"

	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// refused gives so many densities and then none.
type refused struct {
	ideal
	left *int
}

func (r refused) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if *r.left--; *r.left < 0 {
		return 0, errors.New("too dense")
	}
	return r.ideal.Density(p, t)
}

// What the gas refuses is said at every point of the march, with the pressure there.
func TestWhatTheGasRefuses(t *testing.T) {
	calls := 1 << 20
	_, err := tubing(refused{7e-6, &calls}).Down(5, 100*unit.Bar)
	require.NoError(t, err)
	used := 1<<20 - calls
	for n := 0; n < used; n += max(1, used/50) {
		left := n
		_, err := tubing(refused{7e-6, &left}).Down(5, 100*unit.Bar)
		require.ErrorContains(t, err, "too dense", "after %d", n)
	}
	for _, left := range []int{0, used - 1} {
		_, err := tubing(refused{7e-6, &left}).Up(5, 300*unit.Bar)
		require.ErrorContains(t, err, "too dense")
	}
}

// Gas that would have to run faster than sound doesn't arrive.
func TestFasterThanSound(t *testing.T) {
	for _, rate := range []unit.MassRate{20, 60, 200, 2000} {
		_, err := tubing(ideal(7e-6)).Up(rate, 60*unit.Bar)
		require.ErrorIs(t, err, gasflow.ErrNotReached)
	}
	_, err := tubing(ideal(7e-6)).Down(2000, unit.Bar)
	require.ErrorIs(t, err, gasflow.ErrNotReached)
}
