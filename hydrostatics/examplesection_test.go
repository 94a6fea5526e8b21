package hydrostatics_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// 300 ft north and 400 ft east, seen along an azimuth of 45°: (300 + 400)/√2.
func ExamplePosition_Section() {
	at := hydrostatics.Position{North: 300 * unit.Foot, East: 400 * unit.Foot}
	fmt.Println(at.Section(45 * unit.Degree).Rounded(4))
	// Output: 495 ft
}

func ExampleWeakPoint_Allowed() {
	w := hydrostatics.WeakPoint{Name: "tubing", TVD: 9000 * unit.Foot, Rating: 10_160 * unit.PSI, Share: 0.8, Outside: 4200 * unit.PSI}
	fmt.Println(w.Allowed())
	// Output: 12328 psi
}
