package unit

// Spellings of the trade, by quantity. Those that stand for two things are in
// twofold instead.
//
// SG is relative to the water of 1 g/cm³ that the mud balance is set by (API RP
// 13B-1). A gradient given for a density is ρg with the standard g. Barrels,
// cubic feet and cubic metres marked as standard or stock-tank are volumes at
// the standard conditions of whoever states them.
var spellings = map[string][]spelling{
	lengthUnits.quantity: {
		{symbol: "in", texts: []string{`"`, "in.", "inch", "inches"}},
		{symbol: "ft", texts: []string{"'", "ft.", "foot", "feet"}},
		{symbol: "m", texts: []string{"metre", "metres", "meter", "meters"}},
	},
	areaUnits.quantity: {
		{symbol: "in2", texts: []string{"sq in", "sq.in", "sq.in.", "sqin"}},
		{symbol: "ft2", texts: []string{"sq ft", "sq.ft", "sq.ft.", "sqft"}},
		{symbol: "L/m", texts: []string{"l/m"}},
		{factor: float64(Gallon) / float64(Foot), texts: []string{"gal/ft"}},
		{factor: float64(CubicFoot) / float64(Foot), texts: []string{"ft3/ft"}},
		{factor: 1, texts: []string{"m3/m"}},
	},
	volumeUnits.quantity: {
		{symbol: "bbl", texts: []string{"bbls", "stb", "STB", "BBL"}},
		{symbol: "gal", texts: []string{"gals", "US gal", "USgal"}},
		{symbol: "ft3", texts: []string{"cu ft", "cu.ft", "cu.ft.", "cuft", "scf"}},
		{symbol: "in3", texts: []string{"cu in", "cu.in", "cu.in.", "cuin"}},
		{symbol: "m3", texts: []string{"Sm3", "sm3"}},
		{symbol: "L", texts: []string{"l", "dm3", "litre", "litres", "liter", "liters"}},
		{symbol: "mL", texts: []string{"ml", "cm3", "cc"}},
		{factor: 1e3 * float64(CubicFoot), texts: []string{"Mscf", "Mcf", "MSCF", "MCF"}},
		{factor: 1e6 * float64(CubicFoot), texts: []string{"MMscf", "MMcf", "MMSCF", "MMCF"}},
	},
	angleUnits.quantity: {
		{symbol: "deg", texts: []string{"degree", "degrees"}},
	},
	curvatureUnits.quantity: {
		{symbol: "deg/100ft", texts: []string{"deg/100 ft", "deg/100'"}},
		{symbol: "deg/30m", texts: []string{"deg/30 m"}},
		{factor: float64(Degree) / 10, texts: []string{"deg/10m", "deg/10 m"}},
	},
	massUnits.quantity: {
		{symbol: "lb", texts: []string{"lbs", "lbm"}},
		{symbol: "t", texts: []string{"te", "tonne", "tonnes"}},
		{factor: 1e3 * float64(Pound), texts: []string{"klb", "klbs", "klbm"}},
	},
	massRateUnits.quantity: {
		{symbol: "kg/h", texts: []string{"kg/hr"}},
		{symbol: "lb/h", texts: []string{"lb/hr", "lbm/h", "lbm/hr"}},
		{symbol: "lb/min", texts: []string{"lbm/min"}},
		{symbol: "lb/s", texts: []string{"lbm/s"}},
	},
	forceUnits.quantity: {
		{symbol: "lbf", texts: []string{"lb", "lbs"}},
		{symbol: "klbf", texts: []string{"klb", "klbs", "kip", "kips"}},
		{factor: 1e3 * float64(KilogramForce), texts: []string{"t", "te", "tf", "tonne", "tonnes"}},
	},
	weightPerLengthUnits.quantity: {
		{symbol: "lb/ft", texts: []string{"ppf", "lbf/ft", "lbs/ft", "lbm/ft", "lb/foot"}},
		{symbol: "kg/m", texts: []string{"kgf/m"}},
		{factor: 10, texts: []string{"daN/m"}},
		{factor: 1e3, texts: []string{"kN/m"}},
	},
	pressureUnits.quantity: {
		{symbol: "psi", gauge: true, texts: []string{"psig", "psi(g)", "psi g"}},
		{symbol: "bar", gauge: true, texts: []string{"barg", "bar(g)", "bar g"}},
		{symbol: "kPa", gauge: true, texts: []string{"kPag", "kPa(g)", "kPa g"}},
		{symbol: "MPa", gauge: true, texts: []string{"MPag", "MPa(g)", "MPa g"}},
		{symbol: "psi", offset: float64(Atmosphere), texts: []string{"psia", "psi(a)", "psi a"}},
		{symbol: "bar", offset: float64(Atmosphere), texts: []string{"bara", "bar(a)", "bar a"}},
		{symbol: "kPa", offset: float64(Atmosphere), texts: []string{"kPaa", "kPa(a)", "kPa a"}},
		{symbol: "MPa", offset: float64(Atmosphere), texts: []string{"MPaa", "MPa(a)", "MPa a"}},
		{symbol: "psi", texts: []string{"lbf/in2", "lb/in2"}},
		{symbol: "ksi", texts: []string{"kpsi"}},
		{symbol: "kgf/cm2", texts: []string{"kg/cm2"}},
		{symbol: "lbf/100ft2", texts: []string{"lb/100ft2", "lb/100 ft2", "lbf/100 ft2", "lbs/100ft2"}},
		{symbol: "MPa", texts: []string{"N/mm2"}},
	},
	densityUnits.quantity: {
		{symbol: "lb/gal", texts: []string{"ppg", "lbm/gal", "lb/US gal", "lb/USgal"}},
		{symbol: "lb/ft3", texts: []string{"pcf", "lbm/ft3", "lb/cu ft"}},
		{symbol: "lb/bbl", texts: []string{"lbm/bbl"}},
		{symbol: "g/cm3", texts: []string{"SG", "sg", "g/cc", "g/mL", "g/ml", "kg/L", "kg/l", "t/m3", "kg/dm3"}},
		{factor: float64(PSIPerFoot) / standardGravity, texts: []string{"psi/ft"}},
		{factor: float64(KilopascalPerMetre) / standardGravity, texts: []string{"kPa/m"}},
		{factor: float64(BarPerMetre) / standardGravity, texts: []string{"bar/m"}},
		{factor: float64(BarPerMetre) / 10 / standardGravity, texts: []string{"bar/10m", "bar/10 m"}},
	},
	gradientUnits.quantity: {
		{symbol: "kPa/m", texts: []string{"MPa/km"}},
		{factor: float64(BarPerMetre) / 10, texts: []string{"bar/10m", "bar/10 m"}},
		{factor: float64(PSIPerFoot) / 100, texts: []string{"psi/100ft", "psi/100 ft"}},
	},
	temperatureUnits.quantity: {
		{symbol: "degC", texts: []string{"deg C"}},
		{symbol: "degF", texts: []string{"deg F"}},
	},
	temperatureDifferenceUnits.quantity: {
		{symbol: "degC", texts: []string{"deg C"}},
		{symbol: "degF", texts: []string{"deg F"}},
	},
	temperatureGradientUnits.quantity: {
		{symbol: "degF/100ft", texts: []string{"degF/100 ft"}},
		{symbol: "degC/100m", texts: []string{"degC/100 m", "K/100m"}},
		{factor: 1e-3, texts: []string{"degC/km", "K/km"}},
		{factor: 1, texts: []string{"degC/m"}},
	},
	flowRateUnits.quantity: {
		{symbol: "bbl/d", texts: []string{"bpd", "BPD", "b/d", "bbl/day", "stb/d", "STB/d", "stb/day", "STB/day", "bopd", "bwpd", "blpd"}},
		{symbol: "bbl/min", texts: []string{"bpm", "BPM"}},
		{symbol: "gal/min", texts: []string{"gpm", "GPM", "USgpm"}},
		{symbol: "L/min", texts: []string{"l/min", "lpm", "LPM", "dm3/min"}},
		{symbol: "m3/h", texts: []string{"m3/hr"}},
		{symbol: "m3/d", texts: []string{"m3/day", "Sm3/d", "sm3/d", "Sm3/day"}},
		{symbol: "ft3/min", texts: []string{"cfm", "scfm", "scf/min"}},
		{symbol: "cm3/min", texts: []string{"mL/min", "ml/min", "cc/min"}},
		{symbol: "Mcf/d", texts: []string{"Mscf/d", "Mscf/day", "Mcf/day", "Mscfd", "Mcfd", "MSCF/D", "MSCFD", "MCFD"}},
		{factor: float64(ThousandCubicFeetPerDay) * 1e3, texts: []string{"MMscf/d", "MMscf/day", "MMcf/d", "MMcf/day", "MMscfd", "MMcfd", "MMSCF/D", "MMSCFD", "MMCFD"}},
		{factor: float64(ThousandCubicFeetPerDay) / 1e3, texts: []string{"scf/d", "scf/day", "ft3/d", "scfd"}},
		{factor: float64(BarrelPerMinute) / 60, texts: []string{"bbl/h", "bbl/hr", "bph", "BPH"}},
		{factor: float64(BarrelPerDay) * 1e3, texts: []string{"Mstb/d", "Mbbl/d", "MSTB/d", "Mstb/day"}},
		{factor: float64(LitrePerMinute) * 60, texts: []string{"L/s", "l/s"}},
	},
	velocityUnits.quantity: {
		{symbol: "ft/min", texts: []string{"fpm"}},
		{symbol: "ft/s", texts: []string{"fps", "ft/sec"}},
	},
	viscosityUnits.quantity: {
		{symbol: "cP", texts: []string{"cp", "cps"}},
		{symbol: "mPa.s", texts: []string{"mPas", "mPa s"}},
		{symbol: "Pa.s", texts: []string{"Pas", "Pa s"}},
	},
	compressibilityUnits.quantity: {
		{symbol: "1/psi", texts: []string{"psi-1", "psi^-1", "/psi", "sip"}},
		{symbol: "1/bar", texts: []string{"bar-1", "bar^-1", "/bar"}},
		{symbol: "1/kPa", texts: []string{"kPa-1", "kPa^-1"}},
		{symbol: "1/MPa", texts: []string{"MPa-1", "MPa^-1"}},
		{symbol: "1/Pa", texts: []string{"Pa-1", "Pa^-1"}},
		{factor: 1e-6 * float64(PerPSI), texts: []string{"microsip", "usip"}},
	},
	expansivityUnits.quantity: {
		{symbol: "1/degC", texts: []string{"degC-1", "degC^-1", "/degC", "in/in/degC", "m/m/degC"}},
		{symbol: "1/degF", texts: []string{"degF-1", "degF^-1", "/degF", "in/in/degF", "in/in-degF"}},
		{symbol: "1/K", texts: []string{"K-1", "K^-1", "/K", "m/m/K"}},
	},
	torqueUnits.quantity: {
		{symbol: "ft-lbf", texts: []string{"ft-lb", "ft-lbs", "ft.lbf", "ft.lb", "ft lbf", "ft lb", "lbf-ft", "lb-ft", "lbf.ft", "lbf ft"}},
		{symbol: "N.m", texts: []string{"Nm", "N m"}},
		{symbol: "kN.m", texts: []string{"kNm", "kN m"}},
		{factor: 1e3 * float64(FootPoundForce), texts: []string{"kft-lbf", "kft-lb", "kft.lbf", "klbf-ft"}},
	},
	permeabilityUnits.quantity: {
		{symbol: "mD", texts: []string{"md"}},
		{symbol: "D", texts: []string{"darcy"}},
	},
	productivityIndexUnits.quantity: {
		{symbol: "bbl/d/psi", texts: []string{"bpd/psi", "stb/d/psi", "STB/d/psi", "stb/day/psi", "bbl/day/psi", "bbl/(d.psi)", "stb/(d.psi)"}},
		{symbol: "m3/d/bar", texts: []string{"Sm3/d/bar", "sm3/d/bar", "m3/day/bar", "m3/(d.bar)", "Sm3/(d.bar)"}},
	},
}

// standardGravity in m/s². Source: 3rd CGPM (1901).
const standardGravity = 9.80665
