package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// g is the standard acceleration of gravity, m/s².
const g = 9.80665

// Pipe is the body of one pipe: its size, its weight in air and its steel.
//
// Range: 0 < ID < OD, a weight from zero up and a Material in its range.
// Validate checks that, and so does whatever returns an error; a formula that
// returns none gives what it gives, and NaN for NaN.
type Pipe struct {
	OD       unit.Length          `json:"od"`
	ID       unit.Length          `json:"id"`
	Weight   unit.WeightPerLength `json:"weight"` // in air, couplings included; zero stands for the plain-end weight
	Material Material             `json:"material"`
}

// PipeOfWall returns a pipe of an outside diameter and a wall, which mill sheets
// give more often than a bore, with its plain-end weight.
//
//	d = D - 2 t
//
// Range: a wall below half the diameter, not checked here; Validate does.
//
// Source: geometry; the weight is Pipe.PlainEndWeight's.
func PipeOfWall(od, wall unit.Length, m Material) Pipe {
	return Pipe{OD: od, ID: od - 2*wall, Material: m}
}

// Wall returns the nominal wall thickness.
//
//	t = (D - d) / 2
//
// Source: geometry.
func (p Pipe) Wall() unit.Length { return (p.OD - p.ID) / 2 }

// Slenderness returns the ratio of outside diameter to wall thickness, D/t, on
// which collapse depends.
//
// Source: definition.
func (p Pipe) Slenderness() float64 { return float64(p.OD / p.Wall()) }

// OuterArea returns the area inside the outside diameter, Ao.
//
//	Ao = π D² / 4
func (p Pipe) OuterArea() unit.Area { return circle(p.OD) }

// InnerArea returns the area of the bore, Ai.
//
//	Ai = π d² / 4
func (p Pipe) InnerArea() unit.Area { return circle(p.ID) }

// SteelArea returns the cross-section of the pipe body, As.
//
//	As = π (D² - d²) / 4
func (p Pipe) SteelArea() unit.Area { return AnnularCapacity(p.OD, p.ID) }

// SecondMoment returns the second moment of the cross-section about a diameter.
//
//	I = π (D⁴ - d⁴) / 64
//
// Source: geometry.
func (p Pipe) SecondMoment() unit.SecondMoment {
	D, d := float64(p.OD), float64(p.ID)
	return unit.SecondMoment(math.Pi / 64 * (D - d) * (D + d) * (D*D + d*d))
}

// PolarMoment returns the polar second moment of the cross-section, 2 I, on
// which torsion depends.
//
//	J = 2·I
//
// Source: geometry.
func (p Pipe) PolarMoment() unit.SecondMoment { return 2 * p.SecondMoment() }

// Capacity returns the volume inside the pipe per length, which is its bore
// area: p.Capacity().In(unit.BarrelPerFoot).
func (p Pipe) Capacity() unit.Area { return p.InnerArea() }

// Displacement returns the volume of steel per length, couplings included: what
// an open-ended pipe displaces when it is run.
//
//	Vd = w / (ρ g)
//
// w is the weight in air and ρ the density of the steel. BuoyedWeight, which
// follows the convention of effective force, leaves the couplings' share out.
//
// Source: definition of density.
func (p Pipe) Displacement() unit.Area {
	return unit.Area(float64(p.WeightInAir()) / (float64(p.Material.Density) * g))
}

// ClosedDisplacement returns what the pipe displaces per length with its end
// closed: steel and bore.
//
//	V = Vd + Vi
//
// Source: geometry.
func (p Pipe) ClosedDisplacement() unit.Area { return p.Displacement() + p.Capacity() }

// AnnularCapacity returns the volume per length between the bore of p and the
// outside of the body of a pipe inside it. It is negative when that pipe does
// not fit.
//
//	Va = π (d² - D²) / 4
func (p Pipe) AnnularCapacity(inside Pipe) unit.Area { return AnnularCapacity(p.ID, inside.OD) }

// AnnularCapacity returns the volume per length between a bore (of casing or an
// open hole) and a smaller diameter in it.
//
//	Va = π (d² - D²) / 4
//
// d is the bore and D the outside diameter in it. Divided by
// unit.BarrelPerFoot it is the field's (d² - D²)/1029.4.
//
// Range: any diameters; negative where od is the greater.
//
// Source: geometry.
func AnnularCapacity(bore, od unit.Length) unit.Area {
	return unit.Area(math.Pi / 4 * float64(bore-od) * float64(bore+od))
}

// PlainEndWeight returns the weight of the pipe body in air per length, without
// couplings and upsets.
//
//	wpe = π (D - t) t ρ g
//
// With the density of Steel, 7,850 kg/m³, this is API's 10.69 (D - t) t lb/ft
// for D and t in inches (10.69144 unrounded), in SI 0.0246615 (D - t) t kg/m for
// millimetres. Tables made with the older 10.68 are 0.1 % lower.
//
// Source: API Spec 5CT / ISO 11960 (plain-end mass); API Spec 5L.
func (p Pipe) PlainEndWeight() unit.WeightPerLength {
	return unit.WeightPerLength(float64(p.SteelArea()) * float64(p.Material.Density) * g)
}

// WeightInAir returns Weight, or the plain-end weight where Weight is zero.
func (p Pipe) WeightInAir() unit.WeightPerLength {
	if p.Weight != 0 {
		return p.Weight
	}
	return p.PlainEndWeight()
}

// BuoyedWeight returns the effective weight per length with fluids of the given
// densities in and around the pipe: the slope of the effective force in a
// vertical string.
//
//	we = w + ρi g Ai - ρo g Ao
//
// w is the weight in air with couplings; Ao and Ai are those of the body, as
// everywhere with effective force. So couplings have weight here and no
// buoyancy, though Displacement counts them: the pipe is heavier than it hangs by
//
//	ρo g (Vd - As)
//
// with Vd of Displacement, some 0.7 % of w for threaded and coupled tubing in
// brine. For a pipe without couplings and one fluid this is w (1 - ρ/ρsteel).
//
// Range: any densities; negative where the pipe floats.
//
// Source: Lubinski, Althouse and Logan, J. Pet. Tech. June 1962, weight in the
// presence of liquids.
func (p Pipe) BuoyedWeight(inside, outside unit.Density) unit.WeightPerLength {
	w := float64(p.WeightInAir())
	ρi, ρo := float64(inside), float64(outside)
	Ai, Ao := float64(p.InnerArea()), float64(p.OuterArea())
	return unit.WeightPerLength(w + g*(ρi*Ai-ρo*Ao))
}

// BuoyancyFactor returns the share of its weight in air that steel keeps in a
// fluid.
//
//	BF = 1 - ρ / ρsteel
//
// Valid where the same fluid is inside and outside.
//
// Source: common practice; API RP 7G.
func BuoyancyFactor(fluid, steel unit.Density) float64 { return 1 - float64(fluid/steel) }

func circle(d unit.Length) unit.Area { return unit.Area(math.Pi / 4 * float64(d) * float64(d)) }
