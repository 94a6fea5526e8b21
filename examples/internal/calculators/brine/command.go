// Package brine tells the density of a clear brine in the well, what to mix at surface, how
// to weight it up or cut it back, and where it crystallises.
package brine

import (
	"flag"
	"fmt"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// Command is the calculator.
var Command = calculator.Command{
	Name:     "brine",
	Question: "how dense is a brine in the well, what weight is mixed at surface, what brings it there, and when does it crystallise?",
	Setup:    setup,
}

// input is a brine and its well; the defaults are the worked example of a handbook.
type input struct {
	at70F, wanted, with unit.Density
	system              fluid.System
	table               string
	alpha               unit.Expansivity
	beta                unit.Compressibility
	salt                string
	surface, bottom     unit.Temperature
	pressure            unit.Pressure
	volume              unit.Volume
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in input
	flags.TextVar(&in.at70F, "density", 9.5*unit.PoundPerGallon, "density at 70 degF and atmospheric pressure")
	flags.StringVar(&in.table, "coefficients", "bridges", "coefficients: krook-boyce, bridges, or own (by -alpha and -beta)")
	flags.TextVar(&in.system, "system", fluid.SystemNaCl, "salts of the brine, for the tables: NaCl, CaCl2, NaBr, CaBr2, CaCl2/CaBr2, ZnBr2/CaBr2/CaCl2, ZnBr2/CaBr2")
	flags.TextVar(&in.alpha, "alpha", unit.Expansivity(0), "own thermal expansion of volume, such as 2.5e-4 1/degF")
	flags.TextVar(&in.beta, "beta", unit.Compressibility(0), "own compressibility, such as 2e-6 1/psi")
	flags.TextVar(&in.surface, "surface-temperature", unit.Fahrenheit(80), "temperature at surface")
	flags.TextVar(&in.bottom, "bottom-temperature", unit.Fahrenheit(260), "temperature at the bottom of the well")
	flags.TextVar(&in.pressure, "bottom-pressure", 4940*unit.PSI, "hydrostatic pressure at the bottom of the well")
	flags.TextVar(&in.wanted, "wanted-density", 9.5*unit.PoundPerGallon, "mean density wanted in the well")
	flags.TextVar(&in.volume, "volume", 200*unit.Barrel, "volume of brine in the pits")
	flags.TextVar(&in.with, "with", unit.Density(0), "density of a fluid to bring it to weight with; 0 lb/gal is none")
	flags.StringVar(&in.salt, "salt", "NaCl", "salt to bring it to weight with, and whose crystallisation is asked: NaCl, KCl, NaBr, CaCl2, MgCl2, sodium formate, potassium formate; none")
	return func() (calculator.Answer, error) { return answer(in) }
}

func (in input) brine() (fluid.Brine, error) {
	switch in.table {
	case "krook-boyce":
		return fluid.KrookBoyce(in.system, in.at70F)
	case "bridges":
		return fluid.Bridges(in.system, in.at70F)
	case "own":
		return fluid.Brine{At70F: in.at70F, Expansion: in.alpha, Compression: in.beta}, nil
	}
	return fluid.Brine{}, fmt.Errorf("table is %q; there are krook-boyce, bridges and own", in.table)
}
