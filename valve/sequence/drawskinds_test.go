package sequence_test

import (
	"context"
	"slices"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What draws fail with is what the verdict finds: of each kind in each step that is counted there is a
// finding, and a plan that is proved fails in none.
func TestDrawsFailInKindsThatTheVerdictFinds(t *testing.T) {
	all, kinds := shippedPlans(t), map[sequence.Kind]bool{}
	for _, name := range []string{"one-late-one-early", "disc-bursts-past-its-seat", "formation-sees-it-until-the-valve-shuts", "joint-breaks-before-the-release", "relief-opens-in-the-middle-of-a-band",
		"rearming-in-doubt", "two-surface-pressures", "column-falls-when-shut-in", "plug-pulled-under-pressure", "sleeve-opened-overbalanced", "packer-fluid-swapped",
		"balanced-valve-loses-its-balance"} {
		p := all[name+".json"]
		require.NotNil(t, p, name)
		r, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err, name)
		risk, err := sequence.Sample(t.Context(), p, sequence.Uncertainty{Samples: 12, Seed: 5})
		require.NoError(t, err, name)
		if r.Verdict == sequence.Proved {
			require.Zero(t, risk.Fails.Value, name)
		}
		for _, e := range risk.Events {
			if e.Count == 0 {
				continue
			}
			kinds[e.Kind] = true
			found := false
			for _, f := range r.Findings {
				found = found || f.Kind == e.Kind && f.Step == e.Step
			}
			require.True(t, found, "%s: %+v is in no finding", name, e)
		}
	}
	require.GreaterOrEqual(t, len(kinds), 6, "%v", kinds)
}

// Of each kind of limit what draws count is named as the verdict names it: kind, step and device.
func TestDrawsNameWhatTheVerdictNames(t *testing.T) {
	pulledOff := landed()
	pulledOff.String.Rig = 100000 * unit.PoundForce
	pulledOff.Steps = append(pulledOff.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{130000 * unit.PoundForce}})
	held := landed()
	held.Holding = &sequence.Holding{Below: "below", Above: "annulus", MD: 9000 * foot, Envelope: packer.Polygon{Name: "packer", Vertices: []packer.Load{
		{Differential: -9000 * psi, Axial: -100 * unit.PoundForce}, {Differential: 9000 * psi, Axial: -100 * unit.PoundForce},
		{Differential: 9000 * psi, Axial: 100 * unit.PoundForce}, {Differential: -9000 * psi, Axial: 100 * unit.PoundForce}}}}
	lifted := landed()
	lifted.Well.Temperatures["hot"] = even(400, 9000) // 83,700 lbf hang, and 250 degF more push up by E·α·As·ΔT = 133,000 lbf
	lifted.Steps = append(lifted.Steps, sequence.Step{Name: "heat", Temperature: "hot"})
	stroked := twoStrings()
	stroked.String.Seals[0].Up, stroked.String.Seals[0].Down = 0.1*foot, 0.1*foot
	open := lossy(exactly(4000))
	open.Steps = []sequence.Step{{Name: "open"}}
	lacking, tested := fallingBarriers(0), rich()
	tested.Steps[0].Tests[0].Differential = unit.Band[pressure]{Least: 8000 * psi, Nominal: 8100 * psi, Greatest: 8200 * psi}
	weak := producer()
	weak.Steps[0].Produce.Want = map[string]sequence.RateBetween{"sand": {Least: 900000 * unit.BarrelPerDay, Greatest: 990000 * unit.BarrelPerDay}}
	// The findings' own words: what is wrong, and what would mend it.
	words := map[sequence.Kind][2]string{
		sequence.PullOff:     {"the weight indicator shows more than the rig's rating (pull 1)", "pull less, or use a rig that bears it"},
		sequence.HoldingOff:  {"its load is outside its holding envelope (", "another step has to come before or after this one"},
		sequence.HangerLift:  {"the string is pushed up out of its hanger (", "lock the hanger down, or less pressure"},
		sequence.SealTravel:  {"the seals move up further than their bore allows (ramp 1)", "more to go "},
		sequence.FlowOff:     {"loss that the step does not allow (start)", "less at surface, or shut the port between them"},
		sequence.BarrierLack: {"barrier", "put another barrier in place, and test it, before this step"},
		sequence.TestOff:     {"the test from below does not see its differential (", "another step has to come before or after this one"},
		sequence.RateOff:     {"the zone does not give what is planned", "another choke, another wellhead pressure, or another zone shut"},
	}
	for kind, p := range map[sequence.Kind]*sequence.Plan{sequence.PullOff: pulledOff, sequence.HoldingOff: held, sequence.HangerLift: lifted, sequence.SealTravel: stroked,
		sequence.FlowOff: open, sequence.BarrierLack: lacking, sequence.TestOff: tested, sequence.RateOff: weak} {
		r := verdicted(t, p)
		require.Equal(t, sequence.Refuted, r.Verdict, kind)
		risk, err := sequence.Sample(t.Context(), p, sequence.Uncertainty{Samples: 3, Seed: 5})
		require.NoError(t, err, kind)
		require.InDelta(t, 1, risk.Fails.Value, 1e-12, kind)
		require.Len(t, risk.Events, 1, "%v %+v", kind, risk.Events)
		e := risk.Events[0]
		require.Equal(t, kind, e.Kind)
		first := r.Findings[slices.IndexFunc(r.Findings, func(f sequence.Finding) bool { return f.Kind == kind })]
		assert.Contains(t, first.Says, words[kind][0])
		assert.Contains(t, first.Cure, words[kind][1], kind)
		require.True(t, slices.ContainsFunc(r.Findings, func(f sequence.Finding) bool {
			return f.Kind == kind && f.Step == e.Step && (f.Device == e.Device || f.Device == "tubing to sand" && e.Device == "face") // which the formation is open to
		}), "%+v: %+v", e, r.Findings)
	}
}

