package sleeve

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	s, open := well(2), []Position{Open, Closed}
	faults := func(a Action) error { return s.checkAction(open, a) }
	assert.ErrorContains(t, faults(Action{Move: []int{1, 1}}), "which is named already; must be named once")
	assert.ErrorContains(t, faults(Action{}), "Move: is empty; must be one sleeve or more")
	assert.ErrorContains(t, faults(Action{Move: []int{1}, Hold: []int{0}}), "Hold: is given for opening; must be empty: with the close line vented they stay")
	assert.ErrorContains(t, faults(Action{Close: true, Move: []int{0}, Hold: []int{1}}), "which is closed; must be open: the pressure would open it")
	_, err := s.Plan(Route{From: open, To: []Position{Unknown, Closed}})
	assert.ErrorContains(t, err, "To: has unknown positions; must be known ones")
	_, _, err = s.Run(open, nil, []Position{Closed, Closed})
	assert.ErrorIs(t, err, ErrNotReached)
	assert.ErrorContains(t, err, " at the end, not ")
	assert.ErrorContains(t, s.checkPanel(Panel{Open: make([]Setting, 3)}), "Open: has 3 lines for 2 sleeves; must have at most one for each")
	twin := well(2)
	twin.Sleeves[1].Name = twin.Sleeves[0].Name
	assert.ErrorContains(t, twin.Validate(), "like another; must differ")
	deep := well(2)
	deep.Sleeves[1].TVD *= 10
	assert.ErrorContains(t, deep.Validate(), "must be at most the end of the close line, ")
	assert.ErrorContains(t, deep.Validate(), "must be its sleeve's, ")
}
