package well

import "completion.example/valve/sequence/internal/affine"

// Pair names the columns of two compartments as they are now: as long as it stays
// the same, so do the pressures that they make from their tops down.
type Pair struct{ a, b *column }

// Pair of compartments; j is -1 where there is one only. It is false while a front
// moves in one of them, or where a fluid feels its pressure.
func (s *State) Pair(i, j int) (Pair, bool) {
	p := Pair{a: s.columns[i]}
	ok := p.a.uniform && !s.pumping(i) && s.Front.Compartment != i && s.Low(i) < 0
	if j >= 0 {
		p.b = s.columns[j]
		ok = ok && p.b.uniform && !s.pumping(j) && s.Front.Compartment != j && s.Low(j) < 0
	}
	return p, ok
}

// Drop is the pressure that the columns make from their tops to a depth of each,
// the first less the second.
func (p Pair) Drop(at, there int) affine.Form {
	if p.b == nil {
		return p.a.drops[at]
	}
	return p.a.drops[at].Minus(p.b.drops[there])
}
