package limit_test

import (
	"errors"
	"math"
	"testing"

	"completion.example/fluid/internal/limit"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestFaultsNameFieldValueAndRange(t *testing.T) {
	f := limit.Faults{Scope: "flow"}
	limit.Between(&f, "Rate", 3*unit.GallonPerMinute, 0, 5*unit.GallonPerMinute)
	limit.Positive(&f, "Length", 2*unit.Foot, 3*unit.Foot)
	f.Number("Index", 1, 0, 1)
	f.Seconds("Hold", 5, 5, 10)
	f.Temperature("From", unit.Celsius(20), unit.Celsius(20), unit.Celsius(30))
	f.Wrap("Record", nil)
	require.NoError(t, f.Err())
	limit.Between(&f, "Pressure", -100*unit.PSI, 0, 5000*unit.PSI)
	limit.Positive(&f, "Length", 0*unit.Foot, 3*unit.Foot)
	f.Number("Index", math.NaN(), 0, 1)
	f.Seconds("Hold", 11, 5, 10)
	f.Temperature("From", unit.Celsius(10), unit.Celsius(20), unit.Celsius(30))
	inner := errors.New("inner")
	f.Wrap("Record", inner)
	err := f.Err()
	require.EqualError(t, err, `flow: Pressure is -100 psi; it must be between 0 psi and 5000 psi
flow: Length is 0 ft; it must be above zero and no more than 3 ft
flow: Index is NaN; it must be between 0 and 1
flow: Hold is 11 s; it must be between 5 s and 10 s
flow: From is 50 degF; it must be between 68 degF and 86 degF
flow: Record: inner`)
	require.ErrorIs(t, err, inner)
	require.Equal(t, "Sections[2]", limit.Index("Sections", 2))
	require.False(t, limit.Finite(math.Inf(1)))
	require.True(t, limit.Finite(0))
}
