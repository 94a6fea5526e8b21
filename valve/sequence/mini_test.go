package sequence_test

import (
	"context"
	"os"
	"slices"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

const (
	psi  = unit.PSI
	foot = unit.Foot
	ppg  = unit.PoundPerGallon
)

// mini is the smallest well that shows something: tubing and annulus down to
// 9,000 ft and one device between them.
//
// The figures of device and fluids are those of a setting calculation that can
// be done by hand: six screws of 4,500 lbf on 8 in² give 3,375 psi, and tubing
// 0.7 lb/gal heavier than the annulus takes 327.6 psi off at 9,000 ft.
func mini() *sequence.Plan {
	return &sequence.Plan{
		Name: "mini",
		Well: sequence.Well{MD: 9000 * foot},
		Fluids: []sequence.Fluid{
			{Name: "tubing fluid", Density: unit.Exactly(9.5 * ppg)},
			{Name: "annulus fluid", Density: unit.Exactly(8.8 * ppg)},
		},
		Compartments: []sequence.Compartment{
			{Name: "tubing", BottomMD: 9000 * foot, Fluid: "tubing fluid", Surface: true},
			{Name: "annulus", BottomMD: 9000 * foot, Fluid: "annulus fluid", Surface: true},
		},
		Devices: []sequence.Device{{Name: "packer", MD: 9000 * foot, Actions: []sequence.Action{{
			Name: "sets", Inside: "tubing", Outside: "annulus",
			Triggers: []sequence.Trigger{{Pins: &sequence.Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05, Area: 8 * unit.SquareInch}}},
		}}}},
		Steps: []sequence.Step{{
			Name: "set", Ramps: []map[string]unit.Pressure{{"tubing": 3500 * psi}, {"tubing": 0}}, Expect: []string{"packer: sets"},
		}},
	}
}

// device adds a device between tubing and annulus.
func device(p *sequence.Plan, name string, depth unit.Length, triggers ...sequence.Trigger) *sequence.Action {
	p.Devices = append(p.Devices, sequence.Device{Name: name, MD: depth, Actions: []sequence.Action{{
		Name: "moves", Inside: "tubing", Outside: "annulus", Triggers: triggers}}})
	return &p.Devices[len(p.Devices)-1].Actions[0]
}

func rising(least, greatest unit.Pressure) sequence.Trigger {
	return sequence.Trigger{Threshold: unit.Band[unit.Pressure]{Least: least, Nominal: (least + greatest) / 2, Greatest: greatest}}
}

func check(t *testing.T, p *sequence.Plan) *sequence.Programme {
	t.Helper()
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	require.NoError(t, err)
	return r
}

// kinds of findings that don't follow from others, with step and device.
func roots(r *sequence.Programme) []string {
	var all []string
	for _, f := range r.Findings {
		if f.Follows == "" {
			all = append(all, string(f.Kind)+" | "+f.Step+" | "+f.Device)
		}
	}
	return all
}

func eventOf(t *testing.T, s sequence.StepResult, action string) sequence.Event {
	t.Helper()
	i := slices.IndexFunc(s.Events, func(e sequence.Event) bool { return e.Action == action && e.Partial == "" })
	require.GreaterOrEqual(t, i, 0, "%s did not happen: %+v", action, s.Events)
	return s.Events[i]
}

func triggerOf(t *testing.T, s sequence.StepResult, action string) sequence.TriggerResult {
	t.Helper()
	i := slices.IndexFunc(s.Triggers, func(x sequence.TriggerResult) bool { return x.Action == action })
	require.GreaterOrEqual(t, i, 0, "%s was not armed", action)
	return s.Triggers[i]
}

func demo(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("../../examples/installation/plans/demo.json")
	require.NoError(t, err)
	return data
}

func demoPlan(t testing.TB) *sequence.Plan {
	t.Helper()
	p, err := sequence.Read(demo(t))
	require.NoError(t, err)
	return p
}

// inPsi is a level that is a pressure.
func inPsi(t testing.TB, l sequence.Level) float64 {
	t.Helper()
	p, ok := l.Pressure()
	require.True(t, ok, "%v is a force", l)
	return p.In(psi)
}

// inPounds is a level that is a force.
func inPounds(t testing.TB, l sequence.Level) float64 {
	t.Helper()
	f, ok := l.Force()
	require.True(t, ok, "%v is a pressure", l)
	return f.In(unit.PoundForce)
}

// windowOf is the window of what is held on a compartment in a ramp.
func windowOf(t testing.TB, s sequence.StepResult, compartment string, ramp int) sequence.Window {
	t.Helper()
	i := slices.IndexFunc(s.Windows, func(w sequence.Window) bool {
		return w.Ramp == ramp && (w.Compartment == compartment || slices.Contains(w.Together, compartment))
	})
	require.GreaterOrEqual(t, i, 0, "%s has no window of ramp %d on %s", s.Name, ramp, compartment)
	return s.Windows[i]
}

func stepNamed(t testing.TB, r *sequence.Programme, name string) *sequence.StepResult {
	t.Helper()
	for i := range r.Steps {
		if r.Steps[i].Name == name {
			return &r.Steps[i]
		}
	}
	t.Fatalf("no step %q", name)
	return nil
}
