package sleeve

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// What has no name, and a line that is none of a sleeve's, is told as such.
func TestBeyondTheLast(t *testing.T) {
	require.Equal(t, fmt.Sprintf("motion %d", len(motions)), Motion(len(motions)).String())
	s := System{Sleeves: []Sleeve{{Name: "upper"}}}
	require.Contains(t, s.Describe(Operation{Line: 0}), "open line of upper ")
	for _, line := range []int{-1, 1, 2} {
		require.Contains(t, s.Describe(Operation{Line: line}), "close line ")
	}
}
