// Package setting tells what sets a hydraulic packer, what else feels it, and what the
// string keeps.
package setting

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/valve"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "setting",
	Question: "what surface pressure sets the packer, what else moves at it, and what stays in the string when it is bled off?",
	Setup:    setup,
	Picture:  true,
}

// inputs are the flags.
type inputs struct {
	length                unit.Length // of the string
	units                 *calculator.Units
	pins                  valve.Pins
	area                  unit.Area
	complete, other       unit.Band[unit.Pressure]
	depth                 unit.Length
	tubing, annulus       unit.Density
	held, below, rating   unit.Pressure
	margin, surface, pump unit.Pressure
	kept                  float64
	chamber               unit.Length
	pipe                  tubular.Pipe
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{pipe: tubular.Pipe{Material: tubular.Steel()}}
	flags.IntVar(&in.pins.Count, "pins", 6, "number of shear screws that hold the setting piston")
	flags.TextVar(&in.pins.Strength, "strength", 4500*unit.PoundForce, "strength of one screw")
	flags.Float64Var(&in.pins.Tolerance, "tolerance", 0.05, "tolerance of a screw, as a fraction")
	flags.TextVar(&in.area, "piston", 8*unit.SquareInch, "area of the setting piston")
	flags.TextVar(&in.complete, "complete", unit.Within(4000*unit.PSI, 0.05), "differential at the piston at which the packer is fully set")
	flags.TextVar(&in.depth, "depth", 9000*unit.Foot, "true vertical depth of piston, plug and other device, and length of the string")
	flags.TextVar(&in.tubing, "tubing-fluid", 9.5*unit.PoundPerGallon, "density of the fluid in the tubing")
	flags.TextVar(&in.annulus, "annulus-fluid", 8.8*unit.PoundPerGallon, "density of the fluid in the annulus")
	flags.TextVar(&in.held, "annulus-pressure", unit.Pressure(0), "pressure held on the annulus at surface")
	flags.TextVar(&in.below, "below", 4000*unit.PSI, "pressure below the plug")
	flags.TextVar(&in.rating, "plug", 7500*unit.PSI, "differential that the plug holds from above")
	flags.TextVar(&in.other, "other", unit.Within(5500*unit.PSI, 0.05), "differential, tubing over annulus, at which another device moves that must not")
	flags.TextVar(&in.margin, "margin", 200*unit.PSI, "margin kept to every threshold")
	flags.TextVar(&in.pump, "limit", 10000*unit.PSI, "greatest pressure of pump, lines and wellhead")
	flags.TextVar(&in.surface, "tubing-pressure", 4200*unit.PSI, "pressure to be applied to the tubing at surface")
	flags.Float64Var(&in.kept, "kept", 0.8, "share of the setting force that the lock keeps")
	flags.TextVar(&in.chamber, "chamber", unit.Length(0), "bore of the seals that the string stands in where it is open below them to a chamber; zero where the plug is in the string")
	flags.TextVar(&in.pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	in.units = calculator.UnitsOf(flags)
	well := wellpath.Flag(flags)
	return func() (calculator.Answer, error) {
		in.length = in.depth
		if err := well.Vertical(&in.depth); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
