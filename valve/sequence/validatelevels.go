package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
)

// gasOnTop tells whether gas stands at the top of a compartment.
func (p *Plan) gasOnTop(name string, layers map[string][]Layer) bool {
	c := p.compartment(name)
	if c == nil {
		return false
	}
	top := c.Fluid
	if len(c.Layers) > 0 {
		top = c.Layers[0].Fluid
	}
	if l := layers[name]; len(l) > 0 {
		top = l[0].Fluid
	}
	return slices.ContainsFunc(p.Fluids, func(f Fluid) bool { return f.Name == top && f.Kind.Gas() })
}

// levels checks where gas ends and down to where columns have fallen.
func (v *validation) levels(path string, all map[string]*StatedDepth, layers map[string][]Layer) {
	for _, name := range sortedKeys(all) {
		at, s := path+"."+name, all[name]
		if !v.compartment(at, name) {
			continue
		}
		if s == nil {
			v.fault(at, "is null; write its depth")
			continue
		}
		gas := v.plan.gasOnTop(name, layers)
		if s.Lacks != nil {
			if gas || s.Depth != (unit.Band[unit.Length]{}) || len(s.With) > 0 {
				v.fault(at+".lacks", "belongs to a column that has fallen, in place of a depth")
			}
			continue
		}
		c := v.plan.compartment(name)
		v.faultIf(at+".depth", s.Depth.Validate())
		if s.Depth.Least < c.TopMD || !(s.Depth.Greatest < c.BottomMD) {
			v.fault(at+".depth", "is %v; must be from %v to above %v", s.Depth, c.TopMD, c.BottomMD)
		}
		v.leans(at, s.leans())
		own := c.Layers
		if l := layers[name]; len(l) > 0 {
			own = l
		}
		if gas && (len(own) < 2 || s.Depth.Greatest > own[1].ToMD) {
			v.fault(at+".depth", "is %v; there gas ends, so that a liquid must stand under it", s.Depth)
		}
	}
}

func (v *validation) leans(path string, all []lean) {
	known := uncertainties(v.plan)
	for k, l := range all {
		at := fmt.Sprintf("%s.with[%d]", path, k)
		if !finite(l.change) {
			v.fault(at+".change", "is %v; must be finite", l.change)
		}
		i := slices.IndexFunc(known, func(u uncertain) bool { return u.path == l.quantity })
		if i < 0 {
			v.fault(at+".quantity", "the plan has no quantity %q with a tolerance; take the line out", l.quantity)
			continue
		}
		from, e1 := v.plan.size(known[i], l.from)
		to, e2 := v.plan.size(known[i], l.to)
		v.faultIf(at+".from", e1)
		v.faultIf(at+".to", e2)
		if e1 == nil && e2 == nil && !(from != to) {
			v.fault(at+".to", "is %s, as from; they must differ", l.to)
		}
	}
}
