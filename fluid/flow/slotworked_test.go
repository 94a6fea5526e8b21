package flow_test

import (
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// The third edition of API RP 13D in an annulus, a slot: shear rate 12V/(D-d), f =
// 24/Re, by 256 bits.
func TestAPIFiguresOfASlotWorked(t *testing.T) {
	s := flow.Stream{Conduit: flow.Conduit{Outer: 0.2, Inner: 0.09}, Rheology: flow.PowerLaw(0.3, 0.6), Density: 1300, Rate: 0.01}
	f, err := s.APIFigures()
	require.NoError(t, err)
	require.Equal(t, flow.FlowLaminar, f.Regime)
	of := precise.Values{"D": 0.2, "d": 0.09, "K": 0.3, "n": 0.6, "ρ": 1300, "Q": 0.01}
	const by = `
		V = Q/(pi/4*(D*D - d*d))
		y = 12*V/(D - d)
		μe = K*pow(y, n - 1)*pow((2*n + 1)/(3*n), n)
		Re = ρ*V*(D - d)/μe
	`
	precise.Within(t, 1e-11, float64(f.EffectiveViscosity), by+"μe", of)
	precise.Within(t, 1e-11, f.Reynolds, by+"Re", of)
	precise.Within(t, 1e-11, float64(f.Factor), by+"24/Re", of)
	precise.Within(t, 1e-11, float64(f.Gradient), by+"2*24/Re*ρ*V*V/(D - d)", of)
}

// White's contraction on both sides of where his two laws meet, A2/A1 = 0.76².
func TestContractionOnBothSides(t *testing.T) {
	edge := 0.76 * 0.76
	require.InEpsilon(t, 0.42*(1-edge), flow.Contraction(1, unit.Area(edge)), 1e-14)
	above := math.Nextafter(edge, 1)
	require.InEpsilon(t, (1-above)*(1-above), flow.Contraction(1, unit.Area(above)), 1e-14)
	precise.Equal(t, flow.Contraction(1, 0.25), "0.42*0.75", nil)
	precise.Equal(t, flow.Enlargement(1, 4), "0.75*0.75", nil)
}
