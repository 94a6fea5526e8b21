package packer_test

import (
	"fmt"
	"strings"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve"
)

func ExamplePinnedStage() {
	s, err := packer.PinnedStage("slips", valve.Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}, 8*unit.SquareInch)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Name, s.Acts.Rounded(4))
	// Output: slips 3206 psi .. 3375 psi .. 3544 psi
}

func ExampleSetting_PressuresIn() {
	depth := 9000 * unit.Foot
	column, err := hydrostatics.NewColumn(
		[]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(9.5 * unit.PoundPerGallon), BottomTVD: depth}}, nil, hydrostatics.Reference{})
	if err != nil {
		fmt.Println(err)
		return
	}
	annulus := unit.Exactly(hydrostatics.Pressure(8.8*unit.PoundPerGallon, depth))
	s := packer.Setting{
		Stages:  []packer.Stage{{Name: "set", Acts: unit.Exactly(3375 * unit.PSI)}},
		Columns: valve.Columns{Opposing: annulus}, Piston: 8 * unit.SquareInch, Kept: 0.8,
		Plug: packer.Plug{Columns: valve.Columns{Opposing: annulus}, Rating: 10000 * unit.PSI},
	}
	p, err := s.PressuresIn(column, depth)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Complete.Rounded(4))
	// Output: 3048 psi
}

func ExampleSetting_Apply() {
	both := valve.Columns{Applied: unit.Exactly(4500 * unit.PSI), Opposing: unit.Exactly(4300 * unit.PSI)}
	s := packer.Setting{
		Stages:  []packer.Stage{{Name: "set", Acts: unit.Within(3000*unit.PSI, 0.05)}},
		Columns: both, Piston: 8 * unit.SquareInch, Kept: 0.8, Plug: packer.Plug{Columns: both, Rating: 6000 * unit.PSI},
	}
	for _, p := range []unit.Pressure{2500 * unit.PSI, 2800 * unit.PSI, 3500 * unit.PSI} {
		a, err := s.Apply(p)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %v, %s in the element after bleed-off\n", p, a.State, a.Kept.Rounded(4))
	}
	// Output:
	// 2500 psi: not, 0 lbf in the element after bleed-off
	// 2800 psi: unknown, 0 lbf in the element after bleed-off
	// 3500 psi: acted, 23680 lbf in the element after bleed-off
}

func ExampleElementPressure() {
	fmt.Println(packer.ElementPressure(120*unit.Kilopound, 8.535*unit.Inch, 6*unit.Inch).Rounded(4))
	// Output: 4147 psi
}

// The force of the formation on a packer from below, with casing of 5.791 in and
// tubing of 1.995 in bore; printed 33,695 kgf.
//
// Source: web worked example, packer force balance (2012).
func ExamplePush() {
	area := tubular.AnnularCapacity(5.791*unit.Inch, 1.995*unit.Inch)
	fmt.Printf("%.0f kgf\n", packer.Push(225*unit.KilogramForcePerSquareCentimetre, area).In(unit.KilogramForce))
	// Output: 33696 kgf
}

func ExampleJointLoad() {
	end := movement.End{
		Bore: 4 * unit.Inch, OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch,
		Inside: 7000 * unit.PSI, Below: 7000 * unit.PSI, Outside: 4500 * unit.PSI,
	}
	load := packer.JointLoad(end, 20*unit.Kilopound)
	fmt.Println("load on the pins:", load.Rounded(4))
	fmt.Println("force in the pipe that parts 60,000 lbf:", packer.JointForce(end, 60*unit.Kilopound).Rounded(4))
	// Output:
	// load on the pins: 45494 lbf
	// force in the pipe that parts 60,000 lbf: 34506 lbf
}

func ExampleRatings_Polygon() {
	p, err := packer.Ratings{
		FromBelow: 7500 * unit.PSI, FromAbove: 6000 * unit.PSI, Tension: 150 * unit.Kilopound, Compression: 100 * unit.Kilopound,
		Up: 300 * unit.Kilopound, Down: 250 * unit.Kilopound, Area: 40 * unit.SquareInch,
	}.Polygon()
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, v := range p.Vertices {
		fmt.Printf("%s, %s, then %s\n", v.Differential.Rounded(4), v.Axial.Rounded(4), p.Limits[i])
	}
	// Output:
	// -3750 psi, -100000 lbf, then mandrel in compression
	// 7500 psi, -100000 lbf, then element from below
	// 7500 psi, 0 lbf, then slips up
	// 3750 psi, 150000 lbf, then mandrel in tension
	// -6000 psi, 150000 lbf, then element from above
	// -6000 psi, -10000 lbf, then slips down
}

