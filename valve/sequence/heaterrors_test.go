package sequence_test

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// offWell is cushionWell with a gas and a liquid of that kind, a temperature that is moved by off and may
// be off by either, and a gauge at a depth.
func offWell(gas, brine sequence.Fluid, off unit.TemperatureDifference, either unit.Band[unit.TemperatureDifference], depth, threshold float64) *sequence.Plan {
	p := cushionWell()
	gas.Name, brine.Name = "nitrogen", "brine"
	p.Fluids = []sequence.Fluid{brine, gas}
	marks := p.Well.Temperatures[sequence.Undisturbed]
	for i := range marks {
		marks[i].Temperature = marks[i].Temperature.Add(off)
	}
	p.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{sequence.Undisturbed: either}
	addAction(p, "gauge", "tubing", "", rising(pounds(threshold), pounds(threshold)))
	p.Devices[0].MD = feet(depth)
	p.Steps = []sequence.Step{{Name: "hold", Ramps: tubingTo(4000), Allow: []sequence.Flow{sequence.Circulation}}}
	return p
}

// A temperature that may be off as a whole makes columns of gas and of liquids lighter or heavier: what a
// device feels then lies between what the same well has with the temperature moved to either end, and comes up
// to both. Off by so much and no other, it is the same as moved; so a witness fails again. Open, and with the
// gas shut in and liquid that feels temperature under it.
func TestTemperaturesThatMayBeOff(t *testing.T) {
	t.Parallel()
	nitrogen, heavy := sequence.Fluid{Kind: sequence.Nitrogen}, sequence.Fluid{Density: unit.Exactly(8 * ppg)}
	plain, water := sequence.Fluid{Density: unit.Exactly(9 * ppg)}, sequence.Fluid{Kind: sequence.FreshWater}
	brine := sequence.Fluid{Kind: sequence.ClearBrine, Density: unit.Exactly(9 * ppg), Expansion: 3e-4 * unit.PerFahrenheit, Compression: 3e-6 * unit.PerPSI}
	either := unit.Band[unit.TemperatureDifference]{Least: -10, Greatest: 10}
	shut := func(p *sequence.Plan) {
		p.Fluids = append(p.Fluids, sequence.Fluid{Name: "annulus brine", Density: unit.Exactly(9 * ppg)})
		p.Compartments[1].Fluid = "annulus brine"
		p.Ports[0].Open, p.Devices[0].Actions[0].Inside, p.Devices[0].Actions[0].Outside = true, "tubing", ""
		p.Begin = &sequence.Begin{Applied: map[string]pressure{"tubing": 3000 * psi, "annulus": 1400 * psi}}
		p.Steps[0].Ramps = nil
		p.Steps = append(p.Steps, sequence.Step{Name: "shut", Shut: []string{"tubing"}}, sequence.Step{Name: "press", Ramps: []map[string]pressure{{"annulus": 2600 * psi}}})
	}
	open := func(*sequence.Plan) {}
	for name, x := range map[string]struct {
		gas, liquid sequence.Fluid
		depth       float64
		edit        func(p *sequence.Plan)
		slack       float64 // what gas makes of a temperature is only enclosed
	}{
		"natural gas":          {sequence.Fluid{Kind: sequence.NaturalGas, Gravity: 0.65, CarbonDioxide: 0.02}, plain, 3900, open, 10},
		"brine":                {heavy, brine, 7900, open, 0.6},
		"water":                {heavy, water, 7900, open, 1},
		"shut in over brine":   {nitrogen, brine, 1000, shut, 0},
		"shut in over a brine": {nitrogen, plain, 1000, shut, 20},
	} {
		t.Run(name, func(t *testing.T) {
			plan := func(off unit.TemperatureDifference, e unit.Band[unit.TemperatureDifference], threshold float64) *sequence.Plan {
				p := offWell(x.gas, x.liquid, off, e, x.depth, threshold)
				x.edit(p)
				return p
			}
			felt := func(off unit.TemperatureDifference, e unit.Band[unit.TemperatureDifference]) float64 {
				most := 0.0
				for _, s := range verdicted(t, plan(off, e, 15000)).Steps {
					for _, at := range s.Points {
						for _, y := range at.Pressures {
							if y.Compartment == "tubing" && y.Device == "gauge" {
								most = max(most, y.Pressure.In(psi))
							}
						}
					}
				}
				return most
			}
			none := unit.Band[unit.TemperatureDifference]{}
			cold, hot := felt(-10, none), felt(10, none)
			most := max(cold, hot)
			require.Greater(t, math.Abs(cold-hot), 1.0)
			require.InDelta(t, cold, felt(0, unit.Exactly(unit.TemperatureDifference(-10))), 0.01)
			require.InDelta(t, hot, felt(-5, unit.Exactly(unit.TemperatureDifference(15))), 0.01)
			if x.slack == 0 {
				return // what is enclosed twice takes long
			}
			require.Equal(t, sequence.Proved, verdicted(t, plan(0, either, most+x.slack)).Verdict)
			require.Equal(t, sequence.Proved, verdicted(t, plan(-10, unit.Band[unit.TemperatureDifference]{Nominal: 10, Greatest: 20}, most+x.slack)).Verdict)
			short := plan(0, either, most-0.5)
			r := verdicted(t, short)
			require.NotEqual(t, sequence.Proved, r.Verdict)
			if r.Verdict == sequence.Refuted {
				q, err := short.At(r.Findings[0].Witness)
				require.NoError(t, err)
				require.Equal(t, sequence.Refuted, verdicted(t, q).Verdict)
			}
		})
	}
}

