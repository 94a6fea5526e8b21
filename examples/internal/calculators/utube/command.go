// Package utube tells how tubing and annulus come to rest when a port between them
// opens.
package utube

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/examples/internal/stack"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "utube",
	Question: "a port opens between tubing and annulus: which way does it flow, how much, and what holds it?",
	Setup:    setup,
	Picture:  true,
}

const (
	tubingExam  = "9 lb/gal to 10000 ft"
	annulusExam = "10 lb/gal to 7000 ft, 8 lb/gal to 7500 ft, 12.5 lb/gal to 9000 ft, 16.5 lb/gal to 10000 ft"
)

// inputs are the flags.
type inputs struct {
	units           *calculator.Units
	legs            hydrostatics.UTube // their port, levels and pressures
	tubing, annulus stack.Stack
	inside, outside unit.Area // capacities of tubing and annulus
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{tubing: stack.Default("6.8 lb/gal to 4000 ft, 9.2 lb/gal to 9000 ft"), annulus: stack.Default("9.2 lb/gal to 9000 ft")}
	flags.TextVar(&in.legs.PortMD, "depth", 9000*unit.Foot, "true vertical depth of the port; measured with -survey")
	flags.TextVar(&in.tubing, "tubing-fluids", in.tubing, "fluids in the tubing from its level down to the port, DENSITY to DEPTH")
	flags.TextVar(&in.annulus, "annulus-fluids", in.annulus, "fluids in the annulus, likewise")
	flags.TextVar(&in.legs.Tubing.LevelMD, "tubing-level", 0*unit.Foot, "liquid level in the tubing")
	flags.TextVar(&in.legs.Annulus.LevelMD, "annulus-level", 0*unit.Foot, "liquid level in the annulus")
	flags.TextVar(&in.legs.Tubing.Surface, "tubing-pressure", 0*unit.PSI, "pressure held on the tubing")
	flags.TextVar(&in.legs.Annulus.Surface, "annulus-pressure", 0*unit.PSI, "pressure held on the annulus")
	flags.TextVar(&in.inside, "tubing-capacity", 0.0087*unit.BarrelPerFoot, "capacity of the tubing")
	flags.TextVar(&in.outside, "annulus-capacity", 0.0252*unit.BarrelPerFoot, "capacity of the annulus")
	well := wellpath.Flag(flags)
	return func() (calculator.Answer, error) {
		in.legs.Path = well.Path()
		in.units = calculator.UnitsOf(flags)
		return in.answer()
	}
}
