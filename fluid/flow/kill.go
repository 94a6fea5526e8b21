package flow

import (
	"errors"
	"fmt"
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Kill is a shut-in well that is circulated dead: the kill fluid goes down one
// side and what has come in goes up the other, with the returns choked so that the
// formation sees one pressure all the time.
//
// With V pumped, the pressure at the bottom being pf + m,
//
//	pump    pp = pf + m − ∫ρ·g·dz + ∫F·ds        down the way in
//	choke   pc = pf + m − ∫ρ·g·dz − ∫F·ds        up the way out
//
// pf is the formation's pressure, m the margin, F the friction gradient of the
// liquid that is there. A gas that has come in is one bubble that keeps its mass
// until its top is at the choke, with one density, that of its middle; below it is
// what has been pumped. Liquid above a bubble is taken at the pump's rate, and gas
// costs no friction.
//
// Limits: no slip of the bubble through the liquid (it then arrives earlier and the
// choke's pressure peaks earlier and lower), none of it dissolved, one temperature
// at each depth. Both make the greatest choke pressure a high one, common practice.
//
// Source: balance of pressures; constant bottom-hole pressure and the single bubble
// are common practice of well control.
type Kill struct {
	Well      Well          `json:"well"`    // its end is the formation's depth
	InWell    PumpedFluid   `json:"in_well"` // before pumping
	Liquid    PumpedFluid   `json:"liquid"`  // that kills the well
	Rate      unit.FlowRate `json:"rate"`
	Formation unit.Pressure `json:"formation"` // at the end of the pipe
	Margin    unit.Pressure `json:"margin"`    // above it, while circulating
	Influx    Influx        `json:"influx"`
	Reverse   bool          `json:"reverse"` // pumped down the annulus

	WeakTVD  unit.Length   `json:"weak_tvd"` // true vertical depth of the weakest point around the annulus, such as a shoe
	Fracture unit.Pressure `json:"fracture"` // there
}

// Influx is what has come in and stands at the bottom of the way out. Without a
// volume there is none.
type Influx struct {
	Volume  unit.Volume        `json:"volume"`  // at the formation's pressure: the gain in the pits
	Fluid   hydrostatics.Fluid `json:"fluid"`   // by its density at a gauge pressure and a temperature
	Surface unit.Temperature   `json:"surface"` // of the way out; straight between, by vertical depth
	Bottom  unit.Temperature   `json:"bottom"`
}

// KillPoint is the job when so much has been pumped.
type KillPoint struct {
	Pumped unit.Volume   `json:"pumped"`
	Pump   unit.Pressure `json:"pump"`
	Choke  unit.Pressure `json:"choke"`
	Weak   unit.Pressure `json:"weak"`    // at the weak point
	Bubble unit.Volume   `json:"bubble"`  // of what came in, at its own pressure
	TopTVD unit.Length   `json:"top_tvd"` // true vertical depth of its top; at surface while it comes out
}

// Killing is the job worked out.
type Killing struct {
	Points        []KillPoint `json:"points"`
	ShutIn        KillPoint   `json:"shut_in"`    // before pumping, without margin or friction; Pump is the shut-in pressure of the way in
	Through       unit.Volume `json:"through"`    // kill fluid at the end of the way in
	AtSurface     unit.Volume `json:"at_surface"` // pumped when the top of the influx is at the choke; all of it if nothing has come in
	Whole         unit.Volume `json:"whole"`      // both sides full of kill fluid
	GreatestChoke KillPoint   `json:"greatest_choke"`
	GreatestWeak  KillPoint   `json:"greatest_weak"`
}

// killSteps is how many equal volumes a job is looked at.
const killSteps = 120

// Schedule works the job out, from the first stroke to kill fluid all round.
//
// Errors: faults of the inputs, all at once; what the influx's density refuses.
func (k Kill) Schedule() (Killing, error) {
	if err := k.Validate(); err != nil {
		return Killing{}, err
	}
	r, err := newKillRun(k)
	if err != nil {
		return Killing{}, err
	}
	out := Killing{Through: unit.Volume(r.in), Whole: unit.Volume(r.total)}
	if out.ShutIn, err = r.still(); err != nil {
		return Killing{}, err
	}
	volumes, at, err := r.volumes()
	if err != nil {
		return Killing{}, err
	}
	out.AtSurface = unit.Volume(at)
	for _, v := range volumes {
		p, err := r.at(v)
		if err != nil {
			return Killing{}, err
		}
		out.Points = append(out.Points, p)
	}
	out.GreatestChoke, out.GreatestWeak = out.Points[0], out.Points[0]
	for _, p := range out.Points {
		if p.Choke > out.GreatestChoke.Choke {
			out.GreatestChoke = p
		}
		if p.Weak > out.GreatestWeak.Weak {
			out.GreatestWeak = p
		}
	}
	return out, nil
}

// Initial is the pump's pressure when the kill fluid begins to go down, Final that
// when it is at the end of the way in.
func (k Killing) Initial() unit.Pressure {
	if len(k.Points) == 0 {
		return unit.Pressure(math.NaN())
	}
	return k.Points[0].Pump
}

// Final: see Initial. From there on the way in doesn't change.
func (k Killing) Final() unit.Pressure {
	if len(k.Points) == 0 {
		return unit.Pressure(math.NaN())
	}
	return k.Points[len(k.Points)-1].Pump
}

// Validate reports what is out of range.
func (k Kill) Validate() error {
	f := fault.In("flow")
	f.At("Well", k.Well.Validate())
	f.At("InWell", k.InWell.Validate())
	f.At("Liquid", k.Liquid.Validate())
	f.Add(fault.AboveTo("Rate", k.Rate, 0, mostRate), fault.Between("Formation", k.Formation, 0, 1e9*unit.Pascal),
		fault.Between("Margin", k.Margin, 0, 1e9*unit.Pascal), fault.Between("Fracture", k.Fracture, 0, 1e10*unit.Pascal))
	if n := len(k.Well.Annulus); n > 0 {
		f.Add(fault.Between("WeakTVD", k.WeakTVD, 0, k.Well.Annulus[n-1].BottomTVD))
	}
	out := k.Well.AnnulusVolume()
	if k.Reverse {
		out = k.Well.PipeVolume()
	}
	f.Add(fault.Between("Influx.Volume", k.Influx.Volume, 0, out))
	if k.Influx.Volume > 0 {
		if k.Influx.Fluid == nil {
			f.New("Influx.Fluid", "is missing; say what has come in")
		}
		f.Add(fault.Temperature("Influx.Surface", k.Influx.Surface, unit.Celsius(-60), unit.Celsius(350)),
			fault.Temperature("Influx.Bottom", k.Influx.Bottom, unit.Celsius(-60), unit.Celsius(350)))
	}
	return f.Err()
}

// errNoBubble says that the bubble's volume was not found.
var errNoBubble = errors.New("flow: the bubble's volume doesn't settle")

// bubble finds what the influx takes up above coordinate v, where the pressure is
// p: its volume, its density and the coordinate of its top.
func (r *killRun) bubble(v, p float64) (volume, density float64, err error) {
	if r.mass == 0 || v >= r.total {
		return 0, 0, nil
	}
	density = r.mass / float64(r.k.Influx.Volume)
	for range 200 {
		volume = math.Min(r.mass/density, r.total-v)
		middle := r.z(v + volume/2)
		pm := p - density*standardGravity*(r.z(v)-middle)
		rho, err := r.k.Influx.Fluid.Density(unit.Pressure(pm), r.temperature(middle))
		if err != nil {
			return 0, 0, fmt.Errorf("flow: influx: %w", err)
		}
		next := float64(rho)
		if !(next > 0) || math.IsInf(next, 0) {
			return 0, 0, fmt.Errorf("flow: influx has a density of %v at %v", rho, unit.Pressure(pm))
		}
		if math.Abs(next-density) <= 1e-12*density {
			return math.Min(r.mass/next, r.total-v), next, nil
		}
		density = (density + next) / 2 // halfway: a heavy gas may swing
	}
	return 0, 0, errNoBubble
}
