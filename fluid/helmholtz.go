package fluid

import "math"

// helmholtz is a reference equation of state in the reduced Helmholtz energy:
//
//	αr(δ, τ) = Σ n·δ^d·τ^t·exp(−δ^l) + Σ n·δ^d·τ^t·exp(−φ·(δ−1)² − β·(τ−γ)²)
//	δ = ρ/ρc,  τ = Tc/T
//
// A term without exponential has l = 0. It serves only above the critical
// temperature, where p rises with ρ and there is one phase.
type helmholtz struct {
	name             string
	molarMass        float64 // kg/mol
	gasConstant      float64 // J/(mol·K), the one the equation was fitted with
	tCritical        float64 // K
	rhoCritical      float64 // kg/m³
	limits           limits
	terms            []helmholtzTerm
	bells            []helmholtzBell
	densest          float64 // δ above that of any state within limits
	covolumeOfCritic float64 // for the first guess: b·ρc of p = ρRT/(1 − bρ)
}

type helmholtzTerm struct {
	n       float64
	d, l    int8
	eighths int16 // t in eighths
}

type helmholtzBell struct {
	n, phi, beta, gamma float64
	d, t                int8
}

// Space for the terms at one temperature.
const (
	mostTerms = 36
	mostBells = 4
	mostDelta = 10 // power of δ
	mostTau   = 22 // power of τ
)

// helmholtzIsotherm holds n·τ^t of every term at one τ.
type helmholtzIsotherm struct {
	*helmholtz
	tau   float64
	terms [mostTerms]float64
	bells [mostBells]float64
}

func (h *helmholtz) at(t float64) helmholtzIsotherm {
	s := helmholtzIsotherm{helmholtz: h, tau: h.tCritical / t}
	// τ^(k/8) from τ^-1 to τ^22, as a whole power times an eighth's one.
	eighth := math.Sqrt(math.Sqrt(math.Sqrt(s.tau)))
	var whole [mostTau + 2]float64
	var part [8]float64
	whole[0], part[0] = 1/s.tau, 1
	for i := 1; i < len(whole); i++ {
		whole[i] = whole[i-1] * s.tau
	}
	for i := 1; i < len(part); i++ {
		part[i] = part[i-1] * eighth
	}
	for i, r := range h.terms {
		k := r.eighths + 8
		s.terms[i] = r.n * whole[k>>3] * part[k&7]
	}
	for i, r := range h.bells {
		off := s.tau - r.gamma
		s.bells[i] = r.n * whole[r.t+1] * math.Exp(-r.beta*off*off)
	}
	return s
}

// helmholtzSums are δ·∂αr/∂δ, δ²·∂²αr/∂δ² and δτ·∂²αr/∂δ∂τ.
type helmholtzSums struct{ d, dd, dt float64 }

func (s *helmholtzIsotherm) sums(delta float64) (a helmholtzSums) {
	var power [mostDelta + 1]float64
	power[0] = 1
	for i := 1; i < len(power); i++ {
		power[i] = power[i-1] * delta
	}
	var fall [5]float64
	fall[0] = 1
	for l := 1; l < len(fall); l++ {
		fall[l] = math.Exp(-power[l])
	}
	for i := range s.helmholtz.terms {
		r := &s.helmholtz.terms[i]
		v := s.terms[i] * power[r.d] * fall[r.l]
		l := float64(r.l)
		pull := l * power[r.l] // l·δ^l, nothing for l = 0
		first := float64(r.d) - pull
		a.d += v * first
		a.dd += v * (first*(first-1) - l*pull)
		a.dt += v * first * float64(r.eighths) / 8
	}
	for i := range s.helmholtz.bells {
		r := &s.helmholtz.bells[i]
		off := delta - 1
		v := s.bells[i] * power[r.d] * math.Exp(-r.phi*off*off)
		first := float64(r.d) - 2*r.phi*delta*off
		a.d += v * first
		a.dd += v * (first*first - float64(r.d) - 2*r.phi*delta*delta)
		a.dt += v * first * (float64(r.t) - 2*r.beta*s.tau*(s.tau-r.gamma))
	}
	return a
}

// perDensity is R·T, J/kg: what p/ρ is for an ideal gas.
func (s *helmholtzIsotherm) perDensity() float64 {
	return s.gasConstant / s.molarMass * s.tCritical / s.tau
}

// density solves p = ρ·R·T·(1 + δ·∂αr/∂δ): Newton's steps inside a bracket, and
// halving where a step would leave it or convergence is slow, so that it always
// ends. p is absolute.
func (s *helmholtzIsotherm) density(p float64) (delta float64, a helmholtzSums) {
	const (
		newton = 20
		steps  = 90
		near   = 1e-9 // the error left is its square
	)
	scale := s.perDensity() * s.rhoCritical
	lo, hi := 0.0, s.densest
	delta = p / (scale + s.covolumeOfCritic*p)
	for i := range steps {
		a = s.sums(delta)
		f := delta*(1+a.d) - p/scale
		if f > 0 {
			hi = delta
		} else {
			lo = delta
		}
		step := f / (1 + 2*a.d + a.dd)
		next := delta - step
		if math.Abs(step) <= near*delta {
			return next, a
		}
		if !(next > lo && next < hi) || i > newton {
			next = (lo + hi) / 2
		}
		delta = next
	}
	return delta, a
}

// state is what the fluids ask: density, compressibility and expansivity at
// absolute pressure p and temperature t.
//
//	κ = 1/(ρ·∂p/∂ρ),  α = κ·∂p/∂T
func (h *helmholtz) state(p, t float64) (rho, kappa, alpha float64, err error) {
	if err := h.limits.check(h.name, p, t); err != nil {
		return 0, 0, 0, err
	}
	s := h.at(t)
	delta, a := s.density(p)
	rho = delta * h.rhoCritical
	slope := s.perDensity() * (1 + 2*a.d + a.dd)
	byT := rho * h.gasConstant / h.molarMass * (1 + a.d - a.dt)
	return rho, 1 / (rho * slope), byT / (rho * slope), nil
}
