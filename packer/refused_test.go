package packer_test

import (
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := packer.Seat{Bore: 0.1, Casing: 0.05}.Connections(packer.Case{})
	assert.ErrorContains(t, err, "Case.String.Sections: is empty; must be one section or more")
	assert.ErrorContains(t, err, "Seat.Casing: is 5 cm")
	assert.ErrorContains(t, err, "must be no less than the seal bore, ")
	_, err = packer.Seat{}.ConnectionsAlong(packer.PathCase{})
	assert.ErrorContains(t, err, "PathCase.String.Sections: is empty; must be one section or more")
	assert.ErrorContains(t, err, "PathCase.String.Path: is missing; must be a well path")
	assert.ErrorContains(t, err, "PathCase.State.Outside: is missing; must be the pressure outside by depth")
	_, err = packer.Release{}.DragWith(packer.Friction{})
	assert.ErrorContains(t, err, "Friction: is incomplete; must be least, nominal and greatest")
	_, err = packer.ReadPolygon(strings.NewReader(`{"name": "x", "vertices": [{"differential": "1 psi"}]}`))
	assert.ErrorContains(t, err, "envelope.vertices[0]: must have both differential and axial")
	_, err = packer.LockIn{Pipe: tubular.Pipe{OD: 0.1, ID: 0.08}, Chamber: 0.05, Top: 7}.Locked()
	assert.ErrorContains(t, err, "must be no less than the pipe's bore of ")
	assert.ErrorContains(t, err, "or 0 for a plug in the string")
	assert.ErrorContains(t, err, "Top: is 7; must be Landed or Compensated")
	_, err = packer.Grade(7).MarshalText()
	assert.ErrorContains(t, err, "packer: no grade 7; there are V0 to V6")
	assert.ErrorContains(t, new(packer.Grade).UnmarshalText([]byte("V7")), `packer: cannot read "V7" as a grade; write V0 to V6`)
	_, err = packer.Outcome(9).MarshalText()
	assert.ErrorContains(t, err, "packer: no state 9; there are not, unknown and acted")
	assert.ErrorContains(t, new(packer.Outcome).UnmarshalText([]byte("no")), `packer: cannot read "no" as a state; write not, unknown or acted`)
	_, err = packer.Pull{}.Balance(0)
	assert.ErrorContains(t, err, "Sections: is empty; must be one section or more")
	assert.ErrorContains(t, err, "Inside: is missing; must be the pressure inside by depth")
	assert.ErrorContains(t, err, "Outside: is missing; must be the pressure outside by depth")
	assert.ErrorContains(t, packer.Ratings{Limits: []packer.Limit{{}}}.Validate(), "Limits[0].Name: is empty; must be a name")
	_, err = packer.NotParted{FreeMD: 200, Intervals: []packer.CutInterval{{Name: "low", TopMD: 10, BottomMD: 300}},
		Release: packer.Release{Pull: packer.Pull{Sections: []movement.StringSection{{BottomMD: 100}}}}}.Options()
	assert.ErrorContains(t, err, "FreeMD: is 200 m")
	assert.ErrorContains(t, err, "must be no deeper than the joint at ")
	assert.ErrorContains(t, err, "Intervals[0]: low is ")
	assert.ErrorContains(t, err, "must be a stretch from surface to the joint at ")
	_, err = packer.Stab{Up: 1, Down: 2, Friction: unit.Exactly(unit.Force(0))}.Weights()
	assert.ErrorContains(t, err, "must be no less than the weight going down, ")
	assert.ErrorContains(t, err, "End.ID: is 0 ft; must be above 0 and below the OD of ")
	assert.ErrorContains(t, packer.SealPlan{}.Validate(), "Seals.Last: is 0 ft; must be below the first seal, ")
}
