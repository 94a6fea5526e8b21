// Package isolation tells what surface pressure moves an isolation valve, after everything
// that it has seen before.
package isolation

import (
	"completion.example/examples/internal/wellpath"
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "isolation",
	Question: "what surface pressure moves an isolation valve, and may it have moved before?",
	Setup:    setup,
}

type input struct {
	units           *calculator.Units
	valve           valve.IsolationValve
	tubing, annulus unit.Density
	depth           unit.Length
	off             unit.Pressure
	surface         valve.SurfaceRange
	hold            unit.Band[unit.Pressure]
	earlier         ledger
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{earlier: ledger{{"tubing test", 2000 * unit.PSI}, {"packer setting", 3000 * unit.PSI}}}
	flags.TextVar(&in.valve.Kind, "kind", valve.OpensAtBleedOff, "opens under pressure, opens at bleed-off, or opens after cycles")
	flags.TextVar(&in.valve.Unlock, "unlock", unit.Band[unit.Pressure]{Least: 3206 * unit.PSI, Nominal: 3375 * unit.PSI, Greatest: 3544 * unit.PSI}, "differential that opens, unlocks or counts")
	flags.TextVar(&in.valve.Bleed, "bleed", unit.Band[unit.Pressure]{Least: 400 * unit.PSI, Nominal: 500 * unit.PSI, Greatest: 600 * unit.PSI}, "differential at which it opens or re-arms when bled off")
	flags.IntVar(&in.valve.Cycles, "cycles", 3, "number of cycles, where it counts them")
	flags.TextVar(&in.tubing, "tubing-fluid", 8.8*unit.PoundPerGallon, "density of the fluid in the tubing, where the pressure is applied")
	flags.TextVar(&in.annulus, "annulus-fluid", 9.5*unit.PoundPerGallon, "density of the fluid in the annulus, or whatever is on the other side")
	flags.TextVar(&in.depth, "depth", 9000*unit.Foot, "true vertical depth of the valve")
	flags.TextVar(&in.off, "uncertainty", 50*unit.PSI, "of each column's pressure at the valve")
	flags.TextVar(&in.surface.Greatest, "limit", 5000*unit.PSI, "greatest surface pressure")
	flags.TextVar(&in.hold, "hold", unit.Band[unit.Pressure]{Least: 4275 * unit.PSI, Nominal: 4500 * unit.PSI, Greatest: 4725 * unit.PSI}, "differential at the same depth that must not be reached, of another device")
	flags.Var(&in.earlier, "earlier", "surface pressures reached before, each bled off again")
	well := wellpath.Flag(flags)
	in.units = calculator.UnitsOf(flags)
	return func() (calculator.Answer, error) {
		if err := well.Vertical(&in.depth); err != nil {
			return calculator.Answer{}, err
		}
		a, err := in.answer()
		well.Tell(&a)
		return a, err
	}
}
