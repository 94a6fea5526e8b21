// Package sleeves tells in what order sliding sleeves on a common close line are shifted,
// what each line gives and takes, and what one wrong line would move.
package sleeves

import (
	"completion.example/examples/internal/wellpath"
	"flag"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/controlline"
	"completion.example/valve/sleeve"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "sleeves",
	Question: "in what order are sleeves on a common close line shifted, and what would a wrong line move?",
	Setup:    setup,
}

type input struct {
	units    *calculator.Units
	lengths  []unit.Length // of the lines
	depths   list[unit.Length, *unit.Length]
	from, to list[sleeve.Position, *sleeve.Position]
	one      sleeve.Sleeve
	line     controlline.Line
	liquid   controlline.LineFluid
	pump     unit.Pressure
	single   bool
	table    bool
}

// The sleeves of an invented well.
func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{
		depths: []unit.Length{8200 * unit.Foot, 8500 * unit.Foot, 8800 * unit.Foot},
		from:   []sleeve.Position{sleeve.Open, sleeve.Open, sleeve.Closed},
		to:     []sleeve.Position{sleeve.Closed, sleeve.Open, sleeve.Open},
		line:   controlline.Line{Poisson: 0.3},
	}
	flags.Var(&in.depths, "depths", "true vertical depth of each sleeve; the lines are taken as long as that")
	flags.Var(&in.from, "from", "position of each sleeve now: closed, open or unknown")
	flags.Var(&in.to, "to", "position of each sleeve wanted")
	flags.TextVar(&in.one.OpenArea, "open-area", 2*unit.SquareInch, "piston area on the open line's side")
	flags.TextVar(&in.one.CloseArea, "close-area", 2*unit.SquareInch, "piston area on the close line's side")
	flags.TextVar(&in.one.Stroke, "stroke", 15*unit.Inch, "stroke of a sleeve")
	flags.TextVar(&in.one.Friction, "friction", unit.Band[unit.Force]{Least: 800 * unit.PoundForce, Nominal: 1000 * unit.PoundForce, Greatest: 1200 * unit.PoundForce}, "friction: force that moves a sleeve with no differential across it")
	flags.TextVar(&in.one.Across, "across", unit.Band[unit.Pressure]{Greatest: 1500 * unit.PSI, Nominal: 750 * unit.PSI}, "differential across the sleeves")
	flags.TextVar(&in.one.PerDifferential, "per-differential", 0.2*unit.SquareInch, "friction added per differential")
	flags.TextVar(&in.line.OD, "od", 0.25*unit.Inch, "outside diameter of the lines")
	flags.TextVar(&in.line.Wall, "wall", 0.049*unit.Inch, "wall of the lines")
	flags.TextVar(&in.line.Young, "young", 28e6*unit.PSI, "Young's modulus of the lines")
	flags.TextVar(&in.liquid.Density, "density", 7.26*unit.PoundPerGallon, "density of the control fluid")
	flags.TextVar(&in.liquid.Viscosity, "viscosity", 10*unit.Centipoise, "viscosity of the control fluid")
	flags.TextVar(&in.liquid.Compressibility, "compressibility", 3.8e-6*unit.PerPSI, "compressibility of the control fluid")
	flags.TextVar(&in.pump, "limit", 5000*unit.PSI, "greatest panel pressure: the lesser of pump and lines")
	flags.BoolVar(&in.single, "single", false, "move one sleeve at a time, so that the returns tell which moved")
	flags.BoolVar(&in.table, "combinations", false, "also list every combination of vented and pressured lines, from where the sleeves are now")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		in.lengths = slices.Clone(in.depths)
		depths := make([]*unit.Length, len(in.depths))
		for i := range in.depths {
			depths[i] = &in.depths[i]
		}
		if err := well.Vertical(depths...); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
