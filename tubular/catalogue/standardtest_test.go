package catalogue_test

import (
	"fmt"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/stretchr/testify/require"
)

func find(t testing.TB, od unit.Length, weight unit.WeightPerLength) catalogue.Entry {
	t.Helper()
	e, err := standard(t).Find(od, weight)
	require.NoError(t, err)
	return e
}

func grade(t testing.TB, name string) catalogue.Grade {
	t.Helper()
	g, err := catalogue.FindGrade(name)
	require.NoError(t, err)
	return g
}

// Every branch by hand, 2 f Y t / D to 100 psi.
func TestStandardTest(t *testing.T) {
	psi := func(e catalogue.Entry, name string) float64 { return e.StandardTest(grade(t, name)).In(unit.PSI) }
	small := find(t, 4.5*unit.Inch, 11.6*unit.PoundPerFoot)
	require.InDelta(t, 7100, psi(small, "L80"), 1e-6) // 7,111
	require.InDelta(t, 3000, psi(small, "J55"), 1e-6) // 4,889, capped
	large := find(t, 13.375*unit.Inch, 54.5*unit.PoundPerFoot)
	require.InDelta(t, 1900, psi(large, "J55"), 1e-6) // 0.6: 1,875
	require.InDelta(t, 3600, psi(large, "L80"), 1e-6) // 0.8: 3,637
	thick := find(t, 2.875*unit.Inch, 8.6*unit.PoundPerFoot)
	require.InDelta(t, 10_000, psi(thick, "P110"), 1e-6) // 18,856, capped
	edge := find(t, 9.625*unit.Inch, 36*unit.PoundPerFoot)
	require.InDelta(t, 3000, psi(edge, "J55"), 1e-6) // still 0.8: 3,218, capped
}

func TestThreadHeight(t *testing.T) {
	require.Equal(t, 0.0556*unit.Inch, find(t, 3.5*unit.Inch, 9.2*unit.PoundPerFoot).ThreadHeight())
	require.Equal(t, 0.07125*unit.Inch, find(t, 4*unit.Inch, 9.5*unit.PoundPerFoot).ThreadHeight())
}

func ExampleEntry_StandardTest() {
	all, err := catalogue.Standard()
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := all.Find(4.5*unit.Inch, 11.6*unit.PoundPerFoot)
	if err != nil {
		fmt.Println(err)
		return
	}
	l80, err := catalogue.FindGrade("L80")
	fmt.Println(e.StandardTest(l80).Rounded(4), err)
	// Output: 7100 psi <nil>
}

func ExampleEntry_ThreadHeight() {
	e := catalogue.Entry{OD: 3.5 * unit.Inch}
	fmt.Println(e.ThreadHeight())
	// Output: 0.0556 in
}
