// Package hookload tells what the weight indicator shows while a string is run, pulled
// and rotated in a build-and-hold well, and what of a pull reaches its lower end.
package hookload

import (
	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics"
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/drag"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "hookload",
	Question: "what does the weight indicator show while the string is run, pulled and rotated, and what of a pull gets down?",
	Setup:    setup,
	Picture:  true,
}

// input is an invented build-and-hold well by default.
type input struct {
	units                     *calculator.Units
	survey                    *hydrostatics.Path
	pipe                      tubular.Pipe
	fluid                     unit.Density
	kickOff, depth, shoe      unit.Length
	casing, hole              unit.Length
	build                     unit.Curvature
	inclination               unit.Angle
	cased, open, spread       float64
	block, end, pull, setDown unit.Force
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{pipe: tubular.Pipe{Material: tubular.Steel()}}
	flags.TextVar(&in.pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the string")
	flags.TextVar(&in.pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the string")
	flags.TextVar(&in.pipe.Weight, "weight", 9.3*unit.PoundPerFoot, "weight of the string in air, couplings included")
	flags.TextVar(&in.fluid, "density", 9.5*unit.PoundPerGallon, "density of the fluid inside and outside")
	flags.TextVar(&in.kickOff, "kick-off", 2000*unit.Foot, "depth at which the hole leaves the vertical; unused with -survey")
	flags.TextVar(&in.build, "build", 3*unit.DegreePer100Feet, "build rate")
	flags.TextVar(&in.inclination, "inclination", 60*unit.Degree, "inclination at the end of the build, held to the end")
	flags.TextVar(&in.depth, "measured-depth", 10000*unit.Foot, "measured depth of the string's lower end")
	flags.TextVar(&in.shoe, "cased-to", 8000*unit.Foot, "measured depth of the casing shoe")
	flags.TextVar(&in.casing, "casing-id", 6.184*unit.Inch, "inside diameter of the casing")
	flags.TextVar(&in.hole, "hole", 6*unit.Inch, "diameter of the open hole")
	flags.Float64Var(&in.cased, "friction-cased", drag.UsualCased, "friction factor in casing; common practice, match it on the way in")
	flags.Float64Var(&in.open, "friction-open", drag.UsualOpen, "friction factor in open hole; common practice, match it on the way in")
	flags.Float64Var(&in.spread, "friction-spread", 0.25, "how far the friction factors may be off, either way, as a fraction")
	flags.TextVar(&in.block, "block", 0*unit.PoundForce, "weight of block and top drive, shown on the indicator")
	flags.TextVar(&in.end, "wanted-pull", 40000*unit.PoundForce, "pull wanted at the lower end, such as the strength of release pins")
	flags.TextVar(&in.pull, "indicator", 100000*unit.PoundForce, "reading while pulling: what reaches the lower end?")
	flags.TextVar(&in.setDown, "set-down", 10000*unit.PoundForce, "weight set down at surface, off the reading of running in: what reaches the lower end?")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		in.survey = well.Path()
		return in.answer()
	}
}
