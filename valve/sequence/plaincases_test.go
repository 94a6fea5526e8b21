package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// plainCase is a plan whose verdict was found by hand.
type plainCase struct {
	name  string
	plan  *sequence.Plan
	fails sequence.Kind // in some choice inside the bands; empty: right in all of them
}

// gaugeWell is a well in which a device at surface feels what the gauges show:
// tubing, annulus, and rooms whose tops are at surface too, all of one volume
// and of one fluid.
func gaugeWell(rooms ...string) *sequence.Plan {
	p := &sequence.Plan{Name: "gauges", Well: sequence.Well{MD: 1000 * foot}, Fluids: []sequence.Fluid{{Name: "brine"}}}
	setDensity(&p.Fluids[0], 9)
	for i, name := range append([]string{"tubing", "annulus"}, rooms...) {
		p.Compartments = append(p.Compartments, sequence.Compartment{Name: name, BottomMD: 1000 * foot, Fluid: "brine",
			Surface: i < 2, Capacity: 0.01 * unit.BarrelPerFoot})
	}
	return p
}

func addPort(p *sequence.Plan, name, a, b string, open bool) {
	p.Ports = append(p.Ports, sequence.Port{Name: name, Joins: []string{a, b}, Open: open})
}

// addAction adds a device of one action that feels inside less outside, or less
// nothing where outside is empty.
func addAction(p *sequence.Plan, name, inside, outside string, t ...sequence.Trigger) *sequence.Action {
	a := sequence.Action{Name: "moves", Inside: inside, Outside: outside, Triggers: t}
	if outside == "" {
		none := pressure(0)
		a.Chamber = &none
	}
	p.Devices = append(p.Devices, sequence.Device{Name: name, Actions: []sequence.Action{a}})
	return &p.Devices[len(p.Devices)-1].Actions[0]
}

func falling(least, greatest pressure) sequence.Trigger {
	t := rising(least, greatest)
	t.Direction = valve.Falling
	return t
}

func tubingTo(psis ...float64) []map[string]pressure {
	var ramps []map[string]pressure
	for _, x := range psis {
		ramps = append(ramps, map[string]pressure{"tubing": pounds(x)})
	}
	return ramps
}

// fourShutters: room A is shut in at the first of two rising shutters, room B on
// the way down at the first of two falling ones, all of 1,800 to 2,200 psi. With
// the first two late and the others early A stands 400 psi above B, and no more
// in any other choice. Between them is a disc.
func fourShutters(disc float64) *sequence.Plan {
	p := gaugeWell("A", "B")
	addPort(p, "a", "tubing", "A", true)
	addPort(p, "b", "tubing", "B", true)
	addPort(p, "burst", "A", "B", false)
	var expect []string
	for _, x := range []struct {
		name, port string
		t          sequence.Trigger
	}{{"one", "a", rising(1800*psi, 2200*psi)}, {"two", "a", rising(1800*psi, 2200*psi)},
		{"three", "b", falling(1800*psi, 2200*psi)}, {"four", "b", falling(1800*psi, 2200*psi)}} {
		addAction(p, x.name, "tubing", "", x.t).Closes = []string{x.port}
		expect = append(expect, x.name+": moves")
	}
	for i := 2; i < 4; i++ { // armed above 2,500 psi
		p.Devices[i].Actions[0].Triggers = append([]sequence.Trigger{rising(2500*psi, 2500*psi)}, p.Devices[i].Actions[0].Triggers...)
	}
	addAction(p, "disc", "A", "B", sequence.Trigger{Threshold: unit.Exactly(pounds(disc))}).Opens = []string{"burst"}
	p.Steps = []sequence.Step{{Name: "up and down", Ramps: tubingTo(3000, 1000), Expect: expect}}
	return p
}

