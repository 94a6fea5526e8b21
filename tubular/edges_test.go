package tubular

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// Anything that is known of a connection makes it known; a rating that isn't known uses nothing, and
// what isn't a number is never safe.
func TestConnectionKnownInPart(t *testing.T) {
	for _, c := range []Connection{{Tension: 1}, {Compression: 1}, {Inside: 1}, {Outside: 1}, {Triaxial: 1}} {
		require.True(t, c.Known(), "%v", c)
		require.Len(t, c.Unknown(), 4)
	}
	require.False(t, (&Connection{}).Known())
	one := WithoutReserve()
	some := Connection{Tension: 100, Inside: 100}
	use := func(l Load) float64 { return some.Usage(l, one, 0, 1) }
	require.Equal(t, 0.5, use(Load{Axial: 50}))
	require.Zero(t, use(Load{Axial: -50}))
	require.Zero(t, use(Load{Outside: 50}))
	other := Connection{Compression: 100, Outside: 100}
	require.Equal(t, 0.5, other.Usage(Load{Axial: -50}, one, 0, 1))
	require.Equal(t, 0.5, other.Usage(Load{Outside: 50}, one, 0, 1))
	require.Zero(t, other.Usage(Load{Axial: 50, Inside: 50}, one, 0, 1))
	nan := math.NaN()
	require.True(t, math.IsNaN(use(Load{Axial: unit.Force(nan)})))
	require.True(t, math.IsNaN(use(Load{Inside: unit.Pressure(nan)})))
	for triaxial, ok := range map[float64]bool{0: true, 1: true, math.Nextafter(1, 2): false} {
		require.Equal(t, ok, Connection{Triaxial: triaxial}.Validate() == nil)
	}
}

// Parts are numbered from one in the working, and added up in their order.
func TestWorkingOfSeveralSections(t *testing.T) {
	h := HangingStretch{Sections: make([]SectionStretch, 3)}
	steps := h.Steps()
	last := steps[len(steps)-1]
	require.Equal(t, "e1 + e2 + e3", last.Equation)
	for i, in := range last.Inputs {
		require.Equal(t, fmt.Sprintf("e%d", i+1), in.Symbol)
	}
	require.Contains(t, steps[0].Name, ", section 1")
	require.Contains(t, steps[len(steps)-2].Name, ", section 3")

	pipe := Pipe{OD: 0.1, ID: 0.08, Material: Steel()}
	f := FreePoint{Sections: []HangingSection{{Pipe: pipe, Length: 1000}, {Pipe: pipe, Length: 1000}}, Pull: 1e5}
	f.Stretch = pipe.Stretch(f.Pull, 1500)
	d, err := f.Find()
	require.NoError(t, err)
	require.InDelta(t, 1500, float64(d.Depth), 1e-9)
	require.Len(t, d.sections, 2)
	sum := d.Steps()[len(d.Steps())-1]
	require.Equal(t, "L1 + L2", sum.Equation)
}

// The bore of a pipe by its wall.
func TestPipeOfWallWorked(t *testing.T) {
	precise.Equal(t, float64(PipeOfWall(0.1, 0.00625, Steel()).ID), "0.1 - 2*0.00625", nil)
}

