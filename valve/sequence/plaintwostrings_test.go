package sequence_test

import (
	"math"
	"slices"

	"completion.example/valve/sequence"
	"gonum.org/v1/gonum/mat"
)

// meets are the depths at which the inner string of a plan hangs, is held or seals in
// the outer one.
func meets(p *sequence.Plan) []float64 {
	o := p.OuterString
	end := o.Sections[len(o.Sections)-1].BottomMD.In(foot)
	all := []float64{p.String.HangerMD.In(foot)}
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			if a.Holds && d.On == sequence.OnString {
				all = append(all, d.MD.In(foot))
			}
		}
	}
	for _, s := range p.String.Seals {
		all = append(all, s.MD.In(foot))
	}
	slices.Sort(all)
	return slices.DeleteFunc(slices.Compact(all), func(z float64) bool { return z <= o.HangerMD.In(foot) || z > end })
}

func (w *plainWalk) stringOn(on sequence.WhichString) *plainString {
	if on == sequence.OnOuterString {
		return w.outer
	}
	return w.str
}

// now is the string as it stands, with the other one.
func (s *plainString) now() plainLoads {
	all := s.loads()
	if s.on == sequence.OnOuterString {
		return all[1]
	}
	return all[0]
}

// loads are both strings: what the inner one puts on the outer one where they meet is
// what makes both stand alike there, found by Newton's steps.
func (w *plainWalk) loads() [2]plainLoads {
	if w.known == nil {
		all := w.balanced()
		w.known = &all
	}
	return *w.known
}

func (w *plainWalk) balanced() (all [2]plainLoads) {
	if w.outer == nil {
		all[0], _ = w.str.load()
		return all
	}
	at := meets(w.plan)
	n := len(at)
	puts := make([]float64, n)
	for k := range n {
		puts[k] = w.outer.hung[w.outer.hungAt(at[k])] // where it stood last
	}
	answer := func(puts []float64) []float64 {
		for k, z := range at {
			w.outer.hung[w.outer.hungAt(z)] = puts[k]
		}
		all[1], _ = w.outer.load()
		w.str.moves = func(z float64) float64 {
			if k := w.outer.hungAt(z); k >= 0 {
				return all[1].moved[k] - w.began[z]
			}
			return 0
		}
		all[0], _ = w.str.load()
		found := make([]float64, n)
		for k, z := range at {
			found[k] = w.puts(z, &all[0])
		}
		return found
	}
	for range 20 {
		found := answer(puts)
		off, slope := mat.NewVecDense(n, nil), mat.NewDense(n, n, nil)
		worst := 0.0
		for k := range n {
			off.SetVec(k, found[k]-puts[k])
			worst = max(worst, math.Abs(found[k]-puts[k]))
		}
		if worst < 1e-6 {
			return all
		}
		const step = 5.0
		for j := range n {
			moved := slices.Clone(puts)
			moved[j] += step
			other := answer(moved)
			for i := range n {
				d := (found[i] - other[i]) / step
				if i == j {
					d++
				}
				slope.Set(i, j, d)
			}
		}
		var by mat.VecDense
		if by.SolveVec(slope, off) != nil {
			w.r.close = true
			return all
		}
		for k := range n {
			puts[k] += by.AtVec(k)
		}
	}
	w.r.close = true // it snaps to and fro
	answer(puts)
	return all
}

// hungAt is the mark of the outer string where the inner one meets it at a depth, or -1.
func (s *plainString) hungAt(depth float64) int {
	return slices.IndexFunc(s.marks, func(m plainMark) bool { return m.kind == plainHung && m.depth == depth })
}

// puts is what the inner string puts on the outer one at a depth, down positive. Where
// it closes the end of the outer one's bore it takes what presses on its own area off
// it, as the outer one is counted with its end plugged.
func (w *plainWalk) puts(depth float64, l *plainLoads) float64 {
	s, sum := w.str, 0.0
	if depth == s.pipes[0].top && !s.hook {
		sum += l.top
	}
	end := w.outer.pipes[len(w.outer.pipes)-1].bottom
	for k, m := range s.marks {
		if m.depth != depth || m.kind == plainJoint {
			continue
		}
		if _, holds := s.held[k]; holds && !l.lost[k] {
			sum -= l.load[k]
		}
		sum -= l.rubs[k]
		if depth == end {
			_, above := s.press(k, false)
			_, below := s.press(k, true)
			sum += (below - above) * m.area
		}
	}
	return sum
}

// land lands the inner string, or both: the outer one first, with nothing in it.
func (w *plainWalk) land(on sequence.WhichString) {
	if w.outer != nil && on == sequence.OnOuterString {
		w.outer.land()
	}
	w.known, w.began = nil, map[float64]float64{}
	w.str.moves = func(float64) float64 { return 0 }
	w.str.land()
	w.known = nil
	if w.outer == nil {
		return
	}
	all := w.loads()
	for _, z := range meets(w.plan) {
		w.began[z] = all[1].moved[w.outer.hungAt(z)]
	}
	w.known = nil
}
