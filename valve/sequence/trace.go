package sequence

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
)

// trace is what happened in one step of one world.
type trace struct {
	events   []event
	extremes []extreme
	stands   []stand     // where the step stood still: at its start, after each ramp, squeeze and pull
	ratings  []ratingUse // by rating, the worst of the step
	volumes  []Volume
}

// stand is the network where a step stands still.
type stand struct {
	label string
	state *state
	load  *load
	pull  unit.Force
	flows []flow
}

// ratingUse is the worst that a rating saw.
type ratingUse struct {
	burst, collapse       unit.Pressure // greatest differential in each direction
	burstTVD, collapseTVD unit.Length
}

// stepFault is an error of a walk with the step that it came from.
type stepFault struct {
	step string
	err  error
}

func (f stepFault) Error() string { return fmt.Sprintf("step %q: %v", f.step, f.err) }
func (f stepFault) Unwrap() error { return f.err }

// walkStep walks one step from a state, which it changes. thorough looks at
// ratings and string as well.
func walkStep(s *state, step *Step, thorough bool) (trace, error) {
	r := stepRunner{step: step, thorough: thorough, w: &walker{
		state: s, d: make([]unit.Pressure, len(s.actions)), extremes: make([]extreme, len(s.actions)),
	}}
	for i := range r.w.extremes {
		r.w.extremes[i].waiting = s.rows[i]
	}
	r.t.ratings = make([]ratingUse, len(s.ratings))
	if err := r.run(); err != nil {
		return r.t, stepFault{step.Name, err}
	}
	r.t.events, r.t.extremes = r.w.events, r.w.extremes
	return r.t, nil
}

type stepRunner struct {
	step     *Step
	thorough bool
	w        *walker
	t        trace
}

func (r *stepRunner) run() error {
	s := r.w.state
	ramp := -1
	if r.step.Temperature != "" && r.step.Temperature != s.temperature {
		s.temperature = r.step.Temperature
		for i := range s.columns {
			s.columns[i] = nil
		}
	}
	if err := r.leg(rest(ramp)); err != nil {
		return err
	}
	for _, name := range r.step.Shut {
		s.surface[s.byName.compartment[name]] = false
	}
	if len(r.step.Shut) > 0 {
		if err := r.leg(rest(ramp)); err != nil {
			return err
		}
	}
	for _, w := range r.step.Swap {
		l, err := s.swapLeg(ramp, w)
		if err == nil {
			r.t.volumes = append(r.t.volumes, s.swapVolume(w))
			err = r.leg(l)
		}
		if err != nil {
			return err
		}
	}
	if err := r.standStill("start", 0); err != nil {
		return err
	}
	return r.drives()
}

// drives runs the ramps, the squeeze and the pulls.
func (r *stepRunner) drives() error {
	s := r.w.state
	ramp := 0
	for _, to := range r.step.Ramps {
		before := s.clone()
		if err := r.leg(s.rampLeg(ramp, to)); err != nil {
			return err
		}
		volumes, err := s.rampVolumes(before, to)
		if err != nil {
			return err
		}
		r.t.volumes = append(r.t.volumes, volumes...)
		ramp++
		if err := r.standStill(fmt.Sprintf("ramp %d", ramp), 0); err != nil {
			return err
		}
	}
	if len(r.step.Squeeze) > 0 {
		l, err := s.squeezeLeg(ramp, r.step.Squeeze)
		if err == nil {
			err = r.leg(l)
		}
		if err != nil {
			return err
		}
		ramp++
		if err := r.standStill("squeeze", 0); err != nil {
			return err
		}
	}
	return r.pulls(ramp)
}

func (r *stepRunner) pulls(ramp int) error {
	s := r.w.state
	for k, to := range r.step.Pull {
		from := to
		if k > 0 {
			from = r.step.Pull[k-1]
		} else {
			l, err := s.loadString()
			if err != nil {
				return err
			}
			from = l.top + s.plan.String.Block
		}
		if err := r.leg(s.pullLeg(ramp, from, to)); err != nil {
			return err
		}
		ramp++
		if err := r.standStill(fmt.Sprintf("pull %d", k+1), to); err != nil {
			return err
		}
	}
	if r.step.Lands {
		return s.land()
	}
	return nil
}

// leg walks one leg, looking at the ratings on the way.
func (r *stepRunner) leg(l leg) error {
	if r.thorough {
		l.watch = func(w *walker, fraction float64) error { return w.watchRatings(r.t.ratings) }
	}
	return r.w.run(l)
}

// stand returns where the step stood at a moment.
func (t *trace) stand(m Moment) *stand {
	switch {
	case m == AtStart:
		return &t.stands[0]
	case m == AtPeak && len(t.stands) > 1:
		return &t.stands[1]
	}
	return &t.stands[len(t.stands)-1]
}

// standStill keeps the network where a step stands still.
func (r *stepRunner) standStill(label string, pull unit.Force) error {
	s := r.w.state
	if !r.thorough {
		return nil
	}
	k := stand{label: label, pull: pull}
	var err error
	if k.flows, err = s.flows(); err != nil {
		return err
	}
	if s.string != nil {
		var l load
		if pull > 0 {
			l, err = s.pullString(pull)
		} else {
			l, err = s.loadString()
		}
		if err != nil {
			return err
		}
		l.upper = &movement.Case{Nodes: slices.Clone(l.upper.Nodes)}
		k.load = &l
	}
	k.state = s.clone()
	r.t.stands = append(r.t.stands, k)
	return nil
}

// watchRatings keeps the worst differentials of every rating.
func (w *walker) watchRatings(worst []ratingUse) error {
	for i := range w.ratings {
		r := &w.ratings[i]
		for _, tvd := range w.cornered(r) {
			in, err := w.at(r.inside, tvd)
			if err != nil {
				return err
			}
			var out unit.Pressure
			if r.outside >= 0 {
				out, err = w.at(r.outside, tvd)
			} else {
				out, err = r.background.At(tvd)
			}
			if err != nil {
				return err
			}
			d := in - out
			if d > worst[i].burst {
				worst[i].burst, worst[i].burstTVD = d, tvd
			}
			if -d > worst[i].collapse {
				worst[i].collapse, worst[i].collapseTVD = -d, tvd
			}
		}
	}
	return nil
}

// cornered are the depths at which a rating is looked at: its own, and where
// one fluid meets another, as a differential has its corners there.
func (w *walker) cornered(r *rating) []unit.Length {
	w.depths = append(w.depths[:0], r.depths...)
	for _, i := range [2]int{r.inside, r.outside} {
		if i < 0 {
			continue
		}
		for _, l := range w.layers[i] {
			if r.depths[0] < l.bottom && l.bottom < r.depths[len(r.depths)-1] {
				w.depths = append(w.depths, l.bottom)
			}
		}
	}
	return w.depths
}
