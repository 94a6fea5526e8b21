package packer_test

import (
	"fmt"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/packer"
	"github.com/stretchr/testify/require"
)

// parted joins 9.5 lb/gal in the tubing and 8.8 lb/gal in the annulus at
// 9,000 ft, over a formation of 4,200 psi.
func parted() packer.Parted {
	leg := func(rho unit.Density, area unit.Area) hydrostatics.Leg {
		return hydrostatics.Leg{
			Sections: []hydrostatics.LegSection{{BottomMD: 9000 * unit.Foot, Area: area}},
			Fluids:   []hydrostatics.Stretch{{BottomMD: 9000 * unit.Foot, Density: rho}},
		}
	}
	return packer.Parted{
		Legs: hydrostatics.UTube{
			PortMD: 9000 * unit.Foot,
			Tubing: leg(9.5*unit.PoundPerGallon, 7*unit.SquareInch), Annulus: leg(8.8*unit.PoundPerGallon, 28*unit.SquareInch),
		},
		Open: true, Formation: 4200 * unit.PSI, Margin: 200 * unit.PSI,
	}
}

func ExampleParted_Aftermath() {
	a, err := parted().Aftermath()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("falls:", a.Falling, "unless", a.Hold.Rounded(4), "is held on the other side")
	fmt.Println("level comes to rest at", a.Rest.Tubing.LevelMD.Rounded(4), "after", a.Rest.Moved.Rounded(3))
	fmt.Println("overbalance of the lighter column:", a.Overbalance.Rounded(4))
	fmt.Println("kill with", a.Kill.Rounded(3), "; whole circulation", a.Circulation.Rounded(4))
	// Output:
	// falls: tubing unless 327.3 psi is held on the other side
	// level comes to rest at 651.2 ft after 5.64 bbl
	// overbalance of the lighter column: -85.71 psi
	// kill with 9.41 lb/gal ; whole circulation 389.6 bbl
}

// By hand: x = (ρh - ρl) H / (ρh + (ρh - ρl) Ah/Al), with the annulus full and
// spilling.
func TestFallByHand(t *testing.T) {
	a, err := parted().Aftermath()
	require.NoError(t, err)
	require.InDelta(t, 0.7*9000/(9.5+0.7/4), a.Rest.Tubing.LevelMD.In(unit.Foot), 1e-6)
	require.InDelta(t, 9000*28/144./5.614583, a.Fill.In(unit.Barrel), 0.01)
	require.Equal(t, a.Rest.Falling, a.Falling)
	require.InDelta(t, float64(a.Rest.Differential), float64(a.Differential), 1e-6)
	workingtest.Check(t, a.Steps())

	p := parted()
	p.Legs.Tubing, p.Legs.Annulus = p.Legs.Annulus, p.Legs.Tubing
	b, err := p.Aftermath()
	require.NoError(t, err)
	require.Equal(t, hydrostatics.Annulus, b.Falling)
	require.InDelta(t, float64(-a.Differential), float64(b.Differential), 1e-6)
	require.InDelta(t, float64(a.Fill), float64(b.Fill), 1e-9)
}

// What Hold says stops the flow.
func TestPartedWithPressureHeld(t *testing.T) {
	p := parted()
	a, err := p.Aftermath()
	require.NoError(t, err)
	p.Legs.Annulus.Surface = a.Hold
	a, err = p.Aftermath()
	require.NoError(t, err)
	require.InDelta(t, 0, a.Hold.In(unit.PSI), 1e-6)
	require.InDelta(t, 0, a.Rest.Moved.In(unit.Barrel), 1e-6)
	require.InDelta(t, -85.714, a.Overbalance.In(unit.PSI), 1e-3, "what is held at surface doesn't count")

	p.Open = false
	_, err = p.Aftermath()
	require.ErrorContains(t, err, "must be 0 where Open is not set")
	_, err = packer.Parted{Formation: -1}.Aftermath()
	require.ErrorContains(t, err, "Formation: is")
	require.ErrorContains(t, err, "Legs.depth")
}

// A leg that empties before it balances is an answer.
func TestPartedThatNeverRests(t *testing.T) {
	p := parted()
	p.Legs.Tubing.Surface = 5000 * unit.PSI
	a, err := p.Aftermath()
	require.NoError(t, err)
	require.ErrorIs(t, a.NoRest, hydrostatics.ErrNoBalance)
	require.InDelta(t, 5327.3, a.Hold.In(unit.PSI), 0.05)
	require.Equal(t, hydrostatics.Tubing, a.Falling)
}
