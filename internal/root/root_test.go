package root_test

import (
	"math"
	"testing"

	"completion.example/internal/root"
	"github.com/stretchr/testify/require"
)

func TestFindMeetsClosedForms(t *testing.T) {
	for _, c := range []struct {
		name      string
		f         func(float64) float64
		a, b, at  float64
		tolerance float64
	}{
		{"line", func(x float64) float64 { return 3*x - 1 }, -10, 10, 1.0 / 3, 1e-15},
		{"cosine", math.Cos, 1, 2, math.Pi / 2, 1e-15},
		{"cube root", func(x float64) float64 { return x*x*x - 2 }, 0, 1e6, math.Cbrt(2), 1e-15},
		{"falling", func(x float64) float64 { return math.Exp(-x) - 1e-8 }, 0, 100, math.Log(1e8), 1e-13},
		{"flat triple root", func(x float64) float64 { return math.Pow(x-1, 3) }, 0, 3, 1, 1e-5},
		{"step", func(x float64) float64 { return math.Copysign(1, x-0.3) }, -1, 1, 0.3, 1e-15},
		{"at an end", func(x float64) float64 { return x - 2 }, 2, 5, 2, 0},
	} {
		x, err := root.Find(c.f, c.a, c.b, 0)
		require.NoError(t, err, c.name)
		require.InDelta(t, c.at, x, c.tolerance, c.name)
		y, err := root.Find(c.f, c.b, c.a, 0)
		require.NoError(t, err, c.name)
		require.InDelta(t, c.at, y, c.tolerance, c.name+", ends exchanged")
	}
}

func TestFindSaysWhyNot(t *testing.T) {
	_, err := root.Find(func(x float64) float64 { return x*x + 1 }, -1, 1, 0)
	require.ErrorIs(t, err, root.ErrNotBracketed)
	_, err = root.Find(func(float64) float64 { return math.NaN() }, -1, 1, 0)
	require.ErrorIs(t, err, root.ErrNotANumber)
	_, err = root.Find(func(x float64) float64 { return math.Log(x) * (x - 1e9) }, -1, 2e9, 0)
	require.ErrorIs(t, err, root.ErrNotANumber)
}

func BenchmarkFind(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = root.Find(math.Cos, 1, 2, 0)
	}
}
