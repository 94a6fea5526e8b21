package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// stringResults holds the string against its limits and its seals against
// their bore.
func (c *checker) stringResults(step *Step) {
	s := c.plan.String
	if s == nil {
		return
	}
	overloaded, out := false, false
	for _, w := range c.alive() {
		for _, k := range w.trace.stands {
			if k.load == nil {
				continue
			}
			if g := k.load.governing; g.Usage > 1 && !overloaded {
				overloaded = true
				c.find(Finding{
					Kind: StringLoad, Step: step.Name, Device: "string", World: w.words,
					Says:    fmt.Sprintf("the string passes its %s limit (%s)", g.Limit, k.label),
					Numbers: fmt.Sprintf("%.0f %% of what the design factor allows at %.0f ft", 100*g.Usage, g.MD.In(unit.Foot)),
					Cure:    "less pressure, less cooling or less pull in this step, or a stronger pipe at that depth",
				})
			}
			d := k.load.seals
			if out || !s.leaves(k.load) {
				continue
			}
			out = true
			way, limit, cure := "up", s.Up, "warmer"
			if d > 0 {
				way, limit, cure, d = "down", s.Down, "cooler", -d
			}
			c.find(Finding{
				Kind: SealTravel, Step: step.Name, Device: "seals", World: w.words,
				Says:    fmt.Sprintf("the seals move %s further than their bore allows (%s)", way, k.label),
				Numbers: fmt.Sprintf("%.1f in %s of %.1f in", -d.In(unit.Inch), way, limit.In(unit.Inch)),
				Cure:    fmt.Sprintf("space out with %.1f in more to go %s, or keep the string %s and its pressure nearer that at landing", (-d - limit).In(unit.Inch), way, cure),
			})
		}
	}
}
