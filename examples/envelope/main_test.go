package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestEnvelope(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "polygon", 0, "-polygon", "testdata/polygon.json", "-loads", "testdata/loads.json")
	golden.File(t, command, "outside", 1, "-below", "10500 psi")
	golden.File(t, command, "faults", 2, "-from-below", "0 psi", "-slips-up", "-5 lbf")
	golden.File(t, command, "nothing", 2, "-casing", "4 in")
}

func TestPicture(t *testing.T) {
	file := filepath.Join(t.TempDir(), "envelope.svg")
	var out, errs bytes.Buffer
	require.Zero(t, command.Run([]string{"-picture", file, "-loads", "testdata/loads.json"}, &out, &errs), errs.String())
	svg, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Contains(t, string(svg), "cold injection")
	require.NotContains(t, string(svg), "NaN")
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
	}
}
