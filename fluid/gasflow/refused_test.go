package gasflow_test

import (
	"testing"

	"completion.example/fluid/gasflow"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	assert.ErrorContains(t, gasflow.Tubing{}.Validate(), "Sections: are missing; give the tubing from the wellhead down")
}
