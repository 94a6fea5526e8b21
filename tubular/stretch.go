package tubular

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Elongation returns the stretch of a straight bar, Hooke's law.
//
//	e = F L / (E A)
//
// Source: Hooke; API RP 7G (1998), where e = L T / (735,000 W) in inches is the
// same with A by weight.
func Elongation(pull unit.Force, length unit.Length, area unit.Area, young unit.Pressure) unit.Length {
	return unit.Length(float64(pull) * float64(length) / (float64(young) * float64(area)))
}

// Stretch returns how much longer a length of p becomes under a pull. See
// Elongation.
func (p Pipe) Stretch(pull unit.Force, length unit.Length) unit.Length {
	return Elongation(pull, length, p.SteelArea(), p.Material.Young)
}

// PullFor returns the pull that stretches a length of p by e.
//
//	F = E As e / L
func (p Pipe) PullFor(e, length unit.Length) unit.Force {
	return unit.Force(float64(p.Material.Young) * float64(p.SteelArea()) * float64(e/length))
}

// FreeLength returns the length of p that a pull stretches by e: the length of
// free pipe above the point where it is stuck.
//
//	L = E As e / ΔF
//
// ΔF is the pull above the weight at which e was first marked, so that the pipe
// is straight and moves all the way down. E As, for one inch and 1,000 lbf, is
// the field's free point constant, 2,500 As. The field's 735,294 e W / ΔF takes
// the area from the weight.
//
// Source: Lapeyrouse, Formulas and Calculations for Drilling, Production and
// Workover, chapter 4 (stuck pipe).
func (p Pipe) FreeLength(e unit.Length, pull unit.Force) unit.Length {
	return unit.Length(float64(p.Material.Young) * float64(p.SteelArea()) * float64(e) / float64(pull))
}

// ThermalStretch returns how much longer a length of p becomes when it is warmed,
// with the material's expansion taken as constant. See CarbonSteel for one that
// rises with temperature.
//
//	e = α L ΔT
//
// Source: Lubinski, Althouse and Logan 1962.
func (p Pipe) ThermalStretch(length unit.Length, warming unit.TemperatureDifference) unit.Length {
	return unit.Length(float64(p.Material.Expansion) * float64(length) * float64(warming))
}

// Section is a length of one pipe in a string.
type Section struct {
	Pipe    Pipe
	Length  unit.Length
	Warming unit.TemperatureDifference // mean, since the length was measured
}

// Hanging is a vertical string that hangs from its top, open at the bottom, in
// one fluid that stands to its top inside and outside.
type Hanging struct {
	Sections []Section // from the top
	Fluid    unit.Density
	Pull     unit.Force // on the lower end: a tool's weight positive, weight set down negative
}

// HangingStretch is the stretch of a hanging string, by cause.
type HangingStretch struct {
	Weight     unit.Length // of the string in air
	Pressure   unit.Length // upward on the lower end and the shoulders between sections
	Ballooning unit.Length // the fluid squeezes the wall, which lengthens the pipe
	Thermal    unit.Length
	Pull       unit.Length

	uniform *uniformString
}

type uniformString struct {
	pipe    Pipe
	hanging Hanging
}

// Total returns the sum of all causes.
func (s HangingStretch) Total() unit.Length {
	return s.Weight + s.Pressure + s.Ballooning + s.Thermal + s.Pull
}

// Stretch returns how much longer the string hangs than it was measured, without
// load and before warming. For one section without couplings, of steel density
// ρs in fluid of density ρ
//
//	weight       ρs g L² / (2 E)
//	pressure    -ρ g L² / E
//	ballooning   ν ρ g L² / E
//
// together g L² (ρs - 2 (1 - ν) ρ) / (2 E), the field's L² (65.44 - 1.44 W) /
// 9.625e7 in inches, feet and lb/gal. With several sections the real force at
// each depth is integrated, which is exact.
//
// Source: API RP 7G (1998), stretch due to own weight; Lubinski, Althouse and
// Logan 1962 for the effect of pressure on the wall.
func (h Hanging) Stretch() (HangingStretch, error) {
	if err := h.validate(); err != nil {
		return HangingStretch{}, err
	}
	ρ, F := float64(h.Fluid), float64(h.Pull)
	bottom := 0.0
	for _, s := range h.Sections {
		bottom += float64(s.Length)
	}
	var r HangingStretch
	below, weight, up := 0.0, 0.0, 0.0 // steel area, weight in air and push of pressure below the section's lower end
	z := bottom
	for i := len(h.Sections) - 1; i >= 0; i-- {
		s := h.Sections[i]
		L, E, As := float64(s.Length), float64(s.Pipe.Material.Young), float64(s.Pipe.SteelArea())
		w := float64(s.Pipe.WeightInAir())
		up += ρ * g * z * (As - below)
		r.Weight += unit.Length((weight + w*L/2) * L / (E * As))
		r.Pressure -= unit.Length(up * L / (E * As))
		r.Ballooning += unit.Length(2 * s.Pipe.Material.Poisson * ρ * g * (z - L/2) * L / E)
		r.Thermal += s.Pipe.ThermalStretch(s.Length, s.Warming)
		r.Pull += unit.Length(F * L / (E * As))
		weight, below, z = weight+w*L, As, z-L
	}
	if len(h.Sections) == 1 {
		r.uniform = &uniformString{pipe: h.Sections[0].Pipe, hanging: h}
	}
	return r, nil
}

