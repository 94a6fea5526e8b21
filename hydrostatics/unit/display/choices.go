package display

import "completion.example/hydrostatics/unit"

// choice is a unit that a purpose may be shown in.
type choice struct {
	symbol   string
	size     float64
	decimals int // that a reader can use; free is as many as its digits take
}

// free leaves the decimals to the number of digits.
const free = -1

// row is a purpose with its quantity and its units: field first, then SI, then
// those that a plan may be written in. More digits than the usual four may be
// asked for.
type row struct {
	quantity string
	choices  []choice
}

// The units of the systems are common practice on the rig floor; sizes are the
// constants of package unit.
var rows = [purposes]row{
	Depth:      {"length", []choice{{"ft", of(unit.Foot), 1}, {"m", of(unit.Metre), 1}}},
	PipeLength: {"length", []choice{{"ft", of(unit.Foot), 2}, {"m", of(unit.Metre), 2}}},
	Stroke:     {"length", []choice{{"in", of(unit.Inch), 1}, {"mm", of(unit.Millimetre), 0}, {"cm", of(unit.Centimetre), 1}}},
	Diameter:   {"length", []choice{{"in", of(unit.Inch), 3}, {"mm", of(unit.Millimetre), 2}, {"cm", of(unit.Centimetre), 3}}},

	Pressure: {"pressure", []choice{{"psi", of(unit.PSI), 0}, {"bar", of(unit.Bar), 1}, {"kPa", of(unit.Kilopascal), 0}, {"MPa", of(unit.Megapascal), 2},
		{"kgf/cm2", of(unit.KilogramForcePerSquareCentimetre), 1}}},
	Stress:      {"pressure", []choice{{"psi", of(unit.PSI), 0}, {"MPa", of(unit.Megapascal), 1}, {"ksi", of(unit.KSI), 1}}},
	YieldStress: {"pressure", []choice{{"lbf/100ft2", of(unit.PoundForcePer100SquareFeet), 1}, {"Pa", of(unit.Pascal), 1}}},

	Volume:      {"volume", []choice{{"bbl", of(unit.Barrel), 2}, {"m3", of(unit.CubicMetre), 2}, {"ft3", of(unit.CubicFoot), 1}}},
	SmallVolume: {"volume", []choice{{"gal", of(unit.Gallon), 2}, {"L", of(unit.Litre), 2}, {"mL", of(unit.Millilitre), 0}, {"in3", of(unit.CubicInch), 1}}},

	PumpRate: {"flow rate", []choice{{"bbl/min", of(unit.BarrelPerMinute), 2}, {"L/min", of(unit.LitrePerMinute), 0}, {"gal/min", of(unit.GallonPerMinute), 1},
		{"m3/min", of(unit.CubicMetrePerMinute), 3}, {"m3/h", of(unit.CubicMetrePerHour), 1}}},
	ProductionRate: {"flow rate", []choice{{"bbl/d", of(unit.BarrelPerDay), 0}, {"m3/d", of(unit.CubicMetrePerDay), 1}}},
	GasRate: {"flow rate", []choice{{"Mcf/d", of(unit.ThousandCubicFeetPerDay), 0}, {"m3/d", of(unit.CubicMetrePerDay), 0},
		{"MMscf/d", 1e3 * of(unit.ThousandCubicFeetPerDay), 3}}},
	SmallRate: {"flow rate", []choice{{"gal/min", of(unit.GallonPerMinute), 3}, {"L/min", of(unit.LitrePerMinute), 2}, {"cm3/min", of(unit.CubicCentimetrePerMinute), 0},
		{"ft3/min", of(unit.CubicFootPerMinute), 2}}},

	Area:     {"area", []choice{{"in2", of(unit.SquareInch), 3}, {"mm2", of(unit.SquareMillimetre), 0}, {"cm2", of(unit.SquareCentimetre), 2}, {"ft2", of(unit.SquareFoot), 3}}},
	Capacity: {"area", []choice{{"bbl/ft", of(unit.BarrelPerFoot), free}, {"L/m", of(unit.LitrePerMetre), 3}}},

	Velocity:  {"velocity", []choice{{"ft/s", of(unit.FootPerSecond), 2}, {"m/s", of(unit.MetrePerSecond), 3}}},
	PipeSpeed: {"velocity", []choice{{"ft/min", of(unit.FootPerMinute), 0}, {"m/min", of(unit.MetrePerMinute), 1}}},

	Angle:                 {"angle", []choice{{"deg", of(unit.Degree), 2}, {"deg", of(unit.Degree), 2}}},
	Dogleg:                {"curvature", []choice{{"deg/100ft", of(unit.DegreePer100Feet), 2}, {"deg/30m", of(unit.DegreePer30Metres), 2}}},
	Mass:                  {"mass", []choice{{"lb", of(unit.Pound), 0}, {"kg", of(unit.Kilogram), 0}, {"t", of(unit.Tonne), 2}}},
	MassRate:              {"mass rate", []choice{{"lb/s", of(unit.PoundPerSecond), free}, {"kg/s", of(unit.KilogramPerSecond), free}, {"kg/h", of(unit.KilogramPerHour), 0}, {"lb/h", of(unit.PoundPerHour), 0}, {"lb/min", of(unit.PoundPerMinute), free}}},
	Force:                 {"force", []choice{{"lbf", of(unit.PoundForce), 0}, {"kN", of(unit.Kilonewton), 1}, {"klbf", of(unit.Kilopound), 1}, {"daN", of(unit.Decanewton), 0}, {"t", 1e3 * of(unit.KilogramForce), 2}, {"N", of(unit.Newton), 0}}},
	PipeWeight:            {"weight per length", []choice{{"lb/ft", of(unit.PoundPerFoot), 2}, {"kg/m", of(unit.KilogramPerMetre), 2}, {"N/m", of(unit.NewtonPerMetre), 1}}},
	Density:               {"density", []choice{{"lb/gal", of(unit.PoundPerGallon), 2}, {"kg/m3", of(unit.KilogramPerCubicMetre), 0}, {"g/cm3", of(unit.GramPerCubicCentimetre), 3}, {"SG", of(unit.GramPerCubicCentimetre), 3}, {"lb/ft3", of(unit.PoundPerCubicFoot), 1}, {"lb/bbl", of(unit.PoundPerBarrel), 1}}},
	Gradient:              {"pressure gradient", []choice{{"psi/ft", of(unit.PSIPerFoot), 4}, {"kPa/m", of(unit.KilopascalPerMetre), 3}, {"bar/m", of(unit.BarPerMetre), 5}, {"Pa/m", of(unit.PascalPerMetre), 0}}},
	Temperature:           {"temperature", []choice{{"degF", of(unit.FahrenheitDifference), 1}, {"degC", of(unit.CelsiusDifference), 1}, {"K", of(unit.KelvinDifference), 1}, {"degR", of(unit.FahrenheitDifference), 1}}},
	TemperatureDifference: {"temperature difference", []choice{{"degF", of(unit.FahrenheitDifference), 1}, {"degC", of(unit.CelsiusDifference), 1}, {"K", of(unit.KelvinDifference), 1}}},
	TemperatureGradient:   {"temperature gradient", []choice{{"degF/100ft", of(unit.FahrenheitPer100Feet), 3}, {"degC/100m", of(unit.CelsiusPer100Metres), 3}, {"degF/ft", of(unit.FahrenheitPerFoot), free}, {"K/m", of(unit.KelvinPerMetre), free}}},
	ShearRate:             {"shear rate", []choice{{"1/s", of(unit.PerSecond), 1}, {"1/s", of(unit.PerSecond), 1}, {"1/min", of(unit.PerMinute), 0}}},
	Viscosity:             {"viscosity", []choice{{"cP", of(unit.Centipoise), 4}, {"mPa.s", of(unit.MillipascalSecond), 4}, {"Pa.s", of(unit.PascalSecond), free}, {"uPa.s", of(unit.MicropascalSecond), 1}}},
	Consistency:           {"consistency index", []choice{{"lbf.s^n/100ft2", of(unit.PoundForceSecondNPer100SquareFeet), free}, {"Pa.s^n", of(unit.PascalSecondN), free}, {"mPa.s^n", of(unit.MillipascalSecondN), free}, {"dyn.s^n/cm2", of(unit.DyneSecondNPerSquareCentimetre), free}}},
	Compressibility:       {"compressibility", []choice{{"1/psi", of(unit.PerPSI), free}, {"1/bar", of(unit.PerBar), free}, {"1/Pa", of(unit.PerPascal), free}, {"1/kPa", of(unit.PerKilopascal), free}, {"1/MPa", of(unit.PerMegapascal), free}}},
	Expansivity:           {"expansivity", []choice{{"1/degF", of(unit.PerFahrenheit), free}, {"1/degC", of(unit.PerCelsius), free}, {"1/K", of(unit.PerKelvin), free}}},
	Torque:                {"torque", []choice{{"ft-lbf", of(unit.FootPoundForce), 0}, {"N.m", of(unit.NewtonMetre), 0}, {"kN.m", of(unit.KilonewtonMetre), 2}}},
	Power:                 {"power", []choice{{"hp", of(unit.Horsepower), 0}, {"kW", of(unit.Kilowatt), 1}, {"kW", of(unit.Kilowatt), 1}}},
	SecondMoment:          {"second moment of area", []choice{{"in4", of(unit.InchToTheFourth), 3}, {"cm4", of(unit.CentimetreToTheFourth), 2}, {"m4", of(unit.MetreToTheFourth), free}}},
	Permeability:          {"permeability", []choice{{"mD", of(unit.Millidarcy), free}, {"mD", of(unit.Millidarcy), free}, {"D", of(unit.Darcy), free}, {"m2", of(unit.PermeabilitySI), free}}},
	FlowCoefficient:       {"flow coefficient", []choice{{"Cv", of(unit.Cv), free}, {"Kv", of(unit.Kv), free}, {"m2", of(unit.Av), free}}},
	SpecificHeat:          {"specific heat", []choice{{"Btu/lb/degF", of(unit.BtuPerPoundFahrenheit), free}, {"kJ/kg/K", of(unit.KilojoulePerKilogramKelvin), free}, {"J/kg/K", of(unit.JoulePerKilogramKelvin), 0}}},
	Conductivity:          {"thermal conductivity", []choice{{"Btu/h/ft/degF", of(unit.BtuPerHourFootFahrenheit), free}, {"W/m/K", of(unit.WattPerMetreKelvin), free}}},
	HeatTransfer:          {"heat transfer coefficient", []choice{{"Btu/h/ft2/degF", of(unit.BtuPerHourSquareFootFahrenheit), free}, {"W/m2/K", of(unit.WattPerSquareMetreKelvin), free}}},
	Diffusivity:           {"thermal diffusivity", []choice{{"ft2/d", of(unit.SquareFootPerDay), free}, {"mm2/s", of(unit.SquareMillimetrePerSecond), free}, {"m2/s", of(unit.SquareMetrePerSecond), free}, {"ft2/h", of(unit.SquareFootPerHour), free}}},
	ProductivityIndex:     {"productivity index", []choice{{"bbl/d/psi", of(unit.BarrelPerDayPSI), free}, {"m3/d/bar", of(unit.CubicMetrePerDayBar), free}}},
}

func of[Q unit.Scalar](q Q) float64 { return float64(q) }
