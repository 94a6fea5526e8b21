package display

import "completion.example/hydrostatics/unit"

// measure returns the value of a quantity in SI, and what it is usually for; ok is
// false for what is no quantity.
func measure(v any) (si float64, usual Purpose, ok bool) {
	switch v := v.(type) {
	case unit.Length:
		return float64(v), Depth, true
	case unit.Pressure:
		return float64(v), Pressure, true
	case unit.Volume:
		return float64(v), Volume, true
	case unit.FlowRate:
		return float64(v), PumpRate, true
	case unit.Area:
		return float64(v), Area, true
	case unit.Velocity:
		return float64(v), Velocity, true
	case unit.Angle:
		return float64(v), Angle, true
	case unit.Curvature:
		return float64(v), Dogleg, true
	case unit.Mass:
		return float64(v), Mass, true
	case unit.MassRate:
		return float64(v), MassRate, true
	case unit.Force:
		return float64(v), Force, true
	case unit.WeightPerLength:
		return float64(v), PipeWeight, true
	case unit.Density:
		return float64(v), Density, true
	case unit.Gradient:
		return float64(v), Gradient, true
	case unit.Temperature:
		return v.Kelvin(), Temperature, true
	case unit.TemperatureDifference:
		return float64(v), TemperatureDifference, true
	case unit.TemperatureGradient:
		return float64(v), TemperatureGradient, true
	case unit.ShearRate:
		return float64(v), ShearRate, true
	case unit.Viscosity:
		return float64(v), Viscosity, true
	case unit.Consistency:
		return float64(v), Consistency, true
	case unit.Compressibility:
		return float64(v), Compressibility, true
	case unit.Expansivity:
		return float64(v), Expansivity, true
	case unit.Power:
		return float64(v), Power, true
	case unit.Torque:
		return float64(v), Torque, true
	case unit.SecondMoment:
		return float64(v), SecondMoment, true
	case unit.Permeability:
		return float64(v), Permeability, true
	case unit.FlowCoefficient:
		return float64(v), FlowCoefficient, true
	case unit.SpecificHeat:
		return float64(v), SpecificHeat, true
	case unit.Conductivity:
		return float64(v), Conductivity, true
	case unit.HeatTransfer:
		return float64(v), HeatTransfer, true
	case unit.Diffusivity:
		return float64(v), Diffusivity, true
	case unit.ProductivityIndex:
		return float64(v), ProductivityIndex, true
	}
	return 0, Usual, false
}

// zeros are the zero points, in kelvin, of the scales of temperature.
var zeros = map[string]float64{
	"degF": unit.Fahrenheit(0).Kelvin(), "degC": unit.Celsius(0).Kelvin(),
}

// count returns v in a unit that its purpose is shown in; a purpose of another
// quantity is taken for the usual one.
func (s System) count(v any, p Purpose) (n float64, c choice, si float64, ok bool) {
	si, usual, ok := measure(v)
	if !ok {
		return 0, choice{}, 0, false
	}
	if p >= purposes || rows[p].quantity != rows[usual].quantity {
		p = usual
	}
	c = s.choice(p)
	if usual == Temperature {
		return (si - zeros[c.symbol]) / c.size, c, si, true
	}
	return si / c.size, c, si, true
}
