package well

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/root"
	"completion.example/valve/sequence/internal/affine"
)

// capOfGas is the gas at the top of a compartment. While the compartment's top is open
// gas comes and goes and its level stays; once that is shut its mass stays, and the
// level is where that mass has the pressure of what stands under it.
type capOfGas struct {
	Level  affine.Line // measured depth of the gas's lower end
	Moved  bool        // from where the layers have it
	Closed bool
	Mass   affine.Form // closed: kg for each m² of the section
	// Anchor is the depth under the gas at which the body fixes the pressure of a
	// closed compartment, and what that is; -1: nothing does.
	Anchor  int
	At      affine.Line
	Foot    affine.Line // pressure at the level, where Anchor is one
	heating int         // the temperature that the pressure is of
}

func newCap(c *column) capOfGas {
	if !c.gas {
		return capOfGas{Anchor: -1}
	}
	return capOfGas{Level: affine.Flat(affine.Const(c.layers[0].Bottom.MD)), Anchor: -1}
}

func (g *capOfGas) endLeg(x affine.Form) {
	if g.Closed {
		g.Level, g.At, g.Foot = affine.Flat(g.Level.At(x)), affine.Flat(g.At.At(x)), affine.Flat(g.Foot.At(x))
	}
}

// same tells whether two caps stand alike.
func (g *capOfGas) same(h *capOfGas, tolerance float64) bool {
	return g.Closed == h.Closed && g.Moved == h.Moved && g.Level.Same(h.Level, 1e-6) && g.Mass.Same(h.Mass, 1e-6) && (!g.Closed || g.Anchor == h.Anchor && g.At.Same(h.At, tolerance))
}

// SameGas tells whether gas stands alike in two states.
func (s *State) SameGas(t *State, tolerance float64) bool {
	for i := range s.gas {
		if s.columns[i].gas && !s.gas[i].same(&t.gas[i], tolerance) {
			return false
		}
	}
	return true
}

// gasNotModelled is the error of a well with gas that isn't modelled.
type gasNotModelled struct{ Compartment, Why string }

func (e gasNotModelled) Error() string { return fmt.Sprintf("gas in %q: %s", e.Compartment, e.Why) }

func (s *State) gassy(i int, format string, args ...any) error {
	return gasNotModelled{s.Compartments[i].Name, fmt.Sprintf(format, args...)}
}

// HoldsGas tells whether gas stands in any compartment.
func (s *State) HoldsGas() bool {
	for _, c := range s.columns {
		if c.gas {
			return true
		}
	}
	return false
}

// GasIn tells whether a compartment begins with gas, and where that ends.
func (s *State) GasIn(i int) (level affine.Line, ok bool) {
	return s.gas[i].Level, s.columns[i].gas
}

// GasMass is what gas stands in a compartment, in kg for each m² of its section, at the
// middles of all that isn't certain.
func (s *State) GasMass(i int) (float64, error) {
	if !s.columns[i].gas {
		return 0, nil
	}
	g, top := &s.gas[i], s.Compartments[i].Depths[0]
	if g.Closed {
		return g.Mass.C, nil
	}
	_, m, err := s.Fluids[s.columns[i].layers[0].Fluid].Gases[s.Temperature].column(s.Top[i].F.C, top.TVD, top.TVD, top.MD, g.Level.F.C, s.heat().F.C)
	return m, err
}

// Stiffest is by what share of itself the pressure of gas that is shut in has changed
// most from another state to this one.
func (s *State) Stiffest(from *State) float64 {
	most := 0.0
	for i := range s.gas {
		if s.gas[i].Closed {
			a, b := from.Top[i].F.C+atmosphere, s.Top[i].F.C+atmosphere
			most = math.Max(most, math.Abs(b-a)/math.Max(math.Min(a, b), 1))
		}
	}
	return most
}

// Closed tells whether a compartment's gas is shut in.
func (s *State) Closed(i int) bool { return s.gas[i].Closed }

// steps at which slopes of gas are taken: of a pressure, a depth, a density, a mass
// and a temperature.
const (
	stepPressure = 2e4
	stepDepth    = 0.05
	stepDensity  = 0.1
	stepMass     = 1
	stepHeat     = 0.05
)

