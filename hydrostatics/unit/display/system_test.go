package display_test

import (
	"testing"

	"completion.example/hydrostatics/unit/display"
	"github.com/stretchr/testify/require"
)

// The two systems are written and read by name; the zero one is the field's; any other is told.
func TestSystemsByName(t *testing.T) {
	for _, s := range []display.System{display.Field(), display.SI()} {
		text, err := s.MarshalText()
		require.NoError(t, err)
		require.Equal(t, s.String(), string(text))
		var back display.System
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	require.Equal(t, display.Field().String(), display.System{}.String())
	var s display.System
	require.ErrorContains(t, s.UnmarshalText([]byte("cgs")), `no system of units "cgs" to read; must be "field" or "si"`)
}
