package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
)

// By hand: 100 bbl of 11.0 and 50 bbl of 14.2 lb/gal make 150 bbl of 12.0667.
func TestBlendByHand(t *testing.T) {
	b, err := Blend(Batch{100 * unit.Barrel, 11 * unit.PoundPerGallon}, Batch{50 * unit.Barrel, 14.2 * unit.PoundPerGallon})
	require.NoError(t, err)
	require.InDelta(t, 150, b.Volume.In(unit.Barrel), 1e-9)
	require.InDelta(t, 12.0667, b.Density.In(unit.PoundPerGallon), 5e-5)
	for _, bad := range [][]Batch{nil, {{}}, {{1, 1000}, {-1, 1000}}, {{1, unit.Density(math.NaN())}}, {{1e300, 1000}, {math.MaxFloat64, 1000}}} {
		_, err := Blend(bad...)
		require.Error(t, err)
	}
}

// By hand: 200 bbl from 9.0 to 9.5 with 11.6 lb/gal takes 200·0.5/2.1 = 47.619
// bbl; cutting 200 bbl of 11.6 back to 10 with water of 8.32 takes 200·1.6/1.68 =
// 190.476 bbl.
func TestAdjustByHand(t *testing.T) {
	up, err := Adjust(Batch{200 * unit.Barrel, 9 * unit.PoundPerGallon}, 9.5*unit.PoundPerGallon, 11.6*unit.PoundPerGallon)
	require.NoError(t, err)
	require.InDelta(t, 47.619, up.Added.Volume.In(unit.Barrel), 5e-4)
	back, err := Adjust(Batch{200 * unit.Barrel, 11.6 * unit.PoundPerGallon}, 10*unit.PoundPerGallon, 8.32*unit.PoundPerGallon)
	require.NoError(t, err)
	require.InDelta(t, 190.476, back.Added.Volume.In(unit.Barrel), 5e-4)
	for _, a := range []Adjustment{up, back} {
		require.InEpsilon(t, float64(a.After.Mass()), float64(a.Before.Mass()+a.Added.Mass()), 1e-15)
		workingtest.Check(t, a.Steps())
	}
	none, err := Adjust(up.Before, up.Before.Density, 14*unit.PoundPerGallon)
	require.NoError(t, err)
	require.Zero(t, none.Added.Volume)
	require.Equal(t, up.Before, none.After)
	for _, c := range []struct {
		have         Batch
		wanted, with unit.Density
	}{
		{Batch{1, 1000}, 1300, 1200}, {Batch{1, 1000}, 900, 1200}, {Batch{1, 1000}, 1200, 1200},
		{Batch{1, 1000}, 1100, 1000}, {Batch{1, 1000}, unit.Density(math.NaN()), 1200}, {Batch{0, 1000}, 1100, 1200}, {Batch{1, 1000}, 1100, -1},
	} {
		_, err := Adjust(c.have, c.wanted, c.with)
		require.ErrorIs(t, err, ErrOutsideRange, "%+v", c)
	}
}

func TestBlendScales(t *testing.T) {
	dimension.Check(t, dimension.Free, func(a, b Batch) (Batch, error) { return Blend(a, b) }, Batch{3, 1100}, Batch{5, 1300})
	dimension.Check(t, dimension.Free, Adjust, Batch{3, 1100}, unit.Density(1200), unit.Density(1300))
}
