package hydrostatics

import (
	"math"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Station is one line of a directional survey.
type Station struct {
	MD          unit.Length `json:"md"`
	Inclination unit.Angle  `json:"inclination"` // from the vertical, 0 to 180°
	Azimuth     unit.Angle  `json:"azimuth"`     // from north towards east, −360° to 360°
}

// Position is a point of a well path.
type Position struct {
	MD             unit.Length    `json:"md"`
	TVD            unit.Length    `json:"tvd"`
	North          unit.Length    `json:"north"`
	East           unit.Length    `json:"east"`
	Inclination    unit.Angle     `json:"inclination"` // azimuth in 0 to 360°
	Azimuth        unit.Angle     `json:"azimuth"`
	DoglegSeverity unit.Curvature `json:"dogleg_severity"`
}

// Path is the path of a well through its survey stations by minimum curvature:
// each interval is an arc of a circle, tangent to the hole's direction at both
// stations. It is prepared once; looking up a depth then takes the logarithm
// of the number of stations. The zero value holds no depth; make one with
// NewPath or Vertical. A Path never changes, so it is safe for concurrent use.
type Path struct {
	nodes   []node
	falling bool // TVD never decreases with MD
}

// node is a station with its position and the arc that starts there.
type node struct {
	md                   float64
	inclination, azimuth unit.Angle // as surveyed
	pos                  vector     // north, east, TVD
	dir                  vector     // unit tangent
	xx                   float64    // of the arc to the next node: squared tangent of half its bend
}

func (n *node) station() Station { return Station{unit.Length(n.md), n.inclination, n.azimuth} }

func (n *node) survey(s Station) {
	n.md, n.inclination, n.azimuth = float64(s.MD), s.Inclination, s.Azimuth
	n.dir = direction(s.Inclination, s.Azimuth)
}

// NewPath prepares the path through survey stations. MD must rise from station
// to station. If the first station isn't at MD 0 the hole is taken to start
// vertical at MD 0.
//
// A bend of half a turn between two stations is an error: its plane isn't
// determined.
//
//	minimum curvature: each interval is an arc that both tangents touch
//
// Source: see Path.
func NewPath(stations []Station) (*Path, error) {
	if err := checkStations(stations); err != nil {
		return nil, err
	}
	implied := 0
	if stations[0].MD > 0 {
		implied = 1
	}
	p := &Path{nodes: make([]node, implied+len(stations)), falling: true}
	p.nodes[0].survey(Station{Azimuth: stations[0].Azimuth})
	for i, s := range stations {
		n := &p.nodes[implied+i]
		n.survey(s)
		// Between two tangents that don't rise, no tangent on the arc rises.
		p.falling = p.falling && n.dir.v >= 0
	}
	for i := range p.nodes[1:] {
		from, n := &p.nodes[i], &p.nodes[i+1]
		delta, xx := chord(n.md-from.md, from.dir, n.dir)
		if !(xx < halfTurn) {
			return nil, fault.NewIn(scope, "stations", "turn the hole by %v between MD %v and %v; must be less than half a turn: give a station between",
				unit.Angle(bend(xx)).Rounded(4), unit.Length(from.md), unit.Length(n.md))
		}
		from.xx = xx
		n.pos = from.pos.plus(delta)
	}
	return p, nil
}

// halfTurn is the squared tangent of half a bend that is within 1e-6 of π.
const halfTurn = 4e12

// Vertical returns the path of a vertical hole down to a depth.
func Vertical(depth unit.Length) (*Path, error) {
	if err := fault.Join(scope, fault.Above("depth", depth, 0)); err != nil {
		return nil, err
	}
	return NewPath([]Station{{}, {MD: depth}})
}

func checkStations(stations []Station) error {
	if len(stations) == 0 {
		return fault.NewIn(scope, "stations", "is empty; must be one station or more")
	}
	const (
		slack   = 1e-9 // rad: 360 deg as text may come an ulp above a full turn
		deepest = 1000 * unit.Kilometre
	)
	f := fault.In(scope)
	for i, s := range stations {
		at := func(field string) string { return fault.Index("stations", i) + field }
		if i == 0 {
			if !(s.MD >= 0 && s.MD <= deepest) {
				f.Add(fault.Between(at(".MD"), s.MD, 0, deepest))
			}
		} else if last := stations[i-1].MD; !(s.MD > last && s.MD <= deepest) {
			f.New(at(".MD"), "is %v; must be above the last station's %v and at most %v", s.MD, last, deepest)
		}
		if !(s.Inclination >= 0 && s.Inclination <= math.Pi+slack) {
			f.Add(fault.Between(at(".Inclination"), s.Inclination, 0, 180*unit.Degree))
		}
		if !(math.Abs(float64(s.Azimuth)) <= 2*math.Pi+slack) {
			f.Add(fault.Between(at(".Azimuth"), s.Azimuth, -360*unit.Degree, 360*unit.Degree))
		}
	}
	if len(stations) == 1 && stations[0].MD == 0 {
		f.New("stations", "end at MD 0 ft; must have a station below")
	}
	return f.Err()
}

// Stations returns the stations, with the one at surface that was implied.
func (p *Path) Stations() []Station {
	if p == nil || p.nodes == nil {
		return nil
	}
	stations := make([]Station, len(p.nodes))
	for i := range p.nodes {
		stations[i] = p.nodes[i].station()
	}
	return stations
}

// Positions returns the position of every station.
func (p *Path) Positions() []Position {
	if p == nil {
		return []Position{}
	}
	positions := make([]Position, len(p.nodes))
	for i := range p.nodes {
		positions[i] = p.on(max(i-1, 0), p.nodes[i].md)
	}
	return positions
}

// TotalDepth returns the MD of the last station.
func (p *Path) TotalDepth() unit.Length {
	if p == nil || len(p.nodes) == 0 {
		return 0
	}
	return unit.Length(p.nodes[len(p.nodes)-1].md)
}

// At returns the position at a measured depth, on the arc between stations.
// The dogleg severity is the arc's, at a station that of the arc above it, and
// so zero at the first.
// Outside the survey the error is ErrOutsidePath.
func (p *Path) At(md unit.Length) (Position, error) {
	i, err := p.interval(md)
	if err != nil {
		return Position{}, err
	}
	return p.on(i, float64(md)), nil
}

// TVD returns the true vertical depth at a measured depth; errors as At.
//
//	h = h1 + l·RF·(cos I1 + cos I2)/2
//
// Source: minimum curvature, see Path.
func (p *Path) TVD(md unit.Length) (unit.Length, error) {
	i, err := p.interval(md)
	if err != nil {
		return 0, err
	}
	pos, _ := p.arc(i).at(float64(md) - p.nodes[i].md)
	return unit.Length(p.nodes[i].pos.v + pos.v), nil
}

// interval finds the arc that holds md: the one that ends there at a station.
func (p *Path) interval(md unit.Length) (int, error) {
	if p == nil || len(p.nodes) < 2 {
		return 0, fault.NewIn(scope, "", "the path has no stations: %w", ErrOutsidePath)
	}
	first, last := p.nodes[0].md, p.nodes[len(p.nodes)-1].md
	if !(float64(md) >= first && float64(md) <= last) {
		return 0, fault.NewIn(scope, "MD", "is %s; must be from %s to %s: %w",
			md.Rounded(7), unit.Length(first).Rounded(7), unit.Length(last).Rounded(7), ErrOutsidePath)
	}
	i := sort.Search(len(p.nodes), func(i int) bool { return p.nodes[i].md >= float64(md) })
	return max(i-1, 0), nil
}

func (p *Path) on(i int, md float64) Position {
	from, to := &p.nodes[i], &p.nodes[i+1]
	at := Position{MD: unit.Length(md)}
	pos, dir := to.pos, to.dir
	if md != to.md { // at the station itself not its image through the arc
		delta, tangent := p.arc(i).at(md - from.md)
		pos, dir = from.pos.plus(delta), tangent
	}
	at.North, at.East, at.TVD = unit.Length(pos.n), unit.Length(pos.e), unit.Length(pos.v)
	at.Inclination, at.Azimuth = angles(dir)
	if md != p.nodes[0].md {
		at.DoglegSeverity = unit.Curvature(bend(from.xx) / (to.md - from.md))
	}
	return at
}

// Closure returns the horizontal distance from the wellhead and its azimuth.
func (at Position) Closure() (unit.Length, unit.Angle) {
	n, e := float64(at.North), float64(at.East)
	return unit.Length(math.Hypot(n, e)), unit.Angle(fullTurn(math.Atan2(e, n)))
}

// Section returns the vertical section: the horizontal displacement seen
// along an azimuth,
//
//	VS = N·cos A + E·sin A
//
// Range: any finite azimuth; NaN for an infinite one.
//
// Source: projection.
func (at Position) Section(azimuth unit.Angle) unit.Length {
	sin, cos := math.Sincos(float64(azimuth))
	return unit.Length(float64(at.North)*cos + float64(at.East)*sin)
}
