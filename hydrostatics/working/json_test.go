package working_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

func TestWorkingIsWrittenOutAndReadsBack(t *testing.T) {
	s := []working.Step{{
		Name: "force on the area", Symbol: "F", Equation: "p*A", Source: "definition of pressure",
		Inputs: []working.Input{{Symbol: "p", Value: working.Of(5000 * unit.PSI)}, {Symbol: "A", Value: working.Of(2 * unit.SquareInch)}},
		Value:  working.Of(10_000 * unit.PoundForce),
	}}
	text, err := json.Marshal(s)
	require.NoError(t, err)
	require.Contains(t, string(text), `"value":{"text":"10000 lbf","si":44482.2`)
	require.Contains(t, string(text), `{"symbol":"p","value":{"text":"5000 psi","si":3447378`)
	var back []working.Step
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, s[0].String(), back[0].String())
	require.Equal(t, s[0].Value.SI(), back[0].Value.SI())
	for i := range s[0].Inputs {
		require.Equal(t, s[0].Inputs[i].Value.SI(), back[0].Inputs[i].Value.SI())
	}
	again, err := json.Marshal(back)
	require.NoError(t, err)
	require.Equal(t, string(text), string(again))
	_, err = json.Marshal(working.Number(math.NaN()))
	require.ErrorContains(t, err, "must be finite")
	require.Error(t, json.Unmarshal([]byte(`5`), new(working.Value)))
}
