package packer_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/drag"
	"github.com/stretchr/testify/require"
)

// holeAlong makes a string of tubing in brine along a path, by its friction factor.
func holeAlong(t *testing.T, path *hydrostatics.Path) func(friction float64) *drag.Prepared {
	return func(friction float64) *drag.Prepared {
		t.Helper()
		p, err := drag.String{
			Sections: []drag.PipeSection{{Pipe: tubing(), Length: 9000 * unit.Foot}}, BottomMD: 9000 * unit.Foot, Path: path,
			HoleSections: []drag.HoleSection{{BottomMD: 9000 * unit.Foot, Friction: friction, Hole: 8.535 * unit.Inch}},
			Inside:       9.5 * unit.PoundPerGallon, Outside: 9.5 * unit.PoundPerGallon,
		}.Prepare()
		require.NoError(t, err)
		return p
	}
}

// In a straight inclined hole the drag is that of a sliding weight, whatever the
// pull.
func TestDragOnASlant(t *testing.T) {
	slant := 40 * unit.Degree
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{MD: 0, Inclination: slant}, {MD: 9000 * unit.Foot, Inclination: slant}})
	require.NoError(t, err)
	hole := holeAlong(t, path)
	r := overpull()
	r.Pull.Path = path
	band, err := r.DragWith(packer.Friction{Least: hole(0.15), Nominal: hole(0.2), Greatest: hole(0.3)})
	require.NoError(t, err)
	w := tubing().BuoyedWeight(9.5*unit.PoundPerGallon, 9.5*unit.PoundPerGallon).In(unit.PoundPerFoot)
	side := w * 9000 * math.Sin(float64(slant))
	require.InDelta(t, 0.15*side, band.Least.In(unit.PoundForce), 0.01)
	require.InDelta(t, 0.2*side, band.Nominal.In(unit.PoundForce), 0.01)
	require.InDelta(t, 0.3*side, band.Greatest.In(unit.PoundForce), 0.01)

	// With it, the reading is the hook load of package drag: no surface pressure.
	r.Pull.Drag = band
	p, err := r.Parting()
	require.NoError(t, err)
	require.InDelta(t, hole(0.3).HookLoad(drag.Pulled, r.Pins.Greatest).In(unit.PoundForce), p.Reading.Greatest.In(unit.PoundForce), 0.1)

	_, err = r.DragWith(packer.Friction{Least: hole(0.3), Nominal: hole(0.2), Greatest: hole(0.1)})
	require.ErrorContains(t, err, "out of order")
	_, err = r.DragWith(packer.Friction{})
	require.ErrorContains(t, err, "Friction: is incomplete")
}
