package unit_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

func ExampleCount() {
	text, ok := unit.Count(float64(3000*unit.PSI), float64(unit.PSI))
	fmt.Println(text, ok)
	// Output: 3000 true
}
