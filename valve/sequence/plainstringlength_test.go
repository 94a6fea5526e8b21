package sequence_test

import (
	"cmp"
	"math"
	"slices"

	"completion.example/valve/sequence"
)

// plainElement is a short length of pipe: wall force at its ends with nothing held,
// pressures there, and how much longer it is than unloaded, but for its force.
type plainElement struct {
	pipe           plainPipe
	top, bottom    float64
	upper, lower   float64 // wall force, lbf
	in, out        [2]float64
	swells         float64 // in: pressure and heat
	compliance     float64 // in/lbf
	upperE, lowerE float64 // effective
}

// pieces cuts the string into elements, by piece between marks, with no force yet.
func (s *plainString) pieces() [][]plainElement {
	end := s.pipes[len(s.pipes)-1].bottom
	all := make([][]plainElement, len(s.marks)+1)
	from := s.pipes[0].top
	for k := range all {
		to := end
		if k < len(s.marks) {
			to = s.marks[k].depth
		}
		cuts := []float64{from, to}
		for z := math.Ceil(from/200) * 200; z < to; z += 200 {
			cuts = append(cuts, z)
		}
		for _, p := range s.pipes {
			cuts = append(cuts, p.bottom)
		}
		for _, i := range []int{s.inside, s.around} {
			for _, l := range s.s.layers[i] {
				cuts = append(cuts, l.bottom)
			}
		}
		slices.Sort(cuts)
		last := from
		for _, z := range slices.Compact(cuts) {
			if z <= last || z > to {
				continue
			}
			e := plainElement{pipe: s.pipeAt(z), top: last, bottom: z}
			e.in = [2]float64{s.s.at(s.inside, last), s.s.at(s.inside, z)}
			e.out = [2]float64{s.outside(k, last), s.outside(k, z)}
			p := e.pipe
			long, steel := 12*(z-last), p.outer()-p.inner()
			e.compliance = long / (plainYoung * steel)
			mean := (e.in[0]+e.in[1])/2*p.inner() - (e.out[0]+e.out[1])/2*p.outer()
			e.swells = -2*plainPoisson*mean*e.compliance + plainSteel*long*(s.temperature(last)+s.temperature(z))/2
			all[k] = append(all[k], e)
			last = z
		}
		from = to
	}
	return all
}

// temperature is that of the well, in degF, of two points.
func (s *plainString) temperature(depth float64) float64 {
	name := cmp.Or(s.s.warm, sequence.Undisturbed)
	own := s.plan.String
	if s.on == sequence.OnOuterString {
		own = s.plan.OuterString
	}
	name = cmp.Or(own.Temperatures[name], name)
	t := s.plan.Well.Temperatures[name]
	f := (depth - t[0].TVD.In(foot)) / (t[1].TVD - t[0].TVD).In(foot)
	return t[0].Temperature.Fahrenheit()*(1-f) + t[1].Temperature.Fahrenheit()*f
}

// press is a pressure just above or below a mark.
func (s *plainString) press(k int, below bool) (in, out float64) {
	piece := k
	if below {
		piece++
	}
	return s.s.at(s.inside, s.marks[k].depth), s.outside(piece, s.marks[k].depth)
}

// effective is wall force less pi·Ai and plus po·Ao.
func effectiveOf(p plainPipe, wall, in, out float64) float64 {
	return wall - in*p.inner() + out*p.outer()
}

// march gives every element its wall forces from a wall force just above the marks at
// its lower end.
func (s *plainString) march(piece []plainElement, wall float64) float64 {
	for i := len(piece) - 1; i >= 0; i-- {
		e := &piece[i]
		if i+1 < len(piece) && piece[i+1].pipe != e.pipe { // pressures on a shoulder
			b := piece[i+1].pipe
			wall += e.in[1]*(e.pipe.inner()-b.inner()) - e.out[1]*(e.pipe.outer()-b.outer())
		}
		e.lower = wall
		wall += e.pipe.weight * (e.bottom - e.top)
		e.upper = wall
		e.lowerE, e.upperE = effectiveOf(e.pipe, e.lower, e.in[1], e.out[1]), effectiveOf(e.pipe, e.upper, e.in[0], e.out[0])
	}
	return wall
}

// length of a piece with a force more all along it: pulled, swollen, and shorter by the
// helix that it lies in where it is compressed, r²·F/(4·E·I) of its length.
func (s *plainString) length(piece []plainElement, more float64) float64 {
	sum := 0.0
	for i := range piece {
		e := &piece[i]
		sum += e.swells + e.compliance*((e.upper+e.lower)/2+more)
		a, b := -(e.upperE + more), -(e.lowerE + more) // compressions
		if a <= 0 && b <= 0 {
			continue
		}
		squeezed := (a + b) / 2
		if a < 0 {
			squeezed = b * b / (b - a) / 2
		} else if b < 0 {
			squeezed = a * a / (a - b) / 2
		}
		p := e.pipe
		r := (p.hole - p.od) / 2
		i := math.Pi / 64 * (math.Pow(p.od, 4) - math.Pow(p.id, 4))
		sum -= 12 * (e.bottom - e.top) * r * r / (4 * plainYoung * i) * squeezed
	}
	return sum
}
