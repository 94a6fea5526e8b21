package production_test

import (
	"strings"
	"testing"

	"completion.example/valve/production"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	err := production.Well{}.Validate()
	assert.ErrorContains(t, err, "Zones: is empty; must be one zone or more")
	twice := production.Well{Zones: []production.Zone{{Name: "a"}, {Name: "a"}}}
	assert.ErrorContains(t, twice.Validate(), `Zones[1].Name: is "a" like another; must differ`)
	falls := production.OutflowTable{{Rate: 1, Pressure: 3e5}, {Rate: 2, Pressure: 2e5}, {Rate: 3, Pressure: 1e5}}
	assert.ErrorContains(t, falls.Validate(), "outflow table only falls; must have two points or more in its stable, rising branch")
	_, err = production.ReadOutflowTable(strings.NewReader("a,b\n1,2\n"))
	assert.ErrorContains(t, err, "line 1: is not rate,pressure; must be")
}
