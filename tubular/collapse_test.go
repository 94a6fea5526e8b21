package tubular_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// The printed coefficients (API Bul 5C3, 1985, eight grades, every digit) and the
// rating tables are held by internal/validation. Here: limits, continuity and
// order.

func TestCollapseMeetsAtItsLimits(t *testing.T) {
	for y := unit.Pressure(24_000); y <= 180_000; y += 1000 {
		c, err := tubular.PrepareCollapse(y * unit.PSI)
		require.NoError(t, err)
		require.Less(t, 2.0, c.YieldPlastic)
		require.Less(t, c.YieldPlastic, c.PlasticTransition, y)
		require.Less(t, c.PlasticTransition, c.TransitionElastic, y)
		for i, limit := range []float64{c.YieldPlastic, c.PlasticTransition, c.TransitionElastic} {
			on, above := limit, math.Nextafter(limit, 100)
			require.Equal(t, tubular.CollapseRegime(i), c.Regime(on), "a limit belongs to the thicker regime")
			require.Equal(t, tubular.CollapseRegime(i+1), c.Regime(above))
			near(t, float64(c.Pressure(on)), float64(c.Pressure(above)), 1e-9, "jump at D/t", limit, "yield", y)
		}
	}
}

func TestCollapseFallsWithSlendernessAndRisesWithYield(t *testing.T) {
	var weaker tubular.CollapseCurve
	for y := 24.0; y <= 180; y += 2 {
		c, err := tubular.PrepareCollapse(unit.Pressure(y) * unit.KSI)
		require.NoError(t, err)
		last := math.Inf(1)
		for x := 3.0; x < 100; x += 0.05 {
			p := float64(c.Pressure(x))
			require.Less(t, p, last, "yield %v ksi, D/t %v", y, x)
			last = p
			if weaker.Yield != 0 && y <= 160 {
				require.GreaterOrEqual(t, p*(1+1e-12), float64(weaker.Pressure(x)), "yield %v ksi, D/t %v", y, x)
			}
		}
		weaker = c
	}
}

func TestCollapseByHand(t *testing.T) {
	// 7 in 26 lb/ft L80 with full-precision coefficients:
	// A = 2.8762 + 0.085432 + 0.136326 - 0.027204 = 3.070755
	// B = 0.026233 + 0.040487 = 0.066720
	// C = -465.93 + 2469.36 - 67.0912 + 18.9384 = 1955.28 psi
	// D/t = 19.33702; 80000 (3.070755/19.33702 - 0.066720) - 1955.28 = 5411.3 psi
	r, err := graded(wall(7, 0.362), 80*unit.KSI, 95*unit.KSI).Collapse()
	require.NoError(t, err)
	require.Equal(t, tubular.PlasticCollapse, r.Regime)
	require.InDelta(t, 3.070755, r.Curve.A, 1e-6)
	require.InDelta(t, 1955.28, r.Curve.C.In(unit.PSI), 0.005)
	require.InDelta(t, 5411.3, r.Pressure.In(unit.PSI), 0.1)
	// Elastic collapse is the Euler ring, 2 E / ((1 - ν²) x (x - 1)²), times API's
	// average of 0.95 and reserve of 0.75 (API Bul 5C3, 2.4): 46.95e6 psi, whose
	// four digits are its tolerance.
	c, err := tubular.PrepareCollapse(80 * unit.KSI)
	require.NoError(t, err)
	s := tubular.Steel()
	x := 50.0
	ring := 2 * float64(s.Young) / (1 - s.Poisson*s.Poisson) / (x * (x - 1) * (x - 1))
	near(t, 0.95*0.75*ring, float64(c.Pressure(x)), 2e-3)
}

func TestOverloadHasNoCollapse(t *testing.T) {
	p := graded(wall(7, 0.362), 80*unit.KSI, 95*unit.KSI)
	_, err := p.CollapseUnderLoad(75*unit.KSI, 0)
	require.ErrorIs(t, err, tubular.ErrNoCollapse)
	_, err = p.CollapseBiaxial(81 * unit.KSI)
	require.ErrorIs(t, err, tubular.ErrNoCollapse)
	// Steel that API can't rate at all is another fault.
	_, err = graded(wall(7, 0.362), 10*unit.KSI, 95*unit.KSI).CollapseUnderLoad(9*unit.KSI, 0)
	require.ErrorContains(t, err, "Yield: is 10000 psi")
	require.NotErrorIs(t, err, tubular.ErrNoCollapse)
}

func TestCollapseRange(t *testing.T) {
	for _, y := range []unit.Pressure{0, -1, 23_999, 180_001, unit.Pressure(math.NaN()), unit.Pressure(math.Inf(1))} {
		_, err := tubular.PrepareCollapse(y * unit.PSI)
		require.ErrorContains(t, err, "must be from 24000 psi to 180000 psi")
	}
	c, err := tubular.PrepareCollapse(80 * unit.KSI)
	require.NoError(t, err)
	for _, x := range []float64{2, 1, 0, -3, math.NaN()} {
		require.True(t, math.IsNaN(float64(c.Pressure(x))), x)
	}
	require.Zero(t, float64(c.Pressure(math.Inf(1))))
}

