package controlline

import (
	"fmt"
	"math"
	"time"

	"completion.example/fluid/confined"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Response is how soon a pressure put on at the panel arrives at a closed far
// end.
type Response struct {
	Diffusivity float64       `json:"diffusivity"` // of pressure along the line, m²/s
	Wave        time.Duration `json:"wave"`
	Scale       time.Duration `json:"scale"` // L²/Diffusivity; at one such time 89 % has arrived
}

// Response returns the response of a line whose liquid moves slowly enough for
// laminar flow.
//
//	D     = d²/(32·μ·(c + cw))     diffusivity of pressure
//	scale = L²/D
//	wave  = L·√(ρ·(c + cw))        before it nothing arrives at all
//
// It is an error if line or liquid is out of range, or if nothing gives: then
// pressure arrives at once. Source: continuity and Hagen-Poiseuille.
func (l Line) Response(q LineFluid) (Response, error) {
	f := fault.In(scope)
	f.Add(l.Validate())
	f.At("Liquid", q.Validate())
	soft := float64(q.Compressibility) + float64(l.WallCompliance(confined.EndsFixed))
	if !f.Any() && !(soft > 0) {
		f.New("", "neither liquid nor wall gives; must have a compressibility or a Young's modulus")
	}
	if err := f.Err(); err != nil {
		return Response{}, err
	}
	d, L := float64(l.ID()), float64(l.Length)
	D := d * d / (32 * float64(q.Viscosity) * soft)
	r := Response{Diffusivity: D}
	var err error
	if r.Scale, err = seconds(L * L / D); err != nil {
		return Response{}, err
	}
	r.Wave, err = seconds(L * math.Sqrt(float64(q.Density)*soft))
	return r, err
}

// Arrived returns the share of a pressure held at the panel that has reached the
// closed far end after a time.
//
//	s = 1 − 4/π·Σ (−1)^n/(2n + 1)·exp(−((2n + 1)·π/2)²·τ),  τ = t/scale
//
// and for small τ the same as 2·Σ (−1)^n·erfc((2n + 1)/(2·√τ)).
//
// Range: any time: 0 up to the start, towards 1 after it; 1 at once where Scale
// is zero.
//
// Source: Carslaw and Jaeger, Conduction of Heat in Solids (1959), 3.4: slab
// with one face held and the other insulated.
func (r Response) Arrived(after time.Duration) float64 {
	return arrived(after.Seconds() / r.Scale.Seconds())
}

// Until returns the time at which a share of a pressure held at the panel has
// reached the closed far end, the inverse of Arrived. The share must be above 0
// and below 1.
//
// Errors: a share out of that range; a time beyond 9e9 s.
func (r Response) Until(share float64) (time.Duration, error) {
	if !(share > 0 && share < 1) {
		return 0, fault.NewIn(scope, "share", "is %v; must be above 0 and below 1", share)
	}
	// Shares up to the last bit below 1 arrive within 16 scales.
	tau, err := root.Find(func(x float64) float64 { return arrived(x) - share }, 0, 16, 0)
	if err != nil {
		return 0, fmt.Errorf("controlline: time until a share of %v: %w", share, err)
	}
	return seconds(tau * r.Scale.Seconds())
}

func arrived(tau float64) float64 {
	if !(tau > 0) {
		return tau * 0 // NaN stays NaN
	}
	sum, sign := 0.0, 1.0
	if tau < 0.3 {
		for n := 0; n < 8; n++ {
			sum += sign * math.Erfc(float64(2*n+1)/(2*math.Sqrt(tau)))
			sign = -sign
		}
		return 2 * sum
	}
	for n := 0; n < 8; n++ {
		k := float64(2*n + 1)
		sum += sign / k * math.Exp(-k*k*math.Pi*math.Pi/4*tau)
		sign = -sign
	}
	return 1 - 4/math.Pi*sum
}

// seconds turns a time into a Duration, which ends at 292 years.
func seconds(s float64) (time.Duration, error) {
	if !(s >= 0 && s < 9e9) {
		return 0, fault.NewIn(scope, "", "time is %.3g s; must be from 0 s to 9e9 s", s)
	}
	return time.Duration(s * float64(time.Second)), nil
}
