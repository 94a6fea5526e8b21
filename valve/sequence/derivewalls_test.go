package sequence_test

import (
	"context"
	"testing"

	"completion.example/fluid"
	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// tallyBetweenPackers is an annulus between two packers as a tally alone: 9-5/8 in 40
// lb/ft casing, 4-1/2 in 12.6 lb/ft tubing with packers at 5,000 and 8,900 ft.
const tallyBetweenPackers = `{
	"well": {"depth": "9000 ft", "temperatures": {
		"undisturbed": [{"temperature": "60 degF"}, {"tvd": "9000 ft", "temperature": "168 degF"}],
		"producing": [{"temperature": "210 degF"}, {"tvd": "9000 ft", "temperature": "188 degF"}]}},
	"fluids": [{"name": "brine", "density": "9 lb/gal", "compression": "3e-6 1/psi", "expansion": "2.5e-4 1/degF"}, {"name": "water", "kind": "water"}],
	"assembly": {"fluid": "brine", "walls": true, "factor": 1.5,
		"casing": [{"name": "casing", "pipe": {"size": "9-5/8 in", "weight": "40 lb/ft", "grade": "K55"}, "bottom": "9000 ft", "behind": "brine"}],
		"strings": [{"name": "tubing", "tally": [
			{"kind": "pipe", "pipe": {"size": "4-1/2 in", "weight": "12.6 lb/ft", "grade": "L80"}, "bottom": "5000 ft"},
			{"kind": "packer", "name": "upper packer", "below": "closed annulus"},
			{"kind": "pipe", "bottom": "8900 ft"},
			{"kind": "packer", "name": "lower packer", "below": "rat hole"},
			{"kind": "pipe", "bottom": "8950 ft"}]}]},
	"steps": [{"name": "land", "lands": true}, {"name": "produce", "temperature": "producing"}]}`

func betweenPackers(t *testing.T, edit func(p *sequence.Plan)) *sequence.Programme {
	t.Helper()
	p, err := sequence.Read([]byte(tallyBetweenPackers))
	require.NoError(t, err)
	edit(p)
	r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	return r
}

// Walls follow from a tally, with nothing written by hand: what heat makes of the annulus
// between the packers then passes the casing's and the tubing's ratings, and is a finding.
// The sizes are those of API 5CT by the catalogue.
func TestHeatBetweenPackersIsAFindingOfATally(t *testing.T) {
	p, err := sequence.Read([]byte(tallyBetweenPackers))
	require.NoError(t, err)
	q, err := p.Derive()
	require.NoError(t, err)
	for _, c := range q.Compartments {
		if c.Name != "closed annulus" {
			continue
		}
		require.Len(t, c.Bores, 1)
		b := c.Bores[0]
		for _, x := range []struct {
			want float64
			got  unit.Length
		}{{8.835, b.Outer}, {0.395, b.OuterWall}, {4.5, b.Inner}, {0.271, b.InnerWall}} {
			require.InDelta(t, x.want, x.got.In(unit.Inch), 1e-9)
		}
		require.Contains(t, c.Note, "its bores and their walls are those of the pipes")
	}
	r := betweenPackers(t, func(*sequence.Plan) {})
	require.Equal(t, sequence.Refuted, r.Verdict, r.Findings)
	f := r.Findings[0]
	require.Equal(t, "produce", f.Step)
	require.Contains(t, []sequence.Kind{sequence.RatingCross}, f.Kind)
	cold := topOf(t, r, 0, "closed annulus")
	rise := topOf(t, r, 1, "closed annulus") - cold

	// By fluid/confined: the annulus warms by 150 - 130·z/9,000 degF, by the mean as in its
	// middle, 49.6 degF.
	steel := tubular.Steel()
	inner := confined.Tube{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}
	s := confined.Space{Outer: confined.Tube{OD: 9.625 * unit.Inch, ID: 8.835 * unit.Inch, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}, Inner: &inner}
	mean := (150 - 130*(5000+8900)/2/9000.0) / 1.8 // K
	per := confined.PressurePerDegree(2.5e-4*unit.PerFahrenheit, unit.Expansivity(s.Expansion(1, 1)), 3e-6*unit.PerPSI, s.Compliance())
	require.InEpsilon(t, float64(per)*mean/float64(psi), rise, 1e-6)

	// Without the key nothing changes, and the programme says what is left out.
	old := betweenPackers(t, func(p *sequence.Plan) { p.Assembly.Walls = false })
	require.True(t, old.OK(), old.Findings)
	require.Contains(t, old.Unchecked, `compartment "closed annulus": heat doesn't change its trapped pressure, as the walls of its bores aren't given; "walls": true in an assembly takes them from the tally`)
}

// Fresh water between walls keeps its mass by IAPWS-IF97, which fluid.Water has and holds
// against the release's tables: slice by slice here, with a pressure found by halving.
func TestFreshWaterBetweenWallsKeepsItsMass(t *testing.T) {
	r := betweenPackers(t, func(p *sequence.Plan) { p.Assembly.Fluid = "water" })
	top := topOf(t, r, 0, "closed annulus")
	rise := topOf(t, r, 1, "closed annulus") - top

	steel := tubular.Steel()
	inner := confined.Tube{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}
	s := confined.Space{Outer: confined.Tube{OD: 9.625 * unit.Inch, ID: 8.835 * unit.Inch, Young: steel.Young, Poisson: steel.Poisson, Expansion: steel.Expansion}, Inner: &inner}
	compliance, swell := float64(s.Compliance())*float64(psi), float64(s.Expansion(1, 1))/1.8
	mass := func(p float64, hot bool, dp float64) float64 {
		sum := 0.0
		const n = 3900
		for k := range n {
			z := 5000 + (float64(k)+0.5)*3900/n
			temp, more := 60+12*z/1000, 0.0
			if hot {
				more = 150 - 130*z/9000
			}
			rho, err := fluid.Water{}.Density(unit.Pressure(p)*psi, unit.Fahrenheit(temp+more))
			require.NoError(t, err)
			sum += float64(rho) * (1 + swell*more + compliance*dp)
			// The column stands as the pressures at rest have it.
			cold, err := fluid.Water{}.Density(unit.Pressure(p-dp)*psi, unit.Fahrenheit(temp))
			require.NoError(t, err)
			p += float64(cold) * 9.80665 * float64(foot) * 3900 / n / float64(psi)
		}
		return sum
	}
	cold := mass(top, false, 0)
	low, high := 0.0, 8000.0
	for range 60 {
		dp := low + (high-low)/2
		if mass(top+dp, true, dp) > cold {
			high = dp
		} else {
			low = dp
		}
	}
	require.Greater(t, rise, 1500.0)
	require.InEpsilon(t, low, rise, 1e-3)

	// Strokes and bleeds of it: V·(c + C) by the water's own compressibility.
	bled := betweenPackers(t, func(p *sequence.Plan) {
		p.Assembly.Fluid = "water"
		p.Steps[1] = sequence.Step{Name: "bleed", VolumeChange: map[string]unit.Volume{"closed annulus": -0.2 * unit.Barrel}}
	})
	at := unit.Pressure(top+0.433*1950) * psi
	c, err := fluid.Water{}.Compressibility(at, unit.Fahrenheit(60+12*6.95))
	require.NoError(t, err)
	want := float64(0.2*unit.Barrel) / (float64(s.Area()) * float64(3900*foot) * (float64(c) + float64(s.Compliance()))) / float64(psi)
	require.InEpsilon(t, want, top-topOf(t, bled, 1, "closed annulus"), 1e-3)
}