// middleOfTheBand: a shutter of 1,800 to 2,200 psi shuts a room in and arms a
// relief, which lets the room go to the annulus at 280 psi above the annulus'
// 1,900 psi: at once where the shutter moved at 2,180 psi or more, else only when
// the annulus is bled off. The room must stand at 1,750 to 2,150 psi after the
// first ramp: what fails is 2,150 to 2,180 psi, 7.5 % of the band.
func middleOfTheBand() *sequence.Plan {
	p := gaugeWell("room")
	addPort(p, "in", "tubing", "room", true)
	addPort(p, "out", "room", "annulus", false)
	shuts := addAction(p, "valve", "tubing", "", rising(1800*psi, 2200*psi))
	shuts.Closes, shuts.Arms = []string{"in"}, []string{"relieves"}
	p.Devices[0].Actions = append(p.Devices[0].Actions, sequence.Action{Name: "relieves", Inside: "room", Outside: "annulus", Disarmed: true,
		Triggers: []sequence.Trigger{rising(280*psi, 280*psi)}, Opens: []string{"out"}})
	f := sequence.Formation{Name: "sand", MD: 1000 * foot}
	setPore(&f, 1000)
	p.Formations = []sequence.Formation{f}
	over := 9*psiPerFootPpg*1000 - 1000
	p.Steps = []sequence.Step{
		{Name: "annulus", Ramps: []map[string]pressure{{"annulus": 1900 * psi}}},
		{Name: "shut in", Ramps: append(tubingTo(3000), map[string]pressure{"annulus": 0}), Expect: []string{"valve: moves", "valve: relieves"},
			Balance: []sequence.Balance{{Compartment: "room", Formation: "sand", Moment: sequence.AtPeak,
				Overbalance: unit.Band[pressure]{Least: pounds(1750 + over), Nominal: pounds(1900 + over), Greatest: pounds(2150 + over)}}}},
	}
	return p
}

// doorBeforeInflow: on the way down a sand at 1,500 psi begins to flow, as it may,
// below 1,499.5 psi; a door, the only barrier, opens at 1,400 psi to the given.
func doorBeforeInflow(greatest float64) *sequence.Plan {
	p := gaugeWell("room")
	f := sequence.Formation{Name: "sand", MD: 1000 * foot}
	setPore(&f, 1500+9*psiPerFootPpg*1000)
	p.Formations = []sequence.Formation{f}
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "face", TopMD: 900 * foot, BottomMD: 1000 * foot, Fluid: "brine",
		Formation: "sand", Capacity: 0.01 * unit.BarrelPerFoot})
	addPort(p, "screen", "tubing", "face", false)
	p.Ports[0].MD = 1000 * foot
	addPort(p, "door", "annulus", "room", false)
	p.Barriers = []sequence.Barrier{{Name: "door", Formation: "sand", Port: "door"}}
	p.Rules.Barriers = 1
	addAction(p, "screen", "tubing", "", rising(1900*psi, 1900*psi)).Opens = []string{"screen"}
	addAction(p, "door", "tubing", "", rising(1950*psi, 1950*psi), falling(1400*psi, pounds(greatest))).Opens = []string{"door"}
	p.Steps = []sequence.Step{{Name: "bleed", Ramps: tubingTo(2000, 1000), Expect: []string{"screen: moves", "door: moves"},
		Allow: []sequence.Flow{sequence.FlowIn, sequence.FlowOut}}}
	return p
}

