package affine

import "math"

// Line is a form that goes straight along a way s that begins at nought:
// F + (S ± D)·s.
type Line struct {
	F Form
	S float64
	D float64 // by how much the slope may be off; not negative
}

// Flat is a line that stays what it is.
func Flat(f Form) Line { return Line{F: f} }

// At is the form at a place of the way.
func (l Line) At(s Form) Form {
	if l.S == 0 && l.D == 0 {
		return l.F
	}
	f := l.F.PlusTimes(s, l.S)
	if l.D > 0 {
		f.R += l.D * math.Max(math.Abs(s.Least()), math.Abs(s.Greatest()))
	}
	return f
}

// Cross is the place at which the line meets a level; its slope must not be nought.
//
//	s = (level - F)/S, off by no more than s·(D/|S|)/(1 - D/|S|)
func (l Line) Cross(level Form) Form {
	s := level.Minus(l.F).Times(1 / l.S)
	if l.D > 0 {
		share := l.D / math.Abs(l.S)
		if share > 0.9999 {
			share = 0.9999 // whoever asks has to see to it that it may be anywhere
		}
		s.R += math.Max(math.Abs(s.Least()), math.Abs(s.Greatest())) * share / (1 - share)
	}
	return s
}

// Plus returns l + m.
func (l Line) Plus(m Line) Line { return Line{l.F.Plus(m.F), l.S + m.S, l.D + m.D} }

// Minus returns l - m.
func (l Line) Minus(m Line) Line {
	s := l.S - m.S
	if s > -1e-12 && s < 1e-12 { // two ways to the same slope
		s = 0
	}
	return Line{l.F.Minus(m.F), s, l.D + m.D}
}

// PlusForm returns l + f.
func (l Line) PlusForm(f Form) Line { return Line{l.F.Plus(f), l.S, l.D} }

// Times returns k·l.
func (l Line) Times(k float64) Line { return Line{l.F.Times(k), l.S * k, l.D * math.Abs(k)} }

// Same tells whether two lines are equal to within a tolerance.
func (l Line) Same(m Line, tolerance float64) bool {
	return math.Abs(l.S-m.S) < 1e-9 && math.Abs(l.D-m.D) < 1e-9 && l.F.Same(m.F, tolerance)
}
