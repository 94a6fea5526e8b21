package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// DynamicPressure returns ρV²/2, what minor losses are counted in.
//
// Range: any numbers, not checked; the sign of the velocity is lost.
//
// Source: Bernoulli.
func DynamicPressure(density unit.Density, v unit.Velocity) unit.Pressure {
	return unit.Pressure(float64(density) * float64(v) * float64(v) / 2)
}

// MinorLoss returns the loss of a fitting,
//
//	Δp = K ρV²/2
//
// with the velocity V that its coefficient K is given for. For turbulent flow;
// in laminar flow K rises as Re falls.
//
// Range: any numbers, not checked; the sign of the velocity is lost.
//
// Source: White, Fluid Mechanics, 6.9.
func MinorLoss(k float64, density unit.Density, v unit.Velocity) unit.Pressure {
	return unit.Pressure(k * float64(DynamicPressure(density, v)))
}

// Enlargement returns K of a sudden enlargement from area a1 to a2, on the
// velocity in a1,
//
//	K = (1 - A1/A2)²
//
// Exact for turbulent flow with a flat profile. Range: A1 <= A2.
//
// Source: Borda and Carnot's theorem; White, Fluid Mechanics, Eq. 6.101.
func Enlargement(a1, a2 unit.Area) float64 {
	x := 1 - float64(a1/a2)
	return x * x
}

// Contraction returns K of a sudden, sharp contraction from area a1 to a2, on
// the velocity in a2,
//
//	K = 0.42 (1 - A2/A1)
//
// Range: A2/A1 up to 0.58; above that the law of the enlargement is used, as the
// source does, which is below the line. Within some 10 % of measurements.
//
// Source: White, Fluid Mechanics, Eq. 6.102.
func Contraction(a1, a2 unit.Area) float64 {
	s := float64(a2 / a1)
	if s > 0.76*0.76 {
		return (1 - s) * (1 - s)
	}
	return 0.42 * (1 - s)
}

// Orifices are equal openings side by side: nozzles of a tool, ports of a
// sleeve, perforations of a joint.
type Orifices struct {
	Count     int         `json:"count"`
	Diameter  unit.Length `json:"diameter"`
	Discharge float64     `json:"discharge"` // coefficient; see the Discharge constants
}

// Coefficients of discharge.
const (
	// DischargeNozzle is the figure of rounded bit nozzles. Source: API RP 13D.
	DischargeNozzle = 0.95
	// DischargeSharp is a sharp-edged port or perforation at high Reynolds
	// number. Source: Kirchhoff's π/(π+2) = 0.611, for a port small in its wall.
	DischargeSharp = math.Pi / (math.Pi + 2)
)

// Area returns the area of all openings.
//
//	A = n·π/4·d²
//
// Range: any count and diameter; Validate says which are taken elsewhere.
//
// Source: geometry.
func (o Orifices) Area() unit.Area {
	d := float64(o.Diameter)
	return unit.Area(float64(o.Count) * math.Pi / 4 * d * d)
}

// Loss returns the pressure lost for good in the openings at a total rate,
//
//	Δp = ρ Q² / (2 Cd² A²)
//
// with the velocity of approach neglected: good to 1 % where the openings take
// up less than a seventh of the area before them. In the units gpm, lb/gal and
// in² that is ρ q²/(12034 Cd² A²).
//
// Source: Guo and Liu, Applied Drilling Circulation Systems (2011), Eq. 2.86.
func (o Orifices) Loss(density unit.Density, rate unit.FlowRate) unit.Pressure {
	return OrificeLoss(density, rate, o.Area(), o.Discharge)
}

// OrificeLoss is Orifices.Loss for a total area: nozzles of several sizes, or a
// total flow area as the trade quotes it.
//
//	Δp = ρ/2·(Q/(Cd·A))²
//
// Range: area and discharge coefficient above zero, not checked: infinite at
// zero. The sign of the rate is lost.
//
// Source: Orifices.Loss.
func OrificeLoss(density unit.Density, rate unit.FlowRate, area unit.Area, discharge float64) unit.Pressure {
	v := float64(rate) / (discharge * float64(area))
	return unit.Pressure(float64(density) * v * v / 2)
}

// OrificeRate is OrificeLoss turned round: the rate that a pressure difference
// drives, Q = Cd A √(2Δp/ρ), against the sign of a negative one.
//
// Range: any difference, a density above zero: infinite at zero and NaN below.
func OrificeRate(density unit.Density, loss unit.Pressure, area unit.Area, discharge float64) unit.FlowRate {
	v := math.Sqrt(2 * math.Abs(float64(loss)) / float64(density))
	return unit.FlowRate(math.Copysign(discharge*float64(area)*v, float64(loss)))
}

// Velocity returns the mean velocity in the openings, Q/A.
//
// Range: any rate, of either sign; infinite where there is no opening.
//
// Source: continuity.
func (o Orifices) Velocity(rate unit.FlowRate) unit.Velocity {
	return unit.Velocity(float64(rate) / float64(o.Area()))
}
