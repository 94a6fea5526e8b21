package api

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const root = "../.."

// stillOwed are calculations without an Example so far. The list only gets
// shorter: what is new has its Example.
var stillOwed = map[string]string{}

func TestEveryCalculationIsShownInAnExample(t *testing.T) {
	packages, err := public(root)
	require.NoError(t, err)
	found := 0
	for _, p := range packages {
		if strings.HasSuffix(p.name(), "test") { // what takes a testing.TB
			continue
		}
		found += len(calculations(p))
		owed := map[string]bool{}
		for _, name := range strings.Fields(stillOwed[p.Path]) {
			owed[name] = true
		}
		for _, name := range missing(p) {
			if !owed[name] {
				t.Errorf("%s: no Example with output calls %s", p.Path, name)
			}
			delete(owed, name)
		}
		for name := range owed {
			t.Errorf("%s: %s is shown now; take it out of stillOwed", p.Path, name)
		}
	}
	require.Greater(t, found, 400, "the search for calculations has gone blind")
}

func TestWhatCountsAsACalculation(t *testing.T) {
	p := parse(t, `package p
		func Area(d float64) float64 { return d * d }
		func Next(i int) int { return i + 1 }
		func Name(s string) string { return "a" + s }
		func (t T) Sum() float64 { return t.a - t.b }
		func (t hidden) Sum() float64 { return t.a * t.b }
		func (t T) Validate() error { _ = t.a * t.b; return nil }
		func hide(d float64) float64 { return d * d }
		func Shown(d float64) float64 { return d / 2 }`, `package p
		func ExampleArea() { Shown(1) // Output: 1
		}
		func ExampleT_Sum() { }`)
	require.Equal(t, []string{"Area", "T.Sum", "Shown"}, calculations(p))
	require.Equal(t, []string{"T.Sum"}, missing(p), "an Example without output shows nothing")
}
