package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// walked is a plan that has a step.
func walked(of func() *sequence.Plan) func() *sequence.Plan {
	return func() *sequence.Plan {
		p := of()
		if len(p.Steps) == 0 {
			p.Steps = []sequence.Step{{Name: "look"}}
		}
		return p
	}
}

// lined has a control line that is given by its kind.
func lined() *sequence.Plan {
	p := withLines()
	c := &p.Compartments[len(p.Compartments)-1]
	c.Kind, c.Capacity, c.Bores = &sequence.LineModel{Size: unit.Inch / 4, Wall: 0.049 * unit.Inch, Yield: 30000 * psi, Around: "annulus"}, 0, nil
	return p
}

// refusesToWalk is refuses for what shows only while the plan is put together or walked.
func refusesToWalk(t *testing.T, sound func() *sequence.Plan, all []breaking) {
	t.Helper()
	for _, x := range all {
		p := sound()
		x.put(p)
		_, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
		assert.ErrorContains(t, err, x.says)
	}
}

// Fluids and pumps, bores and their walls, outflow, strings in each other: before anything is walked.
func TestPumpsWallsAndOutflowThatAreRefused(t *testing.T) {
	pump := func(p *mended) *sequence.Pump { return &p.Steps[0].Pump[0] }
	sound := func() *sequence.Plan {
		p := pumpedWell()
		p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: unit.BarrelPerMinute}}}}
		return p
	}
	walled := func(p *mended) *sequence.Bore { return &p.Compartments[1].Bores[0] }
	refuses(t, sound, []breaking{
		{func(p *mended) { pump(p).Returns = "tubing" }, `steps[0].pump[0].returns: is "tubing", which is pumped into`},
		{func(p *mended) {
			p.Formations = append(p.Formations, sequence.Formation{Name: "far", MD: 100 * foot, Pressure: unit.Exactly(1000 * psi)})
			pump(p).Returns, pump(p).Formation = "", "far"
		}, `steps[0].pump[0].formation: no compartment stands open to "far"`},
		{func(p *mended) { p.Fluids[0].Kind, p.Fluids[0].Density = sequence.Nitrogen, unit.Band[unit.Density]{} }, "fluids[0]: is a gas; pumping of gas isn't modelled"},
		{func(p *mended) { walled(p).InnerWall = unit.Inch / 4 }, ".inner_wall: stands without an outer_wall or without an inner pipe"},
		{func(p *mended) {
			c := &p.Compartments[0]
			half := c.Bores[0]
			half.To = c.BottomMD / 2
			half.OuterWall = unit.Inch / 4
			c.Bores = append([]sequence.Bore{half}, c.Bores...)
		}, ".outer_wall: is 0 ft; the walls of all bores of a compartment are known, or of none"},
		{func(p *mended) { p.Fluids[0].Compression = -1 }, "; must not be negative, nor more than "},
	})
	refuses(t, producer, []breaking{
		{func(p *mended) { p.Formations[0].Inflow.WaterCut, p.Formations[0].Inflow.WaterDensity = 0.5, 4000 }, "formations[0].inflow: has a water_density of 4 g/cm3; must be from 0 to 3000 kg/m3"},
		{func(p *mended) {
			p.Formations[0].Inflow = &sequence.Inflow{OpenFlow: 12000 * unit.BarrelPerDay, Exponent: 0.8, Density: ppg}
			x := p.Steps[0].Produce
			x.Loss, x.Rate, x.Outflow = 0, 0, []sequence.OutflowAt{{Rate: 1000 * unit.BarrelPerDay, Pressure: 3000 * psi}, {Rate: 9000 * unit.BarrelPerDay, Pressure: 4000 * psi}}
		}, "produce.chokes: are for liquids here; of gas zones put what they take into the outflow"},
	})
	refuses(t, twoStrings, []breaking{
		{func(p *mended) {
			p.String.Sections[0].Pipe = sequence.Pipe{Size: 20 * unit.Inch, Bore: 18 * unit.Inch, Weight: 90 * unit.PoundPerFoot, Yield: 80000 * psi}
		}, "string.sections[0].pipe: is 20 in wide; the bore of section 1 of the outer string is"},
	})
	refuses(t, walked(lined), []breaking{
		{func(p *mended) {
			p.Ratings = append(p.Ratings, sequence.Rating{Name: "close line", Inside: "tubing", Outside: "annulus", ToMD: foot, Burst: unit.Exactly(9000 * psi)})
		}, `.kind.yield: makes a rating "close line", and the plan has one of that name`},
	})
}

