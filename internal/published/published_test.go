package published

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestCompareTakesHalfTheLastDigit(t *testing.T) {
	for _, c := range []struct {
		printed, tolerance string
		got                any
		met                bool
	}{
		{"8424 psi", "", 8424.4 * unit.PSI, true},
		{"8424 psi", "", 8424.6 * unit.PSI, false},
		{"0.617678", "", 0.6176784, true},
		{"0.617678", "", 0.6176786, false},
		{"2.6348e-6 1/psi", "", 2.63484e-6 * unit.PerPSI, true},
		{"2.6348e-6 1/psi", "", 2.63486e-6 * unit.PerPSI, false},
		{"100 psi", "2 psi", 101.9 * unit.PSI, true},
		{"100 psi", "2 psi", 102.1 * unit.PSI, false},
		{"100 psi", "0.1 %", 100.09 * unit.PSI, true},
		{"100 psi", "0.1 %", 100.11 * unit.PSI, false},
		{"12.5 degC", "", unit.Celsius(12.54), true},
		{"12.5 degC", "", unit.Fahrenheit(12.5), false},
		{"40 %", "", 0.404, true},
	} {
		r, err := Case{Printed: c.printed, Tolerance: c.tolerance}.Compare(c.got)
		require.NoError(t, err, c.printed)
		require.Equal(t, c.met, r.Met(), "%s: %v", c.printed, r)
	}
}

func TestCompareRefusesAnotherQuantity(t *testing.T) {
	for _, got := range []any{5 * unit.Foot, 5.0, "5", nil, unit.Celsius(5)} {
		_, err := Case{Printed: "5 psi"}.Compare(got)
		require.Error(t, err, "%v", got)
	}
}

func TestInputsReportEveryFault(t *testing.T) {
	in := NewInputs("rho=13.5 pints; depth=12000 ft; n=6; twice=1; twice=2; name=water; nothing")
	var rho unit.Density
	var n int
	var name string
	var missing unit.Length
	in.Read("rho", &rho)
	in.Read("n", &n)
	in.Read("name", &name)
	in.Read("missing", &missing)
	err := in.Err()
	require.ErrorContains(t, err, `"13.5 pints"`)
	require.ErrorContains(t, err, `"depth" was not used`)
	require.ErrorContains(t, err, `"missing" is missing`)
	require.ErrorContains(t, err, `twice`)
	require.ErrorContains(t, err, `nothing`)
	require.Equal(t, 6, n)
	require.Equal(t, "water", name)
}

func TestCaseCheck(t *testing.T) {
	good := Case{ID: "A", Capability: "H1", Quantity: "x", Printed: "1", Status: Published, Source: "a book"}
	require.NoError(t, good.check())
	bad := good
	bad.Status, bad.Tolerance, bad.Source = "seen", "1 %", ""
	err := bad.check()
	require.ErrorContains(t, err, "seen")
	require.ErrorContains(t, err, "note")
	require.ErrorContains(t, err, "source is empty")
	bad = good
	bad.Status = Misprint
	require.ErrorContains(t, bad.check(), "misprint")
	bad.Note = "digits swapped"
	require.NoError(t, bad.check())
	bad.Tolerance = "5 %"
	require.ErrorContains(t, bad.check(), "misprint")
}

func TestOnlyOthersCountAsEvidence(t *testing.T) {
	for _, s := range Statuses {
		require.Equal(t, s == Published || s == ReferenceLibrary, s.External(), s)
	}
}
