// Package release tells what pull parts a release joint, what bears it, and what follows
// when it parts and when it doesn't.
package release

import (
	"flag"

	"completion.example/examples/internal/wellpath"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/tubular"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "release",
	Question: "what does the weight indicator show when the release joint parts, what bears that pull, and what comes after?",
	Setup:    setup,
	Picture:  true,
}

// inputs are the flags: a vertical well, or one of a survey, and one pipe.
type inputs struct {
	units             *calculator.Units
	pipe              tubular.Pipe
	depth             unit.Length
	casing, seal      unit.Length
	tubing, annulus   unit.Density
	held              unit.Pressure
	pins              unit.Band[unit.Force]
	drag              unit.Band[unit.Force]
	block             unit.Force
	joint             unit.Force
	share             float64
	rig               unit.Force
	rigShare          float64
	cooling           unit.TemperatureDifference
	pressured         unit.Pressure
	trapped           unit.Band[unit.Pressure]
	reserve           unit.Force
	formation, margin unit.Pressure
	locked            unit.Force
	openTop           bool
	remedy            remedy
	survey            *hydrostatics.Path
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{pipe: tubular.Pipe{Material: tubular.Steel()}}
	flags.TextVar(&in.pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.pipe.Weight, "weight", 9.3*unit.PoundPerFoot, "weight of the tubing in air, couplings included")
	flags.TextVar(&in.pipe.Material.Yield, "yield", 80000*unit.PSI, "yield strength of the tubing")
	flags.TextVar(&in.depth, "depth", 9000*unit.Foot, "true vertical depth of the release joint and of the packer; measured with -survey")
	flags.TextVar(&in.casing, "casing-id", 8.535*unit.Inch, "bore of the casing")
	flags.TextVar(&in.seal, "seal", 4*unit.Inch, "diameter of the release joint's seal")
	flags.TextVar(&in.tubing, "tubing-fluid", 9.5*unit.PoundPerGallon, "fluid in the tubing while pulling")
	flags.TextVar(&in.annulus, "annulus-fluid", 9.5*unit.PoundPerGallon, "fluid in the annulus while pulling")
	flags.TextVar(&in.held, "tubing-pressure", unit.Pressure(0), "tubing pressure held at surface while pulling")
	flags.TextVar(&in.pins, "parting-load", unit.Within(60000*unit.PoundForce, 0.05), "load that parts the release pins")
	flags.TextVar(&in.drag, "drag", unit.Exactly(5000*unit.PoundForce), "drag of the hole on the way up")
	flags.BoolVar(&in.openTop, "open-top", false, "the top of the string is open, so that pressure inside does not lift it")
	flags.TextVar(&in.block, "block", unit.Force(0), "weight of block and top drive: the indicator with nothing hung from it")
	flags.TextVar(&in.joint, "joint", 180*unit.Kilopound, "tensile strength of the tubing's joints")
	flags.Float64Var(&in.share, "share", 0.8, "share of a tensile strength that may be used")
	flags.TextVar(&in.rig, "rig", 250*unit.Kilopound, "capacity of hook and derrick")
	flags.Float64Var(&in.rigShare, "rig-share", 0.9, "share of it that may be used")
	flags.TextVar(&in.locked, "locked", 9800*unit.PoundForce, "tension on the packer as landed, such as setting locks in")
	flags.TextVar(&in.cooling, "cold", -30*unit.FahrenheitDifference, "change of mean temperature in the coldest case, anchored")
	flags.TextVar(&in.pressured, "pressured", 2000*unit.PSI, "tubing pressure at surface in that case")
	flags.TextVar(&in.trapped, "trapped", unit.Band[unit.Pressure]{Least: 4446 * unit.PSI, Nominal: 4700 * unit.PSI, Greatest: 5200 * unit.PSI}, "pressure that may be trapped under the packer")
	flags.TextVar(&in.reserve, "reserve", 20*unit.Kilopound, "least weight to stay on the hook when the packer lets go")
	flags.TextVar(&in.formation, "formation", 4200*unit.PSI, "formation pressure at the joint, of what is open below it")
	flags.TextVar(&in.margin, "overbalance", 200*unit.PSI, "overbalance wanted")
	in.remedy.setup(flags)
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		in.survey = well.Path()
		return in.answer()
	}
}
