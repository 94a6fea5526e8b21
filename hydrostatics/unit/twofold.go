package unit

// twofold holds what the trade writes for two things. It is refused, with both
// readings.
var twofold = map[string]map[string]string{
	massUnits.quantity: {
		"ton": tons, "tons": tons, "T": tons,
		"MT":  "a metric ton or a megatonne; write t",
		"Mlb": thousandOrMillion, "Mlbs": thousandOrMillion,
	},
	forceUnits.quantity: {
		"ton": tons, "tons": tons, "T": tons, "tonf": tons,
		"MT":  "the weight of a metric ton or of a megatonne; write t",
		"Mlb": thousandOrMillion, "Mlbf": thousandOrMillion, "Mlbs": thousandOrMillion,
	},
	pressureUnits.quantity: {
		"Mpsi": thousandOrMillion + ", as moduli have it",
		"at":   "a technical atmosphere, 98.0665 kPa, or a standard one, 101.325 kPa; write kgf/cm2 or atm",
	},
	densityUnits.quantity: {
		"ppb":    "pounds per barrel or parts per billion; write lb/bbl",
		"degAPI": "no multiple of a unit: 141.5/(131.5 + degAPI) is the density relative to water at 60 degF, 0.999016 g/cm3; write g/cm3",
		"API":    "no multiple of a unit: 141.5/(131.5 + degAPI) is the density relative to water at 60 degF, 0.999016 g/cm3; write g/cm3",
	},
	lengthUnits.quantity: {
		"mil":  "a thousandth of an inch or, spoken, a millimetre; write in or mm",
		"mils": "thousandths of an inch or, spoken, millimetres; write in or mm",
	},
	volumeUnits.quantity: {
		"Mm3": thousandOrMillion, "MSm3": thousandOrMillion,
		"Mbbl": thousandOrMillion, "Mstb": thousandOrMillion, "MSTB": thousandOrMillion,
		"Nm3": "a cubic metre at 0 degC or, written loosely, at standard conditions; write m3 with the volume at the conditions that you mean",
		"B":   "a barrel or a billion; write bbl",
	},
	flowRateUnits.quantity: {
		"Mm3/d": thousandOrMillion, "MSm3/d": thousandOrMillion, "Mm3/day": thousandOrMillion, "MSm3/day": thousandOrMillion,
		"mscf/d": "thousand, as M in the trade, or thousandth; write Mscf/d", "mcf/d": "thousand, as M in the trade, or thousandth; write Mcf/d",
		"mscfd": "thousand, as M in the trade, or thousandth; write Mscf/d",
		"Nm3/d": "a cubic metre at 0 degC or, written loosely, at standard conditions; write m3/d at the conditions that you mean",
		"Nm3/h": "a cubic metre at 0 degC or, written loosely, at standard conditions; write m3/h at the conditions that you mean",
	},
	viscosityUnits.quantity: {
		"cSt": "kinematic: times the density it is a viscosity, and only in water's do the two read the same; write cP",
	},
}

const (
	tons              = "a short ton of 2,000 lb, a long ton of 2,240 lb, or a tonne of 1,000 kg; write lb or t"
	thousandOrMillion = "a thousand, as M in the trade, or a million, as M in SI; write the number out"
)
