package display

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The units of every purpose and the decimals that a reader can use in each, as they are on record apart
// from the code: common practice on the rig floor, and no evidence. What has no number of decimals of its
// own is written with four digits.
func TestChoicesAreOnRecord(t *testing.T) {
	text, err := os.ReadFile("testdata/choices.txt")
	require.NoError(t, err)
	var b strings.Builder
	for _, r := range rows {
		if r.quantity == "" {
			continue
		}
		b.WriteString(r.quantity)
		for _, c := range r.choices {
			decimals := "free"
			if c.decimals != free {
				decimals = fmt.Sprint(c.decimals)
			}
			fmt.Fprintf(&b, ", %s %s", c.symbol, decimals)
		}
		b.WriteString("\n")
	}
	require.Equal(t, string(text), b.String())
	require.Negative(t, free)
}
