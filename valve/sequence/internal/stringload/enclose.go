package stringload

import (
	"math"
	"slices"

	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// Load is the string of a world at a place of the leg, at a choice of the inputs.
func (r *Room) Load(l *movement.NestedLoading, w *walk.World, x affine.Form, pulling *affine.Line, e []float64) error {
	p, err := r.profileOf(w.State, x)
	if err != nil {
		return err
	}
	return r.load(l, w.State.String.(*standing), p, at(pulling, x, w.On), corner{any: true, e: e}, nil)
}

// load loads the strings; what the profile's numbers are put into see conditions.
func (r *Room) load(l *movement.NestedLoading, s *standing, p *profile, pull *reading, c corner, into *sharp) error {
	now, err := r.standingAt(s, c)
	if err != nil {
		return err
	}
	conditions := r.conditions(p, c.e, into)
	if err := r.onHook(&conditions, now, s, pull, c); err != nil {
		return err
	}
	return r.loaded(l, now, conditions)
}

// between is that share. Of 300 draws of the demo with a tolerance on everything some
// fell 0.3 % below a margin without it, and none with it.
const between = 0.03

// enclose makes forms of what read takes off the loaded string.
func (r *Room) enclose(w *walk.World, x affine.Form, pulling *affine.Line) ([]affine.Form, error) {
	forms, _, err := r.along(w, x, pulling)
	return forms, err
}

// along does that, and tells whether anything that the string feels moves along the leg.
func (r *Room) along(w *walk.World, x affine.Form, pulling *affine.Line) (forms []affine.Form, moves bool, err error) {
	s, ok := w.State.String.(*standing)
	if !ok {
		return nil, false, errNotLanded
	}
	p := r.fleeting()
	if err := r.take(p, w.State, x); err != nil {
		return nil, false, err
	}
	moves = p.moves || pulling != nil && pulling.S != 0
	pull := at(pulling, x, w.On)
	sign := p.sign()
	if forms, ok := r.Memory.find(sign, s, p, pull); ok {
		return forms, moves, nil
	}
	p = r.lasting(p)
	work := r.work()
	sample := func(c corner, into *[]float64) ([]float64, error) {
		if err := r.load(&work.scratch, s, p, pull, c, &work.numbers); err != nil {
			return nil, err
		}
		*into = (*into)[:0]
		for of, x := range r.strings() {
			*into = x.read(part(&work.scratch, of), *into)
		}
		return *into, nil
	}
	middle := r.middle()
	mid, err := sample(middle, &work.mid)
	if err != nil {
		return nil, false, err
	}
	forms = make([]affine.Form, len(mid))
	for n, v := range mid {
		forms[n] = affine.Const(v)
	}
	symbols := map[int]bool{}
	p.symbols(symbols)
	r.heats(symbols, p.temperature)
	for k := range s.symbols {
		symbols[k] = true
	}
	if pull != nil {
		r.hookSymbols(symbols, pull)
	}
	terms := make([]affine.Term, len(mid)*len(symbols)) // form by form
	for n := range forms {
		forms[n].T = terms[n*len(symbols) : n*len(symbols) : (n+1)*len(symbols)]
	}
	wide := slices.Grow(work.wide[:0], len(mid))[:len(mid)]
	clear(wide)
	work.wide = wide
	for k := range len(r.Network.Symbols) {
		if !symbols[k] {
			continue
		}
		low, err := sample(middle.end(k, -1), &work.low)
		if err != nil {
			return nil, false, err
		}
		high, err := sample(middle.end(k, 1), &work.high)
		if err != nil {
			return nil, false, err
		}
		middle.e[k] = 0
		for n := range forms {
			forms[n].T = append(forms[n].T, affine.Term{Symbol: k, C: (high[n] - low[n]) / 2})
			wide[n] += math.Abs((high[n]+low[n])/2 - mid[n])
		}
	}
	if len(symbols) > 1 {
		// What the inputs do together, at the corners where each of what is read is
		// least and greatest as far as it is straight, and at two more.
		for _, e := range r.corners(symbols, r.ofJudged(forms)) {
			v, err := sample(corner{any: true, e: e}, &work.low)
			if err != nil {
				return nil, false, err
			}
			for n := range forms {
				wide[n] = math.Max(wide[n], 1.5*math.Abs(forms[n].At(e)-v[n]))
			}
		}
	}
	// What pressures may be off by that no input stands for.
	loose := 0.0
	for _, f := range p.forms {
		loose = math.Max(loose, f[len(f)-1].R)
	}
	for h := s; h != nil; h = h.before {
		for _, f := range h.p.forms {
			loose = math.Max(loose, f[len(f)-1].R)
		}
	}
	for n := range forms {
		if math.IsNaN(forms[n].C) {
			return nil, false, errNotLanded
		}
		// Between the corners that were loaded lie others: of what isn't straight, a
		// share of what all inputs together make stands for them.
		r := wide[n]
		if linear := forms[n].Radius(); len(symbols) > 1 && r > 1e-7*linear {
			r += between * linear
		}
		if loose > 0 {
			r += math.Abs(forms[n].C) * loose / 1e7
		}
		if !(r <= 1e-9*(1+math.Abs(forms[n].C))) { // nor where it is no number
			forms[n] = forms[n].Widen(r)
		}
	}
	r.Memory.keep(remembered{sign, s, p, pull, forms})
	return forms, moves, nil
}

// corners of the box of some symbols: where forms are least and greatest in it.
func (r *Room) corners(symbols map[int]bool, forms []affine.Form) [][]float64 {
	var all [][]float64
	add := func(e []float64) {
		for _, known := range all {
			if slices.Equal(known, e) {
				return
			}
		}
		all = append(all, e)
	}
	for side := -1.0; side <= 1; side += 2 {
		e := make([]float64, len(r.Network.Symbols))
		for k := range symbols {
			e[k] = side
		}
		add(slices.Clone(e))
		for _, f := range forms {
			at := slices.Clone(e)
			for _, t := range f.T {
				if t.C != 0 {
					at[t.Symbol] = side * math.Copysign(1, t.C)
				}
			}
			add(at)
		}
	}
	return all
}

// fleeting is a profile to be used again.
func (r *Room) fleeting() *profile {
	if r.Memory == nil {
		return new(profile)
	}
	return &r.Memory.at
}

// scratch is a loading to be used again.
func (r *Room) scratch() *movement.NestedLoading { return &r.work().scratch }
