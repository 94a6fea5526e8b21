package calculators_test

import (
	"path/filepath"
	"testing"

	"completion.example/examples/internal/calculators/gaswell"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestGaswell(t *testing.T) {
	t.Chdir("gaswell")
	golden.Check(t, gaswell.Command)
	golden.File(t, gaswell.Command, "wide", 1, "-choke", "3 in", "-id", "2.441 in", "-downstream", "200 psi")
	golden.File(t, gaswell.Command, "dead", 1, "-downstream", "3500 psi")
	golden.File(t, gaswell.Command, "metric", 0, "-formation", "280 bar", "-downstream", "70 bar", "-length", "3600 m", "-id", "100 mm", "-choke", "18 mm", "-surface-temperature", "50 °C", "-bottom-temperature", "95 °C",
		"-open-flow", "1700000 Sm3/d", "-standard-temperature", "15 °C", "-survey", filepath.Join("..", "survey", "testdata", "building.csv"))
	golden.File(t, gaswell.Command, "faults", 2, "-choke", "0 in", "-heat-ratio", "0.9", "-exponent", "2", "-depth", "10000 ft")
	golden.File(t, gaswell.Command, "sour", 2, "-h2s", "0.9")
}

func TestGaswellPicture(t *testing.T) {
	t.Chdir("gaswell")
	svg := golden.Picture(t, gaswell.Command, "-units", "si")
	require.Contains(t, svg, "rate, m3/d")
	require.Contains(t, svg, "at the wellhead")
}
