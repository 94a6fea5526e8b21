package tubular_test

import (
	"testing"

	"completion.example/tubular"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	assert.ErrorContains(t, new(tubular.CollapseRegime).UnmarshalText([]byte("x")), `collapse regime is "x"; must be yield, plastic, transition or elastic`)
	_, err := tubular.Pipe{}.Envelope(tubular.Outline{Points: 7})
	assert.ErrorContains(t, err, "Outline.Points: is 7; must be from 8 to 100000, or 0 for 180")
	var x tubular.Expansion
	assert.ErrorContains(t, x.UnmarshalText([]byte("tin")), `Expansion is "tin"; must be `)
	_, err = x.MarshalText()
	assert.ErrorContains(t, err, "Expansion is the zero value; must be a table, such as CarbonSteel()")
	_, err = tubular.Hanging{}.Stretch()
	assert.ErrorContains(t, err, "Sections: is empty; must be one section or more")
}
