package working_test

import (
	"encoding/json"
	"math"
	"testing"
	"time"

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
	require.Contains(t, string(text), `,"quantity":"Force"}`)
	require.Contains(t, string(text), `{"symbol":"p","value":{"text":"5000 psi","si":3447378`)
	var back []working.Step
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, s, back, "values with the quantities that they are")
	for _, v := range []working.Value{working.Number(0.7), working.Duration(90 * time.Second), working.Temperature(unit.Celsius(90)), working.In(3*unit.Metre, unit.Foot, "ft")} {
		text, err := json.Marshal(v)
		require.NoError(t, err)
		var back working.Value
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, v, back)
	}
	var before working.Value
	require.NoError(t, json.Unmarshal([]byte(`{"text": "1 ft", "si": 0.3048}`), &before), "as it was written before quantities were")
	require.Nil(t, before.Quantity())
	require.ErrorContains(t, json.Unmarshal([]byte(`{"text": "1 ft", "si": 0.3048, "quantity": "Depth"}`), &before), `quantity is "Depth"; must be`)
	again, err := json.Marshal(back)
	require.NoError(t, err)
	require.Equal(t, string(text), string(again))
	_, err = json.Marshal(working.Number(math.NaN()))
	require.ErrorContains(t, err, "must be finite")
	require.Error(t, json.Unmarshal([]byte(`5`), new(working.Value)))
}
