package sequence_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

type (
	mended   = sequence.Plan // a plan with something wrong in it
	breaking struct {
		put  func(p *mended)
		says string // with the path
	}
)

// refuses puts each fault into a plan of its own and looks for its words.
func refuses(t *testing.T, sound func() *sequence.Plan, all []breaking) {
	t.Helper()
	require.NoError(t, sound().Validate())
	for _, x := range all {
		p := sound()
		x.put(p)
		assert.ErrorContains(t, p.Validate(), x.says)
	}
}

// Devices: what they feel, what they do, and what goes together.
func TestDevicesThatAreRefused(t *testing.T) {
	const at = "devices[0].actions[0]"
	first := func(p *mended) *sequence.Action { return &p.Devices[0].Actions[0] }
	axial := func(p *mended) *sequence.Action { return &p.Devices[1].Actions[0] }
	felt := sequence.Condition{Inside: "tubing", Outside: "annulus", Triggers: []sequence.Trigger{{Threshold: unit.Exactly(1000 * psi)}}}
	areas := func(a *sequence.Action, x sequence.Areas, t ...sequence.Trigger) {
		*a = sequence.Action{Name: a.Name, Areas: &x, Triggers: t}
	}
	on := []sequence.Pressed{{Compartment: "tubing", Area: unit.SquareInch}, {Compartment: "annulus", Area: -unit.SquareInch}}
	refuses(t, landed, []breaking{
		{func(p *mended) { p.Devices[0].Name = "a: b" }, `devices[0].name: "a: b" holds a colon with a space, which parts device from action`},
		{func(p *mended) { p.Devices[1].Name = p.Devices[0].Name }, `devices[1].name: "packer" stands twice; names must differ`},
		{func(p *mended) { p.Devices[0].Actions = nil }, "devices[0].actions: is empty; a device does at least one thing"},
		{func(p *mended) { p.Devices[0].Kind = &sequence.Model{} }, "devices[0].kind: wants just one of sleeve, isolation valve and safety valve, and no actions beside it"},
		{func(p *mended) { first(p).All, first(p).Any = []sequence.Condition{felt}, []sequence.Condition{felt} }, at + ": has both all and any; just one of them says what it waits for"},
		{func(p *mended) { first(p).All = []sequence.Condition{felt} }, at + ": lists conditions: inside, outside, chamber, areas, axial and triggers have no place beside them"},
		{func(p *mended) { axial(p).Areas = &sequence.Areas{On: on} }, "devices[1].actions[0].areas: have no place in an axial action"},
		{func(p *mended) { first(p).Areas = &sequence.Areas{On: on} }, at + ": has areas: inside, outside and chamber have no place beside them"},
		{func(p *mended) { first(p).Outside = "" }, at + ": wants either an outside compartment or a chamber"},
		{func(p *mended) { first(p).Triggers = nil }, at + ".triggers: is empty; an action wants at least one"},
		{func(p *mended) {
			areas(first(p), sequence.Areas{On: on}, sequence.Trigger{Threshold: unit.Exactly(psi)})
		}, at + ".triggers[0]: belongs to areas: spring and friction make its threshold; direction and count alone have a place in it"},
		{func(p *mended) { areas(first(p), sequence.Areas{On: on}, sequence.Trigger{Count: -1}) }, at + ".triggers[0].count: is -1; must be from 0 to"},
		{func(p *mended) { areas(first(p), sequence.Areas{On: on}, sequence.Trigger{Count: 2}) }, at + ".triggers[0].count: is 2, but the friction may be nothing: then it comes back where it went, and nobody knows how often it counts"},
		{func(p *mended) { areas(first(p), sequence.Areas{}, sequence.Trigger{}) }, at + ".areas.on: is empty; it lists compartments with the areas on which they push"},
		{func(p *mended) {
			areas(first(p), sequence.Areas{On: []sequence.Pressed{on[0], on[0]}}, sequence.Trigger{})
		}, at + `.areas.on[1].compartment: "tubing" stands twice; add its areas up`},
		{func(p *mended) {
			areas(first(p), sequence.Areas{On: []sequence.Pressed{on[0], {Compartment: "annulus"}}}, sequence.Trigger{})
		}, at + ".areas.on[1].area: is 0 in2; must be above zero, or below where it pushes back"},
		{func(p *mended) {
			areas(first(p), sequence.Areas{On: []sequence.Pressed{on[0], {Compartment: "annulus", Area: -10001 * unit.SquareInch}}}, sequence.Trigger{})
		}, at + ".areas.on[1].area: is -10001 in2; must not be more than ten thousand times the first area"},
		{func(p *mended) { axial(p).Inside = "tubing" }, "devices[1].actions[0]: is axial: inside, outside and chamber have no place in it"},
		{func(p *mended) { axial(p).Seal = 0 }, "devices[1].actions[0].seal: is missing: the diameter at which the joint seals, such as 4.9 in; its pins feel the effective force and the pressure inside less that outside on that area"},
		{func(p *mended) { first(p).Seal = 3 * unit.Inch }, at + ".seal: belongs to an axial action"},
		{func(p *mended) { first(p).Unseats = true }, at + ".axial: is missing: what unseats and what latches is felt in the string"},
		{func(p *mended) { axial(p).Unseats = true }, "devices[1].actions[0]: has to unseat what holds the string at 9000 ft, or latch to a joint that another action of \"release\" parts, and without a seal"},
		{func(p *mended) { axial(p).Unseats, axial(p).Triggers[0].Direction = true, valve.Falling }, "devices[1].actions[0].triggers: must be rising where it unseats, and falling and of negative tension where it latches, such as -10000 lbf"},
		{func(p *mended) { first(p).Arms = []string{"sets"} }, at + `.arms[0]: "sets" arms itself and would happen again at once, without end; another action has to arm it`},
		{func(p *mended) { first(p).Arms, first(p).Disarms = []string{"x"}, []string{"x"} }, at + `.disarms[0]: "x" is armed by it, too`},
		{func(p *mended) { first(p).Bites = "sets" }, at + ".bites_from: belongs to an action that holds, and names another one of its device"},
		{func(p *mended) { first(p).Triggers[0].Threshold = unit.Exactly(psi) }, at + ".triggers[0]: has more than one of threshold, tension and pins"},
		{func(p *mended) { axial(p).Triggers[0] = sequence.Trigger{Threshold: unit.Exactly(psi)} }, "devices[1].actions[0].triggers[0].threshold: is a pressure; an axial action wants tension or pins"},
		{func(p *mended) { axial(p).Triggers[0] = sequence.Trigger{} }, "devices[1].actions[0].triggers[0]: wants tension or pins"},
		{func(p *mended) { first(p).Triggers[0] = sequence.Trigger{Tension: unit.Exactly(unit.PoundForce)} }, at + ".triggers[0].tension: belongs to an axial action"},
		{func(p *mended) {
			axial(p).Triggers[0] = sequence.Trigger{Pins: &sequence.Pins{Count: 1, Strength: 4500 * unit.PoundForce, Area: unit.SquareInch}}
		}, "devices[1].actions[0].triggers[0].pins.area: has no place in an axial action"},
		{func(p *mended) { first(p).DelayMost = "5m" }, at + ".delay_at_most: stands without a delay, the least that it may take"},
		{func(p *mended) { first(p).Delay, first(p).DelayMost = "5m", "4m" }, at + `.delay_at_most: is "4m"; must not be less than the delay of "5m"`},
		{func(p *mended) { axial(p).Delay = "5m" }, "devices[1].actions[0].delay: belongs to an action of one trigger that counts once and feels pressure"},
	})
}

