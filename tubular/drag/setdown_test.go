package drag_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// slant is 2-7/8 in 6.5 lb/ft in 6.094 in casing, in a straight hole.
func slant(t testing.TB, inclination unit.Angle, length, spacing unit.Length, friction float64) (*drag.Prepared, movement.Confined) {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: inclination}, {MD: length, Inclination: inclination}})
	require.NoError(t, err)
	pipe := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	s := drag.String{
		Sections: []drag.PipeSection{{Pipe: pipe, Length: length}}, BottomMD: length, Path: path, Spacing: spacing,
		HoleSections: []drag.HoleSection{{BottomMD: length, Friction: friction, Hole: 6.094 * unit.Inch}},
		Inside:       8.5 * unit.PoundPerGallon, Outside: 8.5 * unit.PoundPerGallon,
	}
	p, err := s.Prepare()
	require.NoError(t, err)
	return p, movement.Confined{Pipe: pipe, Hole: 6.094 * unit.Inch, Inclination: inclination, Weight: pipe.BuoyedWeight(s.Inside, s.Outside)}
}

// stiffness are E·I and the clearance.
func stiffness(c movement.Confined) (ei, r float64) {
	return float64(c.Pipe.Material.Young) * float64(c.Pipe.SecondMoment()), float64(c.Clearance())
}

// TestSetDownInAVerticalHole: from the neutral point down a helix in a vertical
// hole has C = C*·tanh(w·z/C*), C* = sqrt(4·E·I·w/(μ·r)), the solution of dC/dz = w -
// μ·r·C²/(4·E·I): so that W at the lower end leaves w·L - C*·atanh(W/C*) on the
// hook. Derived; the form is Mitchell's of 1986 (memory).
func TestSetDownInAVerticalHole(t *testing.T) {
	const friction = 0.3
	length := 10000 * unit.Foot
	p, c := slant(t, 0, length, 5*unit.Metre, friction)
	ei, r := stiffness(c)
	w := float64(c.Weight)
	most := math.Sqrt(4 * ei * w / (friction * r))
	require.InEpsilon(t, most, float64(c.FrictionLimit(friction)), 1e-12)
	for _, share := range []float64{0.1, 0.5, 0.9} {
		s := p.SetDown(unit.Force(share * most))
		want := w*float64(length) - most*math.Atanh(share)
		require.InDelta(t, want, float64(s.HookLoad), 1e-3*most, "%g", share)
		require.InDelta(t, most*math.Atanh(share), float64(s.Slacked), 1e-3*most)
		require.InDelta(t, most/w*math.Atanh(share), float64(s.Helical), 20)
		require.InDelta(t, 1-share*share, s.Passes, 0.01, "dC/dz over w")
		back, err := p.Arrives(s.Slacked)
		require.NoError(t, err)
		require.InDelta(t, share*most, float64(back.Weight), 1e-3)
	}
	greatest, err := p.MostSetDown()
	require.NoError(t, err)
	require.InDelta(t, most*math.Tanh(w*float64(length)/most), float64(greatest.Weight), 2e-3*most)
	require.Equal(t, greatest.Passes < drag.LockUp, greatest.Locked())
	t.Logf("C* %.0f lbf of %.0f lbf on the hook", most/float64(unit.PoundForce), w*float64(length)/float64(unit.PoundForce))

	_, err = p.Arrives(unit.Force(2 * w * float64(length)))
	require.ErrorIs(t, err, drag.ErrNotSlack)
	_, err = p.Arrives(-1)
	require.ErrorContains(t, err, "slacked: is")
}

