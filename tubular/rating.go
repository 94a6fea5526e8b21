package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
)

// WallTolerance is the share of the nominal wall that API Spec 5CT guarantees,
// 1 - 12.5 %.
const WallTolerance = 0.875

// Ratings are the resistances of a new pipe body, each alone.
type Ratings struct {
	InternalYield unit.Pressure  `json:"internal_yield"` // Barlow, with the wall tolerance
	YieldOpen     unit.Pressure  `json:"yield_open"`     // thick wall, no axial force, with the wall tolerance
	YieldClosed   unit.Pressure  `json:"yield_closed"`   // thick wall, capped ends, with the wall tolerance
	Collapse      CollapseRating `json:"collapse"`
	BodyYield     unit.Force     `json:"body_yield"`

	pipe Pipe
}

// Ratings returns the resistances of p to internal pressure, collapse and axial
// force. It is an error when p is not valid, has no yield strength, or one
// outside the range of PrepareCollapse.
func (p Pipe) Ratings() (Ratings, error) {
	c, err := p.Collapse()
	if err != nil {
		return Ratings{}, err
	}
	r := Ratings{
		InternalYield: p.InternalYield(),
		YieldOpen:     p.YieldOpenEnds(WallTolerance),
		YieldClosed:   p.YieldClosedEnds(WallTolerance),
		Collapse:      c,
		BodyYield:     p.BodyYield(),
		pipe:          p,
	}
	return r, fault.Join("tubular", finiteResult("internal yield", r.InternalYield), finiteResult("thick-wall yield", r.YieldOpen),
		finiteResult("thick-wall yield", r.YieldClosed), finiteResult("body yield", r.BodyYield))
}

// InternalYield returns the internal yield pressure (burst rating) of the pipe
// body by Barlow's formula, with API's wall tolerance.
//
//	P = 0.875 · 2 Y t / D
//
// Source: API Bul 5C3 (1985), 3.1.1; API TR 5C3 (2008), historical formula.
func (p Pipe) InternalYield() unit.Pressure { return p.Barlow(WallTolerance) }

// Barlow returns the inside pressure at which the hoop stress of a thin wall
// reaches the yield strength, with a share of the nominal wall of its own: 0.875
// is API's, some cold-worked alloys have 0.90.
//
//	P = k · 2 Y t / D
//
// Range: a share from 0 to 1 of the wall; it isn't checked.
//
// Source: Barlow; Crumpton 2018, Eq. 7.7, for other shares.
func (p Pipe) Barlow(wall float64) unit.Pressure {
	return unit.Pressure(wall * 2 * float64(p.Material.Yield) * float64(p.Wall()/p.OD))
}

// YieldOpenEnds returns the inside pressure at which the inner wall begins to
// yield with no axial force in the pipe: von Mises with Lamé's stresses.
//
//	P = Y (D² - d²) / √(3 D⁴ + d⁴),  d = D - 2 k t
//
// k is the share of the nominal wall, WallTolerance for API.
//
// Range: a share from 0 to 1 of the wall; it isn't checked.
//
// Source: ISO/TR 10400:2007, 6.6.1.2 (open-end thick wall). The place is from
// memory; the formula follows from Pipe.Stresses.
func (p Pipe) YieldOpenEnds(wall float64) unit.Pressure {
	D2, difference := squares(p.OD, p.Wall(), wall)
	d2 := D2 - difference
	return unit.Pressure(float64(p.Material.Yield) * difference / math.Sqrt(3*D2*D2+d2*d2))
}

// YieldClosedEnds returns the inside pressure at which the inner wall begins to
// yield with capped ends and no other axial load.
//
//	P = Y (D² - d²) / (√3 D²),  d = D - 2 k t
//
// k is the share of the nominal wall, WallTolerance for API.
//
// Range: a share from 0 to 1 of the wall; it isn't checked.
//
// Source: ISO/TR 10400:2007, 6.6.1.1 (capped-end). The place is from memory;
// the formula follows from Pipe.Stresses.
func (p Pipe) YieldClosedEnds(wall float64) unit.Pressure {
	D2, difference := squares(p.OD, p.Wall(), wall)
	return unit.Pressure(float64(p.Material.Yield) * difference / (math.Sqrt(3) * D2))
}

// squares returns D² and D² - d², the latter as the product 4 k t (D - k t),
// which keeps its digits in a thin wall.
func squares(od, t unit.Length, wall float64) (D2, difference float64) {
	D, kt := float64(od), wall*float64(t)
	return D * D, 4 * kt * (D - kt)
}

// BodyYield returns the axial force at which the pipe body yields.
//
//	F = Y As
//
// Source: API Bul 5C3 (1985), 2.1 (pipe body yield strength).
func (p Pipe) BodyYield() unit.Force {
	return unit.Force(float64(p.Material.Yield) * float64(p.SteelArea()))
}

// HydrostaticTest returns the mill's hydrostatic test pressure before rounding.
//
//	P = 2 f Y t / D
//
// f is 0.8, and 0.6 for H40, J55 and K55 above 9-5/8 in. API rounds it to 100
// psi and caps it, at 3,000 psi for the standard test of those grades and at
// 10,000 psi otherwise; the purchase agreement says which applied.
//
// Source: API Spec 5CT, 10.12; API Bul 5C3 (1985), section 5. From memory.
func (p Pipe) HydrostaticTest(f float64) unit.Pressure { return p.Barlow(f) }

// Steps shows how the ratings come about.
func (r Ratings) Steps() []working.Step {
	p := r.pipe
	in := func(symbol string, v working.Value) working.Input {
		return working.Input{Symbol: symbol, Value: v}
	}
	Y, D, d := in("Y", working.Of(p.Material.Yield)), in("D", working.Of(p.OD)), in("d", working.Of(p.ID))
	k, t := in("k", working.Number(WallTolerance)), in("t", working.Of(p.Wall()))
	return append([]working.Step{
		{Name: "wall", Symbol: "t", Equation: "(D - d)/2", Inputs: []working.Input{D, d}, Value: t.Value, Source: "geometry"},
		{Name: "internal yield, Barlow", Symbol: "pB", Equation: "k*2*Y*t/D", Inputs: []working.Input{k, Y, t, D},
			Value: working.Of(r.InternalYield), Source: "API Bul 5C3 (1985), 3.1.1"},
		{Name: "internal yield, thick wall, no axial force", Symbol: "pO",
			Equation: "Y*(D*D - pow(D - 2*k*t, 2))/sqrt(3*pow(D, 4) + pow(D - 2*k*t, 4))", Inputs: []working.Input{Y, D, k, t},
			Value: working.Of(r.YieldOpen), Source: "ISO/TR 10400:2007, 6.6.1.2"},
		{Name: "internal yield, thick wall, capped ends", Symbol: "pC",
			Equation: "Y*(D*D - pow(D - 2*k*t, 2))/(sqrt(3)*D*D)", Inputs: []working.Input{Y, D, k, t},
			Value: working.Of(r.YieldClosed), Source: "ISO/TR 10400:2007, 6.6.1.1"},
		{Name: "body yield", Symbol: "FY", Equation: "Y*pi*(D*D - d*d)/4", Inputs: []working.Input{Y, D, d},
			Value: working.Of(r.BodyYield), Source: "API Bul 5C3 (1985), 2.1"},
	}, r.Collapse.Steps()...)
}
