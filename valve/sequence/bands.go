package sequence

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
)

// uncertain is one quantity of a plan that may have a tolerance.
type uncertain struct {
	path, name               string
	least, nominal, greatest float64 // SI
	set                      func(float64)
	text                     func(float64) string // for a person
	exact                    func(float64) string // without loss
}

func of[Q unit.Scalar](path, name string, b *unit.Band[Q]) uncertain {
	return uncertain{path: path, name: name, least: float64(b.Least), nominal: float64(b.Nominal), greatest: float64(b.Greatest),
		set:   func(x float64) { *b = unit.Exactly(Q(x)) },
		text:  func(x float64) string { return Q(x).Rounded(digits) },
		exact: func(x float64) string { return unit.Exactly(Q(x)).String() },
	}
}

// uncertainties lists every quantity of a plan that may have a tolerance, in an
// order that the lists of the file do not matter for: the path names things by
// their names.
func uncertainties(p *Plan) []uncertain {
	var all []uncertain
	add := func(u uncertain) { all = append(all, u) }
	for i := range p.Fluids {
		f := &p.Fluids[i]
		add(of("fluids."+f.Name+".density", "density of "+f.Name, &f.Density))
	}
	for i := range p.Formations {
		f := &p.Formations[i]
		add(of("formations."+f.Name+".pressure", "pressure of "+f.Name, &f.Pressure))
		add(of("formations."+f.Name+".fracture", "fracture pressure of "+f.Name, &f.Fracture))
	}
	for i := range p.Compartments {
		c := &p.Compartments[i]
		add(of("compartments."+c.Name+".trapped", "pressure trapped in "+c.Name, &c.Trapped))
	}
	for i := range p.Ratings {
		r := &p.Ratings[i]
		add(of("ratings."+r.Name+".burst", r.Name+": strength inside", &r.Burst))
		add(of("ratings."+r.Name+".collapse", r.Name+": strength outside", &r.Collapse))
	}
	for _, name := range slices.Sorted(maps.Keys(p.Well.Errors)) {
		b := p.Well.Errors[name]
		u := of("well.temperature_errors."+name, "error of temperature "+name, &b)
		u.set = func(x float64) { p.Well.Errors[name] = unit.Exactly(unit.TemperatureDifference(x)) }
		add(u)
	}
	for i := range p.Devices {
		d := &p.Devices[i]
		add(of("devices."+d.Name+".depth_error", "error of the depth of "+d.Name, &d.Error))
		for k := range d.Actions {
			a := &d.Actions[k]
			for n, c := range a.conditions() {
				path, name := a.listed(fmt.Sprintf("devices.%s.actions.%s", d.Name, a.Name), n), d.Name+": "+a.Name
				if len(a.conditions()) > 1 {
					name += fmt.Sprintf(", condition %d", n+1)
				}
				if c.Areas != nil {
					add(of(path+".areas.spring", name+", spring", &c.Areas.Spring))
					add(of(path+".areas.friction", name+", friction", &c.Areas.Friction))
					continue
				}
				row := a.triggers(n)
				for t := range row {
					of := name
					if len(row) > 1 {
						of += fmt.Sprintf(", trigger %d", t+1)
					}
					all = append(all, row[t].uncertain(fmt.Sprintf("%s.triggers[%d]", path, t), of, a.Axial)...)
				}
			}
		}
	}
	for i := range p.Steps {
		for k := range p.Steps[i].Tests {
			all = append(all, p.Steps[i].Tests[k].uncertain(fmt.Sprintf("steps.%s.tests[%d]", p.Steps[i].Name, k))...)
		}
	}
	for _, x := range p.strings() {
		all = append(all, x.uncertain()...)
	}
	p.Begin.stated(func(path, name string, s *Stated) {
		if s != nil {
			add(of(path, name, &s.Pressure))
		}
	})
	p.Begin.levels(func(path, name string, s *StatedDepth) {
		if s != nil && s.Lacks == nil {
			add(of(path, name, &s.Depth))
		}
	})
	add(of("rules.gauge", "error of the gauges", &p.Rules.Gauge))
	return all
}

func (t *Trigger) uncertain(path, name string, axial bool) []uncertain {
	var all []uncertain
	switch {
	case t.Pins != nil:
		f, err := t.Pins.force()
		if err != nil {
			return nil
		}
		u := of(path+".pins", name, &f)
		count := t.Pins.Count
		pins := t.Pins
		u.set = func(x float64) {
			q := *pins
			q.Strength, q.Tolerance = unit.Force(x/float64(count)), 0
			t.Pins = &q
		}
		u.text = func(x float64) string {
			if !axial {
				return unit.Pressure(x / float64(pins.Area)).Rounded(digits)
			}
			return unit.Force(x).Rounded(digits)
		}
		all = append(all, u)
	case axial:
		all = append(all, of(path+".tension", name, &t.Tension))
	default:
		all = append(all, of(path+".threshold", name, &t.Threshold))
	}
	if t.Count > 1 {
		all = append(all, of(path+".rearm", name+", re-arming", &t.Rearm))
	}
	return all
}

// Choice is one value of an uncertain quantity.
type Choice struct {
	Path  string `json:"path"`  // of the plan's field
	Name  string `json:"name"`  // for a person
	Value string `json:"value"` // for a person, such as "1290 psi"
	Exact string `json:"exact"` // the same without loss; it reads as the plan's own text does

	si float64
}

// At is the plan with the tolerances of some quantities taken away: each has just
// the chosen value. Paths that the plan doesn't have are an error. Of a plan with an
// assembly it is the one that follows from it.
//
//	value = middle + e·half, e from −1 to 1
//
// Source: definition of a band.
func (p *Plan) At(choices []Choice) (*Plan, error) {
	q, err := p.Derive()
	if err != nil {
		return nil, err
	}
	q = q.modelled()
	byPath := map[string]uncertain{}
	for _, u := range uncertainties(q) {
		byPath[u.path] = u
	}
	for _, c := range choices {
		u, ok := byPath[c.Path]
		if !ok {
			if isShare(c.Path) {
				q.shares = append(q.shares, c)
				continue
			}
			return nil, fmt.Errorf("sequence: the plan has no quantity %q with a tolerance", c.Path)
		}
		off := 1e-9 * max(math.Abs(u.least), math.Abs(u.greatest), u.greatest-u.least)
		if math.IsNaN(c.si) || c.si < u.least-off || c.si > u.greatest+off {
			return nil, fmt.Errorf("sequence: %s is %s; its band is from %s to %s", c.Path, u.text(c.si), u.text(u.least), u.text(u.greatest))
		}
		u.set(min(max(c.si, u.least), u.greatest))
	}
	return q, nil
}
