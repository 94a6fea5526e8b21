package movement_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// A string is landed, its packer takes hold under 3,500 psi against a plug in the
// string, the pressure is bled off, and a pull parts the release joint.
func ExampleMadeUp_Load() {
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot,
		Material: tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)}
	path, err := hydrostatics.Vertical(10000 * unit.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	m, err := movement.Assembly{
		Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 9500 * unit.Foot, Hole: 8.535 * unit.Inch}},
		Path:     path,
		Joints:   []movement.Joint{{MD: 8980 * unit.Foot, Seal: 4 * unit.Inch}},
		Holds:    []movement.Hold{{MD: 9000 * unit.Foot}},
		Plugs:    []unit.Length{9200 * unit.Foot},
	}.MakeUp()
	if err != nil {
		fmt.Println(err)
		return
	}
	mud := func(tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(9.5*unit.PoundPerGallon, tvd) }
	with := func(tubing unit.Pressure) movement.Conditions {
		return movement.Conditions{
			Inside: func(part int, tvd unit.Length) unit.Pressure {
				if part == 0 {
					return mud(tvd) + tubing
				}
				return mud(tvd)
			},
			Outside: func(_ int, tvd unit.Length) unit.Pressure { return mud(tvd) },
		}
	}
	s, err := m.Land(with(0))
	if err == nil {
		s, err = m.TakeHold(s, 0, with(3500*unit.PSI))
	}
	if err != nil {
		fmt.Println(err)
		return
	}
	l, err := m.Load(s, with(0))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("locked in:", l.Holds[0].Load.Rounded(4), "on the joint:", l.Joints[0].Balance.Rounded(4))

	pull := with(0)
	pull.Top, pull.Drag = movement.OnHookClosed, 5000*unit.PoundForce
	l, err = m.Load(s, pull)
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := m.ReadingForJoint(&l, 0, 60000*unit.PoundForce)
	if err != nil {
		fmt.Println(err)
		return
	}
	most, err := m.MostReading(&l, movement.PullLimits{Rig: 250 * unit.Kilopound})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("parts at a reading of", reading.Rounded(4), "and may be pulled to", most.Reading.Rounded(4), "by the", most.By)
	for _, what := range m.NotChecked() {
		fmt.Println("not checked:", what)
	}
	for _, s := range m.StepsNamed(&l, movement.Names{Joints: []string{"release"}}) {
		if s.Name == "balance of release, positive where it parts" {
			fmt.Println(s)
		}
	}
	// Output:
	// locked in: 9843 lbf on the joint: 14015 lbf
	// parts at a reading of 137035 lbf and may be pulled to 207215 lbf by the string, axial
	// not checked: section 1 to 9500 ft: the connection, of which nothing is known
	// P = Fe + (pi_ - po)*As = (-77035.1 lbf) + ((4431.69 psi) - (4431.69 psi))*(12.5664 in2) = -77035.1 lbf
}
