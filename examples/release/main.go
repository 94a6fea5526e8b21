// Release tells what pull parts a release joint, what bears it, and what follows
// when it parts and when it doesn't.
package main

import (
	"flag"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

var command = calculator.Command{
	Name:     "release",
	Question: "what does the weight indicator show when the release joint parts, what bears that pull, and what comes after?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

// inputs are the flags: a vertical well and one pipe.
type inputs struct {
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
	tried             unit.Force
	cutTop, cutBottom unit.Length
	cutPull           unit.Force
	locked            unit.Force
	free              unit.Length
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{pipe: tubular.Pipe{Material: tubular.Steel()}}
	flags.TextVar(&in.pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	flags.TextVar(&in.pipe.Weight, "weight", 9.3*unit.PoundPerFoot, "weight of the tubing in air, couplings included")
	flags.TextVar(&in.pipe.Material.Yield, "yield", 80000*unit.PSI, "yield strength of the tubing")
	flags.TextVar(&in.depth, "depth", 9000*unit.Foot, "depth of the release joint and of the packer, vertical")
	flags.TextVar(&in.casing, "casing", 8.535*unit.Inch, "bore of the casing")
	flags.TextVar(&in.seal, "seal", 4*unit.Inch, "diameter of the release joint's seal")
	flags.TextVar(&in.tubing, "tubing", 9.5*unit.PoundPerGallon, "fluid in the tubing while pulling")
	flags.TextVar(&in.annulus, "annulus", 9.5*unit.PoundPerGallon, "fluid in the annulus while pulling")
	flags.TextVar(&in.held, "inside", unit.Pressure(0), "tubing pressure held at surface while pulling")
	flags.TextVar(&in.pins, "pins", unit.Within(60000*unit.PoundForce, 0.05), "load that parts the release pins")
	flags.TextVar(&in.drag, "drag", unit.Exactly(5000*unit.PoundForce), "drag of the hole on the way up")
	flags.TextVar(&in.block, "block", unit.Force(0), "weight indicator with nothing hung from it")
	flags.TextVar(&in.joint, "joint", 180*unit.Kilopound, "tensile strength of the tubing's joints")
	flags.Float64Var(&in.share, "share", 0.8, "share of a tensile strength that may be used")
	flags.TextVar(&in.rig, "rig", 250*unit.Kilopound, "capacity of hook and derrick")
	flags.Float64Var(&in.rigShare, "rig-share", 0.9, "share of it that may be used")
	flags.TextVar(&in.locked, "locked", 9800*unit.PoundForce, "tension on the packer as landed, such as setting locks in")
	flags.TextVar(&in.cooling, "cold", -30*unit.FahrenheitDifference, "change of mean temperature in the coldest case, anchored")
	flags.TextVar(&in.pressured, "pressured", 2000*unit.PSI, "tubing pressure at surface in that case")
	flags.TextVar(&in.trapped, "trapped", unit.Band[unit.Pressure]{Least: 4446 * unit.PSI, Nominal: 4700 * unit.PSI, Greatest: 5200 * unit.PSI}, "pressure that may be trapped under the packer")
	flags.TextVar(&in.reserve, "reserve", 20*unit.Kilopound, "least weight to stay on the hook when the packer lets go")
	flags.TextVar(&in.formation, "formation", 4200*unit.PSI, "pressure at the joint of what is open below it")
	flags.TextVar(&in.margin, "margin", 200*unit.PSI, "overbalance wanted")
	flags.TextVar(&in.tried, "tried", 132*unit.Kilopound, "highest reading pulled so far without parting")
	flags.TextVar(&in.cutTop, "cut-top", 8960*unit.Foot, "top of the pipe that can be cut")
	flags.TextVar(&in.cutBottom, "cut-bottom", 8985*unit.Foot, "bottom of the pipe that can be cut")
	flags.TextVar(&in.cutPull, "cut-pull", 10*unit.Kilopound, "pull wanted at the cut, above what hangs free there")
	flags.TextVar(&in.free, "free", unit.Length(0), "depth to which the string is known to be free; zero for the joint")
	return func() (calculator.Answer, error) { return in.answer() }
}

func (in inputs) release() packer.Release {
	column := func(rho unit.Density, surface unit.Pressure) func(unit.Length) unit.Pressure {
		return func(tvd unit.Length) unit.Pressure { return surface + hydrostatics.Pressure(rho, tvd) }
	}
	return packer.Release{
		Pull: packer.Pull{
			Sections: []movement.Section{{Pipe: in.pipe, Bottom: in.depth}},
			Inside:   column(in.tubing, in.held), Outside: column(in.annulus, 0),
			Seal: in.seal, Drag: in.drag, Block: in.block,
		},
		Pins: in.pins,
		Components: []packer.Component{
			{Name: "tubing body at surface", Rating: in.pipe.BodyYield(), Share: in.share},
			{Name: "joint at surface", Rating: in.joint, Share: in.share},
		},
		Rig: in.rig, RigShare: in.rigShare,
	}
}

func (in inputs) answer() (calculator.Answer, error) {
	r := in.release()
	p, err := r.Parting()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Steps: p.Steps(), Failed: p.State != packer.Acted}
	parts := calculator.Table{Name: "What bears the pull, strongest pins and greatest drag", Header: []string{"part", "load", "rating", "share used", "share permitted"}}
	for _, u := range p.Parts {
		parts.Rows = append(parts.Rows, []any{u.Name, u.Load, u.Rating, u.Used, u.Share})
	}
	a.Tables = append(a.Tables, parts)
	a.Results = []calculator.Result{
		{Name: "reading when the pins part", Value: p.Reading},
		{Name: "reading pulling up with no load on the joint", Value: p.Neutral},
		{Name: "the top comes up meanwhile by", Value: p.Stretch},
		{Name: "greatest reading within the shares", Value: p.MostReading},
		{Name: "that is on the joint", Value: p.Most},
	}
	switch p.State {
	case packer.Unknown:
		a.Notes = append(a.Notes, "within the shares only the weaker pins of the band part; what stops the pull is the "+p.Weakest.Name)
	case packer.Not:
		a.Notes = append(a.Notes, "within the shares not even the weakest pins part; what stops the pull is the "+p.Weakest.Name)
	case packer.Acted:
	}
	for _, more := range []func(*calculator.Answer, packer.Release) error{in.premature, in.unseat, in.parted, in.notParted} {
		if err := more(&a, r); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
	}
	return a, nil
}
