package controlline

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

func TestDiagnose(t *testing.T) {
	p, err := shift.Plan()
	require.NoError(t, err)
	held := p.Held.In(unit.Litre)
	for _, c := range []struct {
		past, returned, u float64
		want              Finding
	}{
		{0.50, 0.45, 0.03, Shifted}, {0.48, 0.43, 0.03, Shifted}, {0.01, 0.00, 0.03, NotMoved}, {0, 0, 0, NotMoved},
		{0.25, 0.22, 0.03, PartStroke}, {1.2, 0.45, 0.03, Losing}, {0.4, 0, 0.03, Losing},
		{1.2, 1.08, 0.03, PassingBy}, {0.0, 0.2, 0.03, Gaining}, {0.5, 0.45, 0.25, CannotTell},
		{0.50, 0.45, 0, Shifted}, {0.03, 0.055, 0.03, PartStroke}, {0.055, 0.03, 0.03, PartStroke},
	} {
		r := Reading{unit.Volume(held+c.past) * unit.Litre, unit.Volume(c.returned) * unit.Litre, unit.Volume(c.u) * unit.Litre}
		if c.u == 0 {
			r.Uncertainty = 1e-12 // rounding of the sums above
		}
		d, err := shift.Diagnose(p, r)
		require.NoError(t, err)
		require.Equal(t, c.want.String(), d.Finding.String(), "%+v: %+v", c, d)
	}
	none := shift
	none.Displaced = 0
	_, err = none.Diagnose(p, Reading{})
	require.Error(t, err)
	_, err = shift.Diagnose(p, Reading{Pumped: unit.Volume(math.NaN())})
	require.Error(t, err)
}

// Whatever was measured within its uncertainty of the truth, a full stroke is
// never called a leak, and a dead line is never called a shift.
func TestDiagnoseWithinUncertainty(t *testing.T) {
	p, err := shift.Plan()
	require.NoError(t, err)
	random := rand.New(rand.NewPCG(7, 8))
	u := 0.05 * unit.Litre
	off := func() unit.Volume { return unit.Volume(2*random.Float64()-1) * u }
	for i := 0; i < 5000; i++ {
		d, err := shift.Diagnose(p, Reading{p.Pumped + off(), max(0, p.Returned+off()), u})
		require.NoError(t, err)
		require.Equal(t, Shifted, d.Finding)
		d, err = shift.Diagnose(p, Reading{p.Held + off(), max(0, off()), u})
		require.NoError(t, err)
		require.Equal(t, NotMoved, d.Finding)
	}
}

func TestFindingText(t *testing.T) {
	for f := Shifted; f <= CannotTell; f++ {
		text, err := f.MarshalText()
		require.NoError(t, err)
		var back Finding
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, f, back)
	}
	var f Finding
	require.Error(t, f.UnmarshalText([]byte("good")))
	_, err := Finding(99).MarshalText()
	require.Error(t, err)
}
