package main

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestSeals(t *testing.T) {
	golden.Check(t, command)
	golden.File(t, command, "too-short", 1, "-last", "15 ft")
	golden.File(t, command, "no-pups", 1, "-pups", "")
	golden.File(t, command, "faults", 2, "-bore-bottom", "9000 ft", "-engaged", "50 ft")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, command, "-units", "si"), "seal bore")
}
