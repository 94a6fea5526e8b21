package judge

import (
	"math"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Key names a margin: of a kind, in a step.
type Key struct {
	Step  int
	Kind  Kind
	Index int
}

// Margin is the least that was seen of a limit in a step, and where.
type Margin struct {
	Key
	Least    float64     // a bound that holds for all choices of the inputs
	Form     affine.Form // what it is the least value of
	Label    string      // of the drive
	Action   int         // just before or after which it was seen, or -1
	After    bool
	X        affine.Form
	Depth    int           // of a rating: in Depths of its inside
	Value    affine.Form   // what is felt, where it is an event
	Where    string        // further words of the place, such as the part of the string
	Applied  []affine.Form // surface pressures of that moment
	Pull     *affine.Form  // the weight indicator, on a pull
	Enclosed bool          // not exact
	// Points are choices with which the limit may be passed.
	Points  [][]float64
	Regions []Part

	region *affine.Region
	judge  *Judge
}

// Part is a part of the box in which a limit may be passed: where By is below
// nought.
type Part struct {
	Region *affine.Region
	By     affine.Form
}

// Felt is what an action felt in a step.
type Felt struct {
	Seen            bool
	Least, Greatest float64
	Level           affine.Form // that it waits for
	Falling         bool
	Left            float64 // least way to the level that it waits for
	LeftForm        affine.Form
	Point           []float64
	Waits           walk.Progress
	CameOn          bool // a trigger of its row may be met without its firing
	Link            int  // which trigger Level is of
	ReachLink       int
	HasReach        bool
	Reach           float64 // least way beyond its level, where it is intended
	ReachForm       affine.Form
	ReachPoint      []float64
	Pulled          bool // it came on a pull, with the weight indicator between
	PullLeast       float64
	PullGreatest    float64
}

// Judge keeps the least margins of a walk. It is an observer.
type Judge struct {
	Limits  *Limits
	Network *well.Network
	Margins map[Key]*Margin
	Felts   [][]Felt // by step and action
	// Stands, where not nil, is shown where each step stands still.
	Stands func(w *walk.World, p walk.Place, number int) error
	// Load, where not nil, holds the string against its limits.
	Load func(j *Judge, w *walk.World, p walk.Place) error
	// Parts keeps all parts of the box in which a limit is passed, for windows.
	Parts bool
	// Quiet keeps no margins but those that are passed.
	Quiet bool

	list    []limit
	spreads map[spreadKey]*spread
	broken  int
}

// New makes a judge and says which compartments its limits hold against each
// other.
func New(n *well.Network, l *Limits, stringTies []int) (*Judge, [][]int) {
	j := &Judge{Limits: l, Network: n, Margins: map[Key]*Margin{}}
	list, ties := l.list(n)
	if stringTies != nil {
		list = append(list, limit{String, 0})
		ties = append(ties, stringTies)
	}
	j.list = list
	for range l.Steps {
		j.Felts = append(j.Felts, make([]Felt, len(n.Actions)))
	}
	return j, ties
}

// Broken is how many limits may be passed.
func (j *Judge) Broken() int { return j.broken }

// Passed are the limits that may be passed, in the order of the steps.
func (j *Judge) Passed() []*Margin {
	var all []*Margin
	for _, m := range j.Margins {
		if len(m.Points) > 0 || len(m.Regions) > 0 {
			all = append(all, m)
		}
	}
	slices.SortFunc(all, func(a, b *Margin) int {
		if a.Step != b.Step {
			return a.Step - b.Step
		}
		if a.Kind != b.Kind {
			return int(a.Kind) - int(b.Kind)
		}
		return a.Index - b.Index
	})
	return all
}

// Note keeps a margin of a limit at a place.
func (j *Judge) Note(w *walk.World, p walk.Place, k Kind, index int, by affine.Form, depth int) {
	bound := by.Least()
	if j.Quiet && bound >= -walk.Reach {
		return
	}
	key := Key{p.Step, k, index}
	m := j.Margins[key]
	if m != nil && bound >= m.Least && (bound >= -walk.Reach || !j.Parts) {
		return
	}
	if len(w.Region.Rows()) > 0 {
		bound, _ = w.Region.Least(by)
		if m != nil && bound >= m.Least && (bound >= -walk.Reach || !j.Parts) || math.IsInf(bound, 1) {
			return
		}
	}
	j.keep(w, p, key, by, bound, depth)
}

func (j *Judge) keep(w *walk.World, p walk.Place, key Key, by affine.Form, bound float64, depth int) *Margin {
	m := j.Margins[key]
	if m == nil {
		m = &Margin{Key: key, Least: math.Inf(1)}
		j.Margins[key] = m
	}
	fails := bound < -walk.Reach || math.IsNaN(bound)
	if bound < m.Least || math.IsNaN(bound) {
		m.Least, m.Form, m.Depth, m.region, m.judge = bound, by, depth, w.Region, j
		m.Label, m.Action, m.After, m.X = p.Label, p.Action, p.After, p.X
		m.Enclosed = by.R > 0
	}
	if !fails {
		return m
	}
	if m.Least == bound {
		m.Pull = nil
		if p.Pulling != nil {
			f := p.Pulling.At(p.X)
			m.Pull = &f
		}
		m.Applied = nil
		for _, l := range w.State.Applied {
			m.Applied = append(m.Applied, l.At(p.X))
		}
	}
	if len(m.Points) == 0 && len(m.Regions) == 0 {
		j.broken++
	}
	at := m.least(by, w.Region)
	if at != nil && len(m.Points) < 24 {
		m.Points = append(m.Points, at)
		if len(w.Region.Rows()) > 0 {
			// The worst choice lies on the edge of the part: some further in.
			inner := w.Region.Inner()
			for _, t := range [4]float64{0.02, 0.2, 0.5, 1} {
				e := make([]float64, len(at))
				for k := range e {
					e[k] = at[k] + t*(inner[k]-at[k])
				}
				if len(by.T) == 0 || by.At(e)-by.R < -walk.Reach {
					m.Points = append(m.Points, j.plain(w.Region, by, e))
				}
			}
		}
	}
	if at == nil || j.Parts {
		m.Regions = append(m.Regions, Part{w.Region, by})
	}
	return m
}

// Point is a choice that attains the margin, to rounding; nil: none is known.
func (m *Margin) Point() []float64 { return m.least(m.Form, m.region) }

func (m *Margin) least(by affine.Form, r *affine.Region) []float64 {
	_, at := r.Least(by)
	if at == nil || len(by.T) == 0 {
		at, _ = r.Point()
	}
	return m.judge.plain(r, by, at)
}

// plain is a choice with every input nominal that neither the conditions of a region
// nor a margin depend on: what is left says why.
func (j *Judge) plain(r *affine.Region, by affine.Form, at []float64) []float64 {
	if at == nil {
		return nil
	}
	matters := make([]bool, len(at))
	for _, f := range append([]affine.Form{by}, r.Rows()...) {
		for _, t := range f.T {
			matters[t.Symbol] = true
		}
	}
	e := make([]float64, len(at))
	for k := range at {
		e[k] = j.Network.Symbols[k].Nominal
		if matters[k] {
			e[k] = at[k]
		}
	}
	return e
}

// Moment holds everything that a cluster holds against its limits.
func (j *Judge) Moment(w *walk.World, p walk.Place) error {
	s, g := w.State, &j.Limits.Steps[p.Step]
	for _, n := range p.Limits {
		l := j.list[n]
		switch l.kind {
		case Inside:
			if err := j.rating(w, p, l.index); err != nil {
				return err
			}
		case Vacuum:
			top := s.Top[l.index]
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
			m := s.Meets[l.index]
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
			if r.HasBurst {
				j.Note(w, p, Inside, i, r.Burst.Minus(at.Shift(x.greatest.C)), x.greatestAt)
			}
			if r.HasCollapse {
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
	m := s.Meets[face]
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
		stands, column, err := j.Standing(w, b, p.X)
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

// Standing tells whether a barrier stands; column is by how much it overbalances,
// where that is the question.
func (j *Judge) Standing(w *walk.World, b *Barrier, x affine.Form) (stands bool, column *affine.Form, err error) {
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

// Stand holds the goals of a step against where it stands still.
func (j *Judge) Stand(w *walk.World, p walk.Place, number int) error {
	s, g := w.State, &j.Limits.Steps[p.Step]
	for i, t := range g.Tests {
		if t.Stand != number {
			continue
		}
		in, err := s.At(t.Inside, t.AtIn)
		if err != nil {
			return err
		}
		out, err := s.At(t.Outside, t.AtOut)
		if err != nil {
			return err
		}
		d := in.Minus(out).F
		j.Note(w, p, TestLow, i, d.Shift(-t.Least), 0)
		j.Note(w, p, TestHigh, i, d.Times(-1).Shift(t.Greatest), 0)
	}
	for i, b := range g.Balances {
		if b.Stand != number {
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
	if j.Stands != nil {
		return j.Stands(w, p, number)
	}
	return nil
}

// Unintended keeps an action that happens and isn't wanted.
func (j *Judge) Unintended(w *walk.World, action int, p walk.Place, felt affine.Form) {
	m := j.failed(w, p, Event, action)
	if m.Value.T == nil && m.Value.C == 0 {
		m.Value = felt
	}
}

// Came keeps the weight indicator when an intended action happens on a pull.
func (j *Judge) Came(w *walk.World, action int, p walk.Place) {
	if p.Pulling == nil || j.Quiet {
		return
	}
	f := &j.Felts[p.Step][action]
	reading := p.Pulling.At(p.X)
	least, greatest := j.bound(w, reading), -j.bound(w, reading.Times(-1))
	if !f.Pulled {
		f.Pulled, f.PullLeast, f.PullGreatest = true, least, greatest
		return
	}
	f.PullLeast, f.PullGreatest = min(f.PullLeast, least), max(f.PullGreatest, greatest)
}

// Missing keeps an action that was wanted and hasn't come.
func (j *Judge) Missing(w *walk.World, action int, p walk.Place) {
	j.failed(w, p, Omission, action)
}

func (j *Judge) failed(w *walk.World, p walk.Place, k Kind, i int) *Margin {
	return j.keep(w, p, Key{p.Step, k, i}, affine.Const(-1), -1, 0)
}

// Stuck keeps that devices move each other without end.
func (j *Judge) Stuck(w *walk.World, p walk.Place) {
	j.failed(w, p, Unwalkable, 0)
}

// Felt keeps what an action feels, and how near to the level that it waits for
// that is.
func (j *Judge) Felt(w *walk.World, p walk.Place, action int, q walk.Progress, from, to affine.Form) {
	if j.Quiet || q.Done {
		return
	}
	f := &j.Felts[p.Step][action]
	row := j.Network.Actions[action].Row
	t := &row[q.Links]
	level, falling := t.Level, t.Falling
	if q.Out {
		level, falling = t.Rearm, !t.Falling
	}
	if !f.Seen {
		f.Seen, f.Least, f.Greatest, f.Left, f.Waits = true, math.Inf(1), math.Inf(-1), math.Inf(1), q
	}
	for _, x := range [2]affine.Form{from, to} {
		if x.Least() < f.Least {
			f.Least = min(f.Least, j.bound(w, x))
		}
		if x.Greatest() > f.Greatest {
			f.Greatest = max(f.Greatest, -j.bound(w, x.Times(-1)))
		}
		left := level.Minus(x)
		if falling {
			left = left.Times(-1)
		}
		if left.Least() >= f.Left {
			continue
		}
		region := w.Region.And(q.Rows)
		if region == nil {
			continue
		}
		bound, at := region.Least(left)
		final := q.Links == len(row)-1 && !q.Out && q.Count+1 >= t.Count
		if bound < -walk.Reach && !final {
			f.CameOn = true // it is met: what comes after it counts
			continue
		}
		if bound < f.Left {
			f.Left, f.LeftForm, f.Point, f.Level, f.Falling, f.Link = bound, left, at, level, falling, q.Links
		}
	}
}

// bound is the least value of a form in a world.
func (j *Judge) bound(w *walk.World, f affine.Form) float64 {
	if len(w.Region.Rows()) == 0 || len(f.T) == 0 {
		return f.Least()
	}
	b, _ := w.Region.Least(f)
	return b
}

// Reached keeps by how much an intended action goes beyond its level: of a row,
// the least over its triggers.
func (j *Judge) Reached(w *walk.World, p walk.Place, action int, q walk.Progress, by affine.Form) {
	if j.Quiet {
		return
	}
	f := &j.Felts[p.Step][action]
	if f.HasReach && by.Least() >= f.Reach {
		return
	}
	region := w.Region.And(q.Rows)
	if region == nil {
		return
	}
	bound, at := region.Least(by)
	if !f.HasReach || bound < f.Reach {
		f.HasReach, f.Reach, f.ReachForm, f.ReachPoint, f.ReachLink = true, bound, by, at, q.Links
	}
}
