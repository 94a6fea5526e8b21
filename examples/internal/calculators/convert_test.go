package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/convert"
	"completion.example/internal/calculator/golden"
)

// The sizes of the units are held against GNU Units in their own package; here
// 212 degF is 100 degC, and 10 bar 145.0377 psi (NIST SP 811, 2008, B.8).
func TestConvert(t *testing.T) {
	t.Chdir("convert")
	golden.Check(t, convert.Command)
	golden.File(t, convert.Command, "temperature", 0, "-value", "212 °F", "-in", "degC")
	golden.File(t, convert.Command, "difference", 0, "-value", "9 degF", "-in", "degC", "-quantity", "temperature difference")
	golden.File(t, convert.Command, "pressure", 0, "-value", "10 barg", "-in", "psi")
	golden.File(t, convert.Command, "back", 0, "-value", "145 psi", "-in", "bar")
	golden.File(t, convert.Command, "pound", 0, "-value", "150,000 lb", "-in", "")
	golden.File(t, convert.Command, "ton", 2, "-value", "50 ton")
	golden.File(t, convert.Command, "mismatch", 2, "-value", "50 psi", "-in", "bbl")
	golden.File(t, convert.Command, "quantity", 2, "-value", "50 psi", "-quantity", "density")
	golden.File(t, convert.Command, "unknown", 2, "-value", "50 psi", "-quantity", "colour")
}
