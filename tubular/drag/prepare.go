package drag

import (
	"math"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
)

// Prepared is a string laid into its well: what doesn't depend on the load is
// computed once. It never changes, so it is safe for concurrent use.
type Prepared struct {
	elements []element           // from the lower end up
	climbs   []climb             // the same, as the march needs them
	depths   []float64           // of the nodes, from the lower end up
	lies     []movement.Confined // of the elements
}

// element is a length of string between two nodes, in SI.
type element struct {
	length  float64
	weight  float64 // effective, along the string: w*Δtvd
	side    float64 // effective, across it: w*L*sinθ
	build   float64 // change of inclination, positive where it grows with depth
	turn    float64 // change of direction out of the plane
	μ       float64
	radius  float64 // of the pipe, for torque
	onset   float64 // compression at which it buckles
	section int
	zone    int
	drop    float64 // Δtvd
	lever   float64 // L*sinθ
}

// Prepare checks all inputs and lays the string into the well. Survey stations,
// ends of sections and ends of zones are nodes.
//
//	per element: weight, bend and contact of HookLoad's equations
//
// Errors: those of Validate; those of Path.At.
//
// Source: see HookLoad.
func (s String) Prepare() (*Prepared, error) {
	if err := s.Validate(); err != nil {
		return nil, err
	}
	marks := s.marks()
	p := &Prepared{}
	spacing := float64(s.spacing())
	below, err := s.Path.At(s.BottomMD)
	if err != nil {
		return nil, err
	}
	p.depths = append(p.depths, float64(s.BottomMD))
	for i := len(marks) - 1; i > 0; i-- {
		top, bottom := marks[i-1], marks[i]
		n := max(1, int(math.Ceil((bottom-top)/spacing-1e-9)))
		for k := 1; k <= n; k++ {
			md := top
			if k < n {
				md = bottom - (bottom-top)*float64(k)/float64(n)
			}
			above, err := s.Path.At(unit.Length(md))
			if err != nil {
				return nil, err
			}
			e, lies := s.element(above, below)
			p.elements, p.lies = append(p.elements, e), append(p.lies, lies)
			p.depths = append(p.depths, md)
			below = above
		}
	}
	p.climb()
	return p, nil
}

// climb fills in what the march needs.
func (p *Prepared) climb() {
	p.climbs = make([]climb, len(p.elements))
	for i := range p.elements {
		e := &p.elements[i]
		below := p.elements[max(i-1, 0)].length
		p.climbs[i] = climb{weight: e.weight, side: e.μ * e.side, build: e.μ * e.build, turn: e.μ * e.turn, half: e.length / below / 2}
	}
}

// marks are the depths that must be nodes, from the top down.
func (s String) marks() []float64 {
	marks := []float64{0, float64(s.BottomMD)}
	end := s.BottomMD
	for i := len(s.Sections) - 1; i >= 0; i-- {
		end -= s.Sections[i].Length
		marks = append(marks, float64(end))
	}
	for _, z := range s.HoleSections {
		marks = append(marks, float64(z.BottomMD))
	}
	for _, st := range s.Path.Stations() {
		marks = append(marks, float64(st.MD))
	}
	marks = slices.DeleteFunc(marks, func(m float64) bool { return m < 0 || m > float64(s.BottomMD) })
	slices.Sort(marks)
	// Depths that differ by rounding alone are one.
	marks = slices.CompactFunc(marks, func(a, b float64) bool { return math.Abs(a-b) < 1e-9*float64(s.BottomMD) })
	marks[len(marks)-1] = float64(s.BottomMD)
	return marks
}

// element is the string between two positions.
func (s String) element(a, b hydrostatics.Position) (element, movement.Confined) {
	middle := (a.MD + b.MD) / 2
	section, number := s.sectionAt(middle), s.zoneNumber(middle)
	zone := s.HoleSections[number]
	pipe := s.Sections[section].Pipe
	w := pipe.BuoyedWeight(s.Inside, s.Outside)
	l := b.MD - a.MD
	sin1, sin2 := math.Sin(float64(a.Inclination)), math.Sin(float64(b.Inclination))
	e := element{
		length: float64(l), weight: float64(w) * float64(b.TVD-a.TVD), side: float64(w) * float64(l) * (sin1 + sin2) / 2,
		build: float64(b.Inclination - a.Inclination),
		turn:  2 * math.Asin(math.Sqrt(max(0, sin1*sin2))*math.Abs(math.Sin(float64(b.Azimuth-a.Azimuth)/2))),
		μ:     zone.Friction, radius: float64(pipe.OD) / 2, section: section, zone: number,
		drop: float64(b.TVD - a.TVD), lever: float64(l) * (sin1 + sin2) / 2,
	}
	lies := movement.Confined{
		Pipe: pipe, Hole: zone.Hole, Weight: w, Inclination: (a.Inclination + b.Inclination) / 2,
		Build: unit.Curvature(e.build / e.length), Turn: unit.Curvature(e.turn / e.length),
	}
	e.onset = onset(lies)
	return e, lies
}

// onset is the compression at which an element buckles. Near the vertical the side
// force says little: there the pipe's own weight keeps it from bending.
func onset(lies movement.Confined) float64 {
	if lies.Hole == lies.Pipe.OD {
		return math.Inf(1)
	}
	return float64(max(lies.Sinusoidal(), lies.VerticalSinusoidal()))
}

func (s String) sectionAt(md unit.Length) int {
	end := s.BottomMD
	for i := len(s.Sections) - 1; i > 0; i-- {
		if end -= s.Sections[i].Length; md >= end {
			return i
		}
	}
	return 0
}

func (s String) zoneAt(md unit.Length) HoleSection { return s.HoleSections[s.zoneNumber(md)] }

func (s String) zoneNumber(md unit.Length) int {
	for i, z := range s.HoleSections {
		if md <= z.BottomMD {
			return i
		}
	}
	return len(s.HoleSections) - 1
}
