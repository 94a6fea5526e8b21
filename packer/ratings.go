package packer

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Ratings are what a packer's parts bear, each by itself, from which an
// envelope can be built where its maker gives none. They are inputs, with
// whatever design factor the user has taken off them.
type Ratings struct {
	// Element: the differential it holds.
	FromBelow unit.Pressure `json:"from_below"`
	FromAbove unit.Pressure `json:"from_above"`

	// Mandrel, and what joins it to the tubing: pull and set-down of the tubing.
	Tension     unit.Force `json:"tension"`
	Compression unit.Force `json:"compression"`

	// Slips: the force of the whole packer on the casing, up and down.
	Up   unit.Force `json:"up"`
	Down unit.Force `json:"down"`

	// Area is what a differential pushes the packer on: of the bore of the
	// casing less the seal bore, or less what the tubing's own end force counts.
	Area unit.Area `json:"area"`

	// Limits are further ones, such as release pins.
	Limits []Limit `json:"limits"`
}

// Limit is a bound on axial load and differential together.
//
//	-AtLeast ≤ F + Δp Area ≤ AtMost
//
// F is the axial load, positive up. Both ends are positive numbers, one for each
// direction.
type Limit struct {
	Name    string     `json:"name"`
	Area    unit.Area  `json:"area"`
	AtMost  unit.Force `json:"at_most"`
	AtLeast unit.Force `json:"at_least"`
}

// Polygon builds an envelope from the ratings.
//
//	-FromAbove ≤ Δp ≤ FromBelow            element
//	-Compression ≤ F ≤ Tension             mandrel
//	-Down ≤ F + Δp A ≤ Up                  slips
//
// F is the axial load of the tubing, positive up, Δp the differential, positive
// from below, A the area. The limits are taken as independent of one another:
// where one part weakens another (an element that a turning mandrel drags, slips
// on worn casing) the envelope is smaller, and only a test shows it.
//
// Errors name every rating that isn't positive. Source: balance of the packer;
// API Spec 11D1 has the maker publish the result of such limits as its envelope.
func (r Ratings) Polygon() (Polygon, error) {
	if err := r.Validate(); err != nil {
		return Polygon{}, err
	}
	corners := []corner{
		{Load{-r.FromAbove, -r.Compression}, "mandrel in compression"},
		{Load{r.FromBelow, -r.Compression}, "element from below"},
		{Load{r.FromBelow, r.Tension}, "mandrel in tension"},
		{Load{-r.FromAbove, r.Tension}, "element from above"},
	}
	cuts := append([]Limit{{"slips", r.Area, r.Up, r.Down}}, r.Limits...)
	for _, c := range cuts {
		corners = clip(corners, c.Area, 1, c.AtMost, c.Name+" up")
		corners = clip(corners, c.Area, -1, c.AtLeast, c.Name+" down")
	}
	p := Polygon{}
	near := func(a, b Load) bool {
		return math.Abs(float64(a.Differential-b.Differential)) <= cornerWidth*float64(r.FromBelow+r.FromAbove) &&
			math.Abs(float64(a.Axial-b.Axial)) <= cornerWidth*float64(r.Tension+r.Compression)
	}
	for i, c := range corners {
		// A limit that only grazes a corner leaves an edge of no length.
		if near(c.Load, corners[(i+1)%len(corners)].Load) {
			continue
		}
		// A corner on an axis, but for rounding, is on it.
		if math.Abs(float64(c.Axial)) < 1e-12*float64(r.Tension+r.Compression) {
			c.Axial = 0
		}
		if math.Abs(float64(c.Differential)) < 1e-12*float64(r.FromBelow+r.FromAbove) {
			c.Differential = 0
		}
		p.Vertices = append(p.Vertices, c.Load)
		p.Limits = append(p.Limits, c.limit)
	}
	if _, err := p.Envelope(); err != nil {
		return Polygon{}, fmt.Errorf("packer: ratings too far apart to make an envelope: %w", err)
	}
	return p, nil
}

// cornerWidth is how near two corners are one, as a share of the span.
const cornerWidth = 1e-8

// corner is a vertex with the limit of the edge that leaves it.
type corner struct {
	Load
	limit string
}

// clip keeps of a polygon what satisfies sign·(F + Δp A) ≤ limit. The rest point
// is always inside, so something is always left.
//
// Source: Sutherland and Hodgman 1974, Communications of the ACM 17(1).
func clip(corners []corner, area unit.Area, sign float64, limit unit.Force, name string) []corner {
	over := func(l Load) float64 {
		return sign*(float64(l.Axial)+float64(l.Differential)*float64(area)) - float64(limit)
	}
	var kept []corner
	for i, c := range corners {
		next := corners[(i+1)%len(corners)]
		a, b := over(c.Load), over(next.Load)
		cross := func() Load {
			t := a / (a - b)
			return Load{
				c.Differential + unit.Pressure(t)*(next.Differential-c.Differential),
				c.Axial + unit.Force(t)*(next.Axial-c.Axial),
			}
		}
		switch {
		case a <= 0 && b <= 0:
			kept = append(kept, c)
		case a < 0: // leaves here; the new edge begins at the crossing
			kept = append(kept, c, corner{cross(), name})
		case a == 0: // leaves from the corner itself
			kept = append(kept, corner{c.Load, name})
		case b < 0: // comes back in
			kept = append(kept, corner{cross(), c.limit})
		}
	}
	return kept
}

// Validate reports everything that is wrong with r.
func (r Ratings) Validate() error {
	f := fault.In(scope)
	f.Add(fault.Above("FromBelow", r.FromBelow, 0))
	f.Add(fault.Above("FromAbove", r.FromAbove, 0))
	f.Add(fault.Above("Tension", r.Tension, 0))
	f.Add(fault.Above("Compression", r.Compression, 0))
	f.Add(fault.Above("Up", r.Up, 0))
	f.Add(fault.Above("Down", r.Down, 0))
	f.Add(fault.AtLeast("Area", r.Area, 0))
	for i, c := range r.Limits {
		field := fault.Index("Limits", i)
		if c.Name == "" {
			f.New(field+".Name", "is empty; must be a name")
		}
		f.Add(fault.Finite(field+".Area", c.Area))
		f.Add(fault.Above(field+".AtMost", c.AtMost, 0))
		f.Add(fault.Above(field+".AtLeast", c.AtLeast, 0))
	}
	return f.Err()
}

// Tests returns the differentials at which the packer can be tested from above
// and from below with an axial load on it, each with a share of the envelope
// kept in hand: 0.1 tests to 90 % of what is left. from above is given as a
// positive differential. It is an error if the axial load alone is outside.
//
//	Δp = (1 − in hand)·end of the chord
//
// Source: DifferentialAt.
func (e *Envelope) Tests(axial unit.Force, inHand float64) (fromAbove, fromBelow unit.Pressure, err error) {
	f := fault.In(scope)
	f.Add(fault.Finite("axial load", axial))
	f.Add(fault.Between("share in hand", inHand, 0, 1))
	if err := f.Err(); err != nil {
		return 0, 0, err
	}
	least, greatest, ok := e.DifferentialAt(axial)
	if !ok || least > 0 || greatest < 0 {
		return 0, 0, fmt.Errorf("packer: axial load %s is outside the envelope without any differential: it holds none", axial.Rounded(4))
	}
	k := unit.Pressure(1 - inHand)
	return -least * k, greatest * k, nil
}
