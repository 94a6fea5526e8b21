package tubular

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// The line of the strength that an axial load leaves is there where one leaves less.
func TestLineOfTheStrengthLeft(t *testing.T) {
	has := func(r CollapseRating) bool {
		for _, s := range r.Steps() {
			if s.Name == "yield strength left by the axial load" {
				return true
			}
		}
		return false
	}
	require.False(t, has(CollapseRating{Yield: 5e8, Equivalent: 5e8}))
	require.True(t, has(CollapseRating{Yield: 5e8, Equivalent: 4e8 * unit.Pascal}))
}
