package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/choke"
	"completion.example/internal/calculator/golden"
)

func TestChoke(t *testing.T) {
	t.Chdir("choke")
	golden.Check(t, choke.Command)
	iec := func(name string, code int, args ...string) { // example 1 of the standard, with some of it changed
		golden.File(t, choke.Command, name, code, append([]string{"-rate", "360 m3/h", "-coefficient", "165 Kv", "-upstream", "680 kPaa", "-downstream", "220 kPaa", "-density", "965.4 kg/m3", "-vapour", "70.1 kPa",
			"-critical", "22120 kPa", "-size", "150 mm"}, args...)...)
	}
	iec("published", 0)
	iec("position", 0, "-positions", "testdata/positions.csv")
	iec("too-small", 1, "-positions", "testdata/positions.csv", "-rate", "900 m3/h")
	iec("choked", 1, "-solve", "drop", "-rate", "500 m3/h")
	golden.File(t, choke.Command, "gas", 0, "-explain", "-solve", "rate", "-heat-ratio", "1.3", "-density", "60 kg/m3", "-upstream", "1300 psi", "-downstream", "400 psi", "-coefficient", "5 Cv", "-size", "2 in")
	golden.File(t, choke.Command, "gas-drop", 0, "-solve", "drop", "-heat-ratio", "1.3", "-density", "60 kg/m3", "-upstream", "1300 psi", "-rate", "1.2 m3/min", "-coefficient", "5 Cv", "-size", "2 in")
	golden.File(t, choke.Command, "gas-choked", 1, "-solve", "drop", "-heat-ratio", "1.3", "-density", "60 kg/m3", "-upstream", "1300 psi", "-rate", "6 m3/min", "-coefficient", "5 Cv", "-size", "2 in")
	iec("reverse", 1, "-downstream", "700 kPa")
	golden.File(t, choke.Command, "faults", 2, "-solve", "size")
	golden.File(t, choke.Command, "more-faults", 2, "-density", "-1 kg/m3", "-fl", "3")
}
