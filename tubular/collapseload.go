package tubular

import (
	"errors"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
)

// CollapseRating is the collapse resistance of a pipe, with what it comes from.
type CollapseRating struct {
	Pressure    unit.Pressure  `json:"pressure"` // least outside minus inside pressure that collapses it
	Regime      CollapseRegime `json:"regime"`
	Slenderness float64        `json:"slenderness"` // D/t
	Equivalent  unit.Pressure  `json:"equivalent"`  // yield strength left by the axial load
	Curve       CollapseCurve  `json:"curve"`       // of the equivalent yield strength

	// What made the equivalent yield strength.
	Yield       unit.Pressure `json:"yield"`
	AxialStress unit.Pressure `json:"axial_stress"`
	Inside      unit.Pressure `json:"inside"`
}

// ErrNoCollapse says that an axial load takes so much of the yield strength that
// API gives no collapse formula for what is left.
var ErrNoCollapse = errors.New("API gives no collapse formula")

// EquivalentYield returns the yield strength that is left for collapse under
// axial tension.
//
//	Yax = (√(1 - 0.75 (s/Y)²) - 0.5 s/Y) Y
//
// s is the axial stress in the older form and axial stress plus inside pressure
// in the form of 2015. Compression (s < 0) earns no credit: Yax = Y. It is zero
// from s = Y on.
//
// Range: any stress; a yield strength above zero, which isn't checked: NaN at
// zero and no stress.
//
// Source: API TR 5C3 (2008), Eq. 42; API Bul 5C3 (1994), 2.1.5. That compression
// earns nothing is this library's choice, on the safe side.
func EquivalentYield(yield, s unit.Pressure) unit.Pressure {
	return yield * unit.Pressure(yieldLeft(float64(s/yield)))
}

// yieldLeft is Yax/Y at s/Y.
func yieldLeft(x float64) float64 {
	switch {
	case x <= 0:
		return 1
	case x >= 1:
		return 0
	}
	return math.Sqrt(1-0.75*x*x) - 0.5*x
}

// Collapse returns the collapse resistance of p without axial load and inside
// pressure. See CollapseCurve.
func (p Pipe) Collapse() (CollapseRating, error) { return p.CollapseUnderLoad(0, 0) }

// CollapseUnderLoad returns the collapse resistance of p under axial stress
// (tension positive) and inside pressure, as a difference of outside minus
// inside pressure: the form of the 2015 addendum, where the yield strength is
// reduced by axial stress plus inside pressure.
//
//	Yax = (√(1 - 0.75 ((σa + pi)/Y)²) - 0.5 (σa + pi)/Y) Y
//
// The error wraps ErrNoCollapse when the reduced yield strength is below 24,000
// psi.
//
// Source: API TR 5C3, Addendum October 2015, 8.4.6. Its text is from memory.
func (p Pipe) CollapseUnderLoad(axialStress, inside unit.Pressure) (CollapseRating, error) {
	return p.collapse(axialStress, inside, axialStress+inside)
}

// CollapseBiaxial returns the collapse resistance of p under axial stress by the
// older biaxial form, which reduces the yield strength by the axial stress
// alone. It is to be held against EquivalentExternalPressure.
//
// Source: API Bul 5C3 (1994), 2.1.5; API TR 5C3 (2008), Eq. 42.
func (p Pipe) CollapseBiaxial(axialStress unit.Pressure) (CollapseRating, error) {
	return p.collapse(axialStress, 0, axialStress)
}

// EquivalentExternalPressure returns the outside pressure without inside
// pressure that loads p like both together, by the older form.
//
//	pe = po - (1 - 2 t/D) pi
//
// Range: any pressures; the pipe isn't checked.
//
// Source: API Bul 5C3 (1994), 2.1.6; API TR 5C3 (2008), Eq. 43. Dropped by the
// addendum of 2015.
func (p Pipe) EquivalentExternalPressure(outside, inside unit.Pressure) unit.Pressure {
	return outside - inside*unit.Pressure(1-2/p.Slenderness())
}

func (p Pipe) collapse(axialStress, inside, reducing unit.Pressure) (CollapseRating, error) {
	err := fault.Join("tubular", p.rateable(), fault.Finite("AxialStress", axialStress), fault.Finite("Inside", inside))
	if err != nil {
		return CollapseRating{}, err
	}
	Y := p.Material.Yield
	r := CollapseRating{Slenderness: p.Slenderness(), Equivalent: EquivalentYield(Y, reducing),
		Yield: Y, AxialStress: axialStress, Inside: inside}
	if r.Curve, err = PrepareCollapse(Y); err != nil {
		return CollapseRating{}, err // without any load
	}
	if r.Equivalent < leastYield {
		return CollapseRating{}, fault.NewIn("tubular", "", "yield strength left by an axial stress of %v and an inside pressure of %v is %v; must be at least %v: %w",
			axialStress.Rounded(5), inside.Rounded(5), r.Equivalent.Rounded(5), leastYield, ErrNoCollapse)
	}
	if r.Curve, err = PrepareCollapse(r.Equivalent); err != nil {
		return CollapseRating{}, err
	}
	r.Regime = r.Curve.Regime(r.Slenderness)
	r.Pressure = r.Curve.Pressure(r.Slenderness)
	return r, finiteResult("collapse pressure", r.Pressure)
}

