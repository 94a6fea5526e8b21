package inflow

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// DamageSkin is the skin of a ring around the hole whose permeability differs:
//
//	s = (k/ks - 1)·ln(rs/rw)
//
// k permeability of the formation, ks of the ring out to radius rs, rw radius
// of the hole. Positive for damage, negative for stimulation. 0 < rw ≤ rs.
//
// Range: not checked: NaN for radii of unlike sign, infinite or NaN for a ring
// that lets nothing through.
//
// Source: Hawkins, A Note on the Skin Effect, Trans. AIME 207, 1956.
func DamageSkin(formation, ring unit.Permeability, hole, ringRadius unit.Length) float64 {
	return (float64(formation/ring) - 1) * math.Log(float64(ringRadius/hole))
}

// Regime says what feeds the zone, and which pressure its reservoir pressure is.
type Regime int

// The regimes.
const (
	SteadyBoundary Regime = iota // steady flow; reservoir pressure is that at the outer boundary
	SteadyAverage                // steady flow; average reservoir pressure
	PseudoSteady                 // closed boundary, pressure falling everywhere alike; average reservoir pressure
)

// offsets are subtracted from ln(re/rw).
var offsets = [...]float64{0, 0.5, 0.75}

// Formation is what the productivity index of a vertical hole follows from.
// The zero value is an error.
type Formation struct {
	Permeability unit.Permeability `json:"permeability"`
	Thickness    unit.Length       `json:"thickness"`
	Viscosity    unit.Viscosity    `json:"viscosity"`
	VolumeFactor float64           `json:"volume_factor"` // B, volume in place per volume at surface
	Hole         unit.Length       `json:"hole"`
	Boundary     unit.Length       `json:"boundary"` // radii rw and re
	Skin         float64           `json:"skin"`
	Regime       Regime            `json:"regime"`
}

// Index is the productivity index of radial flow:
//
//	J = 2π·k·h/(μ·B·(ln(re/rw) - c + s))
//
// c 0, ½ or ¾ by regime. In field units 2π becomes 1/141.2: J[bbl/d/psi] =
// k[mD]·h[ft]/(141.2·μ[cP]·B·(…)). Errors: faults of the inputs; a skin so
// negative that nothing holds the flow back.
// Source: Darcy's law in radial form; Fanchi and Christiansen, Introduction to
// Petroleum Engineering, 2017, Eq. 10.6-10.7.
func (f Formation) Index() (unit.ProductivityIndex, error) {
	if err := f.Validate(); err != nil {
		return 0, err
	}
	resistance := math.Log(float64(f.Boundary/f.Hole)) - offsets[f.Regime] + f.Skin
	if resistance <= 0 {
		return 0, fault.NewIn(scope, "Skin", "is %v; must be above %.4g with these radii", f.Skin, f.Skin-resistance)
	}
	j := 2 * math.Pi * float64(f.Permeability) * float64(f.Thickness) / (float64(f.Viscosity) * f.VolumeFactor * resistance)
	if !finite(j) {
		return 0, fault.NewIn(scope, "", "productivity index is %v; must be finite: the inputs are out of any range", j)
	}
	return unit.ProductivityIndex(j), nil
}

// Validate reports everything that is wrong with f.
func (f Formation) Validate() error {
	return fault.Join(scope, fault.Above("Permeability", f.Permeability, 0), fault.Above("Thickness", f.Thickness, 0),
		fault.Above("Viscosity", f.Viscosity, 0), fault.Above("Hole", f.Hole, 0), fault.Above("VolumeFactor", f.VolumeFactor, 0),
		fault.Above("Boundary", f.Boundary, f.Hole), fault.Finite("Skin", f.Skin), fault.Whole("Regime", int(f.Regime), 0, len(offsets)-1))
}
