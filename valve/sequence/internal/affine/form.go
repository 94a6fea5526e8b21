package affine

import "math"

// Term is a symbol with its coefficient.
type Term struct {
	Symbol int
	C      float64
}

// Form is C + Σ T[k].C·e[T[k].Symbol] ± R. Terms are in the order of their
// symbols and never change once the form is made, so that forms may share them.
// The zero value is exactly zero.
type Form struct {
	C float64
	R float64 // not negative
	T []Term
}

// Const is a form without symbols.
func Const(c float64) Form { return Form{C: c} }

// Within is the form of a value that lies in a band and that nothing else
// depends on.
func Within(least, greatest float64) Form {
	return Form{C: least + (greatest-least)/2, R: (greatest - least) / 2}
}

// Plus returns f + g.
func (f Form) Plus(g Form) Form { return f.add(g, 1) }

// Minus returns f - g.
func (f Form) Minus(g Form) Form { return f.add(g, -1) }

// PlusTimes returns f + k·g.
func (f Form) PlusTimes(g Form, k float64) Form {
	if k == 0 {
		return f
	}
	return f.add(g, k)
}

// Shift returns f + c.
func (f Form) Shift(c float64) Form {
	f.C += c
	return f
}

// Widen returns f ± r.
func (f Form) Widen(r float64) Form {
	f.R += math.Abs(r)
	return f
}

// Times returns k·f.
func (f Form) Times(k float64) Form {
	r := Form{C: f.C * k, R: f.R * math.Abs(k)}
	if len(f.T) == 0 || k == 0 {
		return r
	}
	r.T = make([]Term, len(f.T))
	for i, t := range f.T {
		r.T[i] = Term{t.Symbol, t.C * k}
	}
	return r
}

func (f Form) add(g Form, k float64) Form {
	r := Form{C: f.C + k*g.C, R: f.R + math.Abs(k)*g.R}
	switch {
	case len(g.T) == 0:
		r.T = f.T
		return r
	case len(f.T) == 0 && k == 1:
		r.T = g.T
		return r
	}
	r.T = make([]Term, 0, len(f.T)+len(g.T))
	i, j := 0, 0
	for i < len(f.T) || j < len(g.T) {
		switch {
		case j == len(g.T) || i < len(f.T) && f.T[i].Symbol < g.T[j].Symbol:
			r.T = append(r.T, f.T[i])
			i++
		case i == len(f.T) || g.T[j].Symbol < f.T[i].Symbol:
			r.T = append(r.T, Term{g.T[j].Symbol, k * g.T[j].C})
			j++
		default:
			// What cancels but for rounding is gone: two ways to the same
			// pressure must give the same form.
			a, b := f.T[i].C, k*g.T[j].C
			if c := a + b; math.Abs(c) > 1e-14*(math.Abs(a)+math.Abs(b)) {
				r.T = append(r.T, Term{f.T[i].Symbol, c})
			}
			i++
			j++
		}
	}
	return r
}

// Mul returns the enclosure of f·g.
func Mul(f, g Form) Form {
	if f.Sharp() {
		return g.Times(f.C)
	}
	if g.Sharp() {
		return f.Times(g.C)
	}
	r := Form{T: f.Times(g.C).T}
	r = r.Plus(Form{T: g.Times(f.C).T})
	r.C = f.C * g.C
	r.R = math.Abs(g.C)*f.R + math.Abs(f.C)*g.R + f.Radius()*g.Radius()
	return r
}

// Sharp tells whether the form is one number.
func (f Form) Sharp() bool { return len(f.T) == 0 && f.R == 0 }

// Radius is how far the form may lie from its middle.
func (f Form) Radius() float64 {
	r := f.R
	for _, t := range f.T {
		r += math.Abs(t.C)
	}
	return r
}

// finite tells whether all of a form are numbers.
func (f Form) finite() bool {
	x := f.C + f.R
	for _, t := range f.T {
		x += t.C
	}
	return x-x == 0
}

// Least is the least value over the whole box.
func (f Form) Least() float64 { return f.C - f.Radius() }

// Greatest is the greatest value over the whole box.
func (f Form) Greatest() float64 { return f.C + f.Radius() }

// At is the middle of the form at a point of the box.
func (f Form) At(e []float64) float64 {
	x := f.C
	for _, t := range f.T {
		x += t.C * e[t.Symbol]
	}
	return x
}

// Same tells whether two forms are equal to within a tolerance at every point.
func (f Form) Same(g Form, tolerance float64) bool {
	if math.Abs(f.C-g.C) > tolerance || math.Abs(f.R-g.R) > tolerance {
		return false
	}
	if len(f.T) == 0 && len(g.T) == 0 {
		return true
	}
	i, j, sum := 0, 0, math.Abs(f.C-g.C)
	for i < len(f.T) || j < len(g.T) {
		switch {
		case j == len(g.T) || i < len(f.T) && f.T[i].Symbol < g.T[j].Symbol:
			sum += math.Abs(f.T[i].C)
			i++
		case i == len(f.T) || g.T[j].Symbol < f.T[i].Symbol:
			sum += math.Abs(g.T[j].C)
			j++
		default:
			sum += math.Abs(f.T[i].C - g.T[j].C)
			i++
			j++
		}
		if sum > tolerance {
			return false
		}
	}
	return true
}

// Part is a part of a symbol's range: the middle and the half of it, in units of
// the whole range's half; false leaves the symbol as it is.
type Part func(symbol int) (middle, half float64, ok bool)

// Narrow puts middle + half·e in the place of a symbol's e, for the symbols for
// which part answers: a half of nought makes it a number.
func (f Form) Narrow(part Part) Form {
	if len(f.T) == 0 {
		return f
	}
	r := Form{C: f.C, R: f.R}
	for _, t := range f.T {
		middle, half, ok := part(t.Symbol)
		switch {
		case !ok:
			r.T = append(r.T, t)
			continue
		case half != 0:
			r.T = append(r.T, Term{t.Symbol, t.C * half})
		}
		r.C += t.C * middle
	}
	return r
}
