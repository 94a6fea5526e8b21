package hydrostatics

import (
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// What the working of a cushion shows: a line for each fluid that is there, and the level's own formula
// where both densities are constant and differ; a density that varies by its mean.
func TestWorkingOfACushionShowsWhatIsThere(t *testing.T) {
	soft := func(rho unit.Density) Fluid {
		return SlightlyCompressible{Reference: rho, Temperature: unit.Kelvin(300), Compressibility: 5e-10}
	}
	symbols := func(steps []string) string { return strings.Join(steps, " ") }
	const depth, level = 2000, 800
	for _, x := range []struct {
		light, heavy Fluid
		level        unit.Length
		down, up     string
	}{
		{Incompressible(800), Incompressible(1200), level, "L pc p", "pc ps"},
		{Incompressible(1200), Incompressible(1200), level, "pc p", "pc ps"},
		{soft(800), Incompressible(1200), level, "pc p", "pc ps"},
		{Incompressible(800), soft(1200), level, "pc p", "pc ps"},
		{nil, Incompressible(1200), level, "L p", "pc"},
		{Incompressible(800), Incompressible(1200), 0, "p", "pc"},
		{Incompressible(800), Incompressible(1200), depth, "L pc", "ps"},
	} {
		c := Cushion{Formation: Formation{TVD: depth, Pressure: 2e7}, Light: x.light, Heavy: x.heavy}
		a := CushionAnswer{LevelTVD: x.level, Surface: 1e6, Interface: 7e6, Well: 2e7}
		var down, up []string
		for _, s := range c.LengthSteps(a)[1:] {
			down = append(down, s.Symbol)
			if s.Symbol == "p" && x.heavy == soft(1200) {
				for _, in := range s.Inputs {
					if in.Symbol == "rh" {
						require.InEpsilon(t, (2e7-7e6)/(9.80665*(depth-level)), float64(in.Value.Quantity().(unit.Density)), 1e-12)
					}
				}
			}
			if s.Symbol == "pc" && x.light == soft(800) {
				for _, in := range s.Inputs {
					if in.Symbol == "rl" {
						require.InEpsilon(t, (7e6-1e6)/(9.80665*level), float64(in.Value.Quantity().(unit.Density)), 1e-12)
					}
				}
			}
		}
		for _, s := range c.PressureSteps(a)[1:] {
			up = append(up, s.Symbol)
		}
		require.Equal(t, x.down, symbols(down), "%v", x)
		require.Equal(t, x.up, symbols(up), "%v", x)
	}
}
