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

func randomSections(r *rand.Rand) []movement.StringSection {
	pipes := []tubular.Pipe{
		{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot},
		{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot},
		{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot},
	}
	var out []movement.StringSection
	bottom := unit.Length(0)
	n := 1 + r.IntN(3)
	for i := range n {
		p := pipes[r.IntN(len(pipes))]
		p.Material = tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)
		bottom += unit.Length(1000+r.Float64()*1500) * unit.Foot
		if i == n-1 {
			bottom = unit.Length(7000+r.Float64()*1500) * unit.Foot
		}
		out = append(out, movement.StringSection{Pipe: p, BottomMD: bottom, Hole: 6.184 * unit.Inch})
	}
	return out
}

func randomState(r *rand.Rand) movement.WellProfiles {
	in, out := unit.Density(8+4*r.Float64())*unit.PoundPerGallon, unit.Density(8+4*r.Float64())*unit.PoundPerGallon
	pi, po := unit.Pressure(r.Float64()*4000)*unit.PSI, unit.Pressure(r.Float64()*2000)*unit.PSI
	top, grad := 40+60*r.Float64(), 0.008+0.01*r.Float64()
	return movement.WellProfiles{
		Inside:      func(d unit.Length) unit.Pressure { return pi + hydrostatics.Pressure(in, d) },
		Outside:     func(d unit.Length) unit.Pressure { return po + hydrostatics.Pressure(out, d) },
		Temperature: func(d unit.Length) unit.Temperature { return unit.Fahrenheit(top + grad*d.In(unit.Foot)) },
	}
}
