package utube

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestUTube(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "published", 0, "-tubing-fluids", tubingExam, "-annulus-fluids", annulusExam, "-depth", "10000 ft", "-tubing-capacity", "0.0773 bbl/ft", "-annulus-capacity", "0.0558 bbl/ft")
	golden.File(t, Command, "slug", 0, "-depth", "10000 ft", "-annulus-capacity", "0.0558 bbl/ft", "-tubing-fluids", "13.2 lb/gal to 2244.8 ft, 12.2 lb/gal to 10000 ft", "-annulus-fluids", "12.2 lb/gal to 10000 ft", "-tubing-capacity", "0.01422 bbl/ft")
	golden.File(t, Command, "empties", 1, "-tubing-pressure", "9000 psi")
	golden.File(t, Command, "faults", 2, "-tubing-fluids", "nitrogen to 10000 ft", "-annulus-fluids", "water to 9000 ft")
	golden.File(t, Command, "gap", 2, "-tubing-fluids", "9 lb/gal to 8000 ft", "-annulus-capacity", "0 bbl/ft", "-tubing-level", "-5 ft")
}

func TestPicture(t *testing.T) {
	require.Contains(t, golden.Picture(t, Command, "-units", "si"), "annulus at rest")
}
