package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Nothing may open or shut while a level moves, nor may a level move on where the hole turns up, where ways part, or where
// what stands there isn't of constant density: each is refused by its words.
func TestWhatMayNotHappenWhileALevelMoves(t *testing.T) {
	refusesToWalk(t, func() *sequence.Plan { return lossy(exactly(4000)) }, []breaking{
		{func(p *mended) { // at 2,000 ft it feels 1,039 psi of column before, and 364 psi with the level at 1,300 ft
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "room", TopMD: 7800 * foot, BottomMD: 8000 * foot, Fluid: "brine", Trapped: exactly(4000)})
			p.Ports = append(p.Ports, sequence.Port{Name: "flap", Joins: []string{"room", "face"}, MD: 7900 * foot})
			a := &p.Devices[1].Actions[0]
			a.Triggers, a.Opens = []sequence.Trigger{falling(700*psi, 700*psi)}, []string{"flap"}
			p.Steps[1].Expect = []string{"low: moves"}
		}, "something opens or shuts while it moves, which isn't modelled; let it be in a step before"},
		{func(p *mended) {
			p.Ports = append(p.Ports, sequence.Port{Name: "second valve", Joins: []string{"tubing", "face"}, MD: 7900 * foot, Open: true})
		}, "more than one way is open"},
		{func(p *mended) {
			p.Formations = append(p.Formations, sequence.Formation{Name: "toe", MD: 9500 * foot, Pressure: exactly(4200)})
			p.Compartments = append(p.Compartments, sequence.Compartment{Name: "toe face", TopMD: 9400 * foot, BottomMD: 9600 * foot, Fluid: "brine", Formation: "toe"})
			p.Ports = append(p.Ports, sequence.Port{Name: "gap", Joins: []string{"face", "toe face"}, MD: 9450 * foot, Open: true})
		}, `it falls into more than one formation ("face", "toe face"); how it parts between them isn't modelled`},
		{func(p *mended) { // the hole rises again from 1,000 ft on, and the level wants to lie beyond its low point
			p.Formations[0].Pressure = exactly(3000)
			p.Well.Path = []sequence.Station{{}, {MD: 800 * foot}, {MD: 1000 * foot, Inclination: 100 * unit.Degree}, {MD: 1600 * foot, Inclination: 100 * unit.Degree}, {MD: 1900 * foot, Inclination: 20 * unit.Degree}, {MD: 10000 * foot, Inclination: 20 * unit.Degree}}
		}, "it falls past the low point of the hole at"},
	})
	// Pumping, too, wants fluids that are the same everywhere.
	refusesToWalk(t, func() *sequence.Plan {
		p := pumpedWell()
		p.Steps = []sequence.Step{{Name: "circulate", Pump: []sequence.Pump{{Into: "tubing", Returns: "annulus", Rate: unit.BarrelPerMinute}}}}
		return p
	}, []breaking{{func(p *mended) {
		p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(100, 9000)}
		p.Fluids[0] = sequence.Fluid{Name: "brine", Kind: sequence.FreshWater, Viscosity: unit.Centipoise}
	}, "pumping wants fluids of constant density"}})
}

// What isn't intended and opens a port on the way down is a failure, and the walk goes on for the reader.
func TestWhatOpensUnintendedWhileALevelMoves(t *testing.T) {
	p := lossy(exactly(4000))
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "room", TopMD: 7800 * foot, BottomMD: 8000 * foot, Fluid: "brine", Trapped: exactly(4000)})
	p.Ports = append(p.Ports, sequence.Port{Name: "flap", Joins: []string{"room", "face"}, MD: 7900 * foot})
	a := &p.Devices[1].Actions[0]
	a.Triggers, a.Opens = []sequence.Trigger{falling(700*psi, 700*psi)}, []string{"flap"}
	r, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
	if err != nil {
		require.ErrorContains(t, err, "while it moves")
		return
	}
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, "low: moves", r.Findings[0].Device)
}
