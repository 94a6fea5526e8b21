package confined_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

// record makes a sample a minute of a pressure in psi.
func record(minutes int, psi func(minute float64) float64) (r confined.Record) {
	for i := 0; i <= minutes; i++ {
		r = append(r, confined.Sample{At: time.Duration(i) * time.Minute, Pressure: unit.Pressure(psi(float64(i))) * unit.PSI})
	}
	return r
}

func casing(t testing.TB) confined.Criterion {
	t.Helper()
	c, err := confined.Preset("us-offshore-casing")
	require.NoError(t, err)
	return c
}

// 30 CFR 250.721(f): a decline of no more than 10 % in 30 minutes; at the limit,
// just below and just above.
func TestTenPercentInThirtyMinutes(t *testing.T) {
	for _, c := range []struct {
		end  float64
		want confined.TestVerdict
	}{{5000, confined.Passed}, {4501, confined.Passed}, {4500, confined.Passed}, {4499.9, confined.Failed}, {4000, confined.Failed}} {
		j, err := confined.PressureTest{Record: record(40, func(m float64) float64 { return 5000 - (5000-c.end)*m/30 }), Criterion: casing(t), Resolution: 0.01 * unit.PSI}.Judge()
		require.NoError(t, err)
		require.Equal(t, c.want, j.Verdict, "%v: %v", c.end, j.Reasons)
		workingtest.Check(t, j.Steps())
		near(t, 5000, j.Start.In(unit.PSI), 1e-12)
		near(t, c.end, j.End.In(unit.PSI), 1e-12)
		near(t, 500, j.Allowed.In(unit.PSI), 1e-12)
		require.InDelta(t, (5000-c.end)*2, j.PerHour.In(unit.PSI), 1e-6)
		require.InDelta(t, (5000-c.end)/5000, j.Decline, 1e-12)
		require.NotEmpty(t, j.Reasons)
		require.Equal(t, 30*time.Minute, j.Held)
	}
}

func TestHoldBetweenSamples(t *testing.T) {
	// The hold begins and ends between two samples of a straight line.
	r := record(40, func(m float64) float64 { return 5000 - m })
	j, err := confined.PressureTest{Record: r, Criterion: casing(t), Start: 150 * time.Second}.Judge()
	require.NoError(t, err)
	near(t, 4997.5, j.Start.In(unit.PSI), 1e-12)
	near(t, 4967.5, j.End.In(unit.PSI), 1e-12)
}

func TestShortRecordIsUndecidedUnlessItHasFailed(t *testing.T) {
	j, err := confined.PressureTest{Record: record(20, func(m float64) float64 { return 5000 - m }), Criterion: casing(t)}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Undecided, j.Verdict)
	require.Contains(t, strings.Join(j.Reasons, "; "), "covers 20 min of the hold of 30 min")
	j, err = confined.PressureTest{Record: record(20, func(m float64) float64 { return 5000 - 50*m }), Criterion: casing(t)}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Failed, j.Verdict)
}

func TestTargetHasToBeReached(t *testing.T) {
	j, err := confined.PressureTest{Record: record(40, func(float64) float64 { return 4900 }), Criterion: casing(t), Target: 5000 * unit.PSI}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Failed, j.Verdict)
	require.Contains(t, j.Reasons[0], "below the target")
}

func TestTrend(t *testing.T) {
	noise := func(m float64) float64 { return 0.3 * math.Sin(7*m) }
	for _, c := range []struct {
		name string
		psi  func(m float64) float64
		want confined.Trend
	}{
		{"settling", func(m float64) float64 { return 4900 + 100*math.Exp(-m/8) + noise(m) }, confined.TrendSlowing},
		{"leaking at one rate", func(m float64) float64 { return 5000 - 3*m + noise(m) }, confined.TrendSteady},
		{"opening up", func(m float64) float64 { return 5000 - m*m/10 + noise(m) }, confined.TrendHastening},
		{"warming", func(m float64) float64 { return 5000 + 2*m + noise(m) }, confined.TrendRising},
		{"still", func(m float64) float64 { return 5000 + noise(m) }, confined.TrendSteady},
	} {
		j, err := confined.PressureTest{Record: record(30, c.psi), Criterion: casing(t), Resolution: 1 * unit.PSI}.Judge()
		require.NoError(t, err)
		require.Equal(t, c.want, j.Trend, c.name)
		require.Equal(t, confined.Passed, j.Verdict, c.name)
	}
	j, err := confined.PressureTest{Record: confined.Record{{Pressure: 2}, {At: time.Hour, Pressure: 2}}, Criterion: casing(t)}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.TrendUnknown, j.Trend)
}

