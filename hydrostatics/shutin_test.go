package hydrostatics

import (
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// The wall of a hole that takes heat at a constant rate, with the hole's radius, rate
// and diffusivity one: the same function as that of a well that produces at a constant
// rate from a reservoir without end.
//
// Source: van Everdingen and Hurst, Trans. AIME 186 (1949) 305, table I, from memory.
func TestWallTime(t *testing.T) {
	for _, row := range [][2]float64{{0.1, 0.315}, {1, 0.802}, {10, 1.651}, {100, 2.723}} {
		require.InDelta(t, row[1], wallTime(row[0]), 0.0011, "tD = %g", row[0])
	}
	for td := 1e-4; td < 1e7; td *= 3 { // a hundred times as fine
		require.InDelta(t, exactThermalTime(td), wallTime(td), 1e-4, "tD = %g", td) // which leaves out what is beyond its range
	}
}

// By hand, for long times: exchange flows for 75 days and is shut in for 150:
// ln[(75 + 150)/150]/2 = 0.20273 over f(tD of 75 days) + k/(r·U) = 3.5850 +
// 2.4/(0.062·30) = 4.8753, so 4.158 % is left.
//
// Source: Horner's line as Dowdle and Cobb, JPT November 1975, 1326, have it for
// temperatures, from memory.
func TestLeftAfterShutInIsHornersAtLongTimes(t *testing.T) {
	left, err := exchange.LeftAfterShutIn(150 * 24 * time.Hour)
	require.NoError(t, err)
	require.InEpsilon(t, 0.20273/4.8753, left, 0.01)
}

// Against a march of the ground's own equation, ∂T/∂t = α·(∂²T/∂r² + ∂T/∂r/r), with
// heat at a constant rate into the wall for a time and none after it: another route.
func TestLeftAfterShutInAgainstTheGroundItself(t *testing.T) {
	h := exchange
	h.Time = 12 * time.Hour
	const cells = 200
	rh := float64(h.Hole)
	// Shells whose radii grow by a factor; q = 2π·k, so that T = f.
	const grows = 1.02
	edge, at := make([]float64, cells+1), make([]float64, cells)
	edge[0] = rh
	dr := rh * 0.02
	for i := range cells {
		edge[i+1] = edge[i] + dr
		at[i] = (edge[i] + edge[i+1]) / 2
		dr *= grows
		if dr > 0.2 {
			dr = 0.2
		}
	}
	alpha := float64(h.Diffusivity)
	temp := make([]float64, cells)
	flux := make([]float64, cells+1) // through edges, in k·2π
	step := 0.2 * (edge[1] - edge[0]) * (edge[1] - edge[0]) / alpha
	now := 0.0
	march := func(until time.Duration, q float64) {
		for now < until.Seconds() {
			dt := min(step, until.Seconds()-now)
			flux[0] = q
			for i := 1; i < cells; i++ {
				flux[i] = -edge[i] * (temp[i] - temp[i-1]) / (at[i] - at[i-1])
			}
			for i := range cells {
				temp[i] += dt * alpha * (flux[i] - flux[i+1]) * 2 / (edge[i+1]*edge[i+1] - edge[i]*edge[i])
			}
			now += dt
		}
	}
	wall := func(q float64) float64 { return temp[0] + q*(at[0]-rh)/rh }
	march(h.Time, 1)
	flowing := wall(1) + float64(h.Conductivity)/(float64(h.Radius)*float64(h.Transfer))
	for _, after := range []time.Duration{time.Hour, 3 * time.Hour, 12 * time.Hour, 48 * time.Hour} {
		march(h.Time+after, 0)
		left, err := h.LeftAfterShutIn(after)
		require.NoError(t, err)
		require.InEpsilon(t, wall(0)/flowing, left, 0.005, "%v", after)
	}
}

func TestAfterShutIn(t *testing.T) {
	ground := offshore(t)
	flowing, err := Flowing{Ground: ground, Inlet: ground.At(4000), BottomTVD: 4000, Relaxing: 2000}.Producing(0.01)
	require.NoError(t, err)
	for _, left := range []float64{0, 0.25, 1} {
		p, err := AfterShutIn(ground, flowing, left)
		require.NoError(t, err)
		for z := 0.0; z <= 4000; z += 37 {
			at := unit.Length(z)
			want := ground.At(at).Kelvin() + left*(flowing.At(at).Kelvin()-ground.At(at).Kelvin())
			require.InDelta(t, want, p.At(at).Kelvin(), 1e-9)
		}
	}
	_, err = AfterShutIn(nil, flowing, 1.5)
	require.ErrorContains(t, err, "left: is 1.5")
	require.ErrorContains(t, err, "ground: is missing")
	_, err = exchange.LeftAfterShutIn(time.Minute)
	require.ErrorContains(t, err, "after: is 1m0s; must be at least 10m0s")
	_, err = HeatExchange{}.LeftAfterShutIn(0)
	require.ErrorContains(t, err, "Rate: is")
	last := 1.0
	for after := leastShutIn; after < 20000*time.Hour; after *= 2 {
		left, err := exchange.LeftAfterShutIn(after)
		require.NoError(t, err)
		require.Less(t, left, last)
		last = left
	}
	require.Less(t, last, 0.02)
	require.False(t, math.IsNaN(last))
}