// Close shuts gas in wherever the top of its compartment isn't open: its mass stays
// from now on.
func (s *State) Close() error {
	for i := range s.gas {
		g := &s.gas[i]
		if !s.columns[i].gas || s.Surface[i] || g.Closed {
			continue
		}
		top := s.Compartments[i].Depths[0]
		gas := s.Fluids[s.columns[i].layers[0].Fluid].Gases[s.Temperature]
		out, err := affine.Enclose([]affine.Input{{Line: s.Top[i], Step: stepPressure}, {Line: s.heat(), Step: stepHeat}, {Line: g.Level, Step: stepDepth}}, s.Span, false,
			func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
				_, y[0], err = gas.column(x[0], top.TVD, top.TVD, top.MD, x[2], x[1])
				return y, err
			})
		if err != nil {
			return fmt.Errorf("compartment %q: %w", s.Compartments[i].Name, err)
		}
		g.Closed, g.Mass, g.Anchor, g.heating = true, out[0].F, -1, s.Temperature
	}
	return nil
}

// Reopen opens the top of a compartment at the pressure that it has.
func (s *State) Reopen(i int) {
	s.Surface[i] = true
	s.Applied[i] = s.Top[i]
	if s.gas[i].Closed { // else it isn't touched: states without gas share what says so
		s.gas[i].Closed = false
	}
}

// lift gives a closed compartment the pressure that its body has at one of its depths,
// under the gas: the level goes to where the mass of the gas has it.
func (s *State) lift(i, at int, q affine.Line) error {
	k, c, g := &s.Compartments[i], s.columns[i], &s.gas[i]
	under, err := s.liquid(i)
	if err != nil {
		return err
	}
	top, a := k.Depths[0], k.Depths[at]
	gas := s.Fluids[c.layers[0].Fluid].Gases[s.Temperature]
	out, err := affine.Enclose([]affine.Input{{Line: q, Step: stepPressure}, {Line: s.heat(), Step: stepHeat}, {Line: affine.Flat(g.Mass), Step: stepMass}, s.weight(under)}, s.Span, false,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			var unknown error
			mass := func(md float64) float64 {
				end := s.tvd(i, md)
				foot, e := s.pour(under, x[3], x[0], a.TVD, end, x[1])
				if e == nil && !(foot+atmosphere > curveLeast) {
					e = gas.Gas[1].vacuum(foot)
				}
				if e != nil {
					unknown = fmt.Errorf("compartment %q: %w", k.Name, e)
					y[0], y[1], y[2] = 0, md, foot
					return -x[2]
				}
				var m float64
				if y[0], m, e = gas.column(foot, end, top.TVD, top.MD, md, x[1]); e != nil {
					err = e
					return math.NaN()
				}
				y[1], y[2] = md, foot
				return m - x[2]
			}
			if mass(a.MD) < 0 && err == nil {
				return y, s.gassy(i, "at %s it reaches down to %s, where the compartment is open below; hold more on what presses on it, or bleed some of it off before, so that liquid stays under it", unit.Pressure(x[0]).Rounded(4), unit.Length(a.MD).Rounded(5))
			}
			if err != nil {
				return y, err
			}
			md, e := root.Find(mass, top.MD+1e-6, a.MD, 1e-9)
			if e != nil {
				if err == nil {
					err = s.gassy(i, "it is pressed to nothing (%v); hold less on what presses on it", e)
				}
				return y, err
			}
			off := mass(md)
			return y, rooted(err, unknown, off, massLeft(x[2])) // what it presses on may be known no further
		})
	if err != nil {
		return err
	}
	s.Top[i] = out[0]
	g.Level, g.Foot, g.Anchor, g.At, g.heating, g.Moved = out[1], out[2], at, q, s.Temperature, true
	return s.reaches(i)
}

// massLeft is what the root of a mass may leave of it.
func massLeft(mass float64) float64 { return 1e-6 * math.Max(mass, 1) }

// rooted is the error of a search for a root over what may have no answer, where it is unknown
// why: at a jump to that a search ends, too, and what is left there says that it is none.
func rooted(err, unknown error, left, most float64) error {
	if err == nil && unknown != nil && !(math.Abs(left) <= most) {
		return unknown
	}
	return err
}

// reaches finds whether closed gas reaches a port that is open.
func (s *State) reaches(i int) error {
	_, most := s.gas[i].Level.Between(s.Span)
	if turn := s.Compartments[i].Turn; turn > 0 && most > turn+0.001 {
		return s.gassy(i, "it may reach down to %s, past the low point of the hole at %s; part the compartment there", unit.Length(most).Rounded(5), unit.Length(turn).Rounded(5))
	}
	for _, p := range s.around[i] {
		if !s.Open[p] {
			continue
		}
		at := s.Ports[p].AtA
		if s.Ports[p].B == i {
			at = s.Ports[p].AtB
		}
		if d := s.Compartments[i].Depths[at]; d.MD < most-0.001 {
			return s.gassy(i, "it may reach down to %s, and passes through %q, open at %s; gas that leaves a compartment through a port isn't followed: keep it above that by more pressure on what presses on it, bleed it off or displace it with liquid (\"up\": true) before the port opens, or go on in a plan that begins (\"begin\") with the gas where it has gone",
				unit.Length(most).Rounded(5), s.Ports[p].Name, unit.Length(d.MD).Rounded(5))
		}
	}
	return nil
}

