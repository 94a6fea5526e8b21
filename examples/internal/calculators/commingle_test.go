package calculators_test

import (
	"testing"

	"completion.example/examples/internal/calculators/commingle"
	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestCommingle(t *testing.T) {
	t.Chdir("commingle")
	golden.Check(t, commingle.Command)
	golden.File(t, commingle.Command, "beyond-survey", 2, "-survey", "../survey/testdata/rising.csv")
	golden.File(t, commingle.Command, "split", 0, "-search", "split", "-split", "1:2")
	golden.File(t, commingle.Command, "water", 0, "-search", "water", "-water", "0.2", "-no-crossflow")
	golden.File(t, commingle.Command, "dry", 1, "-search", "water", "-water", "0.01")
	golden.File(t, commingle.Command, "dead", 1, "-surface-pressure", "3000 psi")
	golden.File(t, commingle.Command, "crossflow", 0, "-shut",
		"-zone", "name=lower; depth=9000 ft; pr=4000 psi; J=5 bbl/d/psi", "-zone", "name=upper; depth=9000 ft; pr=3500 psi; J=10 bbl/d/psi")
	golden.File(t, commingle.Command, "table", 0, "-outflow", "testdata/outflow.csv")
	golden.File(t, commingle.Command, "gas", 0, "-explain", "-between", "0.9 lb/gal", "-density", "0.8 lb/gal", "-surface-pressure", "800 psi", "-loss-rate", "20000 Mcf/d", "-zone", "name=lower; depth=9400 ft; pr=3900 psi; AOF=12000 Mcf/d; n=0.8; choke=2",
		"-zone", "name=upper; depth=9000 ft; pr=3700 psi; AOF=20000 Mcf/d; n=0.7; gravity=0.6; T=190 degF; Z=0.91; choke=1")
	golden.File(t, commingle.Command, "two-phases", 2, "-zone", "name=lower; depth=9400 ft; pr=3900 psi; AOF=12000 Mcf/d", "-zone", "name=upper; depth=9000 ft; pr=3600 psi; J=2 bbl/d/psi")
	golden.File(t, commingle.Command, "faults", 2, "-zone", "name=lower; depth=9 psi; q=5", "-water", "x")
	golden.File(t, commingle.Command, "no-position", 2, "-zone", "name=lower; depth=9000 ft; pr=4000 psi; J=5 bbl/d/psi; choke=9")
}

func TestComminglePicture(t *testing.T) {
	t.Chdir("commingle")
	require.Contains(t, golden.Picture(t, commingle.Command, "-units", "si"), "to surface")
}