func TestEquivalentYield(t *testing.T) {
	Y := 80 * unit.KSI
	require.Equal(t, Y, tubular.EquivalentYield(Y, 0))
	require.Equal(t, Y, tubular.EquivalentYield(Y, -40*unit.KSI), "compression earns no credit")
	require.Zero(t, float64(tubular.EquivalentYield(Y, Y)))
	require.Zero(t, float64(tubular.EquivalentYield(Y, 2*Y)))
	require.True(t, math.IsNaN(float64(tubular.EquivalentYield(unit.Pressure(math.NaN()), 1))))
	// It is the ellipse of plane stress: hoop -Yax and axial s make a von Mises
	// stress of Y.
	for s := 1.0; s < 80; s += 3 {
		h := -float64(tubular.EquivalentYield(Y, unit.Pressure(s)*unit.KSI).In(unit.KSI))
		near(t, 80, math.Sqrt(h*h-h*s+s*s), 1e-12)
	}
}

func TestCollapseUnderLoad(t *testing.T) {
	p := graded(wall(9.625, 0.545), 110*unit.KSI, 125*unit.KSI)
	plain, err := p.Collapse()
	require.NoError(t, err)
	last := plain.Pressure
	for s := 5.0; s < 80; s += 5 {
		r, err := p.CollapseUnderLoad(unit.Pressure(s)*unit.KSI, 0)
		require.NoError(t, err)
		require.Less(t, r.Pressure, last)
		last = r.Pressure
		old, err := p.CollapseBiaxial(unit.Pressure(s) * unit.KSI)
		require.NoError(t, err)
		require.Equal(t, old.Pressure, r.Pressure, "without inside pressure both forms agree")
		workingtest.Check(t, r.Steps())
	}
	compressed, err := p.CollapseUnderLoad(-30*unit.KSI, 0)
	require.NoError(t, err)
	require.Equal(t, plain.Pressure, compressed.Pressure)

	_, err = p.CollapseUnderLoad(100*unit.KSI, 0)
	require.ErrorContains(t, err, "must be at least 24000 psi")
	_, err = p.CollapseUnderLoad(unit.Pressure(math.NaN()), unit.Pressure(math.Inf(1)))
	require.ErrorContains(t, err, "AxialStress")
	require.ErrorContains(t, err, "Inside")
	_, err = bore(7, 6).Collapse()
	require.ErrorContains(t, err, "Material.Yield")
	_, err = tubular.Pipe{}.Collapse()
	require.ErrorContains(t, err, "tubular: OD: is")

	// Older form, by hand: (1 - 2/17.6606) 6000 = 5320.5; 9000 - 5320.5 = 3679.5.
	require.InDelta(t, 3679.5, p.EquivalentExternalPressure(9*unit.KSI, 6*unit.KSI).In(unit.PSI), 0.1)
}

func TestCollapseStepsInEveryRegime(t *testing.T) {
	for regime, slenderness := range []float64{10, 18, 25, 40} {
		p := graded(wall(7, 7/slenderness), 80*unit.KSI, 95*unit.KSI)
		r, err := p.Collapse()
		require.NoError(t, err)
		require.Equal(t, tubular.CollapseRegime(regime), r.Regime)
		workingtest.Check(t, r.Steps())
	}
}

func TestRegimeText(t *testing.T) {
	for r := tubular.YieldCollapse; r <= tubular.ElasticCollapse; r++ {
		text, err := r.MarshalText()
		require.NoError(t, err)
		var back tubular.CollapseRegime
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, r, back)
		require.Equal(t, string(text), r.String())
	}
	_, err := tubular.CollapseRegime(9).MarshalText()
	require.Error(t, err)
	require.Equal(t, "CollapseRegime(-1)", tubular.CollapseRegime(-1).String())
	var r tubular.CollapseRegime
	require.Error(t, r.UnmarshalText([]byte("sudden")))
}

func ExamplePipe_Collapse() {
	// 4-1/2 in 9.5 lb/ft J55: 3,310 psi in the tables, which print to 10 psi.
	p := tubular.Pipe{OD: 4.5 * unit.Inch, ID: 4.09 * unit.Inch, Material: tubular.Steel().WithStrength(55*unit.KSI, 75*unit.KSI)}
	r, err := p.Collapse()
	fmt.Println(r.Pressure.Rounded(5), r.Regime, err)
	// Output: 3313 psi plastic <nil>
}

func ExamplePipe_CollapseUnderLoad() {
	p := tubular.Pipe{OD: 9.625 * unit.Inch, ID: 8.535 * unit.Inch, Material: tubular.Steel().WithStrength(110*unit.KSI, 125*unit.KSI)}
	r, err := p.CollapseUnderLoad(30*unit.KSI, 6*unit.KSI)
	fmt.Println(r.Equivalent.Rounded(5), r.Pressure.Rounded(5), err)
	// Output: 87489 psi 6994.8 psi <nil>
}
