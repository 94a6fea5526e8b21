package display_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"github.com/stretchr/testify/require"
)

// What is no quantity is written as fmt does, in every form.
func TestWhatIsNoQuantity(t *testing.T) {
	require.Equal(t, "7", display.Field().Number(7, display.Usual))
	require.Equal(t, "7", display.Field().Significant(7, display.Usual, 3))
	require.Equal(t, "unknown", display.Purpose(255).String())
	require.Equal(t, display.Usual, display.Implied(7, "ft"))
}

// The unit that a length or a volume is written in says what it is for.
func TestTheUnitSaysWhatALengthIsFor(t *testing.T) {
	require.Equal(t, "stroke", display.Implied(unit.Inch, "in").String())
	for _, symbol := range []string{"ft", "m"} {
		require.Equal(t, display.Implied(unit.Foot, "ft"), display.Implied(unit.Foot, symbol))
	}
	require.NotEqual(t, display.Implied(unit.Inch, "ft"), display.Implied(unit.Inch, "in"))
	require.NotEqual(t, display.Implied(unit.Litre, "gal"), display.Implied(unit.Litre, "bbl"))
	require.Equal(t, display.Usual, display.Implied(unit.Inch, "furlong"))
	require.Equal(t, display.Usual, display.Implied(unit.PSI, "ft"))
}

// A number without bound has no decimals to round.
func TestHugeNumbers(t *testing.T) {
	require.Equal(t, "NaN psi", display.Field().Format(unit.Pressure(math.NaN()), display.Usual))
	text := display.Field().Number(3e30*unit.PSI, display.Usual)
	require.Contains(t, text, "e+30")
}

// A quantity whose number can't be read stays as it was written.
func TestRewriteLeavesWhatItCannotRead(t *testing.T) {
	require.Equal(t, "1e999 psi", display.SI().Rewrite("1e999 psi"))
}