// What stands before a formation as the step ends is told of that formation alone; what flows where no surface pressure reaches has no
// pressure for a cure.
func TestWordsOfBarriersAndOfFlowBelow(t *testing.T) {
	p := fallingBarriers(300)
	p.Formations = append(p.Formations, sequence.Formation{Name: "shale", MD: 1000 * foot, Pressure: exactly(900)})
	p.Barriers = append(p.Barriers, sequence.Barrier{Name: "three", Formation: "shale"}, sequence.Barrier{Name: "four", Formation: "shale"})
	p.Rules.Barriers = 2
	r := verdicted(t, p)
	require.Equal(t, sequence.BarrierLack, r.Findings[0].Kind)
	require.Contains(t, r.Findings[0].Numbers, "standing at the end of the step: two")
	require.NotContains(t, r.Findings[0].Numbers, "three")

	p = mini()
	for n, name := range []string{"upper", "lower"} {
		p.Formations = append(p.Formations, sequence.Formation{Name: name, MD: unit.Length(8000+500*n) * foot, Pressure: exactly(4000 + 1500*float64(n))})
		p.Compartments = append(p.Compartments, sequence.Compartment{Name: name + " face", TopMD: 7900 * foot, BottomMD: 8600 * foot, Fluid: "annulus fluid", Formation: name})
	}
	p.Ports = append(p.Ports, sequence.Port{Name: "gap", Joins: []string{"upper face", "lower face"}, MD: 8100 * foot, Open: true})
	r = verdicted(t, p)
	require.Equal(t, sequence.FlowOff, r.Findings[0].Kind, "%v", r.Findings)
	require.Contains(t, r.Findings[0].Cure, "no surface pressure reaches it: shut the port between them, or let the step allow ")
	p.Ports = append(p.Ports, sequence.Port{Name: "way up", Joins: []string{"annulus", "upper face"}, MD: 8000 * foot, Open: true})
	for _, f := range verdicted(t, p).Findings {
		require.NotContains(t, f.Cure, "no surface pressure reaches it")
	}
}

// few is a context that is given up after so many looks at it.
type few struct {
	context.Context
	left *int
}

func (c few) Err() error {
	if *c.left--; *c.left < 0 {
		return context.Canceled
	}
	return nil
}

func (c few) Done() <-chan struct{}       { return nil }
func (c few) Deadline() (time.Time, bool) { return time.Time{}, false }

// Given up wherever it may be, whatever is worked on says so and gives nothing.
func TestGivenUpAnywhere(t *testing.T) {
	t.Parallel()
	demo, small := demoPlan(t), mini()
	small.Steps[0].Ramps[0]["tubing"] = 3000 * psi // refuted, with something to advise
	// Where windows are looked for, the programme without them comes beside the error.
	checked := func(p *sequence.Plan, verdict sequence.Verdict) func(ctx context.Context) (any, error) {
		return func(ctx context.Context) (any, error) {
			r, err := sequence.Check(ctx, p, sequence.Options{Workers: 1})
			if r != nil {
				require.Equal(t, verdict, r.Verdict)
				return err != nil, err
			}
			return true, err
		}
	}
	work := map[string]func(ctx context.Context) (any, error){
		"demo":   checked(demo, sequence.Proved),
		"advice": checked(small, sequence.Refuted),
		"rest": func(ctx context.Context) (any, error) {
			r, err := demo.Rest(ctx, demo.Steps[5].Name)
			return r == nil, err
		},
		"draws": func(ctx context.Context) (any, error) {
			r, err := sequence.Sample(ctx, demo, sequence.Uncertainty{Samples: 8, Seed: 1, Workers: 1})
			return r == nil, err
		},
	}
	for name, run := range work {
		stopped := 0
		for looks := 0; looks < 4000; looks += 1 + looks {
			left := looks
			nothing, err := run(few{t.Context(), &left})
			if err == nil {
				require.Equal(t, false, nothing, name)
				break
			}
			require.ErrorIs(t, err, context.Canceled, "%s after %d looks", name, looks)
			require.Equal(t, true, nothing, "%s after %d looks", name, looks)
			stopped++
		}
		require.Greater(t, stopped, 1, name)
	}
}

// Without a plan there is nothing to do, and that is said.
func TestNothingIsDoneWithoutAPlan(t *testing.T) {
	var p *sequence.Plan
	const says = "sequence: there is no plan (nil)"
	_, err := sequence.Check(t.Context(), nil, sequence.Options{})
	require.EqualError(t, err, says)
	_, err = sequence.Sample(t.Context(), nil, sequence.Uncertainty{})
	require.EqualError(t, err, says)
	_, err = sequence.Follow(nil)
	require.EqualError(t, err, says)
	_, err = sequence.Write(nil)
	require.EqualError(t, err, says)
	_, err = p.Rest(t.Context(), "set")
	require.EqualError(t, err, says)
	_, err = p.Choose("x = 1")
	require.EqualError(t, err, says)
	_, err = p.Derive()
	require.EqualError(t, err, says)
	_, _, err = p.Taken(nil)
	require.EqualError(t, err, says)
	require.Nil(t, p.Clone())
	require.Nil(t, p.Expanded())
	require.Nil(t, p.Quantities())
}
