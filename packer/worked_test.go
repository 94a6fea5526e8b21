package packer

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"github.com/stretchr/testify/require"
)

// Where the seals may stand, by hand: bore from 2 to 10 m under the shoulder's
// reference, shoulder at 1 m, seals from 3 to 6 m below the locator, 1 m of stack to
// stay engaged, 0.5 m clearance; cases move down 0.8 and up 1.2 m.
func TestSpaceOutByHand(t *testing.T) {
	p := SealPlan{Bore: Receptacle{ShoulderMD: 1, TopMD: 2, BottomMD: 10}, Seals: SealStack{FirstMD: 3, LastMD: 6}, Engaged: 1, Clearance: 0.5,
		Cases: []Travel{{"hot", 0.8}, {"cold", -1.2}}}
	s, err := p.SpaceOut()
	require.NoError(t, err)
	require.InDelta(t, 1.3, float64(s.Least), 1e-12, "0.8 down and 0.5 clear")
	require.Equal(t, "hot, locator off its shoulder", s.LeastBy)
	// cold: the last seal at 1 − h + 1.2... stays 1 m in: −1.2 + 1 + 6 − 2 − 1 = 2.8
	require.InDelta(t, 2.8, float64(s.Greatest), 1e-12)
	require.Equal(t, "cold, seals out of the top of the bore", s.GreatestBy)
	require.InDelta(t, 2.05, float64(s.Middle()), 1e-12)
	require.InDelta(t, 2.0, float64(s.Stroke.Total()), 1e-12)
	// a short bore: the stack may not pass its bottom: 0.8 + 1 + 3 − 4.2 + 1 = 1.6
	p.Bore.BottomMD = 4.2
	s, err = p.SpaceOut()
	require.NoError(t, err)
	require.InDelta(t, 1.6, float64(s.Least), 1e-12)
	require.Equal(t, "hot, seals past the bottom of the bore", s.LeastBy)
	// engaged at 2 m: shoulder 1 − 2 = −1, stack from 2 to 5 in a bore from 2 to 4.2
	e, err := p.Engage(2)
	require.NoError(t, err)
	require.InDelta(t, 2.2, float64(e[0].Engaged), 1e-12)
	require.InDelta(t, 1.2, float64(e[0].Margin), 1e-12)
	require.InDelta(t, 4.2-2.8, float64(e[1].Engaged), 1e-12, "0.8 lower: stack from 2.8 to 5.8")
	require.InDelta(t, 3.8-2, float64(e[2].Engaged), 1e-12, "1.2 higher: stack from 0.8 to 3.8")
	p.Engaged = 2.2
	require.NoError(t, p.Validate(), "the whole bore")
	p.Engaged = 2.2000001
	require.ErrorContains(t, p.Validate(), "the shorter of stack and bore")
}

func TestPracticeAsPrinted(t *testing.T) {
	l := PullLimits()
	require.Equal(t, []float64{0.80, 0.85, 0.90, 0.90}, []float64{l[0].Least, l[0].Most, l[1].Least, l[1].Most})
	for _, text := range []string{"V", "V00", "W0", "V/", "V7", "7V", "0V", ""} {
		var g Grade
		require.Error(t, g.UnmarshalText([]byte(text)), text)
	}
	for _, text := range []string{"V0", "V6"} {
		var g Grade
		require.NoError(t, g.UnmarshalText([]byte(text)))
		require.Equal(t, text, g.String())
	}
	_, err := (V6 + 1).MarshalText()
	require.ErrorContains(t, err, "no grade 7")
	require.True(t, finite(1.0) && !finite(math.NaN()) && !finite(math.Inf(1)) && !finite(math.Inf(-1)))
}

// What stretches while pins part, and what of it drag takes, by hand: one pipe, half
// the drag on average.
func TestShares(t *testing.T) {
	for share, ok := range map[float64]bool{0: false, 1: true, 1.0000001: false, 1e-9: true} {
		f := fault.In(scope)
		checkShare(&f, "share", share)
		require.Equal(t, ok, f.Err() == nil, "%v", share)
	}
}

// The nearest make-up, and of those as near within a millimetre the one of fewer
// pieces, against every combination there is.
func TestMakeUpAgainstAll(t *testing.T) {
	l := Landing{Tagged: 2000, Height: 1.5, HangerDepth: 8, HangerLength: 0.6, Above: 2.1, Joints: []unit.Length{9.5, 9.4, 9.6}, Pups: []unit.Length{3.05, 1.83, 1.22, 0.61}}
	m, err := l.MakeUp()
	require.NoError(t, err)
	needed := -float64(l.Above + l.Height + l.HangerDepth + l.HangerLength)
	best, pieces := math.Inf(1), 0
	for n := 0; n <= 3; n++ {
		if n > 0 {
			needed += float64(l.Joints[n-1])
		}
		for set := range 16 {
			sum, count := 0.0, n
			for i, p := range l.Pups {
				if set>>i&1 == 1 {
					sum += float64(p)
					count++
				}
			}
			miss := math.Abs(needed - sum)
			if sum-needed > 1.5 {
				continue
			}
			if miss < best-0.001 || miss < best+0.001 && count < pieces {
				best, pieces = miss, count
			}
		}
	}
	require.InDelta(t, best, math.Abs(float64(m.Off)), 1e-9)
	require.Equal(t, pieces, m.Joints+len(m.Pups))
	// 3.05 = 1.83 + 1.22: the one pup is taken
	l.Height, l.HangerDepth, l.HangerLength, l.Above, l.Joints = 0, 1.45, 1, 4, []unit.Length{9.5}
	m, err = l.MakeUp()
	require.NoError(t, err)
	require.Equal(t, []unit.Length{3.05}, m.Pups)
	for n, ok := range map[int]bool{64: true, 65: false} {
		l.Joints = make([]unit.Length, n)
		for i := range l.Joints {
			l.Joints[i] = 9.5
		}
		require.Equal(t, ok, l.Validate() == nil, "%d joints", n)
	}
	l.Joints = nil
	for n, ok := range map[int]bool{16: true, 17: false} {
		l.Pups = make([]unit.Length, n)
		for i := range l.Pups {
			l.Pups[i] = 1
		}
		require.Equal(t, ok, l.Validate() == nil, "%d pups", n)
	}
}