// 20 AAC 25.412(c): the same decline passes while it settles, and fails while it
// goes on or gets worse.
func TestStabilizing(t *testing.T) {
	c, err := confined.Preset("alaska-injection")
	require.NoError(t, err)
	for _, x := range []struct {
		psi  func(m float64) float64
		want confined.TestVerdict
	}{
		{func(m float64) float64 { return 4900 + 100*math.Exp(-m/8) }, confined.Passed},
		{func(m float64) float64 { return 5000 - 3*m }, confined.Failed},
		{func(m float64) float64 { return 5000 - m*m/10 }, confined.Failed},
		{func(m float64) float64 { return 5000 }, confined.Passed},
	} {
		j, err := confined.PressureTest{Record: record(30, x.psi), Criterion: c, Resolution: 1 * unit.PSI}.Judge()
		require.NoError(t, err)
		require.Equal(t, x.want, j.Verdict, "%v", j.Reasons)
	}
	// A still record needs no resolution to be seen as still.
	for _, p := range []float64{0.1, 1234.567, 14999.9} {
		j, err := confined.PressureTest{Record: record(30, func(float64) float64 { return p }), Criterion: c}.Judge()
		require.NoError(t, err)
		require.Equal(t, confined.Passed, j.Verdict, "%v", j.Reasons)
		require.Equal(t, confined.TrendSteady, j.Trend)
	}
	j, err := confined.PressureTest{Record: confined.Record{{Pressure: 2}, {At: time.Hour, Pressure: 2}}, Criterion: c}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Undecided, j.Verdict)
}

// Cooling by 2 K at 1 MPa/K explains 2 MPa of fall.
func TestTemperatureEffect(t *testing.T) {
	r := record(30, func(m float64) float64 { return 5000 - 10*m })
	for i := range r {
		r[i].Temperature = unit.Celsius(60 - float64(i)/15)
	}
	x := confined.PressureTest{Record: r, Criterion: casing(t), PerDegree: 1e6}
	j, err := x.Judge()
	require.NoError(t, err)
	near(t, 2e6, float64(j.Cooling), 1e-9)
	workingtest.Check(t, j.Steps())
	near(t, float64(300*unit.PSI)-2e6, float64(j.Corrected), 1e-9)
	// Judged after temperature, 3 % of 5,000 psi: 300 psi fall is too much by
	// itself, and 10 psi after cooling is not.
	x.Criterion = confined.Criterion{Name: "test", Hold: 30 * time.Minute, MostDecline: 0.03, AfterTemperature: true}
	j, err = x.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Passed, j.Verdict, "%v", j.Reasons)
	x.Criterion.AfterTemperature = false
	j, err = x.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Failed, j.Verdict)
	// Warming that hides a fall is said.
	for i := range r {
		r[i].Temperature = unit.Celsius(60 + float64(i)/15)
		r[i].Pressure = 5000 * unit.PSI
	}
	x.Criterion = casing(t)
	j, err = x.Judge()
	require.NoError(t, err)
	require.Contains(t, strings.Join(j.Reasons, "; "), "warming hides")
}

func TestPresets(t *testing.T) {
	for _, c := range confined.Presets() {
		got, err := confined.Preset(c.Name)
		require.NoError(t, err)
		require.Equal(t, c, got)
		require.NotEmpty(t, c.Source)
		require.Contains(t, []string{"published", "common practice", "memory"}, c.Status)
	}
	_, err := confined.Preset("none")
	require.ErrorContains(t, err, "us-offshore-casing")
	// Nothing may fall where no decline is allowed, but what the gauge can't show.
	low, err := confined.Preset("barrier-low")
	require.NoError(t, err)
	r := record(10, func(m float64) float64 { return 250 - 0.1*m })
	j, err := confined.PressureTest{Record: r, Criterion: low}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Failed, j.Verdict)
	j, err = confined.PressureTest{Record: r, Criterion: low, Resolution: 1 * unit.PSI}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Passed, j.Verdict)
}

