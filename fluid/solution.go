package fluid

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Solution is a clear brine by its composition: a mass fraction of one salt in
// fresh water.
//
// At atmospheric pressure, by the apparent density of the dissolved salt:
//
//	1/ρ = (1 − w)/ρw + w/ρa
//	ρa = (c0·w + c1)·exp(1e-6·(t + c4)²)/(w + c2 + c3·t)
//
//	w   mass fraction of salt
//	t   temperature, °C
//	ρw  density of water by Kell (1975), kg/m³
//
// Under pressure the volume shrinks by a mean coefficient of the user's choice,
// ρ(p) = ρ(0)/(1 − β·p); KrookBoyce, Bridges and Osif have published ones.
// Without it only atmospheric pressure has an answer, and ErrNoData says so.
//
// Range: for each salt of data, as Limits returns it; up to 22,000 psi.
// Handbook tables are met within 0.06 % for NaCl (one specific gravity 0.11 %), KCl
// and NaBr, and 0.2 % for CaCl2; for MgCl2 one is met within 0.2 %, another, which
// prints more, within 0.5 %. Of the formates there was none to hold it against.
// Whether the salt is still dissolved is not looked at: see Crystallisation.
//
// Errors: *RangeError; ErrNoData for CaBr2 and ZnBr2, of which no composition
// table is published here. The zero value is an error.
//
// Source: Laliberté and Cooper, J. Chem. Eng. Data 49 (2004) 1141, with the
// coefficients of Laliberté, J. Chem. Eng. Data 54 (2009) 1725: those of NaCl as
// recalled, the others fitted to values of that correlation, which they meet
// within 0.006 kg/m³. Water: Kell, J. Chem. Eng. Data 20 (1975) 97.
type Solution struct {
	Salt     Salt    `json:"salt"`
	Fraction float64 `json:"fraction"` // mass of salt per mass of brine

	Compression unit.Compressibility `json:"compression"` // mean, isothermal; zero where not known
}

// laliberte are c0 to c4 with the range they are used in, °C.
type laliberte struct {
	c0, c1, c2, c3, c4 float64
	most               float64 // mass fraction
	least, greatest    float64 // °C
}

func (s Salt) laliberte() (laliberte, bool) {
	switch s {
	case SodiumChloride:
		return laliberte{-0.00324112, 0.0636354, 1.01371399, 0.0145951013, 3317.34854, 0.26, 0, 140}, true
	case PotassiumChloride:
		return laliberte{-0.8445756, 6.002757, 2.807025, 0.02530662, 2682.085, 0.24, 5, 120}, true
	case SodiumBromide:
		return laliberte{23.70856, 210.2454, 2.010504, 0.016401, 1942.445, 0.45, 5, 95}, true
	case CalciumChloride:
		return laliberte{-9.776708, 14.76688, 4.204187, 0.03985592, 2707.878, 0.40, 15, 120}, true
	case MagnesiumChloride:
		return laliberte{-0.02130516, 0.04379796, 1.529714, -0.009795115, -3479.179, 0.30, 5, 80}, true
	case SodiumFormate:
		return laliberte{758.4269, 1322.061, 0.7583521, 0.003164992, 685.866, 0.40, 20, 45}, true
	case PotassiumFormate:
		return laliberte{435.5237, 2573.992, 1.998454, 0.00618875, 782.0483, 0.65, 15, 55}, true
	}
	return laliberte{}, false
}

// Limits returns the greatest mass fraction and the temperatures that Solution
// covers for a salt.
func (s Salt) Limits() (fraction float64, least, greatest unit.Temperature, err error) {
	l, err := s.data()
	return l.most, unit.Celsius(l.least), unit.Celsius(l.greatest), err
}

func (s Salt) data() (laliberte, error) {
	l, ok := s.laliberte()
	if !ok {
		return l, fmt.Errorf("%w: density of %v by composition", ErrNoData, s)
	}
	return l, nil
}

// kellWater returns the density of water, kg/m³, at t °C and one atmosphere,
// 0 to 150 °C. Source: Kell, J. Chem. Eng. Data 20 (1975) 97, Eq. 16.
func kellWater(t float64) float64 {
	return (((((-2.8054253e-10*t+1.0556302e-7)*t-4.6170461e-5)*t-0.0079870401)*t+16.945176)*t + 999.83952) / (1 + 0.01687985*t)
}

// density at w and t °C, without a check.
func (l *laliberte) density(w, t float64) float64 {
	off := t + l.c4
	apparent := (l.c0*w + l.c1) * math.Exp(1e-6*off*off) / (w + l.c2 + l.c3*t)
	return 1 / ((1-w)/kellWater(t) + w/apparent)
}

func (l *laliberte) check(salt Salt, w float64, t unit.Temperature) error {
	if within(w, 0, l.most) && within(t.Celsius(), l.least, l.greatest) {
		return nil
	}
	return fault.Join(scope, fraction(salt.String()+" brine", "Fraction", w, l.most), l.checkTemperature(salt, t))
}

