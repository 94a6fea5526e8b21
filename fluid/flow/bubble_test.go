package flow_test

import (
	"fmt"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

// By hand: air in water in a pipe of 1 m rises at 0.345·√9.80665 = 1.080 m/s; it
// lies between the two theories, 0.328 and 0.351 (from memory).
func TestBubbleRise(t *testing.T) {
	v := flow.BubbleRise(unit.Metre, 1000*unit.KilogramPerCubicMetre, 0)
	require.InDelta(t, 1.0804, float64(v), 5e-5)
	require.Greater(t, float64(v), 0.328*3.13)
	require.Less(t, float64(v), 0.351*3.14)
	require.InEpsilon(t, 2, float64(v/flow.BubbleRise(unit.Metre/4, 1000, 0)), 1e-12, "with the root of the diameter")
	require.InEpsilon(t, 2, float64(v/flow.BubbleRise(unit.Metre, 1000, 750)), 1e-12, "with the root of what it lacks in weight")
	require.Zero(t, flow.BubbleRise(unit.Metre, 1000, 1000))
	require.Negative(t, float64(flow.BubbleRise(unit.Metre, 1000, 1100)))
	dimension.Check(t, dimension.Gravity, flow.BubbleRise, 0.1*unit.Metre, unit.Density(1000), unit.Density(200))
}

func ExampleBubbleRise() {
	v := flow.BubbleRise(2.992*unit.Inch, 8.6*unit.PoundPerGallon, 1.6*unit.PoundPerGallon)
	fmt.Printf("%.0f ft/min\n", v.In(unit.FootPerMinute))
	// Output:
	// 53 ft/min
}
