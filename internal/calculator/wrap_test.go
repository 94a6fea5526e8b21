package calculator

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Nothing is lost, no line is too long, and no number stands apart from its unit.
func TestWrapKeepsNumbersWithUnits(t *testing.T) {
	text := strings.TrimSpace(strings.Repeat("bleed to 383 psi at most → 0 psi, ", 20))
	lines := Wrap(text, 40)
	require.Equal(t, text, strings.Join(lines, " "))
	for _, line := range lines {
		require.LessOrEqual(t, wide(line), 40)
		require.NotRegexp(t, `\d$`, line)
		require.NotRegexp(t, `^(psi|→)`, line)
	}
	formula := strings.Repeat("(3914.7 psi)*", 20) + "1"
	lines = Wrap(formula, 60)
	require.Equal(t, formula, strings.Join(lines, ""))
	for _, line := range lines[:len(lines)-1] {
		require.LessOrEqual(t, wide(line), 60)
		require.Equal(t, "*", line[len(line)-1:])
	}
	require.Equal(t, []string{strings.Repeat("x", 50)}, Wrap(strings.Repeat("x", 50), 40), "a word that can't be broken")
}

// A table that is too wide goes on below in its cells; one that fits stays.
func TestWideTables(t *testing.T) {
	wordy := strings.TrimSpace(strings.Repeat("in words ", 20))
	cells := [][]string{{"step", "what is done in it", "then"}, {"1", wordy, wordy}, {"2", "3000 psi", ""}}
	var b strings.Builder
	rows(&b, 3, func(i int) []string { return cells[i] })
	require.True(t, fits(b.String()), b.String())
	require.Equal(t, 2*strings.Count(wordy, "words"), strings.Count(b.String(), "words"))
	b.Reset()
	rows(&b, 2, func(i int) []string { return [][]string{{"a", "b"}, {"ccc", "d"}}[i] })
	require.Equal(t, "  a    b\n  ccc  d\n", b.String())
}
