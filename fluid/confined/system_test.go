package confined_test

import (
	"fmt"
	"testing"
	"time"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

func TestSystemAddsUp(t *testing.T) {
	s := confined.System{
		{Name: "tubing", Volume: 80 * unit.Barrel, Fluid: 3e-6 * unit.PerPSI, Walls: 0.5e-6 * unit.PerPSI},
		{Name: "annulus", Volume: 300 * unit.Barrel, Fluid: 3e-6 * unit.PerPSI, Walls: 1e-6 * unit.PerPSI},
	}
	workingtest.Check(t, s.Steps(2000*unit.PSI))
	near(t, 380, s.Volume().In(unit.Barrel), 1e-14)
	near(t, (80*3.5e-6+300*4e-6)/380, s.Compressibility().In(unit.PerPSI), 1e-12)
	near(t, (80*3.5e-6+300*4e-6)*2000, s.VolumeFor(2000*unit.PSI).In(unit.Barrel), 1e-12)
	near(t, 2000, s.RiseFor(s.VolumeFor(2000*unit.PSI)).In(unit.PSI), 1e-12)
	near(t, (80*3.5e-6+300*4e-6)*10*42/30, s.LeakRate(10*unit.PSI, 30*time.Minute).In(unit.GallonPerMinute), 1e-12)
}

// The exact volume, and its linear form for a small rise.
func TestPressureUp(t *testing.T) {
	u := confined.PressureUp{
		Space: confined.Space{Outer: tube(0.2445, 0.2205)}, Fluid: liquid, Volume: 50,
		From: 0, To: 3e7, Temperature: hot, Supply: warm,
	}
	p, err := u.Solve()
	require.NoError(t, err)
	c := float64(u.Space.Compliance())
	near(t, c*3e7*50, float64(p.Ballooning), 1e-12)
	near(t, c*3e7, p.Stretch, 1e-12)
	near(t, 3e7/float64(p.Volume), p.PerVolume, 1e-14)
	require.Positive(t, p.Compression)
	u.To, u.Supply = 1e4, hot
	p, err = u.Solve()
	require.NoError(t, err)
	s := confined.System{{Volume: 50, Fluid: 4.5e-10, Walls: u.Space.Compliance()}}
	near(t, float64(s.VolumeFor(1e4)), float64(p.Volume), 1e-4)
	// Bleeding down gives back what pressuring up took.
	u.From, u.To = u.To, u.From
	back, err := u.Solve()
	require.NoError(t, err)
	near(t, -float64(p.Volume), float64(back.Volume), 1e-4)
	_, err = confined.PressureUp{From: 5, To: 5}.Solve()
	for _, part := range []string{"Fluid: is missing", "must differ from From", "Volume: is", "Temperature: is", "Space.Outer"} {
		require.ErrorContains(t, err, part)
	}
	_, err = confined.PressureUp{Space: rigid(), Fluid: confined.LinearLiquid{Reference: 1000, Temperature: warm}, Volume: 1, To: 1e6, Temperature: warm, Supply: warm}.Solve()
	require.ErrorContains(t, err, "give way")
}

func TestLiquid(t *testing.T) {
	ρ, err := liquid.Density(0, warm)
	require.NoError(t, err)
	require.Equal(t, unit.Density(1000), ρ)
	_, err = confined.LinearLiquid{}.Density(0, warm)
	require.ErrorContains(t, err, "Reference")
	_, err = liquid.Density(1e12, warm)
	require.ErrorContains(t, err, "exponent")
	require.Zero(t, confined.Mixed(nil, nil))
}

func ExampleSystem_RiseFor() {
	// Published with 1552 psi for one barrel in 180.
	s := confined.System{{Name: "mud", Volume: 180 * unit.Barrel, Fluid: 3.58e-6 * unit.PerPSI}}
	fmt.Printf("%v, %.2f bbl\n", s.RiseFor(1*unit.Barrel).Rounded(4), s.VolumeFor(1500*unit.PSI).In(unit.Barrel))
	// Output: 1552 psi, 0.97 bbl
}
