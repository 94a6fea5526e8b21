package sequence_test

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"sync"
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// The plain walker's gas: nitrogen in a hole that is 60 degF at surface and 1.5 degF
// warmer every 100 ft, integrated by Runge and Kutta's fourth order from every
// pressure at surface that may matter, and looked up in between. In a vertical
// hole a column's mass for each area is the pressure that it makes over g, so that
// pounds per square inch of it are a mass.

const (
	plainGasStep  = 100.0 // ft
	plainGasDepth = 14000.0
	plainGasRatio = 0.04 // of ln p at surface
)

type plainGasTable struct {
	log, slope [][]float64 // ln psia by curve and depth, and by how much it grows in a foot
}

var plainNitrogen = sync.OnceValue(func() *plainGasTable {
	g := &plainGasTable{}
	gradient := func(z, psia float64) float64 {
		d, err := fluid.Nitrogen{}.Density(pounds(psia-atmosphere), unit.Fahrenheit(60+0.015*z))
		if err != nil {
			return math.NaN()
		}
		return d.In(ppg) * psiPerFootPpg
	}
	for y := math.Log(1.5); y < math.Log(21000); y += plainGasRatio {
		p := math.Exp(y)
		var logs, slopes []float64
		for z := 0.0; ; z += plainGasStep {
			a := gradient(z, p)
			logs, slopes = append(logs, math.Log(p)), append(slopes, a/p)
			if z >= plainGasDepth {
				break
			}
			h := plainGasStep
			b := gradient(z+h/2, p+h/2*a)
			c := gradient(z+h/2, p+h/2*b)
			p += h / 6 * (a + 2*b + 2*c + gradient(z+h, p+h*c))
		}
		g.log, g.slope = append(g.log, logs), append(g.slope, slopes)
	}
	return g
})

// at is ln psia of a curve at a depth.
func (g *plainGasTable) at(curve int, z float64) float64 {
	k := min(int(z/plainGasStep), len(g.log[curve])-2)
	t := z/plainGasStep - float64(k)
	a, b := g.log[curve][k], g.log[curve][k+1]
	da, db := g.slope[curve][k]*plainGasStep, g.slope[curve][k+1]*plainGasStep
	return a*(1+2*t)*(1-t)*(1-t) + da*t*(1-t)*(1-t) + b*t*t*(3-2*t) - db*t*t*(1-t)
}

// carry takes psi through gas from one depth to another.
func (g *plainGasTable) carry(p, from, to float64) float64 {
	if from == to {
		return p
	}
	if p+atmosphere < 2 {
		return math.NaN()
	}
	y := math.Log(p + atmosphere)
	k := sort.Search(len(g.log), func(k int) bool { return g.at(k, from) > y })
	first := min(max(k-2, 0), len(g.log)-4)
	sum := 0.0
	for i := range 4 {
		w := 1.0
		for j := range 4 {
			if i != j {
				w *= (y - g.at(first+j, from)) / (g.at(first+i, from) - g.at(first+j, from))
			}
		}
		sum += w * g.at(first+i, to)
	}
	return math.Exp(sum) - atmosphere
}

// down takes a pressure from one depth of a compartment down to another, up takes it
// up.
func (s *plainState) down(i int, p, from, to float64) float64 {
	for _, l := range s.layers[i] {
		a, b := max(from, l.top), min(to, l.bottom)
		switch {
		case a >= b:
		case l.gas:
			p = plainNitrogen().carry(p, a, b)
		default:
			p += l.gradient * (b - a)
		}
	}
	return p
}

func (s *plainState) up(i int, p, from, to float64) float64 {
	for _, l := range slices.Backward(s.layers[i]) {
		a, b := min(from, l.bottom), max(to, l.top)
		switch {
		case a <= b:
		case l.gas:
			p = plainNitrogen().carry(p, a, b)
		default:
			p -= l.gradient * (a - b)
		}
	}
	return p
}

func (s *plainState) gassy(i int) bool { return s.layers[i][0].gas }

// lift puts the level of gas that is shut in to where its mass fits the pressure at a
// depth under it.
func (k *plainSolver) lift(s *plainState, i int, p, depth float64) error {
	old := s.layers[i]
	if len(old) != 2 {
		return fmt.Errorf("gas in %q moves on %d liquids", k.well.comps[i].name, len(old)-1)
	}
	low, high := old[0].top, depth
	more := func(level float64) (float64, float64) {
		foot := p - old[1].gradient*(depth-level)
		if foot < -10 {
			return -1, 0
		}
		top := plainNitrogen().carry(foot, level, old[0].top)
		return foot - top - s.mass[i], top
	}
	most, _ := more(high)
	if !(most >= 0) {
		return fmt.Errorf("gas in %q reaches down to %v", k.well.comps[i].name, depth)
	}
	least, top := -s.mass[i], 0.0
	level := high
	for range 200 {
		level = (low*most - high*least) / (most - least)
		var x float64
		if x, top = more(level); math.Abs(x) < 1e-10 || high-low < 1e-10 {
			break
		}
		if x < 0 {
			if low = level; least > -1e300 {
				least, most = x, most/2
			}
		} else {
			high, most, least = level, x, least/2
		}
	}
	s.top[i] = top
	s.layers[i] = []plainLayer{{old[0].top, level, 0, true, old[0].name}, {level, old[1].bottom, old[1].gradient, false, old[1].name}}
	for n, port := range k.well.ports {
		if s.open[n] && (port.a == i || port.b == i) && port.depth < level-0.004 {
			return fmt.Errorf("gas in %q passes through %q", k.well.comps[i].name, port.name)
		}
	}
	return nil
}

