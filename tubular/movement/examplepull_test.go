package movement_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// What a hanger load is made of, the wall force on the way down, and the reading at
// which a packer feels a pull of 20,000 lbf.
func ExampleMadeUp_Terms() {
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
	m := unit.Must(movement.Assembly{
		Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 9000 * unit.Foot, Hole: 8.535 * unit.Inch}},
		Path:     unit.Must(hydrostatics.Vertical(10000 * unit.Foot)),
		Holds:    []movement.Hold{{MD: 8900 * unit.Foot}},
	}.MakeUp())
	mud := func(_ int, tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(9.5*unit.PoundPerGallon, tvd) }
	hook := movement.Conditions{Inside: mud, Outside: mud}
	s := unit.Must(m.TakeHold(unit.Must(m.Land(hook)), 0, hook))
	hook.Top, hook.Reading = movement.OnHookOpen, 90*unit.Kilopound
	l := unit.Must(m.Load(s, hook))
	t := m.Terms(&l)
	fmt.Println("hangs", t.Top.Rounded(5), "from", t.End.Rounded(5), "at", t.From, "and", t.Weight.Rounded(5), "of pipe")
	half, ok := m.WallAt(&l, 4450*unit.Foot)
	fmt.Println("half way", half.Rounded(5), ok)
	fmt.Println("packer at 20,000 lbf with", unit.Must(m.ReadingForHold(&l, 0, 20*unit.Kilopound)).Rounded(5))
	// Output:
	// hangs 90000 lbf from 7230 lbf at 8900 ft and 82770 lbf of pipe
	// half way 48615 lbf true
	// packer at 20,000 lbf with 92196 lbf
}

func ExampleWellFluids() {
	w := movement.WellFluids{InsideDensity: 8.33 * unit.PoundPerGallon, OutsideDensity: 9.5 * unit.PoundPerGallon, InsideSurface: 3000 * unit.PSI}
	fmt.Println(w.Inside(9000*unit.Foot).Rounded(5), w.Outside(9000*unit.Foot).Rounded(5))
	// Output:
	// 6894.5 psi 4441.6 psi
}

// Tubing in casing that lies at 60°: how far it may be pushed, and the
// helix that it would lie in.
func ExampleConfined_FrictionLimit() {
	c := laid(60 * unit.Degree)
	fmt.Println("clearance", c.Clearance().Rounded(4), "helix at most from", c.HelicalMost().Rounded(4))
	fmt.Println("no more than", c.FrictionLimit(0.3).Rounded(4), "gets through a long helix with friction of 0.3")
	h := movement.Helix{Pipe: c.Pipe, Hole: c.Hole, Compression: 20 * unit.Kilopound}
	fmt.Printf("curvature %v, shorter by %.5f of its length\n", h.Curvature().Rounded(4), h.Strain())
	// Output:
	// clearance 1.61 in helix at most from 19833 lbf
	// no more than 9727 lbf gets through a long helix with friction of 0.3
	// curvature 22.9 deg/100ft, shorter by -0.00027 of its length
}

func ExampleGoverning_DesignFactor() {
	g := movement.Governing{Usage: 0.8}
	fmt.Printf("%.3f where 1.25 was asked for\n", g.DesignFactor(1.25))
	// Output:
	// 1.562 where 1.25 was asked for
}
