package movement_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
)

// The end of the string in the packer of Lubinski, Althouse & Logan 1962, after
// the squeeze: true force in compression, effective force more so.
func ExampleEnd() {
	end := movement.End{Bore: 3.25 * unit.Inch, OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch,
		Inside:  5000*unit.PSI + hydrostatics.Pressure(15*unit.PoundPerGallon, 10000*unit.Foot),
		Outside: 1000*unit.PSI + hydrostatics.Pressure(7.31*unit.PoundPerGallon, 10000*unit.Foot)}
	end.Below = end.Inside // open below
	fmt.Printf("true %.0f lbf, effective %.0f lbf\n", end.Force().In(unit.PoundForce), end.Effective().In(unit.PoundForce))
	// Output:
	// true -37602 lbf, effective -66323 lbf
}

// 3,500 psi inside 9,000 ft of 3-1/2 in tubing.
func ExampleBallooning() {
	fmt.Printf("%.2f in\n", movement.Ballooning(tubing(), 9000*unit.Foot, 3500*unit.PSI, 0).In(unit.Inch))
	// Output:
	// -20.52 in
}

// Fluid that loses 0.1 psi/ft on its way down drags the pipe with it.
func ExampleFlowDrag() {
	fmt.Printf("%.2f in\n", movement.FlowDrag(tubing(), 9000*unit.Foot, 0.1*unit.PSIPerFoot).In(unit.Inch))
	// Output:
	// 4.40 in
}

// The buckled part of the string of Lubinski, Althouse & Logan 1962, from the
// neutral point to the packer.
func ExampleHelicalShortening() {
	s := packerExample().Sections[0]
	fmt.Printf("%.2f in\n", movement.HelicalShortening(s.Pipe, 103611*unit.Inch, (s.Hole-s.Pipe.OD)/2, 0, -66323*unit.PoundForce).In(unit.Inch))
	// Output:
	// -46.04 in
}

func ExampleShoulderForce() {
	// From 3-1/2 in above to 2-7/8 in below: pressure inside presses the shoulder
	// down, pressure outside lifts it.
	f := movement.ShoulderForce(9000*unit.PSI, 4000*unit.PSI, 3.5*unit.Inch, 2.992*unit.Inch, 2.875*unit.Inch, 2.441*unit.Inch)
	fmt.Printf("%.0f lbf\n", f.In(unit.PoundForce))
	// Output:
	// 8643 lbf
}

func ExampleHelix() {
	s := packerExample().Sections[0]
	h := movement.Helix{Pipe: s.Pipe, Hole: s.Hole, Compression: 66323 * unit.PoundForce}
	tool, _ := h.LongestTool(1.75 * unit.Inch)
	fmt.Printf("pitch %.1f ft, bending stress %.0f psi, contact %.1f lb/ft, a 1.75 in tool of %.1f ft passes\n",
		h.Pitch().In(unit.Foot), h.BendingStress().In(unit.PSI), h.Contact().In(unit.PoundPerFoot), tool.In(unit.Foot))
	// Output:
	// pitch 20.0 ft, bending stress 47628 psi, contact 439.5 lb/ft, a 1.75 in tool of 5.9 ft passes
}

func ExampleConfined_Under() {
	c := laid(60 * unit.Degree)
	for _, f := range []unit.Force{-5 * unit.Kilopound, -15 * unit.Kilopound, -40 * unit.Kilopound} {
		x := c.Under(f)
		fmt.Printf("%v: %v, contact %.1f lb/ft, bending %.0f psi\n", f, x.Mode, x.Contact.In(unit.PoundPerFoot), x.Bending.In(unit.PSI))
	}
	// Output:
	// -5000 lbf: straight, contact 4.9 lb/ft, bending 0 psi
	// -15000 lbf: sinusoidal, contact 4.9 lb/ft, bending 7604 psi
	// -40000 lbf: helical, contact 159.9 lb/ft, bending 28725 psi
}

func ExampleCase_At() {
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	column := func(tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(9.2*unit.PoundPerGallon, tvd) }
	landed, err := movement.String{
		Sections: []movement.StringSection{{Pipe: tubing(), BottomMD: 9000 * unit.Foot, Hole: 6.184 * unit.Inch}},
		Path:     path, Seals: movement.SealBore{Bore: 4 * unit.Inch},
	}.Land(movement.WellProfiles{Inside: column, Outside: column}, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	hung := landed.AsSet()
	n, err := hung.At(8900 * unit.Foot) // a release joint above the packer
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("true %.0f lbf, effective %.0f lbf\n", n.True.In(unit.PoundForce), n.Effective.In(unit.PoundForce))
	// Output:
	// true -10211 lbf, effective 806 lbf
}
