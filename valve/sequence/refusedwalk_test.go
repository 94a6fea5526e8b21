package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// Trapped bodies between walls of a fluid of which nobody knows how it gives way.
func TestSoftBodiesThatAreRefused(t *testing.T) {
	soft := func() *sequence.Plan {
		p := closedAnnulus()
		p.Fluids[0].Compression, p.Fluids[0].Expansion = 0, 0
		p.Steps = []sequence.Step{{Name: "look"}}
		return p
	}
	const way = `between known walls: "brine" wants a compressibility, and must not be a gas`
	refusesToWalk(t, soft, []breaking{
		{func(p *mended) { p.Steps[0].Temperature = "producing" }, "it is heated or cooled " + way},
		{func(p *mended) { p.Steps[0].VolumeChange = map[string]unit.Volume{"annulus A": unit.Gallon} }, "its volume is changed " + way},
		{func(p *mended) {
			a := addAction(p, "piston", "tubing", "", rising(1000*psi, 1000*psi))
			a.Strokes = map[string]unit.Volume{"annulus A": unit.Gallon}
			p.Steps[0].Ramps, p.Steps[0].Expect = tubingTo(1500), []string{"piston: moves"}
		}, "something strokes into it " + way},
		{func(p *mended) {
			p.Fluids[0].Expansion = 2.5e-4 * unit.PerFahrenheit
			p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: exactly(3000)}}
			p.Barriers = []sequence.Barrier{{Name: "casing", Formation: "sand"}}
			p.Steps[0].Tests = []sequence.Test{{Barrier: "casing", Side: "above", Inside: "annulus A", Outside: "annulus", MD: 6000 * foot, Differential: band(2000, 500),
				Hold: "15m", Moment: sequence.AtEnd, Warms: map[string]unit.Band[unit.TemperatureDifference]{"annulus A": unit.Exactly(unit.TemperatureDifference(1))}}}
		}, "it warms or cools while a test is held"},
	})
}

// Pumps: one way, one formation, one open surface.
func TestWaysOfPumpsThatAreRefused(t *testing.T) {
	pumped := func() *sequence.Plan {
		p := pumpedWell()
		p.Compartments = append(p.Compartments, sequence.Compartment{Name: "third", BottomMD: 9000 * foot, Fluid: "brine", Surface: true})
		p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: unit.BarrelPerMinute}}}}
		return p
	}
	refusesToWalk(t, pumped, []breaking{
		{func(p *mended) {
			p.Ports = append(p.Ports, sequence.Port{Name: "aside", Joins: []string{"annulus", "third"}, MD: 4000 * foot, Open: true})
		}, `"third" is open at surface beside "annulus"; shut it in first`},
		{func(p *mended) {
			p.Steps[0].Pump[0].Returns, p.Steps[0].Pump[0].Formation = "", "sand"
			for i, name := range []string{"sand", "toe"} {
				p.Formations = append(p.Formations, sequence.Formation{Name: name, MD: 9000 * foot, Pressure: exactly(4000 + float64(i))})
				p.Compartments = append(p.Compartments, sequence.Compartment{Name: name + " face", TopMD: 8900 * foot, BottomMD: 9000 * foot, Fluid: "brine", Formation: name, Bores: []sequence.Bore{{To: 9000 * foot, Outer: 8 * unit.Inch}}})
				p.Ports = append(p.Ports, sequence.Port{Name: name, Joins: []string{"tubing", name + " face"}, MD: 8950 * foot, Open: true})
			}
			p.Ports[0].Open = false
		}, `"toe" is open beside "sand"; how a rate parts between them isn't modelled`},
	})
}

// Gas that is shut in where what it does isn't modelled.
func TestShutInGasThatIsRefused(t *testing.T) {
	any := []sequence.Flow{sequence.FlowIn, sequence.FlowOut, sequence.Circulation}
	shut := func() *sequence.Plan {
		p := cushionWell()
		p.Steps = []sequence.Step{{Name: "cushion", Ramps: tubingTo(1000), Allow: any}, {Name: "shut", Shut: []string{"tubing"}}}
		return p
	}
	refusesToWalk(t, shut, []breaking{
		{func(p *mended) { // its level moves over two liquids
			p.Fluids = append(p.Fluids, sequence.Fluid{Name: "mud"})
			setDensity(&p.Fluids[2], 10)
			p.Compartments[0].Layers = []sequence.Layer{{Fluid: "nitrogen", ToMD: 4000 * foot}, {Fluid: "brine", ToMD: 5000 * foot}, {Fluid: "mud", ToMD: 8000 * foot}}
			p.Ports[0].Open = true
			p.Steps = append(p.Steps, sequence.Step{Name: "press", Ramps: []map[string]pressure{{"annulus": 900 * psi}}, Allow: any})
		}, "its level moves; just one liquid must stand under it (2 do): displace one by the other before it is shut in"},
		{func(p *mended) { // two surfaces on what it presses on
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "third", BottomMD: 8000 * foot, Fluid: "brine", Surface: true})
			p.Ports = append(p.Ports, sequence.Port{Name: "aside", Joins: []string{"annulus", "third"}, MD: 8000 * foot, Open: true})
			p.Ports[0].Open = true
			p.Steps = append(p.Steps, sequence.Step{Name: "press", Ramps: []map[string]pressure{{"annulus": 900 * psi}}, Allow: any})
		}, `isn't modelled with gas shut in: shut one of them in, or what joins them, before`},
	})
}

// A column that has fallen, joined with another surface.
func TestFallenColumnsThatAreRefused(t *testing.T) {
	any := []sequence.Flow{sequence.FlowIn, sequence.FlowOut, sequence.Circulation}
	refusesToWalk(t, func() *sequence.Plan { return lossy(exactly(4000)) }, []breaking{
		{func(p *mended) {
			p.Ports = append(p.Ports, sequence.Port{Name: "cross", Joins: []string{"tubing", "annulus"}, MD: 7000 * foot})
			p.Steps[2] = sequence.Step{Name: "cross", Do: []sequence.Act{{Pull: "cross", In: "annulus", AtMost: 9000 * psi}}, Allow: any}
		}, "are joined while both are open at surface; that isn't modelled with a column that has fallen"},
	})
}
