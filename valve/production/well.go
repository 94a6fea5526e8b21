package production

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
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
	Zones   []Zone  `json:"zones"` // from the bottom up
	Outflow Outflow `json:"outflow"`
}

// Zone is one zone with its choke and the tubing above it.
type Zone struct {
	Name     string      `json:"name"`
	TVD      unit.Length `json:"tvd"` // true vertical depth at which it enters the tubing
	Inflow   Inflow      `json:"inflow"`
	WaterCut float64     `json:"water_cut"` // share of water in the liquid, at surface; zero for gas

	Chokes       choke.Table  `json:"chokes"`        // the positions that exist; none stands for an open zone without a choke
	Density      unit.Density `json:"density"`       // of liquid through the choke, in place; needed with Chokes
	VolumeFactor float64      `json:"volume_factor"` // volume of liquid in place per volume at surface; zero stands for 1
	Gas          *GasAtChoke  `json:"gas"`           // needed with Chokes where the zone gives gas; Density and VolumeFactor are then unused

	Above Interval `json:"above"` // tubing from this zone up to the next; the topmost zone's is unused
}

// GasAtChoke is what a choke needs to know of gas.
type GasAtChoke struct {
	Density     unit.Density     `json:"density"`     // at standard conditions: 1 atm and Standard
	Standard    unit.Temperature `json:"standard"`    // temperature of standard conditions, such as 60 degF
	Temperature unit.Temperature `json:"temperature"` // at the choke
	Z           float64          `json:"z"`           // compressibility factor at the choke
	HeatRatio   float64          `json:"heat_ratio"`  // γ, ratio of specific heats
	Ratio       float64          `json:"ratio"`       // xT of the choke
}

// Interval is tubing between two zones.
type Interval struct {
	Density unit.Density `json:"density"` // of what stands or flows in it
	Loss    Loss         `json:"loss"`
}

// Loss is pressure lost to friction, told at one rate:
//
//	Δp = Laminar·(q/At) + Turbulent·(q/At)·|q/At|
//
// The zero value is no loss.
type Loss struct {
	At        unit.FlowRate `json:"at"`
	Laminar   unit.Pressure `json:"laminar"`
	Turbulent unit.Pressure `json:"turbulent"`
}

// linear and square are the loss per rate and per rate squared, in SI.
func (l Loss) coefficients() (linear, square float64) {
	if l.Laminar == 0 && l.Turbulent == 0 {
		return 0, 0
	}
	at := float64(l.At)
	return float64(l.Laminar) / at, float64(l.Turbulent) / (at * at)
}

// Validate reports everything that is wrong with l.
func (l Loss) Validate() error {
	f := fault.In(scope)
	f.Add(fault.AtLeast("Laminar", l.Laminar, 0), fault.AtLeast("Turbulent", l.Turbulent, 0))
	if l.Laminar != 0 || l.Turbulent != 0 {
		f.Add(fault.Above("At", l.At, 0))
	}
	return f.Err()
}

// Validate reports everything that is wrong with the well.
func (w Well) Validate() error {
	f := fault.In(scope)
	if len(w.Zones) == 0 {
		f.New("Zones", "is empty; must be one zone or more")
	}
	if w.Outflow == nil {
		f.New("Outflow", "is missing")
	} else {
		f.At("Outflow", w.Outflow.Validate())
	}
	names := map[string]bool{}
	gas := 0
	for i, z := range w.Zones {
		at := fault.Index("Zones", i)
		f.Add(fault.Given(at+".Name", z.Name))
		if z.Name != "" && names[z.Name] {
			f.New(at+".Name", "is %q like another; must differ", z.Name)
		}
		names[z.Name] = true
		if z.Gas != nil {
			gas++
		}
		if i > 0 && !(z.TVD <= w.Zones[i-1].TVD) {
			f.New(at+".Depth", "is %v; must be at most %v, as zones stand from the bottom up", z.TVD, w.Zones[i-1].TVD)
		}
		if i < len(w.Zones)-1 {
			f.At(at+".Above", z.Above.Validate())
		}
		f.At(at, z.Validate())
	}
	if gas != 0 && gas != len(w.Zones) {
		f.New("Zones", "has %d of %d that give gas; must be all or none: a network has one phase", gas, len(w.Zones))
	}
	return f.Err()
}

// Validate reports everything that is wrong with i.
func (i Interval) Validate() error {
	return fault.Join(scope, fault.AtLeast("Density", i.Density, 0), fault.At("Loss", i.Loss.Validate()))
}

// Validate reports everything that is wrong with z, but for what lies above it.
func (z Zone) Validate() error {
	f := fault.In(scope)
	f.Add(fault.AtLeast("TVD", z.TVD, 0), fault.Between("WaterCut", z.WaterCut, 0, 1))
	if z.Inflow == nil {
		f.New("Inflow", "is missing")
	} else {
		f.At("Inflow", z.Inflow.Validate())
	}
	f.Add(fault.AtLeast("VolumeFactor", z.VolumeFactor, 0)) // 0 stands for 1
	if len(z.Chokes) > 0 {
		f.At("Chokes", z.Chokes.Validate())
		if z.Gas == nil {
			f.Add(fault.Above("Density", z.Density, 0))
		}
	}
	if z.Gas != nil {
		if z.WaterCut != 0 {
			f.New("WaterCut", "is %v; must be 0 for gas", z.WaterCut)
		}
		f.At("Gas", z.Gas.Validate())
	}
	return f.Err()
}

// Validate reports everything that is wrong with g.
func (g GasAtChoke) Validate() error {
	f := fault.In(scope)
	f.Add(fault.AboveTo("Density", g.Density, 0, 100*unit.KilogramPerCubicMetre))
	if k := g.Standard.Kelvin(); !(k > 200 && k <= 400) {
		f.New("Standard", "is %v; must be above 200 K and at most 400 K", g.Standard)
	}
	if k := g.Temperature.Kelvin(); !(k > 100 && k <= 1000) {
		f.New("Temperature", "is %v; must be above 100 K and at most 1000 K", g.Temperature)
	}
	f.Add(fault.AboveTo("Z", g.Z, 0, 5), fault.AboveTo("HeatRatio", g.HeatRatio, 1, 2), fault.AboveTo("Ratio", g.Ratio, 0, 1))
	return f.Err()
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
