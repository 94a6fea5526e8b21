package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/balance"
	"completion.example/internal/calculator/golden"
)

func TestBalance(t *testing.T) {
	t.Chdir("balance")
	golden.Check(t, balance.Command)
	golden.File(t, balance.Command, "nitrogen", 0, "-light", "nitrogen", "-surface-pressure", "1000 psi", "-underbalance", "1000 psi")
	golden.File(t, balance.Command, "impossible", 0, "-light", "8.6 lb/gal", "-underbalance", "1500 psi", "-cushion", "9000 ft", "-density", "8.8 lb/gal")
	golden.File(t, balance.Command, "faults", 2, "-light", "treacle", "-depth", "-5 ft", "-density", "-1 lb/gal")
}
