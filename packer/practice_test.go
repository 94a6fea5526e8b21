package packer_test

import (
	"strings"
	"testing"

	"completion.example/packer"
	"github.com/stretchr/testify/require"
)

// What the standard asks of each grade.
//
// Source: GOST ISO 14310-2014, 6.5.1: V5 liquid, V4 with axial loads, V3 with
// temperature cycles too, V6 defined by the supplier.
func TestGrades(t *testing.T) {
	v6, v5, v4, v3 := packer.V6.Validation(), packer.V5.Validation(), packer.V4.Validation(), packer.V3.Validation()
	require.True(t, v6.Maker)
	require.False(t, v6.Liquid)
	require.Equal(t, [3]bool{true, false, false}, [3]bool{v5.Liquid, v5.AxialLoads, v5.Cycling})
	require.Equal(t, [3]bool{true, true, false}, [3]bool{v4.Liquid, v4.AxialLoads, v4.Cycling})
	require.Equal(t, [3]bool{true, true, true}, [3]bool{v3.Liquid, v3.AxialLoads, v3.Cycling})
	for g := packer.V0; g <= packer.V6; g++ {
		v := g.Validation()
		require.Equal(t, g < packer.V3, strings.Contains(v.Source, "memory"), "%v", g)
		text, err := g.MarshalText()
		require.NoError(t, err)
		var back packer.Grade
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, g, back)
	}
	var g packer.Grade
	require.ErrorContains(t, g.UnmarshalText([]byte("V7")), "V0 to V6")
	_, err := packer.Grade(9).MarshalText()
	require.Error(t, err)
	require.Zero(t, packer.Grade(9).Validation())
}

func TestPullLimitsSayThatTheyAreRecalled(t *testing.T) {
	for _, l := range packer.PullLimits() {
		require.Contains(t, l.Source, "memory")
		require.LessOrEqual(t, l.Least, l.Most)
		require.LessOrEqual(t, l.Most, 1.0)
		require.Positive(t, l.Least)
	}
}

func TestStatesAsText(t *testing.T) {
	for _, s := range []packer.Outcome{packer.NotActed, packer.Unknown, packer.Acted} {
		text, err := s.MarshalText()
		require.NoError(t, err)
		var back packer.Outcome
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	var s packer.Outcome
	require.Error(t, s.UnmarshalText([]byte("maybe")))
	_, err := packer.Outcome(7).MarshalText()
	require.Error(t, err)
	require.Equal(t, "state 7", packer.Outcome(7).String())
}
