// Package seals tells how far the seals of a string travel, where to space them out, and
// what weights stab them in and pull them out.
package seals

import (
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "seals",
	Question: "how far do the seals travel, where is their locator to be landed, and what weights stab them in and pull them out?",
	Setup:    setup,
	Picture:  true,
}

// inputs are the flags: by default an invented well that is landed in brine, with a cold
// case in which sea water is injected and a warm one in which it produces.
type inputs struct {
	units   *calculator.Units
	survey  *wellpath.Survey
	section movement.StringSection
	seat    packer.Seat
	landed  movement.WellFluids
	cold    movement.WellFluids
	cooling unit.TemperatureDifference
	warm    movement.WellFluids
	warming unit.TemperatureDifference
	plan    packer.SealPlan
	stab    packer.Stab
	spacing spacing
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in inputs
	in.section.Pipe.Material = tubular.Steel()
	flags.TextVar(&in.section.Pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.section.Pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.section.Pipe.Weight, "weight", 9.3*unit.PoundPerFoot, "weight of the tubing in air, couplings included")
	flags.TextVar(&in.section.BottomMD, "depth", 9000*unit.Foot, "true vertical depth of the packer; measured with -survey")
	flags.TextVar(&in.seat.Casing, "casing-id", 6.184*unit.Inch, "bore of the casing")
	flags.TextVar(&in.seat.Bore, "bore", 4*unit.Inch, "diameter of the seal bore")
	flags.TextVar(&in.landed.InsideDensity, "landed", 9.5*unit.PoundPerGallon, "fluid on both sides when landed, and in the annulus throughout")
	flags.TextVar(&in.cold.InsideDensity, "cold-tubing-fluid", 8.6*unit.PoundPerGallon, "fluid in the tubing in the cold case")
	flags.TextVar(&in.cold.InsideSurface, "cold-tubing-pressure", 3000*unit.PSI, "tubing pressure at surface in the cold case")
	flags.TextVar(&in.cold.OutsideSurface, "cold-annulus-pressure", 500*unit.PSI, "annulus pressure at surface in the cold case")
	flags.TextVar(&in.cooling, "cold", -60*unit.FahrenheitDifference, "change of mean temperature in the cold case")
	flags.TextVar(&in.warm.InsideDensity, "warm-tubing-fluid", 6.8*unit.PoundPerGallon, "fluid in the tubing in the warm case")
	flags.TextVar(&in.warm.InsideSurface, "warm-tubing-pressure", 500*unit.PSI, "tubing pressure at surface in the warm case")
	flags.TextVar(&in.warming, "warm", 60*unit.FahrenheitDifference, "change of mean temperature in the warm case")
	flags.TextVar(&in.plan.Bore.ShoulderMD, "shoulder", 9000*unit.Foot, "measured depth of the shoulder that the locator stops on")
	flags.TextVar(&in.plan.Bore.TopMD, "bore-top", 9001*unit.Foot, "measured depth of the top of the seal bore")
	flags.TextVar(&in.plan.Bore.BottomMD, "bore-bottom", 9031*unit.Foot, "measured depth of the bottom of the seal bore")
	flags.TextVar(&in.plan.Seals.FirstMD, "first", 1*unit.Foot, "uppermost seal below the locator")
	flags.TextVar(&in.plan.Seals.LastMD, "last", 29*unit.Foot, "lowest seal below the locator")
	flags.TextVar(&in.plan.Engaged, "engaged", 3*unit.Foot, "least length of seals in the bore in any case")
	flags.TextVar(&in.plan.Clearance, "clearance", 1*unit.Foot, "least height of the locator above its shoulder in any case")
	flags.TextVar(&in.stab.Down, "reading-down", 70*unit.Kilopound, "weight indicator going down, just above the bore")
	flags.TextVar(&in.stab.Up, "reading-up", 78*unit.Kilopound, "weight indicator pulling up, just above the bore")
	flags.TextVar(&in.stab.Friction, "friction", unit.Within(1500*unit.PoundForce, 0.5), "friction of all seals")
	flags.TextVar(&in.stab.Latch, "latch", unit.Band[unit.Force]{}, "what a latch adds to the pull")
	in.survey = wellpath.Flag(flags)
	in.spacing.setup(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) { return in.answer() }
}
