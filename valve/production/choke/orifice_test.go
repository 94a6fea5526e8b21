package choke_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"github.com/stretchr/testify/require"
)

// Orifice of 50 mm in 73.66 mm pipe, D and D/2 tappings (reference ORI-02).
var (
	meter = choke.Orifice{Pipe: 73.66 * mm, Bore: 50 * mm, Taps: choke.RadiusTaps}
	felt  = choke.Metered{Density: 999.1, Viscosity: 0.0011, Exponent: 1.33, Upstream: absolute(200 * kPa), Downstream: absolute(183 * kPa)}
)

func ExampleOrifice_Rate() {
	f, err := meter.Rate(felt)
	fmt.Printf("%.6f kg/s, C = %.4f, %v\n", f.Mass.In(unit.KilogramPerSecond), f.Discharge, err)
	// Output: 7.702338 kg/s, C = 0.6151, <nil>
}

// The flow put back into the standard's own equation gives the drop.
func TestOrificeInverse(t *testing.T) {
	f, err := meter.Rate(felt)
	require.NoError(t, err)
	b4 := math.Pow(50/73.66, 4)
	d := 0.05
	dp := math.Pow(float64(f.Mass)*math.Sqrt(1-b4)/(f.Discharge*f.Expansion*math.Pi/4*d*d), 2) / 2 / 999.1
	require.InEpsilon(t, 17000, dp, 1e-12)
	require.InEpsilon(t, f.Discharge, meter.Discharge(f.Reynolds), 1e-14)
	require.Empty(t, f.Outside)
}

func TestOrificeTaps(t *testing.T) {
	for _, taps := range []choke.Taps{choke.CornerTaps, choke.FlangeTaps, choke.RadiusTaps} {
		text, err := taps.MarshalText()
		require.NoError(t, err)
		var back choke.Taps
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, taps, back)
		// At a vanishing diameter ratio the tapping does not matter and C tends to 0.5961 + small.
		o := choke.Orifice{Pipe: unit.Metre, Bore: 1 * mm, Taps: taps}
		require.InDelta(t, 0.5961, o.Discharge(1e9), 2e-4)
	}
	var bad choke.Taps
	require.Error(t, bad.UnmarshalText([]byte("pipe")))
	require.Contains(t, choke.Taps(7).String(), "7")
}

func TestOrificeFaults(t *testing.T) {
	m := felt
	m.Upstream, m.Downstream = m.Downstream, m.Upstream
	_, err := meter.Rate(m)
	require.ErrorIs(t, err, choke.ErrNoFlow)
	_, err = choke.Orifice{Pipe: 50 * mm, Bore: 60 * mm, Taps: 9}.Rate(choke.Metered{})
	for _, text := range []string{"Bore: is 6 cm", "Density: is", "Viscosity: is", "taps are 9"} {
		require.ErrorContains(t, err, text)
	}
	f, err := choke.Orifice{Pipe: 40 * mm, Bore: 10 * mm}.Rate(felt)
	require.NoError(t, err)
	require.Len(t, f.Outside, 2, "small pipe and small bore: %v", f.Outside)
}

func FuzzOrifice(f *testing.F) {
	f.Add(0.07366, 0.05, 2, 999.1, 0.0011, 1.33, 1e5, 8e4)
	f.Fuzz(func(t *testing.T, pipe, bore float64, taps int, rho, mu, k, p1, p2 float64) {
		r, err := choke.Orifice{Pipe: unit.Length(pipe), Bore: unit.Length(bore), Taps: choke.Taps(taps)}.Rate(choke.Metered{
			Density: unit.Density(rho), Viscosity: unit.Viscosity(mu), Exponent: k, Upstream: unit.Pressure(p1), Downstream: unit.Pressure(p2)})
		if x := float64(r.Mass); err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Fatalf("rate is %v without an error", x)
		}
	})
}
