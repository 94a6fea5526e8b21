package affine

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Of smooth functions every value at every choice lies in the enclosure.
func TestEnclose(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	for name, f := range map[string]func(a, b, c float64) float64{
		"hyperbola": func(a, b, _ float64) float64 { return 100 / (3 + a) * (2 + b) },
		"waves":     func(a, b, c float64) float64 { return math.Sin(0.7*a) + math.Cos(0.6*b)*math.Exp(0.4*c) },
		"roots":     func(a, b, c float64) float64 { return math.Sqrt(4+a+b) * math.Log(5+c) },
		"straight":  func(a, b, c float64) float64 { return 3*a - b + 0.25*c },
	} {
		for range 200 {
			size := random.Float64()
			line := func(symbol int) Line {
				return Line{F: Form{C: random.Float64() - 0.5, T: []Term{{symbol, size * random.Float64()}}}, S: 0.3 * (random.Float64() - 0.5), D: 0.02}
			}
			in := []Input{{line(0), 1e-3}, {line(1), 1e-3}, {line(2), 1e-3}}
			span := random.Float64()
			out, err := Enclose(in, span, false, func(x [MostInputs]float64) (y [MostOutputs]float64, err error) {
				y[0] = f(x[0], x[1], x[2])
				return y, nil
			})
			require.NoError(t, err)
			for range 50 {
				e := []float64{2*random.Float64() - 1, 2*random.Float64() - 1, 2*random.Float64() - 1}
				s := span * random.Float64()
				var x [3]float64
				for k := range x {
					x[k] = in[k].F.At(e) + (in[k].S+in[k].D*(2*random.Float64()-1))*s
				}
				want := f(x[0], x[1], x[2])
				l := out[0]
				off := l.F.R + l.D*s + 1e-9
				require.InDelta(t, want, l.F.At(e)+l.S*s, off, name)
			}
			if name == "straight" {
				require.InDelta(t, 0, out[0].F.R, 1e-9)
			}
		}
	}
}

// Of numbers a number comes.
func TestEncloseOfNumbers(t *testing.T) {
	out, err := Enclose([]Input{{Flat(Const(4)), 1}}, 10, true, func(x [MostInputs]float64) (y [MostOutputs]float64, err error) {
		y[1] = x[0] * x[0]
		return y, nil
	})
	require.NoError(t, err)
	require.Equal(t, Flat(Const(16)), out[1])
}
