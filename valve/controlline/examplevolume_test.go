package controlline_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// 1/4 in x 0.049 in has a bore of 0.152 in.
func ExampleLine_Volume() {
	fmt.Printf("%s %s %.2f L\n", line.ID().Rounded(4), line.Capacity().Rounded(4), line.Volume().In(unit.Litre))
	// Output: 0.152 in 0.01815 in2 35.12 L
}
