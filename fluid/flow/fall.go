package flow

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// ErrNoFall says that the columns don't fall by themselves at that moment.
var ErrNoFall = errors.New("flow: the columns don't fall by themselves here")

// FallRate returns the steady rate at which the columns run by themselves when a
// volume has been pumped and the inlet is open to the air: the rate whose
// friction takes up the imbalance,
//
//	Δp friction(Q) = Σ ρ g Δz - p(back)
//
// It is what the returns can run at while the well U-tubes (Schedule.UTubes),
// with the inlet's level still at surface: as the level falls behind, the rate
// falls too. Inertia is left out. ErrNoFall where the imbalance is against the
// flow or within what the fluids' yield stresses hold.
//
// Source: balance of heads and friction.
func (s Schedule) FallRate(pumped unit.Volume) (unit.FlowRate, error) {
	if !(pumped >= 0 && pumped <= s.Pumped) || s.run == nil {
		return 0, fault.NewIn("flow", "pumped", "is %v; must be from 0 bbl to the schedule's %v", pumped, s.Pumped)
	}
	r, v := s.run, float64(pumped)
	drive := -float64(r.point(len(r.d.Stages)-1, v, 0, false).Static)
	var fault error
	miss := func(u float64) float64 {
		loss, err := r.friction(unit.FlowRate(math.Exp(u)), v)
		if err != nil {
			fault = err
			return math.NaN()
		}
		return loss - drive
	}
	least, most := math.Log(1e-9), math.Log(float64(r.fastest()))
	if drive <= 0 || miss(least) >= 0 {
		return 0, ErrNoFall
	}
	switch high := miss(most); {
	case fault != nil:
		return 0, fault
	case high <= 0:
		return 0, fmt.Errorf("flow: no rate up to %s takes up the imbalance of %s", r.fastest().Rounded(4), unit.Pressure(drive).Rounded(4))
	}
	u, err := root.Find(miss, least, most, 1e-9)
	if fault != nil {
		return 0, fault
	}
	return unit.FlowRate(math.Exp(u)), err
}

// fastest is the rate at which the narrowest section runs at 100 m/s.
func (r *run) fastest() unit.FlowRate {
	q := mostRate
	for _, l := range r.legs {
		q = min(q, l.section.Conduit.Rate(100*unit.MetrePerSecond))
	}
	return q
}

// friction is the sum of all losses at a rate, with v pumped.
func (r *run) friction(rate unit.FlowRate, v float64) (float64, error) {
	sum := 0.0
	for j, l := range r.legs {
		for k, x := range r.liquids {
			share := r.share(k, j, v)
			if share <= 0 {
				continue
			}
			loss, _, err := l.loss(x, rate)
			if err != nil {
				return 0, err
			}
			sum += share * loss * float64(l.section.Length)
		}
	}
	return sum + float64(r.exitLoss(rate, v, false)), nil
}

// share is the part of a leg that a liquid fills.
func (r *run) share(k, j int, v float64) float64 {
	l := r.legs[j]
	from, to := l.v0, l.v1
	if k < len(r.fronts) {
		from = max(from, r.fronts[k].start+v)
	}
	if k > 0 {
		to = min(to, r.fronts[k-1].start+v)
	}
	return (to - from) / (l.v1 - l.v0)
}
