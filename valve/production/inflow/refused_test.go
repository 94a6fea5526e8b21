package inflow_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	// Rates that fall with drawdown make a negative exponent.
	_, err := inflow.GasFromTests(3000*unit.PSI, inflow.Test{Flowing: 2000 * unit.PSI, Rate: 1}, inflow.Test{Flowing: 1000 * unit.PSI, Rate: 0.5})
	assert.ErrorContains(t, err, "inflow: the line through the test does not fit the equation")
	// An injection that no pressure in range takes.
	g := inflow.GasDeliverability{Reservoir: 3000 * unit.PSI, Exponent: 0.5, OpenFlow: 1}
	_, err = g.Pressure(-1e200)
	assert.ErrorContains(t, err, "must be one that a pressure in range takes")
}
