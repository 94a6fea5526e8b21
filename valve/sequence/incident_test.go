package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Pressures that were read in a negative test that had failed, and what the programme says of such a
// well. Source: the regulator's Joint Investigation Team report, printed pages 92 to 94 and the page
// with footnotes 120 to 125: 16.0 lb/gal spacer from 5,117 to 3,707 ft, sea water below it and in the
// work string (8.55 lb/gal; the density is common practice, the report prints none). Kill line at
// nothing, the work string showed 458 psi; later 1,400 psi with 140 on the kill line; a burst disc of
// 900 to 1,100 psi gave at 2,900.
func TestReadingsOfANegativeTest(t *testing.T) {
	const below, spacer = 5117 * foot, 1410 * foot
	well := func(inKill unit.Length, kill unit.Pressure) *sequence.Plan {
		p := &sequence.Plan{
			Name: "two lines into one space", Well: sequence.Well{MD: 8367 * foot},
			Fluids: []sequence.Fluid{{Name: "sea water", Density: unit.Exactly(8.55 * ppg)}, {Name: "spacer", Density: unit.Exactly(16 * ppg)}},
			Compartments: []sequence.Compartment{
				{Name: "work string", BottomMD: 8367 * foot, Fluid: "sea water", Surface: true},
				{Name: "kill line", BottomMD: 8367 * foot, Surface: true, Fluid: "sea water"},
			},
			Ports: []sequence.Port{{Name: "below the stack", Joins: []string{"work string", "kill line"}, MD: below, Open: true}},
			Steps: []sequence.Step{{Name: "read", Shut: []string{"work string"}, Ramps: []map[string]unit.Pressure{{"kill line": kill}}}},
		}
		if inKill > 0 {
			p.Compartments[1].Fluid = ""
			p.Compartments[1].Layers = []sequence.Layer{{Fluid: "sea water", ToMD: below - inKill}, {Fluid: "spacer", ToMD: below}, {Fluid: "sea water", ToMD: 8367 * foot}}
		}
		return p
	}
	workString := func(p *sequence.Plan) float64 {
		steps := check(t, p).Steps
		points := steps[len(steps)-1].Points
		for _, x := range points[len(points)-1].Surface {
			if x.Compartment == "work string" {
				return x.Pressure.In(psi)
			}
		}
		t.Fatalf("no pressure of the work string at surface: %+v", points)
		return 0
	}
	// Two lines into one space that hold one fluid read alike.
	require.InDelta(t, 140, workString(well(0, 140*psi)), 1e-6)
	// The first reading is one that spacer in the kill line can make, the second isn't.
	most := workString(well(spacer, 0))
	require.InDelta(t, (16-8.55)*12/231.0*1410, most, 0.01)
	require.Greater(t, most, 458.0)
	require.Less(t, workString(well(spacer, 140*psi)), 1400.0)

	// A plan that needs the disc whole at 2,900 psi is refuted, one that needs it burst is not.
	disc := func(expect ...string) *sequence.Programme {
		p := mini()
		p.Fluids[1].Density = p.Fluids[0].Density
		p.Devices = nil
		device(p, "disc", 9000*foot, rising(900*psi, 1100*psi))
		p.Steps = []sequence.Step{{Name: "up", Ramps: []map[string]unit.Pressure{{"tubing": 2900 * psi}}, Expect: expect}}
		return check(t, p)
	}
	require.Equal(t, sequence.Refuted, disc().Verdict)
	burst := disc("disc: moves")
	require.Equal(t, sequence.Proved, burst.Verdict, "%+v", burst.Findings)
	require.InDelta(t, 1000, eventOf(t, burst.Steps[0], "disc: moves").Differential.In(psi), 1e-6)
}
