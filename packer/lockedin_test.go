package packer_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// tubing is 3-1/2 in 9.3 lb/ft.
func tubing() tubular.Pipe {
	return tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
}

func ExampleLockIn_Locked() {
	l, err := packer.LockIn{Pipe: tubing(), Length: 9000 * unit.Foot, Inside: 3500 * unit.PSI}.Locked()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("stretch while setting %.2f in, locked in %s of tension\n", l.Stretch.In(unit.Inch), l.Tension.Rounded(4))
	// Output:
	// stretch while setting 13.68 in, locked in 9843 lbf of tension
}

// Two ways: the closed form, and the node-by-node string that is landed plugged
// under pressure and then bled off.
func TestLockedInAgreesWithTheString(t *testing.T) {
	for _, p := range [][2]float64{{3500, 0}, {0, 1500}, {5000, 500}} {
		in, out := unit.Pressure(p[0])*unit.PSI, unit.Pressure(p[1])*unit.PSI
		l, err := packer.LockIn{Pipe: tubing(), Length: 9000 * unit.Foot, Inside: in, Outside: out}.Locked()
		require.NoError(t, err)
		workingtest.Check(t, l.Steps())

		path, err := hydrostatics.Vertical(9000 * unit.Foot)
		require.NoError(t, err)
		s := movement.String{
			Sections: []movement.StringSection{{Pipe: tubing(), BottomMD: 9000 * unit.Foot, Hole: tubing().OD}}, // no room to buckle
			Path:     path,
			Seals:    movement.SealBore{Bore: tubing().OD, Restraint: movement.Anchored},
		}
		state := func(inside, outside unit.Pressure) movement.WellProfiles {
			column := func(at unit.Pressure) func(unit.Length) unit.Pressure {
				return func(z unit.Length) unit.Pressure {
					return at + hydrostatics.Pressure(9.5*unit.PoundPerGallon, z)
				}
			}
			return movement.WellProfiles{Inside: column(inside), Outside: column(outside), Tail: movement.Hanging}
		}
		landed, err := s.Land(state(in, out), 0)
		require.NoError(t, err)
		bled, err := landed.Load(state(0, 0))
		require.NoError(t, err)
		require.InDelta(t, l.Tension.In(unit.PoundForce), bled.PackerForce.In(unit.PoundForce), 0.01, "%v", p)
		require.InDelta(t, (-l.Stretch).In(unit.Inch), bled.Movement.Total().In(unit.Inch), 1e-4)
	}
}

// Signs: pressure inside leaves tension, pressure outside compression, and a
// compensated hook neither.
func TestLockedInSigns(t *testing.T) {
	l, err := packer.LockIn{Pipe: tubing(), Length: 1000 * unit.Foot, Inside: 1000 * unit.PSI}.Locked()
	require.NoError(t, err)
	require.Positive(t, float64(l.Tension))
	require.InDelta(t, 0.4*1000*math.Pi/4*2.992*2.992, l.Tension.In(unit.PoundForce), 1e-9)
	l, err = packer.LockIn{Pipe: tubing(), Length: 1000 * unit.Foot, Outside: 1000 * unit.PSI}.Locked()
	require.NoError(t, err)
	require.Negative(t, float64(l.Tension))
	l, err = packer.LockIn{Pipe: tubing(), Length: 1000 * unit.Foot, Inside: 1000 * unit.PSI, Top: packer.Compensated}.Locked()
	require.NoError(t, err)
	require.Zero(t, l.Tension)
	require.Positive(t, float64(l.Stretch))
	workingtest.Check(t, l.Steps())
}

func TestLockInFaults(t *testing.T) {
	_, err := packer.LockIn{Inside: -1, Top: 7}.Locked()
	for _, want := range []string{"Pipe.OD", "Length: is 0", "Inside: is ", "Top: is 7"} {
		require.ErrorContains(t, err, want)
	}
}

