package confined

import (
	"math"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// kinked is a record of 2,000 s, every 50 s, that falls by first and then second, Pa/s, with a noise that takes turns.
func kinked(first, second, noise float64) (record []Sample) {
	for i := range 41 {
		x := 50 * float64(i)
		p := 3e7 - first*math.Min(x, 1000) - second*math.Max(x-1000, 0)
		record = append(record, Sample{At: time.Duration(x) * time.Second, Pressure: unit.Pressure(p + noise*float64(i%2*2-1))})
	}
	return record
}

// A trend is one where the halves differ by more than two standard errors, and by more than the gauge resolves twice over
// half the record; a rise, where the second half does by two errors and once the resolution: on both sides of each.
func TestTrendsOnTheirLimits(t *testing.T) {
	trend := func(first, second, noise, resolution float64) Trend {
		var j Judgement
		PressureTest{Record: kinked(first, second, noise), Resolution: unit.Pressure(resolution)}.rates(&j, 0, 2000)
		return j.Trend
	}
	const more, less = 1 + 4e-7, 1 - 4e-7
	const resolution = 1e5 // 200 Pa/s over 1,000 s, twice
	require.Equal(t, TrendSteady, trend(50, 50+200*less, 0, resolution))
	require.Equal(t, TrendHastening, trend(50, 50+200*more, 0, resolution))
	require.Equal(t, TrendSteady, trend(250, 250-200*less, 0, resolution))
	require.Equal(t, TrendSlowing, trend(250, 250-200*more, 0, resolution))
	require.Equal(t, TrendSteady, trend(-100*less, -100*less, 0, resolution))
	require.Equal(t, TrendRising, trend(-100*more, -100*more, 0, resolution))

	// The errors are those of the noise, whatever the trend.
	const noise = 1000.0
	var early, late line
	for _, s := range kinked(0, 0, noise) {
		if x := s.At.Seconds(); x <= 1000 {
			early.add(x, float64(s.Pressure))
		}
		if x := s.At.Seconds(); x >= 1000 {
			late.add(x, float64(s.Pressure))
		}
	}
	n1, e1 := early.fall()
	n2, e2 := late.fall()
	doubt := 2 * math.Hypot(e1, e2)
	require.Equal(t, TrendSteady, trend(50, 50+n1-n2+doubt*less, noise, 1))
	require.Equal(t, TrendHastening, trend(50, 50+n1-n2+doubt*more, noise, 1))
	require.Equal(t, TrendSteady, trend(-n2-2*e2*less, -n2-2*e2*less, noise, 1))
	require.Equal(t, TrendRising, trend(-n2-2*e2*more, -n2-2*e2*more, noise, 1))

	require.True(t, PressureTest{}.significant(Judgement{PerHour: 2 * more, PerHourError: 1}))
	require.False(t, PressureTest{}.significant(Judgement{PerHour: 2 * less, PerHourError: 1}))
}
