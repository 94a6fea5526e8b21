package movement

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// standing is a vertical string of 1,000 m in nodes of 100 m, held at its lower end,
// under fluids that get denser with depth.
func standing(t *testing.T) (*MadeUp, Standing, Conditions) {
	path, err := hydrostatics.Vertical(1000)
	require.NoError(t, err)
	pipe := tubular.Pipe{OD: 0.12, ID: 0.1, Weight: 270, Material: tubular.Steel()}
	a := Assembly{Sections: []StringSection{{Pipe: pipe, BottomMD: 1000, Hole: 0.14}}, Path: path, Holds: []Hold{{MD: 1000, Bore: 0.12}}, Spacing: 100}
	m, err := a.MakeUp()
	require.NoError(t, err)
	c := Conditions{
		Inside:  func(_ int, z unit.Length) unit.Pressure { return unit.Pressure(9000*z + 0.001*z*z) },
		Outside: func(_ int, z unit.Length) unit.Pressure { return unit.Pressure(9500*z + 0.002*z*z) },
	}
	s, err := m.Land(c)
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, c)
	require.NoError(t, err)
	return m, s, c
}

// A node's weight in its fluids takes the mean of the slopes to both neighbours; an
// element bears the mean of its ends' shares of the drag.
func TestMeansBetweenNodesWorked(t *testing.T) {
	m, s, c := standing(t)
	l, err := m.Load(s, c)
	require.NoError(t, err)
	precise.Equal(t, float64(l.Nodes[3].Weight), `
		in = (9000*200 + 0.001*(pow(400, 2) - pow(200, 2)))/200/g
		out = (9500*200 + 0.002*(pow(400, 2) - pow(200, 2)))/200/g
		ws + pi/4*(0.1*0.1*in - 0.12*0.12*out)*g`, precise.Values{"g": gravity, "ws": m.bars[0].ws})

	c.Top, c.Reading, c.Drag = OnHookOpen, 5e5, 40000
	c.DragShare = func(md unit.Length) float64 { return 1 - float64(md)/1000*float64(md)/1000 }
	require.NoError(t, m.LoadInto(&l, s, c))
	precise.Equal(t, m.dragMid(&l, &c, 3), "40000*((1 - 0.3*0.3) + (1 - 0.4*0.4))/2", nil)
	c.Drag = 0
	require.Zero(t, m.dragMid(&l, &c, 3))
}

// In a vertical hole any tool passes that fits along the axis of the helix.
func TestToolThroughAHelix(t *testing.T) {
	m, s, c := standing(t)
	inside := c.Inside
	c.Inside = func(part int, z unit.Length) unit.Pressure { return inside(part, z) + 6e7 }
	l, err := m.Load(s, c)
	require.NoError(t, err)
	require.Equal(t, Helical, l.Nodes[9].Mode)
	_, _, limited := m.LongestTool(&l, unit.Length(0.1-0.02*(1+1e-9)))
	require.False(t, limited)
	_, _, limited = m.LongestTool(&l, unit.Length(0.1-0.02*(1-1e-9)))
	require.True(t, limited)
}
