package fluid

import (
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
)

// Well Control for Completions and Interventions (2018), p. 33: 2,500 psi, 0.80
// gravity, 9,000 ft, Z 0.96, 190 °F make 3,104.5 psi. The book takes 53.3 and
// 460 °F, and gauge for absolute.
func TestAverageGasColumnAgainstBook(t *testing.T) {
	c := AverageGasColumn{Gravity: 0.8, Z: 0.96, Temperature: unit.Fahrenheit(190), Height: 9000 * unit.Foot}
	require.InEpsilon(t, 3104.5, 2500*c.Factor(), 0.0005)
	workingtest.Check(t, c.Steps(2500*unit.PSI))
	// Up again with the height turned round.
	bottom := c.Bottom(2500 * unit.PSI)
	c.Height = -c.Height
	require.InDelta(t, 2500, c.Bottom(bottom).In(unit.PSI), 1e-9)
}
