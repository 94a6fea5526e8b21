package sequence

import (
	"fmt"
	"math"
	"slices"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/well"
)

// Gas tells whether a fluid of the kind is one.
func (k FluidKind) Gas() bool { return k == Nitrogen || k == Methane || k == NaturalGas }

// gas is the equation of state of a gas.
func (f Fluid) gas() hydrostatics.Fluid {
	switch f.Kind {
	case Nitrogen:
		return fluid.Nitrogen{}
	case Methane:
		return fluid.Methane{}
	}
	return fluid.Gas{Gravity: f.Gravity, Nitrogen: f.Nitrogen, CarbonDioxide: f.CarbonDioxide, HydrogenSulphide: f.HydrogenSulphide}
}

// The conditions at which volumes of gas are counted at surface: 60 °F and 14.696
// psia, the trade's standard cubic foot.
var surfaceTemperature = unit.Fahrenheit(60)

// gasFault checks what a gas says of itself.
func (v *validation) gasFault(path string, f Fluid) {
	if f.Density.Nominal != 0 || f.Expansion != 0 || f.Compression != 0 {
		v.fault(path, "a gas brings its own density, expansion and compression; leave them out")
	}
	if f.Kind != NaturalGas && (f.Gravity != 0 || f.Nitrogen != 0 || f.CarbonDioxide != 0 || f.HydrogenSulphide != 0) {
		v.fault(path, "%q is pure; gravity and contents belong to natural gas, %q", f.Kind, NaturalGas)
		return
	}
	if f.Kind == NaturalGas && f.Gravity == 0 {
		v.fault(path+".gravity", "is missing; natural gas wants its gravity to air, such as 0.65")
		return
	}
	if _, err := f.gas().Density(0, surfaceTemperature); err != nil {
		v.faultIf(path, err)
	}
}

// gasAt is the gas of the nominal well at the end of a step.
func (k *checker) gasAt(i int) ([]GasAt, error) {
	if !k.Network.HasGas() {
		return nil, nil
	}
	end, before := k.ends[i].State, k.before(i)
	var all []GasAt
	for c, p := range k.plan.Compartments {
		level, now := end.GasIn(c)
		_, then := before.GasIn(c)
		if !now && !then {
			continue
		}
		a, err := before.GasMass(c)
		if err != nil {
			return nil, err
		}
		b, err := end.GasMass(c)
		if err != nil {
			return nil, err
		}
		s := end
		if !now {
			s = before
		}
		gas := &k.Network.Fluids[s.Layers(c)[0].Fluid]
		x := GasAt{Compartment: p.Name, Fluid: gas.Name, Shut: end.Closed(c), Pressure: nothing(unit.Pressure(end.Top[c].F.C))}
		if now {
			x.Depth = unit.Length(level.F.C)
			x.TVD = unit.Length(k.tvdAt(level.F.C))
		}
		if mass := (b - a) * float64(p.capacity()); math.Abs(mass) > 1e-6*math.Max(math.Abs(a), math.Abs(b))*float64(p.capacity()) {
			x.In = unit.Volume(mass / gas.Surface)
		}
		all = append(all, x)
	}
	return all, nil
}

// noGas checks that a name doesn't stand for a gas where none is modelled.
func (v *validation) noGas(path, name, why string) {
	for _, f := range v.plan.Fluids {
		if f.Name == name && f.Kind.Gas() {
			v.fault(path, "%q is a gas; %s", name, why)
		}
	}
}

// gasLayers checks that gas stands at the top of a compartment, if anywhere.
func (v *validation) gasLayers(path string, c Compartment) {
	for i, l := range c.Layers {
		if i > 0 {
			v.noGas(fmt.Sprintf("%s.layers[%d].fluid", path, i), l.Fluid, "it would rise: gas stands at the top of a compartment, in one layer")
		}
	}
}

