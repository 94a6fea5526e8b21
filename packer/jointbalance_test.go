package packer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// TestOneBalanceOfAJoint holds to 1e-9, on random strings, four ways to the
// reading at which pins part:
//
//   - packer.Pull.Balance;
//   - the string of a programme, held at a packer, with a tail and seals below,
//     pulled until packer.JointLoad of its wall force is the pins' strength;
//   - movement.MadeUp.ReadingForJoint of the same string;
//   - by hand, in effective force: pins, less the differential on the joint's seal,
//     and the effective weight above; at the top + pi·Ai - po·Ao - pi·Ai.
func TestOneBalanceOfAJoint(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 4))
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	for range 200 {
		var sections []movement.StringSection
		top := unit.Length(0)
		for range 1 + r.IntN(4) {
			od := between(2.375, 5.5)
			top += unit.Length(between(500, 3000)) * unit.Foot
			sections = append(sections, movement.StringSection{BottomMD: top, Hole: 8.535 * unit.Inch, Pipe: tubular.Pipe{
				OD: unit.Length(od) * unit.Inch, ID: unit.Length(od-between(0.4, 1)) * unit.Inch, Material: tubular.Steel()}})
		}
		ρi, ρo := unit.Density(between(8, 16))*unit.PoundPerGallon, unit.Density(between(8, 16))*unit.PoundPerGallon
		pi, po := unit.Pressure(between(0, 5000))*unit.PSI, unit.Pressure(between(0, 3000))*unit.PSI
		seal, pins, block := unit.Length(between(3, 7))*unit.Inch, unit.Force(between(5000, 100000))*unit.PoundForce, unit.Force(between(0, 30000))*unit.PoundForce
		slant := unit.Angle(between(0, 60)) * unit.Degree

		depth := top + 2000*unit.Foot
		path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: slant}, {MD: depth, Inclination: slant}})
		require.NoError(t, err)
		pull := packer.Pull{Sections: sections, Path: path, Inside: fluid(ρi, pi), Outside: fluid(ρo, po), Seal: seal, Block: block}
		b, err := pull.Balance(pins)
		require.NoError(t, err)

		last := sections[len(sections)-1].Pipe
		whole := append(sections[:len(sections):len(sections)], movement.StringSection{Pipe: last, BottomMD: depth, Hole: 8.535 * unit.Inch})
		m, err := movement.Assembly{
			Sections: whole, Path: path, Block: block, Spacing: 200 * unit.Foot,
			Joints: []movement.Joint{{MD: top, Seal: seal}}, Holds: []movement.Hold{{MD: top + 30*unit.Foot, Bore: 6 * unit.Inch}},
			Seals: []movement.Seal{{MD: top + 1000*unit.Foot, Bore: 5 * unit.Inch}},
		}.MakeUp()
		require.NoError(t, err)
		c := movement.Conditions{
			Inside: func(_ int, d unit.Length) unit.Pressure { return fluid(ρi, pi)(d) },
			Outside: func(part int, d unit.Length) unit.Pressure {
				return fluid(ρo, po)(d) + unit.Pressure(part)*700*unit.PSI
			},
		}
		s, err := m.Land(c)
		require.NoError(t, err)
		s, err = m.TakeHold(s, 0, c)
		require.NoError(t, err)
		c.Top, c.Reading = movement.OnHookClosed, 50000*unit.PoundForce
		l, err := m.Load(s, c)
		require.NoError(t, err)
		reading, err := m.ReadingForJoint(&l, 0, pins)
		require.NoError(t, err)
		require.InEpsilon(t, float64(b.Reading), float64(reading), 1e-9)

		c.Reading = reading
		l, err = m.Load(s, c)
		require.NoError(t, err)
		tvd, err := path.TVD(top)
		require.NoError(t, err)
		end := movement.End{Bore: seal, OD: last.OD, ID: last.ID, Inside: pull.Inside(tvd), Outside: pull.Outside(tvd), Below: pull.Inside(tvd)}
		require.InEpsilon(t, float64(pins), float64(packer.JointLoad(end, l.Joints[0].Wall)), 1e-9)
		require.InEpsilon(t, float64(pins), float64(l.Joints[0].Balance), 1e-9)

		fe, from := float64(pins)-float64(end.Inside-end.Outside)*math.Pi/4*float64(seal*seal), 0.0
		for _, x := range sections {
			w := float64(x.Pipe.WeightInAir()) + 9.80665*(float64(ρi)*float64(x.Pipe.InnerArea())-float64(ρo)*float64(x.Pipe.OuterArea()))
			fe += w * (float64(x.BottomMD) - from) * math.Cos(float64(slant))
			from = float64(x.BottomMD)
		}
		byHand := fe - float64(po)*float64(sections[0].Pipe.OuterArea()) + float64(block)
		require.InEpsilon(t, byHand, float64(reading), 1e-9)
	}
}
