package stringload

import (
	"testing"

	"completion.example/valve/sequence/internal/affine"
	"github.com/stretchr/testify/require"
)

// A joint that feels 100 N at the beginning, 170 N halfway and 200 N at the end of 50 Pa goes by 2 N/Pa; halfway it lies
// 20 N off the line, of which a fifth more is taken. An input that counts 3 N at the end alone lies between with half of
// it, and the other half is enclosed.
func TestTheLineOfWhatBends(t *testing.T) {
	l := through([3]affine.Form{affine.Const(100), affine.Const(170), affine.Const(200)}, 50)
	require.Equal(t, affine.Line{F: affine.Form{C: 100, R: 24}, S: 2}, l)
	end := affine.Form{C: 200, T: []affine.Term{{Symbol: 7, C: 3}}}
	l = through([3]affine.Form{affine.Const(100), affine.Const(150), end}, 50)
	require.Equal(t, affine.Line{F: affine.Form{C: 100, R: 1.5, T: []affine.Term{{Symbol: 7, C: 1.5}}}, S: 2}, l)
	// What lies off by rounding alone isn't enclosed, and what hardly rises stands.
	l = through([3]affine.Form{affine.Const(1e6), affine.Const(1e6 + 0.5), affine.Const(1e6 + 0.9e-3)}, 50)
	require.Zero(t, l.F.R)
	require.Zero(t, l.S)
}
