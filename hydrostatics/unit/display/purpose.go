package display

// Purpose is what a value is for. Usual is what its type is most often for.
type Purpose uint8

// Purposes, by quantity. The first of a quantity is its usual one.
const (
	Usual Purpose = iota

	Depth      // along the hole or vertical
	PipeLength // of pipe as tallied, and of what is stabbed or spaced out
	Stroke     // movement, stretch, stroke
	Diameter   // diameters, walls, clearances

	Pressure    // applied, felt, across
	Stress      // stresses and strengths of metal, moduli
	YieldStress // yield points, gels, shear stresses of fluids

	Volume      // pits, pipe and annulus
	SmallVolume // control lines, strokes, bleeds

	PumpRate       // while pumping and circulating
	ProductionRate // of liquid from a zone
	GasRate        // at standard conditions
	SmallRate      // of control lines and leaks

	Area     // pistons, openings
	Capacity // volume per length

	Velocity  // of fluids
	PipeSpeed // running and pulling

	Angle
	Dogleg
	Mass
	MassRate
	Force
	PipeWeight
	Density
	Gradient
	Temperature
	TemperatureDifference
	TemperatureGradient
	ShearRate
	Viscosity
	Consistency
	Compressibility
	Expansivity
	Torque
	Power
	SecondMoment
	Permeability
	FlowCoefficient
	SpecificHeat
	Conductivity
	HeatTransfer
	Diffusivity
	ProductivityIndex

	purposes // how many there are
)

// Implied returns the purpose that a quantity has by the unit it is written in:
// of lengths, feet and metres are depths, inches and millimetres strokes; of
// volumes, gallons and litres are small. It is Usual where the unit says nothing.
func Implied(v any, symbol string) Purpose {
	_, usual, ok := measure(v)
	if !ok {
		return Usual
	}
	return impliedBy(rows[usual].quantity, symbol)
}

func impliedBy(quantity, symbol string) Purpose {
	for column := range 2 {
		for p, r := range rows {
			if r.quantity == quantity && r.choices[column].symbol == symbol {
				return Purpose(p)
			}
		}
	}
	for p, r := range rows {
		if r.quantity != quantity {
			continue
		}
		for _, c := range r.choices {
			if c.symbol == symbol {
				return Purpose(p)
			}
		}
	}
	if quantity == "length" && symbol == "km" { // what a length writes itself in where that is shortest
		return Depth
	}
	return Usual
}
