package movement_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// pressured is 9.5 lb/gal on both sides, with a pressure held on the tubing.
func pressured(tubing unit.Pressure) movement.WellProfiles {
	mud := func(tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(9.5*unit.PoundPerGallon, tvd) }
	return movement.WellProfiles{Inside: func(tvd unit.Length) unit.Pressure { return mud(tvd) + tubing }, Outside: mud}
}

// inSealBore is 9,000 ft of 3-1/2 in tubing, free in a 4 in seal bore.
func inSealBore() (*movement.Landed, error) {
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	if err != nil {
		return nil, err
	}
	s := movement.String{Path: path, Seals: movement.SealBore{Bore: 4 * unit.Inch, Restraint: movement.Free},
		Sections: []movement.StringSection{{Pipe: tubing(), BottomMD: 9000 * unit.Foot, Hole: 6.094 * unit.Inch}}}
	return s.Land(pressured(0), 0)
}

// Ten load cases on all cores.
func ExampleLanded_LoadAll() {
	l, err := inSealBore()
	if err != nil {
		fmt.Println(err)
		return
	}
	var states []movement.WellProfiles
	for i := range 10 {
		states = append(states, pressured(unit.Pressure(i)*500*unit.PSI))
	}
	cases, err := l.LoadAll(states)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, i := range []int{0, 5, 9} {
		fmt.Printf("%d psi: %.1f in\n", 500*i, cases[i].Movement.Total().In(unit.Inch))
	}
	fmt.Println(len(cases[0].Nodes) == l.Size())
	// Output:
	// 0 psi: 0.0 in
	// 2500 psi: -36.9 in
	// 4500 psi: -70.8 in
	// true
}

// One case used again in a loop: nothing is allocated.
func ExampleLanded_LoadInto() {
	l, err := inSealBore()
	if err != nil {
		fmt.Println(err)
		return
	}
	var c movement.Case
	for _, p := range []unit.Pressure{1000 * unit.PSI, 2000 * unit.PSI} {
		if err := l.LoadInto(&c, pressured(p)); err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %.1f in\n", p, c.Movement.Total().In(unit.Inch))
	}
	// Output:
	// 1000 psi: -14.0 in
	// 2000 psi: -29.0 in
}

// 3-1/2 in tubing in a bend of 10°/100 ft.
func ExampleBendingStress() {
	fmt.Println(movement.BendingStress(tubing(), 10*unit.DegreePer100Feet).Rounded(4))
	// Output: 7636 psi
}

// Tubing under tension in a bend of 3°/100 ft, at 60° inclination.
func ExampleConfined_Contact() {
	c := movement.Confined{Pipe: tubing(), Hole: 6.094 * unit.Inch, Inclination: 60 * unit.Degree, Weight: 8 * unit.PoundPerFoot, Build: 3 * unit.DegreePer100Feet}
	fmt.Println(c.Contact(50 * unit.Kilopound).Rounded(4))
	// Output: 19.25 lb/ft
}

// An inner string hung in the outer one and anchored in it: what warms it alone, the
// anchor passes on. 6.9e-6 × 50 °F × 24,000 in = 8.28 in that the two share as springs
// in a row.
func ExampleNest() {
	around, within, err := nested()
	if err != nil {
		fmt.Println(err)
		return
	}
	outer, err := around.Carrying(within).MakeUp()
	if err != nil {
		fmt.Println(err)
		return
	}
	inner, err := within.MakeUp()
	if err != nil {
		fmt.Println(err)
		return
	}
	both, err := movement.Nest(outer, inner)
	if err != nil {
		fmt.Println(err)
		return
	}
	standing, err := outer.Land(warm(100))
	if err != nil {
		fmt.Println(err)
		return
	}
	n, err := both.Land(standing, warm(100), warm(100))
	if err == nil {
		n, err = both.TakeHold(n, 0, warm(100), warm(100))
	}
	if err != nil {
		fmt.Println(err)
		return
	}
	l, err := both.Load(n, warm(100), warm(150))
	if err != nil {
		fmt.Println(err)
		return
	}
	kept := l.Inner.Clone() // what is loaded next leaves it alone
	fmt.Println("on the anchor", kept.Holds[0].Load.Rounded(4), "in", len(outer.InsideParts()), "part of", outer.Size(), "nodes")
	// Output: on the anchor -12476 lbf in 1 part of 278 nodes
}

func nested() (outer, inner movement.Assembly, err error) {
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	if err != nil {
		return outer, inner, err
	}
	large := tubular.Pipe{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot, Material: tubular.Steel()}
	small := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()}
	outer = movement.Assembly{Path: path, Sections: []movement.StringSection{{Pipe: large, BottomMD: 9000 * unit.Foot, Hole: large.OD}}}
	inner = movement.Assembly{Path: path, Hanger: 6000 * unit.Foot, Holds: []movement.Hold{{MD: 8000 * unit.Foot}},
		Sections: []movement.StringSection{{Pipe: small, BottomMD: 8500 * unit.Foot, Hole: small.OD}}}
	return outer, inner, nil
}
