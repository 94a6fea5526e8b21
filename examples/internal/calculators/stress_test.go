package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/stress"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestStress(t *testing.T) {
	t.Chdir("stress")
	golden.Check(t, stress.Command)
	golden.File(t, stress.Command, "bent", 0, "-od", "3-1/2 in", "-weight", "9.3 lb/ft", "-grade", "L80", "-axial", "40000 lbf", "-inside-pressure", "1000 psi", "-outside-pressure", "5000 psi",
		"-dogleg", "6 deg/100ft", "-torque", "1000 ft-lbf")
	golden.File(t, stress.Command, "passed", 1, "-inside-pressure", "14000 psi")
	golden.File(t, stress.Command, "cylinder", 0, "-od", "100 mm", "-id", "60 mm", "-inside-pressure", "20 MPa", "-outside-pressure", "5 MPa", "-axial", "0 N", "-capped")
	golden.File(t, stress.Command, "faults", 2, "-weight", "50 lb/ft", "-burst-factor", "0.5", "-inside-pressure", "-50 psi")
}

func TestStressPicture(t *testing.T) {
	t.Chdir("stress")
	for _, args := range [][]string{nil, {"-axial", "0 lbf", "-inside-pressure", "0 psi", "-outside-pressure", "0 psi"}} {
		require.Contains(t, golden.Picture(t, stress.Command, args...), "triaxial")
	}
}
