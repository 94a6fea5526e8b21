package sequence_test

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// twice is the pair of twoStrings put together a second time, by tubular/movement.
type twice struct {
	path         *hydrostatics.Path
	small, large tubular.Pipe
	inner, outer *movement.MadeUp
	pair         *movement.Concentric
	density      [3]unit.Density // in the inner one, between the two, around
}

// putTogether takes from the plan where the strings hang, their blocks, path and fluids.
func putTogether(t *testing.T, p *sequence.Plan) *twice {
	t.Helper()
	var stations []hydrostatics.Station
	for _, s := range p.Well.Path {
		stations = append(stations, hydrostatics.Station(s))
	}
	path, err := hydrostatics.NewPath(stations)
	require.NoError(t, err)
	x := &twice{path: path,
		small: tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()},
		large: tubular.Pipe{OD: 5.5 * unit.Inch, ID: 4.892 * unit.Inch, Weight: 17 * unit.PoundPerFoot, Material: tubular.Steel()}}
	for k := range x.density {
		x.density[k] = p.Fluids[k].Density.Nominal
	}
	in := movement.Assembly{Path: path, Hanger: p.String.HangerMD, Block: p.String.Block, Spacing: 250 * foot,
		Sections: []movement.StringSection{{Pipe: x.small, BottomMD: 8500 * foot, Hole: 4.892 * unit.Inch}}, Holds: []movement.Hold{{MD: 8000 * foot}},
		Joints: []movement.Joint{{MD: 7500 * foot, Seal: 2.6 * unit.Inch}}, Seals: []movement.Seal{{MD: 8500 * foot, Bore: 3 * unit.Inch, Up: 30 * foot, Down: 30 * foot}}}
	out := movement.Assembly{Path: path, Block: p.OuterString.Block, Spacing: 250 * foot,
		Sections: []movement.StringSection{{Pipe: x.large, BottomMD: 9000 * foot, Hole: 8.535 * unit.Inch}}, Holds: []movement.Hold{{MD: 9000 * foot}},
		Joints: []movement.Joint{{MD: 8700 * foot, Seal: 5.6 * unit.Inch}}, Seals: []movement.Seal{{MD: 9000 * foot, Bore: 5.5 * unit.Inch, Up: 30 * foot, Down: 30 * foot}}}
	x.inner, err = in.MakeUp()
	require.NoError(t, err)
	x.outer, err = out.Carrying(in).MakeUp()
	require.NoError(t, err)
	x.pair, err = movement.Nest(x.outer, x.inner)
	require.NoError(t, err)
	return x
}

// state is what stands in and around both: pressures in the inner one and between the two at
// surface, temperatures in degF, of the outer one first.
func (x *twice) state(bore, between unit.Pressure, of, own float64) (outer, inner movement.Conditions) {
	column := func(k int, top unit.Pressure) func(int, unit.Length) unit.Pressure {
		return func(_ int, tvd unit.Length) unit.Pressure {
			return top + unit.Pressure(float64(x.density[k])*9.80665*float64(tvd))
		}
	}
	heat := func(f float64) func(unit.Length) unit.Temperature {
		return func(unit.Length) unit.Temperature { return unit.Fahrenheit(f) }
	}
	return movement.Conditions{Inside: column(1, between), Outside: column(2, 0), Temperature: heat(of)},
		movement.Conditions{Inside: column(0, bore), Outside: column(1, between), Temperature: heat(own)}
}
