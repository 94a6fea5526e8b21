package movement

import (
	"fmt"
	"math"

	"completion.example/internal/fault"
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
		return nil, fault.NewIn("movement", "", "mode is %d; must be straight, sinusoidal or helical", int(m))
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
	return fault.NewIn("movement", "", "mode is %q; must be straight, sinusoidal or helical", text)
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

// lateral is how far and how stiffly a pipe may move across its hole.
type lateral struct {
	r     float64 // radial clearance
	k     float64 // 4*E*I/r
	helix float64 // r/(4*E*I)
}

func confine(ei, r float64) lateral { return lateral{r: r, k: 4 * ei / r, helix: r / (4 * ei)} }

// onset is the sinusoidal load at a contact force: the pipe buckles where its
// compression is greater. In a vertical straight hole it is zero. There must be
// clearance.
func (l *lateral) onset(wc float64) float64 {
	if wc == 0 {
		return 0
	}
	return math.Sqrt(l.k * wc)
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
	return f * math.Exp(0.92*math.Log(1-fp/f)) // a third of the time of math.Pow
}

// lay is how a pipe lies in its hole at one place.
type lay struct {
	mode      Mode
	onset     float64
	strain    float64 // by buckling
	contact   float64
	curvature float64 // by buckling
}

// lie finds how a pipe lies under compression f and a weight g across the hole.
// It fills in x where it stands: five values are slow to hand back.
func (l *lateral) lie(x *lay, f, g float64, e *element, ratio float64) {
	wc := contact(g, e.build, e.turn, f)
	x.mode, x.onset, x.strain, x.contact, x.curvature = Straight, 0, 0, wc, 0
	if l.r == 0 {
		return
	}
	fp := l.onset(wc)
	x.onset, x.mode = fp, mode(f, fp, ratio)
	switch x.mode {
	case Helical:
		x.strain, x.contact, x.curvature = -l.r*l.helix*f, max(wc, l.helix*f*f), 2*l.helix*f
	case Sinusoidal:
		s := shape(f, fp)
		x.strain, x.curvature = -sinusoidalStrain*l.r*l.helix*s, 2*l.helix*sinusoidalTurning*sinusoidalTurning*s
	}
}

// ends are what an element is under at its two ends: compression, sinusoidal load
// and how that changes with the compression.
type ends struct{ fa, fb, pa, pb, qa, qb float64 }

// at is what it is under at a share of its length.
func (e *ends) at(x float64) (f, p, q float64) {
	return e.fa + (e.fb-e.fa)*x, e.pa + (e.pb-e.pa)*x, e.qa + (e.qb-e.qa)*x
}

// snaking is the load of sinusoidal buckling that takes the place of the
// compression, and how it changes with the compression.
func snaking(f, p, q float64) (load, slope float64) {
	s := sinusoidalStrain * shape(f, p)
	if s == 0 {
		return 0, 0
	}
	return s, s * (0.08/f + 0.92*(1-q)/(f-p))
}

// equivalentLoad is the mean over a length of the load that makes the strain
// -r²/(4*E*I)*load: the compression itself where helical. Compression and
// sinusoidal load are linear from end to end. It splits the length where the mode
// changes, so that no kink lies inside a rule. slope is how the mean changes with a
// compression added all along, with the helix that then begins elsewhere.
func (e *ends) equivalentLoad(ratio float64) (load, slope float64) {
	if e.fa <= e.pa && e.fb <= e.pb {
		return 0, 0
	}
	snap := crossing(e.fa-ratio*e.pa, e.fb-ratio*e.pb)
	bends := crossing(e.fa-e.pa, e.fb-e.pb)
	marks := [4]float64{0, min(bends, snap), max(bends, snap), 1}
	for k := range 3 {
		from, to := marks[k], marks[k+1]
		if to <= from {
			continue
		}
		f, p, q := e.at((from + to) / 2)
		switch mode(f, p, ratio) {
		case Helical:
			load += f * (to - from)
			slope += to - from
		case Sinusoidal:
			m, dm := snaking(f, p, q)
			if to-from == 1 {
				// Smooth all along: the middle is as good as the rest of the method.
				load, slope = load+m, slope+dm
				continue
			}
			// The load starts from zero like x^0.92: three-point Gauss-Legendre.
			half := (to - from) / 2
			l, dl := snaking(e.at((from+to)/2 - half*gauss))
			r, dr := snaking(e.at((from+to)/2 + half*gauss))
			load += half / 9 * (5*l + 8*m + 5*r)
			slope += half / 9 * (5*dl + 8*dm + 5*dr)
		}
	}
	if snap > 0 && snap < 1 {
		f, p, q := e.at(snap)
		m, _ := snaking(f, p, q)
		slope += (f - m) * math.Abs((1-ratio*q)/((e.fb-e.fa)-ratio*(e.pb-e.pa)))
	}
	return load, slope
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
