package confined_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

func near(t testing.TB, want, got, relative float64, what ...any) {
	t.Helper()
	require.InDelta(t, want, got, relative*math.Abs(want), fmt.Sprint(what...))
}

// steel is API TR 5C3's modulus and ratio, and a common expansion.
func tube(od, id unit.Length) confined.Tube {
	return confined.Tube{OD: od, ID: id, Young: 206.84e9, Poisson: 0.28, Expansion: 12.4e-6}
}

// A thin wall comes to D/(tE), as the form of API Std 521 has it, by hoop strain alone.
func TestThickWallBecomesThin(t *testing.T) {
	const D, w = 1.0, 1e-5
	c := confined.Tube{OD: D + 2*w, ID: D, Young: 2e11, Poisson: 0}
	for _, ends := range []confined.Ends{confined.EndsFixed, confined.EndsOpen} {
		near(t, float64(confined.ThinCompliance(D/w, 2e11)), float64(c.BoreCompliance(ends)), 1e-4)
	}
	// Capped thin tube: hoop pD/2t, axial pD/4t: 2εθ + εz = pD/(4tE)(5 - 4ν).
	// Source: Timoshenko; the textbook figure for a closed thin cylinder.
	c.Poisson = 0.3
	near(t, D/(4*w*2e11)*(5-1.2), float64(c.BoreCompliance(confined.EndsClosed)), 1e-4)
	// Held ends: D/(tE)(1 - ν²). Open ends: pD/(2tE)(2 - ν).
	near(t, D/(w*2e11)*(1-0.09), float64(c.BoreCompliance(confined.EndsFixed)), 1e-4)
	near(t, D/(2*w*2e11)*(2-0.3), float64(c.BoreCompliance(confined.EndsOpen)), 1e-4)
}

// Lamé's displacement, from the differential equation: u = A r + B/r with the
// stresses of both walls as boundary conditions, solved here anew.
func TestComplianceMeetsLame(t *testing.T) {
	c := tube(0.1778, 0.1594)
	E, ν := 206.84e9, 0.28
	a, b := 0.1594/2, 0.1778/2
	// Plane strain: u = (1+ν)/E [(1-2ν) A r + B/r], σr = A - B/r².
	solve := func(pi, po float64) func(r float64) float64 {
		A := (pi*a*a - po*b*b) / (b*b - a*a)
		B := (pi - po) * a * a * b * b / (b*b - a*a)
		return func(r float64) float64 { return (1 + ν) / E * ((1-2*ν)*A*r + B/r) }
	}
	near(t, 2*solve(1, 0)(a)/a, float64(c.BoreCompliance(confined.EndsFixed)), 1e-12)
	near(t, -2*solve(0, 1)(b)/b, float64(c.OutsideCompliance(confined.EndsFixed)), 1e-12)
	// Open: plane stress, with ν' = ν/(1+ν) and E' = E(1+2ν)/(1+ν)² in plane strain's form.
	near(t, 2/E*((a*a+b*b)/(b*b-a*a)+ν)-2*ν*a*a/(b*b-a*a)/E, float64(c.BoreCompliance(confined.EndsOpen)), 1e-12)
	near(t, 2/E*((a*a+b*b)/(b*b-a*a)-ν), float64(c.OutsideCompliance(confined.EndsOpen)), 1e-12)
	// A solid rod in a bath, closed: bulk compression, area 2/3 of 3(1-2ν)/E.
	rod := confined.Tube{OD: 1, ID: 1e-9, Young: 2e11, Poisson: 0.3}
	near(t, 2*(1-0.6)/2e11, float64(rod.OutsideCompliance(confined.EndsClosed)), 1e-9)
}

func TestAnnulusOfTwoPipes(t *testing.T) {
	inner := tube(0.1, 0.08)
	s := confined.Space{Outer: tube(0.25, 0.22), Inner: &inner}
	ao, ai := 0.22*0.22, 0.1*0.1
	near(t, (ao*float64(s.Outer.BoreCompliance(confined.EndsFixed))+ai*float64(inner.OutsideCompliance(confined.EndsFixed)))/(ao-ai), float64(s.Compliance()), 1e-14)
	near(t, math.Pi/4*(ao-ai), float64(s.Area()), 1e-14)
	// Both pipes heated alike: the gap grows as steel does. A hot inner pipe takes
	// room, a hot casing makes it.
	near(t, 2*1.28*12.4e-6*50, s.Expansion(50, 50), 1e-12)
	require.Negative(t, s.Expansion(0, 50))
	require.Positive(t, s.Expansion(50, 0))
	rigid := confined.Space{Outer: confined.Tube{OD: 0.25, ID: 0.22, Rigid: true}, Inner: &confined.Tube{OD: 0.1, ID: 0.08, Rigid: true}}
	require.Zero(t, rigid.Compliance())
	require.Zero(t, rigid.Expansion(50, 50))
	// Free pipe: 3 α.
	near(t, 3*12.4e-6*10, confined.Space{Outer: tube(0.25, 0.22), Ends: confined.EndsClosed}.Expansion(10, 0), 1e-12)
	near(t, 2*1.28*12.4e-6*10, confined.Space{Outer: tube(0.25, 0.22)}.Expansion(10, 0), 1e-12)
	require.Equal(t, "closed", confined.EndsClosed.String())
	require.Equal(t, "unknown", confined.Ends(7).String())
}

func TestWallIsHomogeneous(t *testing.T) {
	c := tube(0.1778, 0.1594)
	for _, ends := range []confined.Ends{confined.EndsFixed, confined.EndsOpen, confined.EndsClosed} {
		dimension.Check(t, dimension.Free, func(c confined.Tube) unit.Compressibility { return c.BoreCompliance(ends) }, c)
		dimension.Check(t, dimension.Free, func(c confined.Tube) unit.Compressibility { return c.OutsideCompliance(ends) }, c)
	}
	dimension.Check(t, dimension.Free, confined.TestVolume, unit.Compressibility(5e-10), unit.Volume(30), unit.Pressure(2e7))
}

func ExampleTube_BoreCompliance() {
	casing := confined.Tube{OD: 9.625 * unit.Inch, ID: 8.681 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28}
	fmt.Println(casing.BoreCompliance(confined.EndsFixed).Rounded(3))
	// Output: 6.21e-07 1/psi
}

// A rigid wall needs no steel, but a size like any other.
func TestRigidWallHasASize(t *testing.T) {
	require.NoError(t, confined.Tube{OD: 0.25, ID: 0.22, Rigid: true}.Validate())
	require.ErrorContains(t, confined.Tube{OD: 0.2, ID: 0.22, Rigid: true}.Validate(), "ID: is")
	require.ErrorContains(t, confined.Tube{ID: 0.22, Rigid: true}.Validate(), "OD: is")
}
