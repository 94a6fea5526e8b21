package choke_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
)

func TestCurveReadsBackAsWritten(t *testing.T) {
	curve, err := choke.Table{{Name: "shut"}, {Name: "half", Travel: 0.5, Coefficient: 5 * unit.Cv}, {Name: "open", Travel: 1, Coefficient: 10 * unit.Cv}}.Curve()
	require.NoError(t, err)
	text, err := json.Marshal(curve)
	require.NoError(t, err)
	var back choke.Curve
	require.NoError(t, json.Unmarshal(text, &back))
	for _, travel := range []float64{0, 0.3, 0.5, 0.9, 1} {
		want, err := curve.At(travel)
		require.NoError(t, err)
		got, err := back.At(travel)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
	require.ErrorContains(t, json.Unmarshal([]byte(`[{"name": "shut", "travel": 0, "coefficient": "0 Cv"}]`), &back), "one position")
	require.Error(t, json.Unmarshal([]byte(`5`), &back))
}
