package confined

import (
	"math"
	"strings"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Rates by least squares, worked by hand: samples at 0, 1, 2, 3, 4 h fall by 10, 6,
// 2, 1 kPa.
func TestRatesByHand(t *testing.T) {
	var r Record
	for h, kPa := range []float64{1000, 990, 984, 982, 981} {
		r = append(r, Sample{At: time.Duration(h) * time.Hour, Pressure: unit.Pressure(kPa * 1000)})
	}
	test := PressureTest{Record: r, Criterion: Criterion{Name: "own", Hold: 4 * time.Hour, MostDecline: 0.019}}
	j, err := test.Judge()
	require.NoError(t, err)
	// Σ(x−2)·p = −2·1000 − 990 + 982 + 2·981 = −46; over Σ(x−2)² = 10: falls 4.6 an hour
	require.InDelta(t, 4600, float64(j.PerHour), 1e-6)
	// first half (0, 1, 2): (1000 − 984)/2; second (2, 3, 4): (984 − 981)/2
	require.InDelta(t, 8000, float64(j.Early), 1e-6)
	require.InDelta(t, 1500, float64(j.Late), 1e-6)
	// residuals off 987.4 − 4.6(x−2): 3.4, −2, −3.4, −0.8, 2.8: squares 11.56+4+11.56+0.64+7.84 = 35.6
	require.InDelta(t, math.Sqrt(35.6/3/10)*1000, float64(j.PerHourError), 1e-6)
	// errors of the halves: residuals 2/3, −4/3, 2/3 over 2: √(8/3/2); and 1/6, −1/3, 1/6: √(1/6/2)
	require.Greater(t, 6.5, 2*math.Hypot(math.Sqrt(8.0/3/2), math.Sqrt(1.0/6/2)), "slower by more than two standard errors")
	require.Equal(t, TrendSlowing, j.Trend)
	require.Equal(t, Passed, j.Verdict, "19 kPa of 1,000 at 1.9 %")
	test.Criterion.MostDecline = 0.018999
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, Failed, j.Verdict)
	require.InDelta(t, 0.019, j.Decline, 1e-12)
	require.Equal(t, "the criterion given", j.Source)

	test.Start = time.Hour
	test.Criterion.Hold = 2 * time.Hour
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, []float64{990e3, 982e3, 8e3}, []float64{float64(j.Start), float64(j.End), float64(j.Fall)})
	require.InDelta(t, 4000, float64(j.PerHour), 1e-6)
	require.InDelta(t, 6000, float64(j.Early), 1e-6, "two samples in each half are enough")
	require.InDelta(t, 2000, float64(j.Late), 1e-6)
	require.Equal(t, TrendSlowing, j.Trend)
	test.Resolution = 2001 // kPa can't be told within half the hold: 2·2001 Pa over an hour
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendSteady, j.Trend)
	test.Resolution = 1999
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendSlowing, j.Trend)
	test.Criterion.Hold = time.Hour
	test.Resolution = 0
	j, err = test.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendUnknown, j.Trend)

	rising := PressureTest{Record: Record{{At: 0, Pressure: 1e6}, {At: time.Hour, Pressure: 1e6}, {At: 2 * time.Hour, Pressure: 1.001e6}}, Criterion: Criterion{Name: "own", Hold: 2 * time.Hour}}
	j, err = rising.Judge()
	require.NoError(t, err)
	require.Equal(t, TrendRising, j.Trend)
	require.Contains(t, strings.Join(j.Reasons, "; "), "the pressure rises")
	rising.Resolution = 1001
	j, err = rising.Judge()
	require.NoError(t, err)
	require.NotEqual(t, TrendRising, j.Trend, "a gauge of 1 kPa can't tell")
	for _, bad := range []Trend{-1, 5} {
		require.Contains(t, bad.String(), "Trend(")
	}
	for _, bad := range []TestVerdict{-1, TestVerdict(len(verdictNames))} {
		require.Contains(t, bad.String(), "Verdict(")
	}
	require.Equal(t, verdictNames[0], TestVerdict(0).String())
	require.Equal(t, []string{"unknown", "rising"}, []string{TrendUnknown.String(), TrendRising.String()})
}
