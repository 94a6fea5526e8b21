package movement

import (
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Confined is a pipe in a hole under axial compression. Loads of buckling are
// compressions of the effective force, given as positive numbers as the trade
// does: a pipe buckles where -Fe is greater.
//
// Range: a pipe that Validate takes in a wider hole. Only At checks its
// numbers: buckling loads are infinite or NaN where the hole isn't wider than
// the pipe.
type Confined struct {
	Pipe        tubular.Pipe         `json:"pipe"`
	Hole        unit.Length          `json:"hole"`        // inside diameter of the casing or hole
	Weight      unit.WeightPerLength `json:"weight"`      // effective: with fluids inside and outside
	Inclination unit.Angle           `json:"inclination"` // from the vertical
	Build       unit.Curvature       `json:"build"`       // change of inclination per length, positive where it grows with depth
	Turn        unit.Curvature       `json:"turn"`        // sine of inclination times change of azimuth per length
}

// Clearance returns the radial clearance.
//
//	r = (Dh - Do)/2
//
// Source: geometry.
func (c Confined) Clearance() unit.Length { return (c.Hole - c.Pipe.OD) / 2 }

// At returns the pipe at a measured depth of a path, with its inclination, build and
// turn there, taken over 2 m around it.
//
//	θ' = Δθ/L,  sinθ*φ' = 2*asin(sqrt(sinθ1*sinθ2)*|sin(Δφ/2)|)/L
//
// Errors are those of the path. Source: spherical geometry of minimum curvature, split
// as He & Kyllingstad, SPE Drilling & Completion March 1995, p. 10 (SPE 25370).
func (c Confined) At(path *hydrostatics.Path, md unit.Length) (Confined, error) {
	if path == nil {
		return Confined{}, fault.NewIn(scope, "Path", "is missing")
	}
	if err := c.finite(); err != nil {
		return Confined{}, err
	}
	here, err := path.At(md)
	if err != nil {
		return Confined{}, fault.Join(scope, err)
	}
	above, err := path.At(max(0, md-unit.Metre))
	if err != nil {
		return Confined{}, fault.Join(scope, err)
	}
	below, err := path.At(min(path.TotalDepth(), md+unit.Metre))
	if err != nil {
		return Confined{}, fault.Join(scope, err)
	}
	e := between(0, above, below)
	c.Inclination, c.Build, c.Turn = here.Inclination, unit.Curvature(e.build), unit.Curvature(e.turn)
	return c, nil
}

func (c Confined) finite() error {
	p, m := c.Pipe, c.Pipe.Material
	return fault.Join(scope, fault.Finite("Pipe.OD", p.OD), fault.Finite("Pipe.ID", p.ID), fault.Finite("Pipe.Weight", p.Weight),
		fault.Finite("Pipe.Material.Young", m.Young), fault.Plain("Pipe.Material.Poisson", m.Poisson, -1, 1, ""), fault.Finite("Pipe.Material.Expansion", m.Expansion),
		fault.Finite("Pipe.Material.Density", m.Density), fault.Finite("Pipe.Material.Yield", m.Yield), fault.Finite("Pipe.Material.Tensile", m.Tensile),
		fault.Finite("Hole", c.Hole), fault.Finite("Weight", c.Weight))
}

func (c Confined) numbers() (ei, r, w, sin float64) {
	return float64(c.Pipe.Material.Young) * float64(c.Pipe.SecondMoment()), float64(c.Clearance()), float64(c.Weight), math.Sin(float64(c.Inclination))
}

// Sinusoidal returns the compression at which the pipe snakes along the low
// side of a straight or a curved inclined hole.
//
//	F = sqrt(4*E*I*wc/r),  wc = sqrt((w*sinθ + F*θ')² + (F*sinθ*φ')²)
//
// In a straight hole this is Dawson and Paslay's 2*sqrt(E*I*w*sinθ/r). With
// build alone it is He and Kyllingstad's
// 2*E*I*θ'/r*(1 + sqrt(1 + w*sinθ*r/(E*I*θ'²))). The least such load is
// returned. Zero in a straight vertical hole: see VerticalSinusoidal.
//
// Source: Dawson & Paslay, JPT October 1984, p. 1734 (SPE 11167); He &
// Kyllingstad, SPE Drilling & Completion March 1995, p. 10 (SPE 25370).
func (c Confined) Sinusoidal() unit.Force {
	ei, r, w, sin := c.numbers()
	k, g := 4*ei/r, w*sin
	θ, φ := float64(c.Build), float64(c.Turn)
	if φ == 0 {
		// F² = k*|g + F*θ|: the root on the branch that the pipe starts from.
		s := θ
		if g < 0 {
			s = -θ
		}
		if g == 0 {
			s = math.Abs(θ)
		}
		return unit.Force((k*s + math.Sqrt(k*k*s*s+4*k*math.Abs(g))) / 2)
	}
	// F⁴ = k²*((g + F*θ)² + (F*φ)²) has one positive root, or three where the
	// hole drops; upward is above them all. Marks part the least from the rest.
	upward := k*math.Hypot(θ, φ) + math.Sqrt(k*math.Abs(g))
	hole := confine(ei, r)
	beyond := func(f float64) bool { return f >= hole.onset(contact(g, θ, φ, f)) }
	low, high := 0.0, upward
	const marks = 64
	for i := 1; i <= marks; i++ {
		if f := upward * float64(i) / marks; beyond(f) {
			low, high = upward*float64(i-1)/marks, f
			break
		}
	}
	for range 60 {
		if m := (low + high) / 2; beyond(m) {
			high = m
		} else {
			low = m
		}
	}
	return unit.Force(high)
}

// HelicalLeast returns the least compression that can hold a helix in a
// straight inclined hole, by energy: √2 times the sinusoidal load.
//
//	F = 2*sqrt(2)*sqrt(E*I*w*sinθ/r)
//
// Source: Chen, Lin & Cheatham, Journal of Energy Resources Technology June
// 1990 (SPE 19176).
func (c Confined) HelicalLeast() unit.Force { return unit.Force(math.Sqrt2) * c.Sinusoidal() }

// Helical returns the compression at the end of a pipe in a straight inclined
// hole at which its helix is full, with the load growing through the
// transition: 2√2 - 1 times the sinusoidal load.
//
//	F = 2*(2*sqrt(2) - 1)*sqrt(E*I*w*sinθ/r)
//
// Source: Wu & Juvkam-Wold 1993 (SPE 25503).
func (c Confined) Helical() unit.Force { return unit.Force(2*math.Sqrt2-1) * c.Sinusoidal() }

// HelicalMost returns the compression from which the pipe is a helix whatever it
// was before, unloading counted: 2√2 times the sinusoidal load. Under takes it.
//
//	F = 4*sqrt(2)*sqrt(E*I*w*sinθ/r)
//
// Source: Mitchell, SPE Drilling & Completion March 1999, p. 11 (SPE 55039),
// recalled and not read again.
func (c Confined) HelicalMost() unit.Force { return unit.Force(2*math.Sqrt2) * c.Sinusoidal() }

// VerticalSinusoidal returns the compression at the lower end at which a long
// pipe in a vertical hole first bends.
//
//	F = 1.94*(E*I*w²)^(1/3)
//
// Source: Lubinski, Drilling and Production Practice 1950 (1.94, buckling of
// the first order).
func (c Confined) VerticalSinusoidal() unit.Force { return c.vertical(1.94) }

// VerticalHelical returns the compression at the lower end at which a helix
// forms in a vertical hole.
//
//	F = 5.55*(E*I*w²)^(1/3)
//
// Source: Wu 1992, quoted by Wu & Juvkam-Wold, Journal of Energy Resources
// Technology September 1995 (5.55).
func (c Confined) VerticalHelical() unit.Force { return c.vertical(5.55) }

func (c Confined) vertical(k float64) unit.Force {
	ei, _, w, _ := c.numbers()
	return unit.Force(k * math.Cbrt(ei*w*w))
}

// FrictionLimit returns the greatest compression that a long helix brings down a
// straight hole by its own weight, against a friction factor: from there on the
// wall takes as much as the weight adds, and the string is locked up.
//
//	F = sqrt(4*E*I*w*cosθ/(μ*r))
//
// Infinite without friction, zero in a level hole, NaN where the hole rises. Package
// drag marches to it along any path.
//
// Source: follows from the wall's force on a helix, r*F²/(4*E*I), Mitchell, SPE
// Drilling Engineering December 1986 (SPE 13064); the limit itself derived here.
func (c Confined) FrictionLimit(friction float64) unit.Force {
	ei, r, w, _ := c.numbers()
	return unit.Force(math.Sqrt(4 * ei * w * math.Cos(float64(c.Inclination)) / (friction * r)))
}

// Contact returns the contact force per length of a pipe that isn't buckled,
// under an effective force (tension positive).
//
//	wc = sqrt((w*sinθ - Fe*θ')² + (Fe*sinθ*φ')²)
//
// Range: any force; nothing is checked.
//
// Source: Johancsik, Friesen & Dawson, JPT June 1984, p. 987 (SPE 11380).
func (c Confined) Contact(effective unit.Force) unit.WeightPerLength {
	_, _, w, sin := c.numbers()
	return unit.WeightPerLength(contact(w*sin, float64(c.Build), float64(c.Turn), -float64(effective)))
}

// contact is the contact force per length under a compression f.
func contact(g, θ, φ, f float64) float64 {
	if φ == 0 {
		return math.Abs(g + f*θ)
	}
	a, b := g+f*θ, f*φ
	return math.Sqrt(a*a + b*b)
}

// Lay is how a pipe lies in its hole under a force.
type Lay struct {
	Mode      Mode                 `json:"mode"`
	Onset     unit.Force           `json:"onset"`     // compression at which it buckles, at this force's contact
	Strain    float64              `json:"strain"`    // shortening by buckling per length: never positive
	Contact   unit.WeightPerLength `json:"contact"`   // force against the wall per length
	Curvature unit.Curvature       `json:"curvature"` // of the axis, hole and buckling together
	Bending   unit.Pressure        `json:"bending"`   // bending stress at the outer fibre
}

// Under returns how the pipe lies under an effective force, tension positive.
//
//	straight     F <= Fp                      Fp = sqrt(4*E*I*wc(F)/r)
//	sinusoidal   Fp < F < 2*sqrt(2)*Fp        ε = -0.7285*r²/(4*E*I)*F^0.08*(F - Fp)^0.92
//	                                          κ = r*1.1227²/(2*E*I)*F^0.08*(F - Fp)^0.92
//	helical      F >= 2*sqrt(2)*Fp            ε = -r²*F/(4*E*I), κ = r*F/(2*E*I), W = r*F²/(4*E*I)
//
// F is the compression. In a straight vertical hole Fp is zero, and the pipe is
// a helix from the first compression on, as Lubinski takes it. A pipe that fills
// its hole stays straight.
//
// Range: any force; see Confined.
//
// Source: Mitchell, SPE Drilling & Completion March 1999, p. 11 (SPE 55039),
// recalled and not read again; Lubinski, Althouse & Logan, JPT June 1962.
func (c Confined) Under(effective unit.Force) Lay {
	ei, r, w, sin := c.numbers()
	e := element{build: float64(c.Build), turn: float64(c.Turn)}
	hole := confine(ei, r)
	var x lay
	hole.lie(&x, -float64(effective), w*sin, &e, 2*math.Sqrt2)
	κ := unit.Curvature(math.Hypot(e.build, e.turn) + x.curvature)
	return Lay{
		Mode: x.mode, Onset: unit.Force(x.onset), Strain: x.strain, Contact: unit.WeightPerLength(x.contact),
		Curvature: κ, Bending: BendingStress(c.Pipe, κ),
	}
}