// gases puts a gas together for every temperature.
func (c *compiler) gases(f Fluid, x *well.Fluid) {
	eos := f.gas()
	if d, err := eos.Density(0, surfaceTemperature); err == nil {
		x.Surface = float64(d)
	}
	if len(c.Network.Temperatures) == 0 {
		return
	}
	for k := range c.Network.Temperatures {
		h := c.Network.Heat[k]
		g := &well.Gases{Least: h.Least(), Most: h.Greatest()}
		at := func(by float64) *well.Gas {
			t := c.warmth(k, by)
			return well.NewGas(f.Name, eos, t, c.alongHole(t))
		}
		g.Gas[1] = at(g.Least + (g.Most-g.Least)/2)
		if h.Radius() > 0 {
			g.Gas[0], g.Gas[2] = at(g.Least), at(g.Most)
		}
		x.Gases = append(x.Gases, g)
	}
}

// warmth is a temperature that is off by something.
func (c *compiler) warmth(k int, by float64) *hydrostatics.TemperatureProfile {
	if by == 0 {
		return c.Network.Temperatures[k]
	}
	points := slices.Clone(c.Network.Temperatures[k].Points())
	for i := range points {
		points[i].Temperature = points[i].Temperature.Add(unit.TemperatureDifference(by))
	}
	t, err := hydrostatics.NewTemperatureProfile(points)
	c.check(`well.temperature_errors`, err)
	return t
}

// alongHole are depths along the hole from surface down: every turn of it and of a
// temperature, and no two further apart than what a cubic between them is good for.
func (c *compiler) alongHole(t *hydrostatics.TemperatureProfile) []well.Depth {
	const apart = 30.0 // m
	marks := []float64{0, float64(c.plan.Well.MD)}
	for _, s := range c.path.Stations() {
		marks = append(marks, float64(s.MD))
	}
	slices.Sort(marks)
	var all []float64
	for i := 1; i < len(marks); i++ {
		a, b := marks[i-1], marks[i]
		if b > float64(c.plan.Well.MD) {
			break
		}
		n := int((b-a)/apart) + 1
		for k := range n {
			all = append(all, a+(b-a)*float64(k)/float64(n))
		}
	}
	all = append(all, float64(c.plan.Well.MD))
	for _, p := range t.Points() { // where the temperature turns
		for i := 1; i < len(all); i++ {
			a, b := c.tvdAt(all[i-1]), c.tvdAt(all[i])
			if x := float64(p.TVD); a < x && x < b {
				all = append(all, all[i-1]+(all[i]-all[i-1])*(x-a)/(b-a))
				break
			}
		}
		slices.Sort(all)
	}
	var hole []well.Depth
	for _, md := range slices.Compact(all) {
		hole = append(hole, well.Depth{MD: md, TVD: c.tvdAt(md)})
	}
	return hole
}

// tvdAt is the true vertical depth of a measured one in the well. An end that was added up may
// lie a rounding beyond that of the path.
func (c *compiled) tvdAt(md float64) float64 {
	tvd, _ := c.path.TVD(min(unit.Length(max(md, 0)), c.path.TotalDepth()))
	return float64(tvd)
}

// turnsUp is where a compartment first turns up, in measured depth: gas that goes
// beyond it would collect at another place.
func (c *compiler) turnsUp(top, bottom float64) float64 {
	at := bottom
	for _, d := range c.turns() {
		if d.MD > top && d.MD < at {
			at = d.MD
		}
	}
	return at
}

// highPoint checks that gas stands where it would collect.
func (c *compiler) highPoint(i int) {
	k := &c.Network.Compartments[i]
	if !c.Network.Fluids[k.Layers[0].Fluid].Gas() {
		return
	}
	highest := k.Depths[0]
	for _, d := range k.Depths {
		if d.TVD < highest.TVD-1e-6 {
			highest = d
		}
	}
	p := c.plan.Compartments[i]
	if highest.MD != k.Depths[0].MD {
		c.check(fmt.Sprintf("compartments[%d]", i), fmt.Errorf("gas in %q collects at its highest point, at %s, and not at its top at %s: part it there",
			p.Name, unit.Length(highest.MD).Rounded(5), p.TopMD.Rounded(5)))
	}
	if end := k.Layers[0].Bottom; end.MD > k.Turn+1e-6 {
		c.check(fmt.Sprintf("compartments[%d]", i), fmt.Errorf("gas in %q reaches down to %s, past the low point at %s from where the hole rises: part it there",
			p.Name, unit.Length(end.MD).Rounded(5), unit.Length(k.Turn).Rounded(5)))
	}
}
