package unit_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/assert"
)

// Text without a number, and a temperature that isn't one.
func TestWordsOfRefusals(t *testing.T) {
	assert.ErrorContains(t, new(unit.Pressure).UnmarshalText([]byte("psi")), "no number found")
	assert.ErrorContains(t, new(unit.Temperature).UnmarshalText([]byte("-274 degC")), "below absolute zero")
}
