package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Load is everything that acts on a cross-section of pipe.
type Load struct {
	Axial     unit.Force     `json:"axial"`  // real force in the wall, tension positive
	Inside    unit.Pressure  `json:"inside"` // at this depth
	Outside   unit.Pressure  `json:"outside"`
	Curvature unit.Curvature `json:"curvature"`
	Torque    unit.Torque    `json:"torque"`
}

// WallStress is the state of stress at one wall, on the side where bending makes
// the von Mises stress greatest.
type WallStress struct {
	Radial   unit.Pressure `json:"radial"`
	Hoop     unit.Pressure `json:"hoop"`
	Axial    unit.Pressure `json:"axial"`
	Shear    unit.Pressure `json:"shear"`
	Bending  unit.Pressure `json:"bending"` // amplitude, 0 or more; counted in Axial with the worse sign
	VonMises unit.Pressure `json:"von_mises"`
}

// Stresses are the states of stress at both walls of a pipe.
type Stresses struct {
	Inner WallStress `json:"inner"`
	Outer WallStress `json:"outer"`

	pipe Pipe
	load Load
}

// VonMises returns the greater von Mises stress of the two walls.
func (s Stresses) VonMises() unit.Pressure { return max(s.Inner.VonMises, s.Outer.VonMises) }

// Stresses returns the stresses at both walls of a thick pipe under a load: Lamé
// for the pressures, beam bending for the curvature, torsion.
//
//	radial    σr = A - B/r²      A = (pi ri² - po ro²) / (ro² - ri²)
//	hoop      σh = A + B/r²      B = (pi - po) ri² ro² / (ro² - ri²)
//	axial     σz = Fa/As ± E κ r
//	shear     τ  = T r / J
//	von Mises √((σr-σh)² + (σh-σz)² + (σz-σr)² + 6 τ²)/√2
//
// Fa is the real axial force; the ends are whatever made that force. Valid while
// the von Mises stress is below the yield strength.
//
// Source: Lamé; Timoshenko, Strength of Materials; API TR 5C3 (2008), clause 6.
func (p Pipe) Stresses(l Load) Stresses {
	return Stresses{Inner: p.wallStress(l, p.ID/2), Outer: p.wallStress(l, p.OD/2), pipe: p, load: l}
}

func (p Pipe) wallStress(l Load, radius unit.Length) WallStress {
	ri, ro, r := float64(p.ID)/2, float64(p.OD)/2, float64(radius)
	po, Δp := float64(l.Outside), float64(l.Inside-l.Outside)
	// A and B put in, with ro² - ri² as a product: in a thin wall the difference
	// of the squares, and of A and B/r², would lose the digits.
	per := Δp * ri * ri / ((ro - ri) * (ro + ri))
	σr, σh := per*(r-ro)*(r+ro)/(r*r)-po, per*(r*r+ro*ro)/(r*r)-po
	σa := float64(l.Axial) / float64(p.SteelArea())
	σb := float64(p.Material.Young) * math.Abs(float64(l.Curvature)) * r
	τ := float64(l.Torque) * r / float64(p.PolarMoment())
	w := WallStress{
		Radial: unit.Pressure(σr), Hoop: unit.Pressure(σh),
		Shear: unit.Pressure(τ), Bending: unit.Pressure(σb),
	}
	σz, σv := σa+σb, vonMises(σr, σh, σa+σb, τ)
	if other := vonMises(σr, σh, σa-σb, τ); other > σv {
		σz, σv = σa-σb, other
	}
	w.Axial, w.VonMises = unit.Pressure(σz), unit.Pressure(σv)
	return w
}

func vonMises(σr, σh, σz, τ float64) float64 {
	a, b, c := σr-σh, σh-σz, σz-σr
	return math.Sqrt((a*a + b*b + c*c + 6*τ*τ) / 2)
}

// HelixCurvature returns the curvature of a pipe that lies buckled as a helix on
// the wall of its hole.
//
//	κ = r F / (2 E I)
//
// clearance r is the radial clearance between the axes; force F is the effective
// compression, its sign is left out.
//
// Range: any force; a clearance from zero up, which isn't checked.
//
// Source: Lubinski, Althouse and Logan 1962 (bending stress of helical buckling,
// D r F / (4 I)).
func (p Pipe) HelixCurvature(clearance unit.Length, force unit.Force) unit.Curvature {
	r, F := float64(clearance), math.Abs(float64(force))
	return unit.Curvature(r * F / (2 * float64(p.Material.Young) * float64(p.SecondMoment())))
}

