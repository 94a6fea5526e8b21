package flow

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Stream is a fluid moving steadily through a conduit.
type Stream struct {
	Conduit  Conduit       `json:"conduit"`
	Rheology Rheology      `json:"rheology"`
	Density  unit.Density  `json:"density"`
	Rate     unit.FlowRate `json:"rate"` // not negative
}

// Friction is what a stream loses at the walls, and how one gets there.
type Friction struct {
	Velocity          unit.Velocity  `json:"velocity"` // mean
	HydraulicDiameter unit.Length    `json:"hydraulic_diameter"`
	LaminarStress     unit.Pressure  `json:"laminar_stress"`     // mean wall stress if the flow is (or were) laminar
	LaminarRate       unit.ShearRate `json:"laminar_rate"`       // shear rate at that stress
	EffectiveDiameter unit.Length    `json:"effective_diameter"` // 8V over that shear rate
	Index             float64        `json:"index"`              // local flow index n'
	Reynolds          float64        `json:"reynolds"`           // generalised: 16/Reynolds is the laminar factor
	Regime            Regime         `json:"regime"`
	Factor            FanningFactor  `json:"factor"`
	Gradient          unit.Gradient  `json:"gradient"`    // loss of pressure per length along the conduit, positive
	WallStress        unit.Pressure  `json:"wall_stress"` // mean, in the regime found; the yield stress at rest

	Density   unit.Density `json:"density"` // of the stream, for Steps
	Roughness unit.Length  `json:"roughness"`

	// Beyond says why the result stands outside the published range of its
	// correlation; empty within.
	Beyond string `json:"beyond"`
}

// Friction returns the friction gradient of a stream in any regime,
//
//	Re = 8 ρ V²/τw,  f from (n', Re, ε/De),  dp/dL = 2 f ρ V²/(D - d)
//
// with τw and n' of laminar flow (Conduit.Laminar), f = 16/Re up to
// LaminarReynolds, Turbulent above TurbulentReynolds, and between the two
// interpolated in logarithms. At rest everything is zero but the wall stress,
// for which the fluid may give anything up to its yield stress.
//
// Laminar flow is exact. Turbulent: see Turbulent; in an annulus the hydraulic
// diameter with the effective diameter in Re and roughness is White's method
// (Fluid Mechanics, 6.8; he has the plain hydraulic diameter within 15 %, figure
// from memory, and this better). Transitional: a bridge.
//
// Ranges: diameters 0.1 mm to 10 m, d/D 0.001 (Newtonian 1e-5) to 0.999, density 1 to 10,000
// kg/m³, mean velocity up to 1,000 m/s.
func (s Stream) Friction() (Friction, error) {
	if err := s.Validate(); err != nil {
		return Friction{}, err
	}
	return s.friction()
}

// Validate reports everything that is wrong with s.
func (s Stream) Validate() error {
	f := fault.In("flow")
	f.At("Conduit", s.Conduit.Validate())
	f.At("Rheology", s.Rheology.Validate())
	f.Add(fault.Between("Density", s.Density, leastDensity, mostDensity))
	f.Add(fault.Between("Rate", s.Rate, 0, mostRate))
	if err := f.Err(); err != nil {
		return err
	}
	f.Add(fault.Between("velocity Rate/area", s.Conduit.Velocity(s.Rate), 0, mostVelocity))
	return f.Err()
}

const (
	leastDensity = 1 * unit.KilogramPerCubicMetre
	mostDensity  = 10_000 * unit.KilogramPerCubicMetre
	mostRate     = 1000 * unit.CubicMetrePerSecond
)

func (s Stream) friction() (Friction, error) {
	c, ρ := s.Conduit, float64(s.Density)
	V := float64(c.Velocity(s.Rate))
	l, err := c.laminar(s.Rheology, V)
	if err != nil {
		return Friction{}, err
	}
	r := Friction{
		Velocity: unit.Velocity(V), HydraulicDiameter: c.HydraulicDiameter(),
		LaminarStress: l.WallStress, LaminarRate: l.WallRate, Index: l.Index,
		Density: s.Density, Roughness: c.Roughness,
	}
	τw := float64(l.WallStress)
	r.Reynolds = 8 * ρ * V * V / τw
	if !(r.Reynolds > 0) { // at rest, or so slow that its square is nothing
		r.Reynolds, r.WallStress, r.EffectiveDiameter = 0, l.WallStress, r.HydraulicDiameter
		r.Gradient = 0
		return r, nil
	}
	r.EffectiveDiameter = unit.Length(8 * V / float64(l.WallRate))
	relative := float64(c.Roughness / r.EffectiveDiameter)
	r.Factor, r.Regime = factor(l.Index, r.Reynolds, relative)
	r.WallStress = unit.Pressure(float64(r.Factor) * ρ * V * V / 2)
	r.Gradient = FanningGradient(r.Factor, s.Density, r.Velocity, r.HydraulicDiameter)
	r.Beyond = beyond(r.Index, r.Reynolds, relative, r.Regime)
	return r, nil
}

// beyond names what is outside the experiments behind the turbulent law.
func beyond(n, reynolds, relative float64, regime Regime) string {
	switch {
	case regime == FlowLaminar || regime == FlowStatic:
		return ""
	case regime == FlowTransitional:
		return "between laminar and turbulent: interpolated"
	case n == 1 && (reynolds > 1e8 || relative > 0.05):
		return "Colebrook's law is charted to Re 1e8 and relative roughness 0.05"
	case n != 1 && relative > 0:
		return "no experiments with rough walls stand behind the law of a shear-thinning fluid"
	case n != 1 && (n < 0.36 || n > 1 || reynolds > 36000):
		return "Dodge and Metzner's experiments end at n 0.36 to 1 and Re 36,000"
	}
	return ""
}

// FanningGradient returns the friction gradient of a factor,
//
//	dp/dL = 2 f ρ V²/D
//
// with the hydraulic diameter. A DarcyFactor must be turned into Fanning's first.
//
// Range: a diameter above zero, not checked: infinite at zero. It doesn't tell
// which way the fluid flows: the sign of the velocity is lost.
//
// Source: definition of Fanning's factor; White, Fluid Mechanics, 6.3.
func FanningGradient(factor FanningFactor, density unit.Density, v unit.Velocity, hydraulic unit.Length) unit.Gradient {
	return unit.Gradient(2 * float64(factor) * float64(density) * float64(v) * float64(v) / float64(hydraulic))
}

// Loss returns the pressure lost along a length.
//
//	Δp = G·L
//
// Range: any length; it isn't checked.
//
// Source: definition of the gradient.
func (f Friction) Loss(length unit.Length) unit.Pressure {
	return unit.Pressure(float64(f.Gradient) * float64(length))
}

// Darcy returns Darcy's (Moody's) friction factor, four times Fanning's.
func (f Friction) Darcy() DarcyFactor { return f.Factor.Darcy() }

// EffectiveViscosity returns the viscosity of the Newtonian fluid with the same
// laminar loss in a pipe of the hydraulic diameter, τw/(8V/D). At rest, where
// there is none, it returns zero.
//
// Range: any friction that this package returned; one made by hand with no
// velocity, and not static, gives an infinite viscosity.
//
// Source: Hagen and Poiseuille.
func (f Friction) EffectiveViscosity() unit.Viscosity {
	if f.Regime == FlowStatic {
		return 0
	}
	return unit.Viscosity(float64(f.LaminarStress) * float64(f.HydraulicDiameter) / (8 * float64(f.Velocity)))
}
