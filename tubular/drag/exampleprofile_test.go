package drag_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/drag"
)

func ExamplePrepared_Torque() {
	prepared, err := buildAndHold()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(prepared.Torque(0).Rounded(4))
	// Output: 1909 ft-lbf
}

func ExamplePrepared_Profile() {
	prepared, err := buildAndHold()
	if err != nil {
		fmt.Println(err)
		return
	}
	nodes := prepared.Profile(drag.Pulled, 0)
	top, bottom := nodes[0], nodes[len(nodes)-1]
	fmt.Println("at surface", top.Force.Rounded(4), "- at", bottom.MD.Rounded(5), bottom.Force.Rounded(4), "against the wall", bottom.Contact.Rounded(3))
	// Output: at surface 68835 lbf - at 10000 ft 0 lbf against the wall 6.95 lb/ft
}

func ExampleLoads_Drag() {
	l := drag.Loads{RunIn: 42.2 * unit.Kilopound, Rotating: 53.4 * unit.Kilopound, Pulled: 68.8 * unit.Kilopound}
	fmt.Println(l.Drag().Rounded(4))
	// Output: 15400 lbf
}

// Weight set down on a packer: what it takes at surface, and the other way
// round.
func ExamplePrepared_SetDown() {
	prepared, err := buildAndHold()
	if err != nil {
		fmt.Println(err)
		return
	}
	s := prepared.SetDown(10 * unit.Kilopound)
	back, err := prepared.Arrives(s.Slacked)
	fmt.Println(s.Slacked.Rounded(4), "slacked off,", back.Weight.Rounded(4), "arrive", err)
	// Output: 8648 lbf slacked off, 10000 lbf arrive <nil>
}

func ExamplePrepared_Taken() {
	prepared, err := buildAndHold()
	if err != nil {
		fmt.Println(err)
		return
	}
	taken, err := prepared.Taken(drag.Pulled, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(taken.Total.Rounded(4))
	// Output: 15458 lbf
}

func ExampleString_Prepare() {
	_, err := drag.String{Sections: []drag.PipeSection{{Pipe: tubing(), Length: 9000 * unit.Foot}}, BottomMD: 9500 * unit.Foot}.Prepare()
	fmt.Println(err)
	// Output:
	// drag: BottomMD: is 9500 ft; must be above 0 ft and at most the string's length of 9000 ft
	// drag: Path: is missing
	// drag: HoleSections: end at 0 ft; must reach the string's depth of 9500 ft
}

// A string that is held at its lower end is pulled with 120,000 lbf: the drag follows
// from the hook down, with the friction factor that was matched on the way in.
func ExamplePrepared_Along() {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{
		{}, {MD: 2000 * unit.Foot}, {MD: 4000 * unit.Foot, Inclination: 50 * unit.Degree}, {MD: 9000 * unit.Foot, Inclination: 50 * unit.Degree},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
	p, err := drag.String{
		Sections: []drag.PipeSection{{Pipe: pipe, Length: 9000 * unit.Foot}}, BottomMD: 9000 * unit.Foot, Path: path,
		HoleSections: []drag.HoleSection{{BottomMD: 9000 * unit.Foot, Friction: drag.UsualCased, Hole: 6.184 * unit.Inch}},
		Inside:       9 * unit.PoundPerGallon, Outside: 9 * unit.PoundPerGallon,
	}.Prepare()
	if err == nil {
		p, err = p.With([]float64{0.28}, nil)
	}
	if err != nil {
		fmt.Println(err)
		return
	}
	w := pipe.BuoyedWeight(9*unit.PoundPerGallon, 9*unit.PoundPerGallon)
	taken, err := p.Along(drag.Pulled, 0, 9000*unit.Foot, true, func(md unit.Length) unit.Force {
		tvd, _ := path.TVD(md) // on the path
		return 120*unit.Kilopound - unit.Force(float64(w)*float64(tvd))
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("drag", taken.Total.Rounded(4), "of it below 4,000 ft", (taken.Total * unit.Force(taken.Share(4000*unit.Foot))).Rounded(3))
	// Output:
	// drag 27765 lbf of it below 4,000 ft 8675 lbf
}

// When a string is locked up: hardly more than a hundredth of what is slacked off
// next arrives.
func ExampleSetDown_Locked() {
	prepared, err := buildAndHold()
	if err != nil {
		fmt.Println(err)
		return
	}
	s := prepared.SetDown(5 * unit.Kilopound)
	fmt.Printf("%d nodes; of the next weight %.0f %% arrives, locked below %.0f %%: %v\n", prepared.Size(), 100*s.Passes, 100*drag.LockUp, s.Locked())
	// Output: 306 nodes; of the next weight 116 % arrives, locked below 1 %: false
}