// TestSetDownAlongALevelHole: a helix that is pushed along a level hole loses 1/C
// = 1/C0 - μ·r·L/(4·E·I). Derived from dC/ds = μ·r·C²/(4·E·I), which holds where the
// helix is full and its wall force more than the pipe's weight.
func TestSetDownAlongALevelHole(t *testing.T) {
	const friction = 0.3
	length := 300 * unit.Foot
	p, c := slant(t, 90*unit.Degree, length, unit.Metre, friction)
	ei, r := stiffness(c)
	end := 2 * float64(c.HelicalMost())
	require.Greater(t, r*end*end/(4*ei), float64(c.Weight))
	s := p.SetDown(unit.Force(end))
	top := 1 / (1/end - friction*r*float64(length)/(4*ei))
	require.InEpsilon(t, top, float64(-s.HookLoad), 1e-4)
	require.InDelta(t, float64(length), float64(s.Helical), 1e-6)
}

// Nothing buckles on a slant under little weight: all that is slacked off arrives.
func TestSetDownArrivesWhereNothingBuckles(t *testing.T) {
	p, c := slant(t, 60*unit.Degree, 3000*unit.Foot, 10*unit.Metre, 0.25)
	s := p.SetDown(c.Sinusoidal() / 2)
	require.InDelta(t, float64(s.Weight), float64(s.Slacked), 1e-6*float64(s.Weight))
	require.InDelta(t, 1, s.Passes, 1e-6)
	require.Zero(t, s.Buckled)
	level, _ := slant(t, 80*unit.Degree, 3000*unit.Foot, 10*unit.Metre, 0.5)
	_, err := level.MostSetDown()
	require.ErrorIs(t, err, drag.ErrNotSlack)
}

// TestTakenIsTheDragAlongTheString: on a slant it is spread evenly, wherever the
// end is pulled; its total is hook load pulled less rotating.
func TestTakenIsTheDragAlongTheString(t *testing.T) {
	length := 9000 * unit.Foot
	p, _ := slant(t, 40*unit.Degree, length, 10*unit.Metre, 0.2)
	for _, m := range []drag.Motion{drag.Pulled, drag.RunIn} {
		x, err := p.Taken(m, 20000*unit.PoundForce)
		require.NoError(t, err)
		require.InDelta(t, float64(p.HookLoad(m, 20000*unit.PoundForce)-p.HookLoad(drag.Rotating, 20000*unit.PoundForce)), float64(x.Total), 1e-6)
		for _, share := range []float64{0, 0.25, 0.5, 0.9, 1} {
			require.InDelta(t, 1-share, x.Share(unit.Length(share)*length), 1e-9)
		}
		require.InDelta(t, 0, x.Share(2*length), 1e-9)
	}
	still, err := p.Taken(drag.Rotating, 0)
	require.NoError(t, err)
	require.Zero(t, still.Total)
	require.Zero(t, still.Share(0))
	_, err = (&drag.Prepared{}).Taken(drag.Pulled, 0)
	require.Error(t, err)
}

func TestPrepareSpread(t *testing.T) {
	length := 3000 * unit.Foot
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: 40 * unit.Degree}, {MD: length, Inclination: 40 * unit.Degree}})
	require.NoError(t, err)
	pipe := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	s := drag.String{Sections: []drag.PipeSection{{Pipe: pipe, Length: length}}, BottomMD: length, Path: path,
		HoleSections: []drag.HoleSection{{BottomMD: length, Friction: 0.2, Hole: 6 * unit.Inch}}}
	x, err := s.PrepareSpread([]float64{0.1}, []float64{0.3})
	require.NoError(t, err)
	d := func(p *drag.Prepared) float64 {
		return float64(p.HookLoad(drag.Pulled, 0) - p.HookLoad(drag.Rotating, 0))
	}
	require.InEpsilon(t, d(x.Nominal)/2, d(x.Least), 1e-9)
	require.InEpsilon(t, d(x.Nominal)*1.5, d(x.Greatest), 1e-9)
	_, err = s.PrepareSpread([]float64{0.3}, []float64{0.4})
	require.ErrorContains(t, err, "HoleSections[0].Friction")
	_, err = s.PrepareSpread(nil, nil)
	require.ErrorContains(t, err, "each of 1 sections of hole")
}
