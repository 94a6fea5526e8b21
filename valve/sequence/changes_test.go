package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// A step that is new, one that is gone, a line that is new, gone or another, and nothing else: by levels and
// gas as by everything.
func TestChangesAreToldLineByLine(t *testing.T) {
	before, after := lossy(exactly(4000)), lossy(exactly(3900))
	after.Steps[0].Name = "open up"
	after.Steps[2].Ramps = nil
	after.Steps[1].Tests = nil
	all := map[string]string{}
	for _, c := range sequence.Changes(verdicted(t, before), verdicted(t, after)) {
		all[c.Step+": "+c.What] = c.Before + " → " + c.Now
	}
	require.Equal(t, " → new", all["open up: step"])
	require.Equal(t, "was there → ", all["open: step"])
	require.Equal(t, "1300 ft → 1492 ft", all["falls: level in tubing"])
	require.NotContains(t, all, "press: verdict")

	gas := func(depth int) *sequence.Programme {
		p := cushionWell()
		p.Compartments[0].Layers = layersOf("nitrogen", depth, "brine", 8000)
		p.Ports[0].Open = true
		p.Begin = &sequence.Begin{Applied: map[string]pressure{"tubing": 3000 * psi, "annulus": 1400 * psi}}
		p.Steps = []sequence.Step{{Name: "hold", Allow: []sequence.Flow{sequence.Circulation}}, {Name: "shut", Shut: []string{"tubing"}}, {Name: "press", Ramps: []map[string]pressure{{"annulus": 2000 * psi}}}}
		return verdicted(t, p)
	}
	a, b := gas(4000), gas(3900)
	require.Empty(t, sequence.Changes(a, a))
	found := false
	for _, c := range sequence.Changes(a, b) {
		found = found || c.Step == "press" && c.What == "lower end of the gas in tubing" && c.Before != c.Now
	}
	require.True(t, found)
}

// Programmes of plans that fail, in which nominal values may not come to a step, differ from themselves in nothing.
func TestNothingHasChanged(t *testing.T) {
	p := mini()
	p.Steps[0].Ramps[0]["tubing"] = 1000 * psi // it doesn't set
	p.Steps = append(p.Steps, sequence.Step{Name: "later", Ramps: tubingTo(100)})
	r := verdicted(t, p)
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Empty(t, sequence.Changes(r, r))
	for _, name := range []string{"one-late-one-early", "column-falls-when-shut-in", "joint-breaks-before-the-release", "two-surface-pressures"} {
		r := verdicted(t, limitPlan(t, name))
		require.Empty(t, sequence.Changes(r, r), name)
	}
}

// What is written by hand beside a tally wins key by key, and the note says which; barriers and ratings as a
// whole, and what the tally hasn't stands behind.
func TestWhatIsWrittenByHandWins(t *testing.T) {
	p := readPlan(t, shipped+"demo-as-tally.json")
	plain, err := p.Derive()
	require.NoError(t, err)
	annulus := func(q *sequence.Plan) sequence.Compartment {
		for _, c := range q.Compartments {
			if c.Name == "annulus" {
				return c
			}
		}
		panic("annulus")
	}
	first := plain.Barriers[0]
	own := first
	own.Note = "as the operator counts it"
	p.Barriers = append(p.Barriers, own, sequence.Barrier{Name: "another", Formation: first.Formation})
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "annulus", Note: "half and half", Layers: []sequence.Layer{{Fluid: "packer brine", ToMD: 1000 * foot}, {Fluid: "packer brine", ToMD: annulus(plain).BottomMD}}})
	p.String = &sequence.String{Bore: 4 * unit.Inch, Up: 10 * foot, Block: 12345 * unit.PoundForce}
	made, err := p.Derive()
	require.NoError(t, err)
	require.Equal(t, len(plain.Barriers)+1, len(made.Barriers))
	require.Equal(t, own, made.Barriers[0])
	require.Equal(t, "another", made.Barriers[len(made.Barriers)-1].Name)
	c := annulus(made)
	require.Empty(t, c.Fluid)
	require.Len(t, c.Layers, 2)
	require.Contains(t, c.Note, "half and half (")
	require.Contains(t, c.Note, "; by hand: layers")
	require.Empty(t, made.String.Seals)
	require.Equal(t, 12345*unit.PoundForce, made.String.Block)
	require.Contains(t, made.String.Note, "by hand: seal_bore, up, block")
}
