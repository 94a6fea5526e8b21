package confined_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// failing is a liquid whose density is refused, or is what it shall be, from a
// pressure or a temperature on.
type failing struct {
	above unit.Pressure
	from  unit.Temperature
	err   error
	gives unit.Density
}

func (f failing) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if p > f.above || f.from.Kelvin() > 0 && t.Kelvin() >= f.from.Kelvin() {
		return f.gives, f.err
	}
	return liquid.Density(p, t)
}

// What a fluid refuses is said with its name, at whichever moment it is asked.
func TestTrappedSaysWhatAFluidRefuses(t *testing.T) {
	trapped := func(f confined.Fluid) confined.Trapped {
		return confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Name: "brine", Fluid: f, Volume: 10, From: warm, To: hot}}, Pressure: 1e7}
	}
	for name, c := range map[string]struct {
		f    confined.Fluid
		want string
	}{
		"before":            {failing{above: -1, err: errRange}, "brine: out of range"},
		"no density before": {failing{above: -1}, "confined: brine has a density of 0 lb/gal at"},
		"NaN":               {failing{above: -1, gives: unit.Density(math.NaN())}, "confined: brine has a density of NaN"},
		"warm":              {failing{above: math.MaxFloat64, from: hot, err: errRange}, "brine: out of range"},
		"a step higher":     {failing{above: 1.0005e7, err: errRange}, "brine: out of range"},
		"on the way":        {failing{above: 2e7, err: errRange}, "confined: on the way to about"},
	} {
		_, err := trapped(c.f).Solve()
		require.ErrorContains(t, err, c.want, name)
		if name == "on the way" { // up, as it warms: above the 10 MPa that it begins with
			var about unit.Pressure
			require.NoError(t, about.UnmarshalText([]byte(strings.Split(strings.Split(err.Error(), "about ")[1], ":")[0])))
			require.Greater(t, about, unit.Pressure(2e7))
		}
	}
	bleeding := trapped(failing{above: -1, err: errRange})
	_, err := bleeding.BleedVolume(1e6)
	require.EqualError(t, err, "brine: out of range")
	_, err = trapped(failing{above: 1e7, err: errRange}).BleedVolume(2e7)
	require.EqualError(t, err, "brine: out of range")
	_, err = trapped(liquid).BleedVolume(-1)
	require.ErrorContains(t, err, "confined: to: is")
}

// A liquid that hardly gives, in a rigid space, has no balance within reach.
func TestTrappedWithoutABalance(t *testing.T) {
	_, err := confined.Trapped{Space: rigid(), Fills: []confined.Fill{{Fluid: stiffening{}, Volume: 10, From: warm, To: hot}}, Pressure: 1e7}.Solve()
	require.ErrorContains(t, err, "confined: no balance up to ")
}

// stiffening gives a little at first and then no more.
type stiffening struct{}

func (stiffening) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return liquid.Density(min(p, 12*unit.Megapascal), t)
}

func TestPressureUpSaysWhatTheFluidRefuses(t *testing.T) {
	up := confined.PressureUp{Space: rigid(), Volume: 10, From: 1e6, To: 2e7, Temperature: hot, Supply: warm}
	for name, f := range map[string]confined.Fluid{
		"from":   failing{above: 0, err: errRange},
		"to":     failing{above: 1e7, err: errRange},
		"supply": supplied{},
	} {
		up.Fluid = f
		_, err := up.Solve()
		require.EqualError(t, err, "fluid: out of range", name)
	}
}

// supplied is refused in the tank.
type supplied struct{}

func (supplied) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if p == 0 {
		return 0, errRange
	}
	return liquid.Density(p, t)
}

// Verdicts, trends and ends are their own text, and refuse others by name.
func TestWordsAsText(t *testing.T) {
	for _, v := range []confined.TestVerdict{confined.Passed, confined.Failed} {
		text, err := json.Marshal(v)
		require.NoError(t, err)
		var back confined.TestVerdict
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, v, back)
	}
	var v confined.TestVerdict
	require.ErrorContains(t, v.UnmarshalText([]byte("perhaps")), `confined: verdict is "perhaps"; must be one of [`)
	j, err := confined.PressureTest{Record: record(40, func(m float64) float64 { return 5000 - m }), Criterion: casing(t)}.Judge()
	require.NoError(t, err)
	text, err := j.Trend.MarshalText()
	require.NoError(t, err)
	var trend confined.Trend
	require.NoError(t, trend.UnmarshalText(text))
	require.Equal(t, j.Trend, trend)
	require.ErrorContains(t, trend.UnmarshalText([]byte("odd")), `confined: trend is "odd"; must be one of [`)

	text, err = confined.EndsClosed.MarshalText()
	require.NoError(t, err)
	var ends confined.Ends
	require.NoError(t, ends.UnmarshalText(text))
	require.Equal(t, confined.EndsClosed, ends)
	require.ErrorContains(t, ends.UnmarshalText([]byte("loose")), `confined: ends are "loose"; must be one of [`)
	_, err = confined.Ends(-1).MarshalText()
	require.ErrorContains(t, err, "confined: ends are -1; must be one of [")
	_, err = confined.Ends(99).MarshalText()
	require.ErrorContains(t, err, "confined: ends are 99; must be one of [")
}

// Faults of a test are told all at once, and before it is judged.
func TestPressureTestFaults(t *testing.T) {
	r := record(40, func(float64) float64 { return 5000 })
	_, err := confined.PressureTest{Record: r, Criterion: casing(t), Start: 40 * time.Minute, PerDegree: math.NaN(), Target: -1, Resolution: -1}.Judge()
	for _, want := range []string{"Start: is 40m0s; must be from 0s to before 40m0s", "PerDegree: is NaN", "Target: is", "Resolution: is"} {
		require.ErrorContains(t, err, want)
	}
	_, err = confined.ReadRecord(strings.NewReader("time/min,pressure/psi\n0,1\n1,\"2\n"))
	require.ErrorContains(t, err, "confined: ")
}
