package confined

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// BleedVolume returns the volume that has to be let out of a trapped space, in
// its state after, to bring it to a pressure: counted at that pressure and the
// temperature after. Negative is a volume to be pumped in. What is let out is
// taken from the fluids as they are mixed.
//
//	V = Σ mi/ρi(p, Ti) - V0 [1 + wall expansion + C (p - p0)] + squeeze
//
// Errors: faults of t and of the pressure; those of the fluids' densities.
//
// Source: Trapped.Solve.
func (t Trapped) BleedVolume(to unit.Pressure) (unit.Volume, error) {
	f := fault.In("confined")
	f.Add(t.Validate())
	f.Add(fault.Between("to", to, 0, mostTrapped))
	if err := f.Err(); err != nil {
		return 0, err
	}
	m, v0, err := t.masses()
	if err != nil {
		return 0, err
	}
	v, err := t.volume(m, float64(to))
	if err != nil {
		return 0, err
	}
	return unit.Volume(v - t.space(v0, float64(to))), nil
}

// space is the volume of the space after, at a pressure.
func (t Trapped) space(v0, p float64) float64 {
	growth := v0 * t.Space.Expansion(t.HeatOuter, t.HeatInner)
	return v0*(1+float64(t.Space.Compliance())*(p-float64(t.Pressure))) + growth - float64(t.Squeeze)
}

// PressureUp is the closed system of a pressure test, filled with one fluid.
type PressureUp struct {
	Space       Space            `json:"space"`
	Fluid       Fluid            `json:"fluid"`
	Volume      unit.Volume      `json:"volume"` // of the space at From
	From        unit.Pressure    `json:"from"`
	To          unit.Pressure    `json:"to"`
	Temperature unit.Temperature `json:"temperature"` // mean in the well
	Supply      unit.Temperature `json:"supply"`      // of the fluid in the tank it is measured in, at zero gauge pressure
}

// Pumped is what a pressure test takes.
type Pumped struct {
	Volume      unit.Volume `json:"volume"`      // measured in the tank
	Compression unit.Volume `json:"compression"` // share of the fluid, at To
	Ballooning  unit.Volume `json:"ballooning"`  // share of the walls, at To
	Stretch     float64     `json:"stretch"`     // Ballooning over the volume
	// PerVolume is the mean rise of pressure per volume pumped, in Pa/m³.
	PerVolume float64 `json:"per_volume"`
}

// Solve returns the volume of fluid, as measured in the tank, that brings the
// space from one pressure to another,
//
//	V = [ρ(p2) V (1 + C (p2 - p1)) - ρ(p1) V]/ρ(tank)
//
// The temperature in the well stays. System.VolumeFor is its linear form.
//
// Errors: faults of u; those of the fluid's density.
//
// Source: volumes that share a pressure add up; the fluid's own density.
func (u PressureUp) Solve() (Pumped, error) {
	f := fault.In("confined")
	f.At("Space", u.Space.Validate())
	if u.Fluid == nil {
		f.New("Fluid", "is missing")
	}
	f.Add(fault.AboveTo("Volume", u.Volume, 0, 1e6*unit.CubicMetre))
	f.Add(fault.Between("From", u.From, 0, mostTrapped))
	f.Add(fault.Between("To", u.To, 0, mostTrapped))
	if u.From == u.To {
		f.New("To", "is %v; must differ from From", u.To)
	}
	f.Add(fault.Temperature("Temperature", u.Temperature, unit.Kelvin(100), unit.Kelvin(1500)))
	f.Add(fault.Temperature("Supply", u.Supply, unit.Kelvin(100), unit.Kelvin(1500)))
	if err := f.Err(); err != nil {
		return Pumped{}, err
	}
	at := func(p unit.Pressure, t unit.Temperature) (float64, error) {
		return density(Fill{Name: "fluid", Fluid: u.Fluid}, p, t)
	}
	ρ1, err := at(u.From, u.Temperature)
	if err != nil {
		return Pumped{}, err
	}
	ρ2, err := at(u.To, u.Temperature)
	if err != nil {
		return Pumped{}, err
	}
	ρs, err := at(0, u.Supply)
	if err != nil {
		return Pumped{}, err
	}
	v, dp := float64(u.Volume), float64(u.To-u.From)
	stretch := float64(u.Space.Compliance()) * dp
	pumped := (ρ2*v*(1+stretch) - ρ1*v) / ρs
	if pumped == 0 {
		return Pumped{}, fmt.Errorf("confined: neither fluid nor walls give way between %v and %v", u.From, u.To)
	}
	return Pumped{
		Volume: unit.Volume(pumped), Compression: unit.Volume(v * (1 - ρ1/ρ2)), Ballooning: unit.Volume(v * stretch),
		Stretch: stretch, PerVolume: dp / pumped,
	}, nil
}
