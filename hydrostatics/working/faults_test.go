package working_test

import (
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"github.com/stretchr/testify/require"
)

// A value keeps what it was made of, so that it can be written in another unit.
func TestValuesKeepTheirQuantity(t *testing.T) {
	require.Equal(t, 3*unit.Foot, working.Of(3*unit.Foot).Quantity())
	warm := working.Temperature(unit.Celsius(100))
	require.Equal(t, unit.Celsius(100), warm.Quantity())
	require.Equal(t, 373.15, warm.SI())
	require.Equal(t, "212 degF", warm.String())
	pause := working.Duration(90*time.Second + 400*time.Microsecond)
	require.Nil(t, pause.Quantity())
	require.InEpsilon(t, 90.0004, pause.SI(), 1e-15)
	require.Equal(t, "1 min 30 s", pause.String())
	require.Nil(t, working.Number(3).Quantity())
}

// A step without an equation is its value; of one with numbers alone none is bracketed.
func TestStepsWithoutEquation(t *testing.T) {
	s := working.Step{Symbol: "n", Value: working.Number(4)}
	require.Equal(t, "n = 4", s.Text(working.Value.String))
	s = working.Step{Symbol: "n", Equation: "a+b", Inputs: []working.Input{{"a", working.Number(2)}, {"b", working.Number(-2)}}, Value: working.Number(0)}
	require.Equal(t, "2+(-2)", s.Numbers())
}
