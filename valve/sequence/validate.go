package sequence

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular/catalogue"
)

// Validate reports every fault of a plan, each with its path in the file. A
// plan without faults can be walked.
func (p *Plan) Validate() error {
	if p == nil {
		return errNoPlan
	}
	_, err := p.compiled()
	return err
}

var errNoPlan = errors.New("sequence: there is no plan (nil)")

// validate reports the faults of a plan's parts.
func (p *Plan) validate(pipes catalogue.Catalogue) error {
	v := &validation{plan: p, pipes: pipes}
	v.size()
	if len(v.faults) > 0 {
		return errors.Join(v.faults...) // what is too much to walk is too much to look through
	}
	v.well()
	v.fluids()
	v.formations()
	v.compartments()
	v.ports()
	v.devices()
	v.string()
	v.holding()
	v.ratings()
	v.barriers()
	v.rules()
	v.begin()
	v.steps()
	return errors.Join(v.faults...)
}

// validation collects faults.
type validation struct {
	plan   *Plan
	pipes  catalogue.Catalogue
	faults []error
}

func (v *validation) fault(path, format string, args ...any) {
	v.faults = append(v.faults, fault.Fault{Path: path, Err: fmt.Errorf(format, args...)})
}

func (v *validation) faultIf(path string, err error) {
	if err != nil {
		v.faults = append(v.faults, fault.Fault{Path: path, Err: err})
	}
}

// names checks that each name of a list is given and stands once.
func names[T any](v *validation, list string, items []T, name func(T) string) {
	seen := map[string]bool{}
	for i, item := range items {
		path := fmt.Sprintf("%s[%d].name", list, i)
		switch n := name(item); {
		case n == "":
			v.fault(path, "is missing")
		case seen[n]:
			v.fault(path, "%q stands twice; names must differ", n)
		default:
			seen[n] = true
		}
	}
}

// known checks that a name is one of a list.
func known[T any](v *validation, path, kind, name string, items []T, nameOf func(T) string) bool {
	var all []string
	for _, item := range items {
		if nameOf(item) == name {
			return true
		}
		all = append(all, nameOf(item))
	}
	if name == "" {
		v.fault(path, "is missing; a %s is wanted: %q", kind, all)
	} else {
		v.fault(path, "no %s %q; there are %q", kind, name, all)
	}
	return false
}

func compartmentName(c Compartment) string { return c.Name }
func portName(p Port) string               { return p.Name }
func fluidName(f Fluid) string             { return f.Name }
func formationName(f Formation) string     { return f.Name }
func deviceName(d Device) string           { return d.Name }
func actionName(a Action) string           { return a.Name }

func (v *validation) compartment(path, name string) bool {
	return known(v, path, "compartment", name, v.plan.Compartments, compartmentName)
}

// depth checks a measured depth against the well.
func (v *validation) depth(path string, d unit.Length) {
	if !(d >= 0 && d <= v.plan.Well.MD) {
		v.fault(path, "is %v; must be from 0 ft to the well's depth of %v", d, v.plan.Well.MD)
	}
}

// within checks a measured depth against a compartment.
func (v *validation) within(path string, d unit.Length, compartment string) {
	for _, c := range v.plan.Compartments {
		if c.Name == compartment && !(c.TopMD <= d && d <= c.BottomMD) {
			v.fault(path, "is %v; compartment %q reaches from %v to %v", d, compartment, c.TopMD, c.BottomMD)
		}
	}
}

func (v *validation) positive(path string, value fmt.Stringer, x float64) {
	if !(x > 0) || math.IsInf(x, 0) {
		v.fault(path, "is %v; must be above zero", value)
	}
}

func (v *validation) notNegative(path string, value fmt.Stringer, x float64) {
	if !(x >= 0) || math.IsInf(x, 0) {
		v.fault(path, "is %v; must not be negative", value)
	}
}

