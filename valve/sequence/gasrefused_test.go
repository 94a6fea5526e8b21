package sequence_test

import (
	"context"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// What gas can't do yet is refused with one line that says what to write in its place, and
// with that written the plan is walked.
func TestWhatGasCantDoSaysWhatToWrite(t *testing.T) {
	any := []sequence.Flow{sequence.FlowIn, sequence.FlowOut, sequence.Circulation}
	shut := func(p *sequence.Plan) { // the cushion at 1,000 psi
		p.Steps = []sequence.Step{{Name: "cushion", Ramps: tubingTo(1000), Allow: any}, {Name: "shut", Shut: []string{"tubing"}}}
	}
	room := func(p *sequence.Plan) { // behind a door in the gas, full of brine
		c := sequence.Compartment{Name: "room", TopMD: 2500 * foot, BottomMD: 3500 * foot, Fluid: "brine", Capacity: 0.02 * unit.BarrelPerFoot}
		setTrapped(&c, 1500)
		p.Compartments = append(p.Compartments, c)
	}
	door := func(p *sequence.Plan, depth float64) {
		p.Ports = append(p.Ports, sequence.Port{Name: "door", Joins: []string{"tubing", "room"}, MD: feet(depth)})
		p.Steps = append(p.Steps, sequence.Step{Name: "open the door", Do: []sequence.Act{{Pull: "door", In: "tubing", AtMost: 5000 * psi}}, Allow: any})
	}
	for name, x := range map[string]struct {
		plan func(p *sequence.Plan)
		says string
		mend func(p *sequence.Plan)
	}{
		"it passes through a port": {func(p *sequence.Plan) {
			shut(p)
			p.Ports[0].Open, p.Ports[0].MD = true, 4100*foot
			p.Steps = append(p.Steps, sequence.Step{Name: "bleed", Ramps: []map[string]pressure{{"annulus": 0}}, Allow: any})
			p.Steps[0].Ramps = []map[string]pressure{{"tubing": 1800 * psi, "annulus": 300 * psi}}
		}, "hold more on what presses on it, or bleed some of it off before", func(p *sequence.Plan) { p.Steps[2].Ramps = []map[string]pressure{{"annulus": 250 * psi}} }},
		"it is squeezed": {func(p *sequence.Plan) {
			shut(p)
			p.Steps = append(p.Steps, sequence.Step{Name: "squeeze", PressureChange: map[string]pressure{"tubing": 100 * psi}})
		}, "heat it by the step's temperature", func(p *sequence.Plan) { p.Steps[2] = sequence.Step{Name: "look"} }},
		"it is displaced while it is shut in": {func(p *sequence.Plan) {
			shut(p)
			p.Steps = append(p.Steps, sequence.Step{Name: "swap", Displace: []sequence.Displacement{{Compartment: "tubing", Fluid: "brine", ToMD: 4000 * foot, Up: true}}})
		}, "a ramp on it in a step before opens it", func(p *sequence.Plan) {
			p.Steps[2].Name, p.Steps[1] = "swap", sequence.Step{Name: "open", Ramps: tubingTo(1000), Allow: any}
			p.Steps[2].Allow = any
		}},
		"it meets what is trapped": {func(p *sequence.Plan) {
			shut(p)
			room(p)
			p.Compartments[2].TopMD, p.Compartments[2].BottomMD = 5000*foot, 6000*foot
			door(p, 5500)
		}, "open one of them at surface with a ramp before", func(p *sequence.Plan) {
			p.Steps[1] = sequence.Step{Name: "open", Ramps: tubingTo(1000), Allow: any}
		}},
		"it would stand under liquid": {func(p *sequence.Plan) {
			p.Steps = []sequence.Step{{Name: "swap", Displace: []sequence.Displacement{{Compartment: "annulus", Fluid: "nitrogen", FromMD: 3000 * foot, ToMD: 4000 * foot}}, Allow: any}}
		}, "begin where the gas above it ends, or at the top", func(p *sequence.Plan) { p.Steps[0].Displace[0].FromMD = 0 }},
		"liquid would stand on it": {func(p *sequence.Plan) {
			p.Steps = []sequence.Step{{Name: "swap", Displace: []sequence.Displacement{{Compartment: "tubing", Fluid: "brine", ToMD: 4000 * foot}}, Allow: any}}
		}, `write "up": true`, func(p *sequence.Plan) { p.Steps[0].Displace[0].Up = true }},
	} {
		t.Run(name, func(t *testing.T) {
			p := cushionWell()
			x.plan(p)
			_, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
			require.ErrorContains(t, err, x.says)
			x.mend(p)
			_, err = sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
			require.NoError(t, err)
		})
	}
}
