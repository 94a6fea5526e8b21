package confined_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Every name reads back, and no other does.
func TestNamesReadBack(t *testing.T) {
	for v := confined.Undecided; v <= confined.Failed; v++ {
		var back confined.TestVerdict
		require.NoError(t, back.UnmarshalText([]byte(v.String())))
		require.Equal(t, v, back)
		require.Error(t, back.UnmarshalText([]byte("maybe")))
	}
	for v := confined.TrendUnknown; v <= confined.TrendRising; v++ {
		var back confined.Trend
		require.NoError(t, back.UnmarshalText([]byte(v.String())))
		require.Equal(t, v, back)
		require.Error(t, back.UnmarshalText([]byte("maybe")))
	}
	for e := confined.EndsFixed; e <= confined.EndsClosed; e++ {
		text, err := e.MarshalText()
		require.NoError(t, err)
		var back confined.Ends
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, e, back)
		require.Error(t, back.UnmarshalText([]byte("maybe")))
	}
	for _, e := range []confined.Ends{-1, 3} {
		require.Equal(t, "unknown", e.String())
		_, err := e.MarshalText()
		require.Error(t, err)
	}
}

// A hold that begins later is as long; one that the record ends is shorter.
func TestHeldFromItsStart(t *testing.T) {
	r := record(40, func(m float64) float64 { return 5000 - m })
	for start, held := range map[time.Duration]time.Duration{5 * time.Minute: 30 * time.Minute, 25 * time.Minute: 15 * time.Minute} {
		j, err := confined.PressureTest{Record: r, Criterion: casing(t), Start: start}.Judge()
		require.NoError(t, err)
		require.Equal(t, held, j.Held)
	}
}

// Temperatures count where they are recorded and a rise per degree is given; a judgement after them needs
// both. What warming hides is told unless it is counted.
func TestTemperatureCountsWithBoth(t *testing.T) {
	warmed := record(40, func(float64) float64 { return 5000 })
	for i := range warmed {
		warmed[i].Temperature = unit.Kelvin(300 + 0.01*float64(i))
	}
	bare := record(40, func(float64) float64 { return 5000 })
	after := casing(t)
	after.AfterTemperature = true
	const want = "must have recorded temperatures and PerDegree"
	for _, x := range []struct {
		r         confined.Record
		perDegree float64
		ok        bool
	}{{warmed, 1, true}, {warmed, 0, false}, {bare, 1, false}, {bare, 0, false}} {
		_, err := confined.PressureTest{Record: x.r, Criterion: after, PerDegree: x.perDegree}.Judge()
		require.Equal(t, x.ok, err == nil, "%v", err)
		if err != nil {
			require.ErrorContains(t, err, want)
		}
		j, err := confined.PressureTest{Record: x.r, Criterion: casing(t), PerDegree: x.perDegree * 1e6}.Judge()
		require.NoError(t, err)
		hides := strings.Contains(strings.Join(j.Reasons, "\n"), "warming hides")
		require.Equal(t, x.ok, hides)
		require.Equal(t, x.ok, j.Cooling < 0)
		steps := 3
		if x.ok {
			steps = 4
			require.Contains(t, strings.Join(j.Reasons, "\n"), "warming hides "+unit.Pressure(-j.Cooling).Rounded(3))
			require.InDelta(t, -0.3e6, float64(j.Cooling), 1)
		}
		require.Len(t, j.Steps(), steps)
	}
	j, err := confined.PressureTest{Record: warmed, Criterion: after, PerDegree: 1e6}.Judge()
	require.NoError(t, err)
	require.NotContains(t, strings.Join(j.Reasons, "\n"), "warming hides", "it has been counted")
	require.Len(t, confined.Judgement{}.Steps(), 2, "no share of nothing")
}

// Two samples in each half are the fewest that have a trend.
func TestFewestSamplesWithATrend(t *testing.T) {
	at := func(minutes ...int) (r confined.Record) {
		for _, m := range minutes {
			r = append(r, confined.Sample{At: time.Duration(m) * time.Minute, Pressure: 3000 * unit.PSI})
		}
		return r
	}
	for _, x := range []struct {
		r   confined.Record
		has bool
	}{{at(0, 10, 20, 30), true}, {at(0, 20, 25, 30), false}, {at(0, 5, 10, 30), false}, {at(0, 30), false}, {at(0, 15, 30), true}} {
		j, err := confined.PressureTest{Record: x.r, Criterion: casing(t), Resolution: unit.PSI}.Judge()
		require.NoError(t, err)
		require.Equal(t, x.has, j.Trend != confined.TrendUnknown, "%v", x.r)
		require.Zero(t, j.PerHourError)
	}
}

// A record that is wrong all through tells its first faults and stops; each kind counts.
func TestRecordStopsAtTenFaults(t *testing.T) {
	for name, spoil := range map[string]func(*confined.Sample){
		"Pressure: is ":                      func(s *confined.Sample) { s.Pressure = -1 },
		"Temperature: is ":                   func(s *confined.Sample) { s.Temperature = unit.Kelvin(50) },
		"must be after the sample before it": func(s *confined.Sample) { s.At = 0 },
		"At: is ":                            func(s *confined.Sample) { s.At = -2_000_000_000 * time.Second },
	} {
		r := record(100, func(float64) float64 { return 5000 })
		for i := range r {
			r[i].Temperature = unit.Kelvin(300)
			if i > 0 {
				spoil(&r[i])
			}
		}
		err := r.Validate()
		require.Error(t, err, name)
		n := strings.Count(err.Error(), name)
		require.GreaterOrEqual(t, n, 5, "%s: %v", name, err)
		require.LessOrEqual(t, n, 20, "%s", name)
	}
	r := record(100, func(float64) float64 { return 5000 })
	for i := range r {
		if i%2 == 1 {
			r[i].Temperature = unit.Kelvin(300)
		}
	}
	require.LessOrEqual(t, strings.Count(r.Validate().Error(), "in all or in none"), 10)
	r = record(5, func(float64) float64 { return 5000 })
	r[3].At = r[2].At - time.Second
	require.ErrorContains(t, r.Validate(), fmt.Sprintf("[3].At: is %v; must be after the sample before it, at %v", r[3].At, r[2].At))
	for far, ok := range map[time.Duration]bool{1_000_000_000 * time.Second: true, 1_000_000_000*time.Second + 1: false} {
		late := confined.Record{{At: 0, Pressure: 1}, {At: far, Pressure: 1}}
		require.Equal(t, ok, late.Validate() == nil, "%v", far)
		early := confined.Record{{At: -far, Pressure: 1}, {At: 0, Pressure: 1}}
		require.Equal(t, ok, early.Validate() == nil, "%v", far)
	}
}
