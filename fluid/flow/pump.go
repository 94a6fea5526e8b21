package flow

import (
	"math"
	"time"

	"completion.example/hydrostatics/unit"
)

// Pump is a piston pump. The zero value delivers nothing.
type Pump struct {
	Cylinders    int         `json:"cylinders"`
	Liner        unit.Length `json:"liner"` // inside diameter
	Rod          unit.Length `json:"rod"`   // diameter; only of a double-acting pump
	Stroke       unit.Length `json:"stroke"`
	DoubleActing bool        `json:"double_acting"`
	Efficiency   float64     `json:"efficiency"` // volumetric, 0 to 1
}

// Output returns the volume of a full stroke (one turn) of the pump,
//
//	single-acting   N π/4 D² S η
//	double-acting   N π/4 (2 D² - d²) S η
//
// Range: sizes from zero up and an efficiency from 0 to 1, not checked.
//
// Source: Lapeyrouse, Formulas and Calculations, chapter 1, whose constants
// 0.000243 and 0.000162 bbl per in³ for three and two cylinders are rounded (0.06 %
// high).
func (p Pump) Output() unit.Volume {
	D, d := float64(p.Liner), float64(p.Rod)
	area := D * D
	if p.DoubleActing {
		area = 2*D*D - d*d
	}
	return unit.Volume(float64(p.Cylinders) * math.Pi / 4 * area * float64(p.Stroke) * p.Efficiency)
}

// Rate returns what the pump delivers at a number of strokes per minute.
//
//	Q = output·strokes/time
//
// Range: any number of strokes; it isn't checked.
//
// Source: definition of the output.
func (p Pump) Rate(strokesPerMinute float64) unit.FlowRate {
	return unit.FlowRate(float64(p.Output()) * strokesPerMinute / time.Minute.Seconds())
}

// Strokes returns the strokes that a volume takes.
//
//	n = V/output
//
// Range: any volume; infinite, or NaN for no volume, with a pump that delivers
// nothing.
//
// Source: definition of the output.
func (p Pump) Strokes(v unit.Volume) float64 { return float64(v / p.Output()) }

// PumpingTime returns the time that a volume takes at a rate; zero where it is
// no time that a Duration holds (292 years).
//
//	t = V/Q
//
// Range: any volume and rate of a time within 292 years; beyond that, at no
// rate and for NaN it is zero.
//
// Source: definition of the rate.
func PumpingTime(v unit.Volume, rate unit.FlowRate) time.Duration {
	return duration(float64(v) / float64(rate))
}

func duration(seconds float64) time.Duration {
	if !(math.Abs(seconds) < 9e9) {
		return 0
	}
	return time.Duration(math.Round(seconds * 1e9))
}
