// Commingle tells what zones give when they flow together through their chokes.
package main

import (
	"errors"
	"flag"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
)

var command = calculator.Command{
	Name:     "commingle",
	Question: "what does each zone give when they flow together through their chokes, and does one of them take?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

// inputs are the flags.
type inputs struct {
	zones         zones
	chokes, table string // files
	between       production.Interval
	tubing        production.Tubing
	shut          bool
	search, split string
	water         float64
	noCrossflow   bool
}

// positions is the choke of the demo, invented: shut, four steps, open.
const positions = `position,travel,coefficient
shut,0,0 Cv
1,0.2,1.5 Cv
2,0.4,3 Cv
3,0.6,6 Cv
4,0.8,12 Cv
open,1,30 Cv
`

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{zones: demo()}
	flags.Var(&in.zones, "zone", "a `zone`, from the bottom up; give the flag once for each: name, depth, pr, J, pb, cut, density, B, choke=position; of gas name, depth, pr, AOF, n, gravity, T, Z, k (ratio of specific heats), xT, choke")
	flags.StringVar(&in.chokes, "positions", "", "CSV `file` of the positions of every zone's choke; none takes the built-in, invented one")
	flags.TextVar(&in.between.Density, "between", 7.2*unit.PoundPerGallon, "density in the tubing between the zones")
	flags.TextVar(&in.between.Loss.At, "at", 5000*unit.BarrelPerDay, "rate at which the losses are told")
	flags.TextVar(&in.between.Loss.Turbulent, "lossbetween", 10*unit.PSI, "friction between two zones at that rate")
	flags.TextVar(&in.tubing.Loss.Turbulent, "loss", 250*unit.PSI, "friction from the topmost zone to surface at that rate")
	flags.TextVar(&in.tubing.Surface, "wellhead", 200*unit.PSI, "pressure held at surface")
	flags.TextVar(&in.tubing.Density, "density", 6.0*unit.PoundPerGallon, "density in the tubing to surface")
	flags.StringVar(&in.table, "outflow", "", "CSV `file` of rate,pressure at the topmost zone, instead of the tubing to surface")
	flags.BoolVar(&in.shut, "shut", false, "shut the well in at surface")
	flags.StringVar(&in.search, "search", "", "search the positions that exist: most (rate), split or water")
	flags.StringVar(&in.split, "split", "1:1", "wanted split between the zones, from the bottom up; for -search split")
	flags.Float64Var(&in.water, "water", 0.3, "greatest water cut; for -search water")
	flags.BoolVar(&in.noCrossflow, "nocrossflow", false, "leave out settings in which a zone takes fluid")
	return func() (calculator.Answer, error) {
		well, at, err := in.well()
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		network, err := well.Prepare()
		if err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		return in.answer(well, network, at)
	}
}

// well puts the flags together; at holds the choke positions asked for.
func (in inputs) well() (w production.Well, at []int, err error) {
	table, err := read(in.chokes, positions, choke.ReadTable)
	faults := []error{err}
	for _, z := range in.zones.list {
		z.Zone.Chokes, z.Zone.Above = table, in.between
		w.Zones = append(w.Zones, z.Zone)
		i := table.Index(z.choke)
		if i < 0 && table != nil {
			faults = append(faults, fmt.Errorf("zone %q: its choke has no position %q", z.Name, z.choke))
		}
		at = append(at, i)
	}
	in.tubing.Loss.At = in.between.Loss.At
	if len(w.Zones) > 0 {
		in.tubing.Height = w.Zones[len(w.Zones)-1].Depth
	}
	w.Outflow = in.tubing
	if in.table != "" {
		w.Outflow, err = read(in.table, "", production.ReadOutflowTable)
		faults = append(faults, err)
	}
	if in.shut {
		w.Outflow = production.FixedRate{}
	}
	return w, at, errors.Join(faults...)
}
