package drag_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"github.com/stretchr/testify/require"
)

// A string that was never prepared has no load, no torque and one error.
func TestNothingPrepared(t *testing.T) {
	const text = "drag: the string is not prepared: make it with String.Prepare"
	var p *drag.Prepared
	require.True(t, math.IsNaN(float64(p.HookLoad(drag.Pulled, 0))))
	require.True(t, math.IsNaN(float64(p.Torque(0))))
	require.True(t, math.IsNaN(float64(p.SetDown(0).HookLoad)))
	_, err := p.EndForce(drag.Pulled, 0)
	require.EqualError(t, err, text)
	_, err = p.Taken(drag.Pulled, 0)
	require.EqualError(t, err, text)
	_, err = p.Arrives(1)
	require.EqualError(t, err, text)
	_, err = p.MostSetDown()
	require.EqualError(t, err, text)
	_, err = p.With(nil, nil)
	require.EqualError(t, err, text)
}

func TestForcesThatAreNone(t *testing.T) {
	p, _ := slant(t, 40*unit.Degree, 3000*unit.Foot, 10*unit.Metre, 0.2)
	_, err := p.EndForce(drag.Pulled, unit.Force(math.NaN()))
	require.ErrorContains(t, err, "drag: hookLoad: is NaN")
	_, err = p.Taken(drag.Pulled, unit.Force(math.Inf(1)))
	require.ErrorContains(t, err, "drag: end: is ")
	nothing, err := p.Arrives(0)
	require.NoError(t, err)
	require.Equal(t, p.SetDown(0), nothing)
	_, err = drag.String{}.Prepare()
	require.ErrorContains(t, err, "drag: ")
	bad := straight(t, 0)
	bad.Sections = nil
	_, err = bad.PrepareSpread([]float64{0.1}, []float64{0.3})
	require.ErrorContains(t, err, "drag: ")
	_, err = straight(t, 0).PrepareSpread([]float64{0.1}, []float64{math.Inf(1)})
	require.ErrorContains(t, err, "drag: ")
	_, err = straight(t, 0).PrepareSpread([]float64{-1}, []float64{0.3})
	require.ErrorContains(t, err, "drag: ")
}
