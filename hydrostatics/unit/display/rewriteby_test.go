package display

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var byExpression = regexp.MustCompile(`(^|[\s(=:])(-?[0-9][0-9.]*(?:e[-+][0-9]+)?) ([A-Za-z][A-Za-z0-9/^.-]*)`)

// What is found by hand is what a regular expression finds, in texts put together from
// pieces that are likely to be mistaken.
func TestQuantitiesAreFoundAsByAnExpression(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	pieces := []string{" ", "12", "-3.5", "1e+06", "2e", "2e-", "psi", "lb/gal", "ft", ".", "-", "(", ":", "=", "\n", "e", "in^2", "0", "..", "é", "1 psi", "7 ft."}
	found := 0
	for range 20000 {
		text := ""
		for range 1 + random.IntN(9) {
			text += pieces[random.IntN(len(pieces))]
		}
		want := byExpression.ReplaceAllStringFunc(text, func(match string) string {
			m := byExpression.FindStringSubmatch(match)
			found++
			return m[1] + SI().rewritten(m[2], m[3])
		})
		require.Equal(t, want, SI().Rewrite(text), "%q", text)
	}
	require.Greater(t, found, 2000)
	require.Equal(t, strings.Repeat("a", 3), SI().Rewrite("aaa"))
}
