package production

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
)

// Inflow is what a zone gives at a pressure in front of it; inflow.Liquid and
// inflow.Gas are two.
type Inflow interface {
	// Validate reports what is wrong.
	Validate() error
	// Static is the pressure at which nothing flows.
	Static() unit.Pressure
	// At is the rate and its slope dq/dp at a gauge pressure, in SI. The rate
	// must be continuous and never grow with the pressure, also above Static
	// and below vacuum.
	At(p float64) (q, slope float64)
}

// Well is zones flowing together. The zero value is an error.
type Well struct {
	Zones   []Zone // from the bottom up
	Outflow Outflow
}

// Zone is one zone with its choke and the tubing above it.
type Zone struct {
	Name     string
	Depth    unit.Length // true vertical depth at which it enters the tubing
	Inflow   Inflow
	WaterCut float64 // share of water in the liquid, at surface; zero for gas

	Chokes       choke.Table  // the positions that exist; none stands for an open zone without a choke
	Density      unit.Density // of liquid through the choke, in place; needed with Chokes
	VolumeFactor float64      // volume of liquid in place per volume at surface; zero stands for 1
	Gas          *Gas         // needed with Chokes where the zone gives gas; Density and VolumeFactor are then unused

	Above Interval // tubing from this zone up to the next; the topmost zone's is unused
}

// Gas is what a choke needs to know of gas.
type Gas struct {
	Density     unit.Density     // at standard conditions: 1 atm and Standard
	Standard    unit.Temperature // temperature of standard conditions, such as 60 degF
	Temperature unit.Temperature // at the choke
	Z           float64          // compressibility factor at the choke
	HeatRatio   float64          // γ, ratio of specific heats
	Ratio       float64          // xT of the choke
}

// Interval is tubing between two zones.
type Interval struct {
	Density unit.Density // of what stands or flows in it
	Loss    Loss
}

// Loss is pressure lost to friction, told at one rate:
//
//	Δp = Laminar·(q/At) + Turbulent·(q/At)·|q/At|
//
// The zero value is no loss.
type Loss struct {
	At                 unit.FlowRate
	Laminar, Turbulent unit.Pressure
}

// linear and square are the loss per rate and per rate squared, in SI.
func (l Loss) coefficients() (linear, square float64) {
	if l.Laminar == 0 && l.Turbulent == 0 {
		return 0, 0
	}
	at := float64(l.At)
	return float64(l.Laminar) / at, float64(l.Turbulent) / (at * at)
}

func (l Loss) check(where string) error {
	var faults []error
	for _, p := range [...]struct {
		name string
		p    unit.Pressure
	}{{"laminar loss", l.Laminar}, {"turbulent loss", l.Turbulent}} {
		if !finite(float64(p.p)) || p.p < 0 {
			faults = append(faults, fmt.Errorf("%s: %s is %v; it must be 0 psi or more", where, p.name, p.p))
		}
	}
	if (l.Laminar != 0 || l.Turbulent != 0) && !(l.At > 0 && finite(float64(l.At))) {
		faults = append(faults, fmt.Errorf("%s: the loss is told at %v; it must be told at a rate above 0 bbl/d", where, l.At))
	}
	return errors.Join(faults...)
}

// Validate reports everything that is wrong with the well.
func (w Well) Validate() error {
	var faults []error
	if len(w.Zones) == 0 {
		faults = append(faults, errors.New("production: the well has no zone"))
	}
	if w.Outflow == nil {
		faults = append(faults, errors.New("production: the well has no outflow"))
	} else {
		faults = append(faults, w.Outflow.Validate())
	}
	names := map[string]bool{}
	gas := 0
	for i, z := range w.Zones {
		where := fmt.Sprintf("production: zone %d (%q)", i+1, z.Name)
		if z.Name == "" || names[z.Name] {
			faults = append(faults, fmt.Errorf("%s: it must have a name of its own", where))
		}
		names[z.Name] = true
		if z.Gas != nil {
			gas++
		}
		if i > 0 && !(z.Depth <= w.Zones[i-1].Depth) {
			faults = append(faults, fmt.Errorf("%s: depth is %v; zones stand from the bottom up, so it must be at most %v", where, z.Depth, w.Zones[i-1].Depth))
		}
		if i < len(w.Zones)-1 {
			faults = append(faults, z.Above.check(where))
		}
		faults = append(faults, z.check(where))
	}
	if gas != 0 && gas != len(w.Zones) {
		faults = append(faults, fmt.Errorf("production: %d of %d zones give gas; a network has one phase", gas, len(w.Zones)))
	}
	return errors.Join(faults...)
}

func (i Interval) check(where string) error {
	if !finite(float64(i.Density)) || i.Density < 0 {
		return errors.Join(fmt.Errorf("%s: density of the tubing above is %v; it must be 0 lb/gal or more", where, i.Density), i.Loss.check(where))
	}
	return i.Loss.check(where)
}

func (z Zone) check(where string) error {
	var faults []error
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("%s: %w", where, fmt.Errorf(format, args...)))
	}
	if !finite(float64(z.Depth)) || z.Depth < 0 {
		fault("depth is %v; it must be 0 ft or more", z.Depth)
	}
	if !(z.WaterCut >= 0 && z.WaterCut <= 1) {
		fault("water cut is %v; it must be 0 to 1", z.WaterCut)
	}
	if z.Inflow == nil {
		fault("it has no inflow")
	} else if err := z.Inflow.Validate(); err != nil {
		fault("%w", err)
	}
	if z.VolumeFactor != 0 && !(z.VolumeFactor > 0 && finite(z.VolumeFactor)) {
		fault("volume factor is %v; it must be above zero, or zero for 1", z.VolumeFactor)
	}
	if len(z.Chokes) > 0 {
		if err := z.Chokes.Validate(); err != nil {
			fault("%w", err)
		}
		if z.Gas == nil && !(z.Density > 0 && finite(float64(z.Density))) {
			fault("density is %v; a choke needs it above 0 lb/gal", z.Density)
		}
	}
	if z.Gas != nil {
		if z.WaterCut != 0 {
			fault("water cut is %v; for gas it must be 0", z.WaterCut)
		}
		faults = append(faults, z.Gas.check(where))
	}
	return errors.Join(faults...)
}

func (g Gas) check(where string) error {
	var faults []error
	for _, x := range [...]struct {
		name   string
		x      float64
		lo, hi float64
	}{
		{"gas density at standard conditions in kg/m3", float64(g.Density), 0, 100},
		{"standard temperature in K", g.Standard.Kelvin(), 200, 400},
		{"temperature at the choke in K", g.Temperature.Kelvin(), 100, 1000},
		{"compressibility factor Z", g.Z, 0, 5},
		{"ratio of specific heats", g.HeatRatio, 1, 2},
		{"ratio xT", g.Ratio, 0, 1},
	} {
		if !(x.x > x.lo && x.x <= x.hi) {
			faults = append(faults, fmt.Errorf("%s: %s is %.6g; it must be above %g and at most %g", where, x.name, x.x, x.lo, x.hi))
		}
	}
	return errors.Join(faults...)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
