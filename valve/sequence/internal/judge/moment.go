package judge

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Moment holds everything that a cluster holds against its limits.
func (j *Judge) Moment(w *walk.World, p walk.Place) error {
	s, g := w.State, &j.Limits.Steps[p.Step]
	for _, n := range p.Limits {
		l := j.list[n]
		if j.Deaf && l.kind != Fracture { // that says as well what flows
			continue
		}
		switch l.kind {
		case Inside:
			if err := j.rating(w, p, l.index); err != nil {
				return err
			}
		case Vacuum:
			top := s.Top[l.index]
			if s.Low(l.index) >= 0 {
				continue // air
			}
			if s.Surface[l.index] {
				if p.Action >= 0 {
					continue // it lies between what it was and what it will be
				}
				top = s.Applied[l.index]
			}
			j.Note(w, p, Vacuum, l.index, top.At(p.X).Shift(-vacuum), 0)
		case Fracture:
			if err := j.formation(w, p, g, l.index); err != nil {
				return err
			}
		case Circulation:
			m := s.SecondReference(l.index)
			if m.With >= 0 && s.Surface[l.index] && !g.Circle && !g.Produces {
				x := m.Excess.At(p.X)
				j.Note(w, p, Circulation, l.index, x.Times(-1).Shift(tolerance), 0)
				j.Note(w, p, Circulation, l.index, x.Shift(tolerance), 1)
			}
		case Barriers:
			if err := j.barriers(w, p, l.index); err != nil {
				return err
			}
		case String:
			if j.Load != nil {
				if err := j.Load(j, w, p); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// spread is where along a rating the columns make most and least of a differential,
// where that is a number.
type spread struct {
	least, greatest     affine.Form
	leastAt, greatestAt int // in Depths of the inside
	sharp               bool
}

// spreads are kept, as columns seldom change.
type spreadKey struct {
	rating int
	pair   well.Pair
}

func (j *Judge) spread(i int, pair well.Pair) *spread {
	key := spreadKey{i, pair}
	if s, ok := j.spreads[key]; ok {
		return s
	}
	r := &j.Limits.Ratings[i]
	s := &spread{sharp: true}
	for k, d := range r.Depths {
		x := pair.Drop(d[0], d[1])
		if r.Outside < 0 {
			x = x.Minus(r.Background[k])
		}
		s.sharp = s.sharp && x.Sharp()
		if k == 0 || x.C < s.least.C {
			s.least, s.leastAt = x, d[0]
		}
		if k == 0 || x.C > s.greatest.C {
			s.greatest, s.greatestAt = x, d[0]
		}
	}
	if j.spreads == nil {
		j.spreads = map[spreadKey]*spread{}
	}
	j.spreads[key] = s
	return s
}

func (j *Judge) rating(w *walk.World, p walk.Place, i int) error {
	s, r := w.State, &j.Limits.Ratings[i]
	if pair, ok := s.Pair(r.Inside, r.Outside); ok {
		if x := j.spread(i, pair); x.sharp {
			top := s.Top[r.Inside]
			if r.Outside >= 0 {
				top = top.Minus(s.Top[r.Outside])
			}
			at := top.At(p.X)
			least, greatest := at.Least(), at.Greatest()
			if r.HasBurst && !j.idle(p, Inside, i, r.Burst.Least()-greatest-x.greatest.C) {
				j.Note(w, p, Inside, i, r.Burst.Minus(at.Shift(x.greatest.C)), x.greatestAt)
			}
			if r.HasCollapse && !j.idle(p, Outside, i, r.Collapse.Least()+least+x.least.C) {
				j.Note(w, p, Outside, i, r.Collapse.Plus(at.Shift(x.least.C)), x.leastAt)
			}
			return nil
		}
	}
	for k, d := range r.Depths {
		in, err := s.At(r.Inside, d[0])
		if err != nil {
			return err
		}
		x := in.At(p.X)
		if r.Outside >= 0 {
			out, err := s.At(r.Outside, d[1])
			if err != nil {
				return err
			}
			x = in.Minus(out).At(p.X)
		} else {
			x = x.Minus(r.Background[k])
		}
		if r.HasBurst {
			j.Note(w, p, Inside, i, r.Burst.Minus(x), d[0])
		}
		if r.HasCollapse {
			j.Note(w, p, Outside, i, r.Collapse.Plus(x), d[0])
		}
	}
	for _, gassy := range [2]int{r.Inside, r.Outside} {
		if s.LevelMoves(gassy) {
			if err := j.atLevel(w, p, i, gassy); err != nil {
				return err
			}
		}
	}
	return nil
}

// formation holds the face of a formation against its fracture pressure and
// against flow.
func (j *Judge) formation(w *walk.World, p walk.Place, g *Goals, f int) error {
	s, x := w.State, &j.Network.Formations[f]
	face := x.Face
	at := j.Network.Compartments[face].FormationAt
	if x.Cracks {
		q, err := s.At(face, at)
		if err != nil {
			return err
		}
		j.Note(w, p, Fracture, f, x.Fracture.Minus(q.At(p.X)), at)
	}
	m := s.SecondReference(face)
	if m.With < 0 {
		return nil
	}
	excess := m.Excess.At(p.X)
	j.flowed(w, g, f, excess)
	if g.Produces {
		return nil
	}
	if !g.Inflow {
		j.Note(w, p, Inflow, face, excess.Shift(tolerance), at)
	}
	if !g.Loss {
		j.Note(w, p, Loss, face, excess.Times(-1).Shift(tolerance), at)
	}
	return nil
}

// flowed keeps whether a formation's inflow has been part of the plan: from then on
// the count of barriers is that of a live well, which the plan's rule doesn't speak
// of.
func (j *Judge) flowed(w *walk.World, g *Goals, f int, excess affine.Form) {
	if w.Live[f] || !g.Inflow && !g.Produces {
		return
	}
	if g.Produces {
		w.Live[f] = true
		return
	}
	row := excess.Shift(tolerance) // not negative: it doesn't flow in
	if row.Least() >= 0 {
		return
	}
	if row.Greatest() < 0 || w.Region.With(row) == nil {
		w.Live[f] = true
		return
	}
	for _, known := range w.Dry[f] {
		if known.Same(row, 1e-3) {
			return
		}
	}
	w.Dry[f] = append(w.Dry[f][:len(w.Dry[f]):len(w.Dry[f])], row)
}

// barriers counts what stands before a formation.
func (j *Judge) barriers(w *walk.World, p walk.Place, f int) error {
	if w.Live[f] {
		return nil
	}
	if len(w.Dry[f]) > 0 {
		region := w.Region.And(w.Dry[f])
		if region == nil {
			w.Live[f] = true
			return nil
		}
		still := *w // where it hasn't flowed yet
		still.Region = region
		w = &still
	}
	certain := 0
	var columns []affine.Form
	for i := range j.Limits.Barriers {
		b := &j.Limits.Barriers[i]
		if b.Formation != f {
			continue
		}
		stands, column, err := j.BarrierStands(w, b, p.X)
		if err != nil {
			return err
		}
		if column != nil {
			// What it lacks before anything flows counts as nothing.
			*column = column.Shift(tolerance)
			if bound, _ := w.Region.Least(*column); bound < -walk.Reach {
				columns = append(columns, *column)
				continue
			}
		}
		if stands {
			certain++
		}
	}
	lacking := j.Limits.Least - certain
	if lacking <= 0 {
		j.Note(w, p, Barriers, f, affine.Const(float64(-lacking)), 0)
		return nil
	}
	if len(columns) < lacking {
		j.Note(w, p, Barriers, f, affine.Const(-1), 0)
		return nil
	}
	// As many columns as are lacking have to stand: each of the rest may fall.
	for _, c := range columns {
		j.Note(w, p, Barriers, f, c, 0)
	}
	return nil
}

// BarrierStands tells whether a barrier stands; column is by how much it overbalances,
// where that is the question.
func (j *Judge) BarrierStands(w *walk.World, b *Barrier, x affine.Form) (stands bool, column *affine.Form, err error) {
	if b.Until >= 0 && w.Times[b.Until] > 0 {
		return false, nil, nil
	}
	switch {
	case b.Port >= 0:
		return !w.State.Open[b.Port], nil, nil
	case b.Action >= 0:
		return w.Times[b.Action] > 0, nil, nil
	case b.Column < 0:
		return true, nil, nil
	}
	p, err := w.State.At(b.Column, b.ColumnAt)
	c := p.At(x).Minus(j.Network.Formations[b.Formation].Pressure)
	return true, &c, err
}

// Standstill holds the goals of a step against where it stands still.
func (j *Judge) Standstill(w *walk.World, p walk.Place, number int) error {
	s, g := w.State, &j.Limits.Steps[p.Step]
	if err := j.tests(w, p, number); err != nil {
		return err
	}
	for i, b := range g.Balances {
		if b.Standstill != number {
			continue
		}
		q, err := s.At(b.Compartment, b.At)
		if err != nil {
			return err
		}
		d := q.F.Minus(j.Network.Formations[b.Formation].Pressure)
		j.Note(w, p, BalanceLow, i, d.Shift(-b.Least), 0)
		j.Note(w, p, BalanceHigh, i, d.Times(-1).Shift(b.Greatest), 0)
	}
	if j.Standstills != nil {
		return j.Standstills(w, p, number)
	}
	return nil
}
