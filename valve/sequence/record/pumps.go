package record

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// pumpOff is by how much the pressure of the pump may differ from the programme's: its
// friction is that of clean pipe and of fluids as the plan has them.
const pumpOff = 0.15

// pumps holds what is pumped through the well against the plan: what goes in, what
// comes back at surface, and the greatest pressure of the pump where the programme knows
// it.
func (c *checking) pumps() {
	into, back, greatest := map[string]float64{}, map[string]float64{}, map[string]unit.Pressure{}
	for n, p := range c.d.given.Steps[c.f.step].Pump {
		into[p.Into] += float64(p.Volume)
		if p.Returns != "" {
			back[p.Returns] += float64(p.Volume)
		}
		if r := c.result(n); r != nil {
			for _, x := range r.Points {
				greatest[p.Into] = max(greatest[p.Into], x.Pressure)
			}
		}
	}
	for _, name := range surfaces(c.d.given) {
		c.total(in, name, ": pumped", into[name])
		c.total(out, name, ": came back", back[name])
		i := c.f.column(pressure, name)
		want, known := greatest[name]
		if i < 0 || into[name] == 0 {
			continue
		}
		got := 0.
		for _, v := range c.f.filled[i] {
			got = max(got, v)
		}
		what := name + ", greatest while pumping"
		if !known {
			c.s.Checks = append(c.s.Checks, Check{what, "not judged: the plan doesn't say how its fluids flow", unit.Pressure(got).Rounded(digits), Untold})
			continue
		}
		may := pumpOff*float64(want) + c.f.nothing(name) + 4*c.f.noise[i]
		c.add(math.Abs(got-float64(want)) <= may, what, want.Rounded(digits), unit.Pressure(got).Rounded(digits))
	}
}

// total holds a counter's whole way against what the plan has; where it has nothing, what
// it shows is said.
func (c *checking) total(w what, name, says string, want float64) {
	i := c.f.column(w, name)
	if i < 0 {
		return
	}
	y := c.f.filled[i]
	got, may := y[len(y)-1]-y[0], c.f.columns[i].within+4*c.f.noise[i]
	switch {
	case want > 0:
		c.add(math.Abs(got-want) <= 0.05*want+may, name+says, size(want), size(got))
	case math.Abs(got) > may+0.01*float64(unit.Barrel):
		c.add(true, name+says, "not known beforehand", size(got))
	}
}

// result is what the programme has found of a pump; nil: nothing, or not its pressure.
func (c *checking) result(n int) *sequence.PumpResult {
	p := c.d.programme
	if p == nil || c.f.step >= len(p.Steps) || n >= len(p.Steps[c.f.step].Pumps) {
		return nil
	}
	return &p.Steps[c.f.step].Pumps[n]
}