// Names and numbers out of their lists.
func TestListsOfNamesEnd(t *testing.T) {
	for r, ok := range map[CollapseRegime]bool{-1: false, 0: true, 3: true, 4: false} {
		_, err := r.MarshalText()
		require.Equal(t, ok, err == nil)
		if !ok {
			require.ErrorContains(t, err, "must be from 0 to 3")
		}
	}
	_, err := Expansion{}.MarshalText()
	require.ErrorContains(t, err, "zero value")
	text, err := CarbonSteel().MarshalText()
	require.NoError(t, err)
	var x Expansion
	require.NoError(t, x.UnmarshalText(text))
	require.Equal(t, CarbonSteel(), x)
	require.ErrorContains(t, x.UnmarshalText([]byte("lead")), `must be "carbon steel"`)
	// nothing up to the start of the table
	s, err := x.Strain(unit.Fahrenheit(70), unit.Fahrenheit(70))
	require.NoError(t, err)
	require.Zero(t, s)

	p := Pipe{OD: 0.1, ID: 0.08, Material: Steel()}
	p.Material.Yield = 80000 * unit.PSI
	for tensile, ok := range map[unit.Pressure]bool{0: true, -1: false, unit.Pressure(math.Inf(1)): false, 80000 * unit.PSI: true, 79999 * unit.PSI: false} {
		m := p.Material
		m.Tensile = tensile
		require.Equal(t, ok, m.Validate() == nil, "%v", tensile)
	}
	require.False(t, finite(math.Inf(-1)))
	require.False(t, finite(math.Inf(1)))
	require.True(t, finite(1.0))
	for points, ok := range map[int]bool{7: false, 8: true, 100_000: true, 100_001: false} {
		_, err := p.Envelope(Outline{Points: points, Factors: WithoutReserve()})
		require.Equal(t, ok, err == nil, "%d: %v", points, err)
	}
	// which of them isn't a number
	nan := math.NaN()
	for _, u := range []Usage{{Burst: nan}, {Collapse: nan}, {Axial: nan}, {Triaxial: nan}} {
		_, most := u.Governing()
		require.True(t, math.IsNaN(most), "%v", u)
	}
	for _, u := range []Usage{{Burst: 1}, {Collapse: 1}, {Axial: 1}, {Triaxial: 1}} {
		_, most := u.Governing()
		require.Equal(t, 1.0, most)
	}
}

// A body that has lost a part of its yield strength is rated as one of the lesser strength.
func TestDeratedBodyIsOneOfLessStrength(t *testing.T) {
	p := Pipe{OD: 0.1143, ID: 0.1003, Material: Steel()}
	p.Material.Yield = 80000 * unit.PSI
	b, err := p.Prepare()
	require.NoError(t, err)
	hot := b.Derated(0.83)
	p.Material.Yield *= 0.83
	want, err := p.Prepare()
	require.NoError(t, err)
	l := Load{Axial: 2e5, Inside: 1e7, Outside: 4e7, Curvature: 1e-3}
	for _, pair := range [][2]Usage{{hot.Usage(l, WithoutReserve()), want.Usage(l, WithoutReserve())}, {hot.UsageBent(l, WithoutReserve()), want.UsageBent(l, WithoutReserve())}} {
		require.InEpsilon(t, pair[1].Collapse, pair[0].Collapse, 1e-12)
		require.InEpsilon(t, pair[1].Axial, pair[0].Axial, 1e-12)
		require.InEpsilon(t, pair[1].Triaxial, pair[0].Triaxial, 1e-12)
	}
	zero := Load{Outside: 4e7}
	require.InEpsilon(t, want.Usage(zero, WithoutReserve()).Collapse, hot.Usage(zero, WithoutReserve()).Collapse, 1e-12)
	require.InEpsilon(t, float64(want.Collapse(0, 0)), float64(hot.Collapse(0, 0)), 1e-12)

	// Bent, the outer fibre's tension takes from the collapse: with none it is as straight.
	bent, straight := b.UsageBent(l, WithoutReserve()), b.Usage(l, WithoutReserve())
	require.Greater(t, bent.Collapse, straight.Collapse)
	σ := float64(l.Axial)/float64(p.SteelArea()) + float64(p.Material.Young)*1e-3*0.1143/2
	require.InEpsilon(t, 3e7/float64(b.Collapse(unit.Pressure(σ), 1e7)), bent.Collapse, 1e-12)
	l.Curvature = 0
	require.Equal(t, b.Usage(l, WithoutReserve()), b.UsageBent(l, WithoutReserve()))
	l.Curvature, l.Outside = 1e-3, 0
	require.Zero(t, b.UsageBent(l, WithoutReserve()).Collapse)
	l.Outside, l.Axial = 4e7, unit.Force(float64(p.SteelArea())*6e8)
	require.Equal(t, 1e6, b.UsageBent(l, WithoutReserve()).Collapse, "no strength is left")
}
