package unit

import "time"

// Products and quotients of two quantities that are a third. NaN in gives NaN
// out, and nothing is bounded.
//
// Source: definitions of the quantities (ISO 80000-3 and 80000-4).

// On returns the force of a pressure on an area.
//
//	F = p·A
func (p Pressure) On(a Area) Force { return Force(float64(p) * float64(a)) }

// Over returns the pressure of a force over an area.
//
//	p = F/A
func (f Force) Over(a Area) Pressure { return Pressure(float64(f) / float64(a)) }

// Along returns the volume of a cross-section, or of a capacity such as bbl/ft,
// along a length.
//
//	V = A·L
func (a Area) Along(l Length) Volume { return Volume(float64(a) * float64(l)) }

// Fills returns the length that a volume fills of a cross-section.
//
//	L = V/A
func (v Volume) Fills(a Area) Length { return Length(float64(v) / float64(a)) }

// Along returns the weight of a length.
//
//	W = w·L
func (w WeightPerLength) Along(l Length) Force { return Force(float64(w) * float64(l)) }

// Along returns the pressure of a gradient along a vertical length.
//
//	p = G·h
func (g Gradient) Along(h Length) Pressure { return Pressure(float64(g) * float64(h)) }

// During returns the volume of a rate in a time.
//
//	V = q·t
func (q FlowRate) During(t time.Duration) Volume { return Volume(float64(q) * t.Seconds()) }

// Takes returns the time that a volume takes at a rate, rounded to the
// nanosecond; a rate of zero, or a time over 292 years, is not one a Duration
// holds: ok is then false.
//
//	t = V/q
func (v Volume) Takes(q FlowRate) (t time.Duration, ok bool) {
	s := float64(v) / float64(q) * float64(time.Second)
	if !(s > -1<<63 && s < 1<<63) {
		return 0, false
	}
	return time.Duration(s), true
}

// Power returns the hydraulic power of a pressure, or a pressure loss, at a rate.
//
//	P = p·q
//
// In the field's units hp = psi·(gal/min)/1714 within 0.01 %: exactly it is
// 1714.286.
func (p Pressure) Power(q FlowRate) Power { return Power(float64(p) * float64(q)) }

// Absolute returns the absolute pressure of a gauge pressure where the
// atmosphere is as given: Atmosphere at sea level.
//
//	p abs = p + p atm
//
// Everything in these packages is gauge, and what they turn absolute inside they
// turn with the standard Atmosphere; where the well is far above sea level, say so
// here.
func (p Pressure) Absolute(atmosphere Pressure) Pressure { return p + atmosphere }

// Gauge returns the gauge pressure of an absolute one, the inverse of Absolute.
//
//	p = p abs - p atm
func (p Pressure) Gauge(atmosphere Pressure) Pressure { return p - atmosphere }
