package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// module is the smallest with pieces of data: two that lie near each other, one far off.
func module() []byte {
	const code = 10
	section := []byte{3,
		atFixed, constant, 21, end, 1, 'c',
		atFixed, constant, 16, end, 2, 'a', 'b',
		atFixed, constant, 0x80, 0x80, 0x04, end, 1, 'd', // 65536
	}
	b := []byte{0, 'a', 's', 'm', 1, 0, 0, 0, code, 1, 0, dataSection, byte(len(section))}
	return append(b, section...)
}

// By hand: five bytes from 16 on, of which three are noughts, and one far off; what isn't
// data stays.
func TestPiecesOfDataAreJoined(t *testing.T) {
	out, err := joined(module())
	require.NoError(t, err)
	section := []byte{2, atFixed, constant, 16, end, 6, 'a', 'b', 0, 0, 0, 'c', atFixed, constant, 0x80, 0x80, 0x04, end, 1, 'd'}
	require.Equal(t, append(module()[:12:12], append([]byte{byte(len(section))}, section...)...), out)

	again, err := joined(out)
	require.NoError(t, err)
	require.Equal(t, out, again)
}

// Numbers of the specification's examples and of its ends: -123456 is C0 BB 78.
func TestSignedNumbers(t *testing.T) {
	require.Equal(t, []byte{0xc0, 0xbb, 0x78}, appendSigned(nil, -123456))
	for _, x := range []int64{0, 1, -1, 63, 64, -64, -65, 8191, 8192, math.MaxInt32, math.MinInt32} {
		b := appendSigned(nil, x)
		got, n := signed(append(b, 0xff))
		require.Equal(t, x, got)
		require.Equal(t, len(b), n)
	}
	_, n := signed([]byte{0x80, 0x80})
	require.Zero(t, n, "cut off")
}

func TestWhatIsNoModule(t *testing.T) {
	whole := module()
	for n := range whole {
		if out, err := joined(whole[:n]); err == nil {
			require.Equal(t, whole[:n], out, "cut between two sections")
		}
	}
	for at, bit := range map[int]byte{14: 1, 15: 1, 17: 1, 22: 4} { // kind, operator and end of a place; a piece over another
		b := module()
		b[at] ^= bit
		_, err := joined(b)
		require.ErrorIs(t, err, errModule, "byte %d", at)
	}
}

func FuzzJoined(f *testing.F) {
	f.Add(module())
	f.Fuzz(func(t *testing.T, b []byte) {
		if out, err := joined(b); err == nil {
			again, err := joined(out)
			require.NoError(t, err)
			require.Equal(t, out, again)
		}
	})
}
