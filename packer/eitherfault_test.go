package packer

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// Each of two faults that make one message is enough for it: what is no number, and what is out of order.
func TestEitherFaultIsEnough(t *testing.T) {
	inf := unit.Length(math.Inf(1))
	for _, casing := range []unit.Length{0.1, inf, unit.Length(math.NaN())} {
		f := Seat{Bore: 0.15, Casing: casing}.faults(0)
		require.ErrorContains(t, f.Err(), "Seat.Casing: is ")
	}
	f := Seat{Bore: 0.15, Casing: 0.15}.faults(0)
	require.NoError(t, f.Err())

	pipe := tubular.Pipe{OD: 0.1, ID: 0.08, Weight: 200, Material: tubular.Steel()}
	pull := func(bottoms ...unit.Length) Pull {
		p := Pull{Inside: func(unit.Length) unit.Pressure { return 0 }, Outside: func(unit.Length) unit.Pressure { return 0 }, Seal: 0.1}
		for _, b := range bottoms {
			p.Sections = append(p.Sections, movement.StringSection{Pipe: pipe, BottomMD: b})
		}
		return p
	}
	for _, bottoms := range [][]unit.Length{{0}, {1000, 1000}, {1000, 900}, {inf}, {1000, inf}, {unit.Length(math.NaN())}} {
		f := pull(bottoms...).faults()
		require.ErrorContains(t, f.Err(), ".Bottom: is ", "%v", bottoms)
	}
	f = pull(500, 1000).faults()
	require.NoError(t, f.Err())

	for _, id := range []unit.Length{0, -1, 0.1, 0.2, inf, unit.Length(math.Inf(-1)), unit.Length(math.NaN())} {
		f := fault.In("packer")
		checkEnd(&f, "End", movement.End{OD: 0.1, ID: id, Bore: 0.1})
		require.ErrorContains(t, f.Err(), "End.ID: is ", "%v", id)
	}
	f = fault.In("packer")
	checkEnd(&f, "End", movement.End{OD: 0.1, ID: 0.08, Bore: 0.1})
	require.NoError(t, f.Err())

	// pressure helps no string that is plugged, nor pins that part without it
	for _, x := range []struct {
		plugged bool
		most    unit.Force
	}{{true, 0}, {true, 20}, {false, 10}, {false, 20}} {
		var o Options
		NotParted{Release: Release{Pull: Pull{Plugged: x.plugged, Seal: 0.1, Sections: []movement.StringSection{{Pipe: pipe}}}, Pins: unit.Band[unit.Force]{Greatest: 10}}}.withPressure(&o, Parting{Most: x.most, Reading: unit.Band[unit.Force]{Greatest: 5}})
		require.Equal(t, !x.plugged, o.PressureAvailable)
		require.Zero(t, o.PressureReading, "nothing is worked out")
	}
}
