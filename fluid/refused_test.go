package fluid_test

import (
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := fluid.Blend()
	assert.ErrorContains(t, err, "batches: is empty; must be one batch or more")
	_, err = fluid.KrookBoyce(99, 10*unit.PoundPerGallon)
	assert.ErrorContains(t, err, "coefficients of Krook and Boyce for ")
}
