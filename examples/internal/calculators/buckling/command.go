// Package buckling tells at which compression a pipe buckles in its hole, and what the
// helix does to it: pitch, shortening, contact, bending, and what still passes
// through.
package buckling

import (
	"errors"
	"flag"
	"fmt"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "buckling",
	Question: "at which compression does a pipe buckle in its hole, and what does its helix do?",
	Setup:    setup,
	Picture:  true,
}

// input is 3-1/2 in tubing in brine in 7 in casing, at 60° from the vertical, by default.
type input struct {
	units    *calculator.Units
	c        movement.Confined
	tool     unit.Length
	inside   unit.Density
	outside  unit.Density
	load     unit.Force
	friction float64
	at       unit.Length
	survey   *hydrostatics.Path
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{c: movement.Confined{Pipe: tubular.Pipe{Material: tubular.Steel()}}}
	flags.TextVar(&in.c.Pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the pipe")
	flags.TextVar(&in.c.Pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the pipe")
	flags.TextVar(&in.c.Pipe.Weight, "weight", 9.3*unit.PoundPerFoot, "weight of the pipe in air, couplings included")
	flags.TextVar(&in.c.Hole, "casing-id", 6.184*unit.Inch, "inside diameter of the casing or hole")
	flags.TextVar(&in.c.Inclination, "inclination", 60*unit.Degree, "inclination of the hole from the vertical")
	flags.TextVar(&in.c.Build, "build", unit.Curvature(0), "build rate: change of inclination, positive where it grows with depth")
	flags.TextVar(&in.c.Turn, "turn", unit.Curvature(0), "change of azimuth times the sine of inclination")
	flags.TextVar(&in.inside, "tubing-fluid", 9.5*unit.PoundPerGallon, "density of the fluid in the tubing, or whatever pipe it is")
	flags.TextVar(&in.outside, "annulus-fluid", 9.5*unit.PoundPerGallon, "density of the fluid in the annulus")
	flags.TextVar(&in.load, "compression", 20000*unit.PoundForce, "effective compression to look at")
	flags.TextVar(&in.tool, "tool", 2.125*unit.Inch, "diameter of a stiff tool to pass")
	flags.Float64Var(&in.friction, "friction-factor", drag.UsualCased, "friction factor of pipe on wall; common practice")
	flags.TextVar(&in.at, "measured-depth", 5000*unit.Foot, "with -survey: the measured depth to look at; inclination, build and turn are then those of the survey")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if in.survey = well.Path(); in.survey != nil {
			var err error
			if in.c, err = in.c.At(in.survey, in.at); err != nil {
				return calculator.Answer{}, calculator.BadInput{Err: err}
			}
		}
		if err := in.check(); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		in.c.Weight = in.c.Pipe.BuoyedWeight(in.inside, in.outside)
		return in.answer(), nil
	}
}

func (in input) check() error {
	faults := []error{in.c.Pipe.Validate()}
	if !(in.friction >= 0 && in.friction <= 1) {
		faults = append(faults, fmt.Errorf("friction is %v; permitted from 0 to 1", in.friction))
	}
	if !(in.c.Hole > in.c.Pipe.OD) {
		faults = append(faults, fmt.Errorf("casing-id is %v; it must be wider than the pipe's %v", in.c.Hole, in.c.Pipe.OD))
	}
	if !(in.c.Inclination >= 0 && in.c.Inclination <= 180*unit.Degree) {
		faults = append(faults, fmt.Errorf("inclination is %v; permitted from 0 deg to 180 deg", in.c.Inclination))
	}
	if !(in.inside >= 0 && in.outside >= 0) {
		faults = append(faults, fmt.Errorf("fluids are %v and %v; permitted from 0 lb/gal upwards", in.inside, in.outside))
	}
	if !(in.load > 0) || !(in.tool > 0) {
		faults = append(faults, fmt.Errorf("compression is %v and tool %v; both must be above zero", in.load, in.tool))
	}
	return errors.Join(faults...)
}
