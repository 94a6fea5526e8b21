package spelling

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Textbook pairs: kitten to sitting takes three steps (Wagner and Fischer 1974,
// and every text since), flaw to lawn two.
func TestDistance(t *testing.T) {
	require.Equal(t, 3, Distance("kitten", "sitting"))
	require.Equal(t, 2, Distance("flaw", "lawn"))
	require.Zero(t, Distance("°C", "°C"))
	require.Equal(t, 1, Distance("°C", "°F"), "letters, not bytes")
	require.Equal(t, 4, Distance("", "pins"))
}

func TestNear(t *testing.T) {
	known := []string{"isolation valve A", "isolation valve C", "packer", "release"}
	require.Equal(t, []string{"packer"}, Near("paker", known))
	require.Equal(t, []string{"isolation valve A", "isolation valve C"}, Near("isolation", known))
	require.Equal(t, []string{"isolation valve C", "isolation valve A"}, Near("isolaton valve C", known))
	require.Empty(t, Near("xyz", known))
	require.Empty(t, Near("", known))
}
