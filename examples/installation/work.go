package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// work is what was asked and what was found.
type work struct {
	plan      *sequence.Plan
	programme *sequence.Programme
	before    *sequence.Programme // that changes are told against
	since     string              // what before is
	edits     []sequence.Edit
	notes     []string // that stand by the verdict
	hash      string   // of the plan's file
	risk      *sequence.Risk
	read      reader
	world     bool // one choice of values alone was walked
	stopped   bool // by the user, before all was known
}

// file reads a plan's file, or the demo where none is named.
func file(name string) (data []byte, called string, err error) {
	if name == "" {
		return demo, "the embedded demo", nil
	}
	data, err = os.ReadFile(name)
	return data, name, err
}

// begin reads the plan with everything that the flags change in it, and what it is
// held against.
func begin(o *options) (w *work, before *sequence.Plan, err error) {
	data, called, err := file(o.plan)
	if err != nil {
		return nil, nil, err
	}
	plan, err := sequence.Read(data)
	if err != nil {
		return nil, nil, fmt.Errorf("%s can't be walked:\n%w", called, err)
	}
	sum := sha256.Sum256(data)
	w = &work{plan: plan, hash: hex.EncodeToString(sum[:6])}
	u, err := unitsNamed(o.units, texts(data))
	if err != nil {
		return nil, nil, err
	}
	w.read = reader{units: u, gauges: map[string]unit.Pressure{}}
	if o.against != "" {
		old, called, err := file(o.against)
		if err != nil {
			return nil, nil, err
		}
		if before, err = sequence.Read(old); err != nil {
			return nil, nil, fmt.Errorf("%s can't be walked:\n%w", called, err)
		}
		w.since = called
	} else if len(o.set)+len(o.gauge) > 0 {
		before, w.since = plan.Clone(), "the plan as it is in the file"
	}
	if err := w.change(o); err != nil {
		return nil, nil, err
	}
	return w, before, nil
}

// change makes the changes that the flags ask for, and says every fault.
func (w *work) change(o *options) error {
	var faults []error
	for _, text := range o.set {
		path, value, ok := strings.Cut(text, "=")
		if !ok {
			faults = append(faults, fmt.Errorf("-set %q: write it as path = value", text))
			continue
		}
		e, err := w.plan.Set(path, value)
		if err != nil {
			faults = append(faults, fmt.Errorf("-set: %w", err))
			continue
		}
		w.edits = append(w.edits, e)
		w.notes = append(w.notes, fmt.Sprintf("Set: %s = %s (was %s).", e.Path, e.Now, e.Before))
	}
	for _, text := range o.gauge {
		faults = append(faults, w.misread(text))
	}
	if o.world != "" {
		choice, err := w.plan.Choose(o.world)
		if err == nil {
			w.plan, err = w.plan.At(choice)
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("-world: %w", err))
		}
		w.world = true
		w.notes = append(w.notes, "One world alone was walked, with the values of -world and all others nominal; it proves nothing of the rest.")
	}
	if err := errors.Join(faults...); err != nil {
		return err
	}
	if err := w.plan.Validate(); err != nil {
		return fmt.Errorf("with what was set the plan can't be walked:\n%w", err)
	}
	return nil
}

// misread takes a gauge's error into the plan: where the plan wants a reading, what
// really is applied is the reading less the error. What is bled to nothing is
// nothing.
func (w *work) misread(text string) error {
	name, value, ok := strings.Cut(text, "=")
	name = strings.TrimSpace(name)
	if !ok {
		return fmt.Errorf("-gauge %q: write it as compartment = error, such as 'tubing = -3 bar' for a gauge that shows 3 bar too little", text)
	}
	var off unit.Pressure
	if err := off.UnmarshalText([]byte(strings.TrimSpace(value))); err != nil {
		return fmt.Errorf("-gauge %s: %w", name, err)
	}
	var known []string
	found := false
	for _, c := range w.plan.Compartments {
		if c.Surface {
			known = append(known, c.Name)
			found = found || c.Name == name
		}
	}
	if !found {
		return fmt.Errorf("-gauge: no compartment %q with a gauge at surface; there are %s", name, strings.Join(known, ", "))
	}
	for i := range w.plan.Steps {
		for _, ramp := range w.plan.Steps[i].Ramps {
			if p, ok := ramp[name]; ok && p > 0 {
				ramp[name] = max(p-off, 0)
			}
		}
	}
	w.read.gauges[name] += off
	way := "too much"
	size := off
	if off < 0 {
		way, size = "too little", -off
	}
	w.notes = append(w.notes, fmt.Sprintf("Gauge: that of %s shows %s %s. Readings here are what it shows; pressures in the well are true.", name, w.read.of(size), way))
	return nil
}

// finish walks the plans.
func (w *work) finish(ctx context.Context, o *options, before *sequence.Plan, tell func(float64, string)) error {
	check := func(p *sequence.Plan) (*sequence.Programme, error) {
		known, err := sequence.Check(ctx, p, sequence.Options{Rest: o.rest, Progress: tell})
		if known != nil && ctx.Err() != nil {
			w.stop()
			return known, nil
		}
		return known, err
	}
	var err error
	if w.programme, err = check(w.plan); err != nil {
		return err
	}
	if before != nil && !w.stopped {
		if w.before, err = check(before); err != nil {
			return err
		}
	}
	if o.rest {
		w.notes = append(w.notes, "Windows are those in which all steps that follow do what is intended, too.")
	}
	if o.draws.Samples != 0 && !w.stopped {
		return w.sample(ctx, o, tell)
	}
	return nil
}

// stop says that the user stopped the work.
func (w *work) stop() {
	if !w.stopped {
		w.notes = append(w.notes, "STOPPED before all was known: verdict, findings and margins stand; windows, and what else was asked for, are missing.")
	}
	w.stopped = true
}

// texts are all texts in a JSON file.
func texts(data []byte) []string {
	var all []string
	d := json.NewDecoder(bytes.NewReader(data))
	for {
		t, err := d.Token()
		if err != nil {
			return all
		}
		if s, ok := t.(string); ok {
			all = append(all, s)
		}
	}
}
