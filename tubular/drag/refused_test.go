package drag_test

import (
	"testing"

	"completion.example/tubular/drag"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	assert.ErrorContains(t, drag.String{}.Validate(), "Sections: is empty; must be one section of pipe or more")
	_, err := drag.String{HoleSections: []drag.HoleSection{{Friction: 0.5}}}.PrepareSpread([]float64{0.1}, []float64{0.3})
	assert.ErrorContains(t, err, "HoleSections[0].Friction: is 0.5; must be from its least of 0.1 to its greatest of 0.3")
}
