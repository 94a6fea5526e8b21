package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/gascolumn"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestGasColumn(t *testing.T) {
	t.Chdir("gascolumn")
	golden.Check(t, gascolumn.Command)
	golden.File(t, gascolumn.Command, "published", 0, "-gravity", "0.8", "-surface-temperature", "190 degF", "-bottom-temperature", "190 degF")
	golden.File(t, gascolumn.Command, "nitrogen", 0, "-gas", "nitrogen", "-surface-pressure", "19.898675 MPa", "-depth", "3000 m", "-surface-temperature", "15 degC", "-bottom-temperature", "105 degC")
	golden.File(t, gascolumn.Command, "sour", 0, "-gravity", "0.75", "-co2", "0.05", "-h2s", "0.1", "-bottom-temperature", "250 degF")
	golden.File(t, gascolumn.Command, "faults", 2, "-gas", "helium")
	golden.File(t, gascolumn.Command, "upwards", 2, "-depth", "-5 ft")
	golden.File(t, gascolumn.Command, "range", 2, "-gravity", "0.3", "-n2", "0.4")
}

func TestGascolumnPicture(t *testing.T) {
	t.Chdir("gascolumn")
	require.Contains(t, golden.Picture(t, gascolumn.Command, "-units", "si"), "fresh water")
}
