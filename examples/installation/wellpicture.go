package main

import (
	"fmt"
	"html"
	"slices"
	"unicode/utf8"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// strip is a part of the well drawn to scale between two depths.
type strip struct {
	*canvas
	from, to         unit.Length
	left, top, high  float64
	half, ring, face float64 // widths
	fluids           []string
	small            bool
}

func (s *strip) y(d unit.Length) float64 {
	return s.top + s.high*float64((min(max(d, s.from), s.to)-s.from)/(s.to-s.from))
}

// detail is where the devices are: that part is drawn again, larger. What stands far
// above all others, such as a safety valve, is left out of it.
func detail(plan *sequence.Plan) (from, to unit.Length) {
	bottom := unit.Length(0)
	for _, c := range plan.Compartments {
		bottom = max(bottom, c.BottomMD)
	}
	at := []unit.Length{bottom}
	for _, d := range plan.Devices {
		at = append(at, d.MD)
	}
	for _, p := range plan.Ports {
		at = append(at, p.MD)
	}
	slices.Sort(at)
	from = at[0]
	for i, d := range at[1 : len(at)-1] {
		if d-at[i] > bottom*2/5 {
			from = d
		}
	}
	margin := (bottom - from) / 12
	return max(from-margin, 0), bottom
}

// wellPicture draws the well at the end of step i: the whole of it to scale, and
// beside it, larger, the part in which the devices are. Small leaves the whole out.
func wellPicture(w *work, i int, small bool) markup {
	plan := w.plan
	from, to := detail(plan)
	l := laneOf(plan)
	c := &canvas{wide: 480, high: 560}
	x := 70.0
	if small {
		c.wide, c.high, x = 250, 310, -22
	}
	fluids := fluidsOf(plan)
	whole := 0.0
	if !small {
		whole = 92
		s := &strip{canvas: c, to: to, left: x, top: 24, high: c.high - 40, half: 7, ring: 8, face: 8, fluids: fluids}
		s.compartments(plan, l, i, false)
		s.axis(w.read, 5)
		c.box(x-4, s.y(from)-1, whole, s.y(to)-s.y(from)+2, "zoom")
		c.text(x-60, 13, "start", "soft", "whole well, %s measured", w.read.symbol(depth))
	}
	s := &strip{canvas: c, from: from, to: to, left: x + whole + 62, top: 24, high: c.high - 40, half: 15, ring: 20, face: 24, fluids: fluids, small: small}
	if !small {
		c.line(x-4+whole, c.high-16, s.left-48, c.high-16, "zoomline")
		c.line(x-4+whole, 24+(c.high-40)*float64(from/to), s.left-48, 24, "zoomline")
	}
	s.axis(w.read, 7)
	right := s.compartments(plan, l, i, true)
	s.devices(w, l, i, right)
	class := "well big"
	if small {
		class = "well"
	}
	return markup(c.svg(class, fmt.Sprintf("the well after step %d", i+1)))
}

// axis marks depths at the left.
func (s *strip) axis(u reader, n int) {
	span := u.in(s.to-s.from, depth)
	if s.from > 0 || s.small {
		s.text(s.left-9, s.top-11, "end", "num", "%s", u.symbol(depth))
	}
	step := nice(span / float64(n))
	per := unit.Length(float64(s.to-s.from) / span)
	first := float64(int(u.in(s.from, depth)/step)) * step
	for d := first; d <= u.in(s.to, depth)+step/100; d += step {
		at := unit.Length(d) * per
		if at < s.from {
			continue
		}
		s.line(s.left-6, s.y(at), s.left-2, s.y(at), "tick")
		s.text(s.left-9, s.y(at)+3.5, "end", "num", "%.0f", d)
	}
}

// compartments draws what stands where, and returns where it ends at the right.
func (s *strip) compartments(plan *sequence.Plan, l lanes, i int, names bool) float64 {
	rings := len(l.rings)
	middle := s.middle(l)
	column := func(c *sequence.Compartment, x, wide float64) {
		if c.BottomMD <= s.from || c.TopMD >= s.to {
			return
		}
		top := c.TopMD
		for _, layer := range fillOf(plan, c, i) {
			if y1, y2 := s.y(top), s.y(layer.ToMD); y2 > y1 {
				s.box(x, y1, wide, y2-y1, fmt.Sprintf("fluid f%d", slices.Index(s.fluids, layer.Fluid)%8))
			}
			top = layer.ToMD
		}
		s.box(x, s.y(c.TopMD), wide, s.y(c.BottomMD)-s.y(c.TopMD), "wall")
	}
	for r, ring := range l.rings {
		for _, c := range ring {
			wide := s.ring
			out := s.half + float64(r)*s.ring
			if r == 0 && plan.OuterString != nil { // it goes on below the string in it
				column(c, middle-out-wide, 2*(out+wide))
				continue
			}
			column(c, middle-out-wide, wide)
			column(c, middle+out, wide)
		}
	}
	column(l.middle, middle-s.half, 2*s.half)
	out := s.half + float64(rings)*s.ring
	for _, c := range l.faces {
		column(c, middle-out-s.face, s.face)
		column(c, middle+out, s.face)
	}
	right := middle + out + s.face
	s.strings(plan, l)
	if !names {
		return right
	}
	for n, c := range l.control {
		x := right + 6 + float64(n)*5
		s.line(x, s.y(c.TopMD), x, s.y(c.BottomMD), fmt.Sprintf("control c%d", n%4))
	}
	if len(l.control) > 0 {
		right += 6 + 5*float64(len(l.control))
	}
	return right
}

// strings draws the walls of two strings, one in the other.
func (s *strip) strings(plan *sequence.Plan, l lanes) {
	pipe := func(x *sequence.String, right float64) {
		top, end := s.y(x.HangerMD), s.y(x.Sections[len(x.Sections)-1].BottomMD)
		s.add(`<path d="M%.1f %.1fV%.1fM%.1f %.1fV%.1f" class="pipe"/>`, right, top, end, 2*s.middle(l)-right, top, end)
	}
	if plan.OuterString != nil {
		pipe(plan.String, s.middle(l)+s.half)
		pipe(plan.OuterString, s.outer(plan, l))
	}
}

// outer is where the wall of the outer string stands, right of the middle.
func (s *strip) outer(plan *sequence.Plan, l lanes) float64 {
	o := plan.OuterString
	return s.edge(l, o.Inside, o.Around[0])
}

// middle of the well.
func (s *strip) middle(l lanes) float64 {
	return s.left + s.face + float64(len(l.rings))*s.ring + s.half
}

// edge is where the boundary between two compartments stands, right of the middle.
func (s *strip) edge(l lanes, a, b string) float64 {
	middle := s.middle(l)
	lane := func(name string) int {
		if l.middle.Name == name {
			return 0
		}
		for r, ring := range l.rings {
			if slices.ContainsFunc(ring, func(c *sequence.Compartment) bool { return c.Name == name }) {
				return r + 1
			}
		}
		return len(l.rings) + 1
	}
	k := min(lane(a), lane(b))
	if lane(a) == lane(b) { // one above the other
		return middle + s.half + (float64(k)-0.5)*s.ring
	}
	return middle + s.half + float64(k)*s.ring
}

// devices draws every device by its sign, and names them at the right.
func (s *strip) devices(w *work, l lanes, i int, right float64) {
	all := w.unsure(conditions(w.plan, w.programme, i), i)
	ports := map[string]sequence.Port{}
	for _, p := range w.plan.Ports {
		ports[p.Name] = p
	}
	var at []float64
	for _, c := range all {
		at = append(at, s.y(c.depth))
	}
	const letter = 6.9 // room for one, in bold
	labels := spread(at, 17, s.top+4, s.top+s.high)
	for n, c := range all {
		x := s.middle(l) - s.half // on the string
		for _, d := range w.plan.Devices {
			if d.Name != c.device {
				continue
			}
			if d.On == sequence.OnOuterString {
				x = 2*s.middle(l) - s.outer(w.plan, l)
			}
			for _, a := range d.Actions {
				if a.Releases {
					break // it stands in the string, whatever it lays open
				}
				for _, name := range append(slices.Clone(a.Opens), a.Closes...) {
					x = s.edge(l, ports[name].Joins[0], ports[name].Joins[1])
				}
			}
		}
		s.sign(c, x, at[n])
		lx := right + 16
		s.line(x+7, at[n], lx-8, labels[n], "leader")
		class := "name"
		if c.changed {
			class = "name changed"
		}
		name := c.device
		switch {
		case !s.small:
			name = w.read.of(c.depth) + " " + name
		case c.depth < s.from:
			name += ", above"
		}
		s.wide = max(s.wide, lx+letter*float64(utf8.RuneCountInString(name+": "+c.word)))
		s.add(`<text x="%.1f" y="%.1f" class="%s">%s: <tspan class="state %s">%s</tspan></text>`, lx, labels[n]+4, class,
			html.EscapeString(name), c.sign, html.EscapeString(c.word))
	}
}

// sign draws a device: open is a ring, shut a full square, set a wedge on both
// sides, parted a cross, and what isn't certain a question mark.
func (s *strip) sign(c condition, x, y float64) {
	switch c.sign {
	case isOpen:
		s.add(`<circle cx="%.1f" cy="%.1f" r="5" class="sign open"/>`, x, y)
	case isShut:
		s.box(x-5, y-5, 10, 10, "sign shut")
	case isSet:
		s.add(`<path d="M%.1f %.1f l9 -6 v12 z M%.1f %.1f l-9 -6 v12 z" class="sign set"/>`, x, y, x, y)
	case isParted:
		s.add(`<path d="M%.1f %.1f l10 10 m0 -10 l-10 10" class="sign parted"/>`, x-5, y-5)
	case isUnsure:
		s.add(`<circle cx="%.1f" cy="%.1f" r="7" class="sign unsure"/>`, x, y)
		s.text(x, y+4, "middle", "question", "?")
	default:
		s.add(`<path d="M%.1f %.1f l9 -6 v12 z M%.1f %.1f l-9 -6 v12 z" class="sign idle"/>`, x, y, x, y)
	}
}

// nice is the next of 1, 2, 5 times a power of ten from x on.
func nice(x float64) float64 {
	p := 1.0
	for p < x {
		p *= 10
	}
	for p > x {
		p /= 10
	}
	for _, k := range []float64{1, 2, 5, 10} {
		if k*p >= x {
			return k * p
		}
	}
	return 10 * p
}