func (v *validation) well() {
	w := v.plan.Well
	v.positive("well.depth", w.MD, float64(w.MD))
	for _, name := range sortedKeys(w.Temperatures) {
		points := w.Temperatures[name]
		path := "well.temperatures." + name
		if len(points) == 0 {
			v.fault(path, "has no points")
		}
		for i := range points {
			if i > 0 && !(points[i].TVD > points[i-1].TVD) {
				v.fault(fmt.Sprintf("%s[%d].tvd", path, i), "is %v; must be below the %v before it", points[i].TVD, points[i-1].TVD)
			}
		}
	}
	for _, name := range sortedKeys(w.Errors) {
		b := w.Errors[name]
		path := "well.temperature_errors." + name
		if _, ok := w.Temperatures[name]; !ok {
			v.fault(path, "no temperature %q in well.temperatures", name)
		}
		v.faultIf(path, b.Validate())
		if !(b.Least >= -mostHeat && b.Greatest <= mostHeat) {
			v.fault(path, "runs from %v to %v; must be from %v to %v", b.Least, b.Greatest, -mostHeat, mostHeat)
		}
	}
	for i, s := range w.Path {
		if i > 0 && !(s.MD > w.Path[i-1].MD) {
			v.fault(fmt.Sprintf("well.path[%d].md", i), "is %v; must be below the %v before it", s.MD, w.Path[i-1].MD)
		}
	}
	if n := len(w.Path); n > 0 && w.Path[n-1].MD < w.MD {
		v.fault("well.path", "ends at %v; must reach the well's depth of %v", w.Path[n-1].MD, w.MD)
	}
}

func (v *validation) fluids() {
	names(v, "fluids", v.plan.Fluids, fluidName)
	for i, f := range v.plan.Fluids {
		path := fmt.Sprintf("fluids[%d]", i)
		v.compression(path+".compression", f.Compression)
		switch f.Kind {
		case "", ConstantDensity, ClearBrine:
			v.faultIf(path+".density", f.Density.Validate())
			v.density(path+".density", f.Density.Least)
			v.density(path+".density", f.Density.Greatest)
			if !(f.Expansion >= 0 && f.Expansion <= mostExpansion) {
				v.fault(path+".expansion", "is %v; must be from 0 to %v", f.Expansion, mostExpansion)
			}
		case FreshWater:
			if f.Density.Nominal != 0 || f.Expansion != 0 {
				v.fault(path, "fresh water brings its own density and expansion; leave them out")
			}
		case Nitrogen, Methane, NaturalGas:
			v.gasFault(path, f)
		default:
			v.fault(path+".kind", "is %q; there are %q, %q, %q, and the gases %q, %q and %q", f.Kind, ConstantDensity, ClearBrine, FreshWater, Nitrogen, Methane, NaturalGas)
		}
		v.rheology(path, f)
		if !f.Kind.Gas() && (f.Gravity != 0 || f.Nitrogen != 0 || f.CarbonDioxide != 0 || f.HydrogenSulphide != 0) {
			v.fault(path, "gravity and contents belong to natural gas, %q", NaturalGas)
		}
		if _, ok := v.plan.Well.Temperatures[Undisturbed]; !ok && (f.Kind == ClearBrine || f.Kind == FreshWater || f.Kind.Gas()) {
			v.fault(path+".kind", "%q feels temperature, but well.temperatures has no %q", f.Kind, Undisturbed)
		}
	}
}

