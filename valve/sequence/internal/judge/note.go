package judge

import (
	"math"
	"slices"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
)

// Note keeps a margin of a limit at a place.
func (j *Judge) Note(w *walk.World, p walk.Place, k Kind, index int, by affine.Form, depth int) {
	if j.Deaf {
		return
	}
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

// NoteTimes keeps the margin k·f + c, which is made only where something of it would be
// kept.
func (j *Judge) NoteTimes(w *walk.World, p walk.Place, kind Kind, index int, f affine.Form, k, c float64) {
	if !j.idle(p, kind, index, c+k*f.C-math.Abs(k)*f.Radius()) {
		j.Note(w, p, kind, index, f.Times(k).Shift(c), 0)
	}
}

// idle tells that nothing would be kept of a limit that is at least so far from being
// passed: then its form need not be made.
func (j *Judge) idle(p walk.Place, k Kind, index int, bound float64) bool {
	if j.Deaf {
		return true
	}
	if !(bound > 0) {
		return false
	}
	if j.Quiet {
		return true
	}
	m := j.Margins[Key{p.Step, k, index}]
	return m != nil && bound > m.Least
}

func (j *Judge) keep(w *walk.World, p walk.Place, key Key, by affine.Form, bound float64, depth int) *Margin {
	m := j.Margins[key]
	if j.trying {
		j.before.margins.note(key, m)
	}
	if m == nil {
		m = &Margin{Key: key, Least: math.Inf(1)}
		j.Margins[key] = m
	}
	fails := bound < -walk.Reach || math.IsNaN(bound)
	if bound < m.Least || math.IsNaN(bound) {
		m.Least, m.Form, m.Depth, m.region, m.judge = bound, by, depth, w.Region, j
		m.Label, m.Action, m.After, m.X = p.Label, p.Action, p.After, p.X
		m.Enclosed = by.R > 0
		m.Stuck, m.Begun = slices.Clone(w.Stuck), w.Begun
	}
	if !fails {
		return m
	}
	if m.Least == bound && !j.Parts { // parts are for windows, which tell their own places
		m.Pull = nil
		if p.Pulling != nil {
			f := p.Pulling.At(p.X)
			m.Pull = &f
		}
		m.Applied = nil
		for c, l := range w.State.Applied {
			if w.State.Low(c) >= 0 {
				l = affine.Line{}
			}
			m.Applied = append(m.Applied, l.At(p.X))
		}
	}
	if !m.Fails() {
		j.broken++
	}
	if j.Parts {
		m.Regions = append(m.Regions, Part{w.Region, by})
		return m
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
	if at == nil {
		m.Regions = append(m.Regions, Part{w.Region, by})
	}
	return m
}

// Certain tells, of a walk of plain numbers, whether the limit is passed whatever is
// only enclosed in it.
func (m *Margin) Certain() bool {
	return m.Fails() && !m.region.Enclosed() && !(m.Form.Greatest() >= -walk.Reach)
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

// Unintended keeps an action that happens and isn't wanted.
func (j *Judge) Unintended(w *walk.World, action int, p walk.Place, felt affine.Form) {
	m := j.failed(w, p, Event, action)
	if m.Value.T == nil && m.Value.C == 0 {
		m.Value = felt
	}
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
