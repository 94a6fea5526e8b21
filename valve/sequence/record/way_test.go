package record

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// TestNoiseOfKnownNoise: normal noise on straight pieces, against the standard
// deviation that it was drawn with; a slope alone has none.
func TestNoiseOfKnownNoise(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for _, sigma := range []float64{0.1, 1, 30} {
		var all []float64
		for range 40 {
			y := make([]float64, 300)
			for i := range y {
				y[i] = 5*math.Abs(float64(i)-150) + sigma*random.NormFloat64()
			}
			all = append(all, noise(y)/sigma)
		}
		require.InDelta(t, 1, stat.Mean(all, nil), 0.05)
	}
	y := make([]float64, 50)
	floats.Span(y, 0, 1)
	require.Less(t, noise(y), 0.006)
	require.Zero(t, noise([]float64{1, math.NaN()}))
}

// TestSegmentsFindTheTurns: knots of a broken line with noise, against the line.
func TestSegmentsFindTheTurns(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	line := func(i int) float64 {
		switch {
		case i < 30:
			return 0
		case i < 80:
			return 50 * float64(i-30)
		case i < 120:
			return 2500
		}
		return max(2500-60*float64(i-120), 0)
	}
	for range 50 {
		y := make([]float64, 200)
		for i := range y {
			y[i] = line(i) + 4*random.NormFloat64()
		}
		legs, rest := segmented([][]float64{y}, []float64{24}).legs([]float64{36})
		settle(legs, [][]float64{y}, []float64{36})
		require.Len(t, legs, 2)
		require.InDelta(t, 30, rest, 2)
		require.InDelta(t, 2500, legs[0].to[0], 8)
		require.InDelta(t, 0, legs[1].to[0], 8)
		require.InDelta(t, 120, legs[0].next, 2)
		require.Equal(t, 200, legs[1].next)
	}
}

// TestFitted is least squares against gonum's own regression of the same numbers.
func TestFitted(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	x := &course{noise: 0.01, within: 0.01}
	for i := range 100 {
		s := float64(min(i, 60))
		x.closed, x.load = append(x.closed, s), append(x.load, float64(i*i))
		x.net, x.run = append(x.net, 3+1.1*s+0.01*random.NormFloat64()), append(x.run, 0)
	}
	f := x.fitted(0.5, 2, 1, false, x.load)
	_, slope := stat.LinearRegression(x.closed, x.net, nil, false)
	require.InDelta(t, slope, f.factor, 1e-12)
	require.Less(t, f.misfit, 1.)
	for i := range x.net {
		x.net[i] += 2e-4 * x.load[i]
	}
	g := x.fitted(0.5, 2, 1, false, x.load)
	require.Greater(t, g.misfit, 2., "a leak isn't a factor")
	g = x.fitted(0.5, 2, 1, true, x.load)
	require.InDelta(t, 2e-4, g.leak, 1e-6)
	require.InDelta(t, 1.1, g.factor, 0.01)
	require.Less(t, g.misfit, 1.)
}

// TestBendIsWhereTheSlopeChanges, and nowhere on a straight line.
func TestBendIsWhereTheSlopeChanges(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	hits, none := 0, 0
	for range 100 {
		var p, clock, closed, net, straight []float64
		for i := range 60 {
			v := 50 * float64(i)
			p, clock, closed = append(p, v), append(clock, float64(i)), append(closed, 0.001*v)
			y := 1.2*0.001*v + 0.01*random.NormFloat64()
			straight = append(straight, y)
			net = append(net, y+0.002*max(v-1750, 0))
		}
		if b, ok := bends(net, closed, p, clock, 5, 55); ok && b.row >= 34 && b.row <= 37 {
			hits++
		}
		if _, ok := bends(straight, closed, p, clock, 5, 55); !ok {
			none++
		}
	}
	require.GreaterOrEqual(t, hits, 95)
	require.GreaterOrEqual(t, none, 99)
}
