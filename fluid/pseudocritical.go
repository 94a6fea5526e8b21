package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// PseudoCritical are the critical pressure and temperature that make a gas
// mixture follow the law of corresponding states.
type PseudoCritical struct {
	Pressure    unit.Pressure    `json:"pressure"` // absolute
	Temperature unit.Temperature `json:"temperature"`
}

// Molar masses, kg/mol, and critical points of the gases that a completion
// meets. Source: the reference equations of state of each: methane, Setzmann
// and Wagner (1991); ethane, Bücker and Wagner (2006); propane, Lemmon et al.
// (2009); nitrogen, Span et al. (2000); carbon dioxide, Span and Wagner (1996);
// hydrogen sulphide, Lemmon and Span (2006). Air: 28.9625 g/mol.
type pure struct{ molarMass, pressure, temperature float64 }

var (
	airMolarMass     = 0.0289625
	pureMethane      = pure{0.0160428, 4.5992e6, 190.564}
	pureEthane       = pure{0.0300690, 4.8722e6, 305.322}
	purePropane      = pure{0.0440956, 4.2512e6, 369.89}
	pureNitrogen     = pure{0.0280134, 3.3958e6, 126.192}
	pureCarbonDioxid = pure{0.0440095, 7.3773e6, 304.1282}
	pureHydrogenSulf = pure{0.0340809, 9.0000e6, 373.1}
)

// Limits of the sour-gas correction.
const (
	mostCarbonDioxide    = 0.544
	mostHydrogenSulphide = 0.738
)

// WichertAziz corrects pseudo-critical properties for carbon dioxide and
// hydrogen sulphide, whose mole fractions are c and h:
//
//	T' = T − ε,  p' = p·T'/(T + h·(1 − h)·ε)
//	ε = 120·(A^0.9 − A^1.6) + 15·(h^0.5 − h^4) °R,  A = c + h
//
// Range: c ≤ 0.544, h ≤ 0.738, c + h ≤ 1; measured from 154 to 7,026 psia and 40
// to 300 °F. Average error of Z 0.97 %. Without sour gas it changes nothing.
// Outside the fractions' range, and for pseudo-critical properties of no gas (1 Pa
// to 1 GPa, 50 to 1,000 K), it returns a *RangeError.
//
// Source: Wichert and Aziz, Hydrocarbon Processing 51(5), 1972.
func (pc PseudoCritical) WichertAziz(c, h float64) (PseudoCritical, error) {
	const (
		leastPressure, mostPressure = 1 * unit.Pascal, 1000 * unit.Megapascal
		coldest, hottest            = 50.0, 1000.0 // K
	)
	if !within(float64(pc.Pressure), float64(leastPressure), float64(mostPressure)) {
		return PseudoCritical{}, outside("sour-gas correction", "pseudo-critical pressure", pc.Pressure, leastPressure, mostPressure)
	}
	if !within(pc.Temperature.Kelvin(), coldest, hottest) {
		return PseudoCritical{}, outside("sour-gas correction", "pseudo-critical temperature", pc.Temperature, unit.Kelvin(coldest), unit.Kelvin(hottest))
	}
	if !within(c, 0, mostCarbonDioxide) || !within(h, 0, mostHydrogenSulphide) || !within(c+h, 0, 1) {
		return PseudoCritical{}, fault.Join(scope,
			fraction("sour-gas correction", "CarbonDioxide", c, mostCarbonDioxide),
			fraction("sour-gas correction", "HydrogenSulphide", h, mostHydrogenSulphide),
			fraction("sour-gas correction", "sum of both", c+h, 1))
	}
	a := c + h
	if a == 0 {
		return pc, nil
	}
	h2 := h * h
	epsilon := 120*(math.Pow(a, 0.9)-math.Pow(a, 1.6)) + 15*(math.Sqrt(h)-h2*h2)
	T := pc.Temperature.Rankine()
	corrected := T - epsilon
	return PseudoCritical{
		Pressure:    pc.Pressure * unit.Pressure(corrected/(T+h*(1-h)*epsilon)),
		Temperature: unit.Rankine(corrected),
	}, nil
}

// fraction returns an error where x isn't between 0 and greatest.
func fraction(of, name string, x, greatest float64) error {
	if within(x, 0, greatest) {
		return nil
	}
	return outside(of, name, number(x), number(0), number(greatest))
}
