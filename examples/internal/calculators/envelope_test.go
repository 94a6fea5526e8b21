package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/envelope"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestEnvelope(t *testing.T) {
	t.Chdir("envelope")
	golden.Check(t, envelope.Command)
	golden.File(t, envelope.Command, "polygon", 0, "-polygon", "testdata/polygon.json", "-loads", "testdata/loads.json")
	golden.File(t, envelope.Command, "outside", 1, "-below", "10500 psi")
	golden.File(t, envelope.Command, "faults", 2, "-from-below", "0 psi", "-slips-up", "-5 lbf")
	golden.File(t, envelope.Command, "nothing", 2, "-casing-id", "4 in")
}

func TestEnvelopePicture(t *testing.T) {
	t.Chdir("envelope")
	require.Contains(t, golden.Picture(t, envelope.Command, "-loads", "testdata/loads.json"), "cold injection")
}