// rateable reports why no rating can be given.
func (p Pipe) rateable() error {
	return fault.Join("tubular", p.Validate(), fault.At("Material", p.Material.strength()))
}

// Steps shows how the collapse pressure comes about.
func (r CollapseRating) Steps() []working.Step {
	const source = "API TR 5C3 (2008), clause 8"
	c := r.Curve
	Y := working.Input{Symbol: "Y", Value: working.Of(c.Yield)}
	psi := working.Input{Symbol: "psi", Value: working.Of(unit.PSI)}
	x := working.Input{Symbol: "x", Value: working.Number(r.Slenderness)}
	number := func(symbol string, v float64) working.Input {
		return working.Input{Symbol: symbol, Value: working.Number(v)}
	}
	A, B, F, G := number("A", c.A), number("B", c.B), number("F", c.F), number("G", c.G)
	var steps []working.Step
	if r.Equivalent != r.Yield {
		steps = append(steps, working.Step{Name: "yield strength left by the axial load", Symbol: "Yax",
			Equation: "Y*(sqrt(1 - 0.75*pow((sa + pin)/Y, 2)) - 0.5*(sa + pin)/Y)",
			Inputs: []working.Input{{Symbol: "Y", Value: working.Of(r.Yield)},
				{Symbol: "sa", Value: working.Of(r.AxialStress)}, {Symbol: "pin", Value: working.Of(r.Inside)}},
			Value: working.Of(r.Equivalent), Source: "API TR 5C3, Addendum 2015, 8.4.6"})
	}
	last := working.Step{Name: "collapse pressure, " + r.Regime.String(), Symbol: "pc", Value: working.Of(r.Pressure), Source: source}
	plastic := []working.Step{
		{Name: "coefficient of plastic collapse", Symbol: "A", Source: source, Value: A.Value, Inputs: []working.Input{Y, psi},
			Equation: "2.8762 + 0.10679e-5*(Y/psi) + 0.21301e-10*pow(Y/psi, 2) - 0.53132e-16*pow(Y/psi, 3)"},
		{Name: "coefficient of plastic collapse", Symbol: "B", Source: source, Value: B.Value, Inputs: []working.Input{Y, psi},
			Equation: "0.026233 + 0.50609e-6*(Y/psi)"},
	}
	switch r.Regime {
	case YieldCollapse:
		last.Equation, last.Inputs = "2*Y*(x - 1)/(x*x)", []working.Input{Y, x}
	case PlasticCollapse:
		C := working.Input{Symbol: "C", Value: working.Of(c.C)}
		steps = append(steps, plastic...)
		steps = append(steps, working.Step{Name: "coefficient of plastic collapse", Symbol: "C", Source: source, Value: C.Value, Inputs: []working.Input{Y, psi},
			Equation: "psi*(-465.93 + 0.030867*(Y/psi) - 0.10483e-7*pow(Y/psi, 2) + 0.36989e-13*pow(Y/psi, 3))"})
		last.Equation, last.Inputs = "Y*(A/x - B) - C", []working.Input{Y, A, x, B, C}
	case TransitionCollapse:
		steps = append(steps, plastic...)
		steps = append(steps,
			working.Step{Name: "coefficient of transition collapse", Symbol: "F", Source: source, Value: F.Value, Inputs: []working.Input{A, B, Y, psi},
				Equation: "46.95e6*pow(3*B/A/(2 + B/A), 3)/((Y/psi)*(3*B/A/(2 + B/A) - B/A)*pow(1 - 3*B/A/(2 + B/A), 2))"},
			working.Step{Name: "coefficient of transition collapse", Symbol: "G", Source: source, Value: G.Value, Inputs: []working.Input{F, B, A},
				Equation: "F*B/A"})
		last.Equation, last.Inputs = "Y*(F/x - G)", []working.Input{Y, F, x, G}
	case ElasticCollapse:
		last.Equation, last.Inputs = "46.95e6*psi/(x*pow(x - 1, 2))", []working.Input{psi, x}
	}
	return append(steps, last)
}