func ExampleReadPolygon() {
	_, err := packer.ReadPolygon(strings.NewReader(`{"vertices": [
		{"differential": "-5000 psi", "axial": "-50000 lbf"},
		{"differential": "5000 psi", "axial": "-50000 lbf"},
		{"differential": "1000 psi", "axial": "10000 lbf"},
		{"differential": "5000 psi", "axial": "100000 lbf"},
		{"differential": "-5000 psi", "axial": "100000 lbf"}]}`))
	fmt.Println(err)
	// Output: packer: the envelope is not convex: it turns back at corner 3, 1000 psi and 10000 lbf
}

func ExampleEnvelope_Tests() {
	e, err := box().Envelope()
	if err != nil {
		fmt.Println(err)
		return
	}
	above, below, err := e.Tests(20*unit.Kilopound, 0.1)
	fmt.Println("from above", above, "from below", below, err)
	// Output: from above 4500 psi from below 4500 psi <nil>
}

func ExampleSeat_Bearing() {
	b := packer.Seat{Casing: 8.535 * unit.Inch, Bore: 4.75 * unit.Inch}.Bearing(75*unit.Kilopound, 6500*unit.PSI, 3500*unit.PSI)
	fmt.Println(b.Pressure.Rounded(4), "by the differential,", b.Casing.Rounded(4), "on the casing")
	// Output: 118478 lbf by the differential, 193478 lbf on the casing
}

func ExampleStrokeOf() {
	s, err := packer.StrokeOf([]packer.Travel{{Case: "stimulation", Movement: -8 * unit.Foot}, {Case: "production", Movement: 5 * unit.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s up in %s, %s down in %s\n", s.Up.Rounded(3), s.UpCase, s.Down.Rounded(3), s.DownCase)
	// Output: 8 ft up in stimulation, 60 in down in production
}

func ExampleSealPlan_Engage() {
	cases, err := plan().Engage(2 * unit.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range cases {
		fmt.Println(c, "stopped:", c.Stopped)
	}
	// Output:
	// as landed: 18 ft engaged, locator 2 ft above its shoulder stopped: false
	// stimulation: 10 ft engaged, locator 10 ft above its shoulder stopped: false
	// production: 20 ft engaged, locator 0 ft above its shoulder stopped: true
}

func ExamplePull_Balance() {
	// Tubing in a seal bore with oil over mud: 4.7 lb/ft less 1,313 lbf upwards.
	column := func(rho unit.Density) func(unit.Length) unit.Pressure {
		return func(tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(rho, tvd) }
	}
	pipe := tubular.Pipe{OD: 2.375 * unit.Inch, ID: 1.995 * unit.Inch, Weight: 4.7 * unit.PoundPerFoot, Material: tubular.Steel()}
	b, err := packer.Pull{
		Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 5500 * unit.Foot}},
		Inside:   column(7.5 * unit.PoundPerGallon), Outside: column(8.5 * unit.PoundPerGallon), Seal: 3.5 * unit.Inch,
	}.Balance(0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("weight", b.Weight.Rounded(4), "end", b.End.Rounded(4), "hook load", b.Reading.Rounded(4))
	// Output: weight 25850 lbf end -1312 lbf hook load 24538 lbf
}

func ExampleRelease_DragWith() {
	slant, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: 40 * unit.Degree}, {MD: 9000 * unit.Foot, Inclination: 40 * unit.Degree}})
	if err != nil {
		fmt.Println(err)
		return
	}
	hole := func(friction float64) *drag.Prepared {
		p, err := drag.String{
			Sections: []drag.PipeSection{{Pipe: tubing(), Length: 9000 * unit.Foot}}, BottomMD: 9000 * unit.Foot, Path: slant,
			HoleSections: []drag.HoleSection{{BottomMD: 9000 * unit.Foot, Friction: friction, Hole: 8.535 * unit.Inch}},
			Inside:       9.5 * unit.PoundPerGallon, Outside: 9.5 * unit.PoundPerGallon,
		}.Prepare()
		if err != nil {
			fmt.Println(err)
		}
		return p
	}
	r := overpull()
	r.Pull.Path = slant
	band, err := r.DragWith(packer.Friction{Least: hole(0.15), Nominal: hole(0.2), Greatest: hole(0.3)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(band.Rounded(4))
	// Output: 6961 lbf .. 9281 lbf .. 13922 lbf
}

func ExampleGrade_Validation() {
	v := packer.V4.Validation()
	fmt.Println("liquid", v.Liquid, "axial loads", v.AxialLoads, "temperature cycles", v.Cycling)
	// Output: liquid true axial loads true temperature cycles false
}
