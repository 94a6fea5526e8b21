package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
)

// RatingResult is a rating in a step: the worst over the worlds in which all
// devices stand alike.
type RatingResult struct {
	Name     string        `json:"name"`
	Burst    unit.Pressure `json:"burst"`    // greatest inside minus outside
	Collapse unit.Pressure `json:"collapse"` // greatest outside minus inside
	Usage    float64       `json:"usage"`    // of the allowed differential that is used most; 1 is the limit
}

// limits are a rating's differentials with the design factor taken off.
func (r Rating) limits(all catalogue.Catalogue) (burst, collapse unit.Pressure, err error) {
	f := unit.Pressure(r.Factor)
	if f == 0 {
		f = 1
	}
	if r.Pipe == nil {
		return r.Burst / f, r.Collapse / f, nil
	}
	pipe, err := r.Pipe.find(all)
	if err != nil {
		return 0, 0, err
	}
	ratings, err := pipe.Ratings()
	return ratings.InternalYield / f, ratings.Collapse.Pressure / f, err
}

func (c *checker) ratingResults(step *Step, r *StepResult) {
	for i, p := range c.plan.Ratings {
		burst, collapse := c.network.ratings[i].burst, c.network.ratings[i].collapse
		out := RatingResult{Name: p.Name}
		for _, w := range c.alive() {
			if w.trace.stands == nil {
				continue
			}
			u := w.trace.ratings[i]
			if u.burst > out.Burst {
				out.Burst = u.burst
				c.passed(step, w, p, "inside", u.burst, burst, u.burstTVD)
			}
			if u.collapse > out.Collapse {
				out.Collapse = u.collapse
				c.passed(step, w, p, "outside", u.collapse, collapse, u.collapseTVD)
			}
		}
		if burst > 0 {
			out.Usage = float64(out.Burst / burst)
		}
		if collapse > 0 {
			out.Usage = max(out.Usage, float64(out.Collapse/collapse))
		}
		r.Ratings = append(r.Ratings, out)
	}
}

// passed reports a rating once a step.
func (c *checker) passed(step *Step, w *walked, p Rating, side string, d, limit unit.Pressure, tvd unit.Length) {
	if limit == 0 || d <= limit || c.said(RatingCross, step, p.Name) {
		return
	}
	c.find(Finding{
		Kind: RatingCross, Step: step.Name, Device: p.Name, World: w.words,
		Says: fmt.Sprintf("the pressure %s is more than the rating allows", side),
		Numbers: fmt.Sprintf("%s more %s at %.0f ft true vertical depth; allowed %s with its design factor",
			psi(d), side, tvd.In(unit.Foot), psi(limit)),
		Cure: fmt.Sprintf("take %s off, or put as much on the other side", psi(d-limit)),
	})
}

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

// fractures holds the pressure at every formation that is open to a well
// against its fracture pressure.
func (c *checker) fractures(step *Step) error {
	for i, f := range c.plan.Formations {
		if f.Fracture == 0 || c.face[i] < 0 {
			continue
		}
		for _, w := range c.alive() {
			for _, k := range w.trace.stands {
				p, err := k.state.at(c.face[i], c.formationTVD[i])
				if err != nil {
					return err
				}
				if p <= f.Fracture || c.said(Fracture, step, f.Name) {
					continue
				}
				c.find(Finding{
					Kind: Fracture, Step: step.Name, Device: f.Name, World: w.words,
					Says:    fmt.Sprintf("the pressure at the formation passes its fracture pressure (%s)", k.label),
					Numbers: fmt.Sprintf("%s at %.0f ft; fracture pressure %s", psi(p), f.Depth.In(unit.Foot), psi(f.Fracture)),
					Cure:    fmt.Sprintf("take %s off at surface while the formation is open", psi(p-f.Fracture)),
				})
			}
		}
	}
	return nil
}

// said tells whether a step has such a finding already.
func (c *checker) said(kind Kind, step *Step, device string) bool {
	for _, f := range c.programme.Findings {
		if f.Kind == kind && f.Step == step.Name && f.Device == device {
			return true
		}
	}
	return false
}
