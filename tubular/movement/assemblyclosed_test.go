package movement_test

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

func randomCondition(r *rand.Rand) movement.WellFluids {
	return movement.WellFluids{
		InsideDensity: unit.Density(7+9*r.Float64()) * unit.PoundPerGallon, OutsideDensity: unit.Density(7+9*r.Float64()) * unit.PoundPerGallon,
		InsideSurface: unit.Pressure(6000*r.Float64()) * unit.PSI, OutsideSurface: unit.Pressure(3000*r.Float64()) * unit.PSI,
		Friction: unit.Gradient(0.05*r.Float64()-0.025) * unit.PSIPerFoot,
	}
}

// openBelow are the conditions of a classical case: the flowing pressure inside
// acts under the seals.
func openBelow(c movement.WellFluids, warming unit.TemperatureDifference, end unit.Length, sections int) movement.Conditions {
	friction, below := c.Friction, c.Inside(end)
	c.Friction = 0
	x := movement.Conditions{
		Inside: func(_ int, d unit.Length) unit.Pressure { return c.Inside(d) },
		Outside: func(part int, d unit.Length) unit.Pressure {
			if part == 1 {
				return below
			}
			return c.Outside(d)
		},
		Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(150).Add(warming) },
	}
	for range sections {
		x.Friction = append(x.Friction, friction)
	}
	return x
}

// TestAssemblyAgreesWithTheClosedForm: node by node against Lubinski's and
// Hammerlindl's sums, on random tapered strings in vertical wells with flow, free
// and anchored, with weight set down: to 1e-9.
func TestAssemblyAgreesWithTheClosedForm(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 6))
	for range 300 {
		v := movement.Vertical{Sections: randomSections(r), Initial: randomCondition(r), Final: randomCondition(r), Seals: movement.SealBore{Bore: unit.Length(2.5+3*r.Float64()) * unit.Inch},
			Warming: unit.TemperatureDifference(100*r.Float64()-50) * unit.FahrenheitDifference}
		if r.IntN(2) == 0 {
			v.Seals.Restraint, v.SlackOff = movement.Anchored, unit.Force(30000*r.Float64()-10000)*unit.PoundForce
		}
		want, err := v.Analyse()
		require.NoError(t, err)
		end := v.Sections[len(v.Sections)-1].BottomMD
		path, err := hydrostatics.Vertical(end)
		require.NoError(t, err)
		m := made(t, movement.Assembly{Sections: v.Sections, Path: path, Spacing: 1000 * unit.Foot, Holds: []movement.Hold{{MD: end, Bore: v.Seals.Bore}}})
		at := func(c movement.WellFluids, warming unit.TemperatureDifference) movement.Conditions {
			return openBelow(c, warming, end, len(v.Sections))
		}
		s, err := m.Land(at(v.Initial, 0))
		require.NoError(t, err)
		if v.Seals.Restraint == movement.Anchored {
			s, err = m.SetDown(s, 0, at(v.Initial, 0), v.SlackOff)
			require.NoError(t, err)
		}
		got, err := m.Load(s, at(v.Final, v.Warming))
		require.NoError(t, err)
		require.InDelta(t, float64(want.PackerForce), float64(got.Holds[0].Load), 1e-9*1e6)
		require.InDelta(t, float64(want.TrueForce), float64(got.Holds[0].WallAbove), 1e-9*1e6)
		require.InDelta(t, float64(want.EffectiveForce), float64(got.Holds[0].EffectiveAbove), 1e-9*1e6)
		require.InDelta(t, float64(want.SealMovement), float64(got.Holds[0].Moved), 1e-9)
		require.InDelta(t, float64(want.Movement.Piston), float64(got.Movement.Piston), 1e-9)
		require.InDelta(t, float64(want.Movement.Ballooning), float64(got.Movement.Ballooning), 1e-9)
		require.InDelta(t, float64(want.Movement.Friction), float64(got.Movement.Friction), 1e-9)
		require.InDelta(t, float64(want.Movement.Thermal), float64(got.Movement.Thermal), 1e-9)
		if v.Seals.Restraint == movement.Free {
			require.InDelta(t, float64(want.Movement.Buckling), float64(got.Movement.Buckling), 1e-9)
		}
	}
}