// EffectiveForce returns the force that buckles a pipe and that its axial
// friction and buoyancy follow.
//
//	Fe = Fa - pi Ai + po Ao
//
// Range: any load; nothing is checked.
//
// Source: Lubinski 1951; API RP 7G; Sparks 1984.
func (p Pipe) EffectiveForce(l Load) unit.Force {
	// With Ao = Ai + As, which keeps its digits in a thin wall.
	Δp := float64(l.Inside - l.Outside)
	return unit.Force(float64(l.Axial) + float64(l.Outside)*float64(p.SteelArea()) - Δp*float64(p.InnerArea()))
}

// Steps shows how the stresses come about.
func (s Stresses) Steps() []working.Step {
	const source = "Lamé; Timoshenko, Strength of Materials"
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	p, l := s.pipe, s.load
	As, J := in("As", working.Of(p.SteelArea())), in("J", working.Of(p.PolarMoment()))
	D, d := in("D", working.Of(p.OD)), in("d", working.Of(p.ID))
	steps := []working.Step{
		{Name: "steel area", Symbol: "As", Equation: "pi/4*(D*D - d*d)", Inputs: []working.Input{D, d}, Value: As.Value, Source: "geometry"},
		{Name: "polar second moment", Symbol: "J", Equation: "pi/32*(pow(D, 4) - pow(d, 4))", Inputs: []working.Input{D, d}, Value: J.Value, Source: "geometry"},
	}
	for _, wall := range []struct {
		name   string
		radius unit.Length
		WallStress
	}{{"inner", p.ID / 2, s.Inner}, {"outer", p.OD / 2, s.Outer}} {
		r := in("r", working.Of(wall.radius))
		p1, p2 := in("pin", working.Of(l.Inside)), in("pout", working.Of(l.Outside))
		sign := "+"
		if float64(wall.Axial) < float64(l.Axial)/float64(p.SteelArea()) {
			sign = "-"
		}
		σr, σh, σz, τ := in("σr", working.Of(wall.Radial)), in("σh", working.Of(wall.Hoop)), in("σz", working.Of(wall.Axial)), in("τ", working.Of(wall.Shear))
		σb := in("σb", working.Of(wall.Bending))
		steps = append(steps,
			working.Step{Name: "radial stress, " + wall.name + " wall", Symbol: "σr", Value: σr.Value, Source: source, Inputs: []working.Input{p1, p2, d, D, r},
				Equation: "(pin*d*d - pout*D*D)/(D*D - d*d) - (pin - pout)*d*d*D*D/4/(D*D - d*d)/(r*r)"},
			working.Step{Name: "hoop stress, " + wall.name + " wall", Symbol: "σh", Value: σh.Value, Source: source, Inputs: []working.Input{p1, p2, d, D, r},
				Equation: "(pin*d*d - pout*D*D)/(D*D - d*d) + (pin - pout)*d*d*D*D/4/(D*D - d*d)/(r*r)"},
			working.Step{Name: "bending stress, " + wall.name + " wall", Symbol: "σb", Value: σb.Value, Source: source, Equation: "E*abs(κ)*r",
				Inputs: []working.Input{in("E", working.Of(p.Material.Young)), in("κ", working.Of(l.Curvature)), r}},
			working.Step{Name: "axial stress, " + wall.name + " wall", Symbol: "σz", Value: σz.Value, Source: source, Equation: "F/As " + sign + " σb",
				Inputs: []working.Input{in("F", working.Of(l.Axial)), As, σb}},
			working.Step{Name: "shear stress, " + wall.name + " wall", Symbol: "τ", Value: τ.Value, Source: source, Equation: "T*r/J",
				Inputs: []working.Input{in("T", working.Of(l.Torque)), r, J}},
			working.Step{Name: "von Mises stress, " + wall.name + " wall", Symbol: "σv", Value: working.Of(wall.VonMises), Source: "von Mises 1913",
				Inputs: []working.Input{σr, σh, σz, τ}, Equation: "sqrt((pow(σr-σh, 2) + pow(σh-σz, 2) + pow(σz-σr, 2))/2 + 3*τ*τ)"},
		)
	}
	return steps
}
