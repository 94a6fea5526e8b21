package sequence_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// limitPlan reads one of the small plans that each show one limit.
func limitPlan(t testing.TB, name string) *sequence.Plan {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("../../examples/installation/plans/limits", name+".json"))
	require.NoError(t, err)
	p, err := sequence.Read(data)
	require.NoError(t, err, name)
	return p
}

// chosen is the value that a witness gives a quantity, in psi.
func chosen(t testing.TB, f sequence.Finding, path string) float64 {
	t.Helper()
	for _, c := range f.Witness {
		if strings.HasPrefix(c.Path, path) {
			var p unit.Pressure
			require.NoError(t, p.UnmarshalText([]byte(c.Exact)), c.Exact)
			return p.In(psi)
		}
	}
	t.Fatalf("the witness says nothing of %s: %+v", path, f.Witness)
	return 0
}

// Each of these was called right by the walk of a few worlds. The first finding
// names the step, the item, the numbers, the values with which it happens, and
// what would mend it.
func TestPlansThatALimitRefutes(t *testing.T) {
	for name, c := range map[string]struct{ first, numbers string }{
		// both with every value nominal
		"body-opens-past-its-rating": {"rating passed | open the valve | body", "2572 psi more inside"},
		"disc-bursts-past-its-seat":  {"rating passed | burst the disc | seat", "4000 psi more inside"},
		// 2,897 + 9.5·4/77·8,800 − 6,000
		"formation-sees-it-until-the-valve-shuts": {"fracture pressure passed | shut the valve | sand", "1239.9 psi too much"},
		"joint-breaks-before-the-release":         {"string overloaded | pull | string", ""},
		// 3,200 − 1,050
		"one-late-one-early":                   {"rating passed | shut both | wall", "2150 psi more inside"},
		"relief-opens-in-the-middle-of-a-band": {"unintended event | test the annulus | relief: opens", ""},
		"two-late-two-early":                   {"unintended event | uncover the disc | disc: bursts", ""},
		"first-early-second-late":              {"rating passed | shut the chamber | chamber", "2200 psi more inside"},
		"rearming-in-doubt":                    {"intended event missing | count | counter: opens", ""},
		"opens-closes-opens":                   {"unintended event | cycle | valve: opens", "it feels 1000 psi"},
		"closes-after-it-opens":                {"unintended event | cycle | valve: opens", ""},
		"two-surface-pressures":                {"unintended event | circulate | disc: bursts", ""},
		"swap-peaks-on-its-way":                {"unintended event | displace the tubing | valve: opens", ""},
		"column-falls-when-shut-in":            {"column falls | shut in | tubing", "-1441.6 psi"},
	} {
		t.Run(name, func(t *testing.T) {
			p := limitPlan(t, name)
			r := verdict(t, p)
			require.Equal(t, sequence.Refuted, r.Verdict)
			f := r.Findings[0]
			require.Equal(t, c.first, string(f.Kind)+" | "+f.Step+" | "+f.Device)
			require.Contains(t, f.Numbers, c.numbers)
			require.NotEmpty(t, f.Assumed)
			require.NotEmpty(t, f.Cure)
			require.True(t, f.Decided)
			// The same plan with all values as the witness has them fails in the same way.
			q, err := p.At(f.Witness)
			require.NoError(t, err)
			again, err := sequence.Check(context.Background(), q, sequence.Options{Only: sequence.VerdictOnly})
			require.NoError(t, err)
			require.Equal(t, sequence.Refuted, again.Verdict)
			require.Equal(t, c.first, string(again.Findings[0].Kind)+" | "+again.Findings[0].Step+" | "+again.Findings[0].Device)
			// Nothing is left open, but for where pressure lies while fluid flows.
			require.Equal(t, again.Inputs, strings.Count(name, "two-surface-pressures"))
		})
	}
}

// Where fluid flows from one surface to another, the pressure between lies anywhere
// between what either makes of it, in whatever order the two stand in the file.
func TestTwoSurfacePressuresInEitherOrder(t *testing.T) {
	p := limitPlan(t, "two-surface-pressures")
	a := verdict(t, p)
	require.False(t, a.OK())
	p.Compartments[0], p.Compartments[1] = p.Compartments[1], p.Compartments[0]
	p.Ports[0].Joins[0], p.Ports[0].Joins[1] = p.Ports[0].Joins[1], p.Ports[0].Joins[0]
	b := verdict(t, p)
	require.Equal(t, roots(a), roots(b))
	require.Equal(t, "unintended event | circulate | disc: bursts", roots(b)[0])
}

