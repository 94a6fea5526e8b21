package catalogue_test

import (
	"errors"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/stretchr/testify/require"
)

// A size that is there without the weight is told as the catalogue has it, also where it has one weight only.
func TestSizeIsToldAsListed(t *testing.T) {
	c, err := catalogue.Standard()
	require.NoError(t, err)
	single := 0
	for _, od := range c.Sizes() {
		have := c.OfSize(od)
		if len(have) == 1 {
			single++
		}
		_, err := c.Find(od+unit.Length(1e-7), 1)
		var not *catalogue.NotFoundError
		require.True(t, errors.As(err, &not), "%v", od)
		require.Equal(t, have[0].OD, not.OD)
	}
	require.Positive(t, single)
}
