package tubular_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

func TestConnectionUsage(t *testing.T) {
	c := tubular.Connection{Tension: 200000 * unit.PoundForce, Compression: 120000 * unit.PoundForce, Inside: 8000 * unit.PSI, Outside: 6000 * unit.PSI, Triaxial: 0.9}
	f := tubular.DesignFactors{Burst: 1.1, Collapse: 1.05, Axial: 1.3, Triaxial: 1.25}
	pull := tubular.Load{Axial: 100000 * unit.PoundForce}
	require.InDelta(t, 0.65, c.Usage(pull, f, 0, 1), 1e-12)
	require.InDelta(t, 0.65/0.9, c.Usage(pull, f, 0, 0.9), 1e-12, "hot")
	require.InDelta(t, 0.8/0.9, c.Usage(pull, f, 0.8, 1), 1e-12, "the body's triaxial use over the share")
	require.InDelta(t, 0.65, c.Usage(tubular.Load{Axial: -60000 * unit.PoundForce}, f, 0, 1), 1e-12)
	require.InDelta(t, 0.55, c.Usage(tubular.Load{Inside: 4000 * unit.PSI}, f, 0, 1), 1e-12)
	require.InDelta(t, 0.525, c.Usage(tubular.Load{Outside: 3000 * unit.PSI}, f, 0, 1), 1e-12)

	var unknown tubular.Connection
	require.False(t, unknown.Known())
	require.Len(t, unknown.Unknown(), 5)
	require.Zero(t, unknown.Usage(pull, f, 5, 1), "what isn't known is not checked")
	require.Empty(t, c.Unknown())
	require.NoError(t, c.Validate())

	err := tubular.Connection{Tension: -1, Compression: unit.Force(math.NaN()), Inside: unit.Pressure(math.Inf(1)), Outside: -1, Triaxial: 2}.Validate()
	for _, field := range []string{"Tension", "Compression", "Inside", "Outside", "Triaxial"} {
		require.ErrorContains(t, err, field+": is")
	}
}

// Two ways: the body derated, and the derated pipe prepared.
func TestDeratedBodyIsThatOfTheDeratedPipe(t *testing.T) {
	p := tubular.Pipe{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot, Material: tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)}
	body, err := p.Prepare()
	require.NoError(t, err)
	for _, hot := range []float64{70, 150, 300, 400} {
		at := unit.Fahrenheit(hot)
		share, err := tubular.UsualDerating().Factor(at)
		require.NoError(t, err)
		derated, err := p.At(at, tubular.UsualDerating())
		require.NoError(t, err)
		want, err := derated.Prepare()
		require.NoError(t, err)
		got := body.Derated(share)
		for _, l := range []tubular.Load{
			{Axial: 150000 * unit.PoundForce, Inside: 6000 * unit.PSI, Outside: 1000 * unit.PSI},
			{Axial: 90000 * unit.PoundForce, Inside: 500 * unit.PSI, Outside: 5000 * unit.PSI, Curvature: 5 * unit.DegreePer100Feet},
			{Axial: -40000 * unit.PoundForce, Outside: 4000 * unit.PSI, Curvature: 15 * unit.DegreePer100Feet},
		} {
			f := tubular.NorwegianShelf()
			w, g := want.UsageBent(l, f), got.UsageBent(l, f)
			for _, x := range [][2]float64{{w.Burst, g.Burst}, {w.Collapse, g.Collapse}, {w.Axial, g.Axial}, {w.Triaxial, g.Triaxial}} {
				require.InDelta(t, x[0], x[1], 1e-12)
			}
		}
	}
}

// By hand: 10 degrees per 100 ft bends 4-1/2 in pipe to E·κ·r = 30e6 psi × 0.1745 rad/1,200
// in × 2.25 in = 9,817 psi; the collapse is that under so much more axial stress.
func TestCollapseWithBending(t *testing.T) {
	p := tubular.Pipe{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot, Material: tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)}
	body, err := p.Prepare()
	require.NoError(t, err)
	l := tubular.Load{Axial: 72000 * unit.PoundForce, Outside: 4000 * unit.PSI, Curvature: 10 * unit.DegreePer100Feet}
	stress := l.Axial.In(unit.PoundForce)/p.SteelArea().In(unit.SquareInch) + 30e6*(10*math.Pi/180)/1200*2.25
	require.InDelta(t, 20000+9817, stress, 10)
	rating, err := p.CollapseUnderLoad(unit.Pressure(stress)*unit.PSI, 0)
	require.NoError(t, err)
	got := body.UsageBent(l, tubular.WithoutReserve())
	require.InDelta(t, 4000/rating.Pressure.In(unit.PSI), got.Collapse, 1e-9)
	straight := body.Usage(l, tubular.WithoutReserve())
	require.Greater(t, got.Collapse, straight.Collapse)
	require.Equal(t, straight.Triaxial, got.Triaxial)
}
