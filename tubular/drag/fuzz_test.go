package drag_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/drag"
	"github.com/stretchr/testify/require"
)

func FuzzEndForce(f *testing.F) {
	f.Add(9.5, 0.25, 0.3, 12000.0, 300.0, 90000.0, byte(2))
	f.Add(0.0, 1.0, 0.0, 1.0, 0.0, -1e9, byte(1))
	f.Fuzz(func(t *testing.T, ppg, cased, open, depth, spacing, hook float64, m byte) {
		s := horizontal(t, 20)
		s.Inside = unit.Density(ppg) * unit.PoundPerGallon
		s.HoleSections[0].Friction, s.HoleSections[1].Friction = cased, open
		s.BottomMD, s.Spacing = unit.Length(depth)*unit.Foot, unit.Length(spacing)*unit.Foot
		if s.Spacing != 0 && !(s.Spacing > 20*unit.Foot) {
			return // slow, not wrong
		}
		p, err := s.Prepare()
		if err != nil {
			return
		}
		motion := drag.Motion(m % 3)
		end, err := p.EndForce(motion, unit.Force(hook)*unit.PoundForce)
		if err != nil {
			return
		}
		back := p.HookLoad(motion, end).In(unit.PoundForce)
		if math.IsNaN(back) || math.Abs(back-hook) > 1e-6*math.Max(1e6, math.Abs(hook)) {
			t.Fatalf("%v: hook load %v gave %v at the end, and that %v at surface", motion, hook, end, back)
		}
	})
}

func TestZeroPreparedIsHarmless(t *testing.T) {
	var p drag.Prepared
	require.Equal(t, 5*unit.Kilopound, p.HookLoad(drag.Pulled, 5*unit.Kilopound))
	require.Empty(t, p.Profile(drag.RunIn, 0))
	require.Zero(t, p.Loads())
	_, err := p.EndForce(drag.Pulled, 1)
	require.Error(t, err)
}
