package choke_test

import (
	"testing"

	"completion.example/valve/production/choke"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := choke.Orifice{Pipe: 0.1, Bore: 0.1}.Rate(choke.Metered{})
	assert.ErrorContains(t, err, "must be below the pipe of ")
	_, err = (*choke.Curve)(nil).At(0.5)
	assert.ErrorContains(t, err, "the curve has no table: make it with Table.Curve")
	assert.ErrorIs(t, err, choke.ErrOutsideTable)
}