func TestJudgeErrors(t *testing.T) {
	_, err := confined.PressureTest{Target: -1, PerDegree: math.NaN()}.Judge()
	for _, part := range []string{"Criterion.Hold", "Target: is", "PerDegree", "0 samples"} {
		require.ErrorContains(t, err, part)
	}
	r := record(30, func(float64) float64 { return 100 })
	_, err = confined.PressureTest{Record: r, Criterion: casing(t), Start: time.Hour}.Judge()
	require.ErrorContains(t, err, "Start: is 1h0m0s")
	cavity, err := confined.Preset("alabama-cavity")
	require.NoError(t, err)
	_, err = confined.PressureTest{Record: r, Criterion: cavity}.Judge()
	require.ErrorContains(t, err, "judges after temperature")
}

func BenchmarkJudge(b *testing.B) {
	b.ReportAllocs()
	x := confined.PressureTest{Record: record(1800, func(m float64) float64 { return 5000 - m/100 }), Criterion: casing(b)}
	for b.Loop() {
		_, _ = x.Judge()
	}
}

func ExamplePressureTest_Judge() {
	r, err := confined.ReadRecord(strings.NewReader(`time/min,pressure/psi
0,5000
10,4960
20,4945
30,4938
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	c, _ := confined.Preset("us-offshore-casing")
	j, err := confined.PressureTest{Record: r, Criterion: c}.Judge()
	fmt.Println(j.Verdict, j.Trend, err)
	fmt.Println(j.Reasons[0])
	// Output:
	// passed slowing <nil>
	// fall of 62 psi over 30 min is within the 500 psi allowed
}

// A record that ends just with the hold is whole; a test that begins just at its target has reached it.
func TestJustHeldAndJustReached(t *testing.T) {
	for minutes, want := range map[int]confined.TestVerdict{30: confined.Passed, 29: confined.Undecided} {
		for target, reached := range map[unit.Pressure]bool{5000 * unit.PSI: true, 5001 * unit.PSI: false} {
			j, err := confined.PressureTest{Record: record(minutes, func(float64) float64 { return 5000 }), Criterion: casing(t), Target: target, Resolution: unit.PSI}.Judge()
			require.NoError(t, err)
			if reached {
				require.Equal(t, want, j.Verdict, "%d min: %v", minutes, j.Reasons)
			} else {
				require.NotEqual(t, confined.Passed, j.Verdict, "%v", j.Reasons)
			}
		}
	}
}

// A clock may stand a thousand million seconds from its zero, either way; ten faults are enough to tell.
func TestClocksOnTheirLimits(t *testing.T) {
	const most = 1_000_000_000 * time.Second
	for at, ok := range map[time.Duration]bool{most: true, most + 1: false} {
		r := confined.Record{{At: -at, Pressure: 1e6}, {At: at, Pressure: 1e6}}
		if ok {
			require.NoError(t, r.Validate())
		} else {
			require.ErrorContains(t, r.Validate(), "[0].At: is ")
		}
	}
	var bad confined.Record
	for i := range 30 {
		bad = append(bad, confined.Sample{At: time.Duration(i) * time.Minute, Pressure: -1})
	}
	require.Equal(t, 10, strings.Count(bad.Validate().Error(), ".Pressure: is "))
	for i := range bad {
		bad[i] = confined.Sample{At: most + time.Duration(i+1)*time.Second, Pressure: 1e6}
	}
	require.Equal(t, 10, strings.Count(bad.Validate().Error(), ".At: is "))
}

// Too few samples leave a test that has to stabilize undecided, though the record covers all of its hold.
func TestTooFewToSeeWhetherItStabilizes(t *testing.T) {
	c := casing(t)
	c.Stabilizing = true
	j, err := confined.PressureTest{Record: confined.Record{{Pressure: 5000 * unit.PSI}, {At: 30 * time.Minute, Pressure: 4990 * unit.PSI}}, Criterion: c}.Judge()
	require.NoError(t, err)
	require.Equal(t, confined.Undecided, j.Verdict)
	require.Equal(t, []string{"too few samples to see whether the pressure stabilizes"}, j.Reasons)
}
