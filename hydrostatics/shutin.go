package hydrostatics

import (
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/integrate/quad"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// LeftAfterShutIn returns the share of the difference between flowing fluid and ground
// that is left a time after the flow has been shut in:
//
//	(Ts - Te)/(Tf - Te) = [f(t + Δt) - f(Δt)]/[f(t) + k/(r·U)]
//
// f is the wall's temperature of a hole that takes heat at a constant rate for the time
// of flow t (Time), and no more from then on: its superposition, with f(tD) as
// ThermalTime has it but by the exact integral, for which ThermalTime is too coarse in
// a difference. In the share of the flowing difference that stands between fluid and
// wall, k/(r·U), the fluid follows the wall at once: in truth it does so by e^(-Δt/τ)
// with τ = ρ·c·r/(2·U), half an hour or so in tubing, within which it is nearer what it
// flowed at. So no less than 10 minutes is taken. For long times it becomes Horner's
// ln[(t + Δt)/Δt]/2 in place of the difference. Each depth is taken alone: heat
// flows along neither hole nor pipe, and nothing turns over in it.
//
// Errors: those of Validate; a time under 10 minutes.
//
// Source: superposition of Ramey's constant rates, JPT April 1962, 427, with Carslaw
// and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, 13.5; the long times as
// Lachenbruch and Brewer, USGS Bulletin 1083-C, 1959, and Dowdle and Cobb, JPT November
// 1975, 1326; all from memory.
func (h HeatExchange) LeftAfterShutIn(after time.Duration) (float64, error) {
	err := h.Validate()
	if !(after >= leastShutIn) {
		err = fault.Join(scope, err, fault.New("after", "is %v; must be at least %v", after, leastShutIn))
	}
	if err != nil {
		return 0, err
	}
	r, u, k := float64(h.Radius), float64(h.Transfer), float64(h.Conductivity)
	td := func(t time.Duration) float64 {
		return float64(h.Diffusivity) * t.Seconds() / (float64(h.Hole) * float64(h.Hole))
	}
	left := (wallTime(td(h.Time+after)) - wallTime(td(after))) / (wallTime(td(h.Time)) + k/(r*u))
	return min(max(left, 0), 1), nil
}

const leastShutIn = 10 * time.Minute

// wallTime is f of tD exactly:
//
//	f = (4/π²)·∫ (1 - e^(-u²·tD))/(u³·[J1²(u) + Y1²(u)]) du, 0 to ∞
//
// Source: Carslaw and Jaeger 1959, 13.5.
func wallTime(td float64) float64 {
	of := func(s float64) float64 { // u = e^s
		u := math.Exp(s)
		j, y := math.J1(u), math.Y1(u)
		return -math.Expm1(-u*u*td) / (u * u * (j*j + y*y))
	}
	// To the left of it the integrand is under e^2s, to the right it goes as 1/u.
	const low, high, pieces = -14.0, 9.0, 46
	sum := 0.0
	for i := range pieces {
		a := low + (high-low)*float64(i)/pieces
		sum += quad.Fixed(of, a, a+(high-low)/pieces, 12, quad.Legendre{}, 0)
	}
	return 4 / (math.Pi * math.Pi) * (sum + math.Pi/2*math.Exp(-high))
}

// AfterShutIn returns the temperature of a well between flowing and undisturbed: left is the
// share of their difference that is still there, see HeatExchange.LeftAfterShutIn. It
// goes as deep as what has flowed.
//
//	Ts = Te + left·(Tf - Te)
//
// Errors: a profile that is missing; a share outside 0 to 1.
//
// Source: linear conduction of heat; derived.
func AfterShutIn(ground, flowing *TemperatureProfile, left float64) (*TemperatureProfile, error) {
	faults := fault.In(scope)
	faults.Add(fault.Between("left", left, 0, 1))
	if ground == nil || len(ground.depth) == 0 {
		faults.New("ground", "is missing")
	}
	if flowing == nil || len(flowing.depth) == 0 {
		faults.New("flowing", "is missing")
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	depths := slices.Concat(flowing.depth, ground.depth)
	slices.Sort(depths)
	var points []TemperaturePoint
	for _, tvd := range slices.Compact(depths) {
		if at := unit.Length(tvd); tvd >= flowing.depth[0] && tvd <= flowing.depth[len(flowing.depth)-1] {
			e := ground.At(at)
			points = append(points, TemperaturePoint{at, e.Add(unit.TemperatureDifference(left) * flowing.At(at).Sub(e))})
		}
	}
	return NewTemperatureProfile(points)
}
