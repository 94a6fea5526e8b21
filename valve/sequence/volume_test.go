package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Tubing and annulus that are joined take the volume of both once, however
// many of them the ramp names: 9,000 ft · (0.015 + 0.05) bbl/ft · 3e-6 1/psi ·
// 1,000 psi = 1.755 bbl, by hand.
func TestJoinedCompartmentsAreFilledOnce(t *testing.T) {
	p := mini()
	for i := range p.Fluids {
		p.Fluids[i].Density, p.Fluids[i].Compression = unit.Exactly(9*ppg), 3e-6*unit.PerPSI
	}
	perFoot := unit.Area(unit.Barrel) / unit.Area(foot)
	p.Compartments[0].Capacity, p.Compartments[1].Capacity = 0.015*perFoot, 0.05*perFoot
	p.Ports = []sequence.Port{{Name: "sleeve", Joins: []string{"tubing", "annulus"}, MD: 8900 * foot, Open: true}}
	p.Steps = []sequence.Step{{Name: "both", Ramps: []map[string]unit.Pressure{{"tubing": 1000 * psi, "annulus": 1000 * psi}}}}
	v := verdict(t, p).Steps[0].Volumes
	require.Len(t, v, 1)
	require.InDelta(t, 1.755, v[0].Volume.In(unit.Barrel), 1e-9)
}