// stay lets a trapped body with closed gas keep what it has: it is as it was, or its
// only compartment is heated.
func (s *State) stay(x affine.Form, members []int) error {
	together := true
	for _, m := range members {
		together = together && s.body[m] == s.body[members[0]]
		if s.Rate != nil && s.Rate[m] != 0 {
			return s.gassy(members[0], "a squeeze of what it presses on isn't modelled: heat it by the step's temperature")
		}
	}
	key := uint64(0)
	heated := -1
	for _, m := range members {
		key += mark(m)
		if g := &s.gas[m]; g.Closed && g.heating != s.Temperature {
			heated = m
		}
	}
	if len(members) > 1 && (!together || heated >= 0) {
		var names []string
		for _, m := range members {
			names = append(names, s.Compartments[m].Name)
		}
		why := "meets others"
		if together {
			why = "is heated together with others"
		}
		i := members[0]
		for _, m := range members {
			if s.gas[m].Closed {
				i = m
			}
		}
		return s.gassy(i, "it %s (%q) while neither a surface nor a formation fixes their pressure; that isn't modelled: open one of them at surface with a ramp before, so that what is applied fixes it", why, names)
	}
	for _, m := range members {
		s.gas[m].endLeg(x)
		s.Top[m] = affine.Flat(s.Top[m].At(x))
		s.body[m] = key
	}
	if heated < 0 {
		return nil
	}
	return s.reheat(heated)
}

// reheat gives gas that is shut in alone the pressure of its mass at another
// temperature: what stands under it keeps its volume.
func (s *State) reheat(i int) error {
	g, top := &s.gas[i], s.Compartments[i].Depths[0]
	gas := s.Fluids[s.columns[i].layers[0].Fluid].Gases[s.Temperature]
	out, err := affine.Enclose([]affine.Input{{Line: affine.Flat(g.Mass), Step: stepMass}, {Line: s.heat(), Step: stepHeat}, {Line: g.Level, Step: stepDepth}}, s.Span, false,
		func(x [affine.MostInputs]float64) (y [affine.MostOutputs]float64, err error) {
			var unknown error
			f := func(logp float64) float64 {
				_, m, e := gas.column(math.Exp(logp)-atmosphere, top.TVD, top.TVD, top.MD, x[2], x[1])
				if e != nil {
					unknown = e
					return math.Inf(1)
				}
				return m - x[0]
			}
			logp, err := root.Find(f, math.Log(curveLeast)+0.01, math.Log(curveLeast)+curveStep*(curveCount-1), 1e-13)
			y[0] = math.Exp(logp) - atmosphere
			off := f(logp)
			return y, rooted(err, unknown, off, massLeft(x[0])) // the equation of state may end there
		})
	if err != nil {
		return fmt.Errorf("compartment %q: %w", s.Compartments[i].Name, err)
	}
	s.Top[i] = out[0]
	g.Anchor, g.heating = -1, s.Temperature
	return nil
}

// inClosed is the pressure at a depth of a compartment whose gas is shut in.
func (s *State) inClosed(i, depth int) (affine.Line, error) {
	g := &s.gas[i]
	_, hi := g.Level.Between(s.Span)
	if g.Anchor >= 0 && s.Compartments[i].Depths[depth].MD >= hi {
		return s.across(i, g.At, g.Anchor, depth)
	}
	return s.across(i, s.Top[i], 0, depth)
}

// aroundLevel are the fluids under and over a measured depth of a compartment that
// begins with gas.
func (s *State) aroundLevel(i int, md float64) (under, over int) {
	c := s.columns[i]
	lo, hi := s.gas[i].Level.Between(s.Span)
	gas := c.layers[0].Fluid
	if md < lo {
		return gas, gas
	}
	if !s.gas[i].Moved {
		return c.fluidAt(md), c.fluidAt(math.Nextafter(md, 0))
	}
	if md > hi {
		liquids := &column{layers: c.layers[1:]}
		return liquids.fluidAt(md), liquids.fluidAt(math.Nextafter(md, 0))
	}
	return c.layers[min(1, len(c.layers)-1)].Fluid, gas
}
