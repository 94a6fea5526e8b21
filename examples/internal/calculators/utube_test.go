package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/utube"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestUTube(t *testing.T) {
	t.Chdir("utube")
	golden.Check(t, utube.Command)
	golden.File(t, utube.Command, "published", 0, "-tubing-fluids", "9 lb/gal to 10000 ft", "-annulus-fluids", "10 lb/gal to 7000 ft, 8 lb/gal to 7500 ft, 12.5 lb/gal to 9000 ft, 16.5 lb/gal to 10000 ft", "-depth", "10000 ft", "-tubing-capacity", "0.0773 bbl/ft", "-annulus-capacity", "0.0558 bbl/ft")
	golden.File(t, utube.Command, "slug", 0, "-depth", "10000 ft", "-annulus-capacity", "0.0558 bbl/ft", "-tubing-fluids", "13.2 lb/gal to 2244.8 ft, 12.2 lb/gal to 10000 ft", "-annulus-fluids", "12.2 lb/gal to 10000 ft", "-tubing-capacity", "0.01422 bbl/ft")
	golden.File(t, utube.Command, "empties", 1, "-tubing-pressure", "9000 psi")
	golden.File(t, utube.Command, "faults", 2, "-tubing-fluids", "nitrogen to 10000 ft", "-annulus-fluids", "water to 9000 ft")
	golden.File(t, utube.Command, "gap", 2, "-tubing-fluids", "9 lb/gal to 8000 ft", "-annulus-capacity", "0 bbl/ft", "-tubing-level", "-5 ft")
}

func TestUtubePicture(t *testing.T) {
	t.Chdir("utube")
	require.Contains(t, golden.Picture(t, utube.Command, "-units", "si"), "annulus at rest")
}