// Ratings, barriers and rules.
func TestRatingsBarriersAndRulesThatAreRefused(t *testing.T) {
	rating := func(r sequence.Rating) func(*mended) {
		return func(p *mended) {
			if r.Inside == "" {
				r.Inside = "tubing"
			}
			if r.ToMD == 0 {
				r.ToMD = 9000 * foot
			}
			r.Name = "pipe"
			p.Ratings = append(p.Ratings, r)
		}
	}
	strong, pipe := unit.Exactly(9000*psi), &sequence.Pipe{Size: 7 * unit.Inch, Weight: 29 * unit.PoundPerFoot, Grade: "L80"}
	sound := func() *sequence.Plan {
		p := landed()
		rating(sequence.Rating{Outside: "annulus", Burst: strong})(p)
		p.Ratings[0].Name = "sound"
		return p
	}
	refuses(t, sound, []breaking{
		{rating(sequence.Rating{Outside: "annulus", Burst: strong, FromMD: 100 * foot, ToMD: 50 * foot}), "ratings[1].to: is 50 ft; must not be above from at 100 ft"},
		{rating(sequence.Rating{Burst: strong}), "ratings[1]: wants either an outside compartment or a background fluid"},
		{rating(sequence.Rating{Outside: "annulus", Burst: strong, Pipe: pipe}), "ratings[1]: wants either a pipe or burst and collapse"},
		{rating(sequence.Rating{Outside: "annulus"}), "ratings[1]: wants a pipe, burst, collapse or both"},
		{rating(sequence.Rating{Outside: "annulus", Burst: strong, Factor: 0.5}), "ratings[1].factor: is 0.5; a design factor is from 1 to 10"},
		{rating(sequence.Rating{Outside: "annulus", Pipe: &sequence.Pipe{Size: 7 * unit.Inch, Bore: 6 * unit.Inch, Grade: "L80", Yield: 80000 * psi}}), "ratings[1].pipe: has a grade and a yield strength; one of them will do"},
		{rating(sequence.Rating{Outside: "annulus", Pipe: &sequence.Pipe{Size: 7 * unit.Inch, Bore: 6 * unit.Inch}}), "ratings[1].pipe: yield is 0 psi; a pipe wants a grade or a yield strength"},
		{func(p *mended) {
			p.Well.Temperatures[sequence.Undisturbed] = p.Well.Temperatures["cooled"]
			p.Fluids = append(p.Fluids, sequence.Fluid{Name: "air", Kind: sequence.Nitrogen})
			rating(sequence.Rating{Background: "air", Burst: strong})(p)
		}, "ratings[1].background: \"air\" is a gas; behind a pipe, from surface down, stands a liquid: make a compartment of gas"},
		{func(p *mended) {
			p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(4000 * psi)}}
			p.Barriers = []sequence.Barrier{{Name: "b", Formation: "sand", Port: "bypass", Column: "below"}}
		}, "barriers[0]: has more than one of port, action and column"},
		{func(p *mended) { p.Rules.Barriers = 1 }, "rules.barriers: is 1; must be from 0 to the 0 barriers of the plan"},
		{func(p *mended) { p.Rules.Triaxial = 11 }, "rules.triaxial: is 11; a design factor is from 1 to 10"},
	})
}

