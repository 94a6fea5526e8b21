package flow

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// A ring too narrow or too wide is told with the range, in which the outer diameter is.
func TestRangeOfTheInnerDiameter(t *testing.T) {
	for _, inner := range []unit.Length{1e-9, 0.19999} {
		err := Conduit{Outer: 0.2, Inner: inner}.Validate()
		require.ErrorContains(t, err, "Inner: is ")
		require.ErrorContains(t, err, "must be from 7.87402e-05 in to 7.86614 in", "0.2 m times 1e-5 and 0.999")
	}
}
