package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Conduit is the cross-section that a fluid moves through: a round pipe, or
// the concentric annulus between two.
//
// Range: what Validate takes, Inner below Outer and both not negative. Area,
// HydraulicDiameter, Volume, Length, Velocity and Rate don't check it: areas
// are negative where Inner is the wider.
type Conduit struct {
	Outer     unit.Length `json:"outer"`               // inside diameter of the pipe, casing or hole
	Inner     unit.Length `json:"inner,omitempty"`     // outside diameter of the pipe within; zero for a pipe alone
	Roughness unit.Length `json:"roughness,omitempty"` // of the walls, as equivalent sand grain; zero is smooth
}

const (
	leastDiameter = 0.1 * unit.Millimetre
	mostDiameter  = 10 * unit.Metre

	// The exact annulus holds between these ratios of diameters: below, the
	// inner pipe is a wire; above, the gap is under a thousandth.
	leastRatio      = 1e-5  // by the closed form of a Newtonian fluid
	leastRatioOther = 0.001 // by quadrature
	mostRatio       = 0.999

	// The roughest pipe of Nikuradse's and Colebrook's charts.
	mostRelativeRoughness = 0.1
)

// Annulus tells whether there is a pipe within.
func (c Conduit) Annulus() bool { return c.Inner != 0 }

// Area returns the area of flow, π/4 (D² - d²). As a linear capacity it is
// volume per length: c.Area().In(unit.BarrelPerFoot).
//
// Source: geometry.
func (c Conduit) Area() unit.Area {
	d, i := float64(c.Outer), float64(c.Inner)
	return unit.Area(math.Pi / 4 * (d - i) * (d + i))
}

// HydraulicDiameter returns four areas over the wetted perimeter, D - d.
//
//	Dh = D − d
//
// Source: definition.
func (c Conduit) HydraulicDiameter() unit.Length { return c.Outer - c.Inner }

// Volume returns the volume in a length.
//
//	V = A·L
//
// Range: any length; see Conduit.
//
// Source: geometry.
func (c Conduit) Volume(length unit.Length) unit.Volume {
	return unit.Volume(float64(c.Area()) * float64(length))
}

// Length returns the length that a volume takes up: of a spacer, a pill or a
// slug.
//
//	L = V/A
//
// Range: any volume; infinite where there is no area, see Conduit.
//
// Source: geometry.
func (c Conduit) Length(volume unit.Volume) unit.Length {
	return unit.Length(float64(volume) / float64(c.Area()))
}

// Velocity returns the mean velocity at a rate, Q/A.
//
// Range: any rate, of either sign; infinite where there is no area, see
// Conduit.
//
// Source: continuity.
func (c Conduit) Velocity(rate unit.FlowRate) unit.Velocity {
	return unit.Velocity(float64(rate) / float64(c.Area()))
}

// Rate returns the rate at a mean velocity, V·A.
//
// Range: any velocity, of either sign; see Conduit.
//
// Source: continuity.
func (c Conduit) Rate(v unit.Velocity) unit.FlowRate {
	return unit.FlowRate(float64(v) * float64(c.Area()))
}

// Validate reports everything that is wrong with c.
func (c Conduit) Validate() error {
	f := fault.In("flow")
	if c.valid() {
		return nil
	}
	f.Add(fault.Between("Outer", c.Outer, leastDiameter, mostDiameter))
	if c.Inner != 0 && c.Outer > 0 {
		f.Add(fault.Between("Inner", c.Inner, leastRatio*c.Outer, mostRatio*c.Outer))
	}
	if h := c.HydraulicDiameter(); h > 0 {
		f.Add(fault.Between("Roughness", c.Roughness, 0, mostRelativeRoughness*h))
	}
	return f.Err()
}

func (c Conduit) valid() bool {
	ring := c.Inner == 0 || c.Inner >= leastRatio*c.Outer && c.Inner <= mostRatio*c.Outer
	return c.Outer >= leastDiameter && c.Outer <= mostDiameter && ring &&
		c.Roughness >= 0 && c.Roughness <= mostRelativeRoughness*(c.Outer-c.Inner)
}
