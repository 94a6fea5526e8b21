package controlline

import (
	"errors"
	"fmt"
	"math"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Friction returns what a rate loses at the wall of the line, per length and
// with its Reynolds number and regime; Friction.Loss(l.Length) is the loss.
//
// See flow.Stream for the method and its limits. Errors name what is out of
// range.
func (l Line) Friction(q LineFluid, rate unit.FlowRate) (flow.Friction, error) {
	if err := fault.Join(scope, l.Validate(), fault.At("Liquid", q.Validate())); err != nil {
		return flow.Friction{}, err
	}
	return l.stream(q, rate).Friction()
}

func (l Line) stream(q LineFluid, rate unit.FlowRate) flow.Stream {
	return flow.Stream{
		Conduit:  flow.Conduit{Outer: l.ID(), Roughness: l.Roughness},
		Rheology: flow.Newtonian(q.Viscosity),
		Density:  q.Density,
		Rate:     rate,
	}
}

// LaminarLoss returns the pressure lost along the line in laminar flow.
//
//	Δp = 128·μ·L·Q/(π·d⁴)
//
// Valid below a Reynolds number of about 2,100. Source: Hagen and Poiseuille.
func (l Line) LaminarLoss(viscosity unit.Viscosity, rate unit.FlowRate) unit.Pressure {
	d := float64(l.ID())
	return unit.Pressure(128 * float64(viscosity) * float64(l.Length) * float64(rate) / (math.Pi * d * d * d * d))
}

// passage is a line with the rate in it per rate in the feed line.
type passage struct {
	line  Line
	share float64
}

// fastest is the mean velocity up to which flow.Stream answers, less a little.
const fastest = 999 * unit.MetrePerSecond

// rateThrough returns the rate at which the lines in series lose drive.
//
// Laminar flow gives the most that any regime lets through, so that it is the
// upper end of the bracket.
func rateThrough(q LineFluid, drive unit.Pressure, lines ...passage) (unit.FlowRate, error) {
	perRate := 0.0
	for _, p := range lines {
		perRate += float64(p.line.LaminarLoss(q.Viscosity, unit.FlowRate(p.share)))
	}
	top := float64(drive) / perRate
	for _, p := range lines {
		top = min(top, float64(fastest)*float64(p.line.Capacity())/p.share)
	}
	var failed error
	excess := func(rate float64) float64 {
		loss := 0.0
		for _, p := range lines {
			f, err := p.line.stream(q, unit.FlowRate(rate*p.share)).Friction()
			if err != nil {
				failed = err
				return math.NaN()
			}
			loss += float64(f.Loss(p.line.Length))
		}
		return loss - float64(drive)
	}
	// Rounding may leave the laminar end short of zero by its last bits.
	x, err := root.Find(excess, 0, top*(1+1e-9), 0)
	if errors.Is(err, root.ErrNotBracketed) {
		err = fmt.Errorf("the liquid would move faster than %v", fastest)
	}
	if failed != nil {
		err = failed
	}
	if err != nil {
		return 0, fmt.Errorf("controlline: rate at a drive of %v: %w", drive, err)
	}
	return unit.FlowRate(x), nil
}

// RateAt returns the rate that a loss of pressure drives through the line, the
// inverse of Friction.
//
// It is an error if line, liquid or drive is out of range, or if the velocity
// that follows is beyond flow.Stream's range.
func (l Line) RateAt(q LineFluid, drive unit.Pressure) (unit.FlowRate, error) {
	f := fault.In(scope)
	f.Add(l.Validate())
	f.At("Liquid", q.Validate())
	f.Add(fault.AboveTo("drive", drive, 0, maxModulus))
	if err := f.Err(); err != nil {
		return 0, err
	}
	return rateThrough(q, drive, passage{l, 1})
}
