package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// WellAverage is what a column of brine sees in a well, from top to bottom.
type WellAverage struct {
	Wanted         unit.Density     `json:"wanted"` // mean density that gives the wanted pressure at the bottom
	Surface        unit.Temperature `json:"surface"`
	Bottom         unit.Temperature `json:"bottom"`
	BottomPressure unit.Pressure    `json:"bottom_pressure"` // hydrostatic, gauge
}

// SurfaceWeight is the density to mix at surface so that a column has a wanted
// mean density in the well.
type SurfaceWeight struct {
	Brine   Brine        `json:"brine"`
	Well    WellAverage  `json:"well"`
	Thermal unit.Density `json:"thermal"` // Ct, what heat takes off on average
	Squeeze unit.Density `json:"squeeze"` // Cp, what pressure puts on on average
	Weight  unit.Density `json:"weight"`  // to mix, at the surface temperature
	At70F   unit.Density `json:"at70_f"`  // the same brine counted at 70 °F: Weight + ρ70·α·(Ts − 70 °F)
}

// SurfaceWeight returns the weight to mix at surface by the averages of the
// field method, additive in density:
//
//	ρs = ρ + Ct − Cp
//	Ct = ρ70·α·(Tb − Ts)/2
//	Cp = ρ70·β·pb/2
//
//	ρ       mean density wanted in the well
//	ρ70·α   correction for temperature, such as 0.33 lb/gal per 100 °F
//	ρ70·β   correction for pressure, such as 0.019 lb/gal per 1,000 psi
//	Ts, Tb  temperature at surface and bottom
//	pb      hydrostatic pressure at the bottom
//
// It takes temperature and pressure as straight lines with depth. A column of
// the brine itself does without these averages.
//
// Errors: those of Density at the top and at the bottom; a wanted density that
// isn't positive.
//
// Source: API RP 13J; as worked in Well Control for Completions and
// Interventions (2018), pp. 194–195.
func (b Brine) SurfaceWeight(w WellAverage) (SurfaceWeight, error) {
	if !b.covers(0, w.Surface) {
		return SurfaceWeight{}, b.fault(0, w.Surface)
	}
	if !b.covers(w.BottomPressure, w.Bottom) {
		return SurfaceWeight{}, b.fault(w.BottomPressure, w.Bottom)
	}
	if err := positive("a column", "Wanted", w.Wanted, float64(w.Wanted)); err != nil {
		return SurfaceWeight{}, err
	}
	s := SurfaceWeight{
		Brine: b, Well: w,
		Thermal: b.At70F * unit.Density(float64(b.Expansion)*float64(w.Bottom.Sub(w.Surface))/2),
		Squeeze: b.At70F * unit.Density(float64(b.Compression)*float64(w.BottomPressure)/2),
	}
	s.Weight = w.Wanted + s.Thermal - s.Squeeze
	s.At70F = s.Weight + b.At70F*unit.Density(float64(b.Expansion)*float64(w.Surface.Sub(brineBase)))
	return s, nil
}

// Steps shows the working.
func (s SurfaceWeight) Steps() []working.Step {
	const source = "API RP 13J, averages"
	rho70 := working.Input{Symbol: "ρ70", Value: working.Of(s.Brine.At70F)}
	return []working.Step{
		{Name: "mean correction for temperature", Symbol: "Ct", Equation: "ρ70*α*(Tb-Ts)/2",
			Inputs: []working.Input{rho70, {Symbol: "α", Value: working.Of(s.Brine.Expansion)}, {Symbol: "Tb", Value: working.Temperature(s.Well.Bottom)}, {Symbol: "Ts", Value: working.Temperature(s.Well.Surface)}},
			Value:  working.Of(s.Thermal), Source: source},
		{Name: "mean correction for pressure", Symbol: "Cp", Equation: "ρ70*β*pb/2",
			Inputs: []working.Input{rho70, {Symbol: "β", Value: working.Of(s.Brine.Compression)}, {Symbol: "pb", Value: working.Of(s.Well.BottomPressure)}},
			Value:  working.Of(s.Squeeze), Source: source},
		{Name: "weight to mix at surface", Symbol: "ρs", Equation: "ρ+Ct-Cp",
			Inputs: []working.Input{{Symbol: "ρ", Value: working.Of(s.Well.Wanted)}, {Symbol: "Ct", Value: working.Of(s.Thermal)}, {Symbol: "Cp", Value: working.Of(s.Squeeze)}},
			Value:  working.Of(s.Weight), Source: source},
		{Name: "the same at 70 degF", Symbol: "ρs70", Equation: "ρs+ρ70*α*(Ts-T70)",
			Inputs: []working.Input{{Symbol: "ρs", Value: working.Of(s.Weight)}, rho70, {Symbol: "α", Value: working.Of(s.Brine.Expansion)},
				{Symbol: "Ts", Value: working.Temperature(s.Well.Surface)}, {Symbol: "T70", Value: working.Temperature(brineBase)}},
			Value: working.Of(s.At70F), Source: source},
	}
}
