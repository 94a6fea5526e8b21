package working_test

import (
	"encoding/json"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"github.com/stretchr/testify/require"
)

// Six digits are shown, symbols with strokes and figures in them are put in whole, and what isn't finite
// isn't written.
func TestSixDigitsOfWholeSymbols(t *testing.T) {
	require.Equal(t, "1234.57 psi", working.Of(1234.567890*unit.PSI).String())
	require.Equal(t, "0.123457 in", working.In(0.1234567890*unit.Inch, unit.Inch, "in").String())
	for _, x := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		_, err := json.Marshal(working.Number(x))
		require.ErrorContains(t, err, "must be finite")
	}
	s := working.Step{Equation: "p_1*x2", Inputs: []working.Input{{Symbol: "p_1", Value: working.Number(3)}, {Symbol: "x2", Value: working.Number(5)}}}
	require.Equal(t, "3*5", s.Numbers())
	s.Equation = "x2"
	require.Equal(t, "5", s.Numbers())
}
