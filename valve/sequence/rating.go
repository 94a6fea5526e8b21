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
