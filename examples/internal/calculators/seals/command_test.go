package seals

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSeals(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "too-short", 1, "-last", "15 ft")
	golden.File(t, Command, "no-pups", 1, "-pups", "")
	golden.File(t, Command, "faults", 2, "-bore-bottom", "9000 ft", "-engaged", "50 ft")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command, "-units", "si"), "seal bore")
}
