package packer_test

import (
	"fmt"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"github.com/stretchr/testify/require"
)

func parted() packer.Parted {
	return packer.Parted{
		Depth: 9000 * unit.Foot, Length: 10000 * unit.Foot,
		Tubing: 9.5 * unit.PoundPerGallon, Annulus: 8.8 * unit.PoundPerGallon,
		TubingArea: 7 * unit.SquareInch, AnnulusArea: 28 * unit.SquareInch,
		Open: true, Formation: 4200 * unit.PSI, Margin: 200 * unit.PSI,
	}
}

func ExampleParted_Aftermath() {
	a, err := packer.Parted{
		Depth: 9000 * unit.Foot, Length: 10000 * unit.Foot,
		Tubing: 9.5 * unit.PoundPerGallon, Annulus: 8.8 * unit.PoundPerGallon,
		TubingArea: 7 * unit.SquareInch, AnnulusArea: 28 * unit.SquareInch,
		Open: true, Formation: 4200 * unit.PSI, Margin: 200 * unit.PSI,
	}.Aftermath()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("flow:", a.Flow, "held by", a.Hold.Rounded(4), "on the annulus")
	fmt.Println("tubing falls by", a.Fall.Rounded(4), "and the annulus gives back", a.Spilled.Rounded(3))
	fmt.Println("overbalance of the lighter column:", a.Overbalance.Rounded(4))
	fmt.Println("kill with", a.Kill.Rounded(3), "in", a.Bottom.Rounded(4))
	// Output:
	// flow: tubing to annulus held by 327.3 psi on the annulus
	// tubing falls by 651.2 ft and the annulus gives back 6.26 bbl
	// overbalance of the lighter column: -85.71 psi
	// kill with 9.41 lb/gal in 432.9 bbl
}

// Two ways: after the fall both columns weigh the same at the joint.
func TestFallenColumnsBalance(t *testing.T) {
	for _, turn := range []bool{false, true} {
		for _, ratio := range []float64{0.1, 1, 4, 30} {
			p := parted()
			p.AnnulusArea = p.TubingArea * unit.Area(ratio)
			heavy, light := p.Tubing, p.Annulus
			rise := unit.Length(1 / ratio)
			if turn {
				p.Tubing, p.Annulus = p.Annulus, p.Tubing
				rise = unit.Length(ratio)
			}
			a, err := p.Aftermath()
			require.NoError(t, err)
			require.Less(t, a.Fall*rise, p.Depth, "the heavier fluid stays under the top of the lighter side")
			left := hydrostatics.Pressure(heavy, p.Depth-a.Fall)
			right := hydrostatics.Pressure(heavy, a.Fall*rise) + hydrostatics.Pressure(light, p.Depth-a.Fall*rise)
			require.InEpsilon(t, float64(left), float64(right), 1e-12)
			want := packer.TubingToAnnulus
			if turn {
				want = packer.AnnulusToTubing
			}
			require.Equal(t, want, a.Flow)
		}
	}
}

func TestPartedWithPressureHeld(t *testing.T) {
	p := parted()
	p.AnnulusSurface = hydrostatics.Pressure(0.7*unit.PoundPerGallon, p.Depth)
	a, err := p.Aftermath()
	require.NoError(t, err)
	require.InDelta(t, 0, a.Hold.In(unit.PSI), 1e-6, "what Hold says stops the flow")
	require.Zero(t, a.Fall)

	p = parted()
	p.Annulus = p.Tubing
	a, err = p.Aftermath()
	require.NoError(t, err)
	require.Equal(t, packer.Still, a.Flow)
	require.Zero(t, a.Fill)
	require.Zero(t, a.Fall)

	p.Open = false
	_, err = p.Aftermath()
	require.ErrorContains(t, err, "want 0 where Open is not set")
	_, err = packer.Parted{Depth: 5, Tubing: -1}.Aftermath()
	for _, want := range []string{"Length", "Tubing", "TubingArea", "AnnulusArea"} {
		require.ErrorContains(t, err, "Parted."+want)
	}
}
