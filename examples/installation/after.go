package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"

	"completion.example/valve/sequence"
)

// writeRest writes the plan that goes on after a step.
func (w *work) writeRest(ctx context.Context, out io.Writer, text string) error {
	step, name, ok := strings.Cut(text, "=")
	step, name = strings.TrimSpace(step), strings.TrimSpace(name)
	if !ok || step == "" || name == "" {
		return fmt.Errorf("-after %q: write it as step = file", text)
	}
	rest, err := w.plan.Rest(ctx, step)
	if err != nil {
		return err
	}
	data, err := sequence.Write(rest)
	if err != nil {
		return err
	}
	if err := os.WriteFile(name, data, 0o644); err != nil { //nolint:gosec // a plan is no secret
		return err
	}
	_, err = fmt.Fprintf(out, "%s: the state after step %q, and the %d steps that follow. Look at what it states before it is walked: -plan %s\n", name, step, len(rest.Steps), name)
	return err
}

// began says how a plan begins, where that isn't as its things were run.
func began(plan *sequence.Plan) []string {
	b := plan.Begin
	if b == nil {
		return nil
	}
	all := []string{"Begins in a stated state"}
	if b.After != "" {
		all[0] += ", after " + b.After
	}
	all[0] += "."
	if len(b.Happened) > 0 {
		all = append(all, "Has happened: "+strings.Join(b.Happened, ", ")+".")
	}
	if len(b.May) > 0 {
		all = append(all, "May have happened, and is proved both ways: "+strings.Join(b.May, ", ")+".")
	}
	return all
}
