package accuracy

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The functions against digits that any table of constants prints (OEIS A001113,
// A002162, A002193, A000796), and against each other.
func TestFunctionsToFortyDigits(t *testing.T) {
	for _, c := range []struct {
		name string
		got  number
		want string
	}{
		{"e", exact(1.0).exp(), "2.7182818284590452353602874713526624977572"},
		{"ln 2", exact(2.0).log(), "0.6931471805599453094172321214581765680755"},
		{"√2", exact(2.0).root(), "1.4142135623730950488016887242096980785697"},
		{"√2 by logarithms", exact(2.0).pow(exact(0.5)), "1.4142135623730950488016887242096980785697"},
		{"π by Leibniz", exact(1.0).atan().scaled(2), "3.1415926535897932384626433832795028841972"},
		{"π", pi, "3.1415926535897932384626433832795028841972"},
	} {
		require.Equal(t, c.want, c.got.f.Text('f', 40), c.name)
	}
}

func TestFunctionsAgainstMath(t *testing.T) {
	for _, x := range []float64{-30, -1, -1e-9, 1e-9, 0.3, 1, 5, 30} {
		require.InEpsilon(t, math.Exp(x), exact(x).exp().float(), 1e-15)
		require.InEpsilon(t, x, exact(x).exp().log().float(), 1e-15)
		sin, cos := exact(x).sincos()
		require.InEpsilon(t, math.Sin(x), sin.float(), 1e-15)
		require.InEpsilon(t, math.Cos(x), cos.float(), 1e-15)
		require.InDelta(t, 1, sin.squared().plus(cos.squared()).float(), 1e-16)
		if x > 0 {
			require.InEpsilon(t, math.Atan(x), exact(x).atan().float(), 1e-15)
		}
	}
	two := refined(exact(1.4), func(x number) number { return x.squared().minus(exact(2.0)) })
	require.Equal(t, exact(2.0).root().f.Text('f', 60), two.f.Text('f', 60))
}
