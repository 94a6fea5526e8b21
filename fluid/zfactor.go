package fluid

import (
	"math"

	"completion.example/internal/fault"
)

// Range of ZFactor in reduced temperature and pressure.
const (
	zTLeast    = 1.05
	zTGreatest = 3.0
	zPGreatest = 30.0
)

// ZFactor returns the gas deviation factor at pseudo-reduced pressure ppr and
// temperature tpr by the eleven-constant equation of Dranchuk and Abou-Kassem:
//
//	Z = 1 + C1·ρ + C2·ρ² − C3·ρ⁵ + A10·(1 + A11·ρ²)·(ρ²/Tpr³)·exp(−A11·ρ²)
//	ρ = 0.27·ppr/(Z·Tpr)
//	C1 = A1 + A2/Tpr + A3/Tpr³ + A4/Tpr⁴ + A5/Tpr⁵
//	C2 = A6 + A7/Tpr + A8/Tpr²
//	C3 = A9·(A7/Tpr + A8/Tpr²)
//
// Range: 1.05 ≤ tpr ≤ 3, 0 ≤ ppr ≤ 30. It was fitted to the Standing–Katz chart
// from ppr = 0.2 and passes to Z = 1 below that; nearer the critical isotherm
// than 1.05 its authors warn against it. Average deviation from the chart about
// 0.5 %. In the range ppr rises with ρ at every tpr, so that there is exactly
// one Z, and it is found to 1e-12.
//
// Errors: *RangeError.
//
// Source: Dranchuk and Abou-Kassem, J. Can. Pet. Tech. 14(3), 1975; 0.27 is the
// critical deviation factor they took.
func ZFactor(ppr, tpr float64) (float64, error) {
	if !within(tpr, zTLeast, zTGreatest) || !within(ppr, 0, zPGreatest) {
		return 0, zFault(ppr, tpr)
	}
	if ppr == 0 {
		return 1, nil
	}
	s := newIsotherm(tpr)
	r := zCritical * ppr * s.u
	return r / s.density(r), nil
}

func zFault(ppr, tpr float64) error {
	var faults []error
	if !within(tpr, zTLeast, zTGreatest) {
		faults = append(faults, outside("Z factor", "reduced temperature", number(tpr), number(zTLeast), number(zTGreatest)))
	}
	if !within(ppr, 0, zPGreatest) {
		faults = append(faults, outside("Z factor", "reduced pressure", number(ppr), number(0), number(zPGreatest)))
	}
	return fault.Join(scope, faults...)
}

// The constants of Dranchuk and Abou-Kassem (1975).
const (
	dak1, dak2, dak3, dak4 = 0.3265, -1.0700, -0.5339, 0.01569
	dak5, dak6, dak7, dak8 = -0.05165, 0.5475, -0.7361, 0.1844
	dak9, dak10, dak11     = 0.1056, 0.6134, 0.7210
	zCritical              = 0.27
)

// isotherm is the equation at one reduced temperature. With r = 0.27·ppr/tpr,
// which is what an ideal gas would have for density, it reads r = ρ·Z(ρ).
type isotherm struct{ u, c1, c2, c3, c4 float64 }

func newIsotherm(tpr float64) isotherm {
	u := 1 / tpr
	u2 := u * u
	b := dak7*u + dak8*u2
	return isotherm{
		u:  u,
		c1: (dak1 + dak2*u) + u2*u*((dak3+dak4*u)+dak5*u2),
		c2: dak6 + b,
		c3: dak9 * b,
		c4: dak10 * u2 * u,
	}
}

// ideal returns r = ρ·Z(ρ) and its first two derivatives by ρ.
func (s *isotherm) ideal(rho float64) (r, slope, bend float64) {
	q := rho * rho
	x := dak11 * q
	e := s.c4 * rho * decay(x)
	c3 := s.c3 * q * q
	c2 := s.c2 * rho
	r = rho + q*((s.c1+c2-c3)+e*(1+x))
	slope = 1 + rho*((2*s.c1+3*c2-6*c3)+e*(3+x*(3-2*x)))
	bend = (2*s.c1 + 6*c2 - 30*c3) + e*(6+x*(6+x*(4*x-18)))
	return r, slope, bend
}

// start guesses the reduced density within 4 % as a rule: Z is near the second
// virial line 1 + C1·r in thin gas and near a rising line in dense gas; a
// hyperbola joins the two. Its constants were fitted to the equation itself.
func (s *isotherm) start(r float64) float64 {
	thin := 1 + s.c1*r
	dense := 1.3301 - s.u*(1.5242-0.2619*s.u) + (0.3122+0.1213*s.u)*r
	h := (thin - dense) / 2
	return r / ((thin+dense)/2 + math.Sqrt(h*h+0.0108-0.0112*s.u))
}

// density solves r = ρ·Z(ρ) for ρ: Halley's steps inside a bracket, and halving
// where a step would leave it or convergence is slow, so that it always ends.
func (s *isotherm) density(r float64) float64 {
	const (
		greatest = 3.0  // above the density of any state in range
		halley   = 20   // steps before halving takes over
		steps    = 90   // halving alone reaches the spacing of float64
		near     = 2e-5 // of ρ: the error left is its cube
	)
	lo, hi := 0.0, greatest
	rho := s.start(r)
	for i := range steps {
		f, slope, bend := s.ideal(rho)
		f -= r
		if f > 0 {
			hi = rho
		} else {
			lo = rho
		}
		// Halley's divisor over Newton's, kept away from 0.
		s2 := slope * slope
		divisor := s2 - f*bend/2
		if divisor < s2/2 {
			divisor = s2 / 2
		}
		step := f * slope / divisor
		next := rho - step
		if math.Abs(step) < near*rho {
			return next
		}
		if !(next > lo && next < hi) || i > halley {
			next = (lo + hi) / 2
		}
		rho = next
	}
	return rho
}
