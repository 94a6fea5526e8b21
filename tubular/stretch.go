package tubular

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Elongation returns the stretch of a straight bar, Hooke's law.
//
//	e = F L / (E A)
//
// Range: stresses below yield, not checked; infinite where area or modulus is
// zero.
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
//
// Range: stresses below yield, not checked; infinite, or NaN for no stretch,
// where the length is zero.
//
// Source: Hooke.
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
// Range: stresses below yield, not checked; infinite, or NaN for no stretch,
// where the pull is zero.
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
// Range: any length and warming; nothing is checked.
//
// Source: Lubinski, Althouse and Logan 1962.
func (p Pipe) ThermalStretch(length unit.Length, warming unit.TemperatureDifference) unit.Length {
	return unit.Length(float64(p.Material.Expansion) * float64(length) * float64(warming))
}

// HangingSection is a length of one pipe in a string.
type HangingSection struct {
	Pipe    Pipe                       `json:"pipe"`
	Length  unit.Length                `json:"length"`
	Warming unit.TemperatureDifference `json:"warming"` // mean, since the length was measured
}

// Hanging is a string that hangs from its top, open at the bottom, in one fluid that
// stands to its top inside and outside.
type Hanging struct {
	// Path of the hole, from the string's top; nil for a vertical one. The hole bears the
	// string without friction.
	Path     *hydrostatics.Path `json:"path,omitempty"`
	Sections []HangingSection   `json:"sections"` // from the top
	Fluid    unit.Density       `json:"fluid"`
	Pull     unit.Force         `json:"pull"` // on the lower end: a tool's weight positive, weight set down negative
}

// HangingStretch is the stretch of a hanging string, by cause.
type HangingStretch struct {
	Causes                    // of the whole string
	Sections []SectionStretch `json:"sections"` // from the top
}

// Causes are the parts of a stretch.
type Causes struct {
	Weight     unit.Length `json:"weight"`     // of the string in air
	Pressure   unit.Length `json:"pressure"`   // upward on the lower end and the shoulders between sections
	Ballooning unit.Length `json:"ballooning"` // the fluid squeezes the wall, which lengthens the pipe
	Thermal    unit.Length `json:"thermal"`
	Pull       unit.Length `json:"pull"` // on the lower end
}

// Total returns the sum of all causes.
//
// Range: any lengths; they aren't checked.
//
// Source: superposition.
func (c Causes) Total() unit.Length {
	return c.Weight + c.Pressure + c.Ballooning + c.Thermal + c.Pull
}

// SectionStretch is the stretch of one section, with what it was made of.
type SectionStretch struct {
	Causes
	Hung         unit.Force    `json:"hung"`          // weight in air of all below it
	Push         unit.Force    `json:"push"`          // of pressure upward on all ends and shoulders from its lower end down
	MeanPressure unit.Pressure `json:"mean_pressure"` // at its middle

	section HangingSection
	middle  unit.Length // mean true vertical depth
	end     unit.Length // true vertical depth of its lower end
	along   bool        // a path
	pull    unit.Force
	fluid   unit.Density
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
// each depth is integrated, which is exact. Along a path the hole bears what of the
// weight is across it, so that heights count where depths press or weigh: L²/2 becomes
// L (he - hm), with the true vertical depth he of a section's end and its mean hm.
//
// Errors: faults of h; a string that is longer than its path.
//
// Source: API RP 7G (1998), stretch due to own weight; Lubinski, Althouse and
// Logan 1962 for the effect of pressure on the wall.
func (h Hanging) Stretch() (HangingStretch, error) {
	if err := h.validate(); err != nil {
		return HangingStretch{}, err
	}
	ρ, F := float64(h.Fluid), float64(h.Pull)
	bottom := unit.Length(0)
	for _, s := range h.Sections {
		bottom += s.Length
	}
	md := bottom
	r := HangingStretch{Sections: make([]SectionStretch, len(h.Sections))}
	below, weight, up := 0.0, 0.0, 0.0 // steel area, weight in air and push of pressure below the section's lower end
	for i := len(h.Sections) - 1; i >= 0; i-- {
		s := h.Sections[i]
		L, E, As := float64(s.Length), float64(s.Pipe.Material.Young), float64(s.Pipe.SteelArea())
		w := float64(s.Pipe.WeightInAir())
		p, err := h.place(md, s.Length)
		if err != nil {
			return HangingStretch{}, err
		}
		z, middle := float64(p.end), float64(p.mean)
		up += ρ * g * z * (As - below)
		r.Sections[i] = SectionStretch{
			Causes: Causes{
				Weight:     unit.Length((weight + w*float64(p.hangs)) * L / (E * As)),
				Pressure:   unit.Length(-up * L / (E * As)),
				Ballooning: unit.Length(2 * s.Pipe.Material.Poisson * ρ * g * middle * L / E),
				Thermal:    s.Pipe.ThermalStretch(s.Length, s.Warming),
				Pull:       unit.Length(F * L / (E * As)),
			},
			Hung: unit.Force(weight), Push: unit.Force(up), MeanPressure: unit.Pressure(ρ * g * middle),
			section: s, middle: p.mean, end: p.end, along: h.Path != nil, pull: h.Pull, fluid: h.Fluid,
		}
		weight, below, md = weight+w*float64(p.drop), As, md-s.Length
	}
	for _, s := range r.Sections {
		r.Weight += s.Weight
		r.Pressure += s.Pressure
		r.Ballooning += s.Ballooning
		r.Thermal += s.Thermal
		r.Pull += s.Pull
	}
	return r, finiteResult("stretch", r.Total())
}

// place is where a section is: its depths are true vertical.
type place struct {
	end, mean   unit.Length
	hangs, drop unit.Length // mean height above its end, and the whole of it
}

// place finds the section whose lower end is at a measured depth.
func (h Hanging) place(end, length unit.Length) (place, error) {
	if h.Path == nil {
		return place{end, end - length/2, length / 2, length}, nil
	}
	top := max(end-length, 0) // but for rounding
	bottom, err := h.Path.TVD(end)
	if err != nil {
		return place{}, fault.Join("tubular", fault.At("Path", err))
	}
	start, err1 := h.Path.TVD(top)
	mean, err2 := h.Path.MeanTVD(top, end)
	return place{bottom, mean, bottom - mean, bottom - start}, fault.Join("tubular", fault.At("Path", err1), fault.At("Path", err2))
}

func (h Hanging) validate() error {
	return fault.Join("tubular", validateSections(h.Sections), fault.Finite("Pull", h.Pull), fault.AtLeast("Fluid", h.Fluid, 0))
}

func validateSections(sections []HangingSection) error {
	f := fault.In("tubular")
	if len(sections) == 0 {
		f.New("Sections", "is empty; must be one section or more")
	}
	for i, s := range sections {
		f.At(fault.Index("Sections", i), s.validate())
	}
	return f.Err()
}

func (s HangingSection) validate() error {
	return fault.Join("tubular", fault.At("Pipe", s.Pipe.Validate()), fault.Above("Length", s.Length, 0), fault.Finite("Warming", s.Warming))
}
