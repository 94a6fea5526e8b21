package valve

import (
	"encoding/json"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// What a state of a row may not say.
func TestStateWithLessThanNothing(t *testing.T) {
	for text, fault := range map[string]string{
		`{"earliest":{"links":-1}}`: "earliest.links: is -1; must be 0 or more", `{"latest":{"counted":-1}}`: "latest.counted: is -1; must be 0 or more",
	} {
		var s TriggerState
		require.ErrorContains(t, json.Unmarshal([]byte(text), &s), fault)
	}
}

// A range of surface pressures that has an end at infinity, either way, is none.
func TestWindowWithoutEnds(t *testing.T) {
	inf := unit.Pressure(math.Inf(1))
	for _, r := range []SurfaceRange{{Least: -inf, Greatest: 1}, {Least: 0, Greatest: inf}, {Least: inf, Greatest: inf}, {Least: -inf, Greatest: -inf}, {Least: 2, Greatest: 1}} {
		_, err := Window(r, nil)
		require.ErrorContains(t, err, "must be finite and in order", "%v", r)
	}
	_, err := Window(SurfaceRange{Least: 1, Greatest: 1}, nil)
	require.NoError(t, err)
}

// Where no set of pins serves, the nearest is told, with the tolerance that it would take.
func TestNoPinCountSays(t *testing.T) {
	e := &NoPinCountError{Window: unit.Band[unit.Force]{Least: 90, Nominal: 95, Greatest: 100}, Tolerance: 0.05}
	require.NotContains(t, e.Error(), "would do")
	e.Nearest = []PinFit{{}}
	require.Contains(t, e.Error(), "0 pins would do with a tolerance of 5.00 %")
	e.Tolerance = -1
	require.NotContains(t, e.Error(), "would do")
}

// Only a deviation of nothing, both ways, makes a row's memory exact.
func TestMemoryOfARowIsExactWithoutDeviation(t *testing.T) {
	row := Row{{Direction: Rising, Threshold: unit.Band[unit.Pressure]{Least: 90, Nominal: 100, Greatest: 110}}}
	for _, x := range []struct {
		deviation unit.Band[unit.Pressure]
		exact     bool
	}{{unit.Band[unit.Pressure]{}, true}, {unit.Band[unit.Pressure]{Greatest: 1}, false}, {unit.Band[unit.Pressure]{Least: -1}, false}} {
		o := row.RampWithin(TriggerState{}, 0, 50, x.deviation)
		require.Equal(t, x.exact, o.State.exact, "%v", x.deviation)
	}
}
