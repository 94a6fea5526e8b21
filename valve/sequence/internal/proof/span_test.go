package proof

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// Ranges that are added one by one cover the same as all of them joined at once.
func TestCover(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	for range 500 {
		var all, one []span
		for range 1 + random.IntN(12) {
			a := float64(random.IntN(30))
			x := span{a, a + float64(1+random.IntN(6))}
			all, one = append(all, x), cover(one, x)
		}
		require.Equal(t, join(slices.Clone(all)), one, "%v", all)
	}
}
