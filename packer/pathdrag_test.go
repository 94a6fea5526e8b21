package packer_test

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// TestDragOfThePathIsADragOfTheString: in a hole that builds to 50 degrees the
// string of a programme takes its drag from package drag, at the end force that goes
// with the pins, and shows the reading that package drag has for that pull: two
// routes to one reading, and to the force at every depth, with one fluid everywhere.
func TestDragOfThePathIsADragOfTheString(t *testing.T) {
	joint, held, bottom := 9000*unit.Foot, 9030*unit.Foot, 9500*unit.Foot
	stations := []hydrostatics.Station{{}, {MD: 2000 * unit.Foot}}
	for k := range 11 {
		stations = append(stations, hydrostatics.Station{MD: unit.Length(2000+150*(k+1)) * unit.Foot, Inclination: unit.Angle(50*float64(k+1)/11) * unit.Degree})
	}
	stations = append(stations, hydrostatics.Station{MD: bottom, Inclination: 50 * unit.Degree})
	path, err := hydrostatics.NewPath(stations)
	require.NoError(t, err)
	hole, mud, pins := 8.535*unit.Inch, 9.5*unit.PoundPerGallon, 60000*unit.PoundForce
	spread, err := drag.String{
		Sections: []drag.PipeSection{{Pipe: tubing(), Length: joint}}, BottomMD: joint, Path: path,
		HoleSections: []drag.HoleSection{{BottomMD: joint, Friction: 0.2, Hole: hole}}, Inside: mud, Outside: mud,
	}.PrepareSpread([]float64{0.15}, []float64{0.3})
	require.NoError(t, err)

	m, err := movement.Assembly{
		Sections: []movement.StringSection{{Pipe: tubing(), BottomMD: bottom, Hole: hole}}, Path: path,
		Joints: []movement.Joint{{MD: joint, Seal: 4 * unit.Inch}}, Holds: []movement.Hold{{MD: held}},
	}.MakeUp()
	require.NoError(t, err)
	c := movement.Conditions{
		Inside:  func(_ int, d unit.Length) unit.Pressure { return fluid(mud, 0)(d) },
		Outside: func(_ int, d unit.Length) unit.Pressure { return fluid(mud, 0)(d) },
	}
	s, err := m.Land(c)
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, c)
	require.NoError(t, err)
	for _, p := range []*drag.Prepared{spread.Least, spread.Nominal, spread.Greatest} {
		taken, err := p.Taken(drag.Pulled, pins) // equal pressures: the end feels the pins alone
		require.NoError(t, err)
		c.Top, c.Drag, c.DragShare = movement.OnHookClosed, taken.Total, taken.Share
		l, err := m.Load(s, c)
		require.NoError(t, err)
		reading, err := m.ReadingForJoint(&l, 0, pins)
		require.NoError(t, err)
		require.InEpsilon(t, float64(p.HookLoad(drag.Pulled, pins)), float64(reading), 1e-9)
		c.Reading = reading
		l, err = m.Load(s, c)
		require.NoError(t, err)
		require.InEpsilon(t, float64(pins), float64(l.Joints[0].Balance), 1e-9)
		for _, n := range p.Profile(drag.Pulled, pins) {
			for _, x := range l.Nodes {
				if x.MD == n.MD && x.MD < joint {
					require.InEpsilon(t, float64(n.Force), float64(x.Effective), 1e-6, "%v", n.MD)
				}
			}
		}
	}
}
