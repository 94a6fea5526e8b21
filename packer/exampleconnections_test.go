package packer_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/movement"
	"completion.example/valve"
)

// What a string puts on a packer while cold fluid is squeezed, for each way of
// joining the two, with pressures and temperatures by depth.
func ExampleSeat_ConnectionsAlong() {
	path, err := hydrostatics.Vertical(10000 * unit.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	mud := func(surface unit.Pressure) func(unit.Length) unit.Pressure {
		return func(tvd unit.Length) unit.Pressure {
			return surface + hydrostatics.Pressure(9.5*unit.PoundPerGallon, tvd)
		}
	}
	seat := packer.Seat{Casing: 6.094 * unit.Inch, Bore: 3.25 * unit.Inch}
	joined, err := seat.ConnectionsAlong(packer.PathCase{
		Name: "squeeze",
		String: movement.String{Path: path, Seals: packer.Restraint(seat.Bore, 0),
			Sections: []movement.StringSection{{Pipe: tubing(), BottomMD: 10000 * unit.Foot, Hole: seat.Casing}}},
		Reference: movement.WellProfiles{Inside: mud(0), Outside: mud(0)},
		State:     movement.WellProfiles{Inside: mud(4000 * unit.PSI), Outside: mud(1000 * unit.PSI)},
		Below:     mud(4000 * unit.PSI)(10000 * unit.Foot),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range joined {
		fmt.Printf("%v: moves %.1f in, %.0f lbf on the packer\n", c.Restraint, c.Movement.In(unit.Inch), c.Bearing.Tubing.In(unit.PoundForce))
	}
	// Output:
	// free: moves -28.9 in, 0 lbf on the packer
	// limited: moves -28.9 in, 0 lbf on the packer
	// anchored: moves 0.0 in, 17592 lbf on the packer
}

// What setting a packer asks of the surface pressure, device by device.
func ExampleSetting_Demands() {
	both := valve.Columns{Applied: unit.Exactly(4500 * unit.PSI), Opposing: unit.Exactly(4300 * unit.PSI)}
	s := packer.Setting{
		Stages:  []packer.Stage{{Name: "set", Acts: unit.Within(3000*unit.PSI, 0.05)}},
		Columns: both, Piston: 8 * unit.SquareInch, Kept: 0.8, Plug: packer.Plug{Columns: both, Rating: 6000 * unit.PSI},
	}
	demands, err := s.Demands(packer.Set)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range demands {
		b := d.Bound()
		fmt.Println(b.Name, b.Surface.Rounded(4), "upper limit:", b.Upper)
	}
	// Output:
	// packer: set 2950 psi upper limit: false
	// plug 5800 psi upper limit: true
}

// The corners that an envelope was made from.
func ExampleEnvelope_Polygon() {
	e, err := packer.Polygon{Vertices: []packer.Load{
		{Differential: 7500 * unit.PSI}, {Axial: 80 * unit.Kilopound}, {Differential: -7500 * unit.PSI}, {Axial: -80 * unit.Kilopound},
	}}.Envelope()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, v := range e.Polygon().Vertices {
		fmt.Println(v.Differential, v.Axial)
	}
	// Output:
	// 7500 psi 0 lbf
	// 0 psi 80000 lbf
	// -7500 psi 0 lbf
	// 0 psi -80000 lbf
}