// What stands behind a pipe, from surface, feels the same temperature.
func TestATemperatureThatIsOffBehindAPipe(t *testing.T) {
	water := sequence.Fluid{Kind: sequence.FreshWater}
	holds := func(off unit.TemperatureDifference, e unit.Band[unit.TemperatureDifference], collapse float64) bool {
		p := offWell(sequence.Fluid{Density: unit.Exactly(8 * ppg)}, water, off, e, 100, 15000)
		p.Fluids = append(p.Fluids, sequence.Fluid{Name: "light", Density: unit.Exactly(2 * ppg)})
		p.Compartments[1].Fluid, p.Steps[0].Ramps = "light", nil
		p.Ratings = []sequence.Rating{{Name: "casing", Inside: "annulus", Background: "brine", FromMD: 7000 * foot, ToMD: 7500 * foot, Collapse: exactly(collapse)}}
		return verdicted(t, p).Verdict == sequence.Proved
	}
	edge := func(off unit.TemperatureDifference) float64 {
		least, most := 1000.0, 4000.0
		for most-least > 0.01 {
			if mid := (least + most) / 2; holds(off, unit.Band[unit.TemperatureDifference]{}, mid) {
				most = mid
			} else {
				least = mid
			}
		}
		return most
	}
	cold, hot := edge(-10), edge(10)
	require.Greater(t, cold-hot, 5.0)
	either := unit.Band[unit.TemperatureDifference]{Least: -10, Greatest: 10}
	require.True(t, holds(0, either, cold+4), "the bend of water twice")
	require.False(t, holds(0, either, cold-0.5))
	require.True(t, holds(0, unit.Exactly(unit.TemperatureDifference(-10)), cold+0.01))
	require.False(t, holds(0, unit.Exactly(unit.TemperatureDifference(-10)), cold-0.02))
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

// Another temperature from a step on makes columns of water lighter there and then: at surface, and of two
// bodies that are trapped together, whose uppermost top keeps its pressure. What the same well has
// that was hot from the beginning is what it has then.
func TestAnotherTemperatureIsFeltAtOnce(t *testing.T) {
	plan := func(hot bool, name string) *sequence.Plan {
		p := offWell(sequence.Fluid{Density: unit.Exactly(8 * ppg)}, sequence.Fluid{Kind: sequence.FreshWater}, 0, unit.Band[unit.TemperatureDifference]{}, 7900, 15000)
		for _, room := range []string{"upper room", "lower room"} {
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: room, TopMD: 4000 * foot, BottomMD: 8000 * foot, Fluid: "brine", Capacity: 0.01 * unit.BarrelPerFoot})
		}
		p.Compartments[2].BottomMD, p.Compartments[3].TopMD = 6000*foot, 5500*foot
		setTrapped(&p.Compartments[2], 1500)
		p.Ports = append(p.Ports, sequence.Port{Name: "between", Joins: []string{"upper room", "lower room"}, MD: 5800 * foot, Open: true})
		addAction(p, "low", "lower room", "annulus", rising(15000*psi, 15000*psi))
		p.Devices[1].MD = 7900 * foot
		warm := []sequence.MarkedTVD{{TVD: 0, Temperature: unit.Fahrenheit(150)}, {TVD: 8000 * foot, Temperature: unit.Fahrenheit(250)}}
		p.Well.Temperatures["hot"] = warm
		if hot {
			p.Well.Temperatures[sequence.Undisturbed] = warm
		}
		p.Steps = []sequence.Step{{Name: "look"}, {Name: "change", Temperature: name}}
		return p
	}
	felt := func(p *sequence.Plan, step int) map[string]float64 {
		all := map[string]float64{}
		points := verdicted(t, p).Steps[step].Points
		for _, y := range points[len(points)-1].Pressures {
			all[y.Device+" "+y.Compartment] = y.Pressure.In(psi)
		}
		return all
	}
	cold, heated, hot := felt(plan(false, ""), 0), felt(plan(false, "hot"), 1), felt(plan(true, ""), 0)
	for name, x := range cold {
		near := 0.01
		if strings.Contains(name, "room") {
			near = 0.2 // what the two had was shared when they met, hot or cold
		}
		require.InDelta(t, hot[name], heated[name], near, name)
		require.Greater(t, x-heated[name], 10.0, name)
	}
	require.Len(t, cold, 6)
	again := felt(plan(true, sequence.Undisturbed), 1)
	require.Equal(t, hot, again)
}
