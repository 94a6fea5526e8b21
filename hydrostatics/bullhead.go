package hydrostatics

import (
	"errors"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Bullhead is a well that is killed by pumping: the kill fluid goes down behind
// what stands in the well, which goes back into the formation.
//
// At every moment what was in the well stands below the front and kill fluid
// above it, and what is pumped fills the bore from the top, so that the volume
// pumped is the bore's down to the front, however much a gas below is squeezed.
// Pressures follow up the column from the formation:
//
//	ps = pf + i − ∫ρ·g·dz (below the front) − ρk·g·zf + ∫F·ds (above it)
//
// pf is the formation's pressure, i what it takes above that to accept the rate,
// ρ the density below the front at its own pressure and temperature, ρk the kill
// fluid's, zf the front's vertical depth, F the kill fluid's friction gradient
// along the hole.
//
// Not for a well whose gas outruns the kill fluid (see flow.BubbleRise), and
// nothing is said of what the fluid does to the formation. The friction of what
// is pushed ahead is left out: it adds to the pump's pressure. A fluid that leaks
// off changes i on the way.
//
// Source: balance of pressures; the limits and the shape of the chart are common
// practice in well control.
type Bullhead struct {
	Formation   Formation           `json:"formation"`
	Injection   unit.Pressure       `json:"injection"` // above the formation's pressure, to accept the rate
	Fracture    unit.Pressure       `json:"fracture"`  // at the formation's depth
	Path        *Path               `json:"path"`      // nil for a vertical well
	Sections    []LegSection        `json:"sections"`  // the bores from surface down to the formation
	Influx      Fluid               `json:"influx"`    // what stands in the well before pumping
	Kill        unit.Density        `json:"kill"`
	Friction    []unit.Gradient     `json:"friction"`    // of the kill fluid at the rate, along the hole, one for each section; nil for none
	Temperature *TemperatureProfile `json:"temperature"` // may be nil for an influx of constant density
}

// BullheadPoint is the job when so much has been pumped. A surface pressure below
// nought says that the fluid falls by itself.
type BullheadPoint struct {
	Pumped   unit.Volume `json:"pumped"`
	FrontMD  unit.Length `json:"front_md"` // MD
	FrontTVD unit.Length `json:"front_tvd"`

	Shut            unit.Pressure `json:"shut"`             // at surface with the pump off and the formation at its own pressure
	Pump            unit.Pressure `json:"pump"`             // at surface while pumping
	Greatest        unit.Pressure `json:"greatest"`         // at surface, pump off, that brings the formation to its fracture pressure
	GreatestPumping unit.Pressure `json:"greatest_pumping"` // likewise while pumping: friction takes the rest
	AtFront         unit.Pressure `json:"at_front"`         // while pumping
}

// Schedule returns the job at so many equal steps of the front along the hole, the
// first with nothing pumped, and at every change of bore.
//
// Errors: faults of the inputs, all of them; what the influx's density refuses.
//
//	p(surface) = p(formation) − heads + friction, at each place of the front
//
// Source: hydrostatics; the friction is the caller's.
func (b Bullhead) Schedule(steps int) ([]BullheadPoint, error) {
	path, err := b.check(steps)
	if err != nil {
		return nil, err
	}
	column := func(p unit.Pressure) (*Column, error) {
		return NewColumn([]Layer{{Fluid: b.Influx, BottomTVD: b.Formation.TVD}}, b.Temperature, Reference{Pressure: p, TVD: b.Formation.TVD})
	}
	shut, err1 := column(b.Formation.Pressure)
	pump, err2 := column(b.Formation.Pressure + b.Injection)
	most, err3 := column(b.Fracture)
	if err := errors.Join(err1, err2, err3); err != nil {
		return nil, err
	}
	var points []BullheadPoint
	for _, md := range b.fronts(steps) {
		tvd, err := path.TVD(md)
		if err != nil {
			return nil, err
		}
		tvd = min(tvd, b.Formation.TVD) // but for rounding
		volume, friction := b.above(md)
		s, err1 := shut.At(tvd)
		p, err2 := pump.At(tvd)
		m, err3 := most.At(tvd)
		if err := errors.Join(err1, err2, err3); err != nil {
			return nil, err
		}
		kill := Pressure(b.Kill, tvd)
		points = append(points, BullheadPoint{
			Pumped: volume, FrontMD: md, FrontTVD: tvd, Shut: s - kill, Pump: p - kill + friction,
			Greatest: m - kill, GreatestPumping: m - kill + friction, AtFront: p,
		})
	}
	return points, nil
}

// fronts are the measured depths at which the job is looked at.
func (b Bullhead) fronts(steps int) []unit.Length {
	end := b.Sections[len(b.Sections)-1].BottomMD
	var all []unit.Length
	next := 0
	for i := range steps + 1 {
		md := end * (unit.Length(i) / unit.Length(steps)) // the last is the end itself
		for next < len(b.Sections)-1 && b.Sections[next].BottomMD <= md {
			if b.Sections[next].BottomMD < md {
				all = append(all, b.Sections[next].BottomMD)
			}
			next++
		}
		all = append(all, md)
	}
	return all
}

// above returns the volume of the bore down to a depth, and the kill fluid's
// friction in it.
func (b Bullhead) above(md unit.Length) (unit.Volume, unit.Pressure) {
	volume, friction, top := 0.0, 0.0, 0.0
	for i, s := range b.Sections {
		length := math.Min(float64(md), float64(s.BottomMD)) - top
		if length <= 0 {
			break
		}
		volume += float64(s.Area) * length
		if b.Friction != nil {
			friction += float64(b.Friction[i]) * length
		}
		top += length
	}
	return unit.Volume(volume), unit.Pressure(friction)
}

// Limits that no well comes near.
const (
	mostKill = 10 * unit.GramPerCubicCentimetre
	mostBore = 100 * unit.SquareMetre
)

// mostBullheadSteps is more than a chart or a table can show.
const mostBullheadSteps = 10_000

func (b Bullhead) check(steps int) (*Path, error) {
	f := fault.In(scope)
	f.Add(fault.Above("Formation.TVD", b.Formation.TVD, 0), fault.Between("Formation.Pressure", b.Formation.Pressure, 0, 1e9*unit.Pascal),
		fault.Between("Injection", b.Injection, 0, 1e9*unit.Pascal), fault.AboveTo("Fracture", b.Fracture, b.Formation.Pressure, 10e9*unit.Pascal), fault.AboveTo("Kill", b.Kill, 0, mostKill),
		fault.Whole("steps", steps, 1, mostBullheadSteps))
	if b.Influx == nil {
		f.New("Influx", "is missing; say what stands in the well")
	}
	if b.Friction != nil && len(b.Friction) != len(b.Sections) {
		f.New("Friction", "has %d gradients for %d sections; there must be one for each, or none", len(b.Friction), len(b.Sections))
	}
	for i, x := range b.Friction {
		f.Add(fault.Between(fault.Index("Friction", i), x, 0, 10*unit.PSIPerFoot))
	}
	last := unit.Length(0)
	for i, s := range b.Sections {
		f.AtIndex("Sections", i, fault.Join("", fault.Above("BottomMD", s.BottomMD, last), fault.AboveTo("Area", s.Area, 0, mostBore)))
		last = s.BottomMD
	}
	if len(b.Sections) == 0 {
		f.New("Sections", "are missing; give the bore from surface down to the formation")
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	path := b.Path
	if path == nil {
		var err error
		if path, err = Vertical(last); err != nil {
			return nil, err
		}
	}
	tvd, err := path.TVD(last)
	if err != nil {
		return nil, err
	}
	if d := tvd - b.Formation.TVD; !(math.Abs(float64(d)) <= slackDepth) {
		return nil, fault.NewIn(scope, "Sections", "end at TVD %v; must end at the formation, %v", tvd, b.Formation.TVD)
	}
	return path, nil
}
