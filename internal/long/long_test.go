package long

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSizes(t *testing.T) {
	t.Setenv("TEST_LONG", "")
	t.Setenv("SEQUENCE_PLANS", "")
	require.Equal(t, 3, Size(3, 100))
	t.Run("left out", func(t *testing.T) {
		Skip(t, "this one")
		t.Error("it ran")
	})
	t.Setenv("TEST_LONG", "1")
	require.Equal(t, 100, Size(3, 100))
	ran := false
	t.Run("not left out", func(t *testing.T) {
		Skip(t, "this one")
		ran = true
	})
	require.True(t, ran)
}
