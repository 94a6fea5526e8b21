package golden

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"

	"completion.example/internal/calculator"
	"github.com/stretchr/testify/require"
)

// Sizes in bytes between which a picture of a calculator lies; those
// that there are have 7 to 37 kB.
const (
	leastPicture    = 2 << 10
	greatestPicture = 2 << 20
)

// Picture runs c with args and -picture, wants exit code 0 and a sound SVG, and
// returns its text for further checks.
func Picture(t *testing.T, c calculator.Command, args ...string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "picture.svg")
	var out, errs bytes.Buffer
	require.Zero(t, c.Run(append([]string{"-picture", file}, args...), &out, &errs), errs.String())
	svg, err := os.ReadFile(file)
	require.NoError(t, err)
	SVG(t, svg)
	return string(svg)
}

// SVG wants a sound picture.
func SVG(t *testing.T, svg []byte) {
	t.Helper()
	require.NoError(t, sound(svg))
}

// sound says what is wrong with a picture: its size, a number that isn't one, XML
// that isn't well formed, or a root that isn't svg.
func sound(svg []byte) error {
	if n := len(svg); n < leastPicture || n > greatestPicture {
		return fmt.Errorf("picture has %d bytes; want %d to %d", n, leastPicture, greatestPicture)
	}
	for _, word := range []string{"NaN", "+Inf", "-Inf"} {
		if bytes.Contains(svg, []byte(word)) {
			return fmt.Errorf("picture contains %s", word)
		}
	}
	root := ""
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		switch {
		case errors.Is(err, io.EOF) && root == "svg":
			return nil
		case errors.Is(err, io.EOF):
			return fmt.Errorf("picture's root is %q; want svg", root)
		case err != nil:
			return fmt.Errorf("picture: %w", err)
		}
		if e, ok := token.(xml.StartElement); ok && root == "" {
			root = e.Name.Local
		}
	}
}
