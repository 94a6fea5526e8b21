package main

import (
	"strings"
	"testing"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// A step that is explained stands alone, with the force balance of the string term by
// term, sources with it: by number, by name, with the flag's value behind a space or an
// equals sign.
func TestExplainOneStep(t *testing.T) {
	_, byNumber, errs := runs("-explain", "step 7")
	require.Empty(t, errs)
	require.Contains(t, byNumber, " 7  test the packer from below")
	require.NotContains(t, byNumber, " 8  ")
	flat := strings.Join(strings.Fields(byNumber), " ")
	for _, text := range []string{
		"string at start:", "string at ramp 1:",
		"load on packer, up positive: P = Fa - Fb + pb*(Ap - Aob) - pa*(Ap - Aoa) =",
		"= -1329.55 lbf [balance of the string at the place]",
		"wall force above packer: Fa = Fr + f + D =",
		"[Hooke; Lubinski, Althouse & Logan 1962;",
	} {
		require.Contains(t, flat, text)
	}
	for _, args := range [][]string{{"-explain=test the packer from below"}, {"-explain=7"}, {"-explain=step 7"}}[:long.Size(1, 3)] {
		_, out, errs := runs(args...)
		require.Empty(t, errs)
		require.Equal(t, byNumber, out)
	}
	code, _, errs := runs("-explain", "step 99")
	require.Equal(t, 2, code)
	require.Contains(t, errs, `no step "99"; there are steps 1 to`)
	_, all, _ := runs("-explain")
	require.Contains(t, all, " 8  ")
}