// shutIn takes the mass of gas wherever its compartment's top isn't open.
func (w *plainWell) shutIn(s *plainState) {
	for i := range w.comps {
		if s.gassy(i) && !s.surface[i] && !s.closed[i] {
			s.closed[i] = true
			s.mass[i] = plainNitrogen().carry(s.top[i], s.layers[i][0].top, s.layers[i][0].bottom) - s.top[i]
		}
	}
}

// gasBody solves a body with gas in it: from what fixes it through its ports.
func (k *plainSolver) gasBody(s *plainState, own []float64) error {
	reference, formation := -1, false
	for _, m := range k.members {
		f := k.well.comps[m].formation >= 0
		switch {
		case s.surface[m] && reference >= 0 && !formation:
			return fmt.Errorf("two surfaces in the body of %q", k.well.comps[m].name)
		case s.surface[m] && formation, !s.surface[m] && f && reference >= 0:
			// a formation gives way to a surface; two of anything are another matter
			if s.surface[m] {
				reference, formation = m, false
				continue
			}
			if formation {
				return fmt.Errorf("two formations in the body of %q", k.well.comps[m].name)
			}
		case s.surface[m]:
			reference = m
		case f:
			reference, formation = m, true
		}
	}
	if reference < 0 {
		together := true
		for _, m := range k.members {
			together = together && s.key[m] == s.key[k.members[0]]
		}
		for _, m := range k.members {
			s.top[m] = own[m]
		}
		if !together && len(k.members) > 1 {
			return fmt.Errorf("gas in the trapped body of %q meets others", k.well.comps[k.members[0]].name)
		}
		return nil
	}
	put := func(m int, p, depth float64) error {
		if s.closed[m] {
			return k.lift(s, m, p, depth)
		}
		s.top[m] = s.up(m, p, depth, k.well.comps[m].top)
		return nil
	}
	if formation {
		f := k.well.forms[k.well.comps[reference].formation]
		if err := put(reference, f.pressure, f.depth); err != nil {
			return err
		}
	} else {
		s.top[reference] = s.applied[reference]
	}
	done := map[int]bool{reference: true}
	for again := true; again; {
		again = false
		for n, port := range k.well.ports {
			if !s.open[n] || done[port.a] == done[port.b] {
				continue
			}
			from, to := port.a, port.b
			if !done[from] {
				from, to = to, from
			}
			if err := put(to, s.at(from, port.depth), port.depth); err != nil {
				return err
			}
			done[to], again = true, true
		}
	}
	return nil
}

// plainBody is a set of compartments, of 256 at most.
type plainBody [4]uint64

func plainBodyOf(members ...int) (b plainBody) {
	for _, m := range members {
		b[m/64] |= 1 << (m % 64)
	}
	return b
}

// gasify fills the upper part of some compartments with nitrogen.
func (m *plainMaker) gasify() {
	p := m.plan
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: {{TVD: 0, Temperature: unit.Fahrenheit(60)},
		{TVD: feet(plainGasDepth), Temperature: unit.Fahrenheit(60 + 0.015*plainGasDepth)}}}
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "nitrogen", Kind: sequence.Nitrogen})
	for i := range p.Compartments {
		c := &p.Compartments[i]
		if !m.chance(0.4) && i != 0 {
			continue
		}
		end := c.BottomMD.In(foot)
		for _, x := range p.Ports {
			if slices.Contains(x.Joins, c.Name) {
				end = min(end, x.MD.In(foot))
			}
		}
		for _, f := range p.Formations {
			if f.Name == c.Formation {
				end = min(end, f.MD.In(foot))
			}
		}
		top := c.TopMD.In(foot)
		if end-top < 60 {
			continue
		}
		level := math.Round(top + (end-top)*m.between(0.1, 0.6))
		c.Fluid, c.Layers = "", []sequence.Layer{{Fluid: "nitrogen", ToMD: feet(level)}, {Fluid: m.fluid(), ToMD: c.BottomMD}}
	}
}

// gasSwap is a swap that gas allows: of what stands under it, of all of it by liquid
// from below, or of more gas from above.
func (m *plainMaker) gasSwap(i int) sequence.Displacement {
	c := m.plan.Compartments[i]
	level := c.Layers[0].ToMD.In(foot)
	w := sequence.Displacement{Compartment: c.Name, Fluid: m.fluid(), FromMD: feet(level), ToMD: c.BottomMD, Up: m.chance(0.5)}
	switch m.random.IntN(3) {
	case 0:
		w.FromMD, w.Up = c.TopMD, true
	case 1:
		w.FromMD, w.ToMD, w.Fluid, w.Up = c.TopMD, feet(math.Round(m.between(level, c.BottomMD.In(foot)))), "nitrogen", false
	}
	return w
}

// Random wells with nitrogen: nothing that is called proved fails in a draw, and every
// witness fails.
func TestVerdictsWithGas(t *testing.T) {
	var c tally
	refused := map[string]int{}
	var mutex sync.Mutex
	from, to := plansWanted(t, long.Size(2, 6))
	eachPlan(from, to, func(n uint64) {
		p := plainGasPlan(n)
		v, err := verdictOf(p)
		if err != nil {
			// Gas that may pass through a port, or meet what nothing fixes, is refused
			// wherever it can't be ruled out.
			mutex.Lock()
			refused[err.Error()]++
			mutex.Unlock()
			return
		}
		c.holdAgainst(t, p, n, v)
	})
	t.Log(&c, "; refused:", len(refused))
	for why := range refused {
		t.Log(why)
	}
	require.Zero(t, c.wrong.Load())
}

func plainGasPlan(n uint64) *sequence.Plan {
	return plainPlanOf(newRandom(2027, n), "gas", n, plainGases, nil)
}