// What each of the witnesses has to say.
func TestWitnessesOfTheLimits(t *testing.T) {
	first := func(name string) sequence.Finding { return verdict(t, limitPlan(t, name)).Findings[0] }

	f := first("one-late-one-early")
	require.Greater(t, chosen(t, f, "devices.shutter A")-chosen(t, f, "devices.shutter B"), 1500.0)

	f = first("relief-opens-in-the-middle-of-a-band")
	x := chosen(t, f, "devices.shutter")
	require.GreaterOrEqual(t, x, 2150-1e-6)
	require.LessOrEqual(t, x, 2180+1e-6)

	f = first("two-late-two-early")
	at := func(n string) float64 { return chosen(t, f, "devices.shutter "+n) }
	require.GreaterOrEqual(t, (at("1")+at("2")-at("3")-at("4"))/2, 250-1e-6)

	f = first("first-early-second-late")
	require.GreaterOrEqual(t, chosen(t, f, "devices.shutter.actions.shuts.triggers[0]"), -950-1e-6)
	require.Greater(t, chosen(t, f, "devices.shutter.actions.shuts.triggers[1]"), 2100.0)

	f = first("rearming-in-doubt")
	require.Less(t, chosen(t, f, "devices.counter.actions.opens.triggers[0].rearm"), 500.0)
}

// Mended, each of them is proved: the number that made it wrong is moved by 0.1 psi
// beyond what arithmetic allows.
func TestPlansThatALimitRefutesMended(t *testing.T) {
	for name, mend := range map[string]func(p *sequence.Plan){
		"body-opens-past-its-rating": func(p *sequence.Plan) { p.Ratings[0].Burst = unit.Exactly(2572.1 * psi) },
		"disc-bursts-past-its-seat":  func(p *sequence.Plan) { p.Ratings[0].Burst = unit.Exactly(4120.1 * psi) },
		"formation-sees-it-until-the-valve-shuts": func(p *sequence.Plan) {
			p.Formations[0].Fracture = unit.Exactly(7240 * psi)
		},
		"joint-breaks-before-the-release":      func(p *sequence.Plan) { p.String.Sections[0].Joint = 150000 * unit.PoundForce },
		"one-late-one-early":                   func(p *sequence.Plan) { p.Ratings[0].Burst = unit.Exactly(2150.1 * psi) },
		"relief-opens-in-the-middle-of-a-band": func(p *sequence.Plan) { p.Devices[1].Actions[0].Triggers[1].Threshold = unit.Exactly(149.9 * psi) },
		"two-late-two-early":                   func(p *sequence.Plan) { p.Devices[5].Actions[1].Triggers[0].Threshold = unit.Exactly(400.1 * psi) },
		"first-early-second-late":              func(p *sequence.Plan) { p.Ratings[0].Burst = unit.Exactly(2200.1 * psi) },
		"rearming-in-doubt":                    func(p *sequence.Plan) { p.Steps[0].Ramps[1]["tubing"] = 439.9 * psi },
		"opens-closes-opens":                   func(p *sequence.Plan) { p.Steps[0].Ramps = p.Steps[0].Ramps[:2] },
		"closes-after-it-opens": func(p *sequence.Plan) {
			p.Steps[0].Expect[0], p.Steps[0].Expect[1] = p.Steps[0].Expect[1], p.Steps[0].Expect[0]
		},
		"two-surface-pressures": func(p *sequence.Plan) { p.Devices[0].Actions[0].Triggers[0].Threshold = unit.Exactly(1000.2 * psi) },
		// 11,900 lb/gal·ft · 4/77 = 618.18 psi at the peak
		"swap-peaks-on-its-way":     func(p *sequence.Plan) { p.Devices[0].Actions[0].Triggers[0].Threshold = unit.Exactly(618.3 * psi) },
		"column-falls-when-shut-in": func(p *sequence.Plan) { p.Formations[0].Pressure = unit.Exactly(4430 * psi) },
	} {
		t.Run(name, func(t *testing.T) {
			p := limitPlan(t, name)
			mend(p)
			r := verdict(t, p)
			require.Equal(t, sequence.Proved, r.Verdict, "%+v", r.Findings)
		})
	}
}