func TestFormulasCarryNoUnits(t *testing.T) {
	end := movement.End{Bore: 3.25 * unit.Inch, OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Inside: 12800 * unit.PSI, Outside: 4800 * unit.PSI, Below: 12000 * unit.PSI}
	dimension.Check(t, dimension.Free, packer.JointLoad, end, 1000*unit.PoundForce)
	dimension.Check(t, dimension.Free, packer.JointForce, end, 1000*unit.PoundForce)
	dimension.Check(t, dimension.Free, packer.Push, 100*unit.PSI, 2*unit.SquareInch)
	dimension.Check(t, dimension.Free, packer.ElementPressure, 1000*unit.PoundForce, 8.5*unit.Inch, 6*unit.Inch)
}

// TestWhereThePlugIsDecidesTheSign: by hand for 1,000 psi in 3-1/2 in 9.3 lb/ft,
// bore 7.031 in². Plugged in the string 0.4 × 7,031 = 2,812 lbf of tension stay;
// open to a chamber under seals of 4 in, 12.566 in², -(12,566 - 7,031 + 0.6 ×
// 7,031) = -9,754 lbf. The string of a programme, held in the same conditions and
// bled off, agrees to 1e-9, where it has no room to buckle.
func TestWhereThePlugIsDecidesTheSign(t *testing.T) {
	pipe, depth := tubing(), 9000*unit.Foot
	path, err := hydrostatics.Vertical(depth)
	require.NoError(t, err)
	for _, x := range []struct {
		chamber unit.Length
		want    float64
	}{{0, 2812}, {4 * unit.Inch, -9754}} {
		l, err := packer.LockIn{Pipe: pipe, Length: depth, Inside: 1000 * unit.PSI, Chamber: x.chamber}.Locked()
		require.NoError(t, err)
		workingtest.Check(t, l.Steps())
		require.InDelta(t, x.want, l.Tension.In(unit.PoundForce), 1)

		a := movement.Assembly{Sections: []movement.StringSection{{Pipe: pipe, BottomMD: depth, Hole: pipe.OD}}, Path: path,
			Holds: []movement.Hold{{MD: depth, Bore: x.chamber}}}
		m, err := a.MakeUp()
		require.NoError(t, err)
		at := func(p unit.Pressure) movement.Conditions {
			c := movement.Conditions{
				Inside: func(_ int, d unit.Length) unit.Pressure { return fluid(9.5*unit.PoundPerGallon, p)(d) },
				Outside: func(part int, d unit.Length) unit.Pressure {
					if part == 1 && x.chamber > 0 {
						return fluid(9.5*unit.PoundPerGallon, p)(d)
					}
					return fluid(9.5*unit.PoundPerGallon, 0)(d)
				},
			}
			return c
		}
		s, err := m.Land(at(0))
		require.NoError(t, err)
		s, err = m.TakeHold(s, 0, at(1000*unit.PSI))
		require.NoError(t, err)
		bled, err := m.Load(s, at(0))
		require.NoError(t, err)
		require.InEpsilon(t, float64(l.Tension), float64(bled.Holds[0].Load), 1e-9)
		require.InEpsilon(t, float64(l.Stretch), float64(bled.Holds[0].Moved), 1e-9)

		b, err := packer.LockIn{Pipe: pipe, Length: depth, Chamber: x.chamber}.Bitten(unit.Band[unit.Pressure]{Least: 800 * unit.PSI, Nominal: 1000 * unit.PSI, Greatest: 1100 * unit.PSI})
		require.NoError(t, err)
		require.Equal(t, l.Tension, b.Tension.Nominal)
		require.NoError(t, b.Tension.Validate())
		require.NoError(t, b.Stretch.Validate())
		require.InEpsilon(t, 1.1*x.want, max(b.Tension.Greatest, -b.Tension.Least).In(unit.PoundForce)*math.Copysign(1, x.want), 1e-3)
	}
	_, err = packer.LockIn{Pipe: pipe, Length: depth, Chamber: unit.Inch}.Locked()
	require.ErrorContains(t, err, "Chamber: is")
	_, err = packer.LockIn{Pipe: pipe, Length: depth}.Bitten(unit.Band[unit.Pressure]{Least: 1})
	require.ErrorContains(t, err, "Inside: ")
}
