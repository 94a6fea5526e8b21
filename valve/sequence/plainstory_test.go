package sequence_test

import (
	"context"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// With sharp values the programme and the plain walker tell the same story of levels
// that fall and of bodies trapped between walls, to 1e-4 psi.
func TestProgrammeTellsTheStoryOfFeatures(t *testing.T) {
	for name, of := range map[string][2]int{"levels": {60, 25}, "walls": {60, 25}, "string": {20, 5}, "strings": {6, 1}, "fished": {20, 5}, "fished in": {6, 1}} { // plans, and least that can be told
		told := 0
		for n := range uint64(of[0]) {
			p := sharp(plainPlanWith(3, n, features[name]), nominalOf)
			p.Rules.Barriers = 0
			r := plainWalkOf(p, 16, nil)
			if r.close || len(r.choices) > 0 || r.fault != nil {
				continue
			}
			e, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
			require.NoError(t, err, "%s %d", name, n)
			require.Empty(t, difference(p, r, e), "%s %d", name, n)
			told++
		}
		require.Greater(t, told, of[1], name)
	}
}
