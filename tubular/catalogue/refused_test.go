package catalogue_test

import (
	"testing"

	"completion.example/tubular/catalogue"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	err := catalogue.Entry{Kind: "rod", Finish: "rough", Status: "heard"}.Validate()
	assert.ErrorContains(t, err, `Kind: is "rod"; must be tubing, casing or line`)
	assert.ErrorContains(t, err, `Finish: is "rough"; must be non-upset, external upset, integral joint, threaded or plain end`)
	assert.ErrorContains(t, err, `Status: is "heard"; must be published, memory or user`)
	assert.ErrorContains(t, new(catalogue.Tally).UnmarshalText([]byte("3-1/2 in, 9.3 lb/ft")), `is "3-1/2 in, 9.3 lb/ft"; must be size, weight, length, such as "3-1/2 in, 9.3 lb/ft, 4000 ft"`)
}
