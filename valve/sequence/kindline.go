package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve/controlline"
)

// LineModel is a compartment that is a control line, as package valve/controlline has it:
// its capacity, its bore between its wall, and, where its yield strength is given, what it
// is rated for.
type LineModel struct {
	Size   unit.Length   `json:"size,omitzero"` // outside diameter
	Wall   unit.Length   `json:"wall,omitzero"`
	Yield  unit.Pressure `json:"yield,omitzero"`  // of its metal; zero: it isn't rated
	Around string        `json:"around,omitzero"` // with a yield strength: the compartment that it runs in
	Factor float64       `json:"factor,omitzero"` // design factor of its ratings; 1 where left out
}

func (k *LineModel) model() controlline.Line {
	return controlline.Line{OD: k.Size, Wall: k.Wall, Yield: k.Yield}
}

// expand writes a compartment's line out: its capacity and bore, and its rating.
func (k *LineModel) expand(q *Plan, c *Compartment) {
	l := k.model()
	c.Kind, c.Capacity = nil, l.Capacity()
	c.Bores = []Bore{{To: c.BottomMD, Outer: l.ID(), OuterWall: l.Wall}}
	if k.Yield == 0 {
		return
	}
	r, err := l.Ratings()
	if err != nil { // which validation tells
		return
	}
	q.Ratings = append(q.Ratings, Rating{Name: c.Name, Note: r.Beyond, Inside: c.Name, Outside: k.Around, FromMD: c.TopMD, ToMD: c.BottomMD,
		Burst: unit.Exactly(r.Working), Collapse: unit.Exactly(r.Collapse), Factor: k.Factor})
}

// lines reports what is wrong with control lines.
func (p *Plan) lines() error {
	var faults []error
	for i := range p.Compartments {
		c := &p.Compartments[i]
		k := c.Kind
		if k == nil {
			continue
		}
		path := fmt.Sprintf("compartments[%d].kind", i)
		bad := func(key, format string, args ...any) {
			faults = append(faults, fault.New(path+key, format, args...))
		}
		if !(k.Size > 0 && k.Size < 10*unit.Inch && k.Wall > 0 && 2*k.Wall < k.Size) {
			bad("", "has size %v and wall %v; two walls must be less than the size", k.Size, k.Wall)
		} else if k.Yield != 0 {
			if _, err := k.model().Ratings(); err != nil {
				bad(".yield", "gives no ratings: %v", err)
			}
		}
		if c.Capacity != 0 || len(c.Bores) > 0 {
			bad("", "stands beside a capacity or bores; those follow from it")
		}
		if (k.Yield != 0) != (k.Around != "") {
			bad(".around", "belongs to a yield strength, and a yield strength to it: its ratings are held against what it runs in")
		}
		if k.Yield == 0 && k.Factor != 0 {
			bad(".factor", "belongs to a yield strength")
		}
		if slices.ContainsFunc(p.Ratings, func(r Rating) bool { return r.Name == c.Name }) && k.Yield != 0 {
			bad(".yield", "makes a rating %q, and the plan has one of that name", c.Name)
		}
	}
	return fault.Join("", faults...)
}
