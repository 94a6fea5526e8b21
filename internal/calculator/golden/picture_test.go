package golden

import (
	"flag"
	"io"
	"strings"
	"testing"

	"completion.example/internal/calculator"
	"github.com/stretchr/testify/require"
)

// drawn is a picture of a rectangle, large enough.
var drawn = `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><title>` + strings.Repeat("depth ", 500) + `Inflow</title><rect width="5" height="5"/></svg>`

func TestSound(t *testing.T) {
	require.NoError(t, sound([]byte(drawn)))
	for _, c := range []struct{ name, svg, want string }{
		{"empty", "", "picture has 0 bytes"},
		{"frame", "<svg></svg>", "picture has 11 bytes"},
		{"huge", drawn + strings.Repeat(" ", greatestPicture), "bytes; want"},
		{"NaN", strings.Replace(drawn, `"5"`, `"NaN"`, 1), "picture contains NaN"},
		{"Inf", strings.Replace(drawn, `"5"`, `"-Inf"`, 1), "picture contains -Inf"},
		{"cut off", drawn[:len(drawn)-1], "XML syntax error"},
		{"not closed", strings.TrimSuffix(drawn, "</svg>"), "XML syntax error"},
		{"page", strings.ReplaceAll(drawn, "svg", "html"), `root is "html"`},
		{"text", strings.Repeat("no picture ", 500), `root is ""`},
	} {
		require.ErrorContains(t, sound([]byte(c.svg)), c.want, c.name)
	}
}

func TestPicture(t *testing.T) {
	c := calculator.Command{Name: "double", Question: "what is drawn?", Picture: true, Setup: func(flags *flag.FlagSet) func() (calculator.Answer, error) {
		what := flags.String("what", drawn, "what is drawn")
		return func() (calculator.Answer, error) {
			return calculator.Answer{Draw: func(w io.Writer) error { _, err := io.WriteString(w, *what); return err }}, nil
		}
	}}
	require.Equal(t, drawn, Picture(t, c))
	other := strings.ReplaceAll(drawn, "depth", "force")
	require.Equal(t, other, Picture(t, c, "-what", other))
}
