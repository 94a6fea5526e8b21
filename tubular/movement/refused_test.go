package movement

import (
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := Mode(9).MarshalText()
	assert.ErrorContains(t, err, "mode is 9; must be straight, sinusoidal or helical")
	assert.ErrorContains(t, new(Mode).UnmarshalText([]byte("bent")), `mode is "bent"; must be straight, sinusoidal or helical`)
	_, err = Vertical{Closed: true, Seals: SealBore{Bore: 1}, SlackOff: 1}.Analyse()
	assert.ErrorContains(t, err, "Seals: are given; must be none where Closed")
	assert.ErrorContains(t, err, "must be 0 where Closed")
	assert.ErrorContains(t, err, "Sections: is empty; must be one section of pipe or more")
	path, err := hydrostatics.Vertical(1000)
	assert.NoError(t, err)
	s := String{Path: path, HelicalOnset: 3, Sections: []StringSection{{Pipe: tubular.Pipe{OD: 0.0889, ID: 0.076, Material: tubular.Steel()}, BottomMD: 1000, Hole: 0.157}}}
	nothing := func(unit.Length) unit.Pressure { return 0 }
	state := WellProfiles{Inside: nothing, Outside: nothing, Tail: 9}
	_, err = s.Land(state, 0)
	assert.ErrorContains(t, err, "HelicalOnset: is 3; must be from 1 to 2√2, or 0 for 2√2")
	s.HelicalOnset, s.Seals = 0, SealBore{Bore: 0.1}
	_, err = s.Land(state, 0)
	assert.ErrorContains(t, err, "Tail: is 9; must be Open, Plugged or Hanging")
}
