package movement

import (
	"math"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// point is a node of the string.
type point struct {
	md, tvd float64
	sin     float64 // of the inclination
	section int
}

// element is what lies between node i and the next. Between two sections it has
// no length.
type element struct {
	section      int
	length, drop float64 // along the hole and vertical
	perDrop      float64 // from a change of pressure to a density; zero where the drop is next to nothing
	build, turn  float64
	curvature    float64 // of the hole: build and turn together
	upright      bool    // vertical and straight: no load too small to buckle in
}

// line is a string laid into its hole: what doesn't depend on the load.
type line struct {
	sections    []StringSection
	bars        []bar
	points      []point
	elements    []element // one less than points
	steps       []int     // elements of no length, one for each break
	ratio       float64   // of helical to sinusoidal onset
	design      tubular.DesignFactors
	bodies      []tubular.Body // by section
	rated       []bool
	connections []tubular.Connection // by section
	connected   []bool               // something is known of them
}

// layOut fills in points and elements.
//
// breaks are measured depths, sorted, at which something steps within a section:
// each has a node above and one below, with an element of no length between. They
// lie below the top; one at the end of a section belongs to that section. It
// returns the numbers of those elements.
func (l *line) layOut(path *hydrostatics.Path, spacing float64, breaks []float64) ([]int, error) {
	steps := make([]int, 0, len(breaks))
	stations := path.Stations()
	var last hydrostatics.Position
	for k := range l.bars {
		b := &l.bars[k]
		marks := []float64{b.top}
		for _, s := range stations {
			if md := float64(s.MD); md > b.top && md < b.bottom {
				marks = append(marks, md)
			}
		}
		for _, md := range breaks {
			if md > b.top && md < b.bottom {
				marks = append(marks, md)
			}
		}
		marks = append(marks, b.bottom)
		slices.Sort(marks)
		marks = slices.Compact(marks)
		for m := range len(marks) - 1 {
			n := max(1, int(math.Ceil((marks[m+1]-marks[m])/spacing-1e-9)))
			first := 0
			if m > 0 {
				first = 1 // the mark itself is there already
			}
			for i := first; i <= n; i++ {
				md := marks[m+1]
				if i < n {
					md = marks[m] + (marks[m+1]-marks[m])*float64(i)/float64(n)
				}
				at, err := path.At(unit.Length(md))
				if err != nil {
					return nil, fault.Join(scope, fault.At("Path", err))
				}
				if len(l.points) > 0 {
					l.elements = append(l.elements, between(k, last, at))
				}
				l.points = append(l.points, point{md: md, tvd: float64(at.TVD), sin: math.Sin(float64(at.Inclination)), section: k})
				last = at
				for len(steps) < len(breaks) && breaks[len(steps)] == md && md > b.top {
					steps = append(steps, len(l.elements))
					l.elements = append(l.elements, between(k, at, at))
					l.points = append(l.points, l.points[len(l.points)-1])
				}
			}
		}
	}
	return steps, nil
}

// between is the element between two positions. Its bend β splits into build
// and turn by sin²(β/2) = sin²(Δθ/2) + sinθ1*sinθ2*sin²(Δφ/2).
func between(section int, a, b hydrostatics.Position) element {
	e := element{section: section, length: float64(b.MD - a.MD), drop: float64(b.TVD - a.TVD)}
	if e.length > 0 {
		e.build = float64(b.Inclination-a.Inclination) / e.length
		sines := math.Sin(float64(a.Inclination)) * math.Sin(float64(b.Inclination))
		e.turn = 2 * math.Asin(math.Sqrt(max(0, sines))*math.Abs(math.Sin(float64(b.Azimuth-a.Azimuth)/2))) / e.length
		e.curvature = math.Hypot(e.build, e.turn)
		e.upright = e.curvature == 0 && sines == 0
	}
	if math.Abs(e.drop) >= leastDrop {
		e.perDrop = 1 / (gravity * e.drop)
	}
	return e
}
