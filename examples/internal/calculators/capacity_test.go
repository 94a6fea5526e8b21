package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/capacity"
	"completion.example/internal/calculator/golden"
)

func TestCapacity(t *testing.T) {
	t.Chdir("capacity")
	golden.Check(t, capacity.Command)
	golden.File(t, capacity.Command, "published", 0, "-od", "7 in", "-id", "5.920 in", "-casing-id", "8.5 in", "-length", "10685 ft")
	golden.File(t, capacity.Command, "faults", 2, "-od", "2-7/8 in", "-id", "3 in", "-casing-id", "2 in", "-length", "-5 ft")
	golden.File(t, capacity.Command, "flags", 2, "-od", "2.875", "-lenght", "5 ft", "-casing-id", "NaN in")
}
