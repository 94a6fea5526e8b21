package sequence_test

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// feeling is a random plan whose liquids are brines that feel pressure and temperature, in a well whose
// temperature may be off.
func feeling(n uint64) *sequence.Plan {
	p := plainPlan(4040, n+13) // the first of them are quick
	for i := range p.Fluids {
		f := &p.Fluids[i]
		f.Kind, f.Expansion, f.Compression = sequence.ClearBrine, 3e-4*unit.PerFahrenheit, 3e-6*unit.PerPSI
	}
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: {{Temperature: unit.Fahrenheit(60)}, {TVD: p.Well.MD, Temperature: unit.Fahrenheit(60 + 0.015*p.Well.MD.In(foot))}}}
	p.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{sequence.Undisturbed: {Least: -6, Greatest: 8}}
	return p
}

// No plan of liquids that feel pressure and temperature that is called proved fails with one choice of its
// values, and what a witness chooses fails. The choices are walked by the engine, as plans without bands: the
// plain walker knows no such liquid.
func TestLiquidsThatFeelHoldInDraws(t *testing.T) {
	proved, refuted, open, unwalked := 0, 0, 0, 0
	from, to := plansWanted(t, long.Size(3, 40))
	for n := from; n < to; n++ {
		p := feeling(n)
		r, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
		if err != nil {
			unwalked++
			continue
		}
		switch r.Verdict {
		case sequence.Proved:
			proved++
			random := rand.New(rand.NewPCG(7, n))
			for draw := range 6 {
				q := drawValues(p, random, draw)
				off := unit.TemperatureDifference([]float64{-6, 8, 14*random.Float64() - 6}[draw%3])
				q.Well.Errors = map[string]unit.Band[unit.TemperatureDifference]{sequence.Undisturbed: unit.Exactly(off)}
				s, err := sequence.Check(t.Context(), q, sequence.Options{Only: sequence.VerdictOnly})
				require.NoError(t, err, "plan %d, draw %d", n, draw)
				require.NotEqual(t, sequence.Refuted, s.Verdict, "plan %d, draw %d: %v", n, draw, s.Findings)
			}
		case sequence.Refuted:
			refuted++
			q, err := p.At(r.Findings[0].Witness)
			require.NoError(t, err)
			s, err := sequence.Check(t.Context(), q, sequence.Options{Only: sequence.VerdictOnly})
			require.NoError(t, err, "plan %d", n)
			if s.Verdict != sequence.Refuted {
				t.Logf("plan %d: the witness of %+v fails by no more than what is only enclosed", n, r.Findings[0])
				open++
			}
		default:
			open++
		}
	}
	t.Logf("%d proved, %d refuted, %d open, %d not walked", proved, refuted, open, unwalked)
	require.Greater(t, refuted+proved, 0)
}
