package movement

import (
	"fmt"
	"math"
)

// Mode is how a pipe is buckled.
type Mode int

// The modes.
const (
	Straight Mode = iota // not buckled: lies along the hole
	Sinusoidal
	Helical
)

// String returns the name of m.
func (m Mode) String() string {
	switch m {
	case Straight:
		return "straight"
	case Sinusoidal:
		return "sinusoidal"
	case Helical:
		return "helical"
	}
	return fmt.Sprintf("Mode(%d)", int(m))
}

// MarshalText returns the name of m.
func (m Mode) MarshalText() ([]byte, error) {
	if m < Straight || m > Helical {
		return nil, fmt.Errorf("movement: mode %d, permitted straight, sinusoidal, helical", int(m))
	}
	return []byte(m.String()), nil
}

// UnmarshalText reads a name of a mode.
func (m *Mode) UnmarshalText(text []byte) error {
	for _, x := range [...]Mode{Straight, Sinusoidal, Helical} {
		if x.String() == string(text) {
			*m = x
			return nil
		}
	}
	return fmt.Errorf("movement: mode %q, permitted straight, sinusoidal, helical", text)
}

// Factors of sinusoidal buckling, fitted by Mitchell to his solution of the
// buckled shape; recalled, not read again.
//
// Source: Mitchell, "Buckling analysis in deviated wells: a practical method",
// SPE Drilling & Completion March 1999, p. 11 (SPE 55039).
const (
	sinusoidalStrain  = 0.7285 // of ε = -0.7285*r²/(4*E*I)*F^0.08*(F - Fp)^0.92
	sinusoidalTurning = 1.1227 // of θ' = 1.1227/sqrt(2*E*I)*F^0.04*(F - Fp)^0.46
)

// onset is the sinusoidal load at a compression f: the pipe buckles where f is
// greater. In a vertical straight hole it is zero.
func onset(ei, r, wc float64) float64 {
	if wc == 0 {
		return 0
	}
	return math.Sqrt(4 * ei * wc / r)
}

// mode is how a pipe under compression f is buckled, with the sinusoidal load
// fp and the ratio of helical onset to it.
func mode(f, fp, ratio float64) Mode {
	switch {
	case !(f > 0) || f <= fp:
		return Straight
	case f < ratio*fp:
		return Sinusoidal
	}
	return Helical
}

// shape returns F^0.08*(F - Fp)^0.92, the load that takes the place of F in the
// formulas of sinusoidal buckling.
func shape(f, fp float64) float64 {
	if f <= fp {
		return 0
	}
	return f * math.Pow(1-fp/f, 0.92)
}

// lay is how a pipe lies in its hole at one place.
type lay struct {
	mode      Mode
	onset     float64
	strain    float64 // by buckling
	contact   float64
	curvature float64 // by buckling
}

// lie finds how a pipe of stiffness ei and clearance r lies under compression f
// and a weight g across the hole.
func lie(f, ei, r, g float64, e *element, ratio float64) lay {
	x := lay{contact: contact(g, e.build, e.turn, f)}
	if r == 0 {
		return x
	}
	x.onset = onset(ei, r, x.contact)
	x.mode = mode(f, x.onset, ratio)
	switch x.mode {
	case Helical:
		x.strain, x.contact, x.curvature = -r*r*f/(4*ei), max(x.contact, r*f*f/(4*ei)), r*f/(2*ei)
	case Sinusoidal:
		s := shape(f, x.onset)
		x.strain, x.curvature = -sinusoidalStrain*r*r/(4*ei)*s, r*sinusoidalTurning*sinusoidalTurning/(2*ei)*s
	}
	return x
}

// equivalentLoad integrates over a length the load that makes the strain
// -r²/(4*E*I)*load: the compression itself where helical. Compression f and
// sinusoidal load p are linear from a to b. It splits the length where the mode
// changes, so that no kink lies inside a rule.
func equivalentLoad(fa, fb, pa, pb, length, ratio float64) float64 {
	if pa == 0 && pb == 0 {
		return positivePart(fa, fb, length)
	}
	if fa <= pa && fb <= pb || fa <= 0 && fb <= 0 {
		return 0
	}
	marks := [4]float64{0, crossing(fa-pa, fb-pb), crossing(fa-ratio*pa, fb-ratio*pb), 1}
	if marks[1] > marks[2] {
		marks[1], marks[2] = marks[2], marks[1]
	}
	sum := 0.0
	for k := range 3 {
		from, to := marks[k], marks[k+1]
		if to <= from {
			continue
		}
		at := func(x float64) (f, p float64) { return fa + (fb-fa)*x, pa + (pb-pa)*x }
		f, p := at((from + to) / 2)
		switch mode(f, p, ratio) {
		case Helical:
			sum += f * (to - from)
		case Sinusoidal:
			if to-from == 1 {
				// Smooth all along: the middle is as good as the rest of the method.
				sum += sinusoidalStrain * shape(f, p)
				continue
			}
			// The load starts from zero like x^0.92: three-point Gauss-Legendre.
			half := (to - from) / 2
			f1, p1 := at((from+to)/2 - half*gauss)
			f2, p2 := at((from+to)/2 + half*gauss)
			sum += sinusoidalStrain * half / 9 * (5*shape(f1, p1) + 8*shape(f, p) + 5*shape(f2, p2))
		}
	}
	return sum * length
}

// gauss is the outer abscissa of the three-point rule, sqrt(3/5).
const gauss = 0.774596669241483377035853079956479922

// crossing is where a linear function from a to b is zero, in 0 to 1; 1 where
// it has one sign.
func crossing(a, b float64) float64 {
	if (a > 0) == (b > 0) {
		return 1
	}
	return a / (a - b)
}
