package envelope

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestEnvelope(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "polygon", 0, "-polygon", "testdata/polygon.json", "-loads", "testdata/loads.json")
	golden.File(t, Command, "outside", 1, "-below", "10500 psi")
	golden.File(t, Command, "faults", 2, "-from-below", "0 psi", "-slips-up", "-5 lbf")
	golden.File(t, Command, "nothing", 2, "-casing-id", "4 in")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command, "-loads", "testdata/loads.json"), "cold injection")
}
