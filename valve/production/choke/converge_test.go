package choke

import (
	"errors"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// What a size is looked for in: a flow that grows with the coefficient, one that fittings hold below what
// is wanted, one that falls again, one that jumps past, and one that has no answer.
func TestConvergeOnFlowsOfEveryKind(t *testing.T) {
	const target, near = 5.0, 1e-4 // m²
	find := func(flow func(c float64) (float64, error)) (float64, error) {
		last := 0.0
		err := Trim{}.converge(target, func(c unit.FlowCoefficient) (float64, error) {
			last = float64(c)
			return flow(last)
		})
		return last, err
	}
	c, err := find(func(c float64) (float64, error) { return target * c / near, nil })
	require.NoError(t, err)
	require.InEpsilon(t, near, c, 1e-9)

	_, err = find(func(c float64) (float64, error) { return 0.8 * target * c / (c + near), nil })
	require.ErrorIs(t, err, ErrNoSize)
	require.ErrorContains(t, err, "at most 0.8 of it")

	hump := func(c float64) float64 { x := math.Log(c / near); return 1.3 * math.Exp(-x*x/50) }
	c, err = find(func(c float64) (float64, error) { return target * hump(c), nil })
	require.NoError(t, err)
	require.InEpsilon(t, near*math.Exp(-math.Sqrt(50*math.Log(1.3))), c, 1e-9, "the lesser of both")

	_, err = find(func(c float64) (float64, error) { return target * (c/near + math.Floor(math.Min(c/near*1.3, 1))), nil })
	require.ErrorIs(t, err, ErrNoSize)
	require.ErrorContains(t, err, "jumps past it, from 0.7692 of it")

	boiled := errors.New("boiled dry")
	_, err = find(func(c float64) (float64, error) { return 0, boiled })
	require.ErrorIs(t, err, boiled)
	_, err = find(func(c float64) (float64, error) {
		if c < 1 && c > 1e-5 {
			return 0, boiled
		}
		return target * c / near, nil
	})
	require.ErrorIs(t, err, boiled)
}