func (h Hanging) validate() error {
	faults := []error{validateSections(h.Sections), finiteInput("Hanging.Pull", h.Pull)}
	if !finite(h.Fluid) || h.Fluid < 0 {
		faults = append(faults, fmt.Errorf("tubular: Hanging.Fluid = %v: want 0 or more", h.Fluid))
	}
	return errors.Join(faults...)
}

func validateSections(sections []Section) error {
	if len(sections) == 0 {
		return errors.New("tubular: Sections = none: want one or more")
	}
	var faults []error
	for i, s := range sections {
		err := s.Pipe.Validate()
		if !finite(s.Length) || s.Length <= 0 {
			err = errors.Join(err, fmt.Errorf("tubular: Length = %v: want above 0", s.Length))
		}
		if !finite(s.Warming) {
			err = errors.Join(err, fmt.Errorf("tubular: Warming = %v: want a finite number", s.Warming))
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("tubular: Sections[%d]: %w", i, err))
		}
	}
	return errors.Join(faults...)
}

// Steps shows how the stretch of a string of one section comes about, and only
// the sum for several.
func (s HangingStretch) Steps() []working.Step {
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	inch := func(l unit.Length) working.Value { return working.In(l, unit.Inch, "in") }
	const source = "API RP 7G (1998); Lubinski et al. 1962"
	var steps []working.Step
	if s.uniform != nil {
		p, h := s.uniform.pipe, s.uniform.hanging
		L := in("L", working.Of(h.Sections[0].Length))
		E, As := in("E", working.Of(p.Material.Young)), in("As", working.Of(p.SteelArea()))
		ρ := in("ρ", working.Of(h.Fluid))
		steps = []working.Step{
			{Name: "steel area", Symbol: "As", Equation: "pi/4*(D*D - d*d)", Value: As.Value, Source: "geometry",
				Inputs: []working.Input{in("D", working.Of(p.OD)), in("d", working.Of(p.ID))}},
			{Name: "own weight in air", Symbol: "eW", Equation: "w*L*L/(2*E*As)", Value: inch(s.Weight), Source: source,
				Inputs: []working.Input{in("w", working.Of(p.WeightInAir())), L, E, As}},
			{Name: "pressure on the lower end", Symbol: "eP", Equation: "-ρ*g*L*L/E", Value: inch(s.Pressure), Source: source,
				Inputs: []working.Input{ρ, L, E}},
			{Name: "ballooning", Symbol: "eB", Equation: "ν*ρ*g*L*L/E", Value: inch(s.Ballooning), Source: source,
				Inputs: []working.Input{in("ν", working.Number(p.Material.Poisson)), ρ, L, E}},
			{Name: "temperature", Symbol: "eT", Equation: "α*L*dT", Value: inch(s.Thermal), Source: source,
				Inputs: []working.Input{in("α", working.Of(p.Material.Expansion)), L, in("dT", working.Of(h.Sections[0].Warming))}},
			{Name: "pull on the lower end", Symbol: "eF", Equation: "F*L/(E*As)", Value: inch(s.Pull), Source: "Hooke",
				Inputs: []working.Input{in("F", working.Of(h.Pull)), L, E, As}},
		}
	}
	return append(steps, working.Step{Name: "stretch", Symbol: "e", Equation: "eW + eP + eB + eT + eF", Value: inch(s.Total()), Source: "sum",
		Inputs: []working.Input{in("eW", inch(s.Weight)), in("eP", inch(s.Pressure)), in("eB", inch(s.Ballooning)), in("eT", inch(s.Thermal)), in("eF", inch(s.Pull))}})
}