// Fluids, compartments, ports, steps, tests.
func TestPartsOfAPlanThatAreRefused(t *testing.T) {
	step := func(p *mended) *sequence.Step { return &p.Steps[0] }
	test := func(x sequence.Test) func(*mended) {
		return func(p *mended) {
			p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(4000 * psi)}}
			p.Barriers = []sequence.Barrier{{Name: "packer", Formation: "sand", Action: "packer: sets"}}
			x.Barrier, x.Inside, x.Outside, x.MD = "packer", "tubing", "annulus", 9000*foot
			if x.Side == "" {
				x.Side = "above"
			}
			step(p).Tests = []sequence.Test{x}
		}
	}
	warms := map[string]unit.Band[unit.TemperatureDifference]{"below": unit.Exactly(unit.TemperatureDifference(1))}
	refuses(t, landed, []breaking{
		{func(p *mended) {
			p.Fluids[0] = sequence.Fluid{Name: "w", Kind: sequence.FreshWater, Density: unit.Exactly(8.3 * ppg)}
		}, "fluids[0]: fresh water brings its own density and expansion; leave them out"},
		{func(p *mended) { p.Fluids[0].Gravity = 0.6 }, `fluids[0]: gravity and contents belong to natural gas, "gas"`},
		{func(p *mended) { p.Fluids[0].Kind, p.Well.Temperatures = sequence.ClearBrine, nil }, `fluids[0].kind: "brine" feels temperature, but well.temperatures has no "undisturbed"`},
		{func(p *mended) {
			p.Fluids[0] = sequence.Fluid{Name: "n", Kind: sequence.Nitrogen, Density: unit.Exactly(ppg)}
		}, "fluids[0]: a gas brings its own density, expansion and compression; leave them out"},
		{func(p *mended) { p.Fluids[0] = sequence.Fluid{Name: "n", Kind: sequence.Nitrogen, Gravity: 0.6} }, `fluids[0]: "nitrogen" is pure; gravity and contents belong to natural gas, "gas"`},
		{func(p *mended) { p.Fluids[0] = sequence.Fluid{Name: "n", Kind: sequence.NaturalGas} }, "fluids[0].gravity: is missing; natural gas wants its gravity to air, such as 0.65"},
		{func(p *mended) { p.Fluids[0].Viscosity, p.Fluids[0].Index = 1e-3, 0.5 }, "stands beside a consistency or a flow index; give a viscosity (with a yield point), or a consistency with its flow index"},
		{func(p *mended) { p.Compartments[2].Trapped, p.Compartments[2].Surface = unit.Exactly(100*psi), true }, "compartments[2]: has more than one of surface, formation and trapped; at most one thing fixes its pressure"},
		{func(p *mended) { p.Ports[0].Joins = []string{"below", "below"} }, `ports[0].joins: is ["below" "below"]; a port joins two different compartments`},
		{func(p *mended) { p.Steps = nil }, "steps: is empty; a programme has at least one"},
		{func(p *mended) {
			step(p).Displace = []sequence.Displacement{{Compartment: "tubing", Fluid: "tubing fluid", FromMD: 50 * foot, ToMD: 50 * foot}}
		}, "steps[0].displace[0].to: is 50 ft; must be below from at 50 ft"},
		{func(p *mended) { step(p).Ramps[1] = nil }, "steps[0].ramps[1]: is empty; it names surface pressures by compartment"},
		{func(p *mended) { step(p).Ramps[1]["tubing"] = unit.Pressure(math.Inf(1)) }, "steps[0].ramps[1].tubing: is "},
		{func(p *mended) {
			step(p).PressureChange, step(p).VolumeChange = map[string]unit.Pressure{"below": psi}, map[string]unit.Volume{"below": unit.Gallon}
		}, `steps[0].volume_change.below: "below" stands in pressure_change, too; one of them will do`},
		{test(sequence.Test{Hold: "soon"}), `steps[0].tests[0].hold: is "soon"; write a time such as 15 min or 1 h 30 min`},
		{test(sequence.Test{Decline: 1}), "steps[0].tests[0].decline: is 1; as a share it must be from 0 to below 1"},
		{test(sequence.Test{Warms: warms, Moment: sequence.AtEnd}), "steps[0].tests[0].warms.below: stands without hold: how long the test is held"},
		{test(sequence.Test{Warms: warms, Hold: "15m"}), `steps[0].tests[0].warms.below: stands without at: "start" or "end", where in the step it is held`},
		{test(sequence.Test{Side: "beside"}), `steps[0].tests[0].side: is "beside"; must be below or above`},
		{func(p *mended) {
			test(sequence.Test{Moment: sequence.AtPeak})(p)
			step(p).Ramps = nil
		}, `steps[0].tests[0].at: is "peak", but the step has no ramps`},
		{func(p *mended) { step(p).Do = []sequence.Act{{Open: "bypass", Close: "bypass"}} }, "steps[0].do[0]: does 2 things; must be just one of drop, pull, shift, turn, open, close, vent, drain and fill"},
		{func(p *mended) { p.String.Block = -1 }, "string.block: is -1 N; must be from 0 lbf to "},
		{func(p *mended) { p.String.Drag = unit.Exactly(-unit.PoundForce) }, "string.drag: is "},
		{func(p *mended) {
			p.String.Friction, p.String.Drag = []sequence.Friction{{To: 9000 * foot, Factor: unit.Exactly(sequence.Factor(0.3))}}, unit.Exactly(1000*unit.PoundForce)
		}, `stands beside "drag"; the drag follows from the friction factors: leave one of them out`},
		{func(p *mended) {
			s := &p.String.Sections[0]
			s.Joint, s.Connection = 100000*unit.PoundForce, &sequence.Connection{Tension: 100000 * unit.PoundForce}
		}, `stands beside "joint"; one of them says what the connections bear: write it as connection.tension`},
		{func(p *mended) { p.String, p.OuterString = nil, p.String }, `outer_string: stands without "string", the one in it; where there is one string alone, it is "string"`},
	})
	refuses(t, landed, []breaking{
		{func(p *mended) { p.Well.Temperatures["cold"] = nil }, "well.temperatures.cold: has no points"},
		{func(p *mended) {
			p.Well.Temperatures["cold"] = []sequence.MarkedTVD{{TVD: 5 * foot}, {TVD: 5 * foot}}
		}, "well.temperatures.cold[1].tvd: is 5 ft; must be below the 5 ft before it"},
		{func(p *mended) {
			p.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{"hot": unit.Exactly(unit.TemperatureDifference(1))}
		}, `well.temperature_errors.hot: no temperature "hot" in well.temperatures`},
		{func(p *mended) {
			p.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{"cooled": unit.Exactly(unit.TemperatureDifference(1e4))}
		}, "well.temperature_errors.cooled: runs from "},
		{func(p *mended) { p.Well.Path = []sequence.Station{{}, {}} }, "well.path[1].md: is 0 ft; must be below the 0 ft before it"},
		{func(p *mended) { p.Well.Path = []sequence.Station{{}, {MD: 8000 * foot}} }, "well.path: ends at 8000 ft; must reach the well's depth of 9000 ft"},
		{func(p *mended) { p.Fluids[0].Expansion = -1 }, "fluids[0].expansion: is "},
		{func(p *mended) { p.Fluids[0].Kind = "honey" }, `fluids[0].kind: is "honey"; there are "constant", "brine", "water", and the gases "nitrogen", "methane" and "gas"`},
		{func(p *mended) {
			p.Fluids[0].Kind, p.Fluids[0].Density, p.Fluids[0].Gravity = sequence.NaturalGas, unit.Band[unit.Density]{}, 9
		}, "fluids[0]: "},
		{func(p *mended) {
			p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(4000 * psi), Inflow: &sequence.Inflow{Index: unit.BarrelPerDayPSI, WaterCut: 2}}}
		}, "formations[0].inflow.water_cut: is 2; must be from 0 to 1"},
		{func(p *mended) {
			p.Formations = []sequence.Formation{{Name: "sand", MD: 9000 * foot, Pressure: unit.Exactly(4000 * psi)}}
			p.Compartments[2].Formation = "sand"
			p.Compartments = append(p.Compartments, p.Compartments[2])
			p.Compartments[3].Name = "too"
		}, `compartments[3].formation: "sand" is behind compartment "below" already`},
		{func(p *mended) { step(p).Do = []sequence.Act{{Vent: "tubing", AtMost: -psi}} }, "steps[0].do[0].at_most: is -1 psi; must not be negative"},
		{func(p *mended) { step(p).Do = []sequence.Act{{Shift: "packer: sets", Through: []string{"door"}}} }, `steps[0].do[0].through[0]: no port "door"`},
		{func(p *mended) { p.Holding, p.String = &sequence.Holding{}, nil }, "holding: needs the plan's string"},
		{func(p *mended) { p.String.Sections = nil }, "string.sections: is empty"},
		{func(p *mended) { p.String.Top = "ajar" }, `string.top: is "ajar"; there are "open" and "closed"`},
		{func(p *mended) {
			p.String.Seals = []sequence.Seal{{Name: "low", MD: 9000 * foot, Bore: 3.5 * unit.Inch}}
		}, `string.seals: stand beside "seal_bore", "up" or "down"; those are of the one seal at the lo`},
		{func(p *mended) { p.String.Tools = []sequence.Tool{{}} }, "string.tools[0].name: is missing"},
		{func(p *mended) { p.String.Sections[0].Joint = 1e-3 }, "; must be from 1 lbf to "},
		{func(p *mended) {
			p.String.Drag, p.String.Friction = unit.Band[unit.Force]{}, []sequence.Friction{{To: 5000 * foot}, {To: 5000 * foot}}
		}, "string.friction[1].to: is 5000 ft; must be below 5000 ft"},
		{func(p *mended) {
			p.Begin = &sequence.Begin{May: []string{"packer: sets", "a", "b", "c", "d", "e", "f", "g", "h"}}
		}, "begin.may_have_happened: holds 9 actions; no more than 8 can be proved in all cases"},
		{func(p *mended) {
			p.Begin = &sequence.Begin{Levels: map[string]*sequence.StatedDepth{"cellar": {}}}
		}, `begin.levels.cellar: no compartment "cellar"`},
		{func(p *mended) {
			p.Begin = &sequence.Begin{Trapped: map[string]*sequence.Stated{"below": {With: []sequence.Lean{{Quantity: "x", Change: unit.Pressure(math.Inf(1))}}}}}
		}, "begin.trapped.below.with[0].change: is "},
		{func(p *mended) {
			p.Steps[0].Otherwise = &sequence.Otherwise{}
			p.Steps[0].Expect = nil
		}, "belongs to a step that expects something"},
		{test(sequence.Test{Hold: "15m", Moment: sequence.AtEnd, Warms: map[string]unit.Band[unit.TemperatureDifference]{"below": unit.Exactly(unit.TemperatureDifference(1e4))}}), "steps[0].tests[0].warms.below: is "},
		{func(p *mended) { step(p).VolumeChange = map[string]unit.Volume{"below": unit.Volume(math.Inf(1))} }, "steps[0].volume_change.below: is "},
	})
	refuses(t, producer, []breaking{
		{func(p *mended) {
			p.Steps[0].Produce.Want = map[string]sequence.RateBetween{"sand": {Least: 2 * unit.BarrelPerDay, Greatest: unit.BarrelPerDay}}
		}, "steps[0].produce.want.sand: runs from 2 bbl/d to 1 bbl/d; least must not be above greatest"},
		{func(p *mended) { p.Steps[0].Produce.Viscosity = unit.Viscosity(math.Inf(1)) }, "steps[0].produce.viscosity: is "},
	})
	require.ErrorContains(t, (*sequence.Plan)(nil).Validate(), "sequence: there is no plan (nil)")
}

