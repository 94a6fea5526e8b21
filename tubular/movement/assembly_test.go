package movement_test

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// conditions are those of a state, with one pressure above and below every seal
// but the last.
func conditions(s movement.State, parts int, below func(unit.Length) unit.Pressure) movement.Conditions {
	return movement.Conditions{
		Inside: func(_ int, tvd unit.Length) unit.Pressure { return s.Inside(tvd) },
		Outside: func(part int, tvd unit.Length) unit.Pressure {
			if part == parts-1 {
				return below(tvd)
			}
			return s.Outside(tvd)
		},
		Temperature: s.Temperature, Friction: s.Friction, OutsideFriction: s.OutsideFriction,
	}
}

// randomPath is a deviated or a vertical hole.
func randomPath(t testing.TB, r *rand.Rand) *hydrostatics.Path {
	stations := []hydrostatics.Station{{}}
	for md := 1000.0; md <= 10000; md += 1000 {
		s := hydrostatics.Station{MD: unit.Length(md) * unit.Foot}
		if r.IntN(3) > 0 {
			s.Inclination, s.Azimuth = unit.Angle(r.Float64()*60*md/10000)*unit.Degree, unit.Angle(r.Float64()*40)*unit.Degree
		}
		stations = append(stations, s)
	}
	path, err := hydrostatics.NewPath(stations)
	require.NoError(t, err)
	return path
}

func randomSections(r *rand.Rand) []movement.Section {
	pipes := []tubular.Pipe{
		{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot},
		{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot},
		{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot},
	}
	var out []movement.Section
	bottom := unit.Length(0)
	n := 1 + r.IntN(3)
	for i := range n {
		p := pipes[r.IntN(len(pipes))]
		p.Material = tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)
		bottom += unit.Length(1000+r.Float64()*1500) * unit.Foot
		if i == n-1 {
			bottom = unit.Length(7000+r.Float64()*1500) * unit.Foot
		}
		out = append(out, movement.Section{Pipe: p, Bottom: bottom, Hole: 6.184 * unit.Inch})
	}
	return out
}

func randomState(r *rand.Rand) movement.State {
	in, out := unit.Density(8+4*r.Float64())*unit.PoundPerGallon, unit.Density(8+4*r.Float64())*unit.PoundPerGallon
	pi, po := unit.Pressure(r.Float64()*4000)*unit.PSI, unit.Pressure(r.Float64()*2000)*unit.PSI
	top, grad := 40+60*r.Float64(), 0.008+0.01*r.Float64()
	return movement.State{
		Inside:      func(d unit.Length) unit.Pressure { return pi + hydrostatics.Pressure(in, d) },
		Outside:     func(d unit.Length) unit.Pressure { return po + hydrostatics.Pressure(out, d) },
		Temperature: func(d unit.Length) unit.Temperature { return unit.Fahrenheit(top + grad*d.In(unit.Foot)) },
	}
}

// TestAssemblyIsALandedString holds the string with any number of parts to the
// one with seals at its lower end: one place that holds there, or none.
func TestAssemblyIsALandedString(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for range 200 {
		path, sections := randomPath(t, r), randomSections(r)
		end := sections[len(sections)-1].Bottom
		bore := unit.Length(2+3*r.Float64()) * unit.Inch
		before, after := randomState(r), randomState(r)
		before.Tail, after.Tail = movement.Plugged, movement.Plugged
		before.Below, after.Below = unit.Pressure(r.Float64()*6000)*unit.PSI, unit.Pressure(r.Float64()*6000)*unit.PSI
		held := r.IntN(2) == 0
		seals := movement.Seals{Bore: bore}
		down := unit.Force(0)
		if held {
			seals.Restraint, down = movement.Anchored, unit.Force(r.Float64()*20000-5000)*unit.PoundForce
		}
		l, err := movement.String{Sections: sections, Path: path, Seals: seals, Spacing: 250 * unit.Foot}.Land(before, down)
		require.NoError(t, err)
		want, err := l.Load(after)
		require.NoError(t, err)

		a := movement.Assembly{Sections: sections, Path: path, Spacing: 250 * unit.Foot, Holds: []movement.Hold{{MD: end, Bore: bore}}}
		m, err := a.MakeUp()
		require.NoError(t, err)
		at := func(s movement.State) movement.Conditions {
			return conditions(s, 2, func(unit.Length) unit.Pressure { return s.Below })
		}
		s, err := m.Land(at(before))
		require.NoError(t, err)
		if held {
			s, err = m.SetDown(s, 0, at(before), down)
			require.NoError(t, err)
		}
		got, err := m.Load(s, at(after))
		require.NoError(t, err)
		const lbf, micron = float64(unit.PoundForce), 1e-9
		require.InDelta(t, float64(want.PackerForce), float64(got.Holds[0].Load), 1e-5*lbf)
		require.InDelta(t, float64(want.HangerLoad), float64(got.HangerLoad), 1e-5*lbf)
		require.InDelta(t, float64(want.TrueForce), float64(got.Holds[0].WallAbove), 1e-5*lbf)
		require.InDelta(t, float64(want.EffectiveForce), float64(got.Holds[0].EffectiveAbove), 1e-5*lbf)
		require.InDelta(t, float64(want.SealMovement), float64(got.Holds[0].Moved), micron)
		require.InDelta(t, float64(want.BuckledLength), float64(got.BuckledLength), 1e-5)
		require.InDelta(t, float64(want.HelicalLength), float64(got.HelicalLength), 1e-5)
		require.InDelta(t, float64(want.BuckledShortening), float64(got.BuckledShortening), micron)
		require.InDelta(t, float64(want.Neutral), float64(got.Neutral), 1e-5)
		require.InDelta(t, float64(want.Movement.Piston), float64(got.Movement.Piston), micron)
		require.InDelta(t, float64(want.Movement.Ballooning), float64(got.Movement.Ballooning), micron)
		require.InDelta(t, float64(want.Movement.Thermal), float64(got.Movement.Thermal), micron)
		require.Equal(t, want.Governing.Limit, got.Limits.Governing().Limit)
		require.InEpsilon(t, want.Governing.Usage, got.Limits.Governing().Usage, 1e-9)
		if !held {
			require.InDelta(t, float64(want.Movement.Total()), float64(got.EndMoved), micron)
			require.InDelta(t, 0, float64(got.Held), micron)
		}
	}
}
