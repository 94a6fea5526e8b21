package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"testing"

	"completion.example/examples/internal/svg"
	"github.com/stretchr/testify/require"
)

func drawing(t *testing.T) string {
	t.Helper()
	c := &svg.Canvas{Wide: 200, High: 100, Name: `a "well" & its <string>`}
	c.Line(svg.Pen{Ink: svg.Blue, Width: 2, Dashes: []float64{3, 1.55}}, svg.XY{X: -0.01, Y: 0}, svg.XY{X: 1.26, Y: 2})
	c.Box(svg.Paper, svg.Pen{Ink: svg.Ink}, svg.XY{}, svg.XY{X: 5, Y: 6})
	c.Area("", svg.Pen{}, svg.XY{}, svg.XY{X: 5, Y: 6}, svg.XY{X: 5})
	c.Circle("", svg.Pen{Ink: svg.Rust}, svg.XY{X: 1, Y: 2}, 3)
	c.Words(svg.Lettering{Anchor: "middle", Turned: true, Bold: true, Halo: true}, svg.XY{X: 7, Y: 8}, "p < 5 & rising")
	var out bytes.Buffer
	n, err := c.WriteTo(&out)
	require.NoError(t, err)
	require.EqualValues(t, out.Len(), n)
	return out.String()
}

func TestDrawing(t *testing.T) {
	text := drawing(t)
	for d := xml.NewDecoder(bytes.NewBufferString(text)); ; {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
	}
	for _, want := range []string{`viewBox="0 0 200 100"`, `points="0,0 1.3,2"`, `stroke-dasharray="3,1.6"`, `points="0,0 5,0 5,6 0,6"`, `r="3"`,
		`rotate(-90 7 8)`, `p &lt; 5 &amp; rising`, `aria-label="a &#34;well&#34; &amp; its &lt;string&gt;"`} {
		require.Contains(t, text, want)
	}
	require.NotContains(t, text, "style=", "a strict policy forbids styles in attributes")
}

func TestThemed(t *testing.T) {
	text := svg.Themed(drawing(t))
	require.Contains(t, text, `stroke="var(--line1, #1b4f72)"`)
	require.Contains(t, text, `fill="var(--paper, #ffffff)"`)
	require.NotContains(t, text, `"#`)
}

func TestRoom(t *testing.T) {
	require.InDelta(t, 2*svg.Lettering{Size: 10}.Room("packer"), svg.Lettering{Size: 20}.Room("packer"), 1e-9)
	require.InDelta(t, svg.Lettering{}.Room("°°"), svg.Lettering{}.Room("oo"), 1e-9, "letters, not bytes")
}
