package working_test

import (
	"testing"

	"completion.example/hydrostatics/working"
	"github.com/stretchr/testify/assert"
)

// A value of a quantity that there isn't.
func TestWordsOfRefusals(t *testing.T) {
	assert.ErrorContains(t, new(working.Value).UnmarshalJSON([]byte(`{"si": 1, "text": "1", "quantity": "Mood"}`)), `working: quantity is "Mood"; must be the name of a quantity of package unit, such as Pressure`)
}
