package precise_test

import (
	"strings"
	"testing"

	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// Fifty digits from Abramowitz and Stegun, Handbook of Mathematical Functions,
// 1964, table 1.1 (π, e, √2, ln 2, ln 10) and its recurrences.
func TestHandbookDigits(t *testing.T) {
	for formula, digits := range map[string]string{
		"pi":      "3.14159265358979323846264338327950288419716939937510",
		"exp(1)":  "2.71828182845904523536028747135266249775724709369995",
		"sqrt(2)": "1.41421356237309504880168872420969807856967187537694",
		"log(2)":  "0.69314718055994530941723212145817656807550013436025",
		"log(10)": "2.30258509299404568401799145468436420760110148862877",
	} {
		v, err := precise.Eval(formula, nil)
		require.NoError(t, err)
		require.Contains(t, v.Text('f', 60), digits[:50], formula)
	}
}

func TestIdentities(t *testing.T) {
	for _, x := range []float64{1e-9, 0.3, 1, 1.5, 2.9} {
		of := precise.Values{"x": x}
		for _, zero := range []string{
			"sin(x)*sin(x) + cos(x)*cos(x) - 1", "log(exp(x)) - x", "tan(atan(x)) - x", "pow(cbrt(x), 3) - x",
			"pow(x, 2.5) - x*x*sqrt(x)", "log10(x)*log(10) - log(x)", "expm1(log1p(x)) - x", "min(x, -x) + max(x, -x)",
			"abs(-x) - x", "atan(1) - pi/4",
		} {
			v, err := precise.Eval(zero, of)
			require.NoError(t, err)
			f, _ := v.Float64()
			require.InDelta(t, 0, f, 1e-70, "%s at %v", zero, x)
		}
	}
}

func TestDefinitionsAndFaults(t *testing.T) {
	precise.Equal(t, 12, `
		a = 3*x
		a*a/3
	`, precise.Values{"x": 2})
	for formula, fault := range map[string]string{"y": "nothing is called y", "1 +": "expected operand", "f(1)": "no function f", "log(0)": "logarithm", "0/0": "0/0"} {
		_, err := precise.Eval(formula, nil)
		require.Error(t, err, formula)
		require.True(t, strings.Contains(err.Error(), fault), "%s: %v", formula, err)
	}
}
