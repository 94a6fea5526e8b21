package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// standardGravity is g, m/s². Source: 3rd CGPM (1901); exact.
const standardGravity = 9.80665

// AverageGasColumn is a column of gas taken at one mean temperature and one mean
// deviation factor, for a check by hand:
//
//	pb = pt·exp(γ·Ma·g·H/(Z·R·T))
//
//	pt, pb  pressure at the top and bottom, absolute
//	γ       gravity to air, Ma its molar mass
//	H       vertical height
//	Z, T    mean deviation factor and temperature
//
// In field units γ·H/(53.35·Z·T) with ft and °R. Where Z and T change along the
// column it is off by a per cent or so: a Gas in a column is not. Sign: going down
// raises pressure, and a negative height goes up. NaN in, NaN out.
//
// Range: Z and temperature above zero, not checked: at zero nothing finite
// comes out.
//
// Source: the real-gas law at constant Z and T; Well Control for Completions and
// Interventions (2018), pp. 31–33.
type AverageGasColumn struct {
	Gravity     float64          `json:"gravity"`
	Z           float64          `json:"z"`
	Temperature unit.Temperature `json:"temperature"`
	Height      unit.Length      `json:"height"`
}

// Factor returns pb/pt.
//
// Source: the barometric formula with mean Z and T, as AverageGasColumn says.
func (c AverageGasColumn) Factor() float64 {
	return math.Exp(c.Gravity * airMolarMass * standardGravity * float64(c.Height) / (c.Z * gasConstant * c.Temperature.Kelvin()))
}

// Bottom returns the gauge pressure at the bottom for one at the top.
//
//	pb = (pt + pa)·Factor − pa
//
// Range: any gauge pressure at the top; the column's as AverageGasColumn says.
//
// Source: Factor; pa is the standard atmosphere.
func (c AverageGasColumn) Bottom(top unit.Pressure) unit.Pressure {
	return gauge(absolute(top) * c.Factor())
}

// Steps shows the working for a gauge pressure at the top.
func (c AverageGasColumn) Steps(top unit.Pressure) []working.Step {
	return []working.Step{
		{Name: "factor of the gas column", Symbol: "f", Equation: "exp(γ*Ma*g*H/(Z*R*T))",
			Inputs: []working.Input{
				{Symbol: "γ", Value: working.Number(c.Gravity)}, {Symbol: "Ma", Value: working.Number(airMolarMass)},
				{Symbol: "H", Value: working.Of(c.Height)}, {Symbol: "Z", Value: working.Number(c.Z)},
				{Symbol: "R", Value: working.Number(gasConstant)}, {Symbol: "T", Value: working.Temperature(c.Temperature)},
			},
			Value: working.Number(c.Factor()), Source: "real-gas law at mean Z and T"},
		{Name: "pressure at the bottom", Symbol: "pb", Equation: "(pt+pa)*f-pa",
			Inputs: []working.Input{
				{Symbol: "pt", Value: working.Of(top)}, {Symbol: "pa", Value: working.Of(unit.Atmosphere)}, {Symbol: "f", Value: working.Number(c.Factor())},
			},
			Value: working.Of(c.Bottom(top)), Source: "gauge to absolute and back"},
	}
}
