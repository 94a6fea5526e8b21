package drag_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/drag"
)

func ExampleCapstan() {
	fmt.Printf("%.1f klbf\n", drag.Capstan(100*unit.Kilopound, 0.25, 90*unit.Degree).In(unit.Kilopound))
	// Output:
	// 148.1 klbf
}

func ExampleIncline() {
	for _, m := range []drag.Motion{drag.RunIn, drag.Rotating, drag.Pulled} {
		fmt.Printf("%v %.0f lbf\n", m, drag.Incline(m, 10*unit.PoundPerFoot, 5000*unit.Foot, 60*unit.Degree, 0.3).In(unit.PoundForce))
	}
	// Output:
	// run in 12010 lbf
	// rotating 25000 lbf
	// pulled 37990 lbf
}

// buildAndHold is 10,000 ft of 3-1/2 in tubing in a cased hole that builds to 60°.
func buildAndHold() (*drag.Prepared, error) {
	well, err := hydrostatics.NewPath([]hydrostatics.Station{{MD: 2000 * unit.Foot}, {MD: 4000 * unit.Foot, Inclination: 60 * unit.Degree}, {MD: 10000 * unit.Foot, Inclination: 60 * unit.Degree}})
	if err != nil {
		return nil, err
	}
	return drag.String{
		Sections: []drag.PipeSection{{Pipe: tubing(), Length: 10000 * unit.Foot}}, BottomMD: 10000 * unit.Foot, Path: well,
		HoleSections: []drag.HoleSection{{BottomMD: 10000 * unit.Foot, Friction: drag.UsualCased, Hole: 6.184 * unit.Inch}},
		Inside:       9.5 * unit.PoundPerGallon, Outside: 9.5 * unit.PoundPerGallon,
	}.Prepare()
}

func ExamplePrepared_HookLoad() {
	prepared, err := buildAndHold()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range []drag.Motion{drag.RunIn, drag.Rotating, drag.Pulled} {
		fmt.Printf("%-9v %.1f klbf\n", m, prepared.HookLoad(m, 0).In(unit.Kilopound))
	}
	// Output:
	// run in    42.2 klbf
	// rotating  53.4 klbf
	// pulled    68.8 klbf
}

// What of a pull at surface gets down to the packer.
func ExamplePrepared_EndForce() {
	prepared, err := buildAndHold()
	if err != nil {
		fmt.Println(err)
		return
	}
	end, err := prepared.EndForce(drag.Pulled, 110*unit.Kilopound)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f klbf of %.1f klbf over the hanging weight\n", end.In(unit.Kilopound), (110*unit.Kilopound - prepared.HookLoad(drag.Rotating, 0)).In(unit.Kilopound))
	// Output:
	// 33.4 klbf of 56.6 klbf over the hanging weight
}

// Weight slacked off a string that hangs in a vertical well: its helix leans on the
// wall, and less and less of it arrives.
func ExamplePrepared_Arrives() {
	length := 9000 * unit.Foot
	path, err := hydrostatics.Vertical(length)
	if err != nil {
		fmt.Println(err)
		return
	}
	pipe := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	p, err := drag.String{
		Sections: []drag.PipeSection{{Pipe: pipe, Length: length}}, BottomMD: length, Path: path,
		HoleSections: []drag.HoleSection{{BottomMD: length, Friction: 0.25, Hole: 6.094 * unit.Inch}},
		Inside:       9 * unit.PoundPerGallon, Outside: 9 * unit.PoundPerGallon,
	}.Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, slacked := range []float64{5000, 20000, 50000} {
		s, err := p.Arrives(unit.Force(slacked) * unit.PoundForce)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f lbf slacked off: %v arrives, locked up %v\n", slacked, s.Weight.Rounded(3), s.Locked())
	}
	// Output:
	// 5000 lbf slacked off: 4824 lbf arrives, locked up false
	// 20000 lbf slacked off: 13075 lbf arrives, locked up false
	// 50000 lbf slacked off: 15005 lbf arrives, locked up true
}
