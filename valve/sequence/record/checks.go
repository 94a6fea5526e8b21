package record

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// checking holds one step's record against what the programme expects, for people.
type checking struct {
	d    *diagnoser
	f    *frame
	s    *Step
	seen *sequence.Seen
	o    *outcome
}

func (c *checking) add(ok bool, what, expected, recorded string) {
	mark := OK
	if !ok {
		mark = Off
	}
	c.s.Checks = append(c.s.Checks, Check{what, expected, recorded, mark})
}

func (c *checking) all() {
	switch {
	case c.f.mode == aside || c.f.mode == asPlan:
		return
	case c.f.mode == pumped:
		c.pumps()
		return
	case c.f.mode == swapped:
		c.swaps()
	case c.f.pull:
		c.pull()
	default:
		c.held()
		c.volumes()
		c.moves()
	}
	c.gauges()
}

// gauges holds the instruments that show one value against it: those that are shut in
// or off, each; of the others how many there were.
func (c *checking) gauges() {
	quiet := 0
	for _, x := range c.o.items {
		switch {
		case x.what == "":
		case x.share <= fits && x.level < float64(50*unit.PSI):
			quiet++
		default:
			c.add(x.share <= fits, x.what, x.want, x.got)
		}
	}
	if quiet > 0 {
		c.add(true, "gauges of what is open and not moved", "nothing", fmt.Sprintf("nothing, looked at %d times", quiet))
	}
}

// held holds what was applied against the windows.
func (c *checking) held() {
	step := &c.d.given.Steps[c.f.step]
	if len(c.f.legs) != len(step.Ramps) {
		c.add(false, "turns of pressure", fmt.Sprint(len(step.Ramps)), fmt.Sprint(len(c.f.legs)))
	}
	for k, l := range c.f.legs {
		for n, name := range c.f.driven {
			got := unit.Pressure(l.to[n])
			if math.Abs(l.to[n]-l.from[n]) < float64(20*unit.PSI) {
				continue
			}
			what := fmt.Sprintf("%s, brought to", name)
			expected, ok := "", true
			if k < len(step.Ramps) && len(c.f.legs) == len(step.Ramps) {
				if want, planned := step.Ramps[k][name]; planned {
					expected = want.Rounded(digits)
				}
				if w := c.window(k, name); w != nil && len(w.Intervals) > 0 {
					expected, ok = windowWords(w), inWindow(w, got, c.slack(name))
				}
			}
			c.add(ok, what, expected, got.Rounded(digits))
		}
	}
}

func (c *checking) slack(name string) unit.Pressure {
	return unit.Pressure(c.f.nothing(name))
}

// window of a ramp's pressure, where the programme has one.
func (c *checking) window(ramp int, name string) *sequence.Window {
	p := c.d.programme
	if p == nil || c.f.step >= len(p.Steps) {
		return nil
	}
	for i := range p.Steps[c.f.step].Windows {
		w := &p.Steps[c.f.step].Windows[i]
		if w.Ramp == ramp+1 && (w.Compartment == name || slices.Contains(w.Together, name)) {
			return w
		}
	}
	return nil
}

func windowWords(w *sequence.Window) string {
	var all []string
	for _, i := range w.Intervals {
		all = append(all, fmt.Sprintf("%s to %s", i.Least.Rounded(digits), i.Greatest.Rounded(digits)))
	}
	return strings.Join(all, " or ")
}

func inWindow(w *sequence.Window, p, slack unit.Pressure) bool {
	for _, i := range w.Intervals {
		a, ok1 := i.Least.Pressure()
		b, ok2 := i.Greatest.Pressure()
		if ok1 && ok2 && p >= a-slack && p <= b+slack {
			return true
		}
	}
	return false
}

