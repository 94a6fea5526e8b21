package hydrostatics

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Two legs may balance more than once: where a slug passes a change of section the difference dips through nought and comes
// back. The first of the balances is the rest, as a scan of all that may fall finds. These wells were drawn because they show
// it: in each an end of a fluid at a change of section, of either leg, bounds the dip.
func TestRestIsTheFirstBalance(t *testing.T) {
	for _, seed := range []uint64{301, 475, 3440, 6130, 8662, 14092, 34086} {
		r := rand.New(rand.NewPCG(seed, 9))
		const port = 1000
		leg := func() Leg {
			l := Leg{}
			n := 1 + r.IntN(3)
			for i := range n {
				z := port * float64(i+1) / float64(n)
				if i < n-1 {
					z = math.Round(z + 200*(r.Float64()-0.5))
				}
				l.Sections = append(l.Sections, LegSection{unit.Length(z), unit.Area(math.Pow(10, -3+2*r.Float64()))})
			}
			l.LevelMD = unit.Length(math.Round(float64(r.IntN(2)) * 300 * r.Float64()))
			fluids := 1 + r.IntN(4)
			top := float64(l.LevelMD)
			for i := range fluids {
				z := float64(port)
				if i < fluids-1 {
					z = max(math.Round(top+(port-top)*math.Pow(r.Float64(), 2)), top+1)
				}
				l.Fluids = append(l.Fluids, Stretch{unit.Length(z), unit.Density(math.Round(300 + 1700*r.Float64()))})
				top = z
			}
			return l
		}
		u := UTube{PortMD: port, Tubing: leg(), Annulus: leg()}
		rest, err := u.Rest()
		require.NoError(t, err)
		path, err := Vertical(port)
		require.NoError(t, err)
		falling, rising := u.Tubing.bore(path, port), u.Annulus.bore(path, port)
		if rest.Falling == Annulus {
			falling, rising = rising, falling
		}
		cell := falling.top[0] / 10000
		v := 0.0
		for falling.fallen(v) > rising.risen(v, falling) {
			v += cell
		}
		require.InDelta(t, v-cell/2, float64(rest.Moved), cell/2, "seed %d", seed)
	}
}