// oneStays: the tubing is shut in and meets a room of 1,000 to 3,000 psi, so that
// it stands at 500 to 1,500 psi or so; then it is brought to 1,000 psi while the
// annulus stays where it is. From above, a device moves on the way.
func oneStays() *sequence.Plan {
	p := gaugeWell("room")
	p.Compartments[0], p.Compartments[1] = p.Compartments[1], p.Compartments[0]
	p.Compartments[2].Trapped = unit.Band[pressure]{Least: 1000 * psi, Nominal: 1900 * psi, Greatest: 3000 * psi}
	addPort(p, "door", "tubing", "room", false)
	addAction(p, "door", "annulus", "", rising(500*psi, 500*psi)).Opens = []string{"door"}
	addAction(p, "other", "tubing", "", rising(1050*psi, 1050*psi), falling(1025*psi, 1025*psi))
	p.Steps = []sequence.Step{
		{Name: "one"},
		{Name: "two", Shut: []string{"tubing"}, Ramps: []map[string]pressure{{"annulus": 600 * psi}}, Expect: []string{"door: moves"}},
		{Name: "three", Ramps: []map[string]pressure{{"annulus": 600 * psi, "tubing": 1000 * psi}}},
	}
	return p
}

func plainCases() []plainCase {
	var all []plainCase
	add := func(name string, p *sequence.Plan, fails sequence.Kind) { all = append(all, plainCase{name, p, fails}) }
	add("four shutters, disc of 399.9 psi", fourShutters(399.9), sequence.Unintended)
	add("four shutters, disc of 400 psi", fourShutters(400), sequence.Unintended)
	add("four shutters, disc of 400.1 psi", fourShutters(400.1), "")

	// A wall that is passed only until something opens.
	before := func(burst float64) *sequence.Plan {
		p := gaugeWell("body")
		addPort(p, "door", "tubing", "body", false)
		addAction(p, "valve", "tubing", "body", rising(2400*psi, 2572*psi)).Opens = []string{"door"}
		p.Ratings = []sequence.Rating{{Name: "wall", Inside: "tubing", Outside: "body", ToMD: 1000 * foot, Burst: exactly(burst)}}
		p.Steps = []sequence.Step{{Name: "open", Ramps: tubingTo(3000), Expect: []string{"valve: moves"}}}
		return p
	}
	add("a wall just before it is relieved", before(2571.9), sequence.RatingCross)
	add("a wall that is reached just before it is relieved", before(2572), "")

	// One late, one early: the room keeps what it had when the first shutter shut
	// it; the second shuts the other side's in.
	lateAndEarly := func(burst float64) *sequence.Plan {
		p := gaugeWell("A", "B")
		addPort(p, "a", "tubing", "A", true)
		addPort(p, "b", "tubing", "B", true)
		addAction(p, "first", "tubing", "", rising(1000*psi, 1400*psi)).Closes = []string{"a"}
		addAction(p, "second", "tubing", "", rising(2000*psi, 3150*psi)).Closes = []string{"b"}
		p.Ratings = []sequence.Rating{{Name: "wall", Inside: "B", Outside: "A", ToMD: 1000 * foot, Burst: exactly(burst)}}
		p.Steps = []sequence.Step{{Name: "up", Ramps: tubingTo(3500), Expect: []string{"first: moves", "second: moves"}}}
		return p
	}
	add("one late, one early", lateAndEarly(2149), sequence.RatingCross)
	add("one late, one early, strong enough", lateAndEarly(2150), "")
	add("the middle of a band", middleOfTheBand(), sequence.BalanceOff)
	add("a ramp in which one stays", oneStays(), sequence.Unintended)
	add("inflow that may not have begun", doorBeforeInflow(1600), sequence.BarrierLack)
	add("inflow that has begun", doorBeforeInflow(1499), "")
	return append(all, countCases()...)
}

// Every case must fail, or not, in draws as it does by hand.
func TestPlainCases(t *testing.T) {
	t.Parallel()
	for _, x := range plainCases() {
		t.Run(x.name, func(t *testing.T) {
			require.NoError(t, x.plan.Validate())
			nominal := plainWalkOf(sharp(x.plan, nominalOf), 16, nil)
			require.NoError(t, nominal.fault)
			_, r := failingDraw(x.plan, 3, 2000)
			if x.fails == "" {
				require.Nil(t, r)
				return
			}
			require.NotNil(t, r)
			require.Equal(t, x.fails, r.failures[0].Kind, "%v", r.failures)
		})
	}
}
