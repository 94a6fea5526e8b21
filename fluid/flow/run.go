package flow

import (
	"fmt"
	"slices"
	"sort"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// run is a displacement prepared: the legs in flow order, the fronts, and the
// losses of every liquid in every leg at every stage's rate.
type run struct {
	d       Displacement
	legs    []leg
	inlet   int     // legs before the exit
	exit    float64 // volume before the exit
	total   float64
	liquids []PumpedFluid // from the one ahead of all to the last pumped
	fronts  []front       // fronts[k] lies between liquids[k] and liquids[k+1]
	// losses are per length, by stage, liquid and leg.
	losses [][][]float64
}

func newRun(d Displacement) (*run, error) {
	r := &run{d: d}
	r.legs, r.inlet, r.exit = d.Well.legs(d.Reverse)
	r.total = r.legs[len(r.legs)-1].v1
	first, second := d.InAnnulus, d.InPipe
	if d.Reverse {
		first, second = second, first
	}
	r.liquids = []PumpedFluid{first, second}
	at := 0.0
	r.fronts = []front{{first.Name, second.Name, r.exit}}
	for _, s := range d.Stages {
		r.fronts = append(r.fronts, front{r.liquids[len(r.liquids)-1].Name, s.Liquid.Name, at})
		r.liquids = append(r.liquids, s.Liquid)
		at -= float64(s.Volume)
	}
	return r, r.prepare()
}

// prepare solves each friction once: rates and liquids repeat.
func (r *run) prepare() error {
	type key struct {
		conduit  Conduit
		minor    float64
		length   unit.Length
		rheology Rheology
		density  unit.Density
		rate     unit.FlowRate
	}
	known := map[key]float64{}
	for i, stage := range r.d.Stages {
		r.losses = append(r.losses, make([][]float64, len(r.liquids)))
		for k, x := range r.liquids {
			if k > i+2 {
				break // not pumped yet
			}
			row := make([]float64, len(r.legs))
			for j, l := range r.legs {
				s := l.section
				at := key{s.Conduit, s.Minor, s.Length, x.Rheology, x.Density, stage.Rate}
				loss, ok := known[at]
				if !ok {
					var err error
					if loss, _, err = l.loss(x, stage.Rate); err != nil {
						return fmt.Errorf("%s %q, %s: %w", l.side, s.Name, x.Name, err)
					}
					known[at] = loss
				}
				row[j] = loss
			}
			r.losses[i][k] = row
		}
	}
	return nil
}

// volumes lists where the curve has points between two volumes pumped, both
// ends included: where a front meets an end of a leg, and every so often.
func (r *run) volumes(start, end float64) []float64 {
	vs := []float64{start, end}
	for _, f := range r.fronts {
		for _, l := range r.legs {
			if v := l.v1 - f.start; v > start && v < end {
				vs = append(vs, v)
			}
		}
	}
	if every := float64(r.d.Every); every > 0 {
		for n := int(start / every); float64(n)*every < end; n++ {
			if v := float64(n) * every; v > start {
				vs = append(vs, v)
			}
		}
	}
	slices.Sort(vs)
	// Equal sections put two fronts on two ends at one volume, but for the
	// last bits.
	vs = slices.CompactFunc(vs, func(next, last float64) bool { return next-last <= 1e-12*r.total })
	vs[len(vs)-1] = end
	return vs
}

// point works out the state after v is pumped, in stage i; before tells which
// side of a jump.
func (r *run) point(i int, v, seconds float64, before bool) Point {
	p := Point{Volume: unit.Volume(v), Time: duration(seconds), Strokes: r.strokes(v), Rate: r.d.Stages[i].Rate}
	pressure, static := float64(r.d.BackPressure), float64(r.d.BackPressure)
	var friction, bottom float64
	for j := len(r.legs) - 1; j >= 0; j-- {
		l := r.legs[j]
		if j == r.inlet-1 {
			// The exit counts to the pipe side: Bottom is on the annulus side.
			loss := r.exitLoss(p.Rate, v, before)
			friction += loss
			if r.d.Reverse {
				pressure += loss
				bottom = pressure
			} else {
				bottom = pressure
				pressure += loss
			}
		}
		lost, weight := r.leg(i, j, v)
		length := float64(l.section.Length)
		friction += lost * length
		pressure += lost*length - weight*(l.z1-l.z0)
		static -= weight * (l.z1 - l.z0)
	}
	p.PumpPressure, p.Static, p.Friction, p.Bottom = unit.Pressure(pressure), unit.Pressure(static), unit.Pressure(friction), unit.Pressure(bottom)
	if depth := r.d.Well.depth(); depth > 0 {
		p.Equivalent = hydrostatics.EquivalentDensity(p.Bottom, depth)
	}
	return p
}

// leg returns the mean loss per length and the mean specific weight in a leg.
func (r *run) leg(i, j int, v float64) (lost, weight float64) {
	for k, x := range r.liquids {
		if share := r.share(k, j, v); share > 0 {
			lost += share * r.losses[i][k][j]
			weight += share * float64(x.Density) * standardGravity
		}
	}
	return lost, weight
}

func (r *run) exitLoss(rate unit.FlowRate, v float64, before bool) float64 {
	if r.d.Well.Exit.Count == 0 {
		return 0
	}
	k := 0
	for k < len(r.fronts) {
		at, edge := r.fronts[k].start+v, r.exit-1e-12*r.total
		if before {
			edge = r.exit + 1e-12*r.total
		}
		if at < edge {
			break // it hasn't got there
		}
		k++
	}
	return float64(r.d.Well.Exit.Loss(r.liquids[k].Density, rate))
}

func (r *run) strokes(v float64) float64 {
	if r.d.Output == 0 {
		return 0
	}
	return v / float64(r.d.Output)
}

// seconds is the time at which v is pumped.
func (r *run) seconds(v float64) float64 {
	t := 0.0
	for _, s := range r.d.Stages {
		part := min(v, float64(s.Volume))
		t += part / float64(s.Rate)
		if v -= part; v <= 0 {
			break
		}
	}
	return t
}

// events lists the fronts' passing the exit and reaching the outlet.
func (r *run) events(pumped float64) []Event {
	var all []Event
	add := func(what string, v float64) {
		if v >= 0 && v <= pumped*(1+1e-12) {
			all = append(all, Event{what, unit.Volume(v), duration(r.seconds(v)), r.strokes(v)})
		}
	}
	for k, f := range r.fronts {
		if k == 0 {
			if f.ahead != f.behind {
				add(f.behind+" at the outlet", r.total-f.start)
			}
			continue
		}
		if f.ahead == f.behind {
			continue
		}
		if f.start < 0 {
			add("start of "+f.behind, -f.start)
		}
		add(f.behind+" at the exit", r.exit-f.start)
		add(f.behind+" at the outlet", r.total-f.start)
	}
	sort.SliceStable(all, func(a, b int) bool { return all[a].Volume < all[b].Volume })
	return all
}

// returns adds up what left the well.
func (r *run) returns(pumped float64) []Returned {
	var all []Returned
	ahead := r.total + pumped // the far end of the first liquid, had it stayed in one line
	for k, x := range r.liquids {
		behind := r.total
		if k < len(r.fronts) {
			behind = max(r.fronts[k].start+pumped, r.total)
		}
		if out := ahead - behind; out > 0 {
			if n := len(all); n > 0 && all[n-1].Name == x.Name {
				all[n-1].Volume += unit.Volume(out)
			} else {
				all = append(all, Returned{x.Name, unit.Volume(out)})
			}
		}
		if ahead = behind; ahead <= r.total {
			break
		}
	}
	return all
}
