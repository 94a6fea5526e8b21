package flow_test

import (
	"testing"

	"completion.example/fluid/flow"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := flow.Schedule{}.FallRate(1)
	assert.ErrorContains(t, err, "pumped: is 1 m3; must be from 0 bbl to the schedule's 0 bbl")
	assert.ErrorContains(t, flow.Kill{Influx: flow.Influx{Volume: 1}}.Validate(), "Influx.Fluid: is missing; say what has come in")
	_, err = flow.Trip{}.Solve()
	assert.ErrorContains(t, err, "Annulus: has 0 sections; must have from 1 to 500")
	_, err = flow.Trip{Annulus: []flow.ConduitSection{{}}}.Solve()
	assert.ErrorContains(t, err, "Annulus[0].Conduit.Inner: is 0 in; must be the outside diameter of the moving pipe")
}