func (v *validation) formations() {
	names(v, "formations", v.plan.Formations, formationName)
	for i, f := range v.plan.Formations {
		path := fmt.Sprintf("formations[%d]", i)
		v.depth(path+".depth", f.MD)
		v.faultIf(path+".pressure", f.Pressure.Validate())
		v.faultIf(path+".fracture", f.Fracture.Validate())
		v.positive(path+".pressure", f.Pressure.Least, float64(f.Pressure.Least))
		if f.Fracture.Nominal != 0 && !(f.Fracture.Least > f.Pressure.Greatest) {
			v.fault(path+".fracture", "is %v; must be above the formation's pressure of %v, or left out", f.Fracture, f.Pressure)
		}
		if in := f.Inflow; in != nil {
			v.faultIf(path+".inflow", in.fault(f.Pressure.Nominal))
			v.density(path+".inflow.density", in.Density)
			if !(in.WaterCut >= 0 && in.WaterCut <= 1) {
				v.fault(path+`.inflow.water_cut`, "is %v; must be from 0 to 1", in.WaterCut)
			}
		}
	}
}

func (v *validation) compartments() {
	names(v, "compartments", v.plan.Compartments, compartmentName)
	faces := map[string]string{}
	for i, c := range v.plan.Compartments {
		path := fmt.Sprintf("compartments[%d]", i)
		v.depth(path+".top", c.TopMD)
		v.depth(path+".bottom", c.BottomMD)
		if !(c.TopMD < c.BottomMD) {
			v.fault(path+".bottom", "is %v; must be below the top at %v", c.BottomMD, c.TopMD)
		}
		v.faultIf(path+".trapped", c.Trapped.Validate())
		v.notNegative(path+".trapped", c.Trapped.Least, float64(c.Trapped.Least))
		v.capacity(path+".capacity", c.Capacity)
		v.layers(path, c)
		v.gasLayers(path, c)
		v.bores(path, c)
		if c.Formation != "" && known(v, path+".formation", "formation", c.Formation, v.plan.Formations, formationName) {
			k := slices.IndexFunc(v.plan.Formations, func(f Formation) bool { return f.Name == c.Formation })
			v.within(path+".formation", v.plan.Formations[k].MD, c.Name)
			if other, twice := faces[c.Formation]; twice {
				v.fault(path+".formation", "%q is behind compartment %q already", c.Formation, other)
			}
			faces[c.Formation] = c.Name
		}
		fixed := 0
		for _, is := range []bool{c.Surface, c.Formation != "", c.Trapped.Greatest != 0} {
			if is {
				fixed++
			}
		}
		if fixed > 1 {
			v.fault(path, "has more than one of surface, formation and trapped; at most one thing fixes its pressure")
		}
	}
}

func (v *validation) layers(path string, c Compartment) {
	if (c.Fluid == "") == (len(c.Layers) == 0) {
		v.fault(path, "wants either a fluid or layers")
		return
	}
	if c.Fluid != "" {
		known(v, path+".fluid", "fluid", c.Fluid, v.plan.Fluids, fluidName)
		return
	}
	top := c.TopMD
	for i, l := range c.Layers {
		at := fmt.Sprintf("%s.layers[%d]", path, i)
		known(v, at+".fluid", "fluid", l.Fluid, v.plan.Fluids, fluidName)
		if !(l.ToMD > top && l.ToMD <= c.BottomMD) {
			v.fault(at+".to", "is %v; must be below %v and no deeper than the compartment's bottom at %v", l.ToMD, top, c.BottomMD)
		}
		top = l.ToMD
	}
	if top != c.BottomMD {
		v.fault(path+".layers", "end at %v; they must reach the compartment's bottom at %v", top, c.BottomMD)
	}
}

func (v *validation) ports() {
	names(v, "ports", v.plan.Ports, portName)
	for i, p := range v.plan.Ports {
		path := fmt.Sprintf("ports[%d]", i)
		v.depth(path+".depth", p.MD)
		if len(p.Joins) != 2 || p.Joins[0] == p.Joins[1] {
			v.fault(path+".joins", "is %q; a port joins two different compartments", p.Joins)
			continue
		}
		for k, name := range p.Joins {
			if v.compartment(fmt.Sprintf("%s.joins[%d]", path, k), name) {
				v.within(path+".depth", p.MD, name)
			}
		}
	}
}
