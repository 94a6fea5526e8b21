package packer_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

func ExampleUnseating_Freed() {
	mud := func(tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(9.5*unit.PoundPerGallon, tvd) }
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
	f, err := packer.Unseating{
		Pull: packer.Pull{
			Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 9000 * unit.Foot}},
			Inside:   mud, Outside: mud, Seal: 8.535 * unit.Inch, // the bore of the casing
		},
		Trapped: unit.Band[unit.Pressure]{Least: 4600 * unit.PSI, Nominal: 5500 * unit.PSI, Greatest: 6200 * unit.PSI},
		Reserve: 20 * unit.Kilopound,
	}.Freed()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f)
	// Output:
	// may be pipe light: -28411 lbf .. 11639 lbf .. 63131 lbf on the hook against a reserve of 20000 lbf; bleed to 5354 psi first
}

// At the pressure to bleed to, the weight is just the reserve.
func TestBleedToLeavesTheReserve(t *testing.T) {
	u := packer.Unseating{Pull: taper(), Trapped: unit.Within(9000*unit.PSI, 0.1), Reserve: 15 * unit.Kilopound}
	u.Pull.Seal = 8.535 * unit.Inch
	f, err := u.Freed()
	require.NoError(t, err)
	workingtest.Check(t, f.Steps())
	require.Equal(t, packer.Acted, f.Light)
	u.Trapped = unit.Exactly(f.BleedTo)
	f, err = u.Freed()
	require.NoError(t, err)
	require.InDelta(t, 15, f.Weight.Nominal.In(unit.Kilopound), 1e-6)

	u.Reserve = 1000 * unit.Kilopound
	f, err = u.Freed()
	require.NoError(t, err)
	require.True(t, f.Hopeless)
	require.Contains(t, f.String(), "nothing trapped")
	_, err = packer.Unseating{Trapped: unit.Exactly(-unit.PSI), Reserve: -1}.Freed()
	require.ErrorContains(t, err, "Trapped: begins")
	require.ErrorContains(t, err, "Reserve")
}

func notParted() packer.NotParted {
	return packer.NotParted{
		Release: overpull(), Tried: 130 * unit.Kilopound,
		Intervals: []packer.CutInterval{{Name: "joint above the packer", TopMD: 8960 * unit.Foot, BottomMD: 8985 * unit.Foot}, {Name: "blast joint", TopMD: 8000 * unit.Foot, BottomMD: 8020 * unit.Foot}},
		CutPull:   10 * unit.Kilopound, Clearance: 10 * unit.Foot,
	}
}

func ExampleNotParted_Options() {
	o, err := notParted().Options()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("load so far:", o.Joint.Nominal.Rounded(4), "should have parted:", o.Parts)
	fmt.Println("pull may rise by", o.Higher.Rounded(4), "to", o.Most.Rounded(4))
	fmt.Println("cut at", o.Cut.MD.Rounded(5), "with", o.Cut.Reading.Rounded(4), "on the indicator;", o.Cut.After.Rounded(4), "after")
	// Output:
	// load so far: 52804 lbf should have parted: not
	// pull may rise by 35772 lbf to 165772 lbf
	// cut at 8985 ft with 82075 lbf on the indicator; 72075 lbf after
}

func TestOptionsWhenLittleIsLeft(t *testing.T) {
	n := notParted()
	n.Release.Components[0].Share = 0.6 // 124,329 lbf
	o, err := n.Options()
	require.NoError(t, err)
	require.Zero(t, o.Higher)
	require.Equal(t, packer.NotActed, o.MostParts)
	// What the strongest pins lack, on the seal of 4 in less the bore of 2.992 in:
	// the pressure stretches the pipe above as well.
	p, err := n.Release.Parting()
	require.NoError(t, err)
	require.InDelta(t, (63000-p.Most.In(unit.PoundForce))/(4*math.Pi-math.Pi/4*2.992*2.992), o.Pressure.In(unit.PSI), 1e-6)
	require.True(t, o.PressureAvailable)
	// Pulled with it, the pins part at the reading advised and the pipe is just at
	// its share.
	with := n.Release
	with.Pull.Inside = fluid(9.5*unit.PoundPerGallon, o.Pressure)
	p, err = with.Parting()
	require.NoError(t, err)
	require.InDelta(t, float64(p.Reading.Greatest), float64(o.PressureReading), 1e-3)
	require.InDelta(t, 0.6, p.Weakest.Usage, 1e-9)
	require.InDelta(t, 63000, p.Most.In(unit.PoundForce), 1e-6)
	// With an open top the reading keeps the lift of the cap.
	open := n
	open.Release.Pull.OpenTop = true
	o, err = open.Options()
	require.NoError(t, err)
	open.Release.Pull.Inside = with.Pull.Inside
	p, err = open.Release.Parting()
	require.NoError(t, err)
	require.Zero(t, p.Nominal.Cap)
	require.InDelta(t, float64(p.Reading.Greatest), float64(o.PressureReading), 1e-3)
	require.InDelta(t, 0.6, p.Weakest.Usage, 1e-9)
	// Pins on a seal no wider than the bore feel none of it.
	narrow := n
	narrow.Release.Pull.Seal = 2.9 * unit.Inch
	o, err = narrow.Options()
	require.NoError(t, err)
	require.False(t, o.PressureAvailable)
	require.Zero(t, o.Pressure)

	n.Tried = 150 * unit.Kilopound
	o, err = n.Options()
	require.NoError(t, err)
	require.Equal(t, packer.Acted, o.Parts, "pins of 63 klbf at most have seen 73: the pull doesn't reach them")

	n.FreeMD = 8010 * unit.Foot
	o, err = n.Options()
	require.NoError(t, err)
	require.InDelta(t, 8000, o.Cut.MD.In(unit.Foot), 1e-9)
	require.InDelta(t, 1000, o.Cut.Fish.In(unit.Foot), 1e-9)
	n.FreeMD = 5000 * unit.Foot
	o, err = n.Options()
	require.NoError(t, err)
	require.ErrorIs(t, o.NoCut, packer.ErrNowhereToCut)
	require.ErrorContains(t, o.NoCut, "5000 ft")
	n.FreeMD, n.Clearance, n.Intervals = 9001*unit.Foot, -1, []packer.CutInterval{{Name: "x"}}
	_, err = n.Options()
	for _, want := range []string{"FreeMD", "Clearance", "Intervals[0]: x"} {
		require.ErrorContains(t, err, want)
	}
	require.False(t, errors.Is(err, packer.ErrNowhereToCut))
}

// By hand: cut at the joint, the string weighs what it weighs free.
func TestCutAtTheJointLeavesTheFreeWeight(t *testing.T) {
	n := notParted()
	n.Clearance = 0
	n.Intervals = []packer.CutInterval{{Name: "all", TopMD: 1, BottomMD: 9000 * unit.Foot}}
	o, err := n.Options()
	require.NoError(t, err)
	b, err := n.Release.Pull.Balance(0)
	require.NoError(t, err)
	require.InEpsilon(t, float64(b.Reading), float64(o.Cut.After), 1e-12)
}
