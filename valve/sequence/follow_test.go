package sequence

import (
	"context"
	"fmt"
	"os"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func demoPlan(t *testing.T) *Plan {
	t.Helper()
	data, err := os.ReadFile("../../examples/installation/plans/demo.json")
	require.NoError(t, err)
	p, err := Read(data)
	require.NoError(t, err)
	return p
}

// Step by step, a follower sees the events, readings and volumes that Check finds with
// nominal values, and what compresses is V·c by hand.
func TestFollowSeesWhatCheckFinds(t *testing.T) {
	p := demoPlan(t)
	r, err := Check(t.Context(), p, Options{Only: VerdictOnly})
	require.NoError(t, err)
	f, err := Follow(p)
	require.NoError(t, err)
	var at *Situation
	for i := range p.Steps {
		seen, next, err := f.Step(t.Context(), at, i, nil)
		require.NoError(t, err)
		require.Equal(t, r.Steps[i].Events, seen.Events, p.Steps[i].Name)
		require.Equal(t, r.Steps[i].Ports, f.Ports(next))
		require.Len(t, seen.Legs, len(r.Steps[i].Points))
		for n, l := range seen.Legs {
			require.Equal(t, r.Steps[i].Points[n].Surface, l.To)
		}
		if i == 6 { // tests the packer: base oil in the tubing to sleeve A, brine below it, and annuli A and C
			want := (0.01522*(8850*5e-6+850*2.5e-6)*9700/9700 + 0.0128*(450+350)*2.5e-6) * float64(unit.Barrel)
			require.InEpsilon(t, want, float64(seen.Legs[1].Stretches[0].Takes[0].PerPSI), 1e-9)
		}
		at = next
	}
	require.Equal(t, 1, f.Happened(at)["release: parts"])
}

func TestFollowHoldsStill(t *testing.T) {
	p := demoPlan(t)
	f, err := Follow(p)
	require.NoError(t, err)
	var at *Situation
	for i := range 4 {
		still := []string(nil)
		if i == 3 {
			still = []string{"sleeve A: closes"}
		}
		before := at
		_, at, err = f.Step(t.Context(), before, i, still)
		require.NoError(t, err)
		if i == 3 {
			require.Zero(t, f.Happened(at)["sleeve A: closes"])
			// The same situation goes on elsewhere as if nothing had been.
			_, other, err := f.Step(t.Context(), before, i, nil)
			require.NoError(t, err)
			require.Equal(t, 1, f.Happened(other)["sleeve A: closes"])
		}
	}
	// With sleeve A open, pressure on the tubing has a way to the annulus.
	seen, _, err := f.Step(t.Context(), at, 4, []string{"sleeve A: closes"})
	require.NoError(t, err)
	take := seen.Legs[1].Stretches[0].Takes[0]
	require.Equal(t, "tubing", take.Compartment)
	require.Equal(t, "annulus", take.References[0].Name)
	require.Equal(t, Circulation, take.References[0].Flow)
	require.True(t, take.References[0].Out)

	_, _, err = f.Step(t.Context(), at, 99, nil)
	require.ErrorContains(t, err, "step is 99; must be from 0 to 25")
	_, _, err = f.Step(t.Context(), at, 4, []string{"nothing"})
	require.ErrorContains(t, err, "no action")
	_, err = Follow(nil)
	require.Error(t, err)
}

// Step by step, up to where the packer sets.
func ExampleFollow() {
	data, _ := os.ReadFile("../../examples/installation/plans/demo.json")
	plan, err := Read(data)
	if err != nil {
		fmt.Println(err)
		return
	}
	f, _ := Follow(plan)
	var at *Situation
	for i := range 5 {
		var seen *Seen
		if seen, at, err = f.Step(context.Background(), at, i, nil); err != nil {
			fmt.Println(err)
			return
		}
		for _, e := range seen.Events {
			fmt.Printf("%s: %s\n", plan.Steps[i].Name, e.Action)
		}
	}
	// Output:
	// close sleeve A: sleeve A: closes
	// set the packer: packer: starts to set
	// set the packer: packer: sets
}
