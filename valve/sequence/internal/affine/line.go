package affine

// Line is a form that goes straight along a way s: F + S·s. The slope is a
// number: what is uncertain in it widens F over the whole way.
type Line struct {
	F Form
	S float64
}

// Flat is a line that stays what it is.
func Flat(f Form) Line { return Line{F: f} }

// At is the form at a place of the way.
func (l Line) At(s Form) Form {
	if l.S == 0 {
		return l.F
	}
	return l.F.PlusTimes(s, l.S)
}

// Plus returns l + m.
func (l Line) Plus(m Line) Line { return Line{l.F.Plus(m.F), l.S + m.S} }

// Minus returns l - m.
func (l Line) Minus(m Line) Line {
	s := l.S - m.S
	if s > -1e-12 && s < 1e-12 { // two ways to the same slope
		s = 0
	}
	return Line{l.F.Minus(m.F), s}
}

// PlusForm returns l + f.
func (l Line) PlusForm(f Form) Line { return Line{l.F.Plus(f), l.S} }

// Times returns k·l.
func (l Line) Times(k float64) Line { return Line{l.F.Times(k), l.S * k} }

// Same tells whether two lines are equal to within a tolerance.
func (l Line) Same(m Line, tolerance float64) bool {
	return l.S-m.S < 1e-9 && m.S-l.S < 1e-9 && l.F.Same(m.F, tolerance)
}
