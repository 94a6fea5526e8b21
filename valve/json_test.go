package valve_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// A job that is gone on with another day: the state that was written fires where the
// one that was kept does.
func TestStateOfARowReadsBackAsWritten(t *testing.T) {
	row := valve.Row{
		{Threshold: unit.Within(3000*unit.PSI, 0.05), Rearm: unit.Exactly(500 * unit.PSI), Count: 3},
		{Threshold: unit.Within(1000*unit.PSI, 0.05), Direction: valve.Falling},
	}
	require.NoError(t, row.Validate())
	state := valve.TriggerState{}
	for i, to := range []unit.Pressure{3100, 0, 3300, 200, 2900, 400, 3400, 800} {
		text, err := json.Marshal(state)
		require.NoError(t, err)
		var back valve.TriggerState
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, state, back, "after %d ramps: %s", i, text)
		kept, read := row.Ramp(state, 0, to*unit.PSI), row.Ramp(back, 0, to*unit.PSI)
		require.Equal(t, kept, read)
		state = kept.State
	}
	for text, want := range map[string]string{
		`{"earliest": {"links": -1}, "latest": {"links": -1}}`: "earliest.links: is -1; must be 0 or more",
		`{"latest": {"counted": -2}}`:                          "latest.counted: is -2; must be 0 or more",
		`{"latest": {"links": 2}}`:                             "earliest.links: is 0; must be 2 or more",
		`{"lowest": "5 psi", "highest": "0 psi"}`:              "lowest: is 5 psi; must be at most",
		`{"lowest": 5}`:                                        "",
	} {
		require.ErrorContains(t, json.Unmarshal([]byte(text), new(valve.TriggerState)), want, text)
	}
	// A row that has fewer triggers than the state was of has fired.
	var far valve.TriggerState
	require.NoError(t, json.Unmarshal([]byte(`{"earliest": {"links": 9}, "latest": {"links": 9}}`), &far))
	require.Equal(t, valve.Fired, row.Condition(far))
	require.Equal(t, valve.AlreadyFired, row.Ramp(far, 0, 1).Verdict)
}
