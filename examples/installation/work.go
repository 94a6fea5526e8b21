package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record"
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
	sizes     units             // that diameters are written in
	world     bool              // one choice of values alone was walked
	stopped   bool              // by the user, before all was known
	log       *record.Record    // of the job, as it was read
	record    *record.Diagnosis // and what it shows
	windows   bool              // they were asked for
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
	return beginWith(data, called, o)
}

// beginWith begins with the text of a plan.
func beginWith(data []byte, called string, o *options) (w *work, before *sequence.Plan, err error) {
	u, err := unitsNamed(o.units, texts(data))
	if err != nil {
		return nil, nil, err
	}
	plan, err := sequence.Read(data)
	if err != nil {
		return nil, nil, fmt.Errorf("%s can't be walked:\n%w", called, inUnits{err, u})
	}
	w = &work{plan: plan, hash: hashOf(data), windows: true}
	w.sizes = u
	if every := gather(data, sized); o.units == "plan" && len(every) > 0 {
		w.sizes, _ = unitsNamed(o.units, every) // the name was known above
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
	if err := o.explain.known(w.plan); err != nil {
		return nil, nil, err
	}
	if o.asRun != "" {
		before = nil
		if err := w.readRecord(o.asRun); err != nil {
			return nil, nil, err
		}
	}
	return w, before, nil
}

// change makes the changes that the flags ask for, and says every fault.
func (w *work) change(o *options) error {
	faults := w.set(o.set)
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
	w.plan = w.plan.Expanded()
	return nil
}

// set makes the changes of -set, and what follows from the plan's assembly. A path that
// the plan as it is written hasn't is looked for in what follows from it.
func (w *work) set(list []string) (faults []error) {
	var later []string
	for _, written := range []bool{true, false} {
		for _, text := range list {
			path, value, ok := strings.Cut(text, "=")
			if !ok {
				faults = append(faults, fmt.Errorf("-set %q: write it as path = value", text))
				continue
			}
			e, err := w.plan.Set(path, value)
			switch {
			case err != nil && written && w.plan.Assembly != nil:
				later = append(later, text)
				continue
			case err != nil:
				faults = append(faults, fmt.Errorf("-set: %w", err))
				continue
			}
			w.edits = append(w.edits, e)
			w.notes = append(w.notes, fmt.Sprintf("Set: %s = %s (was %s).", e.Path, e.Now, w.read.quoted(e.Before)))
		}
		if !written || len(faults) > 0 {
			break
		}
		made, err := w.plan.Derive()
		if err != nil {
			return append(faults, fmt.Errorf("with what was set the plan can't be walked:\n%w", err))
		}
		w.plan, list = made, later
	}
	return faults
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
		known, err := sequence.Check(ctx, p, sequence.Options{Ahead: o.ahead, Progress: tell})
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
	if w.log != nil && !w.stopped {
		if err := w.diagnose(ctx, check); err != nil {
			return err
		}
	}
	if before != nil && !w.stopped {
		if w.before, err = check(before); err != nil {
			return err
		}
	}
	if o.ahead {
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

// texts are all texts in a plan's file, but not the sizes of pipe, which are in inches
// wherever a plan is written.
func texts(data []byte) []string { return gather(data, func(key string) bool { return !sized(key) }) }

// sized tells whether a key's value is a diameter or what a pipe is named by.
func sized(key string) bool {
	switch key {
	case "size", "weight", "bore", "hole", "seal", "seal bore", "seal_bore", "od", "wall":
		return true
	}
	return false
}

// gather are the texts of a JSON file whose key is wanted.
func gather(data []byte, wanted func(key string) bool) (all []string) {
	var tree any
	if json.Unmarshal(data, &tree) != nil {
		return nil
	}
	var walk func(key string, v any)
	walk = func(key string, v any) {
		switch x := v.(type) {
		case string:
			if wanted(key) {
				all = append(all, x)
			}
		case []any:
			for _, e := range x {
				walk(key, e)
			}
		case map[string]any:
			for _, k := range slices.Sorted(maps.Keys(x)) {
				walk(k, x[k])
			}
		}
	}
	walk("", tree)
	return all
}
