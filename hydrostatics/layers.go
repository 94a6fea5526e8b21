package hydrostatics

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// MeasuredLayer is a layer by measured depth; a Layer is one by true vertical
// depth.
type MeasuredLayer struct {
	Fluid    Fluid       `json:"fluid"`
	TopMD    unit.Length `json:"top_md"`
	BottomMD unit.Length `json:"bottom_md"`
}

// LayersAlong turns layers by measured depth along a path into the layers by
// true vertical depth that a column takes.
//
// Where the hole rises a fluid may stand above and below another at one TVD; no
// column by TVD describes that, and it is an error. A rising hole filled with
// one fluid is fine: every fluid but the deepest must lie where the hole
// doesn't rise past its ends again.
//
//	TVD = Path.TVD(MD) of each end
//
// Source: Path.
func LayersAlong(p *Path, layers []MeasuredLayer) ([]Layer, error) {
	f := fault.In(scope)
	turned := make([]Layer, len(layers))
	for i, l := range layers {
		at := func(field string) string { return fault.Index("layers", i) + field }
		top, err1 := p.TVD(l.TopMD)
		bottom, err2 := p.TVD(l.BottomMD)
		if err := fault.Join("", fault.At("TopMD", err1), fault.At("BottomMD", err2)); err != nil {
			f.At(at(""), err)
			continue
		}
		if !(l.BottomMD > l.TopMD) {
			f.New(at(".BottomMD"), "is %v; must be above its top, %v", l.BottomMD, l.TopMD)
		}
		if i > 0 && math.Abs(float64(l.TopMD-layers[i-1].BottomMD)) > slackDepth {
			f.New(at(".TopMD"), "is %v; must be the bottom of the layer above, %v", l.TopMD, layers[i-1].BottomMD)
		}
		high, low := p.extent(l.TopMD, l.BottomMD)
		last := i == len(layers)-1
		if low < top-slackDepth || !last && high > bottom+slackDepth {
			f.New(at(""), "between MD %s and %s the hole reaches TVD %s to %s; must stay within the layer's ends, from TVD %s to %s",
				l.TopMD.Rounded(7), l.BottomMD.Rounded(7), low.Rounded(7), high.Rounded(7), top.Rounded(7), bottom.Rounded(7))
		}
		turned[i] = Layer{l.Fluid, top, high}
	}
	return turned, f.Err()
}

// extent returns the greatest and the least TVD between two depths on the path.
func (p *Path) extent(from, to unit.Length) (high, low unit.Length) {
	a, _ := p.TVD(from)
	b, _ := p.TVD(to)
	high, low = max(a, b), min(a, b)
	for i := range len(p.nodes) - 1 {
		n, next := &p.nodes[i], &p.nodes[i+1]
		if next.md <= float64(from) || n.md >= float64(to) {
			continue
		}
		for _, md := range [...]float64{n.md, n.md + between(n, next).turn(), next.md} {
			if md > float64(from) && md < float64(to) {
				h, _ := p.TVD(unit.Length(md))
				high, low = max(high, h), min(low, h)
			}
		}
	}
	return high, low
}
