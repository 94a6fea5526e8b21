package production

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A position and a target for each zone.
func TestPositionsOfEachZone(t *testing.T) {
	err := two().Solve([]int{0}, new(Flow))
	assert.ErrorContains(t, err, "positions: has 1 for 2 zones; must have one for each")
	assert.ErrorIs(t, err, ErrPosition)
	_, err = two().MatchSplit([]float64{1}, Limits{})
	assert.ErrorContains(t, err, "targets: has 1 for 2 zones; must have one for each")
}
