package sequence_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Wear, heat and the bend of the hole count for either string as package tubular has them:
// collapse of a worn, hot pipe in a bend of 3 deg/100 ft under what the step puts around it,
// with the wall force that the programme tells there; in a straight hole it bears more. The
// catalogue's connection counts for either, too.
func TestWearHeatAndBendCountForBothStrings(t *testing.T) {
	bend := []sequence.Station{{}, {MD: 2000 * foot}, {MD: 4000 * foot, Inclination: 60 * unit.Degree}, {MD: 9000 * foot, Inclination: 60 * unit.Degree}}
	stations := make([]hydrostatics.Station, len(bend))
	for i := range bend {
		stations[i] = hydrostatics.Station(bend[i])
	}
	path, err := hydrostatics.NewPath(stations)
	require.NoError(t, err)
	const build = 3.0 // deg/100 ft
	for n, x := range []struct {
		pipe     tubular.Pipe
		pressure map[string]unit.Pressure
		inside   float64 // lb/gal
		around   float64
		applied  float64 // psi around less inside
	}{
		{tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot}, map[string]unit.Pressure{"between the strings": 4000 * psi}, 9.5, 9, 4000},
		{tubular.Pipe{OD: 5.5 * unit.Inch, ID: 4.892 * unit.Inch, Weight: 17 * unit.PoundPerFoot}, map[string]unit.Pressure{"annulus": 3500 * psi}, 9, 8.8, 3500},
	} {
		plan := func(path []sequence.Station) *sequence.Plan {
			p := twoStrings()
			p.Well.Path = path
			for _, s := range []*sequence.String{p.String, p.OuterString} {
				s.Sections[0].Wear, s.Sections[0].Connection = sequence.Wear{Inside: 0.02 * unit.Inch, Outside: 0.03 * unit.Inch}, &sequence.Connection{Tension: 900000 * unit.PoundForce}
				s.Derating = &sequence.Derating{From: unit.Fahrenheit(70), Rate: 0.0003 * unit.PerFahrenheit}
			}
			p.Devices[0].Actions[0].Triggers[0], p.Devices[1].Actions[0].Triggers[0] = rising(9000*psi, 9000*psi), rising(9000*psi, 9000*psi)
			p.Steps = []sequence.Step{{Name: "press", Ramps: []map[string]unit.Pressure{x.pressure}}}
			return p
		}
		at := func(p *sequence.Plan) *sequence.StringAt {
			r := verdict(t, p)
			if n == 1 {
				return lastOuter(r, 0)
			}
			return lastString(r, 0)
		}
		got := at(plan(bend))
		require.Equal(t, "collapse", got.Limit)
		pipe := x.pipe
		pipe.Material = tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)
		worn, err := pipe.Less(tubular.Allowance{Inside: 0.02 * unit.Inch, Outside: 0.03 * unit.Inch})
		require.NoError(t, err)
		body, err := worn.Prepare()
		require.NoError(t, err)
		hot := body.Derated(1 - 0.0003*80) // 150 °F
		tvd, err := path.TVD(got.LimitMD)
		require.NoError(t, err)
		found := false
		for _, d := range got.Along {
			if d.MD != got.LimitMD {
				continue
			}
			load := tubular.Load{Axial: d.Wall, Inside: unit.Pressure(column(x.inside, tvd.In(foot))) * psi, Outside: unit.Pressure(x.applied+column(x.around, tvd.In(foot))) * psi}
			for _, curve := range []float64{0, build} {
				load.Curvature = unit.Curvature(curve * math.Pi / 180 / (100 * float64(foot)))
				found = found || math.Abs(hot.UsageBent(load, tubular.WithoutReserve()).Collapse/got.Usage-1) < 1e-6
			}
		}
		require.True(t, found, "string %d: %v at %v", n, got.Usage, got.LimitMD)
		// In the bend at 3,000 ft the same wall force leaves less than without it.
		straight := tubular.Load{Axial: 30000 * unit.PoundForce, Outside: 5000 * psi}
		bent := straight
		bent.Curvature = unit.Curvature(build * math.Pi / 180 / (100 * float64(foot)))
		require.Greater(t, hot.UsageBent(bent, tubular.WithoutReserve()).Collapse, hot.UsageBent(straight, tubular.WithoutReserve()).Collapse)

		// Neither wear nor heat is free, and a sharper bend costs more of it.
		fresh := plan(bend)
		fresh.String.Sections[0].Wear, fresh.OuterString.Sections[0].Wear = sequence.Wear{}, sequence.Wear{}
		fresh.String.Derating, fresh.OuterString.Derating = nil, nil
		require.Less(t, at(fresh).Usage, got.Usage)
		sharp := plan([]sequence.Station{{}, {MD: 2000 * foot}, {MD: 2600 * foot, Inclination: 60 * unit.Degree}, {MD: 9000 * foot, Inclination: 60 * unit.Degree}})
		require.NotEqual(t, at(sharp).Usage, got.Usage)
		// Left to the catalogue, the connection of either string is a limit by itself.
		weak := plan(nil)
		weak.String.Sections[0].Connection, weak.OuterString.Sections[0].Connection = &sequence.Connection{Tension: 50000 * unit.PoundForce}, &sequence.Connection{Tension: 120000 * unit.PoundForce}
		weak.Steps = []sequence.Step{{Name: "hang"}}
		require.Equal(t, "connection", at(weak).Limit)
	}
}
