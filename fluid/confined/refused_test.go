package confined

import (
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := readTime("soon", "s")
	assert.ErrorContains(t, err, `"soon" is not a number of s`)
	hot := Record{{Temperature: unit.Kelvin(99)}, {At: time.Minute, Temperature: unit.Kelvin(300)}}
	assert.ErrorContains(t, hot.Validate(), "must be from 100 K to 1500 K")
	assert.ErrorContains(t, Space{Ends: 7}.Validate(), "Ends: is 7; must be fixed, open or closed")
	stiff := PressureUp{Space: Space{Outer: Tube{OD: 0.12, ID: 0.1, Rigid: true}}, Fluid: solid{}, Volume: 1, To: 1e6, Temperature: unit.Kelvin(300), Supply: unit.Kelvin(300)}
	_, err = stiff.Solve()
	assert.ErrorContains(t, err, "confined: neither fluid nor walls give way between 0 psi and ")
}

// solid gives way to nothing.
type solid struct{}

func (solid) Density(unit.Pressure, unit.Temperature) (unit.Density, error) { return 1000, nil }
