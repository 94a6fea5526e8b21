package flow

import (
	"fmt"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Stage is a volume of one liquid pumped at one rate.
type Stage struct {
	Liquid PumpedFluid   `json:"liquid"`
	Volume unit.Volume   `json:"volume"`
	Rate   unit.FlowRate `json:"rate"`
}

// Displacement is a well full of liquid and what is pumped into it.
type Displacement struct {
	Well         Well          `json:"well"`
	InPipe       PumpedFluid   `json:"in_pipe"` // in the well before pumping
	InAnnulus    PumpedFluid   `json:"in_annulus"`
	Stages       []Stage       `json:"stages"`
	BackPressure unit.Pressure `json:"back_pressure"` // held on the returns; gauge
	Reverse      bool          `json:"reverse"`       // pumped down the annulus
	Output       unit.Volume   `json:"output"`        // of the pump, per stroke; zero counts no strokes
	Every        unit.Volume   `json:"every"`         // points of the curve at least this often; zero takes the kinks alone
}

// Point is the state at a volume pumped. The pressures are exact between the
// points too, by straight lines: they bend only where a front meets a change of
// section. Where a rate changes or a front passes the exit they jump, and two
// points have the same volume.
type Point struct {
	Volume       unit.Volume   `json:"volume"`
	Time         time.Duration `json:"time"`
	Strokes      float64       `json:"strokes"`
	Rate         unit.FlowRate `json:"rate"`
	PumpPressure unit.Pressure `json:"pump_pressure"` // at the inlet; below zero the well takes more than is pumped
	Bottom       unit.Pressure `json:"bottom"`        // where the fluid goes round, on the annulus side
	Equivalent   unit.Density  `json:"equivalent"`    // of Bottom at its depth; 0 at no depth
	Static       unit.Pressure `json:"static"`        // at the inlet with the pump off and the back pressure held: what shutting in would show
	Friction     unit.Pressure `json:"friction"`      // all losses together
}

// UTube is a stretch of pumping in which the columns outweigh the friction: the
// inlet would need a vacuum, the pump loses its pressure, and the returns run
// faster than the pump until the levels make up for it.
type UTube struct {
	From  unit.Volume   `json:"from"` // volumes pumped
	To    unit.Volume   `json:"to"`
	Least unit.Pressure `json:"least"` // lowest inlet pressure in it, below zero
	At    unit.Volume   `json:"at"`    // where that is
}

// Event is a front passing a place that matters.
type Event struct {
	What    string        `json:"what"`
	Volume  unit.Volume   `json:"volume"`
	Time    time.Duration `json:"time"`
	Strokes float64       `json:"strokes"`
}

// Returned is what came back of one liquid.
type Returned struct {
	Name   string      `json:"name"`
	Volume unit.Volume `json:"volume"`
}

// Schedule is a displacement worked out.
type Schedule struct {
	Points   []Point       `json:"points"`
	Events   []Event       `json:"events"`
	UTubes   []UTube       `json:"u_tubes"`
	Returns  []Returned    `json:"returns"` // in the order in which they come
	Pumped   unit.Volume   `json:"pumped"`
	Duration time.Duration `json:"duration"`
	Strokes  float64       `json:"strokes"`

	GreatestPump   Point `json:"greatest_pump"` // the highest pump pressure
	GreatestBottom Point `json:"greatest_bottom"`
	LeastBottom    Point `json:"least_bottom"`

	// HoldBack is the further back pressure that would keep the inlet from
	// U-tubing all the way; zero where it doesn't.
	HoldBack unit.Pressure `json:"hold_back"`

	run *run
}

// front is the boundary between a liquid and the one that follows it.
type front struct {
	ahead, behind string
	start         float64 // coordinate before pumping, in volume from the inlet
}

// mostPoints bounds the curve.
const mostPoints = 20_000

// Schedule returns pressures against volume pumped, with fronts that are flat:
// no mixing, no channelling, no fluid left behind. With z the vertical depth and
// ℓ the length along the hole, at each moment
//
//	p(inlet) = p(back) + Σ (dp/dℓ)·Δℓ + Δp(exit) - Σ ρ g Δz    along the flow
//
// Friction is Stream.Friction of each liquid in each section at the stage's rate.
// Where the inlet pressure is below zero the liquid falls by itself (UTube); the
// rates are then not those of the plan, and the pressures there are what it would
// take to keep to it.
//
// Errors: those of Validate; those of Stream.Friction.
//
// Source: balance of pressures; API RP 13D (2006), 7 for the losses.
func (d Displacement) Schedule() (Schedule, error) {
	if err := d.Validate(); err != nil {
		return Schedule{}, err
	}
	r, err := newRun(d)
	if err != nil {
		return Schedule{}, err
	}
	s := Schedule{run: r}
	start, elapsed := 0.0, 0.0
	for i, stage := range d.Stages {
		end := start + float64(stage.Volume)
		for _, v := range r.volumes(start, end) {
			t := elapsed + (v-start)/float64(stage.Rate)
			// Left and right of a front at the exit, and of a change of rate.
			if v > start {
				s.Points = append(s.Points, r.point(i, v, t, true))
			}
			if after := r.point(i, v, t, false); v < end && (len(s.Points) == 0 || after != s.Points[len(s.Points)-1]) {
				s.Points = append(s.Points, after)
			}
		}
		elapsed += (end - start) / float64(stage.Rate)
		start = end
	}
	s.Pumped, s.Duration = unit.Volume(start), duration(elapsed)
	s.Strokes = r.strokes(start)
	s.extremes()
	s.UTubes = uTubes(s.Points)
	s.Events = r.events(start)
	s.Returns = r.returns(start)
	return s, nil
}

// Validate reports everything that is wrong with d.
func (d Displacement) Validate() error {
	f := fault.In("flow")
	f.At("Well", d.Well.Validate())
	f.At("InPipe", d.InPipe.Validate())
	f.At("InAnnulus", d.InAnnulus.Validate())
	if len(d.Stages) == 0 || len(d.Stages) > 100 {
		f.New("Stages", "has %d stages; must have from 1 to 100", len(d.Stages))
	}
	var total unit.Volume
	for i, s := range d.Stages {
		at := fault.Index("Stages", i)
		f.At(at+".Liquid", s.Liquid.Validate())
		f.Add(fault.AboveTo(at+".Volume", s.Volume, 0, 1e5*unit.CubicMetre))
		f.Add(fault.Between(at+".Rate", s.Rate, 1e-6*unit.LitrePerMinute, 1*unit.CubicMetrePerSecond))
		total += s.Volume
	}
	f.Add(fault.Between("BackPressure", d.BackPressure, 0, 1e9*unit.Pascal))
	if d.Output != 0 {
		f.Add(fault.Between("Output", d.Output, 1e-9*unit.CubicMetre, 10*unit.CubicMetre))
	}
	f.Add(fault.Between("Every", d.Every, 0, 1e5*unit.CubicMetre))
	if d.Every > 0 && total/d.Every > mostPoints {
		f.New("Every", "is %s; must make at most %d points of %s", d.Every.Rounded(6), mostPoints, total.Rounded(6))
	}
	if n := (len(d.Well.Pipe) + len(d.Well.Annulus)) * (len(d.Stages) + 2); n > mostPoints {
		f.New("Stages", "make with %d sections and %d stages too many points; must be at most %d", len(d.Well.Pipe)+len(d.Well.Annulus), len(d.Stages), mostPoints)
	}
	return f.Err()
}

func (s *Schedule) extremes() {
	s.GreatestPump, s.GreatestBottom, s.LeastBottom = s.Points[0], s.Points[0], s.Points[0]
	for _, p := range s.Points {
		if p.PumpPressure > s.GreatestPump.PumpPressure {
			s.GreatestPump = p
		}
		if p.Bottom > s.GreatestBottom.Bottom {
			s.GreatestBottom = p
		}
		if p.Bottom < s.LeastBottom.Bottom {
			s.LeastBottom = p
		}
		s.HoldBack = max(s.HoldBack, -p.PumpPressure)
	}
}

// uTubes finds where the inlet pressure is below zero, with the ends on the
// straight lines between points.
func uTubes(points []Point) []UTube {
	var all []UTube
	open := false
	for i, p := range points {
		if p.PumpPressure < 0 {
			if !open {
				from := p.Volume
				if i > 0 {
					from = crossing(points[i-1], p)
				}
				all, open = append(all, UTube{From: from, Least: p.PumpPressure, At: p.Volume}), true
			}
			if u := &all[len(all)-1]; p.PumpPressure < u.Least {
				u.Least, u.At = p.PumpPressure, p.Volume
			}
			all[len(all)-1].To = p.Volume
		} else if open {
			all[len(all)-1].To = crossing(points[i-1], p)
			open = false
		}
	}
	return all
}

func crossing(a, b Point) unit.Volume {
	share := a.PumpPressure / (a.PumpPressure - b.PumpPressure)
	return a.Volume + (b.Volume-a.Volume)*unit.Volume(share)
}

// String names the event with its volume.
func (e Event) String() string { return fmt.Sprintf("%s at %s", e.What, e.Volume.Rounded(4)) }
