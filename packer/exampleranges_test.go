package packer_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
)

// With 20 klbf of tension, tests from above and below; with 3,000 psi, how hard the
// string may pull and push.
func ExampleEnvelope_DifferentialAt() {
	e := unit.Must(box().Envelope())
	least, greatest, ok := e.DifferentialAt(20 * unit.Kilopound)
	fmt.Println(least, "to", greatest, ok)
	push, pull, ok := e.AxialAt(3000 * unit.PSI)
	fmt.Println(push, "to", pull, ok)
	// Output:
	// -5000 psi to 5000 psi true
	// -50000 lbf to 100000 lbf true
}

func ExampleStroke_Total() {
	s := unit.Must(packer.StrokeOf([]packer.Travel{{Case: "stimulation", Movement: -8 * unit.Foot}, {Case: "production", Movement: 5 * unit.Foot}}))
	seals := packer.SealStack{FirstMD: 9001 * unit.Foot, LastMD: 9021 * unit.Foot}
	fmt.Println("stroke", s.Total(), "of a stack of", seals.Length().Rounded(4))
	// Output:
	// stroke 13 ft of a stack of 20 ft
}
