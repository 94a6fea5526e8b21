// Package commingle tells what zones give when they flow together through their chokes.
package commingle

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/production"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "commingle",
	Question: "what does each zone give when they flow together through their chokes, and does one of them take?",
	Setup:    setup,
	Picture:  true,
}

// inputs are the flags.
type inputs struct {
	units         *calculator.Units
	zones         zones
	chokes, table string // files
	between       production.Interval
	tubing        production.Tubing
	shut          bool
	search, split string
	water         float64
	noCrossflow   bool
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{zones: demo()}
	flags.Var(&in.zones, "zone", "a `zone`, from the bottom up; give the flag once for each: name, depth, pr, J, pb, cut, density, B, choke=position; of gas name, depth, pr, AOF, n, gravity, T, Z, k (ratio of specific heats), xT, choke")
	flags.StringVar(&in.chokes, "positions", "", "CSV `file` of the positions of every zone's choke; none takes the built-in, invented one")
	flags.TextVar(&in.between.Density, "between", 7.2*unit.PoundPerGallon, "density in the tubing between the zones")
	flags.TextVar(&in.between.Loss.At, "loss-rate", 5000*unit.BarrelPerDay, "rate at which the losses are told")
	flags.TextVar(&in.between.Loss.Turbulent, "loss-between", 10*unit.PSI, "friction between two zones at that rate")
	flags.TextVar(&in.tubing.Loss.Turbulent, "loss", 250*unit.PSI, "friction from the topmost zone to surface at that rate")
	flags.TextVar(&in.tubing.Surface, "surface-pressure", 200*unit.PSI, "pressure at surface, held at the wellhead")
	flags.TextVar(&in.tubing.Density, "density", 6.0*unit.PoundPerGallon, "density in the tubing to surface")
	flags.StringVar(&in.table, "outflow", "", "CSV `file` of rate,pressure at the topmost zone, instead of the tubing to surface")
	flags.BoolVar(&in.shut, "shut", false, "shut the well in at surface")
	flags.StringVar(&in.search, "search", "", "search the positions that exist: most (rate), split or water")
	flags.StringVar(&in.split, "split", "1:1", "wanted split between the zones, from the bottom up; for -search split")
	flags.Float64Var(&in.water, "water", 0.3, "greatest water cut; for -search water")
	flags.BoolVar(&in.noCrossflow, "no-crossflow", false, "leave out settings in which a zone takes fluid")
	in.units = calculator.UnitsOf(flags)
	survey := wellpath.Flag(flags)
	return func() (calculator.Answer, error) {
		var depths []*unit.Length
		for i := range in.zones.list {
			depths = append(depths, &in.zones.list[i].Zone.TVD)
		}
		if err := survey.Vertical(depths...); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		survey.Tell(&a)
		return a, err
	}
}