// Gas at the top of a compartment, in one layer; heat from what flows; a packer to hold.
func TestGasHeatAndHoldingThatAreRefused(t *testing.T) {
	refuses(t, walked(cushionWell), []breaking{
		{func(p *mended) {
			c := &p.Compartments[0]
			c.Fluid, c.Layers = "", []sequence.Layer{{Fluid: "brine", ToMD: 100 * foot}, {Fluid: "nitrogen", ToMD: c.BottomMD}}
		}, `compartments[0].layers[1].fluid: "nitrogen" is a gas; it would rise: gas stands at the top of a compartment, in one layer`},
	})
	refusesToWalk(t, landed, []breaking{
		{func(p *mended) {
			p.Devices[0].Actions[0].Holds = false
			p.Holding = &sequence.Holding{Below: "below", Above: "annulus", MD: 9000 * foot, Envelope: packer.Polygon{Name: "packer", Vertices: []packer.Load{
				{Differential: -9000 * psi, Axial: -90000 * unit.PoundForce}, {Differential: 9000 * psi, Axial: -90000 * unit.PoundForce},
				{Differential: 9000 * psi, Axial: 90000 * unit.PoundForce}, {Differential: -9000 * psi, Axial: 90000 * unit.PoundForce}}}}
		}, "holding: no action holds the string, so that there is no packer to hold"},
	})
	refusesToWalk(t, mini, []breaking{
		{func(p *mended) {
			p.Begin = &sequence.Begin{If: []*sequence.Stated{{Pressure: unit.Exactly(-100 * psi)}}}
		}, "sequence: the plan's nominal values are not among those with which the well stands as at its beginning (begin.if)"},
	})
	refuses(t, walked(withLines), []breaking{
		{func(p *mended) {
			p.Devices = []sequence.Device{{Name: "sleeve", MD: 1000 * foot, Kind: &sequence.Model{Sleeve: &sequence.SleeveModel{OpenLine: "open line", CloseLine: "close line", Port: "door"}}}}
		}, "devices[0].kind: open area is missing, or not above zero"},
	})
	refuses(t, injecting, []breaking{
		{func(p *mended) {
			for name, f := range p.Well.Flowing {
				f.BottomMD = 0
				p.Well.Flowing[name] = f
			}
		}, "bottom is 0 ft; it must be below surface"},
	})
}

// Columns that fall, and gas that is shut in: what isn't modelled is refused as the walk meets it.
func TestLevelsAndGasThatAreRefusedOnTheWay(t *testing.T) {
	any := []sequence.Flow{sequence.FlowIn, sequence.FlowOut, sequence.Circulation}
	falls := func() *sequence.Plan { return lossy(unit.Exactly(4000 * psi)) }
	refusesToWalk(t, falls, []breaking{
		{func(p *mended) {
			p.Ports = append(p.Ports, sequence.Port{Name: "shoe", Joins: []string{"tubing", "annulus"}, MD: 7900 * foot, Open: true})
			p.Steps[0].Allow, p.Steps[1].Allow = any, any
		}, `it falls beside "annulus", which is open at surface, too; shut that in, or what joins them`},
		{func(p *mended) {
			p.Formations = append(p.Formations, sequence.Formation{Name: "lower", MD: 9500 * foot, Pressure: unit.Exactly(4300 * psi)})
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "second", TopMD: 7500 * foot, BottomMD: 10000 * foot, Fluid: "brine", Formation: "lower"})
			p.Ports = append(p.Ports, sequence.Port{Name: "next", Joins: []string{"tubing", "second"}, MD: 7990 * foot, Open: true})
			p.Steps[0].Allow, p.Steps[1].Allow = any, any
		}, `it falls into more than one formation (`},
		{func(p *mended) {
			p.Well.Temperatures = landed().Well.Temperatures
			p.Fluids[0].Kind, p.Fluids[0].Expansion = sequence.ClearBrine, unit.Expansivity(2e-4)
		}, "a fluid in it feels pressure or temperature; a column that falls wants one of constant density"},
		{func(p *mended) {
			p.Begin = &sequence.Begin{Levels: map[string]*sequence.StatedDepth{"tubing": {Depth: unit.Exactly(1300 * foot)}}}
			p.Well.Temperatures = landed().Well.Temperatures
			p.Fluids[0].Kind, p.Fluids[0].Expansion = sequence.ClearBrine, unit.Expansivity(2e-4)
			p.Steps = p.Steps[2:]
		}, "begin.levels.tubing: a column that has fallen wants fluids of constant density, and one from its top down past its level"},
	})
	shut := func() *sequence.Plan { // the cushion at 1,000 psi
		p := cushionWell()
		p.Steps = []sequence.Step{{Name: "cushion", Ramps: tubingTo(1000), Allow: any}, {Name: "shut", Shut: []string{"tubing"}}}
		return p
	}
	refusesToWalk(t, shut, []breaking{
		{func(p *mended) {
			p.Steps = append(p.Steps, sequence.Step{Name: "swap", Displace: []sequence.Displacement{{Compartment: "tubing", Fluid: "methane", ToMD: 1000 * foot}}})
			p.Fluids = append(p.Fluids, sequence.Fluid{Name: "methane", Kind: sequence.Methane})
			p.Steps[1] = sequence.Step{Name: "open", Allow: any}
		}, "one gas on another isn't modelled; swap the first out with a liquid"},
	})
}

// A choice of values, and a level, as text.
func TestValuesThatAreRefused(t *testing.T) {
	p := mini()
	for of, says := range map[string]string{
		"fluids.tubing fluid.density = 9.5 lb/gal +/- 5 %":        "is a band; one value is wanted",
		"devices.packer.actions.sets.triggers[0].pins = 3 lb/gal": "nor as a force",
	} {
		_, err := p.Choose(of)
		assert.ErrorContains(t, err, says)
	}
	l := landed()
	l.Devices[1].Actions[0].Triggers[0] = sequence.Trigger{Pins: &sequence.Pins{Count: 6, Strength: 10000 * unit.PoundForce, Tolerance: 0.05}}
	require.NoError(t, l.Validate())
	_, err := l.Choose("devices.release.actions.parts.triggers[0].pins = 300 psi")
	assert.ErrorContains(t, err, "its pins stand on no piston; give a force")
	// What a step that fails leaves behind is no beginning.
	p.Steps[0].Ramps = tubingTo(1000)
	_, err = p.Rest(t.Context(), "set")
	assert.ErrorContains(t, err, `sequence: the state after step "set": the plan is left in step "set": with no values does it do what it intends`)
	var level sequence.Level
	assert.ErrorContains(t, level.UnmarshalText([]byte("3 lb/gal")), "nor as a force")
}
