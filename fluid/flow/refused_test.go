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
	thick := flow.Stream{Conduit: flow.Conduit{Outer: 0.1}, Rheology: flow.Bingham(0.02, 5), Density: 1200, Rate: 0.01}
	_, err = thick.APIFigures()
	assert.ErrorContains(t, err, "must be 0: the third edition's figures are a power law's, without yield stress")
	_, err = flow.Trip{}.Solve()
	assert.ErrorContains(t, err, "Annulus: has 0 sections; must have from 1 to 500")
	_, err = flow.Trip{Annulus: []flow.ConduitSection{{}}}.Solve()
	assert.ErrorContains(t, err, "Annulus[0].Conduit.Inner: is 0 in; must be the outside diameter of the moving pipe")
}