func (l *laliberte) checkTemperature(salt Salt, t unit.Temperature) error {
	if within(t.Celsius(), l.least, l.greatest) {
		return nil
	}
	return outside(salt.String()+" brine", "temperature", t, unit.Celsius(l.least), unit.Celsius(l.greatest))
}

// Density returns the density at gauge pressure p and temperature t.
//
//	ρ = ρ(w, T)/(1 − β·p)
//
// Source: the correlation of Solution.
func (s Solution) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	l, squeeze, err := s.state(p, t)
	if err != nil {
		return 0, err
	}
	return unit.Density(l.density(s.Fraction, t.Celsius()) / squeeze), nil
}

// Compressibility returns β/(1 − β·p); ErrNoData where β isn't given.
//
// Source: derivative of Density's formula.
func (s Solution) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	_, squeeze, err := s.state(p, t)
	if err != nil {
		return 0, err
	}
	if s.Compression == 0 {
		return 0, s.noCompression()
	}
	return s.Compression / unit.Compressibility(squeeze), nil
}

// Expansivity returns −(∂ρ/∂t)/ρ of the same formula.
func (s Solution) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	l, _, err := s.state(p, t)
	if err != nil {
		return 0, err
	}
	return unit.Expansivity(l.expansivity(s.Fraction, t.Celsius())), nil
}

func (s Solution) noCompression() error {
	return fmt.Errorf("%w: compressibility of %v brine; give one", ErrNoData, s.Salt)
}

// state returns the salt's coefficients and 1 − β·p.
func (s Solution) state(p unit.Pressure, t unit.Temperature) (l laliberte, squeeze float64, err error) {
	if l, err = s.Salt.data(); err != nil {
		return l, 0, err
	}
	err = l.check(s.Salt, s.Fraction, t)
	name := s.Salt.String() + " brine"
	if !within(float64(p), -float64(unit.Atmosphere), float64(brinePressure)) {
		err = fault.Join(scope, err, outside(name, "pressure", p, -unit.Atmosphere, unit.Pressure(brinePressure)))
	}
	if !within(float64(s.Compression), 0, float64(brineCompression)) {
		err = fault.Join(scope, err, outside(name, "Compression", s.Compression, unit.Compressibility(0), brineCompression))
	}
	if err == nil && p != 0 && s.Compression == 0 {
		err = s.noCompression()
	}
	return l, 1 - float64(s.Compression)*float64(p), err
}

// expansivity is −(∂ρ/∂t)/ρ at atmospheric pressure: from the derivative of
// 1/ρ, term by term.
func (l *laliberte) expansivity(w, t float64) float64 {
	off := t + l.c4
	apparent := (l.c0*w + l.c1) * math.Exp(1e-6*off*off) / (w + l.c2 + l.c3*t)
	const n1, n2, n3, n4, n5 = 16.945176, -0.0079870401, -4.6170461e-5, 1.0556302e-7, -2.8054253e-10
	const d = 0.01687985
	water := kellWater(t)
	numerator := n1 + t*(2*n2+t*(3*n3+t*(4*n4+t*5*n5)))
	byWater := -(numerator - water*d) / (1 + d*t) / water // (∂(1/ρw)/∂t)·ρw
	bySalt := l.c3/(w+l.c2+l.c3*t) - 2e-6*off             // (∂(1/ρa)/∂t)·ρa
	v := (1-w)/water + w/apparent
	return ((1-w)/water*byWater + w/apparent*bySalt) / v
}

// Concentration returns the mass of salt per volume of brine at atmospheric
// pressure, such as lb/bbl.
//
// Source: definition.
func (s Solution) Concentration(t unit.Temperature) (unit.Density, error) {
	rho, err := s.Density(0, t)
	return unit.Density(s.Fraction) * rho, err
}

// SolutionOfDensity returns the brine of one salt that has a density at
// atmospheric pressure and temperature t: Solution's inverse, to the last bits.
// A density under water's or above the salt's strongest brine is a *RangeError.
//
//	ρ(w, T) = ρ, solved for w
//
// Source: Solution.
func SolutionOfDensity(salt Salt, rho unit.Density, t unit.Temperature) (Solution, error) {
	l, err := salt.data()
	if err != nil {
		return Solution{}, err
	}
	if err := l.checkTemperature(salt, t); err != nil {
		return Solution{}, err
	}
	c := t.Celsius()
	least, greatest := unit.Density(l.density(0, c)), unit.Density(l.density(l.most, c))
	if !within(float64(rho), float64(least), float64(greatest)) {
		return Solution{}, outside(salt.String()+" brine at "+t.Rounded(errorDigits), "Density", rho, least, greatest)
	}
	w, err := root.Find(func(w float64) float64 { return l.density(w, c) - float64(rho) }, 0, l.most, 0)
	if err != nil {
		return Solution{}, err
	}
	return Solution{Salt: salt, Fraction: w}, nil
}