// volumes holds what went in and came back against the programme's, leg by leg.
func (c *checking) volumes() {
	spots := c.f.spots(c.seen)
	for _, name := range surfaces(c.d.given) {
		x := c.f.course(c.seen, spots, name)
		if x == nil {
			continue
		}
		fitted, known := c.o.fits[name]
		for k, l := range c.f.legs {
			a, b := l.begin, min(l.next, len(x.net))-1
			if b-a < 3 {
				continue
			}
			got, want := x.net[b]-x.net[a], x.closed[b]-x.closed[a]
			what := fmt.Sprintf("%s, ramp %d: volume", name, k+1)
			lo, hi := want*c.d.opt.Least, want*c.d.opt.Greatest
			if lo > hi {
				lo, hi = hi, lo
			}
			may := x.within + 4*x.noise
			if flow := flowIn(x, a, b); flow != "" {
				if math.Abs(got) > may || math.Abs(want) > may {
					c.add(true, what, flow+" from then on: not known beforehand", size(got))
				}
				continue
			}
			if math.Abs(want) < may/10 && math.Abs(got) < may {
				continue // nothing was expected, and nothing came
			}
			expected := between(lo, hi)
			if math.Abs(want) < may/3 {
				expected = "nothing"
			}
			c.add(got >= lo-may && got <= hi+may, what, expected, size(got))
		}
		if known && fitted.sure && x.driven && fitted.misfit <= fits {
			c.add(fitted.factor > c.d.opt.Least && fitted.factor < c.d.opt.Greatest, name+": volume for a pressure, in shares of the programme's",
				fmt.Sprintf("%.3g to %.3g", c.d.opt.Least, c.d.opt.Greatest), fmt.Sprintf("%.3f", fitted.factor))
		}
	}
}

func between(lo, hi float64) string {
	if size(lo) == size(hi) {
		return size(lo)
	}
	return size(lo) + " to " + size(hi)
}

// flowIn says what flows in a range of rows.
func flowIn(x *course, a, b int) string {
	for _, w := range x.flows {
		if w.last > a && w.first <= b {
			return string(w.meets.Flow) + " " + toFrom(w.meets.Out) + " " + w.meets.Name
		}
	}
	return ""
}

// moves holds the pressures at which slopes changed against the bands.
func (c *checking) moves() {
	for _, m := range c.s.Moved {
		a, b := m.Expected-(m.bandNominal(c.d.given)-m.Least), m.Expected+(m.Greatest-m.bandNominal(c.d.given))
		c.add(m.Inside, fmt.Sprintf("%s: slope of volume changes at %s", m.Action, m.Of), fmt.Sprintf("%s to %s", a.Rounded(digits), b.Rounded(digits)),
			fmt.Sprintf("%s, give or take %s", m.Surface.Rounded(digits), m.Unsure.Rounded(2)))
	}
	for _, name := range c.d.given.Steps[c.f.step].Expect {
		if !slices.ContainsFunc(c.s.Moved, func(m Moved) bool { return m.Action == name }) {
			c.s.Checks = append(c.s.Checks, Check{name, "moves", "no instrument at surface shows it here", Untold})
		}
	}
}

func (m *Moved) bandNominal(p *sequence.Plan) unit.Pressure {
	n := *m
	if a := n.find(p); a != nil {
		return threshold(&a.Triggers[n.link]).Nominal
	}
	return m.Threshold
}

// swaps holds the volume that was pumped, and what came back, against the swap's.
func (c *checking) swaps() {
	want := map[string]float64{}
	for _, w := range c.d.given.Steps[c.f.step].Displace {
		for _, k := range c.d.given.Compartments {
			if k.Name == w.Compartment && k.Surface {
				want[k.Name] += float64(k.Capacity) * float64(w.ToMD-w.FromMD)
			}
		}
	}
	for _, name := range surfaces(c.d.given) {
		if i := c.f.column(in, name); i >= 0 && want[name] > 0 {
			y := c.f.filled[i]
			got := y[len(y)-1] - y[0]
			c.add(math.Abs(got-want[name]) <= max(0.05*want[name], c.f.columns[i].within)+4*c.f.noise[i], name+": pumped", size(want[name]), size(got))
		}
		if i := c.f.column(out, name); i >= 0 {
			y := c.f.filled[i]
			if got := y[len(y)-1] - y[0]; math.Abs(got) > 4*c.f.noise[i]+c.f.tolerance(i) {
				c.add(true, name+": came back", "not known beforehand", size(got))
			}
		}
	}
}

// pull holds the weight indicator against the parting.
func (c *checking) pull() {
	got := unit.Force(c.f.peak)
	expected, ok := "", true
	if p := c.d.programme; p != nil && c.f.step < len(p.Steps) {
		for _, x := range p.Steps[c.f.step].Partings {
			expected = fmt.Sprintf("%s parts at %s to %s", x.Action, x.Least.Rounded(digits), x.Greatest.Rounded(digits))
			ok = got >= x.Least*0.99
		}
	}
	c.add(ok, "weight indicator, highest", expected, got.Rounded(digits))
}
