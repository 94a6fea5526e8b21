// Package practice holds the rounded conversion factors that the trade works with,
// beside the exact ones: what 0.052 and its like cost.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package practice

import (
	"math"
	"strconv"

	"completion.example/hydrostatics/unit"
)

// Factor is a conversion as the trade writes it: a number of From, times the
// factor (or divided by it), is the number of To.
type Factor struct {
	Quantity string `json:"quantity"` // as package unit names it
	From     string `json:"from"`
	To       string `json:"to"`
	Written  string `json:"written"` // the factor, as it is written
	Divides  bool   `json:"divides"` // the number is divided by it
	Source   string `json:"source"`
}

// common is what has no one source.
const common = "common practice"

var factors = []Factor{
	{"density", "lb/gal", "psi/ft", "0.052", false, "common practice; Lapeyrouse, Formulas and Calculations, has it throughout"},
	{"density", "lb/gal", "psi/ft", "19.25", true, common},
	{"density", "lb/gal", "g/cm3", "8.33", true, common + "; water at about 70 degF"},
	{"density", "lb/gal", "g/cm3", "8.34", true, common},
	{"density", "lb/gal", "g/cm3", "8.345", true, common},
	{"density", "lb/gal", "kg/m3", "120", false, common},
	{"density", "lb/gal", "kg/m3", "119.8", false, common},
	{"density", "lb/gal", "lb/ft3", "7.48", false, common},
	{"density", "g/cm3", "psi/ft", "0.433", false, common},
	{"density", "lb/ft3", "psi/ft", "144", true, common + "; a pound weighs a pound-force, exact"},
	{"density", "kg/m3", "kPa/m", "0.00981", false, common},
	{"density", "g/cm3", "bar/10m", "0.981", false, common},
	{"pressure", "bar", "psi", "14.5", false, common},
	{"pressure", "kPa", "psi", "6.895", true, common},
	{"pressure", "kPa", "psi", "0.145", false, common},
	{"pressure", "MPa", "psi", "145", false, common},
	{"pressure", "kgf/cm2", "psi", "14.2", false, common},
	{"pressure", "atm", "psi", "14.7", false, common},
	{"pressure gradient", "psi/ft", "kPa/m", "22.62", false, common},
	{"pressure gradient", "psi/ft", "kPa/m", "22.6", false, common},
	{"length", "m", "ft", "3.28", false, common},
	{"length", "m", "ft", "3.281", false, common},
	{"length", "ft", "m", "0.3048", false, "exact; international foot, 1959"},
	{"length", "in", "mm", "25.4", false, "exact; international inch, 1959"},
	{"volume", "bbl", "gal", "42", false, "exact"},
	{"volume", "bbl", "ft3", "5.615", false, common},
	{"volume", "bbl", "ft3", "5.61", false, common},
	{"volume", "bbl", "m3", "0.159", false, common},
	{"volume", "m3", "bbl", "6.29", false, common},
	{"volume", "gal", "L", "3.785", false, common},
	{"volume", "ft3", "gal", "7.48", false, common},
	{"volume", "m3", "ft3", "35.3", false, common},
	{"force", "lbf", "N", "4.45", false, common},
	{"force", "klbf", "kN", "4.448", false, common},
	{"force", "daN", "lbf", "2.25", false, common},
	{"mass", "kg", "lb", "2.2", false, common},
	{"mass", "kg", "lb", "2.205", false, common},
	{"weight per length", "lb/ft", "kg/m", "1.49", false, common},
	{"flow rate", "bbl/min", "gal/min", "42", false, "exact"},
	{"flow rate", "bbl/min", "L/min", "159", false, common},
	{"flow rate", "bbl/d", "m3/d", "0.159", false, common},
	{"flow rate", "MMscf/d", "m3/d", "28317", false, common + "; one volume, both at one condition"},
	{"torque", "ft-lbf", "N.m", "1.356", false, common},
	{"curvature", "deg/30m", "deg/100ft", "1", false, common + "; taken for the same"},
	{"viscosity", "cP", "mPa.s", "1", false, "exact"},
	{"area", "L/m", "bbl/ft", "0.00192", false, common},
}

// Factors returns those of a quantity.
func Factors(quantity string) []Factor {
	var of []Factor
	for _, f := range factors {
		if f.Quantity == quantity {
			of = append(of, f)
		}
	}
	return of
}

// Convert turns a number of From into a number of To with the trade's factor.
func (f Factor) Convert(n float64) float64 { return n * f.Value() }

// Value is the factor that a number is multiplied by.
func (f Factor) Value() float64 {
	v, err := strconv.ParseFloat(f.Written, 64)
	switch {
	case err != nil:
		return math.NaN()
	case f.Divides:
		return 1 / v
	}
	return v
}

// Exact is the exact factor, from the definitions of both units.
func (f Factor) Exact() float64 {
	return size(f.Quantity, f.From) / size(f.Quantity, f.To)
}

// Off is how far the trade's factor is from the exact one, as a share of it:
// positive where it is too great.
func (f Factor) Off() float64 { return f.Value()/f.Exact() - 1 }

// size returns a unit's size in SI, NaN where there is none.
func size(quantity, text string) float64 {
	for _, q := range unit.Quantities() {
		if q.Name != quantity {
			continue
		}
		for _, u := range append(q.Units, q.Spellings...) {
			if u.Text == text {
				return u.Size
			}
		}
	}
	return math.NaN()
}
