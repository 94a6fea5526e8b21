package production

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// cell is a zone's unknowns while they are looked for.
type cell struct {
	p, q       float64 // tubing pressure beside it, rate into the tubing
	slope      float64 // dq/dp
	head, loss float64 // δp of this cell is head + loss·δp of the lowest
}

// fastPasses bounds newton; what hasn't converged by then goes to search.
const fastPasses = 12

// newton solves for the pressures beside all zones at once. Each pass makes the
// whole network straight at the present pressures and solves it exactly in one
// sweep up and one down: a chain has no need of a matrix. Because no zone's
// rate waits for the one below it, this is quicker than carrying one pressure
// upwards, and losses between zones don't slow it. It has no bracket: ok is
// false where it doesn't settle, and then search does it.
//
// start is the tubing pressure at the lowest zone to begin from.
func (n *Network) newton(start float64, positions []int, byRate bool, target float64, f *Flow) (p float64, s state, ok bool) {
	cells := f.cells
	for i := range cells {
		cells[i].p = start
		start -= n.nodes[i].head
		cells[i].q = math.NaN()
	}
	last := math.Inf(1)
	for f.Passes = 1; f.Passes <= fastPasses; f.Passes++ {
		step, s := n.sweep(cells, positions, byRate, target)
		scale := math.Abs(cells[0].p)
		if !(step < math.Inf(1)) { // or not a number
			return 0, s, false
		}
		// The error is about to be squared: step, then step·(step/last)².
		next := step / last
		next = step * next * next
		if step <= rounding*scale || f.Passes > 1 && step < last/8 && next <= resolution*scale {
			return cells[0].p, s, true
		}
		last = step
	}
	return 0, s, false
}

// sweep makes one pass of newton and returns its greatest change of pressure,
// and the state after it to first order.
func (n *Network) sweep(cells []cell, positions []int, byRate bool, target float64) (step float64, s state) {
	// δp = a + b·x with x the change at the lowest zone; δQ = c + d·x likewise.
	a, b, c, d, q := 0.0, 1.0, 0.0, 0.0, 0.0
	top := len(cells) - 1
	for i := range cells {
		node, cell := &n.nodes[i], &cells[i]
		step = max(step, node.advance(cell, node.chokes[positions[i]]))
		cell.head, cell.loss = a, b
		q += cell.q
		c += cell.slope * a
		d += cell.slope * b
		if i < top {
			abs := math.Abs(q)
			slope := node.linear + 2*node.square*abs
			a += cell.p - node.head - (node.linear+node.square*abs)*q - cells[i+1].p - slope*c
			b -= slope * d
		}
	}
	var x float64
	if byRate {
		x = (target - q - c) / d
	} else {
		want, slope := n.outflow.at(q)
		x = -(cells[top].p - want + a - slope*c) / (b - slope*d)
	}
	s.rate = 0
	for i := range cells {
		cell := &cells[i]
		dp := cell.head + cell.loss*x
		step = max(step, math.Abs(dp))
		cell.p += dp
		cell.q += cell.slope * dp
		s.rate += cell.q
	}
	s.top = cells[top].p
	return step, s
}

// advance brings a cell's rate and slope to its pressure: exactly where there
// is a closed form or a solver of its own, by one step of Newton's for Vogel's
// curve behind a choke. It returns how far off in pressure the rate was.
func (n *node) advance(c *cell, k float64) (off float64) {
	if n.shut(k) {
		c.q, c.slope = 0, 0
		return 0
	}
	if n.shape != vogel {
		c.q, c.slope = n.rate(c.p, k)
		return 0
	}
	if math.IsNaN(c.q) { // begin from the lesser of two rates that are too high
		c.q, _ = n.onLine(c.p, k)
		if c.p < n.bubble {
			open, _ := n.open(c.p)
			c.q = min(c.q, open)
		}
	}
	abs := math.Abs(c.q)
	off = c.p + k*c.q*abs
	if x := (c.q - n.straight) * n.perVogel; x > 0 && x <= 1 {
		// inverse as printed, pb/8·(√(81-80x) - 1), and its slope with the root
		// multiplied out: no division to wait for. What cancels near open flow is a last
		// place of the bubble point, and pressures here are no finer.
		root := math.Sqrt(81 - 80*x)
		off -= n.bubble / 8 * (root - 1)
		c.slope = -root / (2*k*abs*root + n.steep)
	} else {
		p, fall := n.static-n.a*c.q, -n.a
		if x > 1 {
			p, fall = n.inverse(c.q)
		}
		off -= p
		c.slope = -1 / (2*k*abs - fall)
	}
	c.q += off * c.slope
	return math.Abs(off)
}

// settle puts cells into zones.
func (f *Flow) settle() {
	sum := 0.0
	for i := range f.cells {
		c := &f.cells[i]
		sum += c.q
		z := &f.Zones[i]
		z.Rate, z.Tubing, z.Passing = unit.FlowRate(c.q), unit.Pressure(c.p), unit.FlowRate(sum)
	}
}
