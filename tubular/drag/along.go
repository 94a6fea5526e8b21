package drag

import (
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// With returns the string in the same hole with other friction factors, one for each
// of its zones from the top down, and with another effective weight at each measured
// depth, such as layered fluids give it. A nil of either keeps what it has.
//
// Errors name a factor or a weight that is out of range.
//
//	μ of each section of hole in place of its own, in HookLoad = Σ (w·cos I ± μ·N)
//
// Source: see HookLoad.
func (p *Prepared) With(factors []float64, weight func(md unit.Length) unit.WeightPerLength) (*Prepared, error) {
	if p.Size() < 2 {
		return nil, errUnprepared
	}
	zones := 0
	for i := range p.elements {
		zones = max(zones, p.elements[i].zone+1)
	}
	faults := fault.In(scope)
	if factors != nil && len(factors) < zones {
		faults.New("factors", "has %d; must have one for each of %d zones", len(factors), zones)
	}
	for i, μ := range factors {
		faults.Add(fault.Between(fault.Index("factors", i), μ, 0, mostFriction))
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	q := &Prepared{elements: append([]element(nil), p.elements...), depths: p.depths, lies: p.lies}
	if weight != nil {
		q.lies = append(q.lies[:0:0], p.lies...)
	}
	for i := range q.elements {
		e := &q.elements[i]
		if factors != nil {
			e.μ = factors[e.zone]
		}
		if weight == nil {
			continue
		}
		w := weight(unit.Length((q.depths[i] + q.depths[i+1]) / 2))
		if math.IsNaN(float64(w)) || math.IsInf(float64(w), 0) {
			return nil, fmt.Errorf("drag: effective weight at %v is %v; must be finite", unit.Length(q.depths[i+1]), w)
		}
		e.weight, e.side = float64(w)*e.drop, float64(w)*e.lever
		q.lies[i].Weight = w
		e.onset = onset(q.lies[i])
	}
	q.climb()
	return q, nil
}

// Along returns what the hole takes from a motion between two measured depths of a
// string whose effective force without drag is known all along: somebody else's
// balance of weights, seals and whatever else steps it. held says that the string is
// held at the lower depth and moved by a given force at the upper one, so that drag is
// missing below; else it hangs free at the lower one, and drag is added above.
//
//	F = F(without) - Σ μ*N from above        held
//	F = F(without) + Σ μ*N from below        free
//	N of the force at the middle of each length; see HookLoad and SetDown
//
// Pulled adds drag, RunIn takes it off. Source: Johancsik, Friesen & Dawson, JPT June
// 1984, Eq. 1-3; movement.Confined.Under for the wall's force of what is buckled on the
// way down.
//
// Errors: a string that wasn't prepared; depths out of order; a force that isn't
// finite.
func (p *Prepared) Along(m Motion, from, to unit.Length, held bool, without func(md unit.Length) unit.Force) (*Taken, error) {
	if p.Size() < 2 {
		return nil, errUnprepared
	}
	if without == nil || !(from < to) {
		return nil, fmt.Errorf("drag: between %v and %v no force is known, permitted a force between two depths from above", from, to)
	}
	rubs := make([]float64, len(p.elements)) // of the elements, from the lower end up
	sign, sum := m.sign(), 0.0
	for k := range p.elements {
		i := k
		if held {
			i = len(p.elements) - 1 - k
		}
		top, bottom := p.clipped(i, from, to)
		if sign == 0 || bottom <= top {
			continue
		}
		f, share := float64(without(unit.Length((top+bottom)/2))), (bottom-top)/p.elements[i].length
		way := 1.0
		if held {
			way = -1
		}
		d := 0.0
		for range 4 { // half of its own drag is in the middle
			d = sign * share * p.rub(i, f+way*(sum+d/2), m)
		}
		rubs[i] = d
		sum += d
	}
	if math.IsNaN(sum) || math.IsInf(sum, 0) {
		return nil, fmt.Errorf("drag: between %v and %v is %v; must be finite", from, to, unit.Force(sum))
	}
	return p.shared(rubs, from, to)
}

// clipped is what of element i lies between two depths.
func (p *Prepared) clipped(i int, from, to unit.Length) (top, bottom float64) {
	return math.Max(p.depths[i+1], float64(from)), math.Min(p.depths[i], float64(to))
}

// shared makes what the elements take a share along the string.
func (p *Prepared) shared(rubs []float64, from, to unit.Length) (*Taken, error) {
	depths, taken, sum := []float64{p.depths[0]}, []float64{0}, 0.0
	mark := func(md float64) {
		if last := len(depths) - 1; md < depths[last] {
			depths, taken = append(depths, md), append(taken, sum)
		} else {
			taken[last] = sum
		}
	}
	for i, d := range rubs {
		if top, bottom := p.clipped(i, from, to); bottom > top {
			mark(bottom)
			sum += d
			mark(top)
		}
		mark(p.depths[i+1])
	}
	t := &Taken{Total: unit.Force(sum)}
	if sum == 0 {
		return t, nil
	}
	slices.Reverse(depths)
	slices.Reverse(taken)
	for i := range taken {
		taken[i] /= sum
	}
	if err := t.share.Fit(depths, taken); err != nil {
		return nil, fmt.Errorf("drag: share along the string: %w", err)
	}
	t.known = true
	return t, nil
}

// rub is what friction takes over element i under an effective force.
func (p *Prepared) rub(i int, f float64, m Motion) float64 {
	e := &p.elements[i]
	n := e.contact(f)
	if m == RunIn && f < 0 && !math.IsInf(e.onset, 1) {
		lay := p.lies[i].Under(unit.Force(f))
		n = math.Max(n, float64(lay.Contact)*e.length)
	}
	return e.μ * n
}
