package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// StandardSalinity is the absolute salinity of the reference composition of
// standard seawater, kg of salt per kg of seawater.
// Source: IAPWS R13-08, Eq. 1 and Table 1; TEOS-10 manual (2010), Section 2.4.
const StandardSalinity = 0.03516504

// Seawater is natural seawater by TEOS-10: the Gibbs function of liquid water
// plus that of sea salt.
//
//	ρ = 1/(∂g/∂p),  g(S, T, p) = gW(T, p) + gS(S, T, p)
//
// Range: salinity 0 to 0.042, −6 to 40 °C (21 to 104 °F), 0 to 100 MPa of sea
// (gauge) pressure; water below its FreezingPoint is taken as supercooled.
// Uncertainty of density 0.0004 % at atmospheric pressure, 0.002 % at
// 100 MPa. Seawater hotter than 40 °C is outside what TEOS-10 covers under
// pressure. A sodium chloride Solution of its density at 70 °F, with its own
// compressibility at 40 °C and 20 MPa, is within 0.05 % of it from 20 to 40 °C up
// to 40 MPa (0.13 % at 70 MPa), and goes on to 140 °C.
//
// The zero value is fresh water.
//
// Source: IAPWS R13-08 and IAPWS SR7-09; TEOS-10 manual (2010).
type Seawater struct {
	Salinity float64 `json:"salinity"` // absolute, kg of salt per kg of seawater, such as StandardSalinity
}

const seawaterName = "seawater"

var seawaterLimits = limits{101325, 101325 + 100e6, 267.15, 313.15}

const seawaterSaltiest = 0.042

// Density returns the in-situ density.
//
//	ρ = 1/(∂g/∂p)
//
// Errors: *RangeError outside of Seawater's range.
//
// Source: the Gibbs function g of Seawater.
func (s Seawater) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	v, _, _, err := s.volume(p, t, false)
	if err != nil {
		return 0, err
	}
	return unit.Density(1 / v), nil
}

// Compressibility returns the isothermal compressibility, −(∂²g/∂p²)/(∂g/∂p).
//
// Errors: *RangeError outside of Seawater's range.
//
// Source: the Gibbs function g of Seawater.
func (s Seawater) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	v, vp, _, err := s.volume(p, t, true)
	if err != nil {
		return 0, err
	}
	return unit.Compressibility(-vp / v), nil
}

// Expansivity returns the thermal expansion of volume at in-situ temperature,
// (∂²g/∂T∂p)/(∂g/∂p).
//
// Errors: *RangeError outside of Seawater's range.
//
// Source: the Gibbs function g of Seawater.
func (s Seawater) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	v, _, vt, err := s.volume(p, t, true)
	if err != nil {
		return 0, err
	}
	return unit.Expansivity(vt / v), nil
}

// FreezingPoint returns the temperature at which ice forms in seawater of
// practical salinity S under gauge pressure p:
//
//	Tf = −0.0575·S + 1.710523e-3·S^1.5 − 2.154996e-4·S² − 7.53e-4·p   (°C, dbar)
//
// S is taken as the absolute salinity over 35.16504/35 g/kg. Range: S from 4 to
// 40 and p to 5 MPa (725 psi). Accuracy ±0.004 °C.
//
// Errors: *RangeError outside of that.
//
// Source: Millero and Leung (1976), as in Fofonoff and Millard, UNESCO
// Technical Papers in Marine Science 44 (1983).
func (s Seawater) FreezingPoint(p unit.Pressure) (unit.Temperature, error) {
	const (
		decibar  = 1e4 * unit.Pascal
		deepest  = 500 * decibar
		practice = 35.16504 / 35 / 1000
	)
	S := s.Salinity / practice
	var faults []error
	if !within(S, 4, 40) {
		faults = append(faults, outside(seawaterName+" freezing", "Salinity", number(s.Salinity), number(4*practice), number(40*practice)))
	}
	if !within(float64(p), 0, float64(deepest)) {
		faults = append(faults, outside(seawaterName+" freezing", "pressure", p, unit.Pressure(0), deepest))
	}
	if faults != nil {
		return unit.Temperature{}, fault.Join(scope, faults...)
	}
	return unit.Celsius(-0.0575*S + 1.710523e-3*S*math.Sqrt(S) - 2.154996e-4*S*S - 7.53e-4*p.In(decibar)), nil
}

// volume returns the specific volume ∂g/∂p, m³/kg, and where slopes are asked
// for its derivatives by pressure and temperature.
func (s Seawater) volume(p unit.Pressure, t unit.Temperature, slopes bool) (v, vp, vt float64, err error) {
	P, T := absolute(p), t.Kelvin()
	err = seawaterLimits.check(seawaterName, P, T)
	if !within(s.Salinity, 0, seawaterSaltiest) {
		err = fault.Join(scope, err, outside(seawaterName, "Salinity", number(s.Salinity), number(0), number(seawaterSaltiest)))
	}
	if err != nil {
		return 0, 0, 0, err
	}
	// Reduced variables: IAPWS R13-08 Eq. 4, SR7-09 Eq. 2.
	const (
		tUnit = 40.0
		pUnit = 1e8
		sUnit = 0.03516504 * 40 / 35
	)
	x := math.Sqrt(s.Salinity / sUnit)
	y := t.Celsius() / tUnit
	z := (P - float64(unit.Atmosphere)) / pUnit
	var xs, ys, zs [8]float64
	xs[0], ys[0], zs[0] = 1, 1, 1
	for i := 1; i < 8; i++ {
		xs[i], ys[i], zs[i] = xs[i-1]*x, ys[i-1]*y, zs[i-1]*z
	}
	for i := range gibbsTerms {
		r := &gibbsTerms[i]
		n := r.n * float64(r.k) * xs[r.i]
		v += n * ys[r.j] * zs[r.k-1]
		if slopes {
			if r.k > 1 {
				vp += n * float64(r.k-1) * ys[r.j] * zs[r.k-2]
			}
			if r.j > 0 {
				vt += n * float64(r.j) * ys[r.j-1] * zs[r.k-1]
			}
		}
	}
	return v / pUnit, vp / (pUnit * pUnit), vt / (pUnit * tUnit), nil
}
