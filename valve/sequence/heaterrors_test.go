package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// A temperature that may be off as a whole makes columns of gas and of brine lighter or heavier: what a device
// feels then lies between what the same well has with the temperature moved to either end, and comes up
// to both.
func TestTemperaturesThatMayBeOff(t *testing.T) {
	for name, x := range map[string]struct {
		gas, brine sequence.Fluid
		depth      float64
	}{
		"natural gas": {sequence.Fluid{Name: "nitrogen", Kind: sequence.NaturalGas, Gravity: 0.65, CarbonDioxide: 0.02}, sequence.Fluid{Name: "brine", Density: unit.Exactly(9 * ppg)}, 3900},
		"methane":     {sequence.Fluid{Name: "nitrogen", Kind: sequence.Methane}, sequence.Fluid{Name: "brine", Density: unit.Exactly(9 * ppg)}, 3900},
		"brine":       {sequence.Fluid{Name: "nitrogen", Density: unit.Exactly(8 * ppg)}, sequence.Fluid{Name: "brine", Kind: sequence.ClearBrine, Density: unit.Exactly(9 * ppg), Expansion: 3e-4 * unit.PerFahrenheit, Compression: 3e-6 * unit.PerPSI}, 7900},
		"water":       {sequence.Fluid{Name: "nitrogen", Density: unit.Exactly(8 * ppg)}, sequence.Fluid{Name: "brine", Kind: sequence.FreshWater}, 7900},
	} {
		well := func(off, either unit.TemperatureDifference, threshold float64) *sequence.Plan {
			p := cushionWell()
			p.Fluids = []sequence.Fluid{x.brine, x.gas}
			marks := p.Well.Temperatures[sequence.Undisturbed]
			for i := range marks {
				marks[i].Temperature = marks[i].Temperature.Add(off)
			}
			if either > 0 {
				p.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{sequence.Undisturbed: {Least: -either, Greatest: either}}
			}
			addAction(p, "gauge", "tubing", "", rising(pounds(threshold), pounds(threshold)))
			p.Devices[0].MD = feet(x.depth)
			p.Steps = []sequence.Step{{Name: "hold", Ramps: tubingTo(4000)}}
			return p
		}
		felt := func(off unit.TemperatureDifference) float64 {
			points := verdicted(t, well(off, 0, 15000)).Steps[0].Points
			for _, y := range points[len(points)-1].Pressures {
				if y.Compartment == "tubing" && y.Device == "gauge" {
					return y.Pressure.In(psi)
				}
			}
			panic(name)
		}
		cold, hot := felt(-10), felt(10)
		require.Greater(t, cold-hot, 1.0, name)
		slack := 0.5
		if x.gas.Kind.Gas() {
			slack = 10 // what gas makes of a temperature is only enclosed
		}
		require.Equal(t, sequence.Proved, verdicted(t, well(0, 10, cold+slack)).Verdict, name)
		require.Equal(t, sequence.Refuted, verdicted(t, well(0, 10, cold-0.5)).Verdict, name)
		require.Equal(t, sequence.Proved, verdicted(t, well(0, 0, felt(0)+0.5)).Verdict, name)
	}
}

// Gas collects at the highest point of its compartment: elsewhere it is refused with where to part it.
func TestGasInAHoleThatRises(t *testing.T) {
	gas := func(layers ...sequence.Layer) *sequence.Plan {
		p := undulating(layers...)
		p.Fluids = append(p.Fluids, sequence.Fluid{Name: "nitrogen", Kind: sequence.Nitrogen})
		p.Well.Temperatures = cushionWell().Well.Temperatures
		return p
	}
	require.NoError(t, gas(layersOf("nitrogen", 3000, "brine", 10000)...).Validate())
	p := gas(layersOf("nitrogen", 6500, "brine", 10000)...)
	require.ErrorContains(t, p.Validate(), `gas in "tubing" reaches down to 6500 ft, past the low point at `)
	p = gas(layersOf("brine", 10000)...)
	p.Compartments[0].BottomMD, p.Compartments[0].Layers = 5000*foot, layersOf("brine", 5000)
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "toe", TopMD: 6050 * foot, BottomMD: 10000 * foot, Layers: layersOf("nitrogen", 7000, "brine", 10000), Trapped: unit.Exactly(3000 * psi)})
	require.ErrorContains(t, p.Validate(), `gas in "toe" collects at its highest point, at `)
}
