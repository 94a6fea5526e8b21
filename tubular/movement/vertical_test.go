package movement_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// packerExample is the worked example of Lubinski, Althouse & Logan, JPT June
// 1962: tubing full of 30 °API oil, squeezed with 15 lb/gal cement slurry at
// 5,000 psi with 1,000 psi on the annulus.
func packerExample() movement.Vertical {
	return movement.Vertical{
		Sections: []movement.StringSection{{
			Pipe: tubular.Pipe{
				OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel(),
			},
			BottomMD: 10000 * unit.Foot, Hole: 6.094 * unit.Inch,
		}},
		Seals: movement.SealBore{Bore: 3.25 * unit.Inch},
		Initial: movement.WellFluids{
			InsideDensity: 7.31 * unit.PoundPerGallon, OutsideDensity: 7.31 * unit.PoundPerGallon,
		},
		Final: movement.WellFluids{
			InsideDensity: 15 * unit.PoundPerGallon, OutsideDensity: 7.31 * unit.PoundPerGallon,
			InsideSurface: 5000 * unit.PSI, OutsideSurface: 1000 * unit.PSI,
		},
		Warming: -20 * unit.FahrenheitDifference,
	}
}

func ExampleVertical_Analyse() {
	well := packerExample()
	free, err := well.Analyse()
	if err != nil {
		fmt.Println(err)
		return
	}
	m := free.Movement
	for _, cause := range []struct {
		name string
		l    unit.Length
	}{{"piston", m.Piston}, {"buckling", m.Buckling}, {"ballooning", m.Ballooning}, {"temperature", m.Thermal}, {"total", m.Total()}} {
		fmt.Printf("%-12s %8.2f in\n", cause.name, cause.l.In(unit.Inch))
	}
	well.Seals.Restraint = movement.Anchored
	for _, well.SlackOff = range []unit.Force{0, 20000 * unit.PoundForce} {
		fixed, err := well.Analyse()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("anchored after %.0f lbf of slack-off: %.0f lbf on the packer\n", well.SlackOff.In(unit.PoundForce), fixed.PackerForce.In(unit.PoundForce))
	}
	// Output:
	// piston         -67.82 in
	// buckling       -46.04 in
	// ballooning     -34.77 in
	// temperature    -16.56 in
	// total         -165.19 in
	// anchored after 0 lbf of slack-off: 54625 lbf on the packer
	// anchored after 20000 lbf of slack-off: 35867 lbf on the packer
}

func TestStepsHoldTheirFields(t *testing.T) {
	v := packerExample()
	v.Seals.Restraint, v.SlackOff = movement.Anchored, 20000*unit.PoundForce
	a, err := v.Analyse()
	require.NoError(t, err)
	workingtest.Check(t, a.Steps())

	tapered := packerExample()
	lower := tapered.Sections[0]
	upper := lower
	upper.Pipe.OD, upper.Pipe.ID, upper.Pipe.Weight = 3.5*unit.Inch, 2.992*unit.Inch, 9.3*unit.PoundPerFoot
	upper.BottomMD = 6000 * unit.Foot
	tapered.Sections = []movement.StringSection{upper, lower}
	tapered.Final.Friction = 0.1 * unit.PSIPerFoot
	a, err = tapered.Analyse()
	require.NoError(t, err)
	workingtest.Check(t, a.Steps())
}

func near(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	require.LessOrEqualf(t, math.Abs(got-want), tolerance, "%s = %.10g, want %.10g", name, got, want)
}

func TestFlowFrictionIsLubinskisTerm(t *testing.T) {
	// ΔL3's friction term: (ν/E)*((1 + 2ν)/(2ν))*δ*L²/(R² - 1).
	v := packerExample()
	v.Final = v.Initial
	v.Final.Friction = 0.1 * unit.PSIPerFoot
	v.Warming = 0
	v.Seals.Bore = v.Sections[0].Pipe.ID // no piston force at the end
	a, err := v.Analyse()
	require.NoError(t, err)
	r := 2.875 / 2.441
	want := 0.3 / 30e6 * ((1 + 0.6) / 0.6) * (0.1 / 12) * 120000 * 120000 / (r*r - 1)
	near(t, "ballooning and drag", (a.Movement.Ballooning + a.Movement.Friction).In(unit.Inch), want, 1e-9)
	near(t, "piston", a.Movement.Piston.In(unit.Inch), 0, 1e-9)
}
