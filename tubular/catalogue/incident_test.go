package catalogue_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/stretchr/testify/require"
)

// Tubing that had parted at 585 ft was thrown out of the well by 500 psi that stood under a closed
// valve. Its size isn't printed: pressure on the whole outside area that carries the weight is, for
// the usual sizes, on both sides of that figure. Source: MMS, Gulf of Mexico Notice 145, 22 August 1985;
// weights and diameters API Spec 5CT.
func TestPressureThatThrowsOutAString(t *testing.T) {
	l80, err := catalogue.FindGrade("L80")
	require.NoError(t, err)
	for _, x := range []struct{ od, weight, want float64 }{{2.375, 4.7, 621}, {2.875, 6.5, 586}, {3.5, 9.3, 565}, {4.5, 12.6, 463}} {
		e, err := standard(t).Find(unit.Length(x.od)*unit.Inch, unit.WeightPerLength(x.weight)*unit.PoundPerFoot)
		require.NoError(t, err)
		p := e.Pipe(l80)
		got := unit.Pressure(float64(p.WeightInAir().Along(585*unit.Foot)) / float64(p.OuterArea())).In(unit.PSI)
		require.InDelta(t, x.want, got, 0.5, "%v", e)
		require.InEpsilon(t, 500, got, 0.25)
	}
}
