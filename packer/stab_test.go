package packer_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/packer"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// seal is 2-3/8 in tubing in a bore of 3-1/2 in, with 2,145 psi in the tubing
// and 2,431 psi around it.
//
// Source: lecture slides, seal bore with oil over mud at 5,500 ft.
func seal() movement.End {
	return movement.End{
		Bore: 3.5 * unit.Inch, OD: 2.375 * unit.Inch, ID: 1.995 * unit.Inch,
		Inside: 2145 * unit.PSI, Below: 2145 * unit.PSI, Outside: 2431 * unit.PSI,
	}
}

func ExampleStab_Weights() {
	s := packer.Stab{
		Down: 22 * unit.Kilopound, Up: 25 * unit.Kilopound,
		End: movement.End{
			Bore: 3.5 * unit.Inch, OD: 2.375 * unit.Inch, ID: 1.995 * unit.Inch,
			Inside: 2145 * unit.PSI, Below: 2145 * unit.PSI, Outside: 2431 * unit.PSI,
		},
		Friction: unit.Within(1000*unit.PoundForce, 0.5),
	}
	w, err := s.Weights()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("sealing changes the end force by", w.Piston.Rounded(4))
	fmt.Println("going in:  ", w.In.Rounded(4))
	fmt.Println("coming out:", w.Out.Rounded(4))
	// Output:
	// sealing changes the end force by 1858 lbf
	// going in:   22358 lbf .. 22858 lbf .. 23358 lbf
	// coming out: 27358 lbf .. 27858 lbf .. 28358 lbf
}

// One pressure all round: sealing changes nothing, whatever the bore.
func TestSealingWithoutDifferentialChangesNothing(t *testing.T) {
	for _, bore := range []unit.Length{2 * unit.Inch, 2.375 * unit.Inch, 4 * unit.Inch} {
		e := seal()
		e.Bore, e.Inside, e.Below = bore, e.Outside, e.Outside
		w, err := packer.Stab{Down: 1000, Up: 1000, End: e}.Weights()
		require.NoError(t, err)
		require.InDelta(t, 0, float64(w.Piston), 1e-9)
		require.InDelta(t, 0, float64(w.SetDown.Nominal), 1e-9)
	}
}

// Signs: more pressure below pushes the string up, takes weight off the hook
// and more set-down to go in; friction and latch add to the pull.
func TestStabSigns(t *testing.T) {
	e := seal()
	e.Inside, e.Below = e.Outside, e.Outside+100*unit.PSI
	s := packer.Stab{Down: 20 * unit.Kilopound, Up: 24 * unit.Kilopound, End: e,
		Friction: unit.Exactly(2 * unit.Kilopound), Latch: unit.Within(5*unit.Kilopound, 0.2)}
	w, err := s.Weights()
	require.NoError(t, err)
	push := 100 * math.Pi / 4 * 3.5 * 3.5 // lbf
	require.InDelta(t, -push, w.Piston.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 2000+push, w.SetDown.Nominal.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 20000-2000-push, w.In.Nominal.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 24000+2000+6000-push, w.Out.Greatest.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 2000+4000-push, w.Overpull.Least.In(unit.PoundForce), 1e-6)
	require.NoError(t, w.In.Validate())
	require.NoError(t, w.SetDown.Validate())
	workingtest.Check(t, w.Steps())
}

func TestStabFaults(t *testing.T) {
	_, err := packer.Stab{Down: 2, Up: 1, Friction: unit.Band[unit.Force]{Least: 1}, Latch: unit.Exactly(-unit.PoundForce)}.Weights()
	for _, want := range []string{"Up: is", "End.OD", "End.Bore", "Friction: is", "Latch: begins"} {
		require.ErrorContains(t, err, want)
	}
}

func TestJointLoadIsTheInverseOfJointForce(t *testing.T) {
	e := seal()
	for _, f := range []unit.Force{-1e5, 0, 3e5} {
		require.InDelta(t, float64(f), float64(packer.JointLoad(e, packer.JointForce(e, f))), 1e-9)
	}
	// A joint that seals on the pipe's own bore feels no pressure inside.
	e.Bore = e.ID
	e.Outside = 0
	require.InDelta(t, 1000, float64(packer.JointLoad(e, 1000)), 1e-9)
}

func ExampleSeat_Connections() {
	seat := packer.Seat{Casing: 6.094 * unit.Inch, Bore: 3.25 * unit.Inch}
	squeeze := packerExample()
	squeeze.Seals = packer.Restraint(seat.Bore, 0) // a locator on its shoulder
	below := squeeze.Final.Inside(10000 * unit.Foot)
	all, err := seat.Connections(packer.Case{Name: "squeeze", String: squeeze, Below: below})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range all {
		fmt.Printf("%-8v moves %7.1f in, tubing on packer %6.0f lbf, packer on casing %6.0f lbf\n", c.Restraint,
			c.Movement.In(unit.Inch), c.Bearing.Tubing.In(unit.PoundForce), c.Bearing.Casing.In(unit.PoundForce))
	}
	// Output:
	// free     moves  -165.2 in, tubing on packer      0 lbf, packer on casing 166863 lbf
	// limited  moves  -165.2 in, tubing on packer      0 lbf, packer on casing 166863 lbf
	// anchored moves     0.0 in, tubing on packer  54625 lbf, packer on casing 221488 lbf
}

// By hand: 1,000 psi from below on a ring of 10 in² over a pull of 20,000 lbf.
func TestBearing(t *testing.T) {
	b := packer.Seat{Casing: unit.Length(math.Sqrt(4 / math.Pi * 20 * float64(unit.SquareInch))), Bore: unit.Length(math.Sqrt(4 / math.Pi * 10 * float64(unit.SquareInch)))}.
		Bearing(20*unit.Kilopound, 3000*unit.PSI, 2000*unit.PSI)
	require.InDelta(t, 10000, b.Pressure.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 30000, b.Casing.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 1000, b.Load.Differential.In(unit.PSI), 1e-9)
	require.Equal(t, 20*unit.Kilopound, b.Load.Axial)
	workingtest.Check(t, b.Steps())
	_, err := packer.Seat{}.Connections(packer.Case{})
	for _, want := range []string{"Seat.Bore", "Sections: is empty"} {
		require.ErrorContains(t, err, want)
	}
}

// Two ways: the pins of an anchored string bear the force that the packer takes,
// and the balance of the joint finds the same from the force in the pipe.
func TestPinsBearThePackerForce(t *testing.T) {
	v := packerExample()
	v.Seals.Restraint, v.SlackOff = movement.Anchored, 20*unit.Kilopound
	a, err := v.Analyse()
	require.NoError(t, err)
	bottom := v.Sections[0].BottomMD
	end := movement.End{
		Bore: v.Seals.Bore, OD: v.Sections[0].Pipe.OD, ID: v.Sections[0].Pipe.ID,
		Inside: v.Final.Inside(bottom), Below: v.Final.Inside(bottom), Outside: v.Final.Outside(bottom),
	}
	require.InEpsilon(t, float64(a.PackerForce), float64(packer.JointLoad(end, a.TrueForce)), 1e-12)
}
