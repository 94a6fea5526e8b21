package production

import (
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/inflow"
)

// node is a zone as the solver asks it: rate into the tubing, and its slope,
// for a pressure in the tubing.
type node struct {
	shape  shape
	static float64

	// inflow.Liquid: p = static - a·q down to the bubble point, Vogel below
	a, bubble, straight, vogel float64 // 1/J, pb, J·(pr-pb), J·pb/1.8
	perVogel, steep            float64 // 1/vogel, 5·pb/vogel

	curve Inflow   // any other inflow
	gas   *gasNode // and gas through a choke

	chokes []float64 // liquid: drop per rate squared by position, +Inf when shut; gas: Av

	head, linear, square float64 // of the tubing to the next zone
	cut                  float64
}

type shape int

const (
	line  shape = iota // straight inflow
	vogel              // with a bubble point
	other              // any other, liquid choke
	gas                // any, gas choke
)

func newNode(z Zone, last bool, next unit.Length) node {
	n := node{shape: other, static: float64(z.Inflow.Static()), curve: z.Inflow, cut: z.WaterCut}
	if l, ok := z.Inflow.(inflow.LiquidDeliverability); ok {
		n.shape = line
		n.a = 1 / float64(l.Index)
		if n.bubble = min(float64(l.Bubble), n.static); n.bubble > 0 {
			n.shape = vogel
			n.straight = float64(l.Index) * (n.static - n.bubble)
			n.vogel = float64(l.Index) * n.bubble / 1.8
			n.perVogel, n.steep = 1/n.vogel, 5*n.bubble/n.vogel
		}
	}
	if z.Gas != nil && len(z.Chokes) > 0 {
		n.shape, n.gas = gas, newGasNode(*z.Gas)
	}
	if len(z.Chokes) == 0 {
		n.chokes = []float64{0}
	}
	b := z.VolumeFactor
	if b == 0 {
		b = 1
	}
	for _, p := range z.Chokes {
		c := float64(p.Coefficient)
		if n.shape != gas {
			c = b / c
			c = float64(z.Density) * c * c
		}
		n.chokes = append(n.chokes, c)
	}
	if !last {
		n.head = float64(hydrostatics.Pressure(z.Above.Density, z.TVD-next))
		n.linear, n.square = z.Above.Loss.coefficients()
	}
	return n
}

// shut tells whether a choke lets nothing through.
func (n *node) shut(k float64) bool {
	if n.shape == gas {
		return k == 0
	}
	return math.IsInf(k, 1)
}

// rate is what flows into tubing at pressure p through choke k, and its slope.
func (n *node) rate(p, k float64) (q, slope float64) {
	switch n.shape {
	case line:
		return n.onLine(p, k)
	case vogel:
		return n.onVogel(p, k)
	case gas:
		return n.gas.rate(n.curve, n.static, p, k)
	case other:
	}
	return n.onCurve(p, k)
}

// onLine solves k·q·|q| + a·q = static - p, written so that nothing cancels.
func (n *node) onLine(p, k float64) (q, slope float64) {
	d := n.static - p
	s := math.Sqrt(n.a*n.a + 4*k*math.Abs(d))
	return 2 * d / (n.a + s), -1 / s
}

// onVogel is onLine down to the bubble point in front of the zone; below it
// solves p + k·q² = P(q), the zone's pressure by Vogel. The left side less the
// right is convex and grows, so Newton's steps from any rate above the answer
// fall to it and can't miss. Two such rates are known: that of the straight
// line, and that without the choke.
func (n *node) onVogel(p, k float64) (q, slope float64) {
	if p+k*n.straight*n.straight >= n.bubble || p >= n.static {
		return n.onLine(p, k)
	}
	q, slope = n.open(p)
	if k == 0 {
		return q, slope
	}
	if straight, _ := n.onLine(p, k); straight < q {
		q = straight
	}
	for range maxInner {
		pressure, fall := n.inverse(q)
		f := p + k*q*q - pressure
		d := 2*k*q - fall
		slope = -1 / d
		step := f / d
		q -= step
		if math.Abs(step) <= 1e-8*q { // squared by the step just made; the slope is good to 1e-8, which is plenty
			break
		}
	}
	return q, slope
}

// maxInner is never reached: the steps square the error from the first.
const maxInner = 60

// open is inflow.Liquid.At below the bubble point, from prepared terms.
func (n *node) open(p float64) (q, slope float64) {
	y := p / n.bubble
	if y < 0 {
		return n.straight + n.vogel*(1-0.2*y), -0.2 * n.vogel / n.bubble
	}
	return n.straight + n.vogel*(1-(0.2+0.8*y)*y), -n.vogel / n.bubble * (0.2 + 1.6*y)
}

// inverse is inflow.Liquid.Inverse below the bubble point, from prepared terms.
func (n *node) inverse(q float64) (p, slope float64) {
	x := (q - n.straight) / n.vogel
	if x > 1 {
		return 5 * n.bubble * (1 - x), -5 * n.bubble / n.vogel
	}
	s := math.Sqrt(81 - 80*x)
	return 10 * n.bubble * (1 - x) / (s + 1), -5 * n.bubble / (n.vogel * s)
}

// onCurve solves s - k·q(s)·|q(s)| = p for the pressure s in front of the zone,
// between p and static.
func (n *node) onCurve(p, k float64) (q, slope float64) {
	if k == 0 || p == n.static {
		return n.curve.At(p)
	}
	q, slope = n.curve.At(bracketed(min(p, n.static), max(p, n.static), func(s float64) (float64, float64) {
		q, fall := n.curve.At(s)
		return s - k*q*math.Abs(q) - p, 1 - 2*k*math.Abs(q)*fall
	}))
	return q, 1 / (1/slope - 2*k*math.Abs(q))
}

// bracketed finds where f, which grows from lo to hi, passes zero: Newton's
// steps inside a bracket, halved where they gain too little. At most about 120
// steps, for any f.
func bracketed(lo, hi float64, f func(float64) (value, slope float64)) float64 {
	x := lo + (hi-lo)/2
	last := math.Inf(1)
	for range maxSteps {
		v, d := f(x)
		if v == 0 {
			return x
		}
		if v > 0 {
			hi = x
		} else {
			lo = x
		}
		next := x - v/d
		step := math.Abs(next - x)
		if step <= rounding*math.Abs(x) {
			return next
		}
		if hi <= math.Nextafter(lo, hi) {
			return x
		}
		if !(next >= lo && next <= hi) || step > last/2 {
			next = lo + (hi-lo)/2
		}
		last, x = math.Abs(next-x), next
	}
	return x
}

const (
	maxSteps   = 200
	resolution = 0x1p-50 // a step as small as this is none
	rounding   = 1e-12   // steps under this that don't shrink are made of rounding
)
