package sequence_test

import (
	"context"
	"strings"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// What a plan says nothing of is listed: each thing taken out of the demo makes its line,
// and the demo hasn't it.
func TestSilenceIsNotConsent(t *testing.T) {
	list := func(p *sequence.Plan) string {
		r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		return strings.Join(r.Unchecked, "\n")
	}
	as := list(readPlan(t, shipped+"demo.json"))
	for _, c := range []struct {
		what string
		take func(p *sequence.Plan)
		want string
	}{
		{"ratings of lines", func(p *sequence.Plan) {
			p.Ratings = keep(p.Ratings, func(r sequence.Rating) bool {
				return !strings.Contains(r.Inside, "line") && !strings.Contains(r.Name, "line")
			})
		}, `compartment "close line": no rating bounds its pressure`},
		{"a threshold's tolerance", func(p *sequence.Plan) {
			_, err := p.Set("devices.packer.actions.sets.triggers[0].threshold", "1450 psi")
			require.NoError(t, err)
		}, "packer: sets: a threshold without tolerance is taken as exact"},
		{"the tolerance of pins", func(p *sequence.Plan) {
			_, err := p.Set("devices.isolation valve C.opens.pins.tolerance", "0")
			require.NoError(t, err)
		}, "isolation valve C: opens: a threshold without tolerance is taken as exact"},
		{"a fracture pressure", func(p *sequence.Plan) {
			p.Formations[0].Fracture.Least, p.Formations[0].Fracture.Nominal, p.Formations[0].Fracture.Greatest = 0, 0, 0
		}, `formation "zone A": no fracture pressure`},
		{"a joint", func(p *sequence.Plan) {
			_, err := p.Set("string.sections[0].pipe", `{"size": "4-1/2 in", "weight": "15.1 lb/ft", "grade": "P110"}`) // for which no joint is listed
			require.NoError(t, err)
		}, "section 1 to 8600 ft: the connection, of which nothing is known"},
		{"the count of barriers", func(p *sequence.Plan) { p.Rules.Barriers = 0 }, "barriers aren't counted: rules.barriers is not given"},
		{"the envelope", func(p *sequence.Plan) { p.Holding = nil }, "the packer has no holding envelope"},
	} {
		t.Run(c.what, func(t *testing.T) {
			p := readPlan(t, shipped+"demo.json")
			c.take(p)
			require.Contains(t, list(p), c.want)
			require.NotContains(t, as, c.want)
		})
	}
}

func keep[T any](all []T, wanted func(T) bool) (kept []T) {
	for _, x := range all {
		if wanted(x) {
			kept = append(kept, x)
		}
	}
	return kept
}