// What is done by hand has to come to where it acts.
func TestActsThatDoNotReachAreRefused(t *testing.T) {
	refuses(t, mini, []breaking{
		{func(p *mended) { p.Steps[0].Do = []sequence.Act{{Shift: "packer: sets"}} }, "steps[0].do[0].in: is missing: the compartment in which it is dropped or run from surface"},
		{func(p *mended) {
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "short", BottomMD: 1000 * foot, Fluid: "tubing fluid", Surface: true})
			p.Steps[0].Do = []sequence.Act{{Shift: "packer: sets", In: "short"}}
		}, `steps[0].do[0].through: it stands in "short", which reaches from 0 ft to 1000 ft, and acts at 9000 ft: list the ports on its way, from the top down`},
	})
}

// A stated beginning.
func TestPartsOfABeginningThatAreRefused(t *testing.T) {
	begin := func(b sequence.Begin) func(*mended) { return func(p *mended) { p.Begin = &b } }
	row := func(r ...sequence.RowAt) func(*mended) {
		return begin(sequence.Begin{Progress: map[string][]sequence.RowAt{"packer: sets": r}})
	}
	at := func(least, greatest unit.Length) map[string]*sequence.StatedDepth {
		return map[string]*sequence.StatedDepth{"tubing": {Depth: unit.Band[unit.Length]{Least: least, Nominal: least, Greatest: greatest}}}
	}
	refuses(t, mini, []breaking{
		{begin(sequence.Begin{Happened: []string{"packer: sets", "packer: sets"}}), `begin.happened[1]: "packer: sets" stands twice; its last time alone counts`},
		{begin(sequence.Begin{Applied: map[string]unit.Pressure{"tubing": 0}, Standing: map[string]*sequence.Stated{"tubing": {}}}), "begin.standing.tubing: stands beside applied or shut_in; one of them"},
		{begin(sequence.Begin{Trapped: map[string]*sequence.Stated{"tubing": nil}}), "begin.trapped.tubing: is null; write its pressure"},
		{func(p *mended) {
			a := &p.Devices[0].Actions[0]
			a.All = []sequence.Condition{{Inside: a.Inside, Outside: a.Outside, Triggers: a.Triggers}, {Inside: a.Outside, Outside: a.Inside, Triggers: a.Triggers}}
			a.Inside, a.Outside, a.Triggers = "", "", nil
			row(sequence.RowAt{})(p)
		}, "begin.progress.packer: sets: has several conditions: how far they have come can't be stated"},
		{row(), "begin.progress.packer: sets: is empty; leave it out where the row is at its beginning"},
		{row(sequence.RowAt{Met: 1}), "begin.progress.packer: sets[0].met: is 1; must be from 0 to below the 1 triggers of the row"},
		{row(sequence.RowAt{Counted: 1}), "begin.progress.packer: sets[0].counted: is 1; must be from 0 to below the 1 times that the trigger wants"},
		{row(sequence.RowAt{Rearms: true}), "begin.progress.packer: sets[0].rearms: is true, but nothing has been counted"},
		{row(sequence.RowAt{Stood: "2m"}), "begin.progress.packer: sets[0].stood: belongs to an action with a delay"},
		{func(p *mended) {
			p.Devices[0].Actions[0].Delay = "5m"
			row(sequence.RowAt{Stood: "2m"}, sequence.RowAt{})(p)
		}, "begin.progress.packer: sets[0].stood: wants one entry: from stood to stood_at_most is all that it may be"},
		{func(p *mended) {
			p.Devices[0].Actions[0].Delay = "5m"
			row(sequence.RowAt{Stood: "2m", StoodMost: "1m"})(p)
		}, `begin.progress.packer: sets[0].stood_at_most: is "1m"; must be no less than stood, "2m"`},
		{begin(sequence.Begin{Levels: map[string]*sequence.StatedDepth{"tubing": nil}}), "begin.levels.tubing: is null; write its depth"},
		{begin(sequence.Begin{Levels: map[string]*sequence.StatedDepth{"tubing": {Depth: unit.Exactly(10 * foot), Lacks: &sequence.Stated{}}}}), "begin.levels.tubing.lacks: belongs to a column that has fallen, in place of a depth"},
		{begin(sequence.Begin{Levels: at(9000*foot, 9000*foot)}), "begin.levels.tubing.depth: is 9000 ft; must be from 0 ft to above 9000 ft"},
		{func(p *mended) {
			p.Fluids = append(p.Fluids, sequence.Fluid{Name: "air", Kind: sequence.Nitrogen})
			p.Well.Temperatures = landed().Well.Temperatures
			p.Compartments[0].Fluid = "air"
			begin(sequence.Begin{Levels: at(100*foot, 100*foot)})(p)
		}, "begin.levels.tubing.depth: is 100 ft; there gas ends, so that a liquid must stand under it"},
		{func(p *mended) {
			p.Ports = []sequence.Port{{Name: "way", Joins: []string{"a", "b"}, MD: 8000 * foot, Open: true}}
			for _, name := range []string{"a", "b"} {
				p.Compartments = append(p.Compartments, sequence.Compartment{Name: name, TopMD: 7000 * foot, BottomMD: 9000 * foot, Fluid: "annulus fluid"})
			}
			begin(sequence.Begin{Trapped: map[string]*sequence.Stated{"a": {Pressure: unit.Exactly(3500 * psi)}, "b": {Pressure: unit.Exactly(3500 * psi)}}})(p)
		}, "a, b are joined: state the pressure of one of them"},
	})
	refuses(t, landed, []breaking{
		{begin(sequence.Begin{String: []sequence.StringMoment{{Does: "packer: sets"}}}), `begin.string[0].does: is "packer: sets"; the string lands first, and once: then come the actions that held or released it`},
	})
}
