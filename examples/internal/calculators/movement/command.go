// Package movement tells how far the seals of a tubing string travel, or what force the
// packer takes, when pressures, fluids and temperature change, in a vertical well or along a survey.
package movement

import (
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "movement",
	Question: "how far do the seals move, and what force does the packer take, when pressures, fluids and temperature change?",
	Setup:    setup,
	Picture:  true,
}

// input is the case: by default an invented well in which cold sea water is injected down
// tubing that was landed in brine.
type input struct {
	units   *calculator.Units
	survey  *wellpath.Survey
	well    movement.Vertical
	section movement.StringSection
	yield   unit.Pressure
	design  tubular.DesignFactors
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{design: tubular.WithoutReserve()}
	s, w := &in.section, &in.well
	s.Pipe.Material = tubular.Steel()
	flags.TextVar(&s.Pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&s.Pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&s.Pipe.Weight, "weight", 9.3*unit.PoundPerFoot, "weight of the tubing in air, couplings included")
	flags.TextVar(&in.yield, "yield", 80000*unit.PSI, "yield strength of the tubing; 0 psi leaves its limits out")
	flags.TextVar(&s.Joint, "joint", unit.Force(0), "tensile strength of the connections; 0 lbf is not known, and not checked")
	flags.TextVar(&s.Wear.Inside, "wear", unit.Length(0), "wall that the limits leave out, worn or corroded from the bore")
	flags.TextVar(&s.Hole, "casing-id", 6.184*unit.Inch, "inside diameter of the casing")
	flags.TextVar(&s.BottomMD, "depth", 9000*unit.Foot, "true vertical depth of the packer; measured with -survey")
	flags.TextVar(&w.Seals.Bore, "bore", 4*unit.Inch, "seal bore of the packer")
	flags.TextVar(&w.Seals.Restraint, "seals", movement.Free, "free, limited (by -travel-up and -travel-down) or anchored")
	flags.TextVar(&w.Seals.Up, "travel-up", unit.Length(0), "travel of limited seals up to their stop")
	flags.TextVar(&w.Seals.Down, "travel-down", unit.Length(0), "travel of limited seals down to their stop")
	flags.TextVar(&w.SlackOff, "slack-off", unit.Force(0), "weight set down on the packer before the change; negative is a pull")
	flags.TextVar(&w.Initial.InsideDensity, "tubing-fluid-before", 9.5*unit.PoundPerGallon, "fluid in the tubing before")
	flags.TextVar(&w.Initial.OutsideDensity, "annulus-fluid-before", 9.5*unit.PoundPerGallon, "fluid in the annulus before")
	flags.TextVar(&w.Initial.InsideSurface, "tubing-pressure-before", unit.Pressure(0), "tubing pressure at surface before")
	flags.TextVar(&w.Initial.OutsideSurface, "annulus-pressure-before", unit.Pressure(0), "annulus pressure at surface before")
	flags.TextVar(&w.Final.InsideDensity, "tubing-fluid", 8.6*unit.PoundPerGallon, "fluid in the tubing after")
	flags.TextVar(&w.Final.OutsideDensity, "annulus-fluid", 9.5*unit.PoundPerGallon, "fluid in the annulus after")
	flags.TextVar(&w.Final.InsideSurface, "tubing-pressure", 3000*unit.PSI, "tubing pressure at surface after")
	flags.TextVar(&w.Final.OutsideSurface, "annulus-pressure", 500*unit.PSI, "annulus pressure at surface after")
	flags.TextVar(&w.Final.Friction, "flow-friction", unit.Gradient(0), "pressure lost by flow down the tubing after")
	flags.TextVar(&w.Warming, "warming", -60*unit.FahrenheitDifference, "warming of the tubing, in the mean; cooling is negative")
	flags.Float64Var(&in.design.Burst, "burst-factor", 1, "design factor to internal yield")
	flags.Float64Var(&in.design.Collapse, "collapse-factor", 1, "design factor to collapse")
	flags.Float64Var(&in.design.Axial, "tension-factor", 1, "design factor to body yield, tension and compression")
	flags.Float64Var(&in.design.Triaxial, "triaxial-factor", 1, "design factor of the von Mises stress to the yield strength")
	in.units = calculator.UnitsOf(flags)
	in.survey = wellpath.Flag(flags)
	return func() (calculator.Answer, error) { return answer(in) }
}
