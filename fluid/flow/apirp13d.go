package flow

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// APIFigures are the figures of a power-law fluid as API RP 13D's third edition
// has them: what many rig sheets still print. Friction is the better answer.
type APIFigures struct {
	Velocity           unit.Velocity  `json:"velocity"`
	EffectiveViscosity unit.Viscosity `json:"effective_viscosity"`
	Reynolds           float64        `json:"reynolds"`
	Regime             Regime         `json:"regime"`
	Factor             FanningFactor  `json:"factor"`
	Gradient           unit.Gradient  `json:"gradient"`
}

// APIFigures returns effective viscosity, Reynolds number, friction factor and
// gradient of a power-law fluid by
//
//	pipe      μe = K (8V/D)^(n-1) [(3n+1)/(4n)]ⁿ,        f = 16/Re
//	annulus   μe = K (12V/(D-d))^(n-1) [(2n+1)/(3n)]ⁿ,   f = 24/Re
//	Re = ρ V (D-d)/μe,  turbulent f = Blasius,  dp/dL = 2 f ρ V²/(D-d)
//
// laminar up to Re = 3470 - 1370 n, turbulent from 4270 - 1370 n, linear in Re
// between. The annulus is a slot; walls are smooth. The pipe's n and K come from
// the readings at 600 and 300, the annulus's from 100 and 3 (TwoPointPowerLaw).
// An error where the rate is zero or the fluid has a yield stress. Against
// Friction: laminar equal in the pipe and up to 3 % high in the annulus; turbulent
// within 10 % in smooth pipe for n above 0.4.
//
// Source: API RP 13D (3rd edition, 1995), section on hydraulics.
func (s Stream) APIFigures() (APIFigures, error) {
	if err := s.Validate(); err != nil {
		return APIFigures{}, err
	}
	f := fault.In("flow")
	if s.Rheology.Yield != 0 {
		f.New("Rheology.Yield", "is %v; must be 0: the third edition's figures are a power law's, without yield stress", s.Rheology.Yield)
	}
	if s.Rate < 1e-30*unit.CubicMetrePerSecond {
		f.New("Rate", "is %v; must be above 0 gal/min", s.Rate)
	}
	if err := f.Err(); err != nil {
		return APIFigures{}, err
	}
	n, ρ := s.Rheology.Index, float64(s.Density)
	V, D := float64(s.Conduit.Velocity(s.Rate)), float64(s.Conduit.HydraulicDiameter())
	shape, per, laminar := round, 8.0, 16.0
	if s.Conduit.Annulus() {
		shape, per, laminar = slot, 12, 24
	}
	l := s.Rheology.laminar(per*V/D, shape)
	μe := float64(l.WallStress) / (per * V / D)
	r := APIFigures{Velocity: unit.Velocity(V), EffectiveViscosity: unit.Viscosity(μe), Reynolds: ρ * V * D / μe}
	lo, hi := LaminarReynolds(n), TurbulentReynolds(n)
	switch {
	case r.Reynolds <= lo:
		r.Regime, r.Factor = FlowLaminar, FanningFactor(laminar/r.Reynolds)
	case r.Reynolds >= hi:
		r.Regime, r.Factor = FlowTurbulent, Blasius(r.Reynolds, n)
	default:
		share := (r.Reynolds - lo) / (hi - lo)
		r.Regime, r.Factor = FlowTransitional, FanningFactor(laminar/lo+share*(float64(Blasius(hi, n))-laminar/lo))
	}
	r.Gradient = FanningGradient(r.Factor, s.Density, r.Velocity, unit.Length(D))
	return r, nil
}
