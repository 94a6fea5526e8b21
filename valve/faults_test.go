package valve

import (
	"errors"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Words for every value, and a number where there is none.
func TestWordsOfValues(t *testing.T) {
	require.Equal(t, "correlation 7", Correlation(7).String())
	require.Equal(t, "condition 9", Condition(9).String())
	for v, want := range map[Firing]string{CannotFire: "cannot fire", MayFire: "may fire", MustFire: "must fire",
		MayHaveFired: "may have fired before", AlreadyFired: "already fired", 9: "verdict 9"} {
		require.Equal(t, want, v.String())
	}
	require.Equal(t, "rising", Rising.String())
	require.Equal(t, "falling", Falling.String())
	require.Equal(t, "direction 5", Direction(5).String())
	_, err := Direction(5).MarshalText()
	require.EqualError(t, err, "valve: direction is 5; must be one of rising and falling")
	var d Direction
	require.EqualError(t, d.UnmarshalText([]byte("up")), `valve: direction is "up"; must be one of rising or falling`)
}

// A valve that isn't of a known kind has the first trigger alone; one that opens
// under pressure has it, too.
func TestRowsByKind(t *testing.T) {
	v := IsolationValve{Kind: OpensUnderPressure, Unlock: unit.Exactly(3000 * unit.PSI)}
	require.Len(t, v.Row(), 1)
	opens, closes := SafetyValve{Opens: unit.Exactly(2000 * unit.PSI), Closes: unit.Exactly(900 * unit.PSI)}.Rows()
	require.Equal(t, Row{{Threshold: unit.Exactly(2000 * unit.PSI)}}, opens)
	require.Equal(t, Row{{Threshold: unit.Exactly(900 * unit.PSI), Direction: Falling}}, closes)
}

// A row of a falling trigger that is counted waits, after its first count, for the
// rise that re-arms it.
func TestNextAfterACountOfAFallingTrigger(t *testing.T) {
	row := Row{{Threshold: unit.Exactly(100 * unit.PSI), Direction: Falling, Count: 2, Rearm: unit.Exactly(500 * unit.PSI)}}
	require.NoError(t, row.Validate())
	s := row.Ramp(TriggerState{}, 1000*unit.PSI, 50*unit.PSI).State
	at, d, ok := row.Next(s)
	require.True(t, ok)
	require.Equal(t, Rising, d)
	require.Equal(t, 500*unit.PSI, at)
}

// The words follow the bounds: one that isn't reached itself is more or less than.
func TestNoSurfacePressureSaysHowFar(t *testing.T) {
	e := &NoSurfacePressureError{Floor: Bound{Name: "plug", Surface: 3000 * unit.PSI}, Ceiling: Bound{Name: "packer", Surface: 2500 * unit.PSI}}
	require.EqualError(t, e, ErrNoSurfacePressure.Error()+": plug needs at least 3000 psi, packer needs at most 2500 psi; short by 500 psi")
	e.Floor.Open, e.Ceiling.Open = true, true
	require.EqualError(t, e, ErrNoSurfacePressure.Error()+": plug needs more than 3000 psi, packer needs less than 2500 psi; short by 500 psi")
	require.True(t, errors.Is(e, ErrNoSurfacePressure))
}

func TestGasLeakFaults(t *testing.T) {
	g := buildUp
	_, err := g.RiseAt(unit.FlowRate(math.NaN()))
	require.ErrorContains(t, err, "valve: rate: is NaN")
	_, err = g.RiseAt(1e307)
	require.ErrorContains(t, err, "valve: rate: is ")
	_, err = GasLeak{}.RiseAt(1)
	require.ErrorContains(t, err, "valve: ")
}

// A case that fails safe at any depth has no line of working.
func TestFailSafeAnywhereHasNoWorking(t *testing.T) {
	f := FailSafe{Cases: []FailSafeDepth{{Anywhere: true}}}
	require.Empty(t, f.Steps())
}
