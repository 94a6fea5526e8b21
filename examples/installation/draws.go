package main

import (
	"context"
	"fmt"
	"strings"

	"completion.example/valve/sequence"
)

// sample draws the plan's values. What was drawn when the user stopped is not
// told: it would be another number than the one that was asked for.
func (w *work) sample(ctx context.Context, o *options, tell func(float64, string)) error {
	o.draws.Progress = tell
	risk, err := sequence.Sample(ctx, w.plan, o.draws)
	if err != nil && ctx.Err() != nil {
		w.stop()
		return nil
	}
	w.risk = risk
	return err
}

// gone tells what stands in the place of flags that are no more.
func gone(args []string) error {
	for _, a := range args {
		name, _, _ := strings.Cut(strings.TrimLeft(a, "-"), "=")
		if !strings.HasPrefix(a, "-") || !strings.HasPrefix(name, "spread-") {
			continue
		}
		path := map[string]string{"spread-density": "fluids.NAME.density = 9.4 lb/gal +/- 0.5 %", "spread-formation": "formations.NAME.pressure = 3600 psi +/- 50 psi",
			"spread-gauge": "rules.gauge = -20 psi .. 0 psi .. 20 psi"}[name]
		if path == "" {
			return fmt.Errorf("-%s is no more: draws are from the tolerances of the plan, and its temperatures have none", name)
		}
		return fmt.Errorf("-%s is no more: draws are from the tolerances of the plan. Give it one there, or with -set '%s'", name, path)
	}
	return nil
}

// share writes how often something happens, with how sure that is.
func share(s sequence.Share) string {
	return fmt.Sprintf("%.2f %% (95 %% sure between %.2f and %.2f %%)", 100*s.Value, 100*s.Least, 100*s.Greatest)
}

// printRisk writes how often the plan goes wrong.
func printRisk(l *lines, u reader, r *sequence.Risk) {
	l.WriteString("\n")
	l.line(0, "", 0, "How often it goes wrong, in %d draws (seed %d); in each draw the first failure is counted", r.Samples, r.Seed)
	l.line(2, "", 0, "the plan as a whole: %s", share(r.Fails))
	for _, e := range r.Events {
		l.line(2, "", 0, "step %q, %s: %s: %s", e.Step, e.Device, u.text(e.Says), share(e.Share))
	}
	if r.Unwalked > 0 {
		l.line(2, "", 0, "%s can't be walked at all and counts as a failure", count(r.Unwalked, "draw", "draws"))
	}
	if len(r.Inputs) > 0 {
		l.line(2, "", 0, "what matters most: the share of the variance of failing that an input makes by itself")
		for _, x := range r.Inputs[:min(5, len(r.Inputs))] {
			l.line(4, "", 0, "%s: %.0f %% (± %.0f %%)", x.Input, 100*x.Share, 100*x.Error)
		}
	}
}
