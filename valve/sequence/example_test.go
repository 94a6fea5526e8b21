package sequence_test

import (
	"context"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// Six screws of 4,500 lbf on 8 in² hold a packer, and the tubing's fluid is 0.7
// lb/gal heavier than the annulus': what sets it at surface, and by what margin?
func ExampleCheck() {
	p := mini()
	r, err := sequence.Check(context.Background(), p, sequence.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := r.Steps[0]
	fmt.Println("the plan holds:", r.OK())
	fmt.Println("sets at", s.Events[0].Surface[0].Pressure.Rounded(4), "on the tubing")
	fmt.Println("window from", s.Windows[0].Intervals[0].Least.Rounded(5))
	fmt.Println("beyond the late end of its band by", s.Triggers[0].Margin.Rounded(3))
	// Output:
	// the plan holds: true
	// sets at 3048 psi on the tubing
	// window from 3216.5 psi
	// beyond the late end of its band by 284 psi
}

// A plan that fails says which step, what, why, and what would cure it.
func ExampleProgramme_OK() {
	p := mini()
	p.Steps[0].Ramps[0]["tubing"] = 3100 * unit.PSI
	r, _ := sequence.Check(context.Background(), p, sequence.Options{})
	fmt.Println(r.OK())
	f := r.Findings[0]
	fmt.Printf("%s: %s %s\n%s\n", f.Step, f.Device, f.Says, f.Cure)
	// Output:
	// false
	// set: packer: sets may not happen, and is intended in this step
	// at least 3216.5 psi on "tubing" in ramp 1, in place of 3100 psi
}

// Every fault of a plan comes at once, with its path in the file.
func ExampleRead() {
	_, err := sequence.Read([]byte(`{
		"name": "hole",
		"well": {"depth": "9000 ft"},
		"fluids": [{"name": "mud", "density": "9.5"}],
		"compartments": [{"name": "tubing", "buttom": "9000 ft", "fluid": "mud"}]}`))
	fmt.Println(err)
	// Output:
	// fluids[0].density: unit: cannot read "9.5" as a density: no unit given; write a number with one of kg/m3, lb/gal, g/cm3, lb/ft3, lb/bbl
	// compartments[0].buttom: unknown field; there are bores, bottom, capacity, fluid, formation, kind, layers, name, note, surface, top, trapped
}

// How likely is it that an isolation valve moves with the packer? Its band is
// 3,800 ± 100 psi, two standard deviations either way and cut off there, and it feels
// 3,791 psi: (Φ(−0.18) − Φ(−2))/0.954 is 42 %.
func ExampleSample() {
	p := mini()
	device(p, "isolation valve", 8000*unit.Foot, rising(3700*unit.PSI, 3900*unit.PSI))
	r, _ := sequence.Sample(context.Background(), p, sequence.Uncertainty{Samples: 20000, Seed: 1})
	fmt.Printf("%.0f %% of 20000 draws go wrong\n", 100*r.Fails.Value)
	fmt.Println("first:", r.Events[0].Device, "in", r.Events[0].Step)
	// Output:
	// 42 % of 20000 draws go wrong
	// first: isolation valve: moves in set
}

// One pin fewer on the day: only what changes is shown.
func ExampleChanges() {
	before, _ := sequence.Check(context.Background(), mini(), sequence.Options{})
	p := mini()
	p.Devices[0].Actions[0].Triggers[0].Pins.Count = 5
	after, _ := sequence.Check(context.Background(), p, sequence.Options{})
	for _, c := range sequence.Changes(before, after) {
		fmt.Printf("%s, %s: %s, now %s\n", c.Step, c.What, c.Before, c.Now)
	}
	// Output:
	// set, packer: sets: must fire; margin 283.52 psi, now must fire; margin 874.15 psi
	// set, window on tubing at 3500 psi: at least 3216.5 psi, now at least 2626 psi
}

// A window in words: there is no end above where the search for it stops.
func ExampleWindow_Words() {
	r, err := sequence.Check(context.Background(), mini(), sequence.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	w := r.Steps[0].Windows[0]
	fmt.Println(w.Words())
	fmt.Println("planned", w.Planned, "- searched up to", sequence.WindowCap)
	fmt.Println("a pull is planned as", sequence.ForceLevel(60*unit.Kilopound))
	// Output:
	// at least 3216.5 psi
	// planned 3500 psi - searched up to 20000 psi
	// a pull is planned as 60000 lbf
}
