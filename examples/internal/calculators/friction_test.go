package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/friction"
	"completion.example/internal/calculator/golden"
)

func TestFriction(t *testing.T) {
	t.Chdir("friction")
	golden.Check(t, friction.Command)
	golden.File(t, friction.Command, "published", 0, "-outer", "8.835 in", "-inner", "4.5 in", "-density", "12.8 lb/gal", "-rate", "335 gal/min", "-length", "10786 ft", "-readings", "100=21, 3=8")
	golden.File(t, friction.Command, "six-speed", 0, "-readings", "600=53, 300=34, 200=27.5, 100=21, 6=9, 3=8", "-model", "herschel-bulkley", "-inner", "0 in", "-outer", "3.826 in", "-length", "11641 ft")
	golden.File(t, friction.Command, "water", 0, "-readings", "", "-inner", "0 in", "-outer", "2.441 in", "-density", "8.34 lb/gal", "-rate", "5 bbl/min", "-roughness", "0.046 mm", "-length", "9000 ft", "-explain")
	golden.File(t, friction.Command, "faults", 2, "-outer", "3 in", "-density", "0 lb/gal", "-rate", "-1 gal/min")
	golden.File(t, friction.Command, "flags", 2, "-readings", "600:53", "-model", "plastic")
}
