// Package envelope holds loads against what a packer bears, its polygon given or built
// from the ratings of its parts.
package envelope

import (
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "envelope",
	Question: "does the packer hold its loads, by what margin, and to what can it be tested from above and from below?",
	Setup:    setup,
	Picture:  true,
}

// inputs are the flags.
type inputs struct {
	units        *calculator.Units
	file, loads  string
	ratings      packer.Ratings
	seat         packer.Seat
	below, above unit.Pressure
	tubing       unit.Force
	hand         float64
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in inputs
	flags.StringVar(&in.file, "polygon", "", "JSON `file` of the envelope's corners; the ratings are then not used")
	flags.StringVar(&in.loads, "loads", "", "JSON `file` with a list of name, differential and axial")
	r := &in.ratings
	flags.TextVar(&r.FromBelow, "from-below", 7500*unit.PSI, "differential that the element holds from below")
	flags.TextVar(&r.FromAbove, "from-above", 6000*unit.PSI, "differential that the element holds from above")
	flags.TextVar(&r.Tension, "mandrel-tension", 150*unit.Kilopound, "pull of the tubing that the mandrel bears")
	flags.TextVar(&r.Compression, "mandrel-compression", 100*unit.Kilopound, "set-down of the tubing that the mandrel bears")
	flags.TextVar(&r.Up, "slips-up", 300*unit.Kilopound, "force on the casing that the slips bear, up")
	flags.TextVar(&r.Down, "slips-down", 250*unit.Kilopound, "force on the casing that the slips bear, down")
	flags.TextVar(&in.seat.Casing, "casing-id", 8.535*unit.Inch, "bore of the casing")
	flags.TextVar(&in.seat.Bore, "bore", 4.75*unit.Inch, "seal bore of the packer")
	flags.TextVar(&in.below, "below", 6500*unit.PSI, "pressure below the packer")
	flags.TextVar(&in.above, "above", 3500*unit.PSI, "pressure above the packer")
	flags.TextVar(&in.tubing, "packer-force", 75*unit.Kilopound, "force of the tubing on the packer, positive where it pulls up")
	flags.Float64Var(&in.hand, "in-hand", 0.1, "share of a test pressure to keep in hand")
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) { return in.answer() }
}
