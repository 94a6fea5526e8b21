package flow

import (
	"fmt"
	"math"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/root"
)

// killRun is a job prepared: coordinates are volumes from the inlet, down the way
// in and up the way out.
type killRun struct {
	k         Kill
	legs      []leg
	in, total float64 // where the way in and the way out end
	loss      [2][]float64
	bottom    float64 // pressure held there
	mass      float64
	pumping   bool
}

// Which liquid.
const (
	oldLiquid = iota
	killLiquid
)

func newKillRun(k Kill) (*killRun, error) {
	r := &killRun{k: k, bottom: float64(k.Formation + k.Margin), pumping: true}
	r.legs, _, r.in = k.Well.legs(k.Reverse)
	r.total = r.legs[len(r.legs)-1].v1
	for i, l := range [2]PumpedFluid{k.InWell, k.Liquid} {
		for _, leg := range r.legs {
			gradient, _, err := leg.loss(l, k.Rate)
			if err != nil {
				return nil, fmt.Errorf("%s %q: %w", leg.side, leg.section.Name, err)
			}
			r.loss[i] = append(r.loss[i], gradient)
		}
	}
	if k.Influx.Volume > 0 {
		// Its mass from what it takes up at the formation's pressure, which is that at its lower end.
		if err := r.weigh(); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// weigh finds the influx's mass: the density at its middle, with the formation's
// pressure at its lower end.
func (r *killRun) weigh() error {
	v := float64(r.k.Influx.Volume)
	middle := r.z(r.in + v/2)
	rho := 0.0
	for range 100 {
		p := float64(r.k.Formation) - rho*standardGravity*(r.z(r.in)-middle)
		d, err := r.k.Influx.Fluid.Density(unit.Pressure(p), r.temperature(middle))
		if err != nil {
			return fmt.Errorf("flow: influx: %w", err)
		}
		if !(d > 0) || math.IsInf(float64(d), 0) {
			return fmt.Errorf("flow: influx has a density of %v at %v", d, unit.Pressure(p))
		}
		if last := rho; math.Abs(float64(d)-last) <= 1e-14*last {
			break
		}
		rho = float64(d)
	}
	r.mass = rho * v
	return nil
}

// z is the vertical depth of a coordinate.
func (r *killRun) z(v float64) float64 {
	i := sort.Search(len(r.legs)-1, func(i int) bool { return r.legs[i].v1 >= v })
	l := r.legs[i]
	share := math.Max(0, math.Min(1, (v-l.v0)/(l.v1-l.v0)))
	return l.z0 + (l.z1-l.z0)*share
}

func (r *killRun) temperature(z float64) unit.Temperature {
	deep := float64(r.k.Well.Annulus[len(r.k.Well.Annulus)-1].BottomTVD)
	top, bottom := r.k.Influx.Surface.Kelvin(), r.k.Influx.Bottom.Kelvin()
	return unit.Kelvin(top + (bottom-top)*z/deep)
}

// span is the rise of pressure by weight from coordinate a to b, and the loss of
// pressure by friction, of one liquid.
func (r *killRun) span(liquid int, a, b float64) (weight, friction float64) {
	if b <= a {
		return 0, 0
	}
	density := [2]PumpedFluid{r.k.InWell, r.k.Liquid}[liquid].Density
	weight = float64(density) * standardGravity * (r.z(b) - r.z(a))
	if !r.pumping {
		return weight, 0
	}
	for i, l := range r.legs {
		from, to := math.Max(a, l.v0), math.Min(b, l.v1)
		if to > from {
			friction += r.loss[liquid][i] * math.Abs(l.md1-l.md0) * (to - from) / (l.v1 - l.v0)
		}
	}
	return weight, friction
}

// part is a stretch of the way out with its liquid, or the bubble.
type part struct {
	from, to float64
	density  float64 // of the bubble
	liquid   int     // or bubblePart
}

const bubblePart = -1

// parts are what stands in the way out, from the bottom up, with v pumped.
func (r *killRun) parts(v float64) ([]part, error) {
	end := math.Min(r.in+v, r.total)
	front := math.Min(r.in+math.Max(0, v-r.in), end)
	ps := []part{{r.in, front, 0, killLiquid}, {front, end, 0, oldLiquid}}
	p := r.bottom
	for _, x := range ps {
		weight, friction := r.span(x.liquid, x.from, x.to)
		p += weight - friction
	}
	volume, density, err := r.bubble(end, p)
	if err != nil {
		return nil, err
	}
	return append(ps, part{end, end + volume, density, bubblePart}, part{end + volume, r.total, 0, oldLiquid}), nil
}

// climb is the pressure at coordinate to of the way out.
func (r *killRun) climb(parts []part, to float64) float64 {
	p := r.bottom
	for _, x := range parts {
		b := math.Min(x.to, to)
		if b <= x.from {
			continue
		}
		if x.liquid == bubblePart {
			p += x.density * standardGravity * (r.z(b) - r.z(x.from))
			continue
		}
		weight, friction := r.span(x.liquid, x.from, b)
		p += weight - friction
	}
	return p
}

// at is the job with v pumped.
func (r *killRun) at(v float64) (KillPoint, error) {
	parts, err := r.parts(v)
	if err != nil {
		return KillPoint{}, err
	}
	pump := r.inward(v, 0)
	weak := 0.0
	if x := r.coordinate(float64(r.k.WeakTVD)); r.k.Reverse {
		weak = r.inward(v, x)
	} else {
		weak = r.climb(parts, x)
	}
	if r.pumping && r.k.Well.Exit.Count > 0 {
		exit := r.k.InWell
		if v >= r.in {
			exit = r.k.Liquid
		}
		pump += float64(r.k.Well.Exit.Loss(exit.Density, r.k.Rate))
	}
	b := parts[2]
	return KillPoint{
		Pumped: unit.Volume(v), Pump: unit.Pressure(pump), Choke: unit.Pressure(r.climb(parts, r.total)),
		Weak: unit.Pressure(weak), Bubble: unit.Volume(b.to - b.from), TopTVD: unit.Length(r.z(b.to)),
	}, nil
}

// inward is the pressure at coordinate x of the way in with v pumped.
func (r *killRun) inward(v, x float64) float64 {
	p, front := r.bottom, math.Min(v, r.in)
	for _, s := range []part{{x, front, 0, killLiquid}, {math.Max(x, front), r.in, 0, oldLiquid}} {
		weight, friction := r.span(s.liquid, s.from, s.to)
		p += friction - weight
	}
	return p
}

// coordinate is that of a vertical depth in the annulus: the shallowest there.
func (r *killRun) coordinate(z float64) float64 {
	for i := range r.legs {
		l := r.legs[i]
		if !r.k.Reverse {
			l = r.legs[len(r.legs)-1-i] // from surface down
		}
		if l.side != AnnulusSide {
			break
		}
		if z <= math.Max(l.z0, l.z1) && z >= math.Min(l.z0, l.z1) && l.z0 != l.z1 {
			return l.v0 + (l.v1-l.v0)*(z-l.z0)/(l.z1-l.z0)
		}
	}
	return r.in
}

// still is the well before pumping: the formation's own pressure, no friction.
func (r *killRun) still() (KillPoint, error) {
	s := *r
	s.bottom, s.pumping = float64(r.k.Formation), false
	return s.at(0)
}

// volumes are those at which the job is looked at: equal steps, the kill fluid at
// the end of the way in, and the influx's top at the choke, which is at.
func (r *killRun) volumes() (all []float64, at float64, err error) {
	for i := range killSteps + 1 {
		all = append(all, r.total*float64(i)/killSteps)
	}
	all = append(all, r.in)
	at = r.total
	if r.mass > 0 {
		room := func(v float64) float64 { // of the way out above the bubble
			parts, e := r.parts(v)
			if e != nil {
				err = e
				return math.NaN()
			}
			return r.total - parts[2].from - parts[2].volumeOf(r.mass)
		}
		if room(0) > 0 {
			at, _ = root.Find(room, 0, (r.total-r.in)*(1-1e-9), 1e-9) // it has arrived when what was pumped fills the way out
			if err != nil {
				return nil, 0, err
			}
			all = append(all, at)
		} else {
			at = 0
		}
	}
	sort.Float64s(all)
	unique := all[:1]
	for _, v := range all[1:] {
		if v-unique[len(unique)-1] > 1e-9 {
			unique = append(unique, v)
		}
	}
	return unique, at, err
}

// volumeOf is what a mass takes up at the part's density.
func (p part) volumeOf(mass float64) float64 {
	if p.density == 0 {
		return 0
	}
	return mass / p.density
}
